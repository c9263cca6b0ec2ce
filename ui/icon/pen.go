package icon

import (
	"fmt"
	"math"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

const (
	grid = 24.0
	half = 0.9 // of the pen's width
)

// point is a place on the grid, y down.
type point struct{ x, y float64 }

// mark is a piece of an icon as SVG path data. All marks run the same way round,
// so they unite where they meet; one that runs the other way cuts a hole.
type mark string

// draw makes an icon of its marks.
func draw(name string, marks ...mark) fyne.Resource {
	var b strings.Builder
	fmt.Fprintf(&b,
		`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %g %g" width="%[1]g" height="%g">`+
			`<path fill="#000000" d="`, grid, grid, grid)
	for _, m := range marks {
		b.WriteString(string(m))
	}
	b.WriteString(`"/></svg>`)
	return theme.NewThemedResource(fyne.NewStaticResource(name+".svg", []byte(b.String())))
}

// line is a stroke through points given as x, y, x, y, ...
func line(xy ...float64) mark { return stroke(points(xy)) }

// loop is a closed stroke.
func loop(xy ...float64) mark {
	ps := points(xy)
	return stroke(append(ps, ps[0]))
}

// area is a filled polygon.
func area(xy ...float64) mark { return polygon(points(xy), false) }

// arc is a stroke along a circle from one angle to another, in degrees clockwise
// from the right.
func arc(cx, cy, r, from, to float64) mark { return stroke(onCircle(cx, cy, r, from, to)) }

// bezier is a stroke along a cubic curve given by its four points.
func bezier(xy ...float64) mark {
	p := points(xy)
	const n = 12
	out := make([]point, n+1)
	for i := range out {
		t := float64(i) / n
		a, b, c, d := (1-t)*(1-t)*(1-t), 3*t*(1-t)*(1-t), 3*t*t*(1-t), t*t*t
		out[i] = point{a*p[0].x + b*p[1].x + c*p[2].x + d*p[3].x,
			a*p[0].y + b*p[1].y + c*p[2].y + d*p[3].y}
	}
	return stroke(out)
}

// round is a closed stroke along a rectangle with rounded corners.
func round(x, y, w, h, r float64) mark {
	var ps []point
	ps = append(ps, onCircle(x+w-r, y+r, r, -90, 0)...)
	ps = append(ps, onCircle(x+w-r, y+h-r, r, 0, 90)...)
	ps = append(ps, onCircle(x+r, y+h-r, r, 90, 180)...)
	ps = append(ps, onCircle(x+r, y+r, r, 180, 270)...)
	return stroke(append(ps, ps[0]))
}

// ring is a circle drawn with the pen; disc is a filled one.
func ring(cx, cy, r float64) mark {
	return polygon(onCircle(cx, cy, r+half, 0, 360), false) + polygon(onCircle(cx, cy, r-half, 0, 360),
		true)
}

func disc(cx, cy, r float64) mark { return polygon(onCircle(cx, cy, r, 0, 360), false) }

// cutLine and cutDisc take a stroke or disc away from what is filled there. A
// stroke that is cut must be of one piece.
func cutLine(x1, y1, x2, y2 float64) mark { return capsule(point{x1, y1}, point{x2, y2}, true) }

func cutDisc(cx, cy, r float64) mark { return polygon(onCircle(cx, cy, r, 0, 360), true) }

func points(xy []float64) []point {
	out := make([]point, len(xy)/2)
	for i := range out {
		out[i] = point{xy[2*i], xy[2*i+1]}
	}
	return out
}

// onCircle is points along a circle, close enough that no icon shows corners.
func onCircle(cx, cy, r, from, to float64) []point {
	n := int(math.Ceil(math.Abs(to-from)/15)) + 1
	out := make([]point, n+1)
	for i := range out {
		s, c := math.Sincos((from + (to-from)*float64(i)/float64(n)) * math.Pi / 180)
		out[i] = point{cx + r*c, cy + r*s}
	}
	return out
}

// stroke is the area under the pen along a chain: a capsule for each piece.
func stroke(ps []point) mark {
	var out mark
	for i := 1; i < len(ps); i++ {
		out += capsule(ps[i-1], ps[i], false)
	}
	return out
}

func capsule(a, b point, cut bool) mark {
	angle := math.Atan2(b.y-a.y, b.x-a.x) * 180 / math.Pi
	return polygon(append(onCircle(b.x, b.y, half, angle-90, angle+90),
		onCircle(a.x, a.y, half, angle+90, angle+270)...), cut)
}

// polygon runs clockwise as seen, or the other way to cut.
func polygon(ps []point, cut bool) mark {
	area := 0.0
	for i, p := range ps {
		q := ps[(i+1)%len(ps)]
		area += p.x*q.y - p.y*q.x
	}
	backward := (area < 0) != cut
	var b strings.Builder
	for i := range ps {
		p := ps[i]
		if backward {
			p = ps[len(ps)-1-i]
		}
		b.WriteByte("ML"[min(i, 1)])
		fmt.Fprintf(&b, "%.2f %.2f", p.x, p.y)
	}
	b.WriteByte('Z')
	return mark(b.String())
}
