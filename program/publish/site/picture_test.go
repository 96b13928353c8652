package site_test

import (
	"cmp"
	"encoding/xml"
	"path"
	"regexp"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"gatepost/program"
	"gatepost/program/publish/site"
)

var sessionPage = regexp.MustCompile(`/(level-.*-)?day-[^/]*\.html$`)

// Each exercise of each session is drawn on the session's page, by its own picture: in its
// place, or large beside the rest, and not twice. Pictures have a size, so that nothing
// moves when they come, and words for who hears the page.
func TestEveryExerciseOfASessionIsShown(t *testing.T) {
	sessions := 0
	for page, text := range demoSite(t) {
		if !sessionPage.MatchString(page) {
			continue
		}
		sessions++
		root := parse(t, text)
		alone := len(only(root, "svg", "fig")) + len(only(root, "div", "drawn"))
		if alone != 1 {
			t.Errorf("%s shows %d things large", page, alone)
		}
		for _, item := range only(root, "ol", "items") {
			for li := range item.ChildNodes() {
				if li.Data == "li" && !shown(t, page, li) {
					alone--
				}
			}
		}
		if alone != 0 {
			t.Errorf("%s: %d exercises are not shown, or are twice", page, -alone)
		}
	}
	if sessions < 300 {
		t.Errorf("only %d sessions", sessions)
	}
}

// shown reports whether an item has the picture of the exercise that it leads to.
func shown(t *testing.T, page string, li *html.Node) bool {
	t.Helper()
	exercise, drawn := "", false
	for _, n := range elements(li) {
		switch n.Data {
		case "a":
			page, part, _ := strings.Cut(path.Base(attr(n, "href")), "#") // of a client's own page
			exercise = cmp.Or(part, strings.TrimSuffix(strings.TrimPrefix(page, "exercise-"), ".html"))
		case "img":
			drawn = true
			if name := path.Base(attr(n, "src")); name != "figure-"+exercise+".svg" && name != "figure-"+exercise+"-end.svg" {
				t.Errorf("%s: %s is shown for %s", page, name, exercise)
			}
			if attr(n, "width") == "" || attr(n, "height") == "" || attr(n, "alt") == "" {
				t.Errorf("%s: a picture of %s without size or words", page, exercise)
			}
		}
	}
	return drawn
}

// only are the elements of a name with a class.
func only(root *html.Node, name, class string) (all []*html.Node) {
	for _, n := range elements(root) {
		if n.Data == name && strings.Contains(" "+attr(n, "class")+" ", " "+class+" ") {
			all = append(all, n)
		}
	}
	return all
}

// Picture files are images of their own: well-formed, no script, nothing loaded, light and
// dark, and 6 KB at the most; the start and the end of one exercise are of one size.
func TestPictureFiles(t *testing.T) {
	files, number := demoSite(t), 0
	box := regexp.MustCompile(`viewBox="[^"]*"`)
	for name, text := range files {
		if !strings.HasPrefix(name, "site/figure-") {
			continue
		}
		number++
		if err := xml.Unmarshal([]byte(text), new(struct{})); err != nil || len(text) > 6<<10 {
			t.Errorf("%s: %v, %d bytes", name, err, len(text))
		}
		for _, never := range []string{"<script", "href", "url(", "NaN"} {
			if strings.Contains(text, never) {
				t.Errorf("%s: %s", name, never)
			}
		}
		if !strings.Contains(text, "prefers-color-scheme:dark") {
			t.Errorf("%s: black on black in the dark", name)
		}
		if start, ok := files[strings.Replace(name, "-end.svg", ".svg", 1)]; !ok || box.FindString(start) != box.FindString(text) {
			t.Errorf("%s: its start is of another size", name)
		}
	}
	if number < 150 {
		t.Errorf("only %d pictures", number)
	}
}

// Nobody's drawings but those that a page shows are made: who needs one client's pages
// does not wait for a hundred exercises.
func TestOnlyWhatIsShownIsDrawn(t *testing.T) {
	s, asked := source(t), map[string]bool{}
	pictures := s.Pictures
	s.Pictures = func(exercise string) []program.Picture {
		asked[exercise] = true
		return pictures(exercise)
	}
	web := site.New(s)
	if len(asked) > 0 {
		t.Errorf("%v are drawn before anybody asks", asked)
	}
	web.Client(s.Clients[0])
	if len(asked) == 0 || len(asked) == len(s.Library.Exercises) {
		t.Errorf("%d of %d exercises are drawn for a client", len(asked), len(s.Library.Exercises))
	}
}
