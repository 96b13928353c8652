package main

import (
	"bytes"
	"os"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
	"unicode/utf8"

	"gatepost/program"
	"gatepost/program/intake"
	"gatepost/program/planner"
	"gatepost/program/publish/view"

	"github.com/google/go-cmp/cmp"
)

// demoStudio reads this repository's own folder; over lies over it.
func demoStudio(t *testing.T, over fstest.MapFS) program.Studio {
	t.Helper()
	folder := fstest.MapFS{}
	if err := copyInto(folder, "../..", "content/studio.yaml", "content/clients/maren", "content/clients/joss", "content/clients/anselm", "content/clients/runa"); err != nil {
		t.Fatal(err)
	}
	for name, file := range over {
		folder[name] = file
	}
	studio, problems := intake.Read(folder, builtIn, strings.NewReader(""))
	for _, p := range problems {
		t.Error(p.Error())
	}
	return studio
}

func copyInto(folder fstest.MapFS, from string, names ...string) error {
	for _, name := range names {
		info, err := os.Stat(from + "/" + name)
		if err != nil {
			return err
		}
		if !info.IsDir() {
			b, err := os.ReadFile(from + "/" + name)
			if err != nil {
				return err
			}
			folder[name] = &fstest.MapFile{Data: b}
			continue
		}
		entries, err := os.ReadDir(from + "/" + name)
		if err != nil {
			return err
		}
		for _, e := range entries {
			if err := copyInto(folder, from, name+"/"+e.Name()); err != nil {
				return err
			}
		}
	}
	return nil
}

// A kept plan reads back as it was planned, to the last digit, and written again
// it has the same bytes.
func TestKeptPlansRoundTrip(t *testing.T) {
	studio := demoStudio(t, nil)
	kept := fstest.MapFS{}
	want := map[string]program.PlanVersion{}
	for i := range studio.Clients {
		a := &studio.Clients[i]
		p, _ := planner.Plan(&studio.Library, a)
		v := planner.Version(&p, 1, min(a.Measured, p.Start))
		v.Passed = []string{"tuck", "open-tuck"}
		v.Weeks[0].Sessions[0].Items[0].Try = true
		if a.Slug == "runa" {
			if rig := v.Weeks[0].Rig; !rig.Folded || v.Weeks[0].Sessions[0].Items[3].HandsAhead != 0 {
				t.Errorf("hangs from a bar with %+v", rig)
			}
			v.Weeks[0].Rig.At = program.AtAnkle
		}
		b, err := view.PlanJSON(&v)
		if err != nil {
			t.Fatal(err)
		}
		kept["content/clients/"+a.Slug+"/"+intake.PlanFile(&v)] = &fstest.MapFile{Data: b}
		want[a.Slug] = v
	}
	again := demoStudio(t, kept)
	for i := range again.Clients {
		a := &again.Clients[i]
		if len(a.Plans) != 1 {
			t.Fatalf("%s has %d plans", a.Slug, len(a.Plans))
		}
		b, _ := view.PlanJSON(&a.Plans[0])
		if file := kept["content/clients/"+a.Slug+"/"+intake.PlanFile(&a.Plans[0])]; !bytes.Equal(b, file.Data) {
			t.Errorf("%s: the bytes differ", a.Slug)
		}
		v := want[a.Slug]
		if diff := cmp.Diff(emptied(v), emptied(a.Plans[0])); diff != "" {
			t.Errorf("%s:\n%s", a.Slug, diff)
		}
	}
}

// emptied makes no difference between no list and an empty one.
func emptied(v program.PlanVersion) program.PlanVersion {
	notes := func(n []program.Note) []program.Note {
		if len(n) == 0 {
			return nil
		}
		for i := range n {
			if len(n[i].Values) == 0 {
				n[i].Values = nil
			}
		}
		return n
	}
	for i := range v.Weeks {
		w := &v.Weeks[i]
		w.Notes = notes(w.Notes)
		if len(w.Sessions) == 0 {
			w.Sessions = nil
		}
		for j := range w.Sessions {
			s := &w.Sessions[j]
			s.Dropped = notes(s.Dropped)
			for k := range s.Items {
				if len(s.Items[k].Rig.Bands) == 0 {
					s.Items[k].Rig.Bands = nil
				}
			}
		}
		if len(w.Rig.Bands) == 0 {
			w.Rig.Bands = nil
		}
	}
	return v
}

