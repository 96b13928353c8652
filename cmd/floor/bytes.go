//go:build floor

package main

import (
	"bytes"
	"compress/zlib"
	"crypto/sha256"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"runtime"
	"runtime/debug"
	"strconv"
	"sync"
)

// again packs every stream of an output's PDFs, and writes and syncs every file, on all
// processors. With once it does what no program can do without: streams that are the same
// are packed once. Where into is empty, it only reads and unpacks.
func again(from, into string, once bool) error {
	debug.SetGCPercent(400)
	var paths []string
	err := filepath.WalkDir(from, func(path string, entry fs.DirEntry, err error) error {
		switch {
		case err == nil && entry.IsDir() && entry.Name() == ".gatepost":
			return fs.SkipDir
		case err == nil && !entry.IsDir():
			paths = append(paths, path)
		}
		return err
	})
	if err != nil {
		return err
	}
	work := make(chan string)
	errs := make(chan error, len(paths))
	var wait sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		wait.Go(func() {
			for path := range work {
				errs <- one(path, from, into, once)
			}
		})
	}
	for _, path := range paths {
		work <- path
	}
	close(work)
	wait.Wait()
	close(errs)
	for err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

// one reads, unpacks, and then packs and writes one file.
func one(path, from, into string, once bool) error {
	b, err := os.ReadFile(path)
	if err != nil {
		return err
	}
	pieces, err := unpack(b)
	if err != nil || into == "" {
		return err
	}
	var out bytes.Buffer
	out.Grow(len(b))
	for _, p := range pieces {
		out.Write(p.packed(once))
	}
	below, _ := filepath.Rel(from, path)
	name := filepath.Join(into, below)
	if err := os.MkdirAll(filepath.Dir(name), 0o777); err != nil {
		return err
	}
	f, err := os.Create(name)
	if err != nil {
		return err
	}
	if _, err := f.Write(out.Bytes()); err != nil {
		return err
	}
	if err := f.Sync(); err != nil {
		return err
	}
	return f.Close()
}

// piece is a part of a file: a stream, or what stands between streams.
type piece struct {
	plain []byte
	sum   [32]byte // of the stream as it was packed; zero: it is none
	size  int      // of the same
}

var streamForm = regexp.MustCompile(`/Length (\d+)[^>]*/Filter /FlateDecode[^>]*>>\nstream\n`)

// unpack takes the streams of a PDF out; of another file there is one piece.
func unpack(b []byte) (pieces []piece, err error) {
	if !bytes.HasPrefix(b, []byte("%PDF")) {
		return []piece{{plain: b}}, nil
	}
	for {
		at := streamForm.FindSubmatchIndex(b)
		if at == nil {
			return append(pieces, piece{plain: b}), nil
		}
		length, _ := strconv.Atoi(string(b[at[2]:at[3]]))
		if at[1]+length > len(b) {
			return nil, fmt.Errorf("a stream is longer than its file")
		}
		packed := b[at[1] : at[1]+length]
		r, err := zlib.NewReader(bytes.NewReader(packed))
		if err != nil {
			return nil, err
		}
		plain, err := io.ReadAll(r)
		if err != nil {
			return nil, err
		}
		pieces = append(pieces, piece{plain: b[:at[1]]}, piece{plain: plain, sum: sha256.Sum256(packed), size: length})
		b = b[at[1]+length:]
	}
}

var (
	known   sync.Map // streams that were packed before, by their sum
	writers = sync.Pool{New: func() any {
		w, _ := zlib.NewWriterLevel(nil, zlib.BestSpeed) // the level that documents are packed with
		return w
	}}
)

func (p *piece) packed(once bool) []byte {
	if p.size == 0 {
		return p.plain
	}
	if b, ok := known.Load(p.sum); ok && once {
		return b.([]byte)
	}
	var out bytes.Buffer
	w := writers.Get().(*zlib.Writer)
	defer writers.Put(w)
	w.Reset(&out)
	w.Write(p.plain) // a Buffer never fails
	w.Close()
	known.Store(p.sum, out.Bytes())
	return out.Bytes()
}
