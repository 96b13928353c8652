package intake

import (
	"fmt"
	"net/url"
	"regexp"
	"strings"

	"gatepost/program"
)

const studioFile = "content/studio.yaml"

// studio is the file about the coach.
func studio(c *program.Coach) read {
	return group(
		must("coach", "Tilda Roake", text(&c.Name)),
		must("studio", "Lantern Hall", text(&c.Studio)),
		must("contact", "coach@example.org", text(&c.Contact)),
		may("paper", "A4", choice(&c.Paper, program.PaperA4, program.PaperLetter)),
		may("site", "https://example.org/", address(&c.Site)),
		may("language", "en", language(&c.Lang)),
		may("dates", "day-first", choice(&c.Dates, program.DayFirst, program.MonthFirst)),
		may("inks", inksLike, group(
			may("dark", `"#16181d"`, ink(&c.Inks.Dark)),
			may("accent", `"#b0371b"`, ink(&c.Inks.Accent)),
		)),
	)
}

const inksLike = `{dark: "#16181d", accent: "#b0371b"}`

var inkForm = regexp.MustCompile(`^#[0-9a-fA-F]{6}$`)

// leastContrast is the least that a text's colour must have on its ground
// (published: WCAG 2.2, success criterion 1.4.3).
const leastContrast = 4.5

// ink reads a colour that is dark enough to be read on white paper.
func ink(into *program.Ink) read {
	return func(v value) {
		var s string
		if text(&s)(v); s == "" {
			return
		}
		i := program.Ink(strings.ToLower(s))
		switch {
		case !inkForm.MatchString(s):
			v.say(v.here(), fmt.Sprintf("%s is not a colour", quote(s)), "Write # and six digits 0 to f, in quotes: "+v.example())
		case i.OnWhite() < leastContrast:
			v.say(v.here(), fmt.Sprintf("%s is too light to read on white: a contrast of %.2f, and 4.5 is the least", quote(s), i.OnWhite()),
				"Take a darker shade, for example: "+v.example())
		default:
			*into = i
		}
	}
}

// address reads the public address of the site; it ends in "/".
func address(into *string) read {
	return func(v value) {
		var s string
		if text(&s)(v); s == "" {
			return
		}
		u, err := url.Parse(s)
		if err != nil || u.Scheme != "https" && u.Scheme != "http" || u.Host == "" || u.RawQuery != "" || u.Fragment != "" || u.User != nil {
			v.say(v.here(), fmt.Sprintf("%s is not the address of a site", quote(s)), "Write the whole address: "+v.example())
			return
		}
		*into = strings.TrimSuffix(s, "/") + "/"
	}
}

var languageForm = regexp.MustCompile(`^[a-z]{2,3}(-[a-z0-9]{2,8})*$`)

// language reads a tag such as "en" or "pt-br"; a words file has the same name.
func language(into *string) read {
	return func(v value) {
		var s string
		if text(&s)(v); s != "" && !languageForm.MatchString(s) {
			v.say(v.here(), fmt.Sprintf("%s is not a language", quote(s)), "Write its tag in small letters: "+v.example())
			return
		}
		*into = s
	}
}

// readStudio reads who the coach is.
func (f *folder) readStudio() (c program.Coach, src *source) {
	if !f.exists(studioFile) {
		f.say(studioFile, "the file about the coach is missing", "Write three lines, for example: coach: Tilda Roake, studio: Lantern Hall, contact: coach@example.org")
		return c, nil
	}
	src, ok := f.open(f.coach, studioFile, false)
	if ok {
		c.Places = src.places
		src.readYAML("coach: Tilda Roake", studio(&c))
	}
	return c, src
}
