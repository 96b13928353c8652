package intake

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path"
	"slices"
	"strconv"
	"strings"
	"sync"
	"unicode/utf8"

	"gatepost/program"
)

// Largest files taken. A page of Markdown can grow a thousandfold when it is
// turned into HTML, so it may be smaller only.
const (
	maxFile     = 1 << 20
	maxMarkdown = 256 << 10
	maxLine     = 20_000 // characters
)

// folder is the coach's files laid over the built-in library.
type folder struct {
	coach, builtIn fs.FS
	english        sayings // for what is wrong with the library
	said           sayings // for what is wrong with clients; nil until the library is read
	dates          program.DateOrder
	known          map[string]string // pages of clients who are not read, by slug
	clash          bool              // a client who is read has one of them
	problems       program.Problems
}

func newFolder(coach, builtIn fs.FS) *folder {
	return &folder{coach: coach, builtIn: builtIn, english: sync.OnceValue(func() program.Words { return wordsFrom(builtIn, original) })}
}

// beside is the same folder for somebody who reads at the same time, with problems of
// their own.
func (f *folder) beside() *folder {
	own := *f
	own.problems = nil
	return &own
}

func (f *folder) say(file, message, advice string) {
	f.problems = append(f.problems, program.Problem{Place: program.Place{File: file}, Message: message, Advice: advice})
}

func (f *folder) doubt(file, message, advice string) {
	f.say(file, message, advice)
	f.problems[len(f.problems)-1].Warning = true
}

// listed is one file of the library, found.
type listed struct {
	id      string
	source  *source // nil: could not be opened
	removed bool    // an empty file of the coach's takes the built-in one away
}

// library lists the files of a library folder such as "content/exercises",
// sorted by id, the coach's over the built-in ones.
func (f *folder) library(dir, extension string) []listed {
	found := map[string]listed{}
	for _, id := range f.ids(f.builtIn, dir, extension, true) {
		src, _ := f.open(f.builtIn, dir+"/"+id+extension, true)
		found[id] = listed{id: id, source: src}
	}
	for _, id := range f.ids(f.coach, dir, extension, false) {
		file := dir + "/" + id + extension
		src, ok := f.open(f.coach, file, false)
		_, known := found[id]
		removes := ok && strings.TrimSpace(strings.Join(src.lines, "")) == ""
		if removes && !known {
			f.doubt(file, "the file is empty, and there is no built-in one that it could take away", "Fill it, or delete it.")
			continue
		}
		found[id] = listed{id: id, source: src, removed: removes}
	}
	return sorted(found)
}

func sorted(found map[string]listed) []listed {
	var all []listed
	for _, l := range found {
		all = append(all, l)
	}
	slices.SortFunc(all, func(a, b listed) int { return strings.Compare(a.id, b.id) })
	return all
}

// ids are the names, without extension, of the files of a folder.
func (f *folder) ids(from fs.FS, dir, extension string, builtIn bool) []string {
	var ids []string
	for _, e := range f.entries(from, dir) {
		id, right := strings.CutSuffix(e.Name(), extension)
		switch {
		case !right:
			f.doubt(shown(dir+"/"+e.Name(), builtIn), "the file is not read", fmt.Sprintf("Only files named …%s belong here.", extension))
		case !isSlug(id):
			f.say(shown(dir+"/"+e.Name(), builtIn), "the file name does not fit", "Use 1 to 40 small letters a to z, digits and hyphens: "+suggestSlug(id)+extension)
		default:
			ids = append(ids, id)
		}
	}
	return ids
}

// entries lists a folder; hidden files and missing folders count as nothing.
func (f *folder) entries(from fs.FS, dir string) []fs.DirEntry {
	entries, err := fs.ReadDir(from, dir)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		f.say(dir, "the folder cannot be read: "+reason(err), "Look at its permissions, and whether it is a folder inside the coach's own.")
	}
	return slices.DeleteFunc(entries, func(e fs.DirEntry) bool { return strings.HasPrefix(e.Name(), ".") })
}

