package main

import (
	"fmt"
	"io/fs"
	"path"
	"regexp"
	"slices"

	"gatepost/program"
	"gatepost/program/publish/store"
)

// leftOf are the clients whose files have errors.
func leftOf(problems program.Problems) []string {
	var slugs []string
	for _, p := range onlyErrors(problems) {
		if slug := clientOf(p); slug != "" {
			slugs = append(slugs, slug)
		}
	}
	slices.Sort(slugs)
	return slices.Compact(slugs)
}

// without takes clients out of a studio.
func without(clients []program.Assessment, left []string) []program.Assessment {
	return slices.DeleteFunc(slices.Clone(clients), func(a program.Assessment) bool { return slices.Contains(left, a.Slug) })
}

// leftAlone is the part of the output that belongs to clients with errors: their
// paper, and their pages, unless somebody else has that address now.
func (j *job) leftAlone(left []string, clients []*client) store.Scope {
	var scope store.Scope
	for _, slug := range left {
		scope = append(scope, "!"+printFolder(slug)+"/")
		for _, page := range j.pagesOf(slug) {
			if !slices.ContainsFunc(clients, func(c *client) bool { return c.page == page && !slices.Contains(left, c.slug) }) {
				scope = append(scope, "!"+path.Join(pagesFolder, page)+"/")
			}
		}
	}
	return scope
}

const pagesFolder = "site/c" // below the output folder: the pages of shared clients

// What an assessment with errors still says of its pages.
var (
	pageLine  = regexp.MustCompile(`(?m)^page:[ \t]*["']?([a-z0-9]+)`)
	printLine = regexp.MustCompile(`(?m)^share:[ \t]*["']?print\b`)
)

// pagesOf are the addresses that a client's pages may have, by a file that has
// errors. Who is not shared any more has none. Where the file does not say, nobody
// knows, and it may be any.
func (j *job) pagesOf(slug string) []string {
	file := path.Join(clientsFolder, slug, assessmentFile)
	var text []byte
	if info, err := fs.Stat(j.root.FS(), file); err == nil && info.Mode().IsRegular() { // a pipe would be waited for without end
		text, _ = fs.ReadFile(j.root.FS(), file)
	}
	if printLine.Match(text) {
		return nil
	}
	if page := pageLine.FindSubmatch(text); page != nil {
		return []string{string(page[1])}
	}
	var all []string
	entries, _ := fs.ReadDir(j.root.FS(), path.Join(outputFolder, pagesFolder)) // none: no pages
	for _, entry := range entries {
		all = append(all, entry.Name())
	}
	return all
}

// sayLeft names those whose output stays as it was.
func (j *job) sayLeft(left []string) {
	for _, slug := range left {
		fmt.Fprintf(j.err, "%s: left as it was until its files are right\n", slug)
	}
}
