package paper

import (
	"crypto/rand"
	"math"
	"os"
	"slices"
	"sync"
	"testing"
	"time"

	"pgregory.net/rapid"

	"gatepost/program"
	"gatepost/program/intake"
	"gatepost/program/ladder"
	"gatepost/program/planner"
	"gatepost/program/posture"
	"gatepost/program/publish/view"
	"gatepost/program/publish/view/viewtest"
)

// repo reads the library and the demo studio of this repository.
var repo = sync.OnceValues(func() (program.Studio, program.Problems) {
	root := os.DirFS("../../..")
	return intake.Read(root, root, rand.Reader)
})

func demo(t testing.TB) program.Studio {
	t.Helper()
	studio, problems := repo()
	if problems.Stop() {
		t.Fatal(problems)
	}
	return studio
}

// spoken is the demo studio in a language.
func spoken(t testing.TB, language string) program.Studio {
	t.Helper()
	root := os.DirFS("../../..")
	studio, problems := intake.Read(viewtest.Spoken{FS: root, Language: language}, root, rand.Reader)
	if problems.Stop() {
		t.Fatal(problems)
	}
	return studio
}

// demoView is a client of the demo studio as printed.
func demoView(t testing.TB, slug string) *view.View {
	t.Helper()
	studio := demo(t)
	for i := range studio.Clients {
		if studio.Clients[i].Slug == slug {
			return viewOf(t, studio.Coach, &studio.Clients[i])
		}
	}
	t.Fatalf("no client %s", slug)
	return nil
}

type fataler interface {
	Helper()
	Fatal(...any)
}

func viewOf(t fataler, coach program.Coach, a *program.Assessment) *view.View {
	t.Helper()
	studio, _ := repo()
	p, problems := planner.Plan(&studio.Library, a)
	if problems.Stop() {
		t.Fatal(problems)
	}
	v, problems := view.New(coach, &studio.Library, &p)
	if problems.Stop() {
		t.Fatal(problems)
	}
	v.Show(everywhere)
	return v
}

// album are the exercises' drawings, which are the same in every language.
var album = sync.OnceValue(func() *posture.Album {
	studio, _ := repo()
	return posture.NewAlbum(&studio.Library)
})

// names as people have them, in Polish, Vietnamese, Greek and Cyrillic letters,
// short and very long, composed and not.
var names = []string{
	"Li", "Żółcisława Gżegżółka-Brzęczyszczykiewicz", "Nguyễn Thị Hương Giang", "Παρασκευή Χατζηκωνσταντίνου",
	"Всеволод Жукоўскі-Щербацький", "Zoe\u0301 Ångström-Þórsdóttir", "Wolfeschlegelsteinhausenbergerdorffwelchevoralternwaren",
	"Maria da Conceição Esperança dos Santos e Albuquerque de Vasconcelos Figueiredo",
}

var bandNames = [][]string{
	{"narrow", "middle", "wide"}, {"cienka żółta taśma", "średnia", "szeroka gwiaździsta"}, {"dây mảnh", "dây vừa", "dây rộng"},
	{"στενό λάστιχο", "μεσαίο", "φαρδύ"}, {"узкая", "средняя-пошире", "широкая"},
}

var stepIDs = []string{"tuck", "half-open-tuck", "open-tuck", "advanced-tuck", "one-leg-half-lay", "open-half-lay",
	"straddle", "closed-half-lay", "narrow-straddle", "full"}

// clients draws assessments that make a program: of any body, 4 to 16 weeks, 1 to
// 6 days, with and without bands, sore or fine.
var clients = rapid.Custom(func(t *rapid.T) program.Assessment {
	height := float64(rapid.IntRange(148, 198).Draw(t, "height")) / 100
	a := program.Assessment{
		Slug: "someone", Measured: 20822 + program.Date(rapid.IntRange(0, 400).Draw(t, "measured")), Places: program.Places{},
		Athlete: program.Athlete{
			Name: rapid.SampledFrom(names).Draw(t, "name"),
			Sex:  rapid.SampledFrom([]program.Sex{program.SexFemale, program.SexMale, program.SexUnspecified}).Draw(t, "sex"),
			Born: 20822 - program.Date(365*rapid.IntRange(18, 66).Draw(t, "age")), Height: height, ArmSpan: height,
			Mass:     float64(rapid.IntRange(45, 105).Draw(t, "mass")),
			Straddle: float64(rapid.IntRange(70, 160).Draw(t, "straddle")) * math.Pi / 180,
		},
		Kit:     []string{"wall", "pull-up bar", "bathroom scale", "dumbbells"},
		Hanging: program.Hanging{Anchor: 2.15, Support: 0.10, Drops: []float64{0, 0.2, 0.4}},
		Health:  program.Health{Wrists: sore.Draw(t, "wrists"), Elbows: sore.Draw(t, "elbows"), Shoulders: program.JointFine},
	}
	if rapid.IntRange(0, 3).Draw(t, "parallettes") > 0 {
		a.Kit = append(a.Kit, "parallettes")
	}
	a.Bands = bandsOf(rapid.IntRange(0, 3).Draw(t, "bands"), rapid.SampledFrom(bandNames).Draw(t, "names"))
	a.Training = program.Training{
		Experience: float64(rapid.IntRange(0, 200).Draw(t, "experience")), Minutes: rapid.SampledFrom([]int{20, 40, 60, 90}).Draw(t, "minutes"),
		Weeks: rapid.IntRange(4, 16).Draw(t, "weeks"), Days: days(t),
		Other: rapid.SampledFrom([][]program.OtherTraining{nil, {{Day: time.Tuesday, What: "bell practice"}},
			{{Day: time.Sunday, What: "rowing on the river with the whole crew of the hall", Hard: true}, {Day: time.Monday, What: "running"}, {Day: time.Friday, What: "walking"}}}).Draw(t, "other"),
	}
	a.Goal = program.Goal{Skill: "planche", Step: rapid.SampledFrom(stepIDs).Draw(t, "goal"), Hold: float64(rapid.IntRange(3, 20).Draw(t, "hold")),
		By: a.Measured + program.Date(rapid.IntRange(100, 1000).Draw(t, "by"))}
	if n := rapid.IntRange(-1, len(stepIDs)-1).Draw(t, "tested"); n >= 0 {
		a.Tests = []program.Hold{{Step: stepIDs[n], Seconds: float64(rapid.IntRange(2, 25).Draw(t, "held"))}}
	}
	return a
})

