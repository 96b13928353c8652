//go:build !unix

package main

import (
	"os/exec"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

func asNobody(ts *testscript.TestScript, neg bool, args []string) { exits(ts, neg, args) }

func asAnother(*testing.T, *exec.Cmd, string, uint32) string { return "as ever" }
