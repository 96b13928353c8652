package view

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
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
// prints the calendar's name, then of every event the summary, first day, the day
// after the last, stamp and UID.
var readers = map[string]func(t *testing.T) *exec.Cmd{
	"python3-icalendar": func(*testing.T) *exec.Cmd {
		return exec.Command("/usr/bin/python3", "-c", `import sys, icalendar
c = icalendar.Calendar.from_ical(sys.stdin.buffer.read())
print(c["X-WR-CALNAME"])
for e in c.walk("VEVENT"):
    print(e["SUMMARY"], e["DTSTART"].dt, e["DTEND"].dt, e["DTSTAMP"].dt.strftime("%Y-%m-%dT%H:%M:%SZ"), e["UID"], sep="|")`)
	},
	"ical.js": func(t *testing.T) *exec.Cmd {
		library, _ := filepath.Abs("../../../.ci/node_modules/ical.js/dist/ical.js")
		return exec.Command("node", "--input-type=module", "-e", `import { readFileSync } from "node:fs";
import { pathToFileURL } from "node:url";
const { default: ICAL } = await import(pathToFileURL(process.argv[1]));
const calendar = new ICAL.Component(ICAL.parse(readFileSync(0, "utf8")));
console.log(calendar.getFirstPropertyValue("x-wr-calname"));
for (const event of calendar.getAllSubcomponents("vevent")) {
  const value = (name) => event.getFirstPropertyValue(name).toString();
  console.log(["summary", "dtstart", "dtend", "dtstamp", "uid"].map(value).join("|"));
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
	v := &View{First: "Ann", Measured: program.NewDate(2027, 1, 4), Skill: "Planche", Page: "k7f3q9w2m4", Weeks: []Week{{
		Title: "W, e; e\\k", Sessions: []Session{{Date: program.NewDate(2027, 1, 11), Minutes: "57 min",
			Items: []Item{{Step: "open tuck", RoleKey: program.RoleMain, Line: "3 × 12 s, narrow + middle"}}}}}}}
	uid := uuid5(urlNamespace, "gatepost:k7f3q9w2m4:2027-01-11")
	want := "Planche · Ann\nPlanche, W, e; e\\k, open tuck, 3 × 12 s, narrow + middle|2027-01-11|2027-01-12|2027-01-04T00:00:00Z|" + uid + "\n"
	for name := range readers {
		t.Run(name, func(t *testing.T) {
			if got := read(t, name, Calendar(v)); got != want {
				t.Errorf("got\n%s\nwant\n%s", got, want)
			}
		})
	}
}

// A calendar taken in again replaces an event of the same UID (RFC 5545, 3.8.4.7):
// a new version of the plan keeps the UID of each day, and no two days share one.
func TestAnotherVersionReplacesTheDays(t *testing.T) {
	day := func(d program.Date, line string) Session {
		return Session{Date: d, Items: []Item{{Step: "tuck", RoleKey: program.RoleMain, Line: line}}}
	}
	calendar := func(line string) []byte {
		return Calendar(&View{Slug: "ann", Skill: "Planche", First: "Ann", Weeks: []Week{{Sessions: []Session{
			day(program.NewDate(2027, 1, 11), line), day(program.NewDate(2027, 1, 13), line)}}}})
	}
	uids := func(b []byte) []string {
		return regexp.MustCompile(`(?m)^UID:.*$`).FindAllString(string(b), -1)
	}
	before, after := uids(calendar("3 × 10 s")), uids(calendar("4 × 12 s"))
	if len(before) != 2 || before[0] == before[1] || !slices.Equal(before, after) {
		t.Errorf("%v, then %v", before, after)
	}
}
