package main

import (
	"fmt"
	"os"
	"path/filepath"
	"runtime/debug"
	"strings"

	"github.com/spf13/cobra"
)

// commands is the whole command line. Words that coach and client read are not
// here but in content/words.
func commands(around surroundings) *cobra.Command {
	job, on := &job{surroundings: around}, ""
	root := &cobra.Command{
		Use:   "gatepost",
		Short: "Plan training blocks from a coach's folder, and print them",
		Long: `Gatepost reads a coach's folder, plans a block of weeks for every client, and
writes a website to output/site and paper to output/print.

It writes only what changed, removes what is stale, and leaves every file alone
that it did not write. All problems of all files are reported at once. Where a
client's file has one, that client's output stays as it was; where the studio's
file, the library or the words have one, nothing is written.`,
		Example: `  gatepost                      the whole job, for the folder you are in
  gatepost --folder ~/hall      the same for another folder
  gatepost intake "Anna Maria"  start a new client
  gatepost check                report every problem, write nothing
  gatepost review               what the logs say, those first who need you`,
		Args:          oneOf,
		RunE:          work(func([]string) error { return job.build(wholeOutput, "", on) }),
		Version:       version(),
		SilenceErrors: true,
		SilenceUsage:  true,
	}
	root.SetOut(around.out)
	root.SetErr(around.err)
	root.SetVersionTemplate("gatepost {{.Version}}\n")
	root.Flags().StringVar(&on, "on", "", messageDay)
	root.PersistentFlags().StringVar(&job.path, "folder", ".", "the coach's `DIR`, which holds content/")
	root.MarkPersistentFlagDirname("folder")
	root.AddCommand(intakeCommand(job), checkCommand(job), planCommand(job), printCommand(job), publishCommand(job), previewCommand(job),
		logCommand(job), reviewCommand(job), licencesCommand(job))
	return root
}

func intakeCommand(job *job) *cobra.Command {
	var on string
	command := &cobra.Command{
		Use:   "intake NAME",
		Short: "Start a new client: an assessment to fill in, and a blank test sheet",
		Long: `Intake writes content/clients/<name>/assessment.yaml, which explains itself, and
output/print/<name>/test-sheet.pdf to take to the wall; beside them coach.yaml, for
what you want otherwise than planned, and in a new folder content/rules.yaml, for
the same of every client. A file that is there already is never overwritten.`,
		Example: `  gatepost intake Maren
  gatepost intake "Anna Maria" --on 2027-01-04`,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) == 0 {
				return wrongUsage("intake needs the client's name")
			}
			return nil
		},
		RunE: work(func(args []string) error { return job.intake(strings.Join(args, " "), on) }),
	}
	command.Flags().StringVar(&on, "on", "", "the `DATE` of the assessment, such as 2027-01-04 (default today)")
	return command
}

func checkCommand(job *job) *cobra.Command {
	return &cobra.Command{
		Use:   "check",
		Short: "Report every problem, and every client who needs you first; write nothing",
		Long: `Check does the whole job but for the writing. It reports every problem of every
file, and every client who gets no program yet, such as one who needs a doctor's
clearance, with the reason.`,
		Example: `  gatepost check
  gatepost check --folder ~/hall`,
		Args: none,
		RunE: work(func([]string) error { return job.check() }),
	}
}

func planCommand(job *job) *cobra.Command {
	var format, on string
	command := &cobra.Command{
		Use:   "plan CLIENT",
		Short: "Show one client's program in the terminal",
		Long: `Plan shows one client's program as text, or as JSON for other software. Its form
is described by the JSON Schema program/publish/view/program.schema.json. As a
message it is the coming week in five lines, to paste and send: from Thursday on
that is next week. It writes no file.`,
		Example: `  gatepost plan maren
  gatepost plan maren --format json > maren.json
  gatepost plan maren --format message --on 2027-01-10`,
		Args:              oneClient,
		ValidArgsFunction: job.completeClient,
		RunE:              work(func(args []string) error { return job.plan(args[0], format, on) }),
	}
	command.Flags().StringVar(&format, "format", "text", "`FORM` of the result: text, json or message")
	command.Flags().StringVar(&on, "on", "", "the `DATE` of the message, such as 2027-01-10 (default today)")
	command.RegisterFlagCompletionFunc("format", cobra.FixedCompletions([]string{"text", "json", "message"}, cobra.ShellCompDirectiveNoFileComp))
	return command
}

