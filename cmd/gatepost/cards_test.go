package main

import (
	"crypto/rand"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"gatepost/program/intake"
)

// The codes on the demo's cards lead to pages that are on its site.
func TestCodesLeadToPages(t *testing.T) {
	t.Parallel()
	folder := built(t, oneProgram)
	studio, problems := intake.Read(os.DirFS(folder), builtIn, rand.Reader)
	if problems.Stop() || studio.Coach.Site == "" {
		t.Fatal("the demo studio does not read, or has no site")
	}
	for i := range studio.Clients {
		c := (&making{studio: &studio}).client(&studio.Clients[i])
		for _, card := range c.view.Cards {
			page, ok := strings.CutPrefix(card.Link, studio.Coach.Site)
			if _, err := os.Stat(filepath.Join(folder, outputFolder, "site", page)); !ok || err != nil {
				t.Errorf("%s: %q leads nowhere: %v", c.slug, card.Link, err)
			}
		}
	}
}
