//go:build study

// Gatepost study lets simulated people live by what is printed, reads their logs every
// week, and holds what was believed of them against what is true. It is not part of the
// program: it is built with the tag study, from the root of this repository.
//
//	go run -tags study ./cmd/study -people 200 -seed 7
//
// prints one row a world; the people are those of package people, who do the planche, or
// with -skill another skill. The same seed gives the same table.
//
//	go run -tags study ./cmd/study -play /tmp/played
//
// lets the demo clients live instead, and writes the log of each at the end of each
// week.
package main

import (
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"runtime"
	"slices"
	"strings"
	"sync"

	"gatepost/cmd/study/lives"
	"gatepost/cmd/study/people"
	"gatepost/program"
	"gatepost/program/intake"
)

func main() {
	number := flag.Int("people", 200, "people a world")
	seed := flag.Uint64("seed", 1, "of the people and their days")
	weeks := flag.Int("weeks", 12, "that each of them lives: a block; more go on into the next")
	skill := flag.String("skill", people.Skills()[0], "what they train: "+strings.Join(people.Skills(), ", "))
	only := flag.String("world", "", "the only world to be shown")
	groups := flag.Bool("groups", false, "a row more for each sort of people")
	folder := flag.String("play", "", "folder for the logs of the demo clients, who then live in place of those people")
	flag.Parse()
	if err := run(*skill, *number, *weeks, *seed, *only, *folder, *groups); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func run(skill string, number, weeks int, seed uint64, only, folder string, groups bool) error {
	if !slices.Contains(people.Skills(), skill) {
		return fmt.Errorf("nobody is drawn for the skill %q: take one of %s", skill, strings.Join(people.Skills(), ", "))
	}
	root := os.DirFS(".")
	studio, problems := intake.Read(root, root, rand.NewChaCha8([32]byte{}))
	if problems.Stop() || len(studio.Library.RoadMaps) == 0 {
		return fmt.Errorf("no library below content/: is this the root of the repository?")
	}
	if folder != "" {
		return play(&studio, folder, weeks, seed)
	}
	fmt.Printf("%s, %d people a world, %d weeks, seed %d\n%s", skill, number, weeks, seed, header(weeks))
	for _, w := range people.Worlds() {
		if only != "" && w.Name != only {
			continue
		}
		courses, err := live(w, &studio.Library, skill, number, weeks, seed)
		if err != nil {
			return err
		}
		fmt.Print(row(w.Name, courses))
		for _, sort := range []string{"nothing held", "held", "held over 25 s"} {
			if groups {
				fmt.Print(row("  "+sort, of(courses, sort)))
			}
		}
	}
	fmt.Print(targets)
	return nil
}

// live lets the people of a world live, on all processors.
func live(w people.World, lib *program.Library, skill string, number, weeks int, seed uint64) ([]lives.Course, error) {
	courses, failed := make([]lives.Course, number), make([]error, number)
	var wait sync.WaitGroup
	next, done := make(chan int), make(chan bool)
	for range runtime.GOMAXPROCS(0) {
		wait.Go(func() {
			for i := range next {
				courses[i], failed[i] = lives.Follow(people.Draw(w, lib, skill, seed, uint64(i)), lib, weeks)
				done <- true
			}
		})
	}
	go func() {
		for i := range number {
			next <- i
		}
		close(next)
		wait.Wait()
		close(done)
	}()
	counted := 0
	for range done {
		counted++
		progress("\r%s: %d of %d", w.Name, counted, number)
	}
	progress("\r%s\r", strings.Repeat(" ", 40))
	for _, err := range failed {
		if err != nil {
			return nil, err
		}
	}
	return courses, nil
}

// progress is written only where somebody may be watching.
func progress(format string, values ...any) {
	if info, err := os.Stderr.Stat(); err == nil && info.Mode()&os.ModeCharDevice != 0 {
		fmt.Fprintf(os.Stderr, format, values...)
	}
}
