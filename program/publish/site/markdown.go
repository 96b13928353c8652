package site

import (
	"bytes"
	"fmt"
	"html/template"
	"strings"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/extension"
	east "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/renderer"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"

	"gatepost/program"
)

// markdown is shared by all pages; goldmark is made for that.
// Raw HTML stays off, and so does the attribute syntax.
var markdown = goldmark.New(
	goldmark.WithExtensions(extension.NewTable(extension.WithTableCellAlignMethod(extension.TableCellAlignNone))),
	goldmark.WithParserOptions(parser.WithAutoHeadingID()),
	goldmark.WithRendererOptions(renderer.WithNodeRenderers(util.Prioritized(scrollingTable{}, 100), util.Prioritized(drawings{}, 100))),
)

// passage is a piece of Markdown and where it was written.
type passage struct {
	text string
	file string // below the coach's folder: "content/pages/home.md"
	line int    // of the first line; 0: unknown, and problems name the file only
	top  int    // highest heading level that it may use; 0: 2
	ids  headingIDs
	draw func(name, title, id string) (template.HTML, bool) // an illustration; nil: there are none

	root  string  // the way from the page to the site's folder
	parts *[]link // takes the second-level headings; nil: nobody lists them
}

// html renders a passage. Links go through resolve, which gives the address
// within the site and whether there is one.
func (m passage) html(resolve func(from, link string) (string, bool)) (template.HTML, program.Problems) {
	source := []byte(m.text)
	if p := m.tooLarge(); p != nil {
		return "", program.Problems{*p}
	}
	context := parser.NewContext(parser.WithIDs(m.ids))
	doc := markdown.Parser().Parse(text.NewReader(source), parser.WithContext(context))
	if p := m.tooMany(doc); p != nil {
		return "", program.Problems{*p}
	}
	var problems program.Problems
	_ = ast.Walk(doc, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		if entering {
			problems = append(problems, m.adapt(n, source, resolve)...)
		}
		return ast.WalkContinue, nil
	})
	var out bytes.Buffer
	if err := markdown.Renderer().Render(&out, source, doc); err != nil {
		return "", append(problems, m.problem(0, err.Error(), "write it more simply"))
	}
	return template.HTML(out.String()), problems // goldmark escapes what people wrote, and raw HTML is off
}

// adapt makes one node fit the site: heading levels, links, table classes.
func (m passage) adapt(n ast.Node, source []byte, resolve func(from, link string) (string, bool)) program.Problems {
	switch n := n.(type) {
	case *ast.Heading:
		n.Level = max(n.Level, m.top, 2) // the page's title is its only first-level heading
		if id, ok := n.AttributeString("id"); ok && m.parts != nil && n.Level == 2 {
			*m.parts = append(*m.parts, link{Text: textIn(n, source), Href: "#" + string(id.([]byte))})
		}
	case *ast.Link:
		return m.link(n, source, resolve)
	case *ast.AutoLink:
		to := string(n.URL(source))
		if _, ok := resolve(m.file, to); !ok && n.AutoLinkType == ast.AutoLinkURL {
			return program.Problems{m.nowhere(n, to)}
		}
	case *ast.Image:
		return m.picture(n, source)
	case *ast.HTMLBlock, *ast.RawHTML:
		return program.Problems{m.problem(offset(n), "HTML in a text is left out", "write it as Markdown")}
	case *east.TableCell:
		describeCell(n)
	}
	return nil
}

func (m passage) link(n *ast.Link, source []byte, resolve func(from, link string) (string, bool)) program.Problems {
	to := string(n.Destination)
	address, ok := resolve(m.file, to)
	address = below(m.root, address)
	if !ok {
		return program.Problems{m.nowhere(n, to)}
	}
	n.Destination = []byte(address)
	return nil
}

func (m passage) nowhere(n ast.Node, to string) program.Problem {
	return m.problem(offset(n), fmt.Sprintf("the link to %q leads nowhere", to),
		`link to a file of the content folder, such as "../exercises/planche-lean.md", or to a full https:// address`)
}

