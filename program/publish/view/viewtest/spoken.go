package viewtest

import (
	"io/fs"
	"testing/fstest"
)

// Spoken is a coach's folder whose studio asks for another language.
type Spoken struct {
	fs.FS
	Language string
}

// Open adds the language to studio.yaml; all else is as it is.
func (f Spoken) Open(name string) (fs.File, error) {
	if name != "content/studio.yaml" {
		return f.FS.Open(name)
	}
	text, err := fs.ReadFile(f.FS, name)
	if err != nil {
		return nil, err
	}
	return fstest.MapFS{name: {Data: append(text, "\nlanguage: "+f.Language+"\n"...)}}.Open(name)
}
