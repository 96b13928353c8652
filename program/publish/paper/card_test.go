package paper

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"gatepost/program"
	"gatepost/program/planner"
	"gatepost/program/publish/view"
	"gatepost/program/publish/view/viewtest"
	_ "gatepost/program/steady"

	"pgregory.net/rapid"
)

// demoStudio is the demo studio of this repository.
var demoStudio = sync.OnceValue(func() program.Studio {
	studio, problems := repo()
	if problems.Stop() {
		panic(problems[0])
	}
	return studio
})

// bent draws a client of the demo studio, bent: other weeks, days, minutes,
// joints, bands and goals, names in letters of several alphabets.
func bent(t *rapid.T) *view.View {
	studio := demoStudio()
	a := rapid.SampledFrom(studio.Clients).Draw(t, "client")
	name := rapid.StringOfN(rapid.RuneFrom([]rune("aeiouŁłŚćệẾờΩΣЖяé\u0301-’. \u00a0\U0001F514漢")), 1, 60, -1)
	a.Athlete.Name = name.Draw(t, "name")
	a.Training.Weeks = rapid.IntRange(4, 16).Draw(t, "weeks")
	a.Training.Days = []time.Weekday{1, 2, 3, 4, 5, 6}[:rapid.IntRange(1, 6).Draw(t, "days")]
	a.Training.Minutes = rapid.SampledFrom([]int{20, 30, 45, 60, 90, 120}).Draw(t, "minutes")
	a.Training.Experience = float64(rapid.IntRange(0, 400).Draw(t, "experience"))
	joint := rapid.SampledFrom([]program.Joint{program.JointFine, program.JointFine, program.JointSore})
	a.Health = program.Health{Wrists: joint.Draw(t, "wrists"), Elbows: joint.Draw(t, "elbows"), Shoulders: joint.Draw(t, "shoulders")}
	a.Goal.Step = rapid.SampledFrom([]string{"tuck", "advanced-tuck", "straddle", "full"}).Draw(t, "goal")
	if rapid.Bool().Draw(t, "without tests") {
		a.Tests = nil
	}
	if rapid.Bool().Draw(t, "without bands") {
		a.Bands, a.Hanging, a.Tests = nil, program.Hanging{}, nil
	}
	p, problems := planner.Plan(&studio.Library, &a)
	if problems.Stop() {
		t.Fatal(problems)
	}
	rename(&p, rapid.StringMatching(`[a-zżệΩж -]{1,24}`).Draw(t, "band"))
	coach := studio.Coach
	coach.Paper = rapid.SampledFrom([]program.Paper{program.PaperA4, program.PaperLetter}).Draw(t, "paper")
	coach.Site = rapid.SampledFrom([]string{"", "https://a.example/", coach.Site, "https://" + strings.Repeat("long", 60) + ".example/"}).Draw(t, "site")
	v, _ := view.New(coach, &studio.Library, &p)
	return v
}

// rename gives the bands of a program another name.
func rename(p *program.Program, band string) {
	for i := range p.Weeks {
		for j := range p.Weeks[i].Sessions {
			for k := range p.Weeks[i].Sessions[j].Items {
				rig := &p.Weeks[i].Sessions[j].Items[k].Rig
				rig.Bands = slices.Repeat([]string{band}, len(rig.Bands))
			}
		}
	}
}

func TestCardsFitTheirSheet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := bent(t)
		pages := layCards(setter(), v, rapid.Bool().Draw(t, "both sides"), v.Cards)
		if len(pages) == 0 {
			return
		}
		page := rapid.SampledFrom(pages).Draw(t, "page")
		for _, fault := range append(page.Faults(), cardFaults(page)...) {
			t.Error(fault)
		}
	})
}

