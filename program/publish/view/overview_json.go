package view

import (
	"cmp"
	_ "embed"
	"slices"
	"strings"

	"gatepost/program"
)

// OverviewSchema describes what OverviewJSON writes (JSON Schema, draft 2020-12).
//
//go:embed overview.schema.json
var OverviewSchema []byte

// OverviewJSON writes the studio for machines, as JSON writes a program: one object
// a client, in the order of their folders, so that two days can be compared.
func OverviewJSON(on program.Date, all []Standing) ([]byte, error) {
	f := overviewFile{On: on, Clients: each(all, func(v Standing) standingJSON { return v.data })}
	slices.SortStableFunc(f.Clients, func(a, b standingJSON) int { return cmp.Compare(a.Slug, b.Slug) })
	return indented(f)
}

type (
	overviewFile struct {
		On      program.Date   `json:"on"`
		Clients []standingJSON `json:"clients"`
	}
	// standingJSON is null where the client's files have errors; the same fields mean
	// the same as in a review.
	standingJSON struct {
		Slug     string        `json:"slug"`
		Name     *string       `json:"name"`
		Version  *int          `json:"version"`
		Week     *int          `json:"week"`
		Weeks    *int          `json:"weeks"`
		Ended    *bool         `json:"ended"`
		Last     *program.Date `json:"last"`
		Pace     *float64      `json:"pace"` // null also before anything was read
		Flags    []flagJSON    `json:"flags"`
		Changed  *int          `json:"changed_weeks"` // and not kept yet
		Withheld []noteJSON    `json:"withheld"`
		Error    *string       `json:"error"` // a line each
	}
)

func toStanding(p *program.Program, r *program.Review) standingJSON {
	changed := 0
	if p.Version > r.Version {
		changed = len(r.Changes)
	}
	v := standingJSON{
		Slug: r.Client.Slug, Name: &r.Client.Name, Version: &r.Version, Week: &r.Week, Weeks: &r.Weeks, Ended: &r.Ended,
		Last: given(r.Last), Flags: each(r.Flags, toFlag), Changed: &changed, Withheld: each(r.Withheld, toNote),
	}
	if r.Last != 0 {
		pace := places(r.Pace, 4)
		v.Pace = &pace
	}
	return v
}

func toUnread(client program.Client, errors program.Problems) standingJSON {
	lines := strings.Join(each(errors, program.Problem.Error), "\n")
	v := standingJSON{Slug: client.Slug, Flags: []flagJSON{}, Withheld: []noteJSON{}, Error: &lines}
	if client.Name != "" {
		v.Name = &client.Name
	}
	return v
}
