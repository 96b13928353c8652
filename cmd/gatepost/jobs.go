package main

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"gatepost/program"
	"gatepost/program/intake"
	"gatepost/program/publish/view"
)

// build makes a part of the output and writes it; of the paper one client's
// only where one is named. Messages are about the week of a day, of today where none is
// given.
func (j *job) build(part output, typed, on string) error {
	if part.print {
		day, err := j.day(on)
		if err != nil {
			return err
		}
		part.week = view.MessageWeek(day)
	}
	if err := j.open(); err != nil {
		return err
	}
	defer j.root.Close()
	if err := j.recoverOutput(); err != nil {
		return err
	}
	w := j.writing(part)
	defer w.close()
	if typed != "" {
		only, _ := clientName(typed) // its form was checked with the arguments
		if err := j.checkClient(only); err != nil {
			return err
		}
		return j.makeAndWrite(w, only)
	}
	if err := w.begin(); err != nil {
		return err
	}
	if w.look(); w.whole() {
		return j.sayAgain(w)
	}
	return j.makeAndWrite(w, "")
}

// makeAndWrite makes what does not stand. The output of clients whose files have errors is
// left as it was, and that is an error in the end.
func (j *job) makeAndWrite(w *writing, only string) error {
	m, stopped := j.makeSound(w.part, only, w)
	if stopped != nil && (only != "" || !m.sound) {
		return stopped
	}
	lines, _ := withheld(m.clients)
	io.WriteString(j.out, lines)
	if err := w.commit(append(w.part.scope(only), m.alone...)); err != nil {
		return err
	}
	j.sayLeft(m.left)
	return stopped
}

// sayAgain says what making said of all that stands.
func (j *job) sayAgain(w *writing) error {
	clients, problems := w.keep()
	if err := j.report(problems); err != nil {
		return err
	}
	lines, _ := withheld(clients)
	io.WriteString(j.out, lines)
	return w.commit(w.part.scope(""))
}

// check does the whole job but for the writing. What stands as it would be made is not made:
// what was said in the making was kept, and is said again.
func (j *job) check() error {
	if err := j.open(); err != nil {
		return err
	}
	defer j.root.Close()
	part := wholeOutput
	part.week = view.MessageWeek(program.NewDate(j.now().Date()))
	w := j.looking(part)
	defer w.close()
	if w.look(); w.whole() {
		clients, problems := w.keep()
		return j.sayChecked(clients, j.report(problems))
	}
	m, err := j.makeSound(part, "", w)
	return j.sayChecked(m.clients, err)
}

// sayChecked says what a check comes to, but for its problems.
func (j *job) sayChecked(all []*client, err error) error {
	lines, number := withheld(all)
	io.WriteString(j.out, lines)
	if err == nil {
		noun := "clients"
		if len(all) == 1 {
			noun = "client"
		}
		fmt.Fprintf(j.out, "%d %s%s; nothing to put right\n", len(all), noun, number)
	}
	return err
}

// makeSound reads the folder and makes a part of the output. Clients' files
// with problems do not keep it from making those of the others; all problems are
// reported, and where one is more than a warning, it is an error. What every client
// needs stops all: the studio's file, the library, the words.
func (j *job) makeSound(part output, only string, w *writing) (made, error) {
	studio, problems := j.readChanged(only, w)
	if only != "" {
		problems = about(problems, only)
	}
	if about(problems, "").Stop() {
		return made{}, j.report(problems)
	}
	studio.Clients = without(studio.Clients, leftOf(problems))
	m := j.makeAll(&studio, part, only, w.of(problems))
	if w.stands("") {
		problems = slices.DeleteFunc(problems, func(p program.Problem) bool { return clientOf(p) == "" }) // kept, and said below
	}
	m.problems = append(problems, append(m.problems, m.shared...)...)
	m.sound = !about(m.problems, "").Stop()
	m.left = leftOf(m.problems)
	m.keep(w)
	m.alone = j.leftAlone(m.left, m.clients)
	if part.print { // said once: what is printed now hangs then
		return m, j.report(append(slices.Clone(m.problems), j.unkept(&m)...))
	}
	return m, j.report(m.problems)
}

// keep adds what stands to what was made.
func (m *made) keep(w *writing) {
	clients, problems := w.keep()
	m.clients, m.problems = append(m.clients, clients...), append(m.problems, problems...)
	slices.SortFunc(m.clients, func(a, b *client) int { return strings.Compare(a.slug, b.slug) })
}

// readChanged reads the folder, but for clients of whom all stands.
func (j *job) readChanged(only string, w *writing) (program.Studio, program.Problems) {
	pages := map[string]string{}
	for slug, s := range w.standing {
		if slug != "" {
			pages[slug] = s.Page
		}
	}
	if len(pages) > 0 {
		studio, problems, ok := intake.ReadBut(j.root.FS(), j.builtIn, j.chance, pages)
		if ok {
			return studio, problems
		}
		clear(w.standing)
	}
	return j.readFor(only)
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
func (j *job) plan(typed, format, on string) error {
	if err := knownFormat(format); err != nil {
		return err
	}
	day, err := j.day(on)
	slug := ""
	if err == nil {
		slug, err = clientName(typed)
	}
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
	c := (&making{studio: &studio}).client(a)
	if err := j.report(append(problems, c.problems...)); err != nil {
		return err
	}
	if format == "message" {
		return j.showMessage(&studio, &c.program, &c.read, c.changed, c.printNow, day)
	}
	return j.show(&studio.Library, c, format)
}

// knownFormat refuses a form of results that there is not.
func knownFormat(format string) error {
	if format != "text" && format != "json" && format != "message" {
		return wrongUsage("there is no format %q; use text, json or message", format)
	}
	return nil
}

// showMessage writes the week that comes on a day in five lines.
func (j *job) showMessage(studio *program.Studio, p *program.Program, r *program.Review, changes []program.Change, reprint []program.Date, on program.Date) error {
	text, problems := view.NewMessage(studio.Coach, &studio.Library, p, r, changes, reprint, on)
	if err := j.report(problems); err != nil {
		return err
	}
	if len(text.Lines) == 0 {
		return refused(studio.Library.Words, "no_message", "name", p.Client.Name)
	}
	_, err := j.out.Write(text.Text())
	return err
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
