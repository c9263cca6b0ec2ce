package draw

import (
	"sort"
	"strconv"
	"strings"

	"example.org/castwright/model/geom"
	"example.org/castwright/model/scene"
	"example.org/castwright/model/units"
)

// SheetOptions says how a sheet is made.
type SheetOptions struct {
	// Width in page units, or 0 for the paper's own in millimetres; the height
	// follows from the paper.
	Width float64
	Date  string    // as printed, "" for none
	Paper PaperSize // which paper
}

// PaperSize is a size of paper.
type PaperSize uint8

// The sizes of paper: that of the land whose units the job is in, or a stated
// one.
const (
	PaperByUnits PaperSize = iota
	PaperA4                // ISO 216
	PaperLetter            // ANSI/ASME Y14.1 A
)

// paper is a sheet of paper lying on its long side, mm.
type paper struct {
	name string
	w, h float64
}

func paperFor(sys units.System, size PaperSize) paper {
	if size == PaperLetter || size == PaperByUnits && sys == units.Imperial {
		return paper{"Letter", 279.4, 215.9}
	}
	return paper{"A4", 297, 210}
}

// sizes of type on a sheet, mm of the em.
const (
	typeTitle = 7.4
	typeBody  = 3.3
	typeSmall = 2.75
)

// between parts what stands beside each other in a line. Its first character, which is
// not seen, keeps a number from being taken for a part of a right-to-left name before it.
const between = "\u200e   ·   "

// printDots is the pixels to the millimetre of paper that textures are made for:
// 200 to the inch, which is finer than an eye tells on a printed texture.
const printDots = 200 / 25.4

// layout places things on a sheet in millimetres of paper.
type layout struct {
	paper
	unit  float64 // page units in a millimetre
	dots  float64 // pixels to the page unit
	theme Theme
	sys   units.System
	items []scene.Item
}

func newLayout(sys units.System, o SheetOptions) *layout {
	return layoutOn(paperFor(sys, o.Paper), sys, o)
}

// newPortrait is a layout on paper that stands on its short side.
func newPortrait(sys units.System, o SheetOptions) *layout {
	p := paperFor(sys, o.Paper)
	p.w, p.h = p.h, p.w
	return layoutOn(p, sys, o)
}

func layoutOn(p paper, sys units.System, o SheetOptions) *layout {
	l := &layout{paper: p, unit: 1, dots: printDots, theme: Paper(), sys: sys}
	if o.Width > 0 {
		l.unit, l.dots = o.Width/p.w, 1
	}
	return l
}

// page is the finished sheet. A plan with the given view may lie on it.
func (l *layout) page(v View) scene.Page {
	p := v.page(l.theme.Ground)
	p.W, p.H, p.Print = l.w*l.unit, l.h*l.unit, l.unit
	p.Items = l.items
	return p
}

func (l *layout) at(x, y float64) geom.Vec { return geom.Vec{X: x * l.unit, Y: y * l.unit} }

// words sets a line of text and gives its width in mm.
func (l *layout) words(x, y float64, a scene.Anchor, size float64, bold bool, c scene.Colour, text string) float64 {
	t := scene.Text{At: l.at(x, y), Anchor: a, Size: size * l.unit, Bold: bold, Colour: c, Text: text}
	l.items = append(l.items, t)
	return t.Width() / l.unit
}

// rule draws a hairline across.
func (l *layout) rule(x0, x1, y float64) {
	c := l.theme.Ink
	c.A = 0x50
	l.items = append(l.items, scene.Stroke{Lines: [][]geom.Vec{{l.at(x0, y), l.at(x1, y)}}, Width: 0.18 * l.unit, Colour: c})
}

// box is a rectangle of the sheet as a loop on the page.
func (l *layout) box(x, y, w, h float64) geom.Loop {
	return geom.Loop{l.at(x, y), l.at(x+w, y), l.at(x+w, y+h), l.at(x, y+h)}
}

