//go:build unix

package store

import (
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

// A folder that may not be written to: told at once, with nothing changed.
func TestReadOnlyFolder(t *testing.T) {
	if os.Geteuid() == 0 {
		asNobody(t, "^TestReadOnlyFolder$")
		return
	}
	root := folder(t, foreign)
	write(t, root, before)
	if err := root.Chmod("site", 0o555); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { root.Chmod("site", 0o755) })
	_, err := Write(root, files(after), nil)
	if err == nil || !strings.Contains(err.Error(), "cannot write to") || !strings.Contains(err.Error(), "site: permission denied") {
		t.Errorf("got: %v", err)
	}
	same(t, seen(t, root), with(before, foreign))
}

// asNobody runs a test of this binary again without root's rights, for root may
// write anywhere. 65534 is the user "nobody" of the Linux Standard Base (from
// memory); any number but 0 would do.
func asNobody(t *testing.T, test string) {
	dir, err := os.MkdirTemp("", "store")
	if err != nil {
		t.Fatal(err)
	}
	defer os.RemoveAll(dir)
	binary := filepath.Join(dir, "store.test")
	b, err := os.ReadFile(os.Args[0])
	if err == nil {
		err = os.WriteFile(binary, b, 0o755)
	}
	if err == nil { // whatever the mask is that tests are run with
		err = errors.Join(os.Chmod(dir, 0o777), os.Chmod(binary, 0o755))
	}
	if err != nil {
		t.Fatal(err)
	}
	command := exec.Command(binary, "-test.run="+test)
	command.Dir = dir
	command.Env = append(os.Environ(), "TMPDIR="+dir)
	command.SysProcAttr = &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: 65534, Gid: 65534}}
	if out, err := command.CombinedOutput(); err != nil {
		t.Errorf("as nobody: %v\n%s", err, out)
	}
}
