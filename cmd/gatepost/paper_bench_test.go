package main

import (
	"fmt"
	"runtime/debug"
	"testing"
	"time"

	"gatepost/program/posture"
	"gatepost/program/publish/paper"
	"gatepost/program/publish/view"
)

// BenchmarkClientPaper plans clients and makes all of their paper, and then once more what
// teaches: how-to, first hour, message and class sheet. The figure is how much a client's
// paper costs with these against without, from one run.
func BenchmarkClientPaper(b *testing.B) {
	defer debug.SetGCPercent(debug.SetGCPercent(400))
	j := &job{path: copyOfDemo(b, ""), surroundings: surroundings{builtIn: builtIn}}
	if err := j.open(); err != nil {
		b.Fatal(err)
	}
	defer j.root.Close()
	studio, problems := j.read()
	if problems.Stop() {
		b.Fatal(problems)
	}
	album := posture.NewAlbum(&studio.Library)
	with := making{studio: &studio, part: output{print: true}, album: album, sheet: testSheets(&studio, album)}
	var all, teaching time.Duration
	for b.Loop() {
		var class []view.Attending
		for n := range 4 * len(studio.Clients) {
			a := studio.Clients[n%len(studio.Clients)]
			a.Athlete.Name, a.Athlete.Mass = fmt.Sprint(a.Athlete.Name, " ", n), a.Athlete.Mass+float64(n)/4
			began := time.Now()
			c := with.client(&a)
			all += time.Since(began)
			began = time.Now()
			with.printHowTo(c, &a)
			with.printMessage(c)
			if c.review == nil {
				with.printFirstSession(c, &a)
			}
			teaching += time.Since(began)
			class = append(class, view.Attending{View: c.view, Program: &c.program})
		}
		began := time.Now()
		sheet, _ := view.NewClass(studio.Coach, &studio.Library, class[0].Program.Weeks[0].Sessions[0].Date, class)
		paper.Class(sheet)
		once := time.Since(began)
		all, teaching = all+once, teaching+once
	}
	b.ReportMetric(all.Seconds()/(all-teaching).Seconds(), "all/before")
}
