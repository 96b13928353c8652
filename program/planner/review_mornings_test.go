package planner

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"gatepost/program"
)

// elbow is a morning with a number for the elbows, and nothing said of the rest.
func elbow(day program.Date, pain int) program.Entry {
	return program.Entry{Date: day, Morning: true, Sets: []program.SetDone{{Pain: program.Pain{Given: true, Wrists: -1, Elbows: pain, Shoulders: -1, Other: -1}}}}
}

// morningsRead reads a log of five weeks done as printed and some mornings more, on
// the last day of the sixth week.
func morningsRead(t *testing.T, lines func(on program.Date) []program.Entry) (program.Review, program.Program) {
	t.Helper()
	lib, a := library(t), maren(t)
	a.Training.Away = nil
	p, _ := Plan(lib, &a)
	on := p.Weeks[5].Start + 6
	a.Log = asPrinted(&p, 0, 1, 2, 3, 4, 5)
	a.Log.Entries = append(a.Log.Entries, lines(on)...)
	review, q, problems := Read(lib, &a, nil, on)
	if problems.Stop() || len(q.Withheld) > 0 {
		t.Fatal(problems, q.Withheld)
	}
	return review, q
}

// morningCodes are the flags of a review that mornings raise.
func morningCodes(r *program.Review) (codes []string, level program.FlagLevel) {
	for _, f := range r.Flags {
		if strings.HasPrefix(f.Code, "flag-morning") {
			codes, level = append(codes, f.Code), max(level, f.Level)
		}
	}
	return codes, level
}

// noted is a number for the elbows some days before the review.
type noted struct{ ago, pain int }

// The rule of the next morning: 1 or 2 above usual, repeat easier; more, or two
// mornings running, no straight-arm work (common practice). What usual is, and how
// far apart mornings may lie, is our judgement; each limit is tried on both sides.
func TestMorningRule(t *testing.T) {
	const look, stop = program.FlagLook, program.FlagStop
	ones := []noted{{26, 1}, {20, 1}, {14, 1}}
	zeros := []noted{{26, 0}, {20, 0}, {14, 0}}
	after := func(usual []noted, more ...noted) []noted { return append(slices.Clone(usual), more...) }
	for _, c := range []struct {
		name  string
		days  []noted
		code  string
		level program.FlagLevel
	}{
		{"as usual", after(ones, noted{1, 1}), "", 0},
		{"below usual", after(ones, noted{1, 0}), "", 0},
		{"one above", after(ones, noted{1, 2}), flagMorningUp, look},
		{"two above", after(ones, noted{1, 3}), flagMorningUp, look},
		{"three above", after(ones, noted{1, 4}), flagMorningHigh, stop},
		{"on the day of the review", after(ones, noted{0, 4}), flagMorningHigh, stop},
		{"much, and as usual", []noted{{26, 4}, {20, 4}, {14, 4}, {1, 4}}, "", 0},
		{"settled since", after(zeros, noted{3, 5}, noted{1, 0}), "", 0},

		// usual
		{"nothing noted before, one", []noted{{1, 1}}, flagMorningUp, look},
		{"nothing noted before, three", []noted{{1, 3}}, flagMorningHigh, stop},
		{"two mornings are no usual", []noted{{20, 3}, {14, 3}, {1, 3}}, flagMorningHigh, stop},
		{"three mornings are", []noted{{20, 3}, {14, 3}, {8, 3}, {1, 3}}, "", 0},
		{"the first week is sore throughout", []noted{{5, 3}, {3, 3}, {1, 3}}, flagMorningHigh, stop},
		{"four weeks before", []noted{{29, 3}, {27, 3}, {25, 3}, {1, 3}}, "", 0},
		{"a day earlier", []noted{{30, 3}, {27, 3}, {25, 3}, {1, 3}}, flagMorningHigh, stop},
		{"one bad morning is not usual", after(zeros, noted{8, 5}, noted{1, 3}), flagMorningHigh, stop},
		{"of the middle two the lower", []noted{{26, 0}, {20, 0}, {14, 2}, {10, 2}, {1, 3}}, flagMorningHigh, stop},

		// two running
		{"two running", after(zeros, noted{3, 1}, noted{1, 1}), flagMorningTwice, stop},
		{"two in a row", after(ones, noted{2, 2}, noted{1, 2}), flagMorningTwice, stop},
		{"four days apart", after(zeros, noted{5, 1}, noted{1, 1}), flagMorningTwice, stop},
		{"five days apart", after(zeros, noted{6, 1}, noted{1, 1}), flagMorningUp, look},
		{"two running, the second high", after(zeros, noted{3, 1}, noted{1, 3}), flagMorningHigh, stop},
		{"the one before as usual", after(ones, noted{3, 1}, noted{1, 2}), flagMorningUp, look},
		{"the first of them is not their usual", after(zeros[:2], noted{18, 2}, noted{14, 2}, noted{3, 2}, noted{1, 2}), flagMorningTwice, stop},

		// age
		{"a week ago, high", after(zeros, noted{7, 3}), flagMorningHigh, stop},
		{"older, high", after(zeros, noted{8, 3}), flagMorningOld, look},
		{"older, two running", after(zeros, noted{10, 1}, noted{8, 1}), flagMorningOld, look},
		{"two weeks ago, high", after(zeros[:2], noted{14, 3}), flagMorningOld, look},
		{"before that", after(zeros[:2], noted{15, 3}), "", 0},
		{"a week ago, a little", after(zeros, noted{7, 2}), flagMorningUp, look},
		{"older, a little: sessions since have answered it", after(zeros, noted{8, 2}), "", 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			review, q := morningsRead(t, func(on program.Date) (lines []program.Entry) {
				for _, d := range c.days {
					lines = append(lines, elbow(on-program.Date(d.ago), d.pain))
				}
				return lines
			})
			var want []string
			if c.code != "" {
				want = []string{c.code}
			}
			if codes, level := morningCodes(&review); !slices.Equal(codes, want) || level != c.level {
				t.Errorf("%v of level %d, wanted %v of level %d", codes, level, want, c.level)
			}
			if eased := hasNote(q.Notes, noteEased); eased != (c.level == stop) {
				t.Errorf("eased: %v", eased)
			}
		})
	}
}