// wrapped breaks text into at most most lines of width mm, within a word where it
// is longer than a line; what is left over is cut off with an ellipsis.
func wrapped(text string, size float64, bold bool, width float64, most int) []string {
	var out []string
	line := ""
	var all []string
	for _, word := range strings.Fields(text) {
		all = append(all, broken(word, size, bold, width, most)...)
	}
	for i, word := range all {
		next := word
		if line != "" {
			next = line + " " + word
		}
		if _, w := scene.Set(next, bold); w*size <= width || line == "" {
			line = next
			continue
		}
		if len(out) == most-1 {
			line = strings.Join(append([]string{line}, all[i:]...), " ")
			break
		}
		out = append(out, line)
		line = word
	}
	if line != "" {
		out = append(out, line)
	}
	for i := range out {
		out[i] = scene.Fitted(out[i], size, bold, width)
	}
	return out
}

// broken is a word in pieces of at most width mm, no more than most and one.
func broken(word string, size float64, bold bool, width float64, most int) []string {
	if _, w := scene.Set(word, bold); w*size <= width {
		return []string{word}
	}
	var out []string
	rest := []rune(word)
	for len(rest) > 0 && len(out) <= most {
		n := 1 + sort.Search(min(len(rest), 400)-1, func(k int) bool {
			_, w := scene.Set(string(rest[:k+2]), bold)
			return k+2 > len(rest) || w*size > width
		})
		out = append(out, string(rest[:n]))
		rest = rest[n:]
	}
	return out
}

// paragraph sets wrapped text from the line at y down and gives the y below it.
func (l *layout) paragraph(x, y, width, size float64, bold bool, c scene.Colour, text string, most int) float64 {
	for _, line := range wrapped(text, size, bold, width, most) {
		l.words(x, y, scene.AnchorStart, size, bold, c, line)
		y += 1.36 * size
	}
	return y
}

// scales that a sheet is drawn to: one to so much.
func scales(sys units.System) []float64 {
	if sys == units.Imperial {
		return []float64{1, 2, 3, 4, 6, 8, 12, 16, 24, 32, 48, 64, 96, 128, 192, 384}
	}
	return []float64{1, 2, 2.5, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 75, 100, 200, 500}
}

// scaleWords states a scale.
func scaleWords(one float64, sys units.System, paper string) string {
	text := "1:" + strconv.FormatFloat(one, 'f', -1, 64)
	if sys == units.Imperial && one >= 3 {
		if perFoot := units.FromMM(304.8 / one); perFoot%(units.Inch/16) == 0 {
			text = units.Format(perFoot, sys) + " = 1 ft (" + text + ")"
		}
	}
	return "Scale " + text + " printed on " + paper
}

// fitted is the view of a top within a zone of the sheet, mm, with room around
// it for its dimensions, at the largest of the scales that fits; it gives the
// scale's number too.
func (l *layout) fitted(v View, bounds geom.Box, zone geom.Box, room [4]float64) (View, float64) {
	v.W, v.H = l.w*l.unit, l.h*l.unit
	pt := v.Point / l.unit // mm in a point
	w := zone.W() - pt*(room[left]+room[right])
	h := zone.H() - pt*(room[front]+room[back])
	list := scales(l.sys)
	one := list[len(list)-1]
	for i := len(list) - 1; i >= 0; i-- {
		if bounds.W()/list[i] <= w && bounds.H()/list[i] <= h {
			one = list[i]
		}
	}
	v.Scale = l.unit / one
	return l.centred(v, bounds, zone, room), one
}

// centred is the view with the top and its dimensions in the middle of a zone.
func (l *layout) centred(v View, bounds, zone geom.Box, room [4]float64) View {
	pt := v.Point / l.unit
	middle := zone.Centre().Add(geom.Vec{
		X: pt * (room[left] - room[right]) / 2,
		Y: pt * (room[back] - room[front]) / 2,
	})
	v.Centre = bounds.Centre().Add(geom.Vec{
		X: (l.w/2 - middle.X) * l.unit / v.Scale,
		Y: (middle.Y - l.h/2) * l.unit / v.Scale,
	})
	return v
}
