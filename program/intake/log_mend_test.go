package intake

import (
	"strings"
	"testing"
)

// What a phone sends, as it comes: a session with its lines, signed by the first name
// and the beginning of the page's address.
const (
	phoneHeader = "date,exercise,set,bands,hold_s,reps,rpe,clean,pain,ahead,note,client\n"
	phoneMain   = "2027-01-11,tuck,,,11 11 11 9,,7.5,yes,,,,Maren-k7v2\n"
	phoneDone   = `2027-01-11,done,,,,,,,wrists 1 elbows 0,,"cold hall, good mood",Maren-k7v2` + "\n"
	phoneNext   = "2027-01-12,morning,,,,,,,elbows 2,,,Maren-k7v2\n"
	phoneAll    = phoneHeader + phoneMain + phoneDone + phoneNext
)

// However a mail program or a messenger hands it on, it is three lines of the log or a
// fault that names the line; nothing is read otherwise than it was sent.
func TestASentMessage(t *testing.T) {
	const all = "2027-01-11,tuck,,,11 11 11 9,,7.5,yes,,,\n" +
		"2027-01-11,done,,,,,,,wrists 1 elbows 0,,\"cold hall, good mood\"\n2027-01-12,morning,,,,,,,elbows 2,,\n"
	quoted := "> " + strings.ReplaceAll(strings.TrimSuffix(phoneAll, "\n"), "\n", "\n> ") + "\n"
	twice := "> > " + strings.ReplaceAll(strings.TrimSuffix(phoneAll, "\n"), "\n", "\n>> ") + "\n"
	cases := []struct{ name, text, added, says string }{
		{"as it was sent", phoneAll, all, ""},
		{"with line ends of a mail", strings.ReplaceAll(phoneAll, "\n", "\r\n"), all, ""},
		{"with a greeting", "Hi Tilda,\n\n" + phoneAll + "\nSee you!\n", all, "1 line is text above"},
		{"quoted", "Maren wrote:\n" + quoted, all, "1 line is text above"},
		{"quoted twice", twice, all, ""},
		{"and quoted below an answer", phoneAll + "\nOn Tuesday Maren wrote:\n" + quoted, all, "paste:6:1: warning: 1 line is text between those of the log"},
		{"twice, one below the other", phoneAll + phoneAll, all, ""},
		{"printers' quotes", strings.NewReplacer(`,"cold`, ",“cold", `mood",`, "mood”,").Replace(phoneAll), all, ""},
		{"German quotes", strings.NewReplacer(`,"cold`, ",„cold", `mood",`, "mood“,").Replace(phoneAll), all, ""},
		{"broken in the seconds", strings.Replace(phoneAll, "11 11 9", "11\n11 9", 1), all, ""},
		{"broken twice", strings.NewReplacer("11 11 11 9", "11\n11 11\n9", "elbows 2", "elbows\n2").Replace(phoneAll), all, ""},
		{"broken and quoted", strings.Replace(quoted, "wrists 1 elbows", "wrists 1\n> elbows", 1), all, ""},
		{"broken in a note", strings.Replace(phoneAll, "cold hall, good", "cold hall,\ngood", 1), strings.Replace(all, "cold hall, good", "cold hall,\ngood", 1), ""},
		{"broken in a note, with printers' quotes", strings.NewReplacer(`,"cold hall, `, ",“cold hall,\n", `mood",`, "mood”,").Replace(phoneAll), all, ""},

		{"cut in the last line", strings.TrimSuffix(phoneAll, ",,,Maren-k7v2\n"), "", "this line was cut in the middle"},
		{"cut, with a signature below", strings.TrimSuffix(phoneAll, " 2,,,Maren-k7v2\n") + "\n-- \nsent from a phone\n", "", "this line was cut in the middle"},
		{"cut in the seconds, with a signature", phoneHeader + "2027-01-11,tuck,,,11 1\n\nsent from a phone\n", "", "this line was cut in the middle"},
		{"cut in the name", strings.TrimSuffix(phoneAll, "7v2\n") + "\n", "", `"Maren-k"`},
		{"a day changed between two messages", phoneAll + strings.Replace(phoneAll, "11 9", "11 8", 1), "", "set 1 of tuck-hold on 2027-01-11 is"},
		{"of somebody else", strings.ReplaceAll(phoneAll, "Maren-k7v2", "Joss-a1b2"), "", `"Joss-a1b2"`},
	}
	for _, c := range cases {
		added, _, report := given(t, "", c.text)
		added = strings.TrimPrefix(added, LogHeader()+"\n")
		if added != c.added || !strings.Contains(report, c.says) || c.says == "" && report != "" {
			t.Errorf("%s: added\n%s\nwant\n%s\n%s", c.name, added, c.added, report)
		}
	}
}

// A phone signs with what somebody is called, which need not be the name's first word.
func TestASentMessageOfWhoIsCalledOtherwise(t *testing.T) {
	folder := sound(t)
	const file = "content/clients/maren/assessment.yaml"
	called := strings.NewReplacer("name: Maren", "name: Bell, Maren Anna\ncalled: Anna", "share: print", "share: site\npage: k7v2mxq9f4bd3w")
	folder = with(folder, file, called.Replace(string(folder[file].Data)))
	studio, problems := Read(folder, library(t), nil)
	if len(studio.Clients) != 1 {
		t.Fatal(reported(problems))
	}
	text := []byte(strings.ReplaceAll(phoneAll, "Maren-k7v2", "Anna-k7v2"))
	log, problems := ReadNewLines(&studio, &studio.Clients[0], "paste", text, nil)
	if len(log.Entries) != 3 || len(problems) > 0 {
		t.Errorf("%d entries\n%s", len(log.Entries), reported(problems))
	}
	for _, whose := range []string{"Anna-k7v2", "Anna"} {
		text := []byte(strings.ReplaceAll(phoneAll, "Maren-k7v2", whose))
		logs, problems := ReadNewLinesOfAll(&studio, nil, "paste", text)
		if len(logs) != 1 || len(logs[0].Log.Entries) != 3 || len(problems) > 0 {
			t.Errorf("of all, as %s: %d logs\n%s", whose, len(logs), reported(problems))
		}
	}
}