// Each joint by itself; of several lines for a morning the highest counts; where it
// hurts elsewhere there is nothing to ease.
func TestMorningsOfOtherJoints(t *testing.T) {
	line := func(day program.Date, wrists, elbows, shoulders, other int) program.Entry {
		return program.Entry{Date: day, Morning: true, Sets: []program.SetDone{{Pain: program.Pain{Given: true, Wrists: wrists, Elbows: elbows, Shoulders: shoulders, Other: other}}}}
	}
	for _, c := range []struct {
		name  string
		lines func(on program.Date) []program.Entry
		want  []string // code and joint
		eased bool
	}{
		{"not said is not 0", func(on program.Date) []program.Entry {
			return []program.Entry{line(on-3, -1, 4, -1, -1), line(on-1, 0, -1, 0, -1)}
		}, []string{flagMorningHigh + " joint.elbows"}, true},
		{"two joints", func(on program.Date) []program.Entry {
			return []program.Entry{line(on-1, 1, 0, 3, 0)}
		}, []string{flagMorningHigh + " joint.shoulders", flagMorningUp + " joint.wrists"}, true},
		{"a morning in two lines", func(on program.Date) []program.Entry {
			return []program.Entry{elbow(on-1, 3), elbow(on-1, 1)}
		}, []string{flagMorningHigh + " joint.elbows"}, true},
		{"elsewhere", func(on program.Date) []program.Entry {
			return []program.Entry{line(on-1, -1, -1, -1, 6)}
		}, []string{flagMorningOther + " "}, false},
		{"after the review", func(on program.Date) []program.Entry {
			return []program.Entry{elbow(on+1, 6)}
		}, nil, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			review, q := morningsRead(t, c.lines)
			var got []string
			for _, f := range review.Flags {
				if strings.HasPrefix(f.Code, "flag-morning") {
					got = append(got, f.Code+" "+jointOf(f.Note))
				}
			}
			if !slices.Equal(got, c.want) || hasNote(q.Notes, noteEased) != c.eased {
				t.Errorf("%v, eased %v", got, !c.eased)
			}
		})
	}
}

func jointOf(n program.Note) string {
	for _, v := range n.Values {
		if v.Name == "joint" {
			return v.Text
		}
	}
	return ""
}