// Two sessions that had more rows than a Letter card has room for: a cue lay over
// the finishing row. In the first, three tucks, one behind the other, under bands
// whose names take a line each; in the second, four pulls and strength drills beside
// leans, on four days of two hours.
func TestFullCardsFitLetter(t *testing.T) {
	for band, bend := range map[string]func(*program.Assessment){
		"---nu- zж-lectg": func(a *program.Assessment) {
			a.Training.Weeks, a.Training.Minutes, a.Training.Experience, a.Goal.Step = 6, 45, 26, "tuck"
		},
		"gacfΩthycệvxΩv": func(a *program.Assessment) {
			a.Training.Weeks, a.Training.Minutes, a.Training.Experience = 9, 120, 95
			a.Training.Days = []time.Weekday{1, 2, 3, 4}
		},
	} {
		studio := demoStudio()
		a := studio.Clients[slices.IndexFunc(studio.Clients, func(a program.Assessment) bool { return a.Slug == "maren" })]
		a.Health, a.Tests = program.Health{Wrists: program.JointFine, Elbows: program.JointFine, Shoulders: program.JointFine}, nil
		bend(&a)
		p, problems := planner.Plan(&studio.Library, &a)
		if problems.Stop() {
			t.Fatal(problems)
		}
		rename(&p, band)
		coach := studio.Coach
		coach.Paper = program.PaperLetter
		v, _ := view.New(coach, &studio.Library, &p)
		for _, page := range layCards(setter(), v, true, v.Cards) {
			for _, fault := range append(page.Faults(), cardFaults(page)...) {
				t.Error(fault)
			}
		}
	}
}

// More than any session has so far: five holds, one of them tried, two checked, one
// of six sets, and all drills. It fits Letter, in both languages, and says it all.
func TestFullestCardFits(t *testing.T) {
	more := []program.Prescription{
		{Exercise: "tuck-hold", Step: "tuck", Role: program.RoleAhead, Sets: 3, Rest: 180, Try: true, StraightArm: true},
		{Exercise: "tuck-hold", Step: "tuck", Role: program.RoleTest, Sets: 1, Rest: 180, Check: true, StraightArm: true},
		{Exercise: "planche-lean", Ahead: 0.14, Role: program.RoleTest, Sets: 1, Rest: 180, Check: true, StraightArm: true},
		{Exercise: "planche-lean", Ahead: 0.14, Role: program.RoleMain, Sets: 6, Hold: 10, Rest: 150, StraightArm: true},
	}
	for _, language := range []string{"en", "de"} {
		studio := spoken(t, language)
		for i := range studio.Clients {
			p, _ := planner.Plan(&studio.Library, &studio.Clients[i])
			items := &p.Weeks[0].Sessions[0].Items
			if slug := p.Client.Slug; slug == "anselm" || slug == "runa" { // have two holds already
				continue
			}
			*items = slices.Insert(*items, 4, more...)
			studio.Coach.Paper = program.PaperLetter
			v, _ := view.New(studio.Coach, &studio.Library, &p)
			page := layCards(setter(), v, false, v.Cards[:1])[0]
			for _, fault := range append(page.Faults(), cardFaults(page)...) {
				t.Errorf("%s, %s: %s", p.Client.Slug, language, fault)
			}
			text := textOf(page)
			for _, item := range v.Cards[0].Items {
				if !strings.Contains(text, item.Name) || strings.Contains(text, "…") {
					t.Errorf("%s, %s: no %s in %s", p.Client.Slug, language, item.Name, text)
				}
			}
		}
	}
}

var secondsDose = regexp.MustCompile(`^\d+\x{a0}×\x{a0}\d+\x{a0}s$`)

// cardFaults are faults that cards alone can have: seconds that are too small to
// read, boxes too small to write in, and boxes over each other, over a text or
// over the cut.
func cardFaults(page *Page) []string {
	var all []string
	say := func(what string, m Mark) { all = append(all, what+": "+describeMark(m)) }
	var boxes []Frame
	for _, m := range page.Marks {
		switch m := m.(type) {
		case Frame:
			boxes = append(boxes, m)
		case Text:
			if m.Size < 7 {
				say("a text is small", m)
			}
			if secondsDose.MatchString(m.Lines[0]) && m.Size < 12 {
				say("seconds are small", m)
			}
		case Fill:
			if m.Tone == Tint && m.W < 20 && (m.W < 9 || m.H < 9) {
				say("a box is small", m)
			}
		}
	}
	for i, b := range boxes {
		for _, c := range boxes[i+1:] {
			if b.Box.overlaps(c.Box) {
				say("boxes overlap", b)
			}
		}
		for _, m := range page.Marks {
			if u, ok := m.(Text); ok && b.Box.overlaps(u.Box) && !u.Box.within(b.Box) {
				say("a box lies over a text", u)
			}
			if u, ok := m.(Picture); ok && b.Box.overlaps(u.Box) {
				say("a box lies over a picture", b)
			}
		}
	}
	cuts := [2]Box{{page.Width/2 - cardMargin + 0.2, 0, 2*cardMargin - 0.4, page.Height}, {0, page.Height/2 - cardMargin + 0.2, page.Width, 2*cardMargin - 0.4}}
	for _, m := range page.Marks {
		if _, mark := m.(Stroke); !mark && (m.extent().overlaps(cuts[0]) || m.extent().overlaps(cuts[1])) {
			say("over the cut", m)
		}
	}
	return all
}

