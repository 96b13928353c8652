package lives

import (
	"math/rand/v2"
	"os"
	"runtime"
	"sync"
	"testing"

	"gatepost/cmd/study/people"
	"gatepost/program/intake"
)

// Bounds that only a planner gone wrong oversteps: what is aimed at stands in the
// study's table (cmd/study), over more people than there is time for here.
func TestABlockOfTheBaseWorld(t *testing.T) {
	follow(t, people.Skills()[0], 40, 2000)
}

// The same for a few of those who hang, press and lift: they train, and are not lost.
func TestABlockOfOtherSkills(t *testing.T) {
	for _, skill := range people.Skills()[1:] {
		follow(t, skill, 3, 60)
	}
}

// follow lets people of a skill live a block, in which they do so many sets at the least.
func follow(t *testing.T, skill string, number, least int) {
	root := os.DirFS("../../..")
	studio, problems := intake.Read(root, root, rand.NewChaCha8([32]byte{}))
	if problems.Stop() {
		t.Fatal(problems)
	}
	courses := make([]Course, number)
	var wait sync.WaitGroup
	slots := make(chan bool, runtime.GOMAXPROCS(0))
	for i := range courses {
		wait.Go(func() {
			slots <- true
			defer func() { <-slots }()
			var err error
			if courses[i], err = Follow(people.Draw(people.Base(), &studio.Library, skill, 11, uint64(i)), &studio.Library, 12); err != nil {
				t.Error(err)
			}
		})
	}
	wait.Wait()
	var covered, looks, failed, sets, rises, stays, changed, reviews int
	for _, c := range courses {
		for _, b := range c.Held {
			if looks++; b.Covered {
				covered++
			}
		}
		failed, sets, rises, stays = failed+c.Failed, sets+c.Sets, rises+c.Rises, stays+c.Stays
		changed, reviews = changed+c.Changed, reviews+c.Reviews
	}
	t.Logf("%s: covered %d of %d; failed %d of %d sets; help rises in %d of %d weeks; %d of %d reviews change the week", skill, covered, looks, failed, sets, rises, stays, changed, reviews)
	if 100*covered < 60*looks || 100*failed > 12*sets || 100*rises > 12*stays || 100*changed > 70*reviews || sets < least {
		t.Errorf("the planner has lost its people of the %s", skill)
	}
}
