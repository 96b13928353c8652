package intake

import (
	"os"
	"testing"
	"testing/fstest"
)

// The demo studio of this repository reads without a problem.
func TestDemoStudio(t *testing.T) {
	root, err := os.OpenRoot("../..")
	if err != nil {
		t.Fatal(err)
	}
	defer root.Close()
	studio, problems := Read(root.FS(), fstest.MapFS{}, nil)
	Report(testWriter{t}, inEnglish(), problems)
	t.Log(len(studio.Clients), "clients", len(studio.Library.Exercises), "exercises")
	if problems.Stop() {
		t.Error("the demo studio has problems")
	}
}

type testWriter struct{ t *testing.T }

func (w testWriter) Write(p []byte) (int, error) { w.t.Logf("%s", p); return len(p), nil }
