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
	root := os.DirFS("../../..")
	studio, problems := intake.Read(root, root, rand.NewChaCha8([32]byte{}))
	if problems.Stop() {
		t.Fatal(problems)
	}
	courses := make([]Course, 40)
	var wait sync.WaitGroup
	slots := make(chan bool, runtime.GOMAXPROCS(0))
	for i := range courses {
		wait.Go(func() {
			slots <- true
			defer func() { <-slots }()
			var err error
			if courses[i], err = Follow(people.Draw(people.Base(), &studio.Library, 11, uint64(i)), &studio.Library, 12); err != nil {
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
	t.Logf("covered %d of %d; failed %d of %d sets; help rises in %d of %d weeks; %d of %d reviews change the week", covered, looks, failed, sets, rises, stays, changed, reviews)
	if 100*covered < 60*looks || 100*failed > 12*sets || 100*rises > 12*stays || 100*changed > 70*reviews || sets < 2000 {
		t.Error("the planner has lost its people")
	}
}