// describeCell says by class what the column's alignment is, and by scope what
// a head cell stands for.
func describeCell(n *east.TableCell) {
	switch n.Alignment {
	case east.AlignRight:
		n.SetAttributeString("class", []byte("right"))
	case east.AlignCenter:
		n.SetAttributeString("class", []byte("center"))
	}
	if n.Parent().Kind() == east.KindTableHeader {
		n.SetAttributeString("scope", []byte("col"))
	}
}

// offset finds where a node begins in the source; inline nodes know it only
// from the text in them or from the block around them.
func offset(n ast.Node) int {
	for c := n.FirstChild(); c != nil; c = c.FirstChild() {
		if t, ok := c.(*ast.Text); ok {
			return t.Segment.Start
		}
	}
	for ; n != nil; n = n.Parent() {
		if raw, ok := n.(*ast.RawHTML); ok && raw.Segments.Len() > 0 {
			return raw.Segments.At(0).Start
		}
		if n.Type() == ast.TypeBlock && n.Lines().Len() > 0 {
			return n.Lines().At(0).Start
		}
	}
	return 0
}

func (m passage) problem(offset int, message, advice string) program.Problem {
	place := program.Place{File: m.file}
	if m.line > 0 {
		place.Line = m.line + strings.Count(m.text[:min(offset, len(m.text))], "\n")
	}
	return program.Problem{Place: place, Message: message, Advice: advice}
}

// textIn is the text of a node and of what stands in it, as it was written.
func textIn(n ast.Node, source []byte) string {
	var out strings.Builder
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		switch c := c.(type) {
		case *ast.Text:
			out.Write(c.Value(source))
			if c.SoftLineBreak() {
				out.WriteByte('\n')
			}
		case *ast.String:
			out.Write(c.Value)
		default:
			out.WriteString(textIn(c, source))
		}
	}
	return out.String()
}

// picture finds the illustration that an image names; the site has no picture
// files.
func (m passage) picture(n *ast.Image, source []byte) program.Problems {
	name, ok := strings.CutPrefix(string(n.Destination), "figure:")
	if !ok {
		return program.Problems{m.problem(offset(n), "a picture can't be shown: the site has no picture files",
			"take the picture out, or name a figure: ![what it shows](figure:planche/tuck)")}
	}
	title := textIn(n, source)
	if strings.TrimSpace(title) == "" {
		return program.Problems{m.problem(offset(n), "a figure without words tells nothing to those who hear the page",
			"say what it shows: ![what it shows](figure:"+name+")")}
	}
	if m.draw != nil {
		if svg, found := m.draw(name, title, string(m.ids.Generate([]byte("fig "+name), n.Kind()))); found {
			n.SetAttributeString(drawn, []byte(svg))
			return nil
		}
	}
	return program.Problems{m.problem(offset(n), fmt.Sprintf("there is no figure %q", name),
		"figures are named after the road map and its steps: figure:planche/tuck")}
}

// drawn is the attribute of an image that holds its drawing.
const drawn = "drawn"

// drawings writes images as the drawings they were found to be.
type drawings struct{}

func (drawings) RegisterFuncs(r renderer.NodeRendererFuncRegisterer) {
	r.Register(ast.KindImage, func(w util.BufWriter, _ []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
		if svg, ok := n.AttributeString(drawn); ok && entering {
			_, _ = w.Write(svg.([]byte))
		}
		return ast.WalkSkipChildren, nil
	})
}

// scrollingTable lets a wide table scroll by itself, by keyboard too, instead
// of moving the whole page.
type scrollingTable struct{}

func (scrollingTable) RegisterFuncs(r renderer.NodeRendererFuncRegisterer) {
	r.Register(east.KindTable, func(w util.BufWriter, _ []byte, _ ast.Node, entering bool) (ast.WalkStatus, error) {
		if entering {
			_, _ = w.WriteString("<div class=\"scroll\" tabindex=\"0\">\n<table>\n")
		} else {
			_, _ = w.WriteString("</table>\n</div>\n")
		}
		return ast.WalkContinue, nil
	})
}
