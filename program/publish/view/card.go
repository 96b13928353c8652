package view

import (
	"slices"
	"strconv"

	"gatepost/program"
)

// Card is one session on its own small sheet, to train from and to write on.
type Card struct {
	Week    string // "Week 3"
	Number  int    // of the week
	Session string // "session 2 of 3"
	Kind    string // "Deload"; empty in an ordinary week
	KindKey program.WeekKind
	Date    string   // "Wednesday 6 January"
	Minutes string   // "37 min"; "12 min, at home"
	Note    string   // what the week has to say first; may be empty
	Joint   string   // the same where a joint rests or comes back: for the client's own cards
	shared  string   // the same without kilograms; empty where there are none
	Say     []string // the coach's own words
	Mark    string   // what the star after a name means: "* by the coach"; empty where no name has one

	Prepare []CardItem
	Items   []CardItem // the others, in order
	Main    int        // index in Items of what the session is about
	Cue     string     // one, of the main item, another each week
	Link    string     // address of the day's page, or where there is none of the main item's; empty without a site
	Figure  program.Stance
	Terms   []string // the card's words of the trade, explained, the most needed first

	Count string // "Card 2 of 36"

	day program.Date
}

// CardItem is an item as a card writes it.
type CardItem struct {
	Item
	Name   string   // "Open tuck"
	Turns  []string // whose each set is, "L", "R", "L"; none where that is the client's to choose
	Pause  string   // "rest 2½ min", or where else the sets go
	Easier string   // what to do when it is too much today
	Harder string   // when it is too little; empty in a deload and in a test
	Check  bool
	Shown  bool // by the card's figure
	Boxes  []CardBox

	Pictures []program.Picture // of the exercise, where the card is to show them; see View.Show
}

// CardBox is a box to write in: of a set, or afterwards of the exercise.
type CardBox struct {
	Caption string
	After   bool
}

// CardWords are the captions of all cards.
type CardWords struct {
	Before, Tomorrow           string   // joints now, and next morning
	Joints                     []string // to ask about, those that the work is hardest on first
	Prepare, Against, Strength string   // captions of rows that hold several exercises
	Finish                     string
	Easier, Harder, Notes      string
	AsBelow                    string // with the bands of the next row
	DayTitle, DayRule          string
	StopTitle, StopRule        string
	Foot                       string // skill and dates of the block
	Guidance                   string // what a card is not
}

func (s *speech) cardWords(v *View) CardWords {
	return CardWords{
		Before: s.say("joints_log.before"), Tomorrow: s.say("joints_log.tomorrow"),
		Joints:  s.joints(),
		Prepare: s.say("role.prepare"), Against: s.say("role." + string(s.road.RoleAgainst())), Strength: s.say("role.strength"), Finish: s.say("card.finish"),
		Easier: s.say("exercise.easier"), Harder: s.say("exercise.harder"),
		Notes: s.say("card.notes"), AsBelow: s.say("card.as_below"), DayTitle: s.say("day_rule.title"), DayRule: s.ofDay("card.day_rule"),
		StopTitle: s.say("stop_rule.title"), StopRule: s.say("card.stop_rule"),
		Guidance: s.say("card.guidance"), Foot: join(v.Skill, s.span(v.Start, v.Start+program.Date(7*len(v.Weeks)-1))),
	}
}

// joints are those that a card asks about: of who hangs the wrists last.
func (s *speech) joints() []string {
	wrists, elbows, shoulders := s.say("joints_log.wrists"), s.say("joints_log.elbows"), s.say("joints_log.shoulders")
	if s.road.Hands == program.HandsHang {
		return []string{elbows, shoulders, wrists}
	}
	return []string{wrists, elbows, shoulders}
}

