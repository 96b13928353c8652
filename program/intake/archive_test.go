package intake

import (
	"os"
	"regexp"
	"strings"
	"testing"
)

// archive is several text files in one: a comment, then each file under a line
// "-- its name --".
type archive struct {
	comment string
	files   []archived
}

type archived struct{ name, text string }

var archiveMark = regexp.MustCompile(`(?m)^-- (.+) --\n`)

func parseArchive(text string) archive {
	marks := archiveMark.FindAllStringSubmatchIndex(text, -1)
	if len(marks) == 0 {
		return archive{comment: text}
	}
	a := archive{comment: text[:marks[0][0]]}
	for i, m := range marks {
		end := len(text)
		if i+1 < len(marks) {
			end = marks[i+1][0]
		}
		a.files = append(a.files, archived{text[m[2]:m[3]], text[m[1]:end]})
	}
	return a
}

func readArchive(t testing.TB, file string) archive {
	t.Helper()
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	return parseArchive(string(data))
}

func (a archive) String() string {
	var b strings.Builder
	b.WriteString(a.comment)
	for _, f := range a.files {
		b.WriteString("-- " + f.name + " --\n" + f.text)
	}
	return b.String()
}
