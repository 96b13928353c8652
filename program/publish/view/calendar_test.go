package view

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"gatepost/program"
)

// RFC 9562, appendix A.4: the version 5 UUID of www.example.com as a DNS name.
func TestUUID5(t *testing.T) {
	dns := urlNamespace
	dns[3] = 0x10
	if got := uuid5(dns, "www.example.com"); got != "2ed6657d-e927-568b-95e1-2665a8aea6a2" {
		t.Errorf("got %s", got)
	}
}

// RFC 5545, 3.1: no more than 75 octets a line, CRLF, and unfolding gives the
// text back. Folding within a character is allowed there, but breaks readers.
func TestFold(t *testing.T) {
	for _, s := range []string{"", "short", strings.Repeat("x", 75), strings.Repeat("ệ×", 90)} {
		var out bytes.Buffer
		fold(&out, s)
		for _, line := range strings.Split(strings.TrimSuffix(out.String(), "\r\n"), "\r\n") {
			if len(line) > 75 || strings.ToValidUTF8(line, "?") != line {
				t.Errorf("%d octets: %q", len(line), line)
			}
		}
		if got := strings.TrimSuffix(strings.ReplaceAll(out.String(), "\r\n ", ""), "\r\n"); got != s {
			t.Errorf("unfolds to %q", got)
		}
	}
}

// readers are general calendar libraries: python3-icalendar and ical.js. Each
// takes in calendars, one after the other, as a calendar program does that already
// holds some of the events: of two with one UID the higher SEQUENCE wins, and of
// the same SEQUENCE the later DTSTAMP (RFC 5546, 2.1.5). It prints the first
// calendar's name, then of every event that is left the summary, first day, the
// day after the last, stamp, day of the last change, number, state and UID.
var readers = map[string]func(t *testing.T) *exec.Cmd{
	"python3-icalendar": func(*testing.T) *exec.Cmd {
		return exec.Command("/usr/bin/python3", "-c", `import sys, icalendar
calendars = icalendar.Calendar.from_ical(sys.stdin.buffer.read(), multiple=True)
print(calendars[0]["X-WR-CALNAME"])
held = {}
for calendar in calendars:
    for e in calendar.walk("VEVENT"):
        old, newness = held.get(e["UID"]), lambda e: (int(e["SEQUENCE"]), e["DTSTAMP"].dt)
        if old is None or newness(e) > newness(old):
            held[e["UID"]] = e
stamp = lambda time: time.dt.strftime("%Y-%m-%dT%H:%M:%SZ")
for e in sorted(held.values(), key=lambda e: e["DTSTART"].dt):
    print(e["SUMMARY"], e["DTSTART"].dt, e["DTEND"].dt, stamp(e["DTSTAMP"]), stamp(e["LAST-MODIFIED"]), int(e["SEQUENCE"]), e["STATUS"], e["UID"], sep="|")`)
	},
	"ical.js": func(t *testing.T) *exec.Cmd {
		library, _ := filepath.Abs("../../../.ci/node_modules/ical.js/dist/ical.js")
		return exec.Command("node", "--input-type=module", "-e", `import { readFileSync } from "node:fs";
import { pathToFileURL } from "node:url";
const { default: ICAL } = await import(pathToFileURL(process.argv[1]));
const parsed = ICAL.parse(readFileSync(0, "utf8"));
const calendars = (typeof parsed[0] === "string" ? [parsed] : parsed).map((c) => new ICAL.Component(c));
console.log(calendars[0].getFirstPropertyValue("x-wr-calname"));
const value = (event, name) => event.getFirstPropertyValue(name);
const newer = (a, b) => value(a, "sequence") - value(b, "sequence") || value(a, "dtstamp").compare(value(b, "dtstamp"));
const held = new Map();
for (const event of calendars.flatMap((c) => c.getAllSubcomponents("vevent"))) {
  const old = held.get(value(event, "uid"));
  if (!old || newer(event, old) > 0) held.set(value(event, "uid"), event);
}
const names = ["summary", "dtstart", "dtend", "dtstamp", "last-modified", "sequence", "status", "uid"];
for (const event of [...held.values()].sort((a, b) => value(a, "dtstart").compare(value(b, "dtstart")))) {
  console.log(names.map((name) => value(event, name).toString()).join("|"));
}`, library)
	},
}

