//go:build unix

package main

import (
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"syscall"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

// What tests write must be open to the user nobody, whatever the mask they are run
// with.
func init() { syscall.Umask(0o022) }

// asNobody runs a command without root's rights, for root may write anywhere.
// 65534 is the user "nobody" of most systems (from memory); any number but 0
// would do.
func asNobody(ts *testscript.TestScript, neg bool, args []string) {
	if os.Geteuid() != 0 {
		exits(ts, neg, args)
		return
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	binary := inPath(ts, args[1])
	for _, path := range []string{binary, ts.MkAbs(".")} {
		letIn(ts, path)
	}
	command := exec.Command(binary, args[2:]...)
	command.Dir = ts.MkAbs(".")
	command.Stdout, command.Stderr = ts.Stdout(), ts.Stderr()
	command.SysProcAttr = &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: 65534, Gid: 65534}}
	var exit *exec.ExitError
	if err := command.Run(); err != nil && !errors.As(err, &exit) {
		ts.Check(err)
	}
	if got := command.ProcessState.ExitCode(); got != want {
		ts.Fatalf("%s exits with %d, want %d", strings.Join(args[1:], " "), got, want)
	}
}

// asAnother has a command run by another user, who owns the folder that it works in, where
// only root may say so; and gives who that is.
func asAnother(t *testing.T, command *exec.Cmd, folder string, user uint32) string {
	t.Helper()
	if os.Geteuid() != 0 {
		return "as ever"
	}
	binary, err := exec.LookPath("gatepost")
	for _, path := range []string{binary, folder} {
		for ; err == nil && filepath.Clean(path) != filepath.Clean(os.TempDir()) && filepath.Dir(path) != path; path = filepath.Dir(path) {
			err = os.Chmod(path, 0o755)
		}
	}
	if err == nil {
		err = filepath.WalkDir(folder, func(path string, _ os.DirEntry, err error) error {
			return errors.Join(err, os.Chown(path, int(user), int(user)))
		})
	}
	if err != nil {
		t.Fatal(err)
	}
	command.SysProcAttr = &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: user, Gid: user}}
	return strconv.Itoa(int(user))
}

// inPath finds a command as the script would.
func inPath(ts *testscript.TestScript, name string) string {
	for _, dir := range filepath.SplitList(ts.Getenv("PATH")) {
		if path := filepath.Join(dir, name); isFile(path) {
			return path
		}
	}
	ts.Fatalf("%s is not in the path", name)
	return ""
}

func isFile(path string) bool {
	info, err := os.Stat(path)
	return err == nil && info.Mode().IsRegular()
}

// letIn lets everybody pass through the test's own folders, and run what is in them.
func letIn(ts *testscript.TestScript, path string) {
	for ; filepath.Clean(path) != filepath.Clean(os.TempDir()) && filepath.Dir(path) != path; path = filepath.Dir(path) {
		info, err := os.Stat(path)
		ts.Check(err)
		ts.Check(os.Chmod(path, info.Mode().Perm()|0o055))
	}
}
