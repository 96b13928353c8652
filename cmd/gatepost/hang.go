package main

import (
	"fmt"
	"slices"

	"gatepost/program"
	"gatepost/program/intake"
	"gatepost/program/planner"
)

// hang puts the new plan beside the old ones. What is said goes to standard error,
// since standard output has the review.
func (j *job) hang(studio *program.Studio, a *program.Assessment, p *program.Program, on program.Date, signed []string) error {
	if len(p.Weeks) == 0 {
		return fmt.Errorf("nothing was kept: there is no program yet for %s", a.Slug)
	}
	if n := len(a.Plans); n > 0 && on < a.Plans[n-1].On {
		return fmt.Errorf("nothing was kept: version %d was made on %s, later than this review", a.Plans[n-1].Version, a.Plans[n-1].On)
	}
	versions := toKeep(studio, a, p, on, signed)
	if len(versions) == 0 {
		fmt.Fprintf(j.err, "nothing to keep: the plan on the wall stands, version %d\n", a.Plans[len(a.Plans)-1].Version)
	}
	for i := range versions {
		if err := j.keepVersion(a.Slug, &versions[i]); err != nil {
			return err
		}
	}
	return nil
}

// toKeep are the versions that are not kept yet. The plan of the assessment comes
// before the first that differs from it: what hung on the wall must not change when
// the assessment does. A gate that is signed, or another time of day, makes a version of
// its own where the weeks stand; what was signed before stays signed.
func toKeep(studio *program.Studio, a *program.Assessment, p *program.Program, on program.Date, signed []string) []program.PlanVersion {
	var versions []program.PlanVersion
	if len(a.Plans) == 0 {
		first, _ := planner.First(&studio.Library, a)
		versions = append(versions, planner.Version(&first, 1, min(a.Measured, first.Start)))
	}
	all := append(slices.Clone(a.Plans), versions...)
	wall := all[len(all)-1]
	next := wall
	if p.Version > wall.Version {
		next = planner.Version(p, p.Version, on)
	} else if len(signed) > len(wall.Passed) || p.Client.Clock != wall.Clock {
		next.Version, next.On, next.Clock = wall.Version+1, on, p.Client.Clock
	}
	if next.Version > wall.Version {
		next.Passed = signed
		versions = append(versions, next)
	}
	return versions
}

// signedGates are the steps whose gates were signed, before or now, by their ids.
func signedGates(lib *program.Library, a *program.Assessment, passed []string) ([]string, error) {
	var signed []string
	if n := len(a.Plans); n > 0 {
		signed = slices.Clone(a.Plans[n-1].Passed)
	}
	road, _ := lib.RoadMap(a.Goal.Skill) // a client who reads has one
	for _, written := range passed {
		id, err := intake.StepNamed(road, written)
		if err != nil {
			return nil, wrongUsage("--passed: %v", err)
		}
		if !slices.Contains(signed, id) {
			signed = append(signed, id)
		}
	}
	return signed, nil
}
