package view

import (
	"bytes"
	"cmp"
	"crypto/sha1"
	"fmt"
	"strings"
	"unicode/utf8"

	"gatepost/program"
)

// Calendar writes the sessions as an iCalendar file (RFC 5545): one event a
// session, all day or at the time the coach wants, lines of at most 75 octets ending in CRLF. There is no surname
// in it.
//
// An event's UID (RFC 9562, version 5) depends on the client and the day alone, so
// that a new plan's day takes the place of the old one's; for a client with a page
// it is made from the page's random name, so that it tells nothing. Calendars tell
// the newer of two by SEQUENCE, else by DTSTAMP (RFC 5546, 2.1.5). SEQUENCE is 0 as
// the first plan has a day, and then one less than the number of the plan that
// last changed it or its time of day, so that it never falls from one plan to the next;
// it has to grow when DTSTART, DTEND or STATUS change (RFC 5546, 2.1.4). So a time that
// the coach changes holds from the plan that is kept with it, like all else that hangs. DTSTAMP is the
// day that the plan on the wall was made, LAST-MODIFIED the day of the plan that
// made the event so, both 00:00 UTC. A session that went is still there, as
// CANCELLED: a calendar keeps what is merely missing.
func Calendar(v *View) []byte { return calendar(v, nil) }

// OwnCalendar is the calendar that is handed to the client, not published: it has
// the days of other training as well, each as an event of its own.
func OwnCalendar(v *View) []byte { return calendar(v, v.Other) }

func calendar(v *View, other []OtherDay) []byte {
	var out bytes.Buffer
	line := func(format string, args ...any) { fold(&out, fmt.Sprintf(format, args...)) }
	line("BEGIN:VCALENDAR")
	line("VERSION:2.0")
	line("PRODID:-//Gatepost//Training program//EN")
	line("CALSCALE:GREGORIAN")
	line("METHOD:PUBLISH")
	line("X-WR-CALNAME:%s", escape(v.Skill+" · "+v.First)) // no comma: some readers leave the escape in names of this kind
	for i := range v.Events {
		event(line, v, &v.Events[i])
	}
	for _, w := range v.Weeks {
		for _, o := range other {
			otherEvent(line, v, w.Start+program.Date((o.Day+6)%7), o.What)
		}
	}
	line("END:VCALENDAR")
	return out.Bytes()
}

func event(line func(string, ...any), v *View, e *Event) {
	text, status := []string{e.Text, v.Advice.DayShort, v.Advice.StopShort}, "CONFIRMED"
	if e.Gone {
		text, status = []string{e.Text}, "CANCELLED"
	}
	line("BEGIN:VEVENT")
	line("UID:%s", uid(v, e.Day.String()))
	line("SEQUENCE:%d", e.Revision)
	line("DTSTAMP:%sT000000Z", basic(v.Made))
	line("LAST-MODIFIED:%sT000000Z", basic(e.Revised))
	line("STATUS:%s", status)
	when(line, e)
	line("SUMMARY:%s", escape(e.Summary))
	line("DESCRIPTION:%s", escape(strings.Join(text, "\n")))
	if address := dayAddress(v, e.Day); address != "" && !e.Gone {
		line("URL:%s", address)
	}
	line("TRANSP:TRANSPARENT")
	if e.Clock.Time > 0 && e.Clock.Remind > 0 && !e.Gone {
		line("BEGIN:VALARM")
		line("ACTION:DISPLAY")
		line("TRIGGER:-PT%dM", e.Clock.Remind)
		line("DESCRIPTION:%s", escape(e.Summary))
		line("END:VALARM")
	}
	line("END:VEVENT")
}

// when writes the whole day, or where the coach wants times the session's, by the clock
// of wherever the reader is (RFC 5545, 3.3.5, form 1).
func when(line func(string, ...any), e *Event) {
	if e.Clock.Time == 0 || e.Minutes == 0 {
		line("DTSTART;VALUE=DATE:%s", basic(e.Day))
		line("DTEND;VALUE=DATE:%s", basic(e.Day+1)) // the day after: RFC 5545 counts the end out
		return
	}
	line("DTSTART:%s", clockOn(e.Day, e.Clock.Time))
	line("DTEND:%s", clockOn(e.Day, e.Clock.Time+e.Minutes))
}

func clockOn(day program.Date, minutes int) string {
	return fmt.Sprintf("%sT%02d%02d00", basic(day+program.Date(minutes/1440)), minutes/60%24, minutes%60)
}

// dayAddress is where a session's page is; empty where it has none.
func dayAddress(v *View, day program.Date) string {
	if !v.Public || v.Coach.Site == "" {
		return ""
	}
	return v.Coach.Site + "c/" + v.Page + "/day-" + day.String() + ".html"
}

// otherEvent is a day of other training: it never changes, so its SEQUENCE is 0.
func otherEvent(line func(string, ...any), v *View, day program.Date, what string) {
	line("BEGIN:VEVENT")
	line("UID:%s", uid(v, day.String()+":"+what))
	line("SEQUENCE:0")
	line("DTSTAMP:%sT000000Z", basic(v.Made))
	line("DTSTART;VALUE=DATE:%s", basic(day))
	line("DTEND;VALUE=DATE:%s", basic(day+1))
	line("SUMMARY:%s", escape(what))
	line("TRANSP:TRANSPARENT")
	line("END:VEVENT")
}

func uid(v *View, of string) string {
	return uuid5(urlNamespace, "gatepost:"+cmp.Or(v.Page, v.Slug)+":"+of)
}

// basic is ISO 8601 without hyphens, as iCalendar writes days.
func basic(d program.Date) string { return strings.ReplaceAll(d.String(), "-", "") }

// escape writes TEXT (RFC 5545, 3.3.11).
func escape(s string) string { return escapes.Replace(s) }

var escapes = strings.NewReplacer(`\`, `\\`, ";", `\;`, ",", `\,`, "\n", `\n`, "\r", "")

// fold writes one content line in pieces of at most 75 octets, never within a
// character (RFC 5545, 3.1).
func fold(out *bytes.Buffer, s string) {
	room := 75
	for len(s) > room {
		cut := room
		for !utf8.RuneStart(s[cut]) {
			cut--
		}
		out.WriteString(s[:cut] + "\r\n ")
		s, room = s[cut:], 74 // the space counts
	}
	out.WriteString(s + "\r\n")
}

// urlNamespace is RFC 9562's name space for URLs.
var urlNamespace = [16]byte{0x6b, 0xa7, 0xb8, 0x11, 0x9d, 0xad, 0x11, 0xd1, 0x80, 0xb4, 0x00, 0xc0, 0x4f, 0xd4, 0x30, 0xc8}

// uuid5 is the name-based UUID of RFC 9562, 5.5.
func uuid5(space [16]byte, name string) string {
	sum := sha1.Sum(append(space[:], name...))
	u := sum[:16]
	u[6] = u[6]&0x0f | 0x50
	u[8] = u[8]&0x3f | 0x80
	return fmt.Sprintf("%x-%x-%x-%x-%x", u[:4], u[4:6], u[6:8], u[8:10], u[10:])
}
