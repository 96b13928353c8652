package main

import (
	"fmt"
	"io"

	"gatepost/program"
	"gatepost/program/publish/view"
)

// build makes a part of the output and writes it; of the paper one client's
// only where one is named.
func (j *job) build(part output, typed string) error {
	if err := j.open(); err != nil {
		return err
	}
	defer j.root.Close()
	if err := j.recoverOutput(); err != nil {
		return err
	}
	only := ""
	if typed != "" {
		only, _ = clientName(typed) // its form was checked with the arguments
		if err := j.checkClient(only); err != nil {
			return err
		}
	}
	if only != "" {
		_, err := j.makeAndWrite(part, only)
		return err
	}
	source := j.source(part)
	if j.fresh(part, source) {
		return nil
	}
	s, err := j.makeAndWrite(part, "")
	if err == nil && source == j.source(part) { // nobody changed a file meanwhile
		j.remember(source, s)
	}
	return err
}

// makeAndWrite gives what it said. The output of clients whose files have errors is
// left as it was, and that is an error in the end.
func (j *job) makeAndWrite(part output, only string) (said, error) {
	m, stopped := j.makeSound(part, only)
	if stopped != nil && (only != "" || !m.sound) {
		return said{}, stopped
	}
	lines, _ := withheld(m.clients)
	io.WriteString(j.out, lines)
	if err := j.write(m.files, append(part.scope(only), m.alone...)); err != nil {
		return said{}, err
	}
	j.sayLeft(m.left)
	return said{Withheld: lines, Reported: j.reported(m.problems)}, stopped
}

// check does the whole job but for the writing.
func (j *job) check() error {
	if err := j.open(); err != nil {
		return err
	}
	defer j.root.Close()
	m, err := j.makeSound(wholeOutput, "")
	lines, number := withheld(m.clients)
	io.WriteString(j.out, lines)
	if err == nil {
		noun := "clients"
		if len(m.clients) == 1 {
			noun = "client"
		}
		fmt.Fprintf(j.out, "%d %s%s; nothing to put right\n", len(m.clients), noun, number)
	}
	return err
}

// makeSound reads the folder and makes a part of the output. Clients' files
// with problems do not keep it from making those of the others; all problems are
// reported, and where one is more than a warning, it is an error. What every client
// needs stops all: the studio's file, the library, the words.
func (j *job) makeSound(part output, only string) (made, error) {
	studio, problems := j.readFor(only)
	if only != "" {
		problems = about(problems, only)
	}
	if about(problems, "").Stop() {
		return made{}, j.report(problems)
	}
	studio.Clients = without(studio.Clients, leftOf(problems))
	m := j.makeAll(&studio, part, only)
	m.problems = append(problems, m.problems...)
	m.sound = !about(m.problems, "").Stop()
	m.left = leftOf(m.problems)
	m.alone = j.leftAlone(m.left, without(studio.Clients, m.left))
	return m, j.report(m.problems)
}

// withheld names the clients who get no program yet, and why, a line each, and
// gives their number in words.
func withheld(clients []*client) (lines, number string) {
	count := 0
	for _, c := range clients {
		if len(c.withheld) > 0 {
			count++
		}
		for _, reason := range c.withheld {
			lines += fmt.Sprintf("%s: no program yet. %s\n", c.slug, reason)
		}
	}
	if count > 0 {
		number = fmt.Sprintf(", %d without a program yet", count)
	}
	return lines, number
}

// plan shows one client's program.
func (j *job) plan(typed, format string) error {
	if format != "text" && format != "json" {
		return wrongUsage("there is no format %q; use text or json", format)
	}
	slug, err := clientName(typed)
	if err == nil {
		err = j.open()
	}
	if err != nil {
		return err
	}
	defer j.root.Close()
	studio, a, problems, err := j.readOne(slug)
	if a == nil {
		return err
	}
	c := makeClient(&studio, a, output{}, nil)
	if err := j.report(append(problems, c.problems...)); err != nil {
		return err
	}
	return j.show(&studio.Library, c, format)
}

func (j *job) show(lib *program.Library, c *client, format string) error {
	if format == "text" {
		return view.Text(j.out, c.view)
	}
	b, err := view.JSON(lib, &c.program)
	if err == nil {
		_, err = j.out.Write(b)
	}
	return err
}
