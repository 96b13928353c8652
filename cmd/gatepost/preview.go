package main

import (
	"context"
	"fmt"
	"net"
	"os"
	"os/signal"

	"github.com/spf13/cobra"

	"gatepost/program/publish/preview"
)

func previewCommand(job *job) *cobra.Command {
	var listen string
	var open bool
	command := &cobra.Command{
		Use:   "preview",
		Short: "Show the website while you work on it",
		Long: `Preview serves the website to a browser on this machine, from memory, and loads
open pages again when a file of the folder changes. Where a file has a problem
the page shows what check would say. It writes nothing. Ctrl-C ends it.

Shared clients' programs are in it. Other machines can therefore read it only
where you say so with --open-to-network.`,
		Example: `  gatepost preview
  gatepost preview --listen 127.0.0.1:8080`,
		Args: none,
		RunE: work(func([]string) error { return job.preview(listen, open) }),
	}
	command.Flags().StringVar(&listen, "listen", "127.0.0.1:4170", "the `ADDRESS` to serve on; port 0 is any that is free")
	command.Flags().BoolVar(&open, "open-to-network", false, "let other machines read the preview")
	return command
}

// preview serves the site until it is told to end.
func (j *job) preview(listen string, open bool) error {
	if err := checkListen(listen, open); err != nil {
		return err
	}
	if err := j.open(); err != nil {
		return err
	}
	defer j.root.Close()
	ctx, stop := signal.NotifyContext(j.context(), os.Interrupt)
	defer stop()
	changes, err := j.watch(ctx)
	if err != nil {
		return fmt.Errorf("cannot watch the folder %q: %w", j.path, err)
	}
	listener, err := net.Listen("tcp", listen)
	if err != nil {
		return fmt.Errorf("cannot serve on %s: %w", listen, err)
	}
	if open {
		fmt.Fprintf(j.err, "warning: every machine on the network can read this preview, shared clients' programs included\n")
	}
	site := &preview.Preview{Open: open}
	j.announce(site, listener.Addr())
	done := make(chan struct{})
	go func() {
		defer close(done)
		for range changes {
			j.refresh(site)
		}
	}()
	err = site.Serve(ctx, listener)
	stop()
	<-done // the folder may be closed now
	return err
}

// checkListen refuses an address that other machines reach, unless told.
func checkListen(listen string, open bool) error {
	host, _, err := net.SplitHostPort(listen)
	if err != nil {
		return wrongUsage("--listen: %q is not an address; write it as 127.0.0.1:4170", listen)
	}
	ip := net.ParseIP(host)
	if loopback := host == "localhost" || ip != nil && ip.IsLoopback(); !loopback && !open {
		return wrongUsage("--listen: other machines reach %s, and shared clients' programs are in the preview; add --open-to-network if that is meant", listen)
	}
	return nil
}

// announce makes the site for the first time and says where it is.
func (j *job) announce(site *preview.Preview, at net.Addr) {
	j.refresh(site)
	fmt.Fprintf(j.out, "http://%s/\n", at)
	for _, page := range site.Pages() {
		fmt.Fprintf(j.out, "http://%s/%s\n", at, page)
	}
}

// refresh makes the site anew, of what has changed, and shows it or what is wrong.
func (j *job) refresh(site *preview.Preview) {
	kept, messages := j.remake()
	if kept == nil {
		fmt.Fprint(j.err, messages)
		site.ShowProblems(messages)
		return
	}
	site.Show(kept.files(), kept.later(j))
}

// context ends a command that waits; nil surroundings wait for ever.
func (s surroundings) context() context.Context {
	if s.until == nil {
		return context.Background()
	}
	return s.until
}
