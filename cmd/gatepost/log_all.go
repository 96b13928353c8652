package main

import (
	"fmt"
	"os"
	"slices"

	"gatepost/program"
	"gatepost/program/intake"
)

// logAll adds the lines of one file to the logs of all clients that it names: all of
// them or, where anything is wrong, none.
func (j *job) logAll(file, on string) error {
	today, err := j.day(on)
	if err != nil {
		return err
	}
	if err := j.open(); err != nil {
		return err
	}
	defer j.root.Close()
	studio, known := j.readFor(intake.NoClient)
	if about(known, "").Stop() {
		return j.report(about(known, ""))
	}
	name, text, err := j.linesOfAll(studio.Library.Words, file)
	if err != nil {
		return err
	}
	logs, problems := intake.ReadNewLinesOfAll(&studio, unreadClients(&studio, known), name, text)
	all := make([]addition, len(logs))
	for i, l := range logs {
		problems = append(problems, intake.NotYet(&studio.Library, l.Log, today)...)
		all[i] = addition{client: l.Client, entries: l.Log.Entries}
	}
	if !problems.Stop() {
		j.sideBySide(len(all), "logs", func(i int) { all[i].prepare(&studio, j.logText(all[i].client.Slug)) })
		for i := range all { // what is only doubtful is said when it is added
			problems = append(problems, onlyErrors(all[i].problems)...)
		}
	}
	if err := j.report(problems); err != nil {
		return err
	}
	return j.addAll(&studio, all, name)
}

// addAll adds what was checked. Should the disk refuse one log in the middle, the
// same command goes on where it ended: what is there is not added again.
func (j *job) addAll(studio *program.Studio, all []addition, name string) error {
	entries := 0
	for i := range all {
		entries += len(all[i].entries)
		if err := j.addToLog(studio, &all[i]); err != nil {
			return err
		}
	}
	if entries == 0 {
		return fmt.Errorf("%w\nclient,%s", refused(studio.Library.Words, "no_lines", "file", name), intake.LogHeader())
	}
	return nil
}

// linesOfAll is the text of a file, and what to call it.
func (j *job) linesOfAll(words program.Words, file string) (name string, text []byte, err error) {
	const most = 8 << 20 // bytes: many years of hundreds of clients
	if file == "-" {
		name = terminal(words, "input")
		text, err = readAtMost(words, j.in, name, most)
		return name, text, err
	}
	f, err := os.Open(file)
	if err != nil {
		return file, nil, cannotRead(words, file, err)
	}
	defer f.Close()
	text, err = readAtMost(words, f, file, most)
	return file, text, err
}

// unreadClients are the folders of clients who are not in the studio.
func unreadClients(studio *program.Studio, problems program.Problems) []string {
	unread := slices.Clone(studio.Waiting)
	for _, a := range withUnread(studio.Clients, problems) {
		if a.Athlete.Name == "" {
			unread = append(unread, a.Slug)
		}
	}
	return unread
}
