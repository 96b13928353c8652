package store

import (
	"errors"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"runtime"
	"strings"
	"sync"
	"testing"
)

const logFile = "clients/a/log.csv"

var appends = flag.Int("appends", 96, "lines that TestAppendTogether adds; a process is killed for every 20th")

func add(text string) func([]byte) ([]byte, error) {
	return func([]byte) ([]byte, error) { return []byte(text), nil }
}

func read(t *testing.T, root *os.Root) string {
	t.Helper()
	b, err := root.ReadFile(logFile)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

func TestAppend(t *testing.T) {
	root := folder(t, map[string]string{"clients/a/x": ""})
	for _, text := range []string{"one\n", "", "two\n"} {
		if err := Append(root, logFile, add(text)); err != nil {
			t.Fatal(err)
		}
	}
	if got := read(t, root); got != "one\ntwo\n" {
		t.Errorf("%q", got)
	}
	err := Append(root, logFile, func(text []byte) ([]byte, error) {
		if string(text) != "one\ntwo\n" {
			t.Errorf("was shown %q", text)
		}
		return []byte("three\n"), errors.New("refused")
	})
	if err == nil || err.Error() != "refused" || read(t, root) != "one\ntwo\n" {
		t.Errorf("%v, %q", err, read(t, root))
	}
	if err := Append(root, "nowhere/log.csv", add("x")); err == nil || !strings.Contains(err.Error(), "nowhere/log.csv") {
		t.Errorf("no folder: %v", err)
	}
}

// A refused first line leaves no empty file.
func TestAppendNothingToNothing(t *testing.T) {
	root := folder(t, map[string]string{"clients/a/x": ""})
	Append(root, logFile, add(""))
	if _, err := root.Stat(logFile); err == nil {
		t.Error("an empty file is left")
	}
}

// An editor that puts another file in the place while the lock is waited for:
// the lines go into the file that is there.
func TestAppendAfterAnEditor(t *testing.T) {
	root := folder(t, map[string]string{logFile: "old\n"})
	d := disk{root: root}
	held, _, err := d.openLocked(logFile)
	if err != nil {
		t.Fatal(err)
	}
	done := make(chan error)
	go func() { done <- Append(root, logFile, add("mine\n")) }()
	root.WriteFile(logFile+".new", []byte("edited\n"), 0o644)
	if err := root.Rename(logFile+".new", logFile); err != nil {
		t.Fatal(err)
	}
	held.Close()
	if err := <-done; err != nil {
		t.Fatal(err)
	}
	if got := read(t, root); got != "edited\nmine\n" {
		t.Errorf("%q", got)
	}
}

// block is several lines that one command adds.
func block(who, n int) string {
	return strings.Repeat(fmt.Sprintf("%d,%d,%s\n", who, n, strings.Repeat("x", 100*(n%7))), 3)
}

// blocks checks that every block is whole and gives how many each writer wrote.
func blocks(t *testing.T, text string) (count map[string]int, rest string) {
	t.Helper()
	count = map[string]int{}
	lines := strings.SplitAfter(text, "\n")
	rest = lines[len(lines)-1]
	lines = lines[:len(lines)-1]
	for len(lines) >= 3 {
		if lines[0] != lines[1] || lines[0] != lines[2] {
			t.Fatalf("mixed: %q", lines[:3])
		}
		who, _, _ := strings.Cut(lines[0], ",")
		count[who]++
		lines = lines[3:]
	}
	return count, strings.Join(lines, "") + rest
}

func TestAppendTogether(t *testing.T) {
	root := folder(t, map[string]string{logFile: ""})
	const writers = 8
	times := *appends / writers
	var wait sync.WaitGroup
	for who := range writers {
		wait.Go(func() {
			for n := range times {
				if err := Append(root, logFile, add(block(who, n))); err != nil {
					t.Error(err)
				}
			}
		})
	}
	wait.Wait()
	count, rest := blocks(t, read(t, root))
	for who := range writers {
		if n := count[fmt.Sprint(who)]; n != times || rest != "" {
			t.Errorf("writer %d: %d blocks of %d, rest %q", who, n, times, rest)
		}
	}
}

// Processes that add without end are killed while they do, several times over:
// what stood there before stays, byte for byte; only the end may be missing.
func TestAppendKilled(t *testing.T) {
	if dir := os.Getenv("STORE_TEST_APPEND"); dir != "" {
		appendForEver(dir)
		return
	}
	root := folder(t, map[string]string{logFile: ""})
	before := ""
	for range 1 + *appends/20 {
		killAfterGrowth(t, root, len(before)+4000)
		now := read(t, root)
		if !strings.HasPrefix(now, before) {
			t.Fatal("what was there has changed")
		}
		if _, rest := blocks(t, now); rest != "" {
			t.Logf("cut in the middle: %d bytes", len(rest))
			root.WriteFile(logFile, []byte(strings.TrimSuffix(now, rest)), 0o644)
		}
		before = read(t, root)
	}
}

func killAfterGrowth(t *testing.T, root *os.Root, size int) {
	var commands []*exec.Cmd
	for range 2 {
		command := exec.Command(os.Args[0], "-test.run=^TestAppendKilled$")
		command.Env = append(os.Environ(), "STORE_TEST_APPEND="+root.Name())
		if err := command.Start(); err != nil {
			t.Fatal(err)
		}
		commands = append(commands, command)
	}
	for looks := 0; len(read(t, root)) < size; looks++ {
		if looks == 1_000_000 {
			t.Error("nothing is added")
			break
		}
		runtime.Gosched()
	}
	for _, command := range commands {
		command.Process.Kill()
		command.Wait()
	}
}

func appendForEver(dir string) {
	root, err := os.OpenRoot(dir)
	for n := 0; err == nil && n < 5000; n++ {
		err = Append(root, logFile, add(block(os.Getpid(), n)))
	}
	if err != nil {
		fmt.Println(err)
		os.Exit(1)
	}
}

// A disk that fails in the middle of the write, or before the sync.
func TestAppendOnABadDisk(t *testing.T) {
	for _, verb := range []string{"write", "sync"} {
		root := folder(t, map[string]string{logFile: "one\n"})
		d := disk{root: root, stop: func(v, _ string) error {
			if v == verb {
				return errKilled
			}
			return nil
		}}
		if err := d.append(logFile, add("two\n")); !errors.Is(err, errKilled) {
			t.Errorf("%s: %v", verb, err)
		}
		if got := read(t, root); !strings.HasPrefix(got, "one\n") {
			t.Errorf("%s: %q", verb, got)
		}
	}
}
