package main

import (
	"fmt"
	"path"
	"strings"

	"gatepost/program"
	"gatepost/program/intake"
	"gatepost/program/planner"
	"gatepost/program/publish/store"
	"gatepost/program/publish/view"

	"github.com/spf13/cobra"
)

// reviewOptions are the flags of the review command.
type reviewOptions struct {
	on, format string
	keep       bool
	passed     []string // steps whose gates the coach signs
}

func reviewCommand(job *job) *cobra.Command {
	var o reviewOptions
	command := &cobra.Command{
		Use:   "review [CLIENT]",
		Short: "Say what a client's log shows, and what the weeks ahead should be",
		Long: `Review reads content/clients/<client>/log.csv against the plan on the wall: sessions
done and missed, what moved the estimate, which gates are passed, what hurts, and
the weeks ahead planned anew. Without a client it is one line for each of them,
those who need you first.

As a message it is the coming week in five lines, as the plan stands once you keep
it, to paste and send.

It writes no file. With --keep the new plan is put beside the old ones, as
content/clients/<client>/plans/<date>-<version>.json, and from then on that is the
plan that gatepost prints; version 1, made from the assessment, is kept with it.

With --passed the coach signs the gate of a step, whatever the log says of it. That
is written into the plan that is kept, and holds from then on.`,
		Example: `  gatepost review
  gatepost review maren
  gatepost review maren --keep
  gatepost review maren --keep --passed tuck
  gatepost review maren --on 2027-02-12 --format json
  gatepost review maren --keep --format message
  gatepost review --format json`,
		Args: func(c *cobra.Command, args []string) error {
			if len(args) == 0 {
				return nil
			}
			return oneClient(c, args)
		},
		ValidArgsFunction: job.completeClient,
		RunE:              work(func(args []string) error { return job.review(strings.Join(args, ""), o) }),
	}
	command.Flags().StringVar(&o.on, "on", "", "the `DATE` of the review, such as 2027-02-12 (default today)")
	command.Flags().StringVar(&o.format, "format", "text", "`FORM` of the result: text, json or, of one client, message")
	command.Flags().BoolVar(&o.keep, "keep", false, "keep the new plan: from now on it is the one on the wall")
	command.Flags().StringArrayVar(&o.passed, "passed", nil, "sign the gate of a `STEP`, with --keep; may be given again")
	command.RegisterFlagCompletionFunc("format", cobra.FixedCompletions([]string{"text", "json", "message"}, cobra.ShellCompDirectiveNoFileComp))
	return command
}

// review reads one client's log, or everybody's.
func (j *job) review(typed string, o reviewOptions) error {
	if err := knownFormat(o.format); err != nil {
		return err
	}
	if len(o.passed) > 0 && !o.keep {
		return wrongUsage("--passed is written into the plan that is kept; add --keep")
	}
	on, err := j.day(o.on)
	if err == nil {
		err = j.open()
	}
	if err != nil {
		return err
	}
	defer j.root.Close()
	if typed == "" {
		return j.overview(on, o)
	}
	slug, _ := clientName(typed) // its form was checked with the arguments
	return j.reviewClient(slug, on, o)
}

// reviewClient is all that one client's log says.
func (j *job) reviewClient(slug string, on program.Date, o reviewOptions) error {
	studio, a, problems, err := j.readOne(slug)
	if a == nil {
		return err
	}
	signed, err := signedGates(&studio.Library, a, o.passed)
	if err != nil {
		return err
	}
	r, p, more := planner.Read(&studio.Library, a, a.Plans, on, signed...)
	v, words := view.NewReview(studio.Coach, &studio.Library, &p, &r)
	if err := j.report(append(append(problems, more...), words...)); err != nil {
		return err
	}
	if o.keep {
		v.Keep = ""
	}
	if o.format == "message" {
		err = j.showMessage(&studio, &p, &r, r.Changes, r.PrintNow, on)
	} else {
		err = j.showReview(v, &r, o.format)
	}
	if err == nil && o.keep {
		err = j.hang(&studio, a, &p, on, signed)
	}
	return err
}

func (j *job) showReview(v *view.Review, r *program.Review, format string) error {
	if format == "text" {
		return view.ReviewText(j.out, v)
	}
	b, err := view.ReviewJSON(r)
	if err == nil {
		_, err = j.out.Write(b)
	}
	return err
}

func (j *job) keepVersion(slug string, v *program.PlanVersion) error {
	b, err := view.PlanJSON(v)
	if err != nil {
		return fmt.Errorf("the plan cannot be written as JSON: %w", err)
	}
	file := path.Join(clientsFolder, slug, intake.PlanFile(v))
	if err := store.Keep(j.root, file, b); err != nil {
		return err
	}
	fmt.Fprintf(j.err, "kept version %d: %s\n", v.Version, j.shown(file))
	return nil
}