func printCommand(job *job) *cobra.Command {
	part, on, class := printOutput, "", ""
	command := &cobra.Command{
		Use:   "print [CLIENT]",
		Short: "Write the PDFs and the JSON, of all clients or of one",
		Long: `Print writes output/print/<client>/ with the wall chart, the one-page plan, the
session cards, how the exercises are done, the blank test sheet, the calendar, the
program as JSON, and the coming week as a message to paste; for you alone a page
of charts, and until the first session is written down a script of that hour;
where there is a log, with the log read back, and where a new plan was kept, with
the cards that it changed. The website is left as it is.

With --class it writes output/print/class-sheet-<day>.pdf instead, and nothing else:
who trains on that weekday, a row each, with step, help, sets and cells to write in.

Only the message and the class ask what day it is, or take the one given with --on.`,
		Example: `  gatepost print
  gatepost print maren
  gatepost print maren --both-sides
  gatepost print --class mon
  gatepost print --class mon --on 2027-01-10`,
		Args: func(c *cobra.Command, args []string) error {
			if len(args) == 0 {
				return nil
			}
			if class != "" {
				return wrongUsage("--class prints all who train on that day; name no client")
			}
			return oneClient(c, args)
		},
		ValidArgsFunction: job.completeClient,
		RunE: work(func(args []string) error {
			if class != "" {
				return job.class(class, on)
			}
			return job.build(part, strings.Join(args, ""), on)
		}),
	}
	command.Flags().StringVar(&class, "class", "", "print the class sheet of a `DAY` of the week, such as mon: the next one from today on")
	command.RegisterFlagCompletionFunc("class", cobra.FixedCompletions(classDays, cobra.ShellCompDirectiveNoFileComp))
	command.Flags().StringVar(&on, "on", "", messageDay)
	command.Flags().BoolVar(&part.bothSides, "both-sides", false, "order the cards for a printer that turns the sheet on its long edge")
	return command
}

// messageDay is what --on is for where paper is made.
const messageDay = "the `DATE` that messages and classes are about, such as 2027-01-10 (default today)"

func publishCommand(job *job) *cobra.Command {
	return &cobra.Command{
		Use:   "publish",
		Short: "Write the website",
		Long: `Publish writes output/site, which any web host can serve and a file manager can
open. Only clients with "share: site" are in it, by first name, and without body
data, health or birth date. The paper is left as it is.`,
		Example: `  gatepost publish`,
		Args:    none,
		RunE:    work(func([]string) error { return job.build(siteOutput, "", "") }),
	}
}

// work is a command's job, set apart from mistakes in the command line.
func work(do func(args []string) error) func(*cobra.Command, []string) error {
	return func(_ *cobra.Command, args []string) error {
		if err := do(args); err != nil {
			return failure{err}
		}
		return nil
	}
}

// oneOf refuses what is no command, and offers the nearest one.
func oneOf(command *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	command.SuggestionsMinimumDistance = 2
	if near := command.SuggestionsFor(args[0]); len(near) > 0 {
		return wrongUsage("unknown command %q; did you mean %q?", args[0], near[0])
	}
	return wrongUsage("unknown command %q", args[0])
}

func none(command *cobra.Command, args []string) error {
	if len(args) > 0 {
		return wrongUsage("%s takes no %q", command.Name(), args[0])
	}
	return nil
}

func oneClient(command *cobra.Command, args []string) error {
	if len(args) != 1 {
		return wrongUsage("%s takes one client, the name of a folder in content/clients", command.Name())
	}
	_, err := clientName(args[0])
	return err
}

// completeClient offers the folders in content/clients to the shell.
func (j *job) completeClient(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
	if len(args) > 0 {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	entries, _ := os.ReadDir(filepath.Join(j.path, "content", "clients"))
	var names []string
	for _, entry := range entries {
		if entry.IsDir() {
			names = append(names, entry.Name())
		}
	}
	return names, cobra.ShellCompDirectiveNoFileComp
}

func version() string {
	info, ok := debug.ReadBuildInfo()
	if !ok || info.Main.Version == "" {
		return "(unknown version)"
	}
	return fmt.Sprintf("%s (%s)", info.Main.Version, info.GoVersion)
}
