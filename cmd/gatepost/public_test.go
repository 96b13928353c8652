package main

import (
	"os"
	"testing"

	"gatepost/program/intake"
)

// The public programs are made once while nothing of theirs changes, and again
// when something does.
func TestPublicsAreMadeAgainOnlyWhenChanged(t *testing.T) {
	root := os.DirFS("../..")
	studio, problems := intake.Read(root, builtIn, nil)
	if problems.Stop() || len(studio.Public) < 2 {
		t.Fatalf("%d public programs, %v", len(studio.Public), problems)
	}
	j := &job{}
	first, _ := j.publics(&studio)
	again, _ := intake.Read(root, builtIn, nil)
	if same, _ := j.publics(&again); &same[0] != &first[0] {
		t.Error("made again, though nothing had changed")
	}
	again.Public[0].Title = "Another title"
	if other, _ := j.publics(&again); &other[0] == &first[0] || other[0].View.Title != "Another title" {
		t.Error("not made again, though the title had changed")
	}
	for i, p := range first {
		if len(p.View.Levels) == 0 || len(p.Documents) != len(p.View.Levels) {
			t.Fatalf("program %d has %d levels and %d lists of documents", i, len(p.View.Levels), len(p.Documents))
		}
		for _, made := range p.Documents {
			if len(made) != len(documents) {
				t.Errorf("program %d: %d documents, want %d", i, len(made), len(documents))
			}
		}
	}
}
