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

// start writes a new client's test sheet and then the assessment: should the
// second not be possible, a blank form too many does no harm.
func (j *job) start(slug, file string, assessment []byte, studio *program.Studio) error {
	sheet, problems := blankSheet(studio, "")
	if err := j.report(problems); err != nil {
		return err
	}
	sheetFile := printFolder(slug) + "/test-sheet.pdf"
	if err := j.write([]store.File{{Path: sheetFile, Bytes: sheet}}, store.Scope{sheetFile}); err != nil {
		return err
	}
	if err := j.create(file, assessment); err != nil {
		return fmt.Errorf("cannot write %s: %w", j.shown(file), cause(err))
	}
	fmt.Fprintf(j.out, "fill in %s\nprint %s\n", j.shown(file), j.shown(outputFolder, sheetFile))
	return nil
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
		return strings.HasPrefix(p.File, clientsFolder) || p.File == studioFile && p.Line == 0
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
