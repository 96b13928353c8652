//go:build study

package main

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"gatepost/cmd/study/lives"
)

// targets is what each column is meant to reach.
const targets = `
C12        torque held twelve seconds: the share of its 80 % ranges that cover the truth,
           per cent, after each third of the weeks                             75 to 85
step       the same of the free hold of the step that was trained last         75 to 85
bias       mean of ln believed over true at the end, per cent: C12, step       within 2
date       likely date of the first step not shown that is six weeks to two years
           away: median of the error as a share of the time left, per cent     at most 20
           (in brackets that of who knows everything but the own rate of gain:
           nobody can reach less)
between    true dates of that step between early and late, per cent            75 to 85
failed     sets whose printed seconds were out of reach, per cent              1 to 6
effort     main hold as a share of the longest true one, median                .62 to .75
changes    reviews that change the coming week, per cent                       at most 50
help       build weeks with more help than the last on their step, per cent    at most 3

! is out of reach.
`

func header(weeks int) string {
	return fmt.Sprintf("%-17s%-18s%-18s%-14s%10s%9s%8s%9s%9s%7s\n", "",
		fmt.Sprintf("C12 at %d, %d, %d", weeks/3, 2*(weeks/3), 3*(weeks/3)), "step", "bias", "date", "between", "failed", "effort", "changes", "help")
}

// of are the courses that began in one way.
func of(courses []lives.Course, began string) []lives.Course {
	return slices.DeleteFunc(slices.Clone(courses), func(c lives.Course) bool { return c.Began != began })
}

// row is a world in one line.
func row(name string, courses []lives.Course) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%-17s", name)
	for _, of := range []func(*lives.Course) *[lives.Looks]lives.Believed{
		func(c *lives.Course) *[lives.Looks]lives.Believed { return &c.Held }, func(c *lives.Course) *[lives.Looks]lives.Believed { return &c.Step },
	} {
		line := ""
		for n := range lives.Looks {
			covered, all := 0, 0
			for i := range courses {
				if s := of(&courses[i])[n]; s.Known {
					if all++; s.Covered {
						covered++
					}
				}
			}
			line += within(100*part(covered, all), 75, 85, "%.0f") + " "
		}
		fmt.Fprintf(&b, "%-18s", line)
	}
	var held, step, dates, least, efforts []float64
	between := 0
	var sum lives.Course
	for i := range courses {
		c := &courses[i]
		held, step = appendKnown(held, c.Held[lives.Looks-1]), appendKnown(step, c.Step[lives.Looks-1])
		if c.Date.Known {
			dates, least = append(dates, c.Date.Off), append(least, c.Date.Least)
		}
		if c.Date.Covered {
			between++
		}
		efforts = append(efforts, c.Efforts...)
		sum.Sets, sum.Failed, sum.Reviews, sum.Changed = sum.Sets+c.Sets, sum.Failed+c.Failed, sum.Reviews+c.Reviews, sum.Changed+c.Changed
		sum.Rises, sum.Stays = sum.Rises+c.Rises, sum.Stays+c.Stays
	}
	fmt.Fprintf(&b, "%-14s", within(100*mean(held), -2, 2, "%+.1f")+" "+within(100*mean(step), -2, 2, "%+.1f"))
	fmt.Fprintf(&b, "%10s%9s%8s%9s%9s%7s\n", within(100*median(dates), 0, 20, "%.0f")+fmt.Sprintf(" (%.0f)", 100*median(least)),
		within(100*part(between, len(dates)), 75, 85, "%.0f"),
		within(100*part(sum.Failed, sum.Sets), 1, 6, "%.1f"), within(median(efforts), 0.62, 0.75, "%.2f"),
		within(100*part(sum.Changed, sum.Reviews), 0, 50, "%.0f"), within(100*part(sum.Rises, sum.Stays), 0, 3, "%.1f"))
	return b.String()
}

// within marks a number that misses its target, as it is shown.
func within(x, low, high float64, format string) string {
	if math.IsNaN(x) {
		return "-"
	}
	s := fmt.Sprintf(format, x)
	if x, err := strconv.ParseFloat(s, 64); err == nil && x >= low && x <= high {
		return s
	}
	return s + "!"
}

func appendKnown(list []float64, b lives.Believed) []float64 {
	if !b.Known {
		return list
	}
	return append(list, b.Off)
}

func part(n, of int) float64 { return float64(n) / float64(of) }

func mean(list []float64) float64 {
	sum := 0.0
	for _, x := range list {
		sum += x
	}
	return sum / float64(len(list))
}

func median(list []float64) float64 {
	if len(list) == 0 {
		return math.NaN()
	}
	list = slices.Sorted(slices.Values(list))
	return (list[(len(list)-1)/2] + list[len(list)/2]) / 2
}
