package main

import (
	"strings"

	"gatepost/program"
	"gatepost/program/planner"
	"gatepost/program/publish/view"

	"github.com/spf13/cobra"
)

// reviewOptions are the flags of the review command.
type reviewOptions struct {
	on, format string
	keep       bool
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

It writes no file. With --keep the new plan is put beside the old ones, as
content/clients/<client>/plans/<date>-<version>.json, and from then on that is the
plan that gatepost prints; version 1, made from the assessment, is kept with it.`,
		Example: `  gatepost review
  gatepost review maren
  gatepost review maren --keep
  gatepost review maren --on 2027-02-12 --format json`,
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
	command.Flags().StringVar(&o.format, "format", "text", "`FORM` of the result: text or json")
	command.Flags().BoolVar(&o.keep, "keep", false, "keep the new plan: from now on it is the one on the wall")
	command.RegisterFlagCompletionFunc("format", cobra.FixedCompletions([]string{"text", "json"}, cobra.ShellCompDirectiveNoFileComp))
	return command
}

// review reads one client's log, or everybody's.
func (j *job) review(typed string, o reviewOptions) error {
	if o.format != "text" && o.format != "json" {
		return wrongUsage("there is no format %q; use text or json", o.format)
	}
	on, err := j.day(o.on)
	if err == nil {
		err = j.open()
	}
	if err != nil {
		return err
	}
	defer j.root.Close()
	slug, _ := clientName(typed)
	return j.reviewClient(slug, on, o)
}

func (j *job) reviewClient(slug string, on program.Date, o reviewOptions) error {
	if err := j.checkClient(slug); err != nil {
		return err
	}
	studio, problems := j.read()
	problems = about(problems, slug)
	chosen := pick(studio.Clients, slug)
	if problems.Stop() || len(chosen) == 0 {
		return j.report(problems)
	}
	a := chosen[0]
	r, p, more := planner.Read(&studio.Library, a, a.Plans, on)
	v, words := view.NewReview(studio.Coach, &studio.Library, &p, &r)
	if err := j.report(append(append(problems, more...), words...)); err != nil {
		return err
	}
	return view.ReviewText(j.out, v)
}
