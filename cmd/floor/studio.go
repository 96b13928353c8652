//go:build floor

package main

import (
	"fmt"
	"hash/fnv"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"

	"gatepost/cmd/study/people"
	"gatepost/program"
	"gatepost/program/intake"
	"gatepost/program/planner"
)

// logWeeks is how long the clients have trained.
const logWeeks = 6

var (
	massOf  = regexp.MustCompile(`(?m)^(  mass: )[0-9.]+ kg`)
	nameOf  = regexp.MustCompile(`(?m)^name: .*`)
	shareOf = regexp.MustCompile(`(?m)^share: .*\n(page: .*\n)?`)
)

// write makes a studio of clients like those of the demo, who differ in mass and name.
// Every second one is on the site.
func write(folder string, clients int) error {
	root := os.DirFS(".")
	studio, problems := intake.Read(root, root, nil)
	if problems.Stop() || len(studio.Clients) == 0 {
		return fmt.Errorf("no demo below content/: is this the root of the repository?")
	}
	for _, part := range []string{"content/programs", "content/notes"} {
		if err := os.CopyFS(filepath.Join(folder, part), sub(root, part)); err != nil {
			return err
		}
	}
	about, err := os.ReadFile("content/studio.yaml")
	if err == nil {
		err = os.WriteFile(filepath.Join(folder, "content/studio.yaml"), about, 0o666)
	}
	if err != nil {
		return err
	}
	for like := range studio.Clients {
		if err := writeLike(folder, &studio, &studio.Clients[like], like, clients); err != nil {
			return err
		}
	}
	return nil
}

func sub(from fs.FS, dir string) fs.FS {
	part, _ := fs.Sub(from, dir) // a path that can be one
	return part
}

// writeLike writes those who are like one of the demo.
func writeLike(folder string, studio *program.Studio, a *program.Assessment, like, clients int) error {
	text, err := os.ReadFile(filepath.Join("content/clients", a.Slug, "assessment.yaml"))
	if err != nil {
		return err
	}
	hand, _ := os.ReadFile(filepath.Join("content/clients", a.Slug, "coach.yaml")) // not everybody has one
	log, err := lived(studio, *a, uint64(like))
	if err != nil {
		return err
	}
	for i := like; i < clients; i += len(studio.Clients) {
		dir := filepath.Join(folder, "content/clients", slug(i))
		files := map[string][]byte{"assessment.yaml": variant(text, a.Athlete.Mass, i), "log.csv": log}
		if hand != nil {
			files["coach.yaml"] = hand
		}
		if err := os.MkdirAll(dir, 0o777); err != nil {
			return err
		}
		for name, b := range files {
			if err := os.WriteFile(filepath.Join(dir, name), b, 0o666); err != nil {
				return err
			}
		}
	}
	return nil
}

func slug(i int) string { return fmt.Sprintf("guest-%03d", i) }

// variant is an assessment of somebody like another.
func variant(text []byte, mass float64, i int) []byte {
	text = massOf.ReplaceAll(text, fmt.Appendf(nil, "${1}%.1f kg", mass+0.1*float64(i/4%30)))
	text = nameOf.ReplaceAll(text, fmt.Appendf(nil, "name: %s", name(i)))
	share := "share: print\n"
	if i/2%2 == 0 {
		share = "share: site\npage: " + page(i) + "\n"
	}
	return shareOf.ReplaceAll(text, []byte(share))
}

// name is two syllables and a family's.
func name(i int) string {
	const first, second = "BDGKLMNPRSTV", "aeiou"
	syllable := func(n int) string {
		return string(first[n%len(first)]) + string(second[n/len(first)%len(second)])
	}
	return syllable(i) + strings.ToLower(syllable(i*7+3)) + " " + syllable(i/60) + "ll"
}

// page is an address as only chance would find it.
func page(i int) string {
	const letters = "abcdefghijkmnpqrstuvwxyz23456789"
	h := fnv.New64a()
	fmt.Fprintf(h, "page %d", i)
	sum := h.Sum64()
	b := make([]byte, 16)
	for n := range b {
		b[n] = letters[(sum>>(4*n)&15+uint64(n)*5)%32]
	}
	return string(b)
}

// lived is the log of a simulated person who did what was printed first.
func lived(studio *program.Studio, a program.Assessment, seed uint64) ([]byte, error) {
	a.Log, a.Plans = program.Log{}, nil
	printed, problems := planner.Plan(&studio.Library, &a)
	if problems.Stop() || len(printed.Weeks) < logWeeks {
		return nil, fmt.Errorf("%s has no program", a.Slug)
	}
	p := people.Of(people.Base(), &studio.Library, a, printed.Capacity.Held12, seed)
	var done []program.Entry
	for n := range logWeeks {
		done = append(done, p.Do(&printed.Weeks[n]).Entries...)
	}
	added, problems := intake.AddToLog(studio, &a, "log.csv", nil, done)
	if problems.Stop() {
		return nil, fmt.Errorf("%s: %s", a.Slug, problems[0].Message)
	}
	return added.Bytes, nil
}
