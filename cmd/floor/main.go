//go:build floor

// Gatepost floor holds the time of a build against what it takes to compress and write the
// same bytes: every stream of every file, and, as the lower bound, streams that are the same
// once. It is not part of the program: it is built with the tag floor, from the root of this
// repository.
//
//	go build -o /tmp/gatepost ./cmd/gatepost
//	go run -tags floor ./cmd/floor -gatepost /tmp/gatepost
//
// makes studios of 20, 200 and 500 clients with six weeks of logs, half of them on the
// site, with the demo's public programs. Of each it prints a row: a build into an empty
// folder, the two to hold it against, the same build again, and again after one assessment was
// edited. All numbers are of the same minutes on the same machine, so that their ratios
// can be compared where seconds can't. The seconds are those of all processors.
//
//	go run -tags floor ./cmd/floor -only /tmp/studio -clients 200
//
// writes the studio and does nothing else.
package main

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
)

func main() {
	sizes := flag.String("clients", "20,200,500", "clients of each studio")
	binary := flag.String("gatepost", "", "the program that is measured")
	only := flag.String("only", "", "folder for a studio of the first size, in place of a table")
	bytes := flag.String("bytes", "", "output whose streams are unpacked, packed again as said by -write, and written")
	into := flag.String("write", "", "empty folder for what -bytes packs; none: it only unpacks")
	once := flag.Bool("once", false, "with -write: streams that are the same are packed once")
	flag.Parse()
	var err error
	switch {
	case *bytes != "":
		err = again(*bytes, *into, *once)
	case *only != "":
		var n int
		if n, err = strconv.Atoi(strings.Split(*sizes, ",")[0]); err == nil {
			err = write(*only, n)
		}
	default:
		err = table(*binary, strings.Split(*sizes, ","))
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func table(binary string, sizes []string) error {
	if binary == "" {
		return fmt.Errorf("-gatepost says which program is measured")
	}
	fmt.Println("clients  files     MB  cold s  each s  ratio  once s  ratio  peak MB  unchanged s  one edit s  ratio")
	for _, size := range sizes {
		n, err := strconv.Atoi(size)
		if err == nil {
			err = row(binary, n)
		}
		if err != nil {
			return err
		}
	}
	return nil
}

// row measures one studio.
func row(binary string, n int) error {
	folder, err := os.MkdirTemp("", "floor")
	if err != nil {
		return err
	}
	defer os.RemoveAll(folder)
	if err := write(folder, n); err != nil {
		return err
	}
	day := []string{"--folder", folder, "--on", "2027-02-20"}
	cold, err := timed(binary, day...)
	if err != nil {
		return err
	}
	files, size, err := sizeOf(filepath.Join(folder, "output"))
	if err != nil {
		return err
	}
	each, once, err := floorsOf(folder)
	if err != nil {
		return err
	}
	same, err := timed(binary, day...)
	if err == nil {
		err = edit(folder, n/2)
	}
	if err != nil {
		return err
	}
	one, err := timed(binary, day...)
	fmt.Printf("%7d %6d %6.0f %7.1f %7.1f %6.2f %7.1f %6.2f %8.0f %12.2f %11.2f %6.2f\n", n, files, float64(size)/1e6,
		cold.seconds, each, cold.seconds/each, once, cold.seconds/once, cold.peak/1e6, same.seconds, one.seconds, one.seconds/same.seconds)
	return err
}

// floorsOf are the seconds for packing and writing, each stream and what is the same once,
// without the unpacking that both need to begin.
func floorsOf(folder string) (each, once float64, err error) {
	self, err := os.Executable()
	if err != nil {
		return 0, 0, err
	}
	output := filepath.Join(folder, "output")
	costs := [3]cost{}
	for i, more := range [][]string{nil, {"-write", filepath.Join(folder, "each")}, {"-write", filepath.Join(folder, "once"), "-once"}} {
		if costs[i], err = timed(self, append([]string{"-bytes", output}, more...)...); err != nil {
			return 0, 0, err
		}
	}
	return costs[1].seconds - costs[0].seconds, costs[2].seconds - costs[0].seconds, nil
}

// edit changes the mass of one client's body.
func edit(folder string, client int) error {
	file := filepath.Join(folder, "content/clients", slug(client), "assessment.yaml")
	b, err := os.ReadFile(file)
	if err != nil {
		return err
	}
	return os.WriteFile(file, massOf.ReplaceAll(b, []byte("${1}66.6 kg")), 0o666)
}
