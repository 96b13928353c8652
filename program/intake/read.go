package intake

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path"
	"slices"
	"strings"

	"gatepost/program"
)

const clientsFolder = "content/clients"

// Read reads a whole coach's folder laid over the built-in library. The root of
// both is the folder that holds content/. chance gives the page names that are
// offered to clients who are shared without one; nil: none is offered.
//
// What could be read is in the Studio, even where there are problems; clients
// with errors in their file are left out. The problems are sorted.
func Read(coach, builtIn fs.FS, chance io.Reader) (program.Studio, program.Problems) {
	return ReadFor(coach, builtIn, chance, "")
}

// NoClient is nobody's folder: with it ReadFor leaves out what every client has done.
const NoClient = "/"

// ReadFor reads what Read does, but for what clients other than the one named
// have done: of hundreds, their logs and kept plans are most of the work.
func ReadFor(coach, builtIn fs.FS, chance io.Reader, only string) (program.Studio, program.Problems) {
	return newFolder(coach, builtIn).read(chance, only)
}

// ReadBut reads what Read does, but for clients whose files are as they were; known has
// their pages by their slugs. It fails where another client has one of those pages: whose
// fault that is, only reading all of them can tell.
func ReadBut(coach, builtIn fs.FS, chance io.Reader, known map[string]string) (studio program.Studio, problems program.Problems, ok bool) {
	f := newFolder(coach, builtIn)
	f.known = known
	studio, problems = f.read(chance, "")
	return studio, problems, !f.clash
}

func (f *folder) read(chance io.Reader, only string) (program.Studio, program.Problems) {
	if !f.exists("content") {
		f.say("content", "there is no such folder here", "Change to the coach's folder, the one that holds content/, or name it.")
		return program.Studio{}, f.problems
	}
	f.checkTop()
	about, file := f.readStudio()
	f.dates = about.Dates
	library := f.readLibrary(cmp.Or(about.Lang, original))
	library.link()
	f.said = f.english.over(library.Words)
	if library.Words == nil && file != nil && about.Lang != "" {
		file.say(file.at("language"), fmt.Sprintf("there are no words in %s", quote(about.Lang)), fmt.Sprintf("Write content/words/%s.yaml, or take language: away.", about.Lang))
	}
	known := kit(&library.Library)
	clients := f.readClients(library, known, chance)
	rules := f.readRules(library, known)
	for _, c := range clients {
		f.readWishes(c, rules, library, known)
	}
	wanted := slices.DeleteFunc(slices.Clone(clients), func(c *client) bool { return only != "" && c.Slug != only })
	f.readDone(&library.Library, wanted)
	checkPagesDiffer(clients)
	f.clash = f.clashes(clients)
	programs := f.readPrograms(library, known)
	for _, c := range programs {
		c.public.Wishes = rules.forEverybody()
		c.public.Rules = rulesIn(c.public.Wishes)
	}
	notes := f.readNotes(library)
	library.translateOwn(f, cmp.Or(about.Lang, original), programs, notes)
	sound, waiting := soundOnly(clients)
	return program.Studio{Coach: about, Library: library.Library, Clients: sound, Waiting: waiting,
			Public: soundPrograms(programs), Notes: notes},
		f.collect(library, append(clients, programs...), file, rules.written())
}

// checkTop warns of what lies in content/ and is not read there, such as a
// misspelt folder. Files that are nothing like ours are left alone.
func (f *folder) checkTop() {
	known := slices.Concat([]string{"clients", "exercises", "notes", "pages", "programs", "roadmaps", "rules.yaml", "studio.yaml", "words"}, f.languages())
	for _, e := range f.entries(f.coach, "content") {
		ours := e.IsDir() || slices.Contains([]string{".yaml", ".yml", ".md"}, path.Ext(e.Name()))
		if ours && !slices.Contains(known, e.Name()) {
			f.doubt("content/"+e.Name(), "nothing here is read", offer(e.Name(), known))
		}
	}
}

// languages are those that there are words in; translations lie in folders named
// after them.
func (f *folder) languages() []string {
	var all []string
	for _, from := range []fs.FS{f.builtIn, f.coach} {
		files, _ := fs.Glob(from, "content/words/*.yaml")
		for _, file := range files {
			all = append(all, strings.TrimSuffix(path.Base(file), ".yaml"))
		}
	}
	return all
}