func shown(file string, builtIn bool) string {
	if builtIn {
		return "built-in " + file
	}
	return file
}

// open reads a file as text.
func (f *folder) open(from fs.FS, file string, builtIn bool) (*source, bool) {
	name := shown(file, builtIn)
	limit := maxFile
	if path.Ext(file) == ".md" {
		limit = maxMarkdown
	}
	data, ok := f.bytes(from, file, name, limit)
	if !ok {
		return nil, false
	}
	src, at, wrong := textSource(name, data, limit)
	if src == nil {
		f.problems = append(f.problems, wrong.in(f.english(), at))
		return nil, false
	}
	src.builtIn, src.words, src.dates = builtIn, f.english, f.dates
	return src, true
}

// bytes reads a file that problems call by a name.
func (f *folder) bytes(from fs.FS, file, name string, limit int) ([]byte, bool) {
	data, err := readFile(from, file, limit)
	if err != nil {
		f.say(name, "the file cannot be read: "+reason(err), "It must be a plain file inside the coach's folder, and readable.")
	}
	return data, err == nil
}

// textSource takes the bytes of a file as text; nil with the reason where they
// are none.
func textSource(name string, data []byte, limit int) (*source, program.Place, fault) {
	if len(data) > limit {
		return nil, program.Place{File: name}, fault{"too_big", "most", strconv.Itoa(limit >> 10)}
	}
	text := string(bytes.TrimPrefix(data, []byte("\ufeff")))
	if at, wrong := notText(name, text); wrong != nil {
		return nil, at, wrong
	}
	return newSource(name, unsteered(text), false), program.Place{}, nil
}

// unsteered is a text without the invisible characters that turn what follows them around
// or break its line (Unicode Standard Annex 9, 2; U+2028 and U+2029): telephones put them
// around names that are copied, and on a page or a terminal they make other words of it.
func unsteered(text string) string {
	if !strings.ContainsFunc(text, steers) {
		return text
	}
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\u2028' || r == '\u2029':
			return ' '
		case steers(r):
			return -1
		}
		return r
	}, text)
}

func steers(r rune) bool { return r >= '\u2028' && r <= '\u202e' || r >= '\u2066' && r <= '\u2069' }

var errNotPlain = errors.New("it is not a plain file")

// readFile reads at most one byte more than the limit.
func readFile(from fs.FS, file string, limit int) ([]byte, error) {
	info, err := fs.Stat(from, file)
	if err != nil {
		return nil, err
	}
	if !info.Mode().IsRegular() { // a named pipe would be waited for without end
		return nil, errNotPlain
	}
	r, err := from.Open(file)
	if err != nil {
		return nil, err
	}
	defer r.Close()
	data := bytes.NewBuffer(make([]byte, 0, min(info.Size(), int64(limit))+bytes.MinRead))
	_, err = data.ReadFrom(io.LimitReader(r, int64(limit)+1))
	return data.Bytes(), err
}

// notText says where a file stops being UTF-8 text.
func notText(file, text string) (program.Place, fault) {
	if strings.HasPrefix(text, "\xff\xfe") || strings.HasPrefix(text, "\xfe\xff") {
		return program.Place{File: file}, fault{"utf16"}
	}
	line, column := 1, 1
	for i, r := range text {
		if column > maxLine {
			return program.Place{File: file, Line: line}, fault{"long_line", "most", strconv.Itoa(maxLine)}
		}
		broken := r == utf8.RuneError && !strings.HasPrefix(text[i:], "\ufffd")
		if broken || r < ' ' && r != '\n' && r != '\r' && r != '\t' || r == 0x7f {
			return program.Place{File: file, Line: line, Column: column}, fault{"not_text"}
		}
		column++
		if r == '\n' {
			line, column = line+1, 1
		}
	}
	return program.Place{}, nil
}

// reason is an error of the disk without the path, which is said already.
func reason(err error) string {
	var pathError *fs.PathError
	if errors.As(err, &pathError) {
		err = pathError.Err
	}
	return err.Error()
}
