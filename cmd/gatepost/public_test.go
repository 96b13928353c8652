package main

import (
	"os"
	"testing"

	"gatepost/program"
	"gatepost/program/intake"
	"gatepost/program/posture"
)

// repository reads the demo studio of this repository.
func repository(t *testing.T) *program.Studio {
	t.Helper()
	studio, problems := intake.Read(os.DirFS("../.."), builtIn, nil)
	if problems.Stop() || len(studio.Public) < 2 || len(studio.Clients) == 0 {
		t.Fatalf("%d public programs, %v", len(studio.Public), problems)
	}
	return &studio
}

// What is kept of the public programs is of use until something of theirs
// changes; a client's file is nothing of theirs.
func TestPublicsAreKeptUntilTheyChange(t *testing.T) {
	kept := &keepsake{studio: *repository(t)}
	for name, c := range map[string]struct {
		change func(*program.Studio)
		use    bool
	}{
		"nothing":     {func(*program.Studio) {}, true},
		"a client":    {func(s *program.Studio) { s.Clients[0].Athlete.Mass++ }, true},
		"a title":     {func(s *program.Studio) { s.Public[0].Title += "!" }, false},
		"a day":       {func(s *program.Studio) { s.Public[1].Training.Days = s.Public[1].Training.Days[:1] }, false},
		"an exercise": {func(s *program.Studio) { s.Library.Exercises[0].Name += "!" }, false},
		"the contact": {func(s *program.Studio) { s.Coach.Contact += "!" }, false},
	} {
		studio := repository(t)
		c.change(studio)
		if got := kept.planned(studio) && kept.public(&keepsake{studio: *studio}); got != c.use {
			t.Errorf("after a change of %s: of use %v", name, got)
		}
	}
}

// Every level has every document, and each is a PDF.
func TestEveryLevelHasItsDocuments(t *testing.T) {
	t.Parallel()
	publics, problems := new(job).publics(repository(t), posture.NewAlbum(&repository(t).Library))
	for _, p := range problems {
		t.Error(p)
	}
	for _, p := range publics {
		if len(p.View.Levels) < 4 || len(p.Documents) != len(p.View.Levels) {
			t.Fatalf("%s: %d levels and %d lists of documents", p.View.ID, len(p.View.Levels), len(p.Documents))
		}
		for i, made := range p.Documents {
			if len(made) != len(documents) {
				t.Errorf("%s, level %d: %d documents, want %d", p.View.ID, i+1, len(made), len(documents))
			}
			for _, d := range made {
				if string(d.Bytes[:5]) != "%PDF-" { // ISO 32000-1, 7.5.2
					t.Errorf("%s, level %d: %s is no PDF", p.View.ID, i+1, d.Name)
				}
			}
		}
	}
}
