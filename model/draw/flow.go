package draw

import (
	"example.org/castwright/model/scene"
	"example.org/castwright/model/units"
)

// flow lays blocks below each other on as many standing pages as they take.
type flow struct {
	sys    units.System
	opt    SheetOptions
	pages  []*layout
	views  []View
	l      *layout // the page in work
	y      float64 // where the next block starts, mm
	bottom float64 // where the page's room ends, mm
	head   func(*flow)
}

// turn starts a new page.
func (f *flow) turn() {
	f.l = newPortrait(f.sys, f.opt)
	v := f.l.view(f.sys)
	v.Scale = f.l.unit / 10
	f.pages, f.views = append(f.pages, f.l), append(f.views, v)
	f.y, f.bottom = sheetMargin, f.l.h-20
	if f.head != nil {
		f.head(f)
	}
}

// need turns the page when there is no room for a block of this height.
func (f *flow) need(h float64) {
	if f.y+h > f.bottom {
		f.turn()
	}
}

func (f *flow) width() float64 { return f.l.w - 2*sheetMargin }

// heading is the title of a block; keep is the height below it that must stay on
// its page.
func (f *flow) heading(text string, keep float64) {
	f.need(11 + keep)
	f.y += 3.6
	f.l.words(sheetMargin, f.y, scene.AnchorStart, typeBody, true, f.l.theme.Ink, text)
	f.y += 3.2
	f.l.rule(sheetMargin, f.l.w-sheetMargin, f.y)
	f.y += 4.2
}

// lineHigh is how far lines of a size lie apart, mm.
func lineHigh(size float64) float64 { return 1.36 * size }

// row is a label with words beside it.
func (f *flow) row(label, text string, size float64) {
	const column = 30.0
	for i, line := range wrapped(text, size, false, f.width()-column, 40) {
		f.need(lineHigh(size))
		if i == 0 {
			f.l.words(sheetMargin, f.y, scene.AnchorStart, size, false, f.l.theme.Faint, label)
		}
		f.l.words(sheetMargin+column, f.y, scene.AnchorStart, size, false, f.l.theme.Ink, line)
		f.y += lineHigh(size)
	}
	f.y += 0.5
}

// points is a list of short lines, each with a dot before it, within x and
// width; it gives the y below.
func (l *layout) points(x, y, width, size float64, list []string) float64 {
	for _, text := range list {
		for i, line := range wrapped(text, size, false, width-4, 12) {
			if i == 0 {
				l.words(x, y, scene.AnchorStart, size, false, l.theme.Faint, "•")
			}
			l.words(x+4, y, scene.AnchorStart, size, false, l.theme.Ink, line)
			y += lineHigh(size)
		}
		y += 0.5
	}
	return y
}

// pointsHigh is the height that [layout.points] takes.
func pointsHigh(width, size float64, list []string) float64 {
	h := 0.0
	for _, text := range list {
		h += lineHigh(size)*float64(len(wrapped(text, size, false, width-4, 12))) + 0.5
	}
	return h
}
