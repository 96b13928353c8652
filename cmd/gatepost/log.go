package main

import (
	"bytes"
	"cmp"
	"fmt"
	"io"
	"path"
	"slices"
	"strconv"

	"gatepost/program"
	"gatepost/program/intake"
	"gatepost/program/publish/store"

	"github.com/spf13/cobra"
)

const logFile = "log.csv"

func logCommand(job *job) *cobra.Command {
	var on, all string
	command := &cobra.Command{
		Use:   "log CLIENT | log --all FILE",
		Short: "Add what a client did to the log: one session from the terminal, or lines of CSV",
		Long: `Log asks for one session, exercise by exercise as it stands on the card, and adds
it to content/clients/<client>/log.csv. From a pipe or a file it reads lines of CSV
instead, with the columns of the log; a header line may name others, in English or in
the studio's language.

  ` + intake.LogHeader() + `

With --all, one file has the lines of the whole studio, and a column client says whose
each is. All of them are added, or none.

Lines are checked as the log itself is. Where one is wrong nothing is added. A line
that is in the log already as it is, is left out, so that the same export can be given
again; one that is there with other values is an error. Text around the lines, as in
a mail, is left out too, and said. Nothing that is in a log is ever written again, so
that a crash loses none.

In place of an exercise, done is the whole session as printed, and morning how the
joints felt on the morning of that date, after the last session: wrists 0 elbows 2
under pain; an empty cell is 0 at all of them. Log asks for it last, for the morning
after the session before this one.`,
		Example: `  gatepost log maren
  gatepost log maren --on 2027-01-11
  gatepost log maren < sessions.csv
  gatepost log --all week.csv
  echo "2027-01-11,done" | gatepost log maren
  printf "date,exercise,pain\n2027-01-12,morning,elbows 2\n" | gatepost log maren`,
		Args: func(c *cobra.Command, args []string) error {
			switch {
			case all == "":
				return oneClient(c, args)
			case len(args) > 0:
				return wrongUsage("log --all takes no client; the file says whose its lines are")
			}
			return nil
		},
		ValidArgsFunction: job.completeClient,
		RunE: work(func(args []string) error {
			if all != "" {
				return job.logAll(all, on)
			}
			return job.log(args[0], on)
		}),
	}
	command.Flags().StringVar(&on, "on", "", "the `DATE` of the session, and the last one that lines may have (default today)")
	command.Flags().StringVar(&all, "all", "", "a `FILE` with lines of all clients, in a column client; - is standard input")
	command.MarkFlagFilename("all", "csv", "txt")
	return command
}

// log adds lines to a client's log.
func (j *job) log(typed, on string) error {
	slug, err := clientName(typed)
	if err != nil {
		return err
	}
	today, err := j.day(on)
	if err == nil {
		err = j.open()
	}
	if err != nil {
		return err
	}
	defer j.root.Close()
	if err := j.checkClient(slug); err != nil {
		return err
	}
	studio, a, err := j.readForLog(slug)
	if err != nil {
		return err
	}
	entries, err := j.newEntries(&studio, a, today)
	if err != nil || len(entries) == 0 {
		return err
	}
	return j.addToLog(&studio, &addition{client: a, entries: entries})
}

func logPath(slug string) string { return path.Join(clientsFolder, slug, logFile) }

// readForLog reads what a log's lines are checked against. What is wrong in the
// log itself is said and does not keep new lines out.
func (j *job) readForLog(slug string) (program.Studio, *program.Assessment, error) {
	studio, problems := j.readFor(slug)
	problems = about(problems, slug)
	inLog := func(p program.Problem) bool { return p.File == logPath(slug) && p.Line > 0 }
	chosen := pick(studio.Clients, slug)
	stop := slices.DeleteFunc(slices.Clone(problems), inLog).Stop() || len(chosen) == 0
	if err := j.report(problems); stop {
		return studio, nil, cmp.Or(err, errReported)
	}
	return studio, chosen[0], nil
}

// newEntries asks for a session where somebody is there to answer, and reads
// lines where not.
func (j *job) newEntries(studio *program.Studio, a *program.Assessment, today program.Date) ([]program.Entry, error) {
	if isTerminal(j.in) {
		return j.askSession(studio, a, today)
	}
	const most = 1 << 20 // bytes: many years of one client
	words := studio.Library.Words
	input := terminal(words, "input")
	text, err := readAtMost(words, j.in, input, most)
	if err != nil {
		return nil, err
	}
	log, problems := intake.ReadNewLines(studio, a, input, text, j.logText(a.Slug))
	problems = append(problems, intake.NotYet(&studio.Library, log, today)...)
	err = j.report(problems)
	if err == nil && len(log.Entries) == 0 {
		return nil, fmt.Errorf("%w\n%s\n%s,done", refused(words, "no_lines", "file", input), intake.LogHeader(), today)
	}
	return log.Entries, err
}

// readAtMost reads one byte more than the most that can be taken.
func readAtMost(words program.Words, in io.Reader, name string, most int64) ([]byte, error) {
	text, err := io.ReadAll(io.LimitReader(in, most+1))
	if err != nil {
		return nil, cannotRead(words, name, err)
	}
	return text, nil
}

func cannotRead(words program.Words, name string, err error) error {
	return refused(words, "unreadable", "file", name, "reason", cause(err).Error())
}

// logText is the log as it is now; nil where there is none.
func (j *job) logText(slug string) []byte {
	text, err := j.root.ReadFile(logPath(slug))
	if err != nil {
		return nil // if it is there and cannot be read, adding to it says so
	}
	return text
}

// addition is what one client's log gets, as it was worked out for a text.
type addition struct {
	client   *program.Assessment
	entries  []program.Entry
	ready    bool
	text     []byte
	added    intake.Addition
	problems program.Problems
}

// prepare works out what to add to a text of the log.
func (p *addition) prepare(studio *program.Studio, text []byte) {
	if !p.ready || !bytes.Equal(p.text, text) { // somebody may have added meanwhile
		p.added, p.problems = intake.AddToLog(studio, p.client, logPath(p.client.Slug), text, p.entries)
		p.ready, p.text = true, text
	}
}

// addToLog writes entries to the end of the log, but for those that it has.
func (j *job) addToLog(studio *program.Studio, p *addition) error {
	file := logPath(p.client.Slug)
	err := store.Append(j.root, file, func(text []byte) ([]byte, error) {
		p.prepare(studio, text)
		return p.added.Bytes, j.report(p.problems)
	})
	if err != nil {
		return err
	}
	words, added := studio.Library.Words, p.added
	if added.Cut {
		fmt.Fprintln(j.err, terminal(words, "closed", "file", j.shown(file)))
	}
	key := "added"
	switch {
	case added.Lines == 0:
		key = "added_none"
	case added.There > 0:
		key = "added_rest"
	}
	fmt.Fprintln(j.out, terminal(words, key, "file", j.shown(file), "lines", linesOf(words, added.Lines), "there", linesOf(words, added.There)))
	return nil
}

func linesOf(words program.Words, n int) string {
	return plain(words.Say(words.Plural("terminal.lines", n), "count", strconv.Itoa(n)))
}
