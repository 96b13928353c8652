package site

import (
	"bytes"
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
		shared = addLoaded(shared, f.Bytes)
	}
	slices.Sort(shared)
	for _, file := range shared {
		sum.Write(b.shared(strings.TrimPrefix(file, clientRoot)))
	}
	files, _ := json.Marshal(append(pages, shared...)) // strings: nothing can fail
	version := hex.EncodeToString(sum.Sum(nil))[:12]
	b.add(folder+workerFile, []byte("\"use strict\";\nconst VERSION = \""+version+"\", FILES = "+string(files)+";\n\n"+string(b.look.worker)))
}

// addLoaded adds what a page loads from outside its folder, as html/template writes it.
func addLoaded(files []string, page []byte) []string {
	for {
		before, after, found := bytes.Cut(page, []byte(`="`+clientRoot))
		if !found {
			return files
		}
		name, _, _ := bytes.Cut(after, []byte(`"`))
		file := clientRoot + string(name)
		if len(name) > 0 && !slices.Contains(files, file) && !strings.ContainsAny(file, "#?") && loads.Match(before[bytes.LastIndexByte(before, '<')+1:]) {
			files = append(files, file)
		}
		page = after
	}
}

// loads are the tags that load something, up to where it is said.
var loads = regexp.MustCompile(`^(?:img|script|link)\b[^>]* (?:src|href)$`)

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