func describeMark(m Mark) string {
	b := m.extent()
	where := strconv.FormatFloat(b.X, 'f', 1, 64) + ", " + strconv.FormatFloat(b.Y, 'f', 1, 64)
	if t, ok := m.(Text); ok {
		return strings.Join(t.Lines, "/") + " at " + where
	}
	return where
}

// The demo studio's cards leave nothing out.
func TestDemoCardsAreWhole(t *testing.T) {
	studio := demoStudio()
	for _, paper := range []program.Paper{program.PaperA4, program.PaperLetter} {
		studio.Coach.Paper = paper
		for i := range studio.Clients {
			p, _ := planner.Plan(&studio.Library, &studio.Clients[i])
			v, _ := view.New(studio.Coach, &studio.Library, &p)
			for _, page := range layCards(setter(), v, false, v.Cards) {
				for _, m := range page.Marks {
					if text, ok := m.(Text); ok && strings.HasSuffix(text.Lines[len(text.Lines)-1], "…") {
						t.Errorf("%s, %s: %q", p.Client.Slug, paper, text.Lines)
					}
				}
			}
		}
	}
}

// Nor do those of generated clients, in either language: a lean named in a narrow row
// once lost the wall.
func TestCardsAreWhole(t *testing.T) {
	for _, language := range []string{"en", "de"} {
		studio := spoken(t, language)
		cards := 0
		for seed := range 24 {
			a := clients.Example(seed)
			a.Athlete.Name = "Signe" // a name may be too long
			p, _ := planner.Plan(&studio.Library, &a)
			studio.Coach.Paper = papers[seed%2]
			v, _ := view.New(studio.Coach, &studio.Library, &p)
			cards += len(v.Cards)
			if _, after, cut := strings.Cut(textOf(layCards(setter(), v, false, v.Cards)...), "…"); cut {
				t.Errorf("client %d, %s: cut before %.60q", seed, language, after)
			}
		}
		if cards < 300 {
			t.Errorf("%s: only %d cards", language, cards)
		}
	}
}

// A batch has sheets of its own, printed on one side or on both, so that the first
// can be printed without the others.
func TestBatchesHaveSheetsOfTheirOwn(t *testing.T) {
	v := fixture(t)
	for name, c := range map[string]struct {
		first, later int
		bothSides    bool
		want         string // cards on each page
	}{
		"one side":               {3, 6, false, "3 4 2"},
		"a full sheet":           {4, 1, false, "4 1"},
		"two sheets":             {5, 1, false, "4 1 1"},
		"the first alone":        {2, 0, false, "2"},
		"both sides":             {3, 6, true, "3 0 4 2"},
		"both sides full":        {6, 5, true, "4 2 4 1"},
		"both sides, one batch":  {3, 0, true, "3"},
		"both sides, only later": {0, 5, true, "4 1"},
	} {
		var counts []string
		for _, page := range layCards(setter(), v, c.bothSides, v.Cards[:c.first], v.Cards[c.first:c.first+c.later]) {
			cards := 0
			for _, m := range page.Marks {
				if text, ok := m.(Text); ok && text.Lines[0] == v.CardText.Before {
					cards++
				}
			}
			counts = append(counts, strconv.Itoa(cards))
		}
		if got := strings.Join(counts, " "); got != c.want {
			t.Errorf("%s: %s cards, want %s", name, got, c.want)
		}
	}
}

