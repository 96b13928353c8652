package intake

import (
	"bytes"
	_ "embed"
	"strconv"
	"strings"
	"text/template"

	"gatepost/program"
)

//go:embed blank.yaml.tmpl
var blankText string

var blankForm = template.Must(template.New("blank").Parse(blankText))

// Blank is an assessment to fill in, every field explained, for a client who is
// assessed on a day. It reads back with one problem for each value that is
// needed and not yet there.
func Blank(name string, lib *program.Library, on program.Date) []byte {
	s := &shelf{Library: *lib}
	data := struct {
		Name, On, Kit, Exercises string
		RoadMaps                 []program.RoadMap
	}{Name: strconv.Quote(name), On: on.String(), RoadMaps: lib.RoadMaps}
	data.Kit = strings.Join(s.kit().list, ", ")
	var out bytes.Buffer
	if err := blankForm.Execute(&out, data); err != nil {
		panic("intake: blank form: " + err.Error())
	}
	return out.Bytes()
}
