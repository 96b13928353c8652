package site_test

import (
	"maps"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// The Nu Html Checker reads every page and the stylesheet: no error, no warning.
// It reads them from a server on the loopback address, because it knows no
// origin for files and takes every content security policy for broken there.
func TestMarkupChecker(t *testing.T) {
	jar, java := markupChecker(), "java"
	if _, err := exec.LookPath(java); err != nil || jar == "" {
		if os.Getenv("GATEPOST_REQUIRE_TOOLS") == "1" {
			t.Fatal("vnu.jar or java is missing; GATEPOST_VNU names the jar")
		}
		t.Skip("left out: the markup checker (vnu.jar, java); GATEPOST_VNU names the jar")
	}
	files := fixtureSite(t)
	server := httptest.NewServer(http.FileServer(http.Dir(written(t, files))))
	defer server.Close()
	call := []string{"-Dnu.validator.servlet.allow-forbidden-hosts=true", "-jar", jar, "--also-check-css"}
	for _, path := range slices.Sorted(maps.Keys(files)) {
		if !isPage(path) && !strings.HasSuffix(path, ".css") {
			continue
		}
		call = append(call, server.URL+strings.TrimSuffix(strings.TrimPrefix(path, "site"), "index.html"))
	}
	out, err := exec.Command(java, call...).CombinedOutput()
	if err != nil || len(out) > 0 {
		t.Errorf("vnu: %v\n%s", err, out)
	}
}

// markupChecker finds the jar where .ci/run puts it; empty: nowhere.
func markupChecker() string {
	const installed = ".ci/node_modules/vnu-jar/build/dist/vnu.jar"
	for _, jar := range []string{os.Getenv("GATEPOST_VNU"), filepath.Join("../../..", installed)} {
		if _, err := os.Stat(jar); jar != "" && err == nil {
			return jar
		}
	}
	return ""
}