// Four on A4 with 5 mm kept free are 100 × 143.5 mm: ISO 216's 210 × 297.
func TestCardSize(t *testing.T) {
	if b := place(A4, 0, false); b != (Box{5, 5, 100, 143.5}) {
		t.Errorf("got %v", b)
	}
}

// Flipped on the long edge, what is x from the left lies x from the right: each
// back has to be behind its front.
func TestBacksLieBehindFronts(t *testing.T) {
	for _, sheet := range []Sheet{A4, Letter} {
		for n := range view.CardsASheet {
			front, back := place(sheet, n, false), place(sheet, n, true)
			back.X = sheet.Width - back.Right()
			if !front.within(back) || !back.within(front) {
				t.Errorf("card %d: front %v, back seen through the sheet %v", n, front, back)
			}
		}
	}
}

// A session keeps every hold, test and pull, whatever shares a row.
func TestNothingIsLeftOut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := bent(t)
		if len(v.Cards) == 0 {
			return
		}
		c := &v.Cards[rapid.IntRange(0, len(v.Cards)-1).Draw(t, "card")]
		for _, s := range sharings {
			count := 0
			for _, row := range s.rows(c, v.CardText) {
				count += len(row.items)
				if len(row.items) > 1 && slices.ContainsFunc(row.items, alone) {
					t.Error("a hold or a test shares a row")
				}
			}
			if count != len(c.Items) {
				t.Errorf("%d of %d items", count, len(c.Items))
			}
		}
	})
}

// Seven rows at most, the preparation counted: between the rows of items are
// thin rules.
func TestSevenRowsAtMost(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := bent(t)
		if len(v.Cards) == 0 {
			return
		}
		page := A4.portrait("", leastCard)
		layCard(page, setter(), v, &v.Cards[rapid.IntRange(0, len(v.Cards)-1).Draw(t, "card")], place(A4, 0, false), map[any]*Plate{})
		rules := 0
		for _, m := range page.Marks {
			switch m := m.(type) {
			case Stroke:
				if m.Tone == Line {
					rules++
				}
			case Text:
				if m.Lines[0] == v.CardText.Notes {
					rules-- // over the notes
				}
			}
		}
		if rules > 6 { // five between six rows of items, one over the foot
			t.Errorf("%d rules", rules)
		}
	})
}

func alone(i *view.CardItem) bool {
	return slices.Contains([]program.Role{program.RoleMain, program.RoleAhead, program.RoleSecond, program.RoleTest}, i.RoleKey)
}

func cardsPDF(t *testing.T) []byte {
	t.Helper()
	p := viewtest.Program()
	p.Client.Name = "Nguyễn Łucja Ωμέγα Жанна"
	v, problems := view.New(viewtest.Coach(), viewtest.Library(), p)
	pdf, more := Cards(v, false)
	if problems != nil || more != nil {
		t.Fatal(problems, more)
	}
	return pdf
}

func TestCardsAreSound(t *testing.T) {
	if out := tool(t, cardsPDF(t), "qpdf", "--check", "FILE"); strings.Contains(out, "WARNING") {
		t.Error(out)
	}
}

// Every face embedded, with a map back to Unicode, says pdffonts.
func TestCardFontsAreEmbedded(t *testing.T) {
	for _, row := range strings.Split(strings.TrimSpace(tool(t, cardsPDF(t), "pdffonts", "FILE")), "\n")[2:] {
		if !regexp.MustCompile(`yes\s+(yes|no)\s+yes\s+\d+`).MatchString(row) {
			t.Error(row)
		}
	}
}

// What a reader takes out of the file is what the view said.
func TestCardTextComesOut(t *testing.T) {
	out := strings.Join(strings.Fields(strings.ReplaceAll(tool(t, cardsPDF(t), "pdftotext", "FILE", "-"), "\u00a0", " ")), " ")
	for _, want := range []string{"Week 3", "session 2 of 3", "Monday 11 January · 57 min", "wrists", "Prepare", "Open tuck", "4 × 12 s",
		"narrow + middle, strap 20 cm", "hands 26 cm ahead of the spot under the anchor", "Push the floor away", "Day rule", "Stop",
		"Nguyễn Łucja Ωμέγα Жанна", "Card 2 of 35", "Version", "Deload", "One hold, as long as it stays clean"} {
		if !strings.Contains(out, want) {
			t.Errorf("does not say %q", want)
		}
	}
}

