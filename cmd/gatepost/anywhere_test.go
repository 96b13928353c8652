package main

import (
	"bytes"
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

var (
	kills   = flag.Int("kills", 1, "publishing processes that TestKilledPublish kills")
	places  = flag.Int("places", 1, "runs that TestTheSameBytesAnywhere makes, each in other surroundings")
	anySeed = flag.Uint64("places.seed", 1, "where both draw from")
)

// small is the demo studio without some clients and without public programs, in four weeks.
func small(t *testing.T, folder string, without ...string) {
	t.Helper()
	copyDemo(t, folder, "")
	for _, slug := range without {
		if err := os.RemoveAll(filepath.Join(folder, "content/clients", slug)); err != nil {
			t.Fatal(err)
		}
	}
	shorten(t, folder, everyClient)
}

// A process that is killed while it publishes leaves no page half written, and the next run
// comes to the bytes of one that nobody disturbed. Each run changes the coach's name, which
// is on more than half of the pages.
func TestKilledPublish(t *testing.T) {
	t.Parallel()
	dice := rand.New(rand.NewPCG(*anySeed, 1))
	folder, names := t.TempDir(), [2]string{"Tilda Roake", "Tilda Roak"}
	small(t, folder, "anselm", "joss")
	var whole [2]string
	for i := range whole {
		whole[i] = t.TempDir()
		if err := os.CopyFS(whole[i], os.DirFS(folder)); err != nil {
			t.Fatal(err)
		}
		rewrite(t, whole[i]+"/content/studio.yaml", names[0], names[i])
		build(t, whole[i], "publish")
	}
	began := time.Now()
	build(t, folder, "publish")
	long := time.Since(began)
	for n := range *kills {
		from, to := n%2, 1-n%2
		rewrite(t, folder+"/content/studio.yaml", names[from], names[to])
		command := exec.Command("gatepost", "publish", "--folder", folder)
		if err := command.Start(); err != nil {
			t.Fatal(err)
		}
		time.Sleep(time.Duration(dice.Int64N(int64(long)))) // a killing at any time is worth as much
		command.Process.Kill()
		command.Wait()
		for _, page := range found(t, folder, ".html") {
			name, _ := filepath.Rel(folder, page)
			if old, new := sameBytes(page, filepath.Join(whole[from], name)), sameBytes(page, filepath.Join(whole[to], name)); !strings.Contains(name, ".gatepost") && old != nil && new != nil {
				t.Errorf("kill %d: %s is neither what it was nor what it shall be", n, name)
			}
		}
		build(t, folder, "publish")
		if err := sameFiles(filepath.Join(folder, outputFolder), filepath.Join(whole[to], outputFolder)); err != nil {
			t.Errorf("after kill %d: %v", n, err)
		}
		if t.Failed() {
			return
		}
	}
}

// Wherever and by whomever it is run, the same bytes come of the same files: in any time
// zone, language of the system, number of processors, folder and, where the tests may choose
// one, under any user.
func TestTheSameBytesAnywhere(t *testing.T) {
	t.Parallel()
	dice := rand.New(rand.NewPCG(*anySeed, 2))
	one := func(of ...string) string { return of[dice.IntN(len(of))] }
	want := t.TempDir()
	small(t, want, "anselm", "joss")
	build(t, want)
	for range *places {
		top := t.TempDir()
		folder := filepath.Join(top, one("a", "Ä ö", "日本", "a.b", "-x", "it's", strings.Repeat("long ", 20)+"x"))
		small(t, folder, "anselm", "joss")
		command := exec.Command("gatepost", "--on", "2027-01-10")
		command.Dir = folder
		around := []string{"TZ=" + one("UTC", "Pacific/Kiritimati", "Pacific/Pago_Pago", "Europe/Berlin", "Asia/Kathmandu", "nowhere"),
			"LC_ALL=" + one("C", "de_DE.UTF-8", "tr_TR.UTF-8", "ja_JP.eucJP", ""), "LANG=" + one("de", "tr_TR", ""),
			fmt.Sprint("GOMAXPROCS=", 1+dice.IntN(8)), "USER=" + one("root", "", "Ä"), "HOME=" + one("/", "/nowhere", "")}
		command.Env = append(os.Environ(), around...)
		who := asAnother(t, command, top, 1+dice.Uint32N(60_000))
		var said bytes.Buffer
		command.Stdout, command.Stderr = &said, &said
		if err := command.Run(); err != nil {
			t.Fatalf("%q, %v, user %s: %v\n%s", folder, around, who, err, &said)
		}
		if err := sameFiles(filepath.Join(want, outputFolder), filepath.Join(folder, outputFolder)); err != nil {
			t.Fatalf("%q, %v, user %s: %v", folder, around, who, err)
		}
		os.RemoveAll(top)
	}
}
