package main

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"hash"
	"io"
	"io/fs"
	"os"
	"regexp"
	"strings"
	"sync"
)

// sources are fingerprints of what a part of the output is made from.
//
// What is no client's is made from the program itself, from what is built in, and from
// every file below content/ and templates/ but for the clients' folders. Of those it needs
// to know only whether there are any. A client's paper and pages are made from the same,
// from the client's own folder, and from the week that messages are about. Of other
// clients nothing but the page counts: two can't have the same, which is seen in reading.
//
// An empty fingerprint says that nobody can tell.
type sources struct {
	studio  string
	clients map[string]string // by the name of the folder
	entries []string          // of the clients' folder, but for hidden ones

	shared string            // of what every client is read with: the studio, the library, the words
	own    map[string]string // of what is read of each
}

// named are the fingerprints by the names under which the store keeps them.
func (s *sources) named(part output) map[string]string {
	all := map[string]string{part.name(): s.studio}
	for slug, source := range s.clients {
		all[part.name()+slug] = source
	}
	return all
}

// name tells a part from others, in which the same files may be made otherwise.
func (o output) name() string {
	name := ""
	for _, part := range []struct {
		in   bool
		word string
	}{{o.site, "site "}, {o.print, "print "}, {o.bothSides, "both-sides "}} {
		if part.in {
			name += part.word
		}
	}
	return strings.TrimSpace(name) + ": "
}

// sources takes the fingerprints of a part of the output.
func (j *job) sources(part output) sources {
	var s sources
	coach := j.root.FS()
	entries, err := fs.ReadDir(coach, clientsFolder)
	if errors.Is(err, fs.ErrNotExist) {
		err = nil
	}
	shared, pages := sha256.New(), sha256.New()
	into := func(name string) hash.Hash {
		if aboutPages.MatchString(name) {
			return pages
		}
		return shared
	}
	for _, from := range []fs.FS{j.builtIn, coach} {
		err = errors.Join(err, hashBelow(into, from, contentFolder), hashBelow(into, from, templateFolder))
	}
	if err = errors.Join(err, hashProgram(pages)); err != nil {
		return s
	}
	s.shared = hex.EncodeToString(shared.Sum(nil))
	base := finger(part.name(), s.shared, hex.EncodeToString(pages.Sum(nil)))
	for _, e := range entries {
		if !strings.HasPrefix(e.Name(), ".") {
			s.entries = append(s.entries, e.Name())
		}
	}
	s.studio = finger(base, fmt.Sprint(len(s.entries) > 0))
	own := make([]string, len(s.entries))
	j.sideBySide(len(own), "", func(i int) { own[i] = ownSource(coach, s.entries[i]) })
	s.clients, s.own = map[string]string{}, map[string]string{}
	for i, slug := range s.entries {
		if s.own[slug] = own[i]; own[i] != "" {
			s.clients[slug] = finger(base, own[i], fmt.Sprint(part.week))
		}
	}
	return s
}

// aboutPages are the files that no client is read with, in English or translated.
var aboutPages = regexp.MustCompile(`^(templates|content/([a-z-]+/)?(pages|notes|programs)/)`)

// ownSource is a hash of a client's folder.
func ownSource(coach fs.FS, slug string) string {
	sum := sha256.New()
	if err := hashBelow(func(string) hash.Hash { return sum }, coach, clientsFolder+"/"+slug); err != nil {
		return ""
	}
	return hex.EncodeToString(sum.Sum(nil))
}

func finger(parts ...string) string {
	sum := sha256.Sum256(fmt.Appendf(nil, "%q", parts))
	return hex.EncodeToString(sum[:])
}

// thisProgram is a hash of the program itself, which a run reads once: it is some
// thirty megabytes.
var thisProgram = sync.OnceValues(func() ([]byte, error) {
	name, err := os.Executable()
	if err != nil {
		return nil, err
	}
	f, err := os.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	sum := sha256.New()
	_, err = io.Copy(sum, f)
	return sum.Sum(nil), err
})

func hashProgram(sum hash.Hash) error {
	program, err := thisProgram()
	sum.Write(program)
	return err
}

// longestRead is more than is ever read of a file; of longer ones the size alone
// matters.
const longestRead = 2 << 20

// hashBelow takes in names and bytes of a folder, but for clients below it; each into the
// hash that is its.
func hashBelow(into func(name string) hash.Hash, from fs.FS, top string) error {
	return fs.WalkDir(from, top, func(name string, entry fs.DirEntry, err error) error {
		switch {
		case errors.Is(err, fs.ErrNotExist) && name == top:
			return nil
		case err != nil:
			return err
		case name == clientsFolder:
			return fs.SkipDir
		case entry.IsDir():
			_, err = fmt.Fprintf(into(name), "%q\n", name)
			return err
		case !entry.Type().IsRegular():
			return errors.New("what a link leads to may change unseen")
		}
		return hashFile(into(name), from, name, entry)
	})
}

func hashFile(sum hash.Hash, from fs.FS, name string, entry fs.DirEntry) error {
	info, err := entry.Info()
	if err != nil {
		return err
	}
	fmt.Fprintf(sum, "%q %d\n", name, info.Size())
	if info.Size() > longestRead {
		return nil
	}
	b, err := fs.ReadFile(from, name)
	sum.Write(b)
	return err
}
