package preview

import (
	"bytes"
	"cmp"
	_ "embed"
	"html/template"
	"net"
	"net/http"
	"path"
	"slices"
	"strings"
	"sync"
)

// Addresses of our own, which no site uses.
const (
	eventsPath = "/.preview/events"
	scriptPath = "/.preview/reload.js"
	goodQuery  = "last-good"
)

var (
	//go:embed reload.js
	reload []byte
	//go:embed problems.html
	problemsText string
	problemsPage = template.Must(template.New("problems").Parse(problemsText))
)

// Preview is the site as it stands. The zero Preview is ready for use and has no
// pages.
type Preview struct {
	Open bool // answers to other machines and names, too

	mutex    sync.Mutex
	files    map[string][]byte // of the last good build, by path below the site
	later    map[string]Folder // of the same
	problems string            // empty: the last build was good
	open     map[chan struct{}]bool
}

// Folder makes the files of a folder of the site, by path below the site, when somebody
// looks at one of them; or it says what is wrong. It is asked every time.
type Folder func() (files map[string][]byte, problems string)

// Show replaces the site; paths are below its folder: "index.html". Of folders, "c/abc",
// the files are asked for when they are wanted.
func (p *Preview) Show(files map[string][]byte, later map[string]Folder) { p.change(files, later, "") }

// ShowProblems keeps the last good site and shows messages before it.
func (p *Preview) ShowProblems(messages string) { p.change(nil, nil, messages) }

func (p *Preview) change(files map[string][]byte, later map[string]Folder, problems string) {
	p.mutex.Lock()
	defer p.mutex.Unlock()
	if files != nil {
		p.files, p.later = files, later
	}
	p.problems = problems
	for page := range p.open {
		select {
		case page <- struct{}{}:
		default: // told already, and not yet gone
		}
	}
}

// find is a file of the site as it stands, and what there is to say in its place.
func (p *Preview) find(name string) (file []byte, found bool, problems string) {
	p.mutex.Lock()
	file, found = p.files[name]
	problems = p.problems
	folder := p.later[path.Dir(name)]
	p.mutex.Unlock()
	if found || folder == nil {
		return file, found, problems
	}
	files, wrong := folder()
	file, found = files[name]
	return file, found, cmp.Or(problems, wrong)
}

// ServeHTTP answers one request.
func (p *Preview) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	h := w.Header()
	h.Set("Cache-Control", "no-store")
	h.Set("X-Content-Type-Options", "nosniff")
	switch {
	case !p.Open && !local(r.Host):
		http.Error(w, "this preview answers to this machine only", http.StatusForbidden)
	case r.Header.Get("Service-Worker") != "": // what it keeps would hide the next edit
		http.NotFound(w, r)
	case r.Method != http.MethodGet && r.Method != http.MethodHead:
		http.Error(w, "a preview can only be read", http.StatusMethodNotAllowed)
	case r.URL.Path == eventsPath:
		p.events(w, r)
	case r.URL.Path == scriptPath:
		send(w, ".js", reload)
	default:
		p.page(w, r)
	}
}

// local says whether a host name can only mean this machine.
func local(host string) bool {
	if name, _, err := net.SplitHostPort(host); err == nil {
		host = name
	}
	ip := net.ParseIP(strings.Trim(host, "[]"))
	return host == "localhost" || ip != nil && ip.IsLoopback()
}

// page sends a file of the site or, while there are problems, the messages.
func (p *Preview) page(w http.ResponseWriter, r *http.Request) {
	name := strings.TrimPrefix(path.Clean(r.URL.Path), "/")
	if name == "" || strings.HasSuffix(r.URL.Path, "/") {
		name = path.Join(name, "index.html")
	}
	file, found, problems := p.find(name)
	html := path.Ext(name) == ".html"
	switch {
	case problems != "" && (html || !found) && !r.URL.Query().Has(goodQuery):
		w.WriteHeader(http.StatusServiceUnavailable)
		showProblems(w, problems, found)
	case !found:
		http.NotFound(w, r)
	case html:
		send(w, ".html", watching(file))
	default:
		send(w, path.Ext(name), file)
	}
}

func showProblems(w http.ResponseWriter, messages string, good bool) {
	_ = problemsPage.Execute(w, struct { // what the reader no longer waits for is no error
		Messages, Good, Script string
	}{messages, map[bool]string{true: "?" + goodQuery}[good], scriptPath})
}

// watching adds the script that waits for events, and leave for it.
func watching(page []byte) []byte {
	const policy, scripts = `content="default-src 'none'; `, "script-src "
	leave := policy + "connect-src 'self'; "
	if bytes.Contains(page, []byte("; "+scripts)) {
		page = bytes.Replace(page, []byte("; "+scripts), []byte("; "+scripts+"'self' "), 1)
	} else {
		leave += scripts + "'self'; "
	}
	page = bytes.Replace(page, []byte(policy), []byte(leave), 1)
	return bytes.Replace(page, []byte("</head>"), []byte(`<script src="`+scriptPath+`" defer></script>`+"\n</head>"), 1)
}

// types of the files that a site has, by extension.
var types = map[string]string{
	".html": "text/html; charset=utf-8",
	".css":  "text/css; charset=utf-8",
	".js":   "text/javascript; charset=utf-8",
	".svg":  "image/svg+xml",
	".ics":  "text/calendar; charset=utf-8",
	".xml":  "application/xml",
	".txt":  "text/plain; charset=utf-8",
	".json": "application/json",
	".pdf":  "application/pdf",
}

func send(w http.ResponseWriter, extension string, file []byte) {
	kind, ok := types[extension]
	if !ok {
		kind = "application/octet-stream"
	}
	w.Header().Set("Content-Type", kind)
	_, _ = w.Write(file) // a reader that has gone is no error
}

// Pages lists the folders that are made later, to which nothing leads.
func (p *Preview) Pages() []string {
	p.mutex.Lock()
	defer p.mutex.Unlock()
	var pages []string
	for folder := range p.later {
		pages = append(pages, folder+"/")
	}
	slices.Sort(pages)
	return pages
}