// cards are all sessions of the block, in order; written are its weeks in words.
func (s *speech) cards(p *program.Program, written []Week, coach program.Coach) []Card {
	var all []Card
	for i, w := range p.Weeks {
		for j := range w.Sessions {
			all = append(all, s.card(w, j, written[i].Sessions[j].Items, coach.Site))
		}
	}
	led := map[string]int{}
	for i := range all {
		if len(all[i].Terms) > 1 { // the effort is first on every card
			lead(all[i].Terms[1:], led)
		}
		all[i].Count = s.say("card.count", "number", strconv.Itoa(i+1), "cards", strconv.Itoa(len(all)))
	}
	return all
}

func (s *speech) card(w program.Week, index int, written []Item, site string) Card {
	session := w.Sessions[index]
	c := Card{
		Week: s.say("week.number", "number", strconv.Itoa(w.Number)), Number: w.Number, KindKey: w.Kind,
		Session: s.say("card.session", "number", strconv.Itoa(index+1), "sessions", strconv.Itoa(len(w.Sessions))),
		day:     session.Date, Date: s.day(session.Date), Minutes: s.minutes(session.Minutes), Joint: s.jointNote(session), Say: s.said(session.Say),
	}
	c.Note, c.shared = s.cardNote(w, session)
	if s.atHome(w, session) {
		c.Minutes = join(c.Minutes, s.say("card.at_home"))
	}
	if w.Kind != program.WeekBuild || showsGate(w, session) {
		c.Kind = s.kind(w)
	}
	rest := make([]program.Prescription, 0, len(session.Items))
	c.Items = make([]CardItem, 0, len(session.Items))
	for i, p := range session.Items {
		item := s.cardItem(p, written[i], w, session.Date)
		if p.Role == program.RolePrepare {
			c.Prepare = append(c.Prepare, item)
		} else {
			c.Items, rest = append(c.Items, item), append(rest, p)
		}
	}
	c.Terms = s.cardTerms(&c, rest)
	if slices.ContainsFunc(session.Items, func(p program.Prescription) bool { return p.ByCoach }) {
		c.Mark = s.say("wish.star", "mark", s.say("wish.mark"))
	}
	if len(rest) == 0 {
		return c
	}
	c.Main = centre(rest)
	main := rest[c.Main]
	if e, ok := s.lib.Exercise(main.Exercise); ok && len(e.Cues) > 0 {
		c.Cue = e.Cues[(w.Number-1)%len(e.Cues)]
	}
	if site != "" {
		c.Link = site + "exercise-" + main.Exercise + ".html"
	}
	if (main.Exercise == w.Exercise || main.Find.Any()) && (main.Role == program.RoleMain || main.Check || practised(main)) && s.rigged(w, main, session.Date) {
		c.Figure, c.Items[c.Main].Shown = w.Stance, true
	}
	return c
}

// nearMinutes is a day that nobody travels to a hall for (our judgement).
const nearMinutes = 20

// atHome reports whether a day is short, shows nobody anything, and needs no kit but a
// floor and a wall.
func (s *speech) atHome(w program.Week, session program.Session) bool {
	if session.Minutes > nearMinutes || w.Gate || w.Kind == program.WeekTest || w.Stance.Grip {
		return false
	}
	return !slices.ContainsFunc(session.Items, func(p program.Prescription) bool {
		e, ok := s.lib.Exercise(p.Exercise)
		return !ok || !p.Rig.Free() || p.Scale > 0 || slices.ContainsFunc(e.Kit, func(any []string) bool { return !slices.Contains(any, "wall") })
	})
}

// centre is the item that a session is about: its main hold, else its first
// straight-arm work, else its first item.
func centre(items []program.Prescription) int {
	for _, is := range []func(program.Prescription) bool{
		func(p program.Prescription) bool { return p.Role == program.RoleMain },
		func(p program.Prescription) bool { return p.StraightArm },
	} {
		if i := slices.IndexFunc(items, is); i >= 0 {
			return i
		}
	}
	return 0
}