// soundOnly are the clients without errors, and the slugs of those who wait for
// their assessment.
func soundOnly(clients []*client) (sound []program.Assessment, waiting []string) {
	for _, c := range clients {
		switch {
		case c.waiting:
			waiting = append(waiting, c.Slug)
		case c.sound():
			sound = append(sound, *c.Assessment)
		}
	}
	return sound, waiting
}

// collect gathers the problems of all files, sorted.
func (f *folder) collect(library *shelf, clients []*client, studio ...*source) program.Problems {
	problems := f.problems
	for _, s := range library.sources {
		problems = append(problems, s.problems...)
	}
	for _, s := range studio {
		if s != nil {
			problems = append(problems, s.problems...)
		}
	}
	for _, c := range clients {
		problems = append(problems, c.problems...)
		if c.log != nil {
			problems = append(problems, c.log.problems...)
		}
		if c.hand != nil {
			problems = append(problems, c.hand.problems...)
		}
		for _, plan := range c.plans {
			problems = append(problems, plan.problems...)
		}
	}
	problems.Sort()
	return problems
}

// exists says whether the coach has a file or folder.
func (f *folder) exists(file string) bool {
	_, err := fs.Stat(f.coach, file)
	return !errors.Is(err, fs.ErrNotExist)
}

// openIfThere opens a file without a word where it is not there.
func openIfThere(from fs.FS, file string, builtIn bool) (*source, bool) {
	if _, err := fs.Stat(from, file); err != nil {
		return nil, false
	}
	quiet := folder{english: wordless}
	return quiet.open(from, file, builtIn)
}

// readClients reads every client's folder, by slug.
func (f *folder) readClients(library *shelf, kit *names, chance io.Reader) []*client {
	entries := f.entries(f.coach, clientsFolder)
	if len(entries) == 0 && len(f.entries(f.coach, programsFolder)) == 0 {
		f.say(clientsFolder, "there is no client yet", "Write the first one's file with: gatepost intake NAME")
	}
	var clients []*client
	for _, e := range entries {
		name := clientsFolder + "/" + e.Name()
		if _, known := f.known[e.Name()]; known {
			continue
		}
		info, err := fs.Stat(f.coach, name)
		switch {
		case err != nil:
			f.say(name, "this cannot be read: "+reason(err), "A client is a folder inside the coach's own.")
		case !info.IsDir():
			f.doubt(name, "this file is not read", "A client is a folder with assessment.yaml in it.")
		case !isSlug(e.Name()):
			f.say(name, "the folder's name does not fit", "Use 1 to 40 small letters a to z, digits and hyphens: "+suggestSlug(e.Name()))
		default:
			if c := f.readClient(e.Name(), library, kit, chance); c != nil {
				clients = append(clients, c)
			}
		}
	}
	return clients
}

func (f *folder) readClient(slug string, library *shelf, kit *names, chance io.Reader) *client {
	file := clientsFolder + "/" + slug + "/assessment.yaml"
	if !f.exists(file) {
		f.say(file, "the client has no assessment", "Write it with: gatepost intake "+slug+f.almost(clientsFolder+"/"+slug))
		return nil
	}
	src, ok := f.open(f.coach, file, false)
	if !ok {
		return nil
	}
	a := &program.Assessment{Slug: slug, Places: src.places}
	src.words = f.said
	src.readYAML("name: Maren", assessment(a, sample(&library.Library)))
	c := &client{source: src, Assessment: a, library: library, kit: kit}
	if src.isBlank() {
		src.problems = nil
		c.waiting = true
		f.doubt(file, "waiting: nobody has filled it in yet", "Fill in what stands empty. Until then this client is left out.")
		return c
	}
	if c.given("name") || len(src.places) > 1 {
		c.check()
		c.checkPage(chance)
		c.checkCalled()
	}
	return c
}

// almost names a file that may have been meant as the assessment.
func (f *folder) almost(dir string) string {
	entries := f.entries(f.coach, dir)
	i := slices.IndexFunc(entries, func(e fs.DirEntry) bool {
		return distance(strings.ToLower(e.Name()), "assessment.yaml") <= 5
	})
	if i < 0 {
		return ""
	}
	return fmt.Sprintf("; or rename %s to assessment.yaml", entries[i].Name())
}