// Sheets are A4 by ISO 216, or Letter, 8.5 × 11 in.
func TestCardSheets(t *testing.T) {
	coach := viewtest.Coach()
	for paper, want := range map[program.Paper]string{program.PaperA4: "595.28 x 841.89 pts", program.PaperLetter: "612 x 792 pts"} {
		coach.Paper = paper
		v, _ := view.New(coach, viewtest.Library(), viewtest.Program())
		pdf, _ := Cards(v, false)
		if out := tool(t, pdf, "pdfinfo", "FILE"); !strings.Contains(out, want) {
			t.Errorf("%s: no %s in\n%s", paper, want, out)
		}
	}
}

func TestCardsSameBytes(t *testing.T) {
	v := fixture(t)
	one, _ := Cards(v, true)
	two, _ := Cards(v, true)
	if !bytes.Equal(one, two) {
		t.Error("two runs differ")
	}
}

func TestWithheldHasNoCards(t *testing.T) {
	p := viewtest.Program()
	p.Withheld, p.Weeks = []program.Note{{Code: viewtest.FixtureNote}}, nil
	v, _ := view.New(viewtest.Coach(), viewtest.Library(), p)
	if pdf, problems := Cards(v, false); pdf != nil || problems != nil {
		t.Error("cards of no weeks")
	}
}

// zbarimg reads every code from the sheet at 200 dots an inch, a poor printer.
func TestEveryCodeIsRead(t *testing.T) {
	pdf := cardsPDF(t)
	tool(t, pdf, "zbarimg", "--version")
	folder := t.TempDir()
	file := filepath.Join(folder, "cards.pdf")
	if err := os.WriteFile(file, pdf, 0o600); err != nil {
		t.Fatal(err)
	}
	if out, err := exec.Command("pdftoppm", "-r", "200", "-gray", file, filepath.Join(folder, "page")).CombinedOutput(); err != nil {
		t.Skipf("left out: %v %s", err, out)
	}
	images, _ := filepath.Glob(filepath.Join(folder, "page*"))
	out, err := exec.Command("zbarimg", append([]string{"--raw", "--quiet", "-Sdisable", "-Sqrcode.enable"}, images...)...).Output()
	if err != nil {
		t.Fatal(err)
	}
	var want []string
	for _, c := range fixture(t).Cards {
		want = append(want, c.Link)
	}
	got := strings.Fields(string(out))
	slices.Sort(want)
	slices.Sort(got)
	if !slices.Equal(got, want) {
		t.Errorf("%d codes read of %d: %v", len(got), len(want), slices.Compact(got))
	}
}

func BenchmarkCards(b *testing.B) {
	v := fixture(b)
	for b.Loop() {
		Cards(v, false)
	}
}

// Who trains the entry has strength work alone. However full the card, the first of it, which the
// session is about, keeps its own row and boxes; only a card that lists all it has takes it in.
func TestWhatASessionIsAboutSharesNoRow(t *testing.T) {
	item := func(role program.Role) view.CardItem { return view.CardItem{Item: view.Item{RoleKey: role}} }
	c := view.Card{Items: []view.CardItem{item(program.RoleStrength), item(program.RoleStrength), item(program.RolePush)}}
	words := view.CardWords{Strength: "Strength", Against: "Push", Finish: "Finish"}
	for _, want := range []struct {
		sharing
		rows []int
	}{
		{sharing{rests: true, strength: true}, []int{1, 2}},
		{sharing{rests: true, strength: true, list: true}, []int{3}},
	} {
		var got []int
		for _, r := range want.sharing.rows(&c, words) {
			got = append(got, len(r.items))
		}
		if !slices.Equal(got, want.rows) {
			t.Errorf("list %v: items a row %v, wanted %v", want.list, got, want.rows)
		}
	}
}
