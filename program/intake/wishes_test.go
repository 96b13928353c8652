package intake

import (
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"gatepost/program"
)

// commentedWish is a line that a blank of wishes shows as a comment.
var commentedWish = regexp.MustCompile(`^# ((avoid|prefer|instead|set|add|say|at|rules):|  [a-z_]+: )`)

// With every line of its comments in force, a blank of wishes can be read, by a client and
// by the studio: what it shows can be written. As it is, it asks for nothing.
func TestBlankWishes(t *testing.T) {
	root := os.DirFS("../..")
	studio, _ := Read(fstest.MapFS{"content": &fstest.MapFile{Mode: os.ModeDir}}, root, nil)
	for _, own := range []bool{true, false} {
		blank := string(BlankWishes(&studio.Library, !own))
		var lines []string
		set := false
		for line := range strings.Lines(blank) {
			if commentedWish.MatchString(line) && !(strings.HasPrefix(line, "# set:") && set) { // the second example of a key
				set = set || strings.HasPrefix(line, "# set:")
				line = strings.TrimPrefix(line, "# ")
			}
			lines = append(lines, line)
		}
		file := "content/clients/maren/coach.yaml"
		if !own {
			file = rulesFile
		}
		read, problems := Read(with(sound(t), file, blank), root, nil)
		if len(problems) > 0 || len(read.Clients[0].Wishes) > 0 {
			t.Errorf("as it is: %d wishes\n%s", len(read.Clients[0].Wishes), reported(problems))
		}
		read, problems = Read(with(sound(t), file, strings.Join(lines, "")), root, nil)
		if len(problems) > 0 {
			t.Fatalf("%s\n%s", reported(problems), strings.Join(lines, ""))
		}
		kinds := map[program.WishKind]int{}
		for _, w := range read.Clients[0].Wishes {
			kinds[w.Kind]++
		}
		want := 8 // kinds of wishes
		if !own {
			want = 7
		}
		if len(kinds) != want || kinds[program.WishRule] != len(ruleTable)+1 {
			t.Errorf("own %v: %v", own, kinds)
		}
	}
}

// What is written is what the plan is asked for, in the units inside; the studio's wishes
// come first, and have its mark.
func TestWishesAreRead(t *testing.T) {
	_, a := clientOfCase(t, "wishes-sound")
	if len(a.Wishes) != 5+1 { // Anna's blank asks for nothing: these are the studio's
		t.Fatalf("%d wishes", len(a.Wishes))
	}
	studio, _ := laidOut(t, readArchive(t, "testdata/cases/wishes-sound.txtar"))
	read, _ := Read(studio, library(t), nil)
	maren := read.Clients[slices.IndexFunc(read.Clients, func(a program.Assessment) bool { return a.Slug == "maren" })]
	if a.Rules != (program.Rules{DeloadEvery: 4}) || maren.Rules != (program.Rules{DeloadEvery: 3, ArmDays: 2}) {
		t.Errorf("rules %+v, and under a client's own %+v", a.Rules, maren.Rules)
	}
	var own []program.Wish
	for i, w := range maren.Wishes {
		if w.Studio != (i < 6) {
			t.Errorf("%d: %+v", i, w)
		}
		if !w.Studio {
			own = append(own, w)
		}
	}
	set := own[3]
	if set.Week != 3 || set.Hold != 10 || set.Sets != 4 || !slices.Equal(set.Rig.Bands, []string{"narrow"}) || set.Rig.Drop != program.AnyDrop {
		t.Errorf("%+v %+v", set, set.Rig)
	}
	if free := own[4]; free.Step != "tuck" || free.Rig == nil || !free.Rig.Free() {
		t.Errorf("%+v", free)
	}
	if two := own[5]; two.Rig.Drop != 0.2 || !slices.Equal(two.Rig.Bands, []string{"narrow", "middle"}) {
		t.Errorf("%+v", two.Rig)
	}
	if lean := own[6]; lean.Ahead != 0.2 || lean.Hold != 12 || lean.Rig != nil {
		t.Errorf("%+v", lean)
	}
	if add := own[7]; !slices.Equal(add.Days, []time.Weekday{time.Monday, time.Tuesday}) || add.Exercise != "planche-lean" {
		t.Errorf("%+v", add)
	}
	if say := own[9]; say.From != say.To || say.Text != "Film the side view on Friday." || say.Place.Line != 12 {
		t.Errorf("%+v", say)
	}
	there, nothing := own[10], own[11]
	if !slices.Equal(there.Kit, []string{"wall", "bands"}) || there.Minutes != 30 || there.AllKit || nothing.AllKit || len(nothing.Kit) > 0 {
		t.Errorf("%+v %+v", there, nothing)
	}
}
