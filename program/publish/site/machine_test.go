package site_test

import (
	"encoding/json"
	"encoding/xml"
	"image"
	"image/png"
	"regexp"
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"
)

// Names of properties: schema.org, ExercisePlan, with those it has from
// CreativeWork and Thing (the last two lists are from memory, and only as long
// as needed here). Context and type are words of JSON-LD 1.1.
var schemaProperties = map[string][]string{
	"ExercisePlan": {"activityDuration", "activityFrequency", "additionalVariable", "exerciseType", "intensity",
		"repetitions", "restPeriods", "workload", "author", "inLanguage", "description", "name", "url"},
	"Organization":   {"name", "url"},
	"BreadcrumbList": {"itemListElement", "name"},
	"ListItem":       {"position", "name", "item"},
}

// Only programs are plans; an exercise, a road map and a test are none. Public pages
// that stand for themselves say where they are, from the front page down, and the last
// of the way is the page itself.
func TestMachinesAreToldWhatAPageIs(t *testing.T) {
	for path, text := range fixtureSite(t) {
		if !isPage(path) {
			continue
		}
		kinds := map[string]int{}
		for _, n := range elements(parse(t, text)) {
			if n.Data == "script" && attr(n, "type") == "application/ld+json" {
				kinds[checkData(t, path, n)]++
			}
		}
		name := strings.TrimPrefix(path, "site/")
		isLevel := regexp.MustCompile(`^level-open-hours-[0-9]\.html$`).MatchString(name)
		isProgram := strings.HasPrefix(name, "c/") && strings.HasSuffix(name, "/index.html") || isLevel
		if (kinds["ExercisePlan"] == 1) != isProgram {
			t.Errorf("%s: %d plans", path, kinds["ExercisePlan"])
		}
		below := regexp.MustCompile(`^(exercise|roadmap|page|note|find|program)-`).MatchString(name) || isLevel
		if (kinds["BreadcrumbList"] == 1) != below {
			t.Errorf("%s: %d ways", path, kinds["BreadcrumbList"])
		}
	}
}

// checkData gives the kind of what a page says to machines.
func checkData(t *testing.T, path string, n *html.Node) string {
	var plan map[string]any
	if err := json.Unmarshal([]byte(n.FirstChild.Data), &plan); err != nil {
		t.Fatalf("%s: %v", path, err)
	}
	kind, _ := plan["@type"].(string)
	if plan["@context"] != "https://schema.org" || kind == "ExercisePlan" && plan["name"] == "" {
		t.Errorf("%s: %v", path, plan)
	}
	if items, ok := plan["itemListElement"].([]any); ok {
		last, _ := items[len(items)-1].(map[string]any)
		if want := "https://lantern.example.org/" + strings.TrimPrefix(path, "site/"); len(items) < 2 || last["item"] != want {
			t.Errorf("%s: the way ends at %v", path, last)
		}
		for _, item := range items {
			checkProperties(t, path, item.(map[string]any))
		}
	}
	// ISO 8601, 5.5.2: durations.
	if d, ok := plan["activityDuration"].(string); ok && !regexp.MustCompile(`^P(\d+W|T\d+S)$`).MatchString(d) {
		t.Errorf("%s: duration %q", path, d)
	}
	checkProperties(t, path, plan)
	return kind
}

func checkProperties(t *testing.T, path string, thing map[string]any) {
	kind, _ := thing["@type"].(string)
	for name, value := range thing {
		if !strings.HasPrefix(name, "@") && !slices.Contains(schemaProperties[kind], name) {
			t.Errorf("%s: %s has no property %q", path, kind, name)
		}
		if below, ok := value.(map[string]any); ok {
			checkProperties(t, path, below)
		}
	}
}

// The Sitemaps protocol 0.9 asks for urlset, url and loc, absolute addresses of
// the site itself, in UTF-8.
func TestSiteMap(t *testing.T) {
	files := fixtureSite(t)
	var set struct {
		XMLName xml.Name `xml:"http://www.sitemaps.org/schemas/sitemap/0.9 urlset"`
		URL     []struct {
			Loc string `xml:"loc"`
		} `xml:"url"`
	}
	if err := xml.Unmarshal([]byte(files["site/sitemap.xml"]), &set); err != nil {
		t.Fatal(err)
	}
	listed := map[string]bool{}
	for _, u := range set.URL {
		below, ok := strings.CutPrefix(u.Loc, "https://lantern.example.org/")
		if below == "" {
			below = "index.html"
		}
		if _, there := files["site/"+below]; !ok || !there {
			t.Errorf("%s is no page", u.Loc)
		}
		listed["site/"+below] = true
	}
	for path := range files {
		apart := isOfClient(path) || strings.HasPrefix(path, "site/level-") && strings.Contains(path, "-week-")
		if isPage(path) && listed[path] == apart {
			t.Errorf("%s: in the site map: %v", path, listed[path])
		}
	}
	if !strings.Contains(files["site/robots.txt"], "\nSitemap: https://lantern.example.org/sitemap.xml\n") {
		t.Errorf("robots.txt: %q", files["site/robots.txt"])
	}
}

