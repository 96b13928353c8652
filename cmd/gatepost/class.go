package main

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"gatepost/program"
	"gatepost/program/publish/paper"
	"gatepost/program/publish/store"
	"gatepost/program/publish/view"
)

// classDays are the days of a week as the command and file names write them.
var classDays = []string{"sun", "mon", "tue", "wed", "thu", "fri", "sat"}

func classFile(day time.Weekday) string { return "print/class-sheet-" + classDays[day] + ".pdf" }

// classSheets are the files that stay when all paper is made anew: nobody knows for which
// days they are wanted.
func classSheets() store.Scope {
	var scope store.Scope
	for day := range classDays {
		scope = append(scope, "!"+classFile(time.Weekday(day)))
	}
	return scope
}

// class prints who trains on a weekday, the next one from a day on, today counted.
func (j *job) class(named, on string) error {
	from, err := j.day(on)
	if err == nil {
		err = j.open()
	}
	if err != nil {
		return err
	}
	defer j.root.Close()
	day, err := weekdayNamed(j.words(), named)
	if err != nil {
		return err
	}
	if err := j.recoverOutput(); err != nil {
		return err
	}
	studio, problems := j.readFor("")
	if about(problems, "").Stop() {
		return j.report(problems)
	}
	date := from + program.Date((day-from.Weekday()+7)%7)
	return j.printClass(&studio, problems, day, date)
}

// printClass leaves out those whose files have errors, names them, and is an error then.
func (j *job) printClass(studio *program.Studio, problems program.Problems, day time.Weekday, date program.Date) error {
	studio.Clients = without(studio.Clients, leftOf(problems))
	all, found := j.attending(studio, day)
	problems = append(problems, found...)
	class, missing := view.NewClass(studio.Coach, &studio.Library, date, all)
	var file []byte
	if len(class.Rows) > 0 {
		file, found = paper.Class(class)
	}
	stopped := j.report(append(append(problems, missing...), found...))
	if len(class.Rows) == 0 {
		return refused(studio.Library.Words, "no_class", "day", class.Day)
	}
	if err := j.write([]store.File{{Path: classFile(day), Bytes: file}}, store.Scope{classFile(day)}); err != nil {
		return err
	}
	fmt.Fprintf(j.out, "print %s\n", j.shown(outputFolder, classFile(day)))
	return stopped
}

// attending are the clients who train on a weekday, with the program on the wall.
func (j *job) attending(studio *program.Studio, day time.Weekday) ([]view.Attending, program.Problems) {
	chosen := slices.DeleteFunc(pick(studio.Clients, ""), func(a *program.Assessment) bool { return !slices.Contains(a.Training.Days, day) })
	made := make([]*client, len(chosen))
	with := making{studio: studio}
	j.sideBySide(len(chosen), "clients", func(i int) { made[i] = with.client(chosen[i]) })
	var all []view.Attending
	var problems program.Problems
	for _, c := range made {
		problems = append(problems, c.problems...)
		if c.view != nil && len(c.withheld) == 0 {
			all = append(all, view.Attending{View: c.view, Program: &c.program})
		}
	}
	return all, problems
}

// weekdayNamed reads a day of the week in English or in the studio's language, in full or
// short.
func weekdayNamed(words program.Words, written string) (time.Weekday, error) {
	given := strings.TrimSuffix(strings.ToLower(strings.TrimSpace(written)), ".")
	for day, short := range classDays {
		long := strings.ToLower(time.Weekday(day).String())
		for _, name := range []string{short, long, words["weekday."+long], words["weekday_short."+long]} {
			if name != "" && given == strings.TrimSuffix(strings.ToLower(name), ".") {
				return time.Weekday(day), nil
			}
		}
	}
	return 0, wrongUsage("--class: %q is no day of the week; use one of mon, tue, wed, thu, fri, sat, sun", written)
}
