package main

import (
	"slices"

	"gatepost/program"
	"gatepost/program/planner"
	"gatepost/program/publish/view"
)

// overview is one line for each client.
func (j *job) overview(on program.Date, o reviewOptions) error {
	if o.keep {
		return wrongUsage("--keep is for one client; name one")
	}
	if o.format == "message" {
		return wrongUsage("a message is for one client; name one")
	}
	studio, problems := j.read()
	if about(problems, "").Stop() {
		return j.report(problems)
	}
	lines, found := j.standings(&studio, problems, on)
	stopped := j.report(append(problems, found...))
	if err := j.showOverview(&studio, on, lines, o.format); err != nil {
		return err
	}
	return stopped
}

func (j *job) showOverview(studio *program.Studio, on program.Date, lines []view.Standing, format string) error {
	if format == "text" {
		return view.Overview(j.out, studio.Coach, &studio.Library, on, lines)
	}
	b, err := view.OverviewJSON(on, lines)
	if err == nil {
		_, err = j.out.Write(b)
	}
	return err
}

// standings reads every client, and says what was found besides the problems that
// are known.
func (j *job) standings(studio *program.Studio, problems program.Problems, on program.Date) ([]view.Standing, program.Problems) {
	clients := withUnread(studio.Clients, problems)
	studio.Clients = clients // what is forgotten below is held nowhere else
	lines := make([]view.Standing, len(clients))
	found := make([]program.Problems, len(clients))
	j.sideBySide(len(clients), "clients", func(i int) {
		a := &clients[i]
		lines[i], found[i] = standing(studio, a, errorsOf(problems, a.Slug), on)
		forgetLog(a)
	})
	return lines, slices.Concat(found...)
}

// standing is one client's line. Where files have errors it says no more than that:
// of a log that was left out, every session would look missed.
func standing(studio *program.Studio, a *program.Assessment, errors program.Problems, on program.Date) (view.Standing, program.Problems) {
	var r program.Review
	var p program.Program
	var found program.Problems
	if len(errors) == 0 {
		r, p, found = planner.Read(&studio.Library, a, a.Plans, on)
		errors = onlyErrors(found)
	}
	var line view.Standing
	var words program.Problems
	if len(errors) > 0 {
		line, words = view.NewUnread(studio.Coach, &studio.Library, program.Client{Name: a.Athlete.Name, Slug: a.Slug}, errors)
	} else {
		line, words = view.NewStanding(studio.Coach, &studio.Library, &p, &r)
	}
	return line, append(found, words...)
}

// withUnread adds those to the clients whose assessments could not be read, without
// anything but their folders' names.
func withUnread(clients []program.Assessment, problems program.Problems) []program.Assessment {
	clients = slices.Clone(clients)
	for _, p := range onlyErrors(problems) {
		slug := clientOf(p)
		if slug != "" && !slices.ContainsFunc(clients, func(a program.Assessment) bool { return a.Slug == slug }) {
			clients = append(clients, program.Assessment{Slug: slug})
		}
	}
	return clients
}

// errorsOf are the errors in one client's files.
func errorsOf(problems program.Problems, slug string) program.Problems {
	return slices.DeleteFunc(onlyErrors(problems), func(p program.Problem) bool { return clientOf(p) != slug })
}

func onlyErrors(problems program.Problems) program.Problems {
	return slices.DeleteFunc(slices.Clone(problems), func(p program.Problem) bool { return p.Warning })
}

// forgetLog lets go of what a client has done, once it is read: of hundreds of
// clients, all at once would fill the memory.
func forgetLog(a *program.Assessment) { a.Log, a.Plans = program.Log{}, nil }