var sore = rapid.SampledFrom([]program.Joint{program.JointFine, program.JointFine, program.JointFine, program.JointSore})

func bandsOf(n int, names []string) []program.Band {
	var all []program.Band
	for i := range n {
		f := 15 * float64(1+2*i)
		all = append(all, program.Band{Name: names[i], Rest: 1, Pulls: []program.Pull{{At: 1.3, Force: f}, {At: 1.6, Force: 1.5 * f}, {At: 1.9, Force: 1.9 * f}}})
	}
	return all
}

func days(t *rapid.T) []time.Weekday {
	week := []time.Weekday{1, 2, 3, 4, 5, 6, 0}
	n := rapid.IntRange(1, 6).Draw(t, "days")
	all := rapid.Permutation(week).Draw(t, "week")[:n]
	slices.SortFunc(all, func(a, b time.Weekday) int { return int((a+6)%7) - int((b+6)%7) })
	return all
}

func shown(t testing.TB) Shown {
	studio := demo(t)
	banded, lean := ladder.Shown(&studio.Library, "")
	return Shown{banded, lean, album().Of}
}

// others are clients of the skills that the demo studio does not train, one of each
// family: pressed, lifted into, practised; and a heavy one who begins with nothing but a
// floor.
func others() []program.Assessment {
	base := program.Assessment{Measured: 20822, Places: program.Places{},
		Athlete:  program.Athlete{Sex: program.SexFemale, Born: 20822 - 365*32, Height: 1.68, ArmSpan: 1.68, Mass: 60},
		Health:   program.Health{Wrists: program.JointFine, Elbows: program.JointFine, Shoulders: program.JointFine},
		Training: program.Training{Experience: 52, Days: []time.Weekday{1, 3, 5}, Minutes: 60},
		Kit:      []string{"wall", "box", "parallettes"}}
	press, lift, balance, heavy := base, base, base, base
	heavy.Slug, heavy.Athlete.Name, heavy.Athlete.Mass, heavy.Kit = "ottilie", "Ottilie", 104, nil
	heavy.Training.Experience, heavy.Training.Days, heavy.Training.Minutes = 0, []time.Weekday{1, 4}, 30
	heavy.Goal = program.Goal{Skill: "planche", Step: "tuck", Hold: 10, By: 20822 + 330}
	press.Slug, press.Athlete.Name = "quirin", "Quirin"
	press.Goal = program.Goal{Skill: "handstand-push-up", Step: "wall", Reps: 5, Hold: 15, By: 20822 + 330}
	press.Hanging.Pads = []float64{.05, .10, .15}
	press.Tests = []program.Hold{{Exercise: "wall-handstand-line", Seconds: 50}, {Exercise: "push-up", Reps: 20}, {Step: "pike", Reps: 8}}
	lift.Slug, lift.Athlete.Name, lift.Athlete.Fold = "ilka", "Ilka", 2.4
	lift.Goal = program.Goal{Skill: "press-to-handstand", Step: "straddle", Reps: 3, Hold: 9, By: 20822 + 330}
	lift.Hanging.Blocks = []float64{.10, .20, .30, .40}
	lift.Tests = []program.Hold{{Exercise: "wall-handstand-line", Seconds: 45}, {Exercise: "straddle-support", Seconds: 12},
		{Exercise: "planche-lean", Seconds: 20, Ahead: .20}, {Step: "block-40", Rig: program.Rig{Block: .40}, Reps: 5}}
	balance.Slug, balance.Athlete.Name = "edda", "Edda"
	balance.Goal = program.Goal{Skill: "free-handstand", Step: "short-stand", Hold: 10, By: 20822 + 330}
	balance.Tests = []program.Hold{{Exercise: "lying-handstand-line", Seconds: 40}, {Exercise: "box-handstand-line", Seconds: 35}}
	return []program.Assessment{press, lift, balance, heavy}
}

// everywhere are the album's drawings on all days.
func everywhere(program.Date) (func(exercise string) []program.Picture, bool) {
	return album().Of, false
}
