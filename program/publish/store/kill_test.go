package store

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"strconv"
	"strings"
	"sync"
	"testing"
)

var errKilled = errors.New("killed")

// The output before, the output after, and what somebody else keeps there.
var (
	before  = map[string]string{"site/a.html": "a", "site/b.html": "b", "site/c/old.html": "o", "print/x.pdf": "x"}
	after   = map[string]string{"site/a.html": "a", "site/b.html": "b2", "site/new/n.html": "n", "print/x.pdf": "x2"}
	foreign = map[string]string{"site/CNAME": "theirs"}
)

func with(a, b map[string]string) map[string]string {
	all := map[string]string{}
	for _, m := range []map[string]string{a, b} {
		for path, text := range m {
			all[path] = text
		}
	}
	return all
}

// killer stops a run at its nth change of the disk, and at every one after it.
// A file being created then is left half written.
func killer(root *os.Root, n int) func(verb, path string) error {
	var mutex sync.Mutex
	step := 0
	return func(verb, path string) error {
		mutex.Lock()
		defer mutex.Unlock()
		step++
		if step < n {
			return nil
		}
		if step == n && verb == "write" && (path == newListPath || strings.HasPrefix(path, stagePath)) {
			root.WriteFile(path, []byte("ha"), 0o644)
		}
		return errKilled
	}
}

// steps counts the changes of the disk in an undisturbed run.
func steps(t *testing.T) int {
	root := folder(t, foreign)
	write(t, root, before)
	count := 0
	var mutex sync.Mutex
	d := disk{root: root, stop: func(string, string) error {
		mutex.Lock()
		defer mutex.Unlock()
		count++
		return nil
	}}
	if _, err := d.write(files(after), nil); err != nil {
		t.Fatal(err)
	}
	same(t, seen(t, root), with(after, foreign))
	return count
}

// unchangedOrDone checks an output without a list: the run stopped before its
// decision, or when all was done and only the clearing away was left.
func unchangedOrDone(t *testing.T, root *os.Root) {
	t.Helper()
	want := before
	if now := seen(t, root); now["site/b.html"] == after["site/b.html"] {
		want = after
	}
	same(t, seen(t, root), with(want, foreign))
}

func TestStoppedAtEveryStep(t *testing.T) {
	decided := 0
	for n := 1; n <= steps(t); n++ {
		root := folder(t, foreign)
		write(t, root, before)
		d := disk{root: root, stop: killer(root, n)}
		if _, err := d.write(files(after), nil); !errors.Is(err, errKilled) {
			t.Fatalf("step %d: %v", n, err)
		}
		if d.exists(listPath) {
			decided++
			recovered, err := Recover(root)
			if err != nil || !recovered {
				t.Fatalf("step %d: recovered %v, %v", n, recovered, err)
			}
			same(t, seen(t, root), with(after, foreign))
		} else {
			unchangedOrDone(t, root)
		}
		write(t, root, after)
		same(t, seen(t, root), with(after, foreign))
		if d.exists(stagePath) || d.exists(listPath) || d.exists(newListPath) {
			t.Errorf("step %d: something is left of the interrupted run", n)
		}
		if t.Failed() {
			t.Fatalf("stopped at step %d", n)
		}
	}
	if decided < 5 {
		t.Errorf("only %d runs were stopped after the decision", decided)
	}
}

// A run that finishes an interrupted one may be interrupted itself.
func TestRecoveryStoppedAtEveryStep(t *testing.T) {
	decision := 0
	for n := 1; ; n++ {
		root := folder(t, foreign)
		write(t, root, before)
		d := disk{root: root, stop: killer(root, n)}
		d.write(files(after), nil)
		if d.exists(listPath) {
			decision = n
			break
		}
	}
	for m := 1; ; m++ {
		root := folder(t, foreign)
		write(t, root, before)
		d := disk{root: root, stop: killer(root, decision)}
		d.write(files(after), nil)
		d.stop = killer(root, m)
		_, err := d.write(files(after), nil)
		same(t, write(t, root, after).Written, []string(nil))
		same(t, seen(t, root), with(after, foreign))
		if err == nil {
			return
		}
		if t.Failed() {
			t.Fatalf("stopped at step %d, recovery at step %d", decision, m)
		}
	}
}

// A process that is really killed lets go of the lock, and what it leaves is
// finished or undone in the same way.
func TestKilledProcess(t *testing.T) {
	if at := os.Getenv("STORE_TEST_KILL_AT"); at != "" {
		killSelf(t, os.Getenv("STORE_TEST_FOLDER"), at)
		return
	}
	count := steps(t)
	for _, n := range []int{1, count / 3, count / 2, 2 * count / 3, count} {
		root := folder(t, foreign)
		write(t, root, before)
		command := exec.Command(os.Args[0], "-test.run=^TestKilledProcess$")
		command.Env = append(os.Environ(), fmt.Sprint("STORE_TEST_KILL_AT=", n), "STORE_TEST_FOLDER="+root.Name())
		if out, err := command.CombinedOutput(); err == nil {
			t.Fatalf("step %d: the process lived:\n%s", n, out)
		}
		d := disk{root: root}
		if d.exists(listPath) {
			if _, err := Recover(root); err != nil {
				t.Fatal(err)
			}
			same(t, seen(t, root), with(after, foreign))
		} else {
			unchangedOrDone(t, root)
		}
		write(t, root, after)
		same(t, seen(t, root), with(after, foreign))
	}
}

