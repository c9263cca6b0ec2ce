package paper

import (
	"math"

	"codeberg.org/go-fonts/dejavu/dejavusanscondensed"
	"codeberg.org/go-fonts/dejavu/dejavusanscondensedbold"
	"codeberg.org/go-pdf/fpdf"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"

	"example.org/castwright/model/scene"
)

// middle is how far below a line's middle its baseline lies, in ems; half the
// Go fonts' cap height, as the screen draws it.
const middle = 0.36

// fonts are the two families: the Go fonts, and DejaVu Sans Condensed for what
// they lack. Both licences allow embedding.
type fonts struct {
	plain, bold  *sfnt.Font
	wide, widest *sfnt.Font
}

func newFonts(f *fpdf.Fpdf) *fonts {
	add := func(family, style string, ttf []byte) *sfnt.Font {
		f.AddUTF8FontFromBytes(family, style, ttf)
		font, err := sfnt.Parse(ttf)
		if err != nil {
			panic("paper: embedded font " + family + style + ": " + err.Error())
		}
		return font
	}
	return &fonts{
		plain:  add("go", "", goregular.TTF),
		bold:   add("go", "B", gobold.TTF),
		wide:   add("wide", "", dejavusanscondensed.TTF),
		widest: add("wide", "B", dejavusanscondensedbold.TTF),
	}
}

// run is a stretch of text in one family.
type run struct{ family, text string }

// runs splits text by the family that has its characters; what neither has is
// shown as a box.
func (fs *fonts) runs(text string, bold bool) []run {
	first, second := fs.plain, fs.wide
	if bold {
		first, second = fs.bold, fs.widest
	}
	var out []run
	var buf sfnt.Buffer
	has := func(f *sfnt.Font, r rune) bool {
		i, err := f.GlyphIndex(&buf, r)
		return err == nil && i != 0
	}
	for _, r := range scene.Seen(text) {
		family := "go"
		if !has(first, r) {
			family = "wide"
			if !has(second, r) {
				r = '□'
			}
		}
		if n := len(out); n > 0 && out[n-1].family == family {
			out[n-1].text += string(r)
		} else {
			out = append(out, run{family, string(r)})
		}
	}
	return out
}

func (p *printer) text(s scene.Text) {
	if s.Text == "" || s.Colour.A == 0 || !s.At.Finite() || !(s.Size > 0) || s.Size > maxPage || math.IsNaN(s.Angle-s.Angle) {
		return
	}
	style := ""
	if s.Bold {
		style = "B"
	}
	p.f.SetTextColor(int(s.Colour.R), int(s.Colour.G), int(s.Colour.B))
	p.f.SetAlpha(float64(s.Colour.A)/255, "Normal")
	runs := p.fonts.runs(s.Text, s.Bold)
	widths, total := make([]float64, len(runs)), 0.0
	for i, r := range runs {
		p.f.SetFont(r.family, style, s.Size*72/25.4)
		widths[i] = p.f.GetStringWidth(r.text)
		total += widths[i]
	}
	x := s.At.X
	switch s.Anchor {
	case scene.AnchorMiddle:
		x -= total / 2
	case scene.AnchorEnd:
		x -= total
	}
	turned := s.Angle != 0
	if turned {
		p.f.TransformBegin()
		p.f.TransformRotate(-s.Angle*180/math.Pi, s.At.X, s.At.Y)
	}
	for i, r := range runs {
		p.f.SetFont(r.family, style, s.Size*72/25.4)
		p.f.Text(x, s.At.Y+middle*s.Size, r.text)
		x += widths[i]
	}
	if turned {
		p.f.TransformEnd()
	}
}