// The wall prints the kept weeks as they were planned: keeping the first plan
// changes nothing on paper.
func TestKeepingTheFirstPlanChangesNothing(t *testing.T) {
	studio := demoStudio(t, nil)
	for i := range studio.Clients {
		a := &studio.Clients[i]
		before, _ := planner.Wall(&studio.Library, a)
		a.Plans = []program.PlanVersion{planner.Version(&before.Program, 1, min(a.Measured, before.Program.Start))}
		after, _ := planner.Wall(&studio.Library, a)
		after.Program.Version = 0
		if diff := cmp.Diff(before.Program, after.Program); diff != "" {
			t.Errorf("%s:\n%s", a.Slug, diff)
		}
	}
}

// Every flag has its sentence, and words for the overview that fit beside the
// other columns of a line of 80.
func TestFlagsHaveWords(t *testing.T) {
	words := demoStudio(t, nil).Library.Words
	seen := 0
	for _, code := range planner.NoteCodes {
		if !strings.HasPrefix(code, "flag-") {
			continue
		}
		seen++
		short, ok := words["need."+code]
		if _, sentence := words["note."+code]; !ok || !sentence {
			t.Errorf("%s has no words", code)
		}
		filled := strings.NewReplacer("{joint}", "shoulders", "{step}", "one-leg half lay", "{last}", "12 February 2027", "{sets}", "12", "{of}", "99",
			"{sessions}", "12", "{pain}", "10", "{weeks}", "12", "{below}", "one-leg half lay").Replace(short)
		if n := utf8.RuneCountInString(filled); n > 44 || strings.Contains(filled, "{") {
			t.Errorf("%s: %d letters: %s", code, n, filled)
		}
	}
	if seen < 10 {
		t.Errorf("only %d flags", seen)
	}
}

// What a coach signs is in the version that is kept, whether the weeks change or not,
// and later versions hold it too.
func TestSignedGatesAreKept(t *testing.T) {
	studio := demoStudio(t, nil)
	a := pick(studio.Clients, "joss")[0]
	first, _ := planner.Plan(&studio.Library, a)
	for _, c := range []struct {
		passed []string
		again  bool // the plan is made anew
		want   []string
	}{
		{passed: []string{"Tuck"}, want: []string{"tuck"}},
		{want: nil},
		{again: true, want: []string{"tuck"}},
		{passed: []string{"open tuck", "tuck"}, want: []string{"tuck", "open-tuck"}},
	} {
		signed, err := signedGates(&studio.Library, a, c.passed)
		if err != nil {
			t.Fatal(err)
		}
		p, latest := first, len(a.Plans)
		if p.Version = max(1, latest); c.again {
			p.Version++
		}
		kept := toKeep(&studio, a, &p, a.Measured+7, signed)
		a.Plans = append(a.Plans, kept...)
		if c.want == nil {
			if len(kept) != 0 {
				t.Errorf("%v: %d versions kept", c, len(kept))
			}
			continue
		}
		last := a.Plans[len(a.Plans)-1]
		if len(kept) == 0 || !slices.Equal(last.Passed, c.want) || last.On != a.Measured+7 || len(last.Weeks) != len(first.Weeks) {
			t.Errorf("%v: kept %d, passed %v on %s", c, len(kept), last.Passed, last.On)
		}
	}
	if v := a.Plans; len(v) != 4 || v[0].Passed != nil || v[3].Version != 4 {
		t.Errorf("%d versions, the first with %v signed", len(v), v[0].Passed)
	}
}

// The first version that is kept is what hung: a band that snapped since is on its cards,
// and on none of the next version's.
func TestASnappedBandStaysInTheFirstVersion(t *testing.T) {
	studio := demoStudio(t, nil)
	a := pick(studio.Clients, "maren")[0]
	a.Plans, a.Bands = nil, slices.Clone(a.Bands)
	for i := range a.Bands {
		if a.Bands[i].Name == "narrow" {
			a.Bands[i].Retired = a.Measured + 20
		}
	}
	_, p, problems := planner.Read(&studio.Library, a, nil, a.Measured+20)
	kept := toKeep(&studio, a, &p, a.Measured+20, nil)
	if problems.Stop() || len(kept) != 2 {
		t.Fatalf("%d versions, %v", len(kept), problems)
	}
	for i, want := range []bool{true, false} {
		if got := slices.Contains(kept[i].Weeks[4].Rig.Bands, "narrow"); got != want {
			t.Errorf("version %d, week 5 hangs %v", i+1, kept[i].Weeks[4].Rig.Bands)
		}
	}
}
