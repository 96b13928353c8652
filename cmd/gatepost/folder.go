package main

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"gatepost/program"
	"gatepost/program/intake"
	"gatepost/program/publish/store"
)

// Where things are in a coach's folder.
const (
	contentFolder  = "content"
	clientsFolder  = "content/clients"
	assessmentFile = "assessment.yaml"
	studioFile     = "content/studio.yaml"
	rulesFile      = "content/rules.yaml"
	coachFile      = "coach.yaml"
	templateFolder = "templates"
	outputFolder   = "output"
)

// job is one command at work on one coach's folder.
type job struct {
	surroundings
	path string    // of the folder, from the command line
	root *os.Root  // the folder, opened
	kept *keepsake // of a preview, from one making to the next; nil: none
}

// open opens the coach's folder.
func (j *job) open() error {
	root, err := os.OpenRoot(j.path)
	if err != nil {
		return fmt.Errorf("cannot open the folder %q: %w", j.path, cause(err))
	}
	j.root = root
	return nil
}

// recoverOutput finishes what an interrupted command had decided to write.
func (j *job) recoverOutput() error {
	out, err := j.root.OpenRoot(outputFolder)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return fmt.Errorf("cannot open the folder %s: %w", j.shown(outputFolder), cause(err))
	}
	defer out.Close()
	recovered, err := store.Recover(out)
	if recovered && err == nil {
		fmt.Fprintln(j.err, "finished what an interrupted command had begun to write")
	}
	return err
}

// read reads the folder, laid over what is built in.
func (j *job) read() (program.Studio, program.Problems) { return j.readFor("") }

// readFor reads the folder for what is about one client; the logs and plans of
// the others are left out. Without a client it reads all.
func (j *job) readFor(client string) (program.Studio, program.Problems) {
	return intake.ReadFor(j.root.FS(), j.builtIn, j.chance, client)
}

// readOne reads what is about one client. Where a problem stops, or there is no
// such client, the client is nil and the error has been reported.
func (j *job) readOne(slug string) (program.Studio, *program.Assessment, program.Problems, error) {
	if err := j.checkClient(slug); err != nil {
		return program.Studio{}, nil, nil, err
	}
	studio, problems := j.readFor(slug)
	problems = about(problems, slug)
	chosen := pick(studio.Clients, slug)
	if problems.Stop() || len(chosen) == 0 {
		return studio, nil, problems, cmp.Or(j.report(problems), errReported) // a client who waits is no error, but has nothing to show
	}
	return studio, chosen[0], problems, nil
}

// write puts files into the output folder and says what changed.
func (j *job) write(files []store.File, scope store.Scope) error {
	w := j.writing(output{})
	defer w.close()
	w.take(&client{files: files})
	return w.commit(scope)
}

// tell says what became of the output.
func (j *job) tell(written, unchanged, removed int) {
	fmt.Fprintf(j.out, "%s: %d written, %d unchanged, %d removed\n", j.shown(outputFolder), written, unchanged, removed)
}

// report writes problems, and gives errReported where they stop the work.
func (j *job) report(problems program.Problems) error {
	io.WriteString(j.err, j.reported(problems))
	if problems.Stop() {
		return errReported
	}
	return nil
}

// clientOf is the client whose files a problem is about, or "" for the studio's
// and the library's.
func clientOf(p program.Problem) string {
	below, ok := strings.CutPrefix(p.File, clientsFolder+"/")
	if !ok {
		return ""
	}
	client, _, _ := strings.Cut(below, "/")
	return client
}

// about picks the problems of the studio, the library and one client.
func about(problems program.Problems, client string) program.Problems {
	return slices.DeleteFunc(slices.Clone(problems), func(p program.Problem) bool {
		of := clientOf(p)
		return of != "" && of != client
	})
}

// ofClient picks the problems of one client's files.
func ofClient(problems program.Problems, client string) program.Problems {
	return slices.DeleteFunc(slices.Clone(problems), func(p program.Problem) bool { return clientOf(p) != client })
}

// clientName makes a folder's name of what was typed: "Maren" is maren.
func clientName(typed string) (string, error) {
	slug, err := intake.Slug(typed)
	if err != nil || strings.ContainsAny(typed, `/\`) {
		return "", wrongUsage("%q is not a client's name; use the name of a folder in %s", typed, clientsFolder)
	}
	return slug, nil
}

// checkClient refuses a client who has no folder, and says who has.
func (j *job) checkClient(slug string) error {
	entries, err := fs.ReadDir(j.root.FS(), clientsFolder)
	if err != nil {
		return fmt.Errorf("no client %q; cannot read %s: %w", slug, j.shown(clientsFolder), cause(err))
	}
	var names []string
	for _, entry := range entries {
		if entry.Name() == slug {
			return nil
		}
		if entry.IsDir() {
			names = append(names, entry.Name())
		}
	}
	return refused(j.words(), "no_client", "written", strconv.Quote(slug), "clients", strings.Join(names, ", "))
}

// shown is a path in the folder as seen from where the command runs.
func (j *job) shown(parts ...string) string {
	return filepath.ToSlash(filepath.Join(append([]string{j.path}, parts...)...))
}

// cause is an error of the disk without the system call and the path.
func cause(err error) error {
	var pathError *fs.PathError
	if errors.As(err, &pathError) {
		return pathError.Err
	}
	return err
}
