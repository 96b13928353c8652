package main

import (
	"slices"
	"strings"

	"gatepost/program"
	"gatepost/program/planner"
)

// tells warns of what can be read off a client's shared page: health and age, until the coach
// has said how much of the plan it shows, and the body, where plans of the block were kept
// before it was shared.
func tells(words program.Words, a *program.Assessment) (all program.Problems) {
	if a.Share != program.ShareSite {
		return nil
	}
	warn := func(key string, pairs ...string) {
		all = append(all, program.Problem{Place: a.Places.At("share"), Warning: true, Message: terminal(words, key, pairs...), Advice: terminal(words, key+"_do")})
	}
	if told := planner.Tells(a); a.Detail == "" && len(told) > 0 {
		for i, what := range told {
			told[i] = terminal(words, "tells_"+what)
		}
		warn("tells", "what", strings.Join(told, ", "))
	}
	if ofOwnBody(a.Plans) {
		warn("tells_body")
	}
	return all
}

// ofOwnBody reports whether a plan of the block that hangs was made for the exact body.
func ofOwnBody(kept []program.PlanVersion) bool {
	return slices.ContainsFunc(kept, func(v program.PlanVersion) bool {
		return !v.Shared && v.Weeks[0].Start == kept[len(kept)-1].Weeks[0].Start
	})
}
