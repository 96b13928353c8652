package view

import (
	"bytes"
	"os"
	"os/exec"
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

// A general calendar library reads the events back.
func TestCalendarReadsBack(t *testing.T) {
	const python = "/usr/bin/python3"
	if exec.Command(python, "-c", "import icalendar").Run() != nil {
		if os.Getenv("GATEPOST_REQUIRE_TOOLS") == "1" {
			t.Fatal("python3-icalendar is required and not here")
		}
		t.Skip("left out: python3-icalendar is not here to read the calendar back")
	}
	v := &View{First: "A, b; c\\d", Measured: program.NewDate(2027, 1, 4), Skill: "Planche", Weeks: []Week{{
		Title: "Week 1", Sessions: []Session{{Date: program.NewDate(2027, 1, 11), Minutes: "57 min",
			Items: []Item{{Step: "open tuck", RoleKey: program.RoleMain, Line: "3 × 12 s, narrow + middle"}}}}}}}
	cmd := exec.Command(python, "-c", `import sys, icalendar
c = icalendar.Calendar.from_ical(sys.stdin.buffer.read())
print(c["X-WR-CALNAME"])
for e in c.walk("VEVENT"):
    print(e["SUMMARY"], e["DTSTART"].dt, e["DTEND"].dt, e["DTSTAMP"].dt.isoformat(), sep="|")`)
	cmd.Stdin = bytes.NewReader(Calendar(v))
	cmd.Env = append(os.Environ(), "PYTHONIOENCODING=utf-8")
	out, err := cmd.CombinedOutput()
	want := "Planche, A, b; c\\d\nPlanche, Week 1, open tuck, 3 × 12 s, narrow + middle|2027-01-11|2027-01-12|2027-01-04T00:00:00+00:00\n"
	if err != nil || string(out) != want {
		t.Errorf("%v\n%s\nwant\n%s", err, out, want)
	}
}
