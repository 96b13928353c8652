package main

import (
	"embed"
	"fmt"
	"io"
	"io/fs"
	"path"
	"strings"

	"github.com/spf13/cobra"
)

// licences are the words under which others gave what is inside the program: of Go, of
// each module that is linked in, and of the typefaces that are embedded. A file's name is
// the module's path with low lines for slashes; its text is the module's own, to the byte.
//
//go:embed licences/*.txt
var licences embed.FS

func licencesCommand(job *job) *cobra.Command {
	return &cobra.Command{
		Use:   "licences",
		Short: "Show the licences of what is inside this program, typefaces too",
		Args:  cobra.NoArgs,
		RunE:  func(*cobra.Command, []string) error { return printLicences(job.out) },
	}
}

func printLicences(out io.Writer) error {
	files, err := fs.Glob(licences, "licences/*.txt")
	for _, file := range files {
		text, readErr := fs.ReadFile(licences, file)
		if readErr != nil {
			return readErr
		}
		name := strings.ReplaceAll(strings.TrimSuffix(path.Base(file), ".txt"), "_", "/")
		if _, err = fmt.Fprintf(out, "%s\n%s\n\n%s\n", name, strings.Repeat("=", len(name)), text); err != nil {
			return err
		}
	}
	return err
}