// A morning before the assessment says what is usual; the coach has seen the joint
// since, so that it stops nothing.
func TestMorningsBeforeTheAssessment(t *testing.T) {
	lib, a := library(t), maren(t)
	on := a.Measured + 1
	read := func(lines ...program.Entry) []string {
		a.Log.Entries = lines
		review, _, _ := Read(lib, &a, nil, on)
		codes, _ := morningCodes(&review)
		return codes
	}
	if codes := read(elbow(a.Measured-2, 5)); codes != nil {
		t.Errorf("before it: %v", codes)
	}
	usual := []program.Entry{elbow(a.Measured-9, 2), elbow(a.Measured-6, 2), elbow(a.Measured-2, 2)}
	if codes := read(append(usual, elbow(on, 2))...); codes != nil {
		t.Errorf("as usual: %v", codes)
	}
	if codes := read(append(usual, elbow(on, 5))...); !slices.Equal(codes, []string{flagMorningHigh}) {
		t.Errorf("above usual: %v", codes)
	}
}

// Mornings and sessions are two questions: neither counts in the other's.
func TestMorningsAreNotThePainOfSessions(t *testing.T) {
	review, _ := morningsRead(t, func(on program.Date) []program.Entry {
		return []program.Entry{elbow(on-15, 1), elbow(on-8, 2), elbow(on-1, 3), elbow(on-1, 2)}
	})
	for _, f := range review.Flags {
		if strings.HasPrefix(f.Code, "flag-pain") {
			t.Errorf("a morning is read as %s", f.Code)
		}
	}
	lib, a := library(t), maren(t)
	a.Log.Entries = []program.Entry{{Date: a.Measured, AsPrinted: true}, elbow(a.Measured+1, 1), elbow(a.Measured+3, 2)}
	if early, _, _ := Read(lib, &a, nil, a.Measured+2); early.Progress[0].Mornings.Elbows != 1 {
		t.Errorf("two days on, the week has %+v", early.Progress[0].Mornings)
	}
	last := review.Progress[len(review.Progress)-1]
	if last.Mornings.Elbows != 3 || last.Mornings.Wrists != -1 || last.Pain.Given {
		t.Errorf("the week has mornings %+v and sessions %+v", last.Mornings, last.Pain)
	}
	if before := review.Progress[len(review.Progress)-4]; before.Mornings.Given {
		t.Errorf("a week without a morning has %+v", before.Mornings)
	}
}

// A log of mornings alone is as good as none: no week counts as missed. What hurts
// is eased all the same.
func TestMorningsWithoutSessions(t *testing.T) {
	lib, a := library(t), maren(t)
	p, _ := Plan(lib, &a)
	on := p.Weeks[4].Start + 2
	a.Log.Entries = []program.Entry{elbow(p.Weeks[0].Start+1, 0), elbow(on-1, 2)}
	review, q, _ := Read(lib, &a, nil, on)
	if string(bytesOfProgram(p)) != string(bytesOfProgram(q)) || review.Last != 0 || review.Done != 0 {
		t.Errorf("last session %s, %d done", review.Last, review.Done)
	}
	if codes, _ := morningCodes(&review); !slices.Equal(codes, []string{flagMorningUp}) {
		t.Errorf("flags %v", codes)
	}
	a.Log.Entries = append(a.Log.Entries, elbow(on, 5))
	if _, q, _ = Read(lib, &a, nil, on); !hasNote(q.Notes, noteEased) {
		t.Error("five above usual eases nothing")
	}
}

// Mornings of nothing change nothing at all, on whatever days: they are no session,
// not the last one, and no week begun by them.
func TestQuietMorningsChangeNothing(t *testing.T) {
	lib := library(t)
	lives := lives(lib)
	rapid.Check(t, func(t *rapid.T) {
		l := lives.Draw(t, "life")
		without := l.a
		without.Log.Entries = slices.DeleteFunc(slices.Clone(l.a.Log.Entries), func(e program.Entry) bool { return e.Morning })
		with := without
		with.Log.Entries = slices.Clone(without.Log.Entries)
		for range rapid.IntRange(1, 10).Draw(t, "mornings") {
			day := l.on - program.Date(rapid.IntRange(-3, 60).Draw(t, "ago"))
			with.Log.Entries = append(with.Log.Entries, program.Entry{Date: day, Morning: true, Sets: []program.SetDone{{Pain: program.Pain{Given: true}}}})
		}
		x, p, _ := Read(lib, &without, l.wall, l.on)
		y, q, _ := Read(lib, &with, l.wall, l.on)
		for i := range y.Progress {
			y.Progress[i].Mornings = noPain
		}
		if !reflect.DeepEqual(x, y) || string(bytesOfProgram(p)) != string(bytesOfProgram(q)) {
			t.Errorf("%+v without mornings, %+v with them", x, y)
		}
	})
}
