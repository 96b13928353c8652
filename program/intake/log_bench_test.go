package intake

import (
	"fmt"
	"strings"
	"testing"
	"testing/fstest"

	"gatepost/program"
)

// fullLog is a log of some sessions, three a week, with a line a set.
func fullLog(sessions, sets int) string {
	var b strings.Builder
	b.WriteString(LogHeader() + "\n")
	day := program.NewDate(2027, 1, 4)
	for i := range sessions {
		for n := range sets {
			fmt.Fprintf(&b, "%s,%s,%d,narrow + middle,%d,,%d,yes,0,\n", day, []string{"tuck", "tuck hold"}[n%2], n+1, 9+(i+n)%4, 7+n%3)
		}
		day += program.Date(2 + i%3/2)
	}
	return b.String()
}

// BenchmarkLog reads a client of 150 sessions of 12 sets, a line a set.
func BenchmarkLog(b *testing.B) {
	studio, _ := Read(sound(b), library(b), nil)
	text := []byte(fullLog(150, 12))
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		if _, problems := ReadLog(&studio, &studio.Clients[0], "log.csv", text); problems.Stop() {
			b.Fatal(reported(problems))
		}
	}
}

// BenchmarkStudio reads a studio of 300 such clients.
func BenchmarkStudio(b *testing.B) {
	folder := sound(b)
	text := &fstest.MapFile{Data: []byte(fullLog(150, 12))}
	for i := range 300 {
		dir := fmt.Sprintf("content/clients/client-%03d/", i)
		folder[dir+"assessment.yaml"], folder[dir+"log.csv"] = folder["content/clients/maren/assessment.yaml"], text
	}
	lib := library(b)
	b.ReportAllocs()
	for b.Loop() {
		if _, problems := Read(folder, lib, nil); problems.Stop() {
			b.Fatal(reported(problems))
		}
	}
}
