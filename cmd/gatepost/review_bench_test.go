package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"runtime/debug"
	"strings"
	"testing"
	"time"

	"gatepost/program"
)

// trained is a log of sessions on Monday, Wednesday and Friday, twelve sets each,
// a line a set.
func trained(sessions int) string {
	var b strings.Builder
	b.WriteString("date,exercise,set,bands,hold_s,reps,rpe,clean,pain,note\n")
	day := program.NewDate(2027, time.January, 4)
	for i := range sessions {
		for n := range 4 {
			fmt.Fprintf(&b, "%s,half-open tuck,%d,narrow strap 20 cm,%d,,%d,yes,0,\n", day, n+1, 9+(i+n)%4, 7+n%2)
		}
		for n := range 4 {
			fmt.Fprintf(&b, "%s,tuck,%d,,%d,,,yes,,\n", day, n+1, 14+(i+n)%4)
		}
		for n := range 4 {
			fmt.Fprintf(&b, "%s,pseudo-planche-push-up,%d,,,%d,8,,,\n", day, n+1, 5+n%3)
		}
		day += program.Date([]int{2, 2, 3}[i%3])
	}
	return b.String()
}

// studioOf writes a studio of many clients like the demo's Maren.
func studioOf(t testing.TB, clients int, log string) string {
	t.Helper()
	folder := t.TempDir()
	assessment, err := os.ReadFile("../../content/clients/maren/assessment.yaml")
	if err != nil {
		t.Fatal(err)
	}
	text := strings.Replace(string(assessment), "share: site\npage: k7v2qm9xw4tdhz3p\n", "", 1)
	for i := range clients {
		dir := fmt.Sprintf("%s/content/clients/client-%03d/", folder, i)
		if err := os.MkdirAll(dir, 0o755); err != nil {
			t.Fatal(err)
		}
		os.WriteFile(dir+"assessment.yaml", []byte(text), 0o644)
		os.WriteFile(dir+"log.csv", []byte(log), 0o644)
	}
	studio, err := os.ReadFile("../../content/studio.yaml")
	if err != nil {
		t.Fatal(err)
	}
	os.WriteFile(folder+"/content/studio.yaml", studio, 0o644)
	return folder
}

func reviewed(t testing.TB, folder string, args ...string) string {
	t.Helper()
	var out, problems bytes.Buffer
	around := surroundings{out: &out, err: &problems, builtIn: builtIn, in: strings.NewReader(""), chance: strings.NewReader("")}
	around.now = func() time.Time { t.Error("the clock was asked"); return time.Time{} }
	if code := run(append([]string{"review", "--folder", folder}, args...), around); code != 0 {
		t.Fatalf("exit code %d:\n%.2000s", code, problems.String())
	}
	return out.String()
}

// BenchmarkReviewStudio reads 300 clients of 150 sessions of 12 sets, estimates,
// reviews and plans all of them anew. Asked for: 4 s on two processors.
func BenchmarkReviewStudio(b *testing.B) {
	defer debug.SetGCPercent(debug.SetGCPercent(400)) // as main does
	folder := studioOf(b, 300, trained(150))
	for b.Loop() {
		io.WriteString(io.Discard, reviewed(b, folder, "--on", "2027-12-20"))
	}
}

// BenchmarkReviewClient is one of them after one more session. Asked for: 30 ms.
func BenchmarkReviewClient(b *testing.B) {
	defer debug.SetGCPercent(debug.SetGCPercent(400)) // as main does
	folder := studioOf(b, 1, trained(150))
	for b.Loop() {
		reviewed(b, folder, "client-000", "--on", "2027-12-20")
	}
}