// read gives what a reader prints; where it is not installed the test is left
// out, unless it is required.
func read(t *testing.T, name string, calendar []byte) string {
	t.Helper()
	empty := readers[name](t)
	empty.Stdin = strings.NewReader("BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:x\r\nX-WR-CALNAME:x\r\nEND:VCALENDAR\r\n")
	if empty.Run() != nil {
		if os.Getenv("GATEPOST_REQUIRE_TOOLS") == "1" {
			t.Fatalf("%s is required and not here", name)
		}
		t.Skipf("left out: %s is not here to read the calendar back", name)
	}
	cmd := readers[name](t)
	cmd.Stdin = bytes.NewReader(calendar)
	cmd.Env = append(os.Environ(), "PYTHONIOENCODING=utf-8")
	out, err := cmd.CombinedOutput()
	if err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	return string(out)
}

func TestCalendarReadsBack(t *testing.T) {
	v := &View{First: "Ann", Made: program.NewDate(2027, 2, 12), Skill: "Planche", Page: "k7f3q9w2m4", Events: []Event{
		{Day: program.NewDate(2027, 2, 15), Summary: "W, e; e\\k, 3 × 12 s, narrow + middle", Text: "57 min\n3 × 12 s; 2", Revision: 2, Revised: program.NewDate(2027, 2, 12)},
		{Day: program.NewDate(2027, 2, 17), Summary: "Off", Gone: true, Revised: program.NewDate(2027, 1, 4)}}}
	uid := func(day string) string { return uuid5(urlNamespace, "gatepost:k7f3q9w2m4:"+day) }
	want := "Planche · Ann\n" +
		"W, e; e\\k, 3 × 12 s, narrow + middle|2027-02-15|2027-02-16|2027-02-12T00:00:00Z|2027-02-12T00:00:00Z|2|CONFIRMED|" + uid("2027-02-15") + "\n" +
		"Off|2027-02-17|2027-02-18|2027-02-12T00:00:00Z|2027-01-04T00:00:00Z|0|CANCELLED|" + uid("2027-02-17") + "\n"
	for name := range readers {
		t.Run(name, func(t *testing.T) {
			if got := read(t, name, Calendar(v)); got != want {
				t.Errorf("got\n%s\nwant\n%s", got, want)
			}
		})
	}
}

// A coach who wants times: an evening of 57 minutes by the clock of the place (RFC 5545,
// 3.3.5, form 1: local time has no zone), two hours after the phone has said so (3.8.6.3),
// with the address of its page, and no hash in anything that people read.
func TestCalendarWithTimes(t *testing.T) {
	v := &View{First: "Ann", Skill: "Planche", Page: "k7f3q9w2m4", Public: true,
		Coach:  program.Coach{Site: "https://hall.example.org/"},
		Events: []Event{{Day: program.NewDate(2027, 2, 15), Minutes: 57, Clock: program.Clock{Time: 18*60 + 30, Remind: 120}, Summary: "3 × 10 s half-open tuck"}}}
	text := string(Calendar(v))
	for _, want := range []string{"\r\nDTSTART:20270215T183000\r\n", "\r\nDTEND:20270215T192700\r\n", "\r\nTRIGGER:-PT120M\r\n",
		"\r\nURL:https://hall.example.org/c/k7f3q9w2m4/day-2027-02-15.html\r\n"} {
		if !strings.Contains(text, want) {
			t.Errorf("the calendar lacks %q:\n%s", want, text)
		}
	}
	v.version = func() string { return "abc1234" }
	if strings.Contains(string(Calendar(v)), v.Version()) {
		t.Error("the calendar has a hash in it")
	}
	if late := clockOn(program.NewDate(2027, 2, 15), 23*60+50+20); late != "20270216T001000" {
		t.Errorf("past midnight it ends at %s", late)
	}
}
