package main

import (
	"bytes"
	"errors"
	"slices"
	"strings"

	"gatepost/program"
	"gatepost/program/intake"
)

// words are those of the studio's language; English ones where it cannot be told.
func (j *job) words() program.Words { return intake.ReadWords(j.root.FS(), j.builtIn) }

// reported is the report of problems in the studio's language.
func (j *job) reported(problems program.Problems) string {
	if len(problems) == 0 {
		return ""
	}
	var out bytes.Buffer
	problems = slices.Clone(problems) // which the caller still counts
	problems.Sort()
	intake.Report(&out, j.words(), slices.Compact(problems)) // a word that is missing is missing for every client
	return out.String()
}

// terminal is what a terminal says, with plain spaces as in every text there.
func terminal(words program.Words, key string, pairs ...string) string {
	return plain(words.Say("terminal."+key, pairs...))
}

func plain(text string) string { return strings.ReplaceAll(text, "\u00a0", " ") }

// refused is an error in the words of a terminal.
func refused(words program.Words, key string, pairs ...string) error {
	return errors.New(terminal(words, key, pairs...))
}
