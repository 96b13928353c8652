package site_test

import (
	"io/fs"
	"os"
	"strings"
	"testing"

	"gatepost/program"
	"gatepost/program/intake"
	"gatepost/program/ladder"
	"gatepost/program/planner"
	"gatepost/program/posture"
	"gatepost/program/publish/site"
	"gatepost/program/publish/view"
	"gatepost/templates"
)

// demo is the demo studio of this repository, read, planned and written, with
// room to change the assessments first.
func demo(t testing.TB, change func(*program.Assessment)) site.Source {
	t.Helper()
	root, err := os.OpenRoot("../../..")
	if err != nil {
		t.Fatal(err)
	}
	defer root.Close()
	return studio(t, root.FS(), change)
}

// studio is a coach's folder, read, planned and written.
func studio(t testing.TB, folder fs.FS, change func(*program.Assessment)) site.Source {
	t.Helper()
	studio, problems := intake.Read(folder, folder, nil)
	s := site.Source{Coach: studio.Coach, Library: &studio.Library, Notes: studio.Notes, Templates: []fs.FS{templates.FS}}
	for i := range studio.Clients {
		if change != nil {
			change(&studio.Clients[i])
		}
		p, found := planner.Plan(&studio.Library, &studio.Clients[i])
		v, _ := view.New(studio.Coach, &studio.Library, &p)
		problems = append(problems, found...)
		s.Clients = append(s.Clients, v)
	}
	for i := range studio.Public {
		studio.Public[i].Training.Weeks = 4 // a level's later weeks have pages as its first ones have
		levels, found := planner.Levels(&studio.Library, &studio.Public[i])
		p, _ := view.NewPublic(studio.Coach, &studio.Library, &studio.Public[i], levels)
		problems = append(problems, found...)
		s.Publics = append(s.Publics, site.Public{View: p})
	}
	for i := range studio.Library.RoadMaps {
		m := &studio.Library.RoadMaps[i]
		s.Illustrations = append(s.Illustrations, ladder.Illustrations(m)...)
		for _, sex := range []program.Sex{program.SexFemale, program.SexMale} {
			s.References = append(s.References, site.Reference{RoadMap: m.ID, Name: string(sex), Steps: ladder.Reference(m, sex)})
		}
	}
	s.Pictures = posture.NewAlbum(&studio.Library).Of
	for _, p := range problems {
		if !p.Warning {
			t.Errorf("%v (%s)", p.Error(), p.Advice)
		}
	}
	return s
}

// The demo studio's site is whole: every link leads somewhere, and exactly one
// client is on it.
func TestDemoSite(t *testing.T) {
	files := demoSite(t)
	checkLinks(t, files, 1000)
	folders := map[string]bool{}
	for path := range files {
		if isOfClient(path) {
			folders[strings.Split(path, "/")[2]] = true
		}
		for _, name := range []string{"Joss", "Anselm"} {
			if strings.Contains(files[path], name) {
				t.Errorf("%s names %s, who is on paper only", path, name)
			}
		}
	}
	if len(folders) != 2 {
		t.Errorf("%d clients are on the site, want the two who share", len(folders))
	}
	if dir := os.Getenv("GATEPOST_LOOK"); dir != "" { // to look at it in a browser
		save(t, dir, files)
	}
}

// Values of an assessment that no honest page would show by chance stand in
// every private field; none of them reaches the site.
func TestNothingPrivateOfAnAssessment(t *testing.T) {
	s := demo(t, func(a *program.Assessment) {
		a.Slug = "canary-" + a.Slug
		a.Athlete.Name += " Canaryson"
		a.Athlete.Born = program.NewDate(1987, 9, 21)
		a.Athlete.Mass, a.Athlete.Height = 61.37, 1.6379
		a.Health.Guardian = "canary guardian"
		a.Health.Wrists = program.JointSore
		a.Health.Conditions = []string{"canary condition"}
		a.Health.ClearedBy = program.Clearance{Name: "canary physician", On: a.Measured - 3}
		a.Training.Other = append(a.Training.Other, program.OtherTraining{What: "canary rowing"})
	})
	for path, text := range build(t, s) {
		all := strings.ToLower(path + "\n" + text)
		for _, secret := range []string{"canary", "1987", "21 september", "61.4", "61.37", "163.8", "1.64"} {
			if strings.Contains(all, secret) {
				t.Errorf("%s contains %q", path, secret)
			}
		}
		library := strings.HasSuffix(path, "/exercises.html") // says what to do with sore joints, to everybody
		if isOfClient(path) && !library && strings.Contains(all, "sore") {
			t.Errorf("%s speaks of a sore joint", path)
		}
	}
}