// cardNote is that this session shows a gate, else the gate that has to be signed
// before its main hold, else that there is less help from here, else that the week
// is provisional.
// Shared is the same without kilograms, where it has some.
func (s *speech) cardNote(w program.Week, session program.Session) (note, shared string) {
	gate := ""
	if showsGate(w, session) {
		return s.say("card.gate_today"), ""
	}
	if session.HoldsMain() {
		for _, g := range s.program.Gates {
			if g.Week > 0 && g.Week < w.Number && g.Step != w.Step {
				gate = s.say("card.gate", "step", s.step(g.Step))
			}
		}
	}
	less := s.noted(w, "less-help")
	switch {
	case gate != "":
		return gate, ""
	case less != "" && sets(session, w.Exercise):
		return less, s.say("card.less_help")
	case w.Provisional:
		return s.say("week.provisional"), ""
	}
	return "", ""
}

// jointNotes are why a session is less than planned, and what its card says of that.
var jointNotes = []struct{ code, key string }{{"joint-rests", "card.joint_rests"}, {"joint-back", "card.joint_back"}}

// jointNote says that a joint rests, or is on the way back and has to have been quiet.
func (s *speech) jointNote(session program.Session) string {
	for _, n := range jointNotes {
		if len(noted(session.Dropped, []string{n.code})) > 0 {
			return s.say(n.key)
		}
	}
	return ""
}

// sets reports whether a session has main work of an exercise, finds its mark or checks it.
func sets(session program.Session, exercise string) bool {
	return slices.ContainsFunc(session.Items, func(p program.Prescription) bool {
		return p.Exercise == exercise && (p.Role == program.RoleMain || p.Check)
	})
}

// showsGate says that a session's main work is a gate.
func showsGate(w program.Week, session program.Session) bool { return w.Gate && session.HoldsMain() }

func (s *speech) cardItem(p program.Prescription, written Item, w program.Week, on program.Date) CardItem {
	c := CardItem{Item: written, Turns: s.sidesInTurn(written), Check: p.Check}
	c.Boxes = s.boxes(p, c.Turns)
	c.Name = capital(c.Item.Name())
	if p.ByCoach {
		c.Name += s.say("wish.starred")
	}
	if p.Find.Any() {
		c.Full, c.Amount = c.Amount, s.findingOnCard(p)
	}
	if p.Scale == 0 {
		c.Help = s.ofHelp(c.Help)
	}
	switch {
	case p.InRests:
		c.Pause = s.say("card.in_rests")
	case p.Rest > 0 && (p.Sets > 1 || c.Open):
		c.Pause = s.say("amount.rest", "rest", c.Rest)
	}
	if c.Open {
		return c
	}
	c.Easier = s.easier(p, on)
	if shows := w.Gate && p.Role == program.RoleMain; w.Kind == program.WeekBuild && !shows {
		c.Harder = s.harder(p)
	}
	return c
}

// boxes are one for each set, numbered or with the letter of its side, then those
// of the whole: RPE, form of main work (a gate asks for it, so it has a place every
// time), and a lean's distance, in case it was another.
func (s *speech) boxes(p program.Prescription, turns []string) []CardBox {
	switch {
	case practised(p):
		return s.triesBoxes(p)
	case p.Find.Any():
		return s.marksBoxes(p)
	}
	var all []CardBox
	for i := range max(p.Sets, 1) {
		b := CardBox{Caption: strconv.Itoa(i + 1)}
		if i < len(turns) {
			b.Caption += "\u00a0" + turns[i]
		}
		if open(p) && p.Sets <= 1 && p.Reps == 0 {
			if b.Caption = s.plain("card.seconds"); p.Step != "" {
				b.Caption = s.say("card.seconds")
			}
		}
		all = append(all, b)
	}
	if p.Ahead > 0 {
		all = append(all, CardBox{s.say("card.ahead", "length", s.centimetres(p.Ahead)), true})
	}
	if !p.Try {
		all = append(all, CardBox{s.say("rpe.title"), true})
	}
	if p.Role == program.RoleMain || p.Role == program.RoleTest {
		all = append(all, CardBox{s.say("card.clean"), true})
	}
	return all
}