func killSelf(t *testing.T, folder, at string) {
	root, err := os.OpenRoot(folder)
	if err != nil {
		t.Fatal(err)
	}
	n, _ := strconv.Atoi(at)
	stop := killer(root, n)
	d := disk{root: root, stop: func(verb, path string) error {
		if stop(verb, path) == nil {
			return nil
		}
		self, err := os.FindProcess(os.Getpid())
		if err == nil {
			err = self.Kill()
		}
		t.Log(err)
		select {}
	}}
	d.write(files(after), nil)
}

// Whatever becomes of the writer's own files, it writes or says why not, and what is
// somebody else's stays.
func FuzzOwnFiles(f *testing.F) {
	own := []string{manifestPath, printsPath, listPath, formPath, newListPath}
	for i, text := range []string{string(manifest{"site/CNAME": hash([]byte("x"))}.bytes()), printsForm + hash(nil) + "\n",
		"move 00001 " + hash([]byte("b2")) + " site/CNAME\nremove - " + hash([]byte("x")) + " site/CNAME\n", "1\n", "move"} {
		f.Add(uint8(i), text)
	}
	f.Fuzz(func(t *testing.T, which uint8, text string) {
		root := folder(t, foreign)
		put(t, root, own[int(which)%len(own)], text)
		_, err := Write(root, files(after), nil)
		now := seen(t, root)
		if now["site/CNAME"] != "theirs" || err == nil && now["site/b.html"] != after["site/b.html"] {
			t.Errorf("%v: %v", now, err)
		}
	})
}

func TestTwoCommandsAtOnce(t *testing.T) {
	root := folder(t, nil)
	other := disk{root: root}
	unlock, err := other.lock()
	if err != nil {
		t.Fatal(err)
	}
	_, err = Write(root, files(after), nil)
	if err == nil || !strings.Contains(err.Error(), "another command is writing to") || !strings.Contains(err.Error(), strconv.Itoa(os.Getpid())) {
		t.Errorf("got: %v", err)
	}
	same(t, seen(t, root), map[string]string{})
	unlock()
	write(t, root, after)
}

// A full disk: everything fails from some moment on, but nothing is lost.
func TestFullDisk(t *testing.T) {
	root := folder(t, foreign)
	write(t, root, before)
	full := errors.New("no space left")
	d := disk{root: root, stop: func(verb, path string) error {
		if verb == "write" && strings.HasPrefix(path, stagePath) {
			return full
		}
		return nil
	}}
	if _, err := d.write(files(after), nil); !errors.Is(err, full) {
		t.Fatal(err)
	}
	same(t, seen(t, root), with(before, foreign))
	if d.exists(stagePath) {
		t.Error("the staged files still fill the disk")
	}
	many := map[string]string{}
	for i := range 200 {
		many[fmt.Sprintf("site/%d.html", i)] = "x"
	}
	if _, err := d.write(files(many), nil); err == nil || strings.Contains(err.Error(), "\n") {
		t.Errorf("a full disk takes more than a line: %v", err)
	}
}

// Between a run that was stopped after its decision and the one that finishes it somebody
// may be at work: what they wrote is theirs, wherever it stands.
func TestEditedAfterAStoppedRun(t *testing.T) {
	for _, path := range []string{"site/b.html", "print/x.pdf", "site/new/n.html"} {
		root := folder(t, foreign)
		write(t, root, before)
		d := disk{root: root, stop: func(verb, to string) error {
			if to == "print/x.pdf" && verb == "write" { // the first that is moved
				return errKilled
			}
			return nil
		}}
		if _, err := d.write(files(after), nil); !errors.Is(err, errKilled) || !d.exists(listPath) {
			t.Fatalf("not stopped after the decision: %v", err)
		}
		put(t, root, path, "theirs")
		for range 2 {
			_, err := Write(root, files(after), nil)
			if !errors.Is(err, ErrUnfinished) || !strings.Contains(err.Error(), path+" was changed by somebody") {
				t.Errorf("%s: %v", path, err)
			}
			same(t, seen(t, root), with(with(before, foreign), map[string]string{path: "theirs"}))
		}
		if err := root.Remove(path); err != nil {
			t.Fatal(err)
		}
		write(t, root, after)
		same(t, seen(t, root), with(after, foreign))
	}
}

// A move that is refused half-way, as by a viewer that holds its file on some
// systems: said to be unfinished, and finished by the next run.
func TestRefusedAfterTheDecision(t *testing.T) {
	root := folder(t, foreign)
	write(t, root, before)
	refused := errors.New("held by another program")
	d := disk{root: root, stop: func(verb, path string) error {
		if path == "site/b.html" {
			return refused
		}
		return nil
	}}
	_, err := d.write(files(after), nil)
	if !errors.Is(err, refused) || !errors.Is(err, ErrUnfinished) {
		t.Errorf("got: %v", err)
	}
	if _, err := d.write(files(after), nil); !errors.Is(err, ErrUnfinished) {
		t.Errorf("still held, got: %v", err)
	}
	result := write(t, root, after)
	if !result.Recovered {
		t.Error("the next run does not say that it finished another's work")
	}
	same(t, seen(t, root), with(after, foreign))
}

func BenchmarkWriteUnchanged(b *testing.B) {
	root, err := os.OpenRoot(b.TempDir())
	if err != nil {
		b.Fatal(err)
	}
	var list []File
	for i := range 1000 {
		list = append(list, File{fmt.Sprintf("site/%d.html", i), make([]byte, 20_000)})
	}
	if _, err := Write(root, list, nil); err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		Write(root, list, nil)
	}
}
