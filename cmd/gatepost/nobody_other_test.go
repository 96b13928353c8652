//go:build !unix

package main

import "github.com/rogpeppe/go-internal/testscript"

func asNobody(ts *testscript.TestScript, neg bool, args []string) { exits(ts, neg, args) }
