package site

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"regexp"
	"slices"
	"strings"

	"gatepost/program/publish/view"
)

// A client's pages work without signal after the first visit: worker.js, in their own
// folder, keeps them, what is to be printed, and the files that they share with others,
// and nothing else. What is to be printed is opened and not downloaded: browsers ask no
// worker for a download.

const (
	workerFile = "worker.js"
	phonePage  = "phone.html"
)

// phoneView shows what the pages keep on a phone.
type phoneView struct {
	frame
	Program string
	Send    sendView
}

func (b *builder) phone(v *view.View, at place) phoneView {
	p := phoneView{frame: b.frame(b.words.word("phone.title"), phonePage, at.root), Program: v.Skill, Send: b.send(v)}
	p.Title = b.titleOf(v, p.Heading)
	p.Scripts = []string{notebookScript, sendScript, phoneScript}
	return p
}

// mostPrinted is how large, together, what is to be printed may be to be kept as well
// (our judgement: ten seconds on a slow line of 400 kbit/s; three documents of a block
// have 300 KB). All is taken or nothing, and pages are what a hall needs.
const mostPrinted = 500 << 10

// worker writes the service worker of the pages that were made of a client, which lie
// in a folder. Its version is that of their bytes: what changed in any is a new one.
func (b *builder) worker(folder string) {
	var pages, shared []string
	printed := 0
	for _, f := range b.files {
		if strings.HasSuffix(f.Path, ".pdf") {
			printed += len(f.Bytes)
		}
	}
	sum := sha256.New()
	slices.SortFunc(b.files, func(x, y File) int { return strings.Compare(x.Path, y.Path) })
	for _, f := range b.files {
		page, inside := strings.CutPrefix(f.Path, folder)
		if !inside || !strings.HasSuffix(page, ".html") && (printed > mostPrinted || !strings.HasSuffix(page, ".pdf")) {
			continue
		}
		pages = append(pages, page)
		sum.Write(f.Bytes)
		for _, found := range loads.FindAllSubmatch(f.Bytes, -1) {
			if file := string(found[1]); !slices.Contains(shared, file) {
				shared = append(shared, file)
			}
		}
	}
	slices.Sort(shared)
	for _, file := range shared {
		sum.Write(b.shared(strings.TrimPrefix(file, clientRoot)))
	}
	files, _ := json.Marshal(append(pages, shared...)) // strings: nothing can fail
	version := hex.EncodeToString(sum.Sum(nil))[:12]
	b.add(folder+workerFile, []byte("\"use strict\";\nconst VERSION = \""+version+"\", FILES = "+string(files)+";\n\n"+string(b.look.worker)))
}

// loads finds what a page loads from outside its folder, as html/template writes it.
var loads = regexp.MustCompile(`<(?:img|script|link)\b[^>]*? (?:src|href)="(` + regexp.QuoteMeta(clientRoot) + `[^"#?]+)"`)

// shared is a file that pages share: of the look, or a picture of an exercise.
func (b *builder) shared(name string) []byte {
	files := slices.Clone(b.look.assets)
	id := strings.TrimSuffix(strings.TrimPrefix(name, "figure-"), ".svg")
	for _, id := range []string{id, strings.TrimSuffix(id, "-end")} {
		if draw := b.pictures[id]; draw != nil {
			files = append(files, draw().files...)
		}
	}
	if i := slices.IndexFunc(files, func(f File) bool { return f.Path == name }); i >= 0 {
		return files[i].Bytes
	}
	return nil
}