// easier is what to do instead when an item is too much today: of a hold one help
// more or three seconds less (the day rule), of an exercise the easier one.
func (s *speech) easier(p program.Prescription, on program.Date) string {
	e, _ := s.lib.Exercise(p.Exercise)
	switch {
	case p.Scale > 0:
		return s.say("card.more_on_scale")
	case p.Rig.Pull > 0:
		return s.say("card.more_pull")
	case p.Step != "" && !p.Rig.Free():
		return s.say("card.more_help")
	case p.Step != "" && (s.bandsAt(on) || s.lifts()):
		return s.say("card.some_help")
	case (p.Step != "" || p.StraightArm) && p.Hold > 0:
		return s.lasting(p, max(p.Hold-3, 3))
	case e != nil && s.instead(e, e.Easier) != "":
		return s.instead(e, e.Easier)
	case p.Hold > 0:
		return s.seconds(max(p.Hold-5, 5))
	}
	return s.say("card.fewer")
}

// rigged reports whether an item of a day has the help that its week has, which a client who
// is elsewhere may have to do without.
func (s *speech) rigged(w program.Week, p program.Prescription, on program.Date) bool {
	return p.Help == w.Help && p.Scale == w.Scale || s.placeOn(on) == nil
}

// placeOn is where a client is on a day, with other kit; nil: where they always are.
func (s *speech) placeOn(on program.Date) *program.WishRead {
	for i := range s.program.Wishes {
		if w := &s.program.Wishes[i]; w.Kind == program.WishAt && !w.AllKit && w.Within(on) {
			return w
		}
	}
	return nil
}

// bandsAt reports whether there are bands on a day: elsewhere only where they come along.
func (s *speech) bandsAt(on program.Date) bool {
	at := s.placeOn(on)
	return len(s.program.Bands) > 0 && (at == nil || slices.Contains(at.Kit, "bands"))
}

// lasting writes how long an item lasts, counted as it is: what no step is, in seconds
// also where steps are repeated.
func (s *speech) lasting(p program.Prescription, seconds int) string {
	switch {
	case p.Reps > 0:
		return s.times(seconds)
	case p.Step == "":
		return s.seconds(seconds)
	}
	return s.length(seconds)
}

// oneMore is a second, or what a repetition takes.
func (s *speech) oneMore(p program.Prescription) int {
	if p.Reps > 0 || s.counts(p.Step) {
		return program.SecondsPerRep
	}
	return 1
}

// harder is the next thing when every set was easy: of a hold one second more.
func (s *speech) harder(p program.Prescription) string {
	e, _ := s.lib.Exercise(p.Exercise)
	switch {
	case p.Step != "" || p.StraightArm && p.Hold > 0:
		return s.lasting(p, p.Hold+s.oneMore(p))
	case e != nil && s.instead(e, e.Harder) != "":
		return s.instead(e, e.Harder)
	case p.Hold > 0:
		return s.seconds(p.Hold + 5)
	}
	return s.say("card.more")
}

// instead is the first of some exercises that asks for no other kit, joint or
// grip than this one: what the client has, and may do, is not known here.
func (s *speech) instead(of *program.Exercise, ids []string) string {
	for _, id := range ids {
		if e, ok := s.lib.Exercise(id); ok && asksNoMore(e, of) && !s.avoids(id) {
			return e.Name
		}
	}
	return ""
}

func asksNoMore(e, than *program.Exercise) bool {
	for _, any := range e.Kit {
		if !slices.ContainsFunc(than.Kit, func(has []string) bool { return slices.Equal(has, any) }) {
			return false
		}
	}
	for _, joint := range e.Loads {
		if !slices.Contains(than.Loads, joint) {
			return false
		}
	}
	return (e.Grip == than.Grip || e.Grip == program.GripNone || e.Grip == "") && (than.StraightArm || !e.StraightArm)
}
