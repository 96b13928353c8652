package main

import (
	"embed"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"slices"
	"strings"

	"gatepost/program"
	"gatepost/program/intake"
	"gatepost/program/posture"
	"gatepost/program/publish/store"
)

// intake starts a new client.
func (j *job) intake(name, on string) error {
	slug, err := clientName(name)
	if err != nil {
		return err
	}
	day, err := j.day(on)
	if err == nil {
		err = j.open()
	}
	if err != nil {
		return err
	}
	defer j.root.Close()
	file := path.Join(clientsFolder, slug, assessmentFile)
	if _, err := j.root.Lstat(file); err == nil {
		return fmt.Errorf("%s is there already, and stays as it is; give the new client another name", j.shown(file))
	}
	if err := j.recoverOutput(); err != nil {
		return err
	}
	studio, err := j.library()
	if err != nil {
		return err
	}
	return j.start(slug, file, intake.Blank(name, &studio.Library, day), &studio)
}

// blankHands writes the blanks of what a coach asks for by hand: of the client, and in a
// new studio that of the studio; not where there are such files.
func (j *job) blankHands(slug string, lib *program.Library) error {
	own := path.Join(clientsFolder, slug, coachFile)
	if err := j.createNew(own, intake.BlankWishes(lib, false)); err != nil {
		return err
	}
	fmt.Fprintf(j.out, "ask for more, where you want it otherwise, in %s\n", j.shown(own))
	if _, err := j.root.Lstat(studioFile); errors.Is(err, fs.ErrNotExist) {
		return j.createNew(rulesFile, intake.BlankWishes(lib, true))
	}
	return nil
}

// createNew writes a file, unless there is one.
func (j *job) createNew(file string, b []byte) error {
	if err := j.create(file, b); err != nil && !errors.Is(err, fs.ErrExist) {
		return fmt.Errorf("cannot write %s: %w", j.shown(file), cause(err))
	}
	return nil
}

// start writes a new client's forms and then the assessment: should the second not be
// possible, a blank form too many does no harm.
func (j *job) start(slug, file string, assessment []byte, studio *program.Studio) error {
	forms := (&making{studio: studio, sheet: testSheets(studio, posture.NewAlbum(&studio.Library))}).waiting(slug)
	files := forms.files
	if err := j.report(forms.problems); err != nil {
		return err
	}
	if err := j.write(files, store.Scope{files[0].Path, files[1].Path}); err != nil {
		return err
	}
	if err := j.create(file, assessment); err != nil {
		return fmt.Errorf("cannot write %s: %w", j.shown(file), cause(err))
	}
	fmt.Fprintf(j.out, "fill in %s\nprint %s\nand %s\n", j.shown(file), j.shown(outputFolder, files[0].Path), j.shown(outputFolder, files[1].Path))
	return j.blankHands(slug, &studio.Library)
}

// create writes a file that must not be there yet.
func (j *job) create(file string, b []byte) error {
	if err := j.root.MkdirAll(path.Dir(file), 0o755); err != nil {
		return err
	}
	f, err := j.root.OpenFile(file, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if err != nil {
		return err
	}
	_, err = f.Write(b)
	return errors.Join(err, f.Close())
}

// library reads studio and library for a new client. A folder that is still
// empty is no problem here, and neither are the files of other clients.
func (j *job) library() (program.Studio, error) {
	coach := j.root.FS()
	if _, err := fs.Stat(coach, contentFolder); errors.Is(err, fs.ErrNotExist) {
		coach = mounts{contentFolder: embed.FS{}} // an empty folder
	}
	studio, problems := intake.Read(coach, j.builtIn, j.chance)
	problems = slices.DeleteFunc(problems, func(p program.Problem) bool {
		return strings.HasPrefix(p.File, clientsFolder) || p.File == rulesFile || p.File == studioFile && p.Line == 0
	})
	return studio, j.report(problems)
}

// day is the day given, or today where none is.
func (j *job) day(on string) (program.Date, error) {
	if on == "" {
		return program.NewDate(j.now().Date()), nil
	}
	day, err := program.ParseDate(on)
	if err != nil {
		return 0, wrongUsage("--on: %v; write it as 2027-01-04", err)
	}
	return day, nil
}
