package intake

import (
	"bytes"
	_ "embed"
	"text/template"

	"gatepost/program"
)

//go:embed coach.yaml.tmpl
var wishesText string

var wishesForm = template.Must(template.New("wishes").Parse(wishesText))

// BlankWishes is a file of wishes to fill in, every key explained and nothing asked for
// yet: of one client, or of the whole studio.
func BlankWishes(lib *program.Library, studio bool) []byte {
	data := struct {
		samples
		Studio bool
		Rules  []string
	}{sample(lib), studio, ruleLines()}
	var out bytes.Buffer
	if err := wishesForm.Execute(&out, data); err != nil {
		panic("intake: blank wishes: " + err.Error())
	}
	return out.Bytes()
}
