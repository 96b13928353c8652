package site

import (
	"bytes"
	"cmp"
	"encoding/json"
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"strconv"
	"sync"

	"gatepost/program"
	"gatepost/program/figure"
)

// What a page is shared with: a picture, and icons for who keeps the site among
// programs. A coach's own icon takes the place of ours, in its own form.
const (
	coverFile    = "cover.png"
	manifestFile = "manifest.webmanifest"
)

// iconSizes are those of the icons, pixels: a phone's home screen, and the largest that
// a browser asks for (common practice). base.html names the first.
var iconSizes = []int{180, 512}

func iconFile(size int) string { return "icon-" + strconv.Itoa(size) + ".png" }

// Sizes of the picture that pages are shared with, pixels (common practice).
const (
	coverWidth  = 1200
	coverHeight = 630
	coverMargin = 60.0
)

var (
	paperInk  = color.RGBA{0xf5, 0xf6, 0xf3, 0xff}
	darkInk   = color.RGBA{0x17, 0x20, 0x1c, 0xff}
	farInk    = color.RGBA{0x17, 0x20, 0x1c, 0x61}
	accentInk = color.RGBA{0xa8, 0x42, 0x0f, 0xff}
	inksOf    = [figure.Paper + 1]color.RGBA{figure.Near: darkInk, figure.Far: farInk, figure.Line: darkInk, figure.Accent: accentInk, figure.Paper: paperInk}
)

// covers writes the picture, the icons and the manifest.
func (b *builder) covers() {
	if d := b.coverFigures(); len(d) > 0 {
		b.add(coverFile, cover(d))
	}
	if b.look.builtInIcon {
		b.files = append(b.files, icons()...)
	}
	b.add(manifestFile, b.manifest(b.mark(), ""))
}

// coverFigures are the first step, the middle and the last of the front page's road map.
func (b *builder) coverFigures() []figure.Drawing {
	if len(b.Library.RoadMaps) == 0 {
		return nil
	}
	var all []figure.Drawing
	m := b.shownFirst()
	for _, i := range []int{0, len(m.Steps) / 2, len(m.Steps) - 1} {
		if pose, ok := b.poses[m.ID+"/"+m.Steps[i].ID]; ok {
			all = append(all, figure.Show(program.Picture{Stance: pose.Stance}, figure.Options{}))
		}
	}
	return all
}

// cover sets drawings side by side on one floor, to one scale.
func cover(drawings []figure.Drawing) []byte {
	r := figure.Raster{Image: filled(coverWidth, coverHeight, paperInk), Inks: inksOf}
	width, low, high := 0.0, 0.0, 0.0
	for _, d := range drawings {
		width, low, high = width+d.Width(), min(low, d.Min.Y), max(high, d.Max.Y)
	}
	r.Scale = min((coverWidth-2*coverMargin)/width, (coverHeight-2*coverMargin)/(high-low))
	r.Base = (coverHeight + (high+low)*r.Scale) / 2
	left := (coverWidth - width*r.Scale) / 2
	for _, d := range drawings {
		r.Left = left - d.Min.X*r.Scale
		r.Draw(d)
		left += d.Width() * r.Scale
	}
	return encoded(r.Image)
}

// icons are the same for every site, and drawn once.
var icons = sync.OnceValue(func() (all []File) {
	for _, size := range iconSizes {
		all = append(all, File{Path: iconFile(size), Bytes: icon(size)})
	}
	return all
})

// icon is that of icon.svg in pixels: a post, and bars that hang from it.
func icon(size int) []byte {
	const box, wide = 32.0, 3.4 // units of icon.svg
	r := figure.Raster{Image: filled(size, size, accentInk), Scale: float64(size) / box}
	r.Inks[figure.Paper] = color.RGBA{0xff, 0xff, 0xff, 0xff}
	line := func(x, y, toX, toY float64) figure.Path {
		from, to := figure.Point{X: x, Y: -y}, figure.Point{X: toX, Y: -toY}
		return figure.Path{From: from, Curves: []figure.Curve{{A: from, B: to, To: to}}}
	}
	r.Draw(figure.Drawing{Shapes: []figure.Shape{{Ink: figure.Paper, Stroke: true, Width: wide,
		Paths: []figure.Path{line(9, 5, 9, 27), line(9, 9, 25, 9), line(9, 16, 20, 16), line(9, 23, 15, 23)}}}})
	return encoded(r.Image)
}

func filled(width, height int, with color.RGBA) *image.RGBA {
	m := image.NewRGBA(image.Rect(0, 0, width, height))
	draw.Draw(m, m.Bounds(), image.NewUniform(with), image.Point{}, draw.Src)
	return m
}

func encoded(m *image.RGBA) []byte {
	var out bytes.Buffer
	_ = png.Encode(&out, m) // a buffer takes everything
	return out.Bytes()
}

// manifest tells a browser how pages are kept on a home screen (W3C, Web Application
// Manifest): they begin with the one beside it, and end with its folder. Root is the way
// to the site's folder.
func (b *builder) manifest(name, root string) []byte {
	type icon struct {
		Src   string `json:"src"`
		Sizes string `json:"sizes"`
		Type  string `json:"type"`
	}
	icons := []icon{{root + "icon.svg", "any", "image/svg+xml"}}
	if b.look.builtInIcon {
		for _, size := range iconSizes {
			icons = append(icons, icon{root + iconFile(size), fmt.Sprintf("%dx%d", size, size), "image/png"})
		}
	}
	text, _ := json.MarshalIndent(map[string]any{ // strings only: nothing can fail
		"name": name, "short_name": name, "lang": cmp.Or(b.Coach.Lang, "en"), "start_url": homePage, "scope": ".", "display": "minimal-ui",
		"background_color": "#f5f6f3", "theme_color": "#f5f6f3", "icons": icons,
	}, "", " ")
	return append(text, '\n')
}