func TestCanonicalAddressOfPublicPagesOnly(t *testing.T) {
	canonical := regexp.MustCompile(`<link rel="canonical" href="([^"]*)">`)
	for path, text := range fixtureSite(t) {
		found := canonical.FindStringSubmatch(text)
		name := strings.TrimSuffix(strings.TrimPrefix(path, "site/"), "index.html")
		want := "https://lantern.example.org/" + regexp.MustCompile(`^(level-[a-z-]+-[0-9])-week-.*$`).ReplaceAllString(name, "$1.html")
		switch {
		case !isPage(path):
		case isOfClient(path) && found != nil:
			t.Errorf("%s: says its address", path)
		case !isOfClient(path) && (found == nil || found[1] != want):
			t.Errorf("%s: %v, want %s", path, found, want)
		}
	}
}

// Who shares a page shows its picture: og:title, og:type, og:image and og:url are what the
// Open Graph protocol asks for (from memory). A client's page is shared by nobody.
func TestSharedPages(t *testing.T) {
	files := fixtureSite(t)
	for path, text := range files {
		if !isPage(path) {
			continue
		}
		found := map[string]string{}
		for _, n := range elements(parse(t, text)) {
			if n.Data == "meta" {
				found[attr(n, "property")+attr(n, "name")] = attr(n, "content")
			}
		}
		for _, name := range []string{"og:title", "og:type", "og:image", "og:url"} {
			if (found[name] == "") != isOfClient(path) {
				t.Errorf("%s: %s is %q", path, name, found[name])
			}
		}
		if isOfClient(path) && found["description"] != "" || len(found["description"]) > 300 {
			t.Errorf("%s: described as %q", path, found["description"])
		}
	}
	if got := files["site/exercise-planche-lean.html"]; !strings.Contains(got, `<meta name="description" content="Hands down.">`) {
		t.Error("an exercise is not described by how it is set up")
	}
	for name, size := range map[string]image.Point{"cover.png": {X: 1200, Y: 630}, "icon-180.png": {X: 180, Y: 180}, "icon-512.png": {X: 512, Y: 512}} {
		picture, err := png.Decode(strings.NewReader(files["site/"+name]))
		if err != nil || picture.Bounds().Size() != size {
			t.Errorf("%s: %v", name, err)
		}
	}
	var manifest struct {
		Start string                 `json:"start_url"`
		Icons []struct{ Src string } `json:"icons"`
	}
	if err := json.Unmarshal([]byte(files["site/manifest.webmanifest"]), &manifest); err != nil || files["site/"+manifest.Start] == "" {
		t.Errorf("the manifest: %v, it starts at %q", err, manifest.Start)
	}
	for _, icon := range manifest.Icons {
		if files["site/"+icon.Src] == "" {
			t.Errorf("there is no icon %s", icon.Src)
		}
	}
}

// A coach's own icon has no picture of ours beside it.
func TestOwnIcon(t *testing.T) {
	s := source(t)
	s.Templates = append(s.Templates, layer{"icon.svg": "<svg xmlns=\"http://www.w3.org/2000/svg\"/>"})
	files := build(t, s)
	if files["site/icon-180.png"] != "" || strings.Contains(files["site/index.html"], "apple-touch-icon") || strings.Contains(files["site/manifest.webmanifest"], "png") {
		t.Error("the built-in icon is there beside the coach's")
	}
}

func TestWithoutAnAddress(t *testing.T) {
	s := source(t)
	s.Coach.Site = ""
	files := build(t, s)
	for path, text := range files {
		if strings.Contains(text, "canonical") || strings.Contains(path, "sitemap") || strings.Contains(path, "feed") {
			t.Errorf("%s needs an address that is not known", path)
		}
	}
	if _, ok := files["site/notes.html"]; !ok {
		t.Error("the notes are gone")
	}
}

// RFC 4287, 4.1: a feed must have id, title and updated, an author where the
// entries have none, and should have a link to itself; an entry must have id,
// title and updated. Dates: RFC 3339. The namespace is that of section 1.2.
func TestFeed(t *testing.T) {
	type entry struct {
		ID      string `xml:"id"`
		Title   string `xml:"title"`
		Updated string `xml:"updated"`
		Content string `xml:"content"`
	}
	var feed struct {
		XMLName xml.Name `xml:"http://www.w3.org/2005/Atom feed"`
		ID      string   `xml:"id"`
		Title   string   `xml:"title"`
		Updated string   `xml:"updated"`
		Author  string   `xml:"author>name"`
		Links   []struct {
			Rel  string `xml:"rel,attr"`
			Href string `xml:"href,attr"`
		} `xml:"link"`
		Entries []entry `xml:"entry"`
	}
	text := fixtureSite(t)["site/feed.xml"]
	if err := xml.Unmarshal([]byte(text), &feed); err != nil {
		t.Fatal(err)
	}
	if feed.ID == "" || feed.Title == "" || feed.Updated != "2027-01-18T00:00:00Z" || feed.Author == "" ||
		feed.Links[0].Rel != "self" || feed.Links[0].Href != "https://lantern.example.org/feed.xml" {
		t.Errorf("%+v", feed)
	}
	want := entry{"https://lantern.example.org/note-quiet.html", "A quiet < week", "2027-01-18T00:00:00Z",
		"<p>Read <a href=\"exercise-planche-lean.html\">the lean</a> and <a href=\"note-old.html\">an older note</a>.</p>\n"}
	if len(feed.Entries) != 2 || feed.Entries[0] != want {
		t.Errorf("got %+v, want %+v first of two", feed.Entries, want)
	}
	if !strings.Contains(text, `xml:base="https://lantern.example.org/"`) {
		t.Error("links in the notes lead nowhere in a feed reader")
	}
}
