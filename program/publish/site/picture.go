package site

import (
	"bytes"
	"fmt"
	"sync"

	"gatepost/program"
	"gatepost/program/figure"
)

// pictureView is an exercise's picture, a file that all pages with the exercise share:
// of a hold one, of what moves the start, and the end beside it in a frame of the same
// size. Width and height are there so that nothing moves when it comes.
type pictureView struct {
	Src, Alt      string
	End, EndAlt   string // empty: it is one picture
	Width, Height int    // of the view box: their ratio counts
}

// pictureFiles is an exercise's picture with its files.
type pictureFiles struct {
	pictureView
	files []File // none: it is not drawn
}

// picture is that of an exercise; nil: it is not drawn.
func (s *Site) picture(exercise, root string) *pictureView {
	draw := s.pictures[exercise]
	if draw == nil {
		return nil
	}
	d := draw()
	if d.files == nil {
		return nil
	}
	p := d.pictureView
	if p.Src = root + p.Src; p.End != "" {
		p.End = root + p.End
	}
	return &p
}

// thumbnail is the picture that tells an exercise from others in a list: the end of what
// moves.
func (s *Site) thumbnail(exercise string) *pictureView {
	p := s.picture(exercise, "")
	if p != nil && p.End != "" {
		p.Src = p.End
	}
	return p
}

// gather has every exercise drawn when a page first shows it, and once.
func (s *Site) gather() {
	s.pictures = map[string]func() pictureFiles{}
	for i := range s.Library.Exercises {
		e := &s.Library.Exercises[i]
		s.pictures[e.ID] = sync.OnceValue(func() pictureFiles { return s.drawExercise(e) })
	}
}

func (s *Site) drawExercise(e *program.Exercise) (d pictureFiles) {
	if s.Pictures == nil {
		return d
	}
	frames := figure.Frames(s.Pictures(e.ID), figure.Options{Headroom: shownBand})
	if len(frames) == 0 {
		return d
	}
	d.Alt = e.Name
	if len(frames) > 1 {
		d.Alt, d.EndAlt = s.words.fill("figure.start", "exercise", e.Name), s.words.fill("figure.end", "exercise", e.Name)
		d.End = d.add(e, "-end", s.pictureFile(frames[1], d.EndAlt))
	}
	d.Src = d.add(e, "", s.pictureFile(frames[0], d.Alt))
	d.Width, d.Height = boxOf(d.files[0].Bytes)
	return d
}

// add keeps a picture's file, and gives its name.
func (d *pictureFiles) add(e *program.Exercise, part string, svg []byte) string {
	name := "figure-" + e.ID + part + ".svg"
	d.files = append(d.files, File{Path: name, Bytes: svg})
	return name
}

// pictureFile is a drawing in a file of its own. It does not see the page's stylesheet, so
// it carries its inks with it, for light and for dark.
func (s *Site) pictureFile(d figure.Drawing, title string) []byte {
	svg := figure.SVG(d, title, "", figure.SVGOptions{Scale: pictureScale})
	return bytes.Replace(svg, []byte(">"), []byte("><style>"+string(s.look.inks)+"</style>"), 1)
}

// pictureScale is in units of the view box a metre (our judgement: 4 mm are not seen).
const pictureScale = 250

// writePictures adds the files of all pictures.
func (b *builder) writePictures() {
	for i := range b.Library.Exercises {
		b.files = append(b.files, b.pictures[b.Library.Exercises[i].ID]().files...)
	}
}

// boxOf is the size of a drawing's view box.
func boxOf(svg []byte) (width, height int) {
	_, box, _ := bytes.Cut(svg, []byte(`viewBox="`))
	_, _ = fmt.Sscanf(string(box), "0 0 %d %d", &width, &height) // the figure package writes it so
	return width, height
}
