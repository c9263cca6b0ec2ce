package draw

import (
	"cmp"
	"math"
	"slices"

	"example.org/castwright/model/geom"
	"example.org/castwright/model/look"
	"example.org/castwright/model/scene"
	"example.org/castwright/model/units"
)

// wallWidth is the breadth of the hatched strip, in points.
const wallWidth = 11

// layGround lays what is around the top: grid, its shadow, walls.
func (b *base) layGround() {
	if b.Show.Grid {
		b.layGrid()
	}
	if len(b.s.Outline) < 3 {
		return
	}
	b.layShadow()
	if b.Show.Walls {
		b.layWalls()
	}
}

// GridStep is the distance of grid lines, in mm, that suits a scale: the least
// of the system's steps whose lines are at least apart page units apart.
func GridStep(sys units.System, scale, apart float64) float64 {
	steps := []float64{1, 5, 10, 50, 100, 500, 1000}
	if sys == units.Imperial {
		steps = []float64{25.4 / 16, 25.4 / 4, 25.4, 3 * 25.4, 6 * 25.4, 12 * 25.4, 36 * 25.4}
	}
	for _, s := range steps {
		if s*scale >= apart {
			return s
		}
	}
	return math.Inf(1)
}

func (b *base) layGrid() {
	step := GridStep(b.Units, b.Scale, b.pt(14))
	box := b.box()
	if math.IsInf(step, 0) || box.W()/step > 2000 || box.H()/step > 2000 {
		return
	}
	var lines [][]geom.Vec
	for x := math.Ceil(box.Min.X/step) * step; x <= box.Max.X; x += step {
		lines = append(lines, b.path([]geom.Vec{{X: x, Y: box.Min.Y}, {X: x, Y: box.Max.Y}}))
	}
	for y := math.Ceil(box.Min.Y/step) * step; y <= box.Max.Y; y += step {
		lines = append(lines, b.path([]geom.Vec{{X: box.Min.X, Y: y}, {X: box.Max.X, Y: y}}))
	}
	b.add(scene.Stroke{Lines: lines, Width: b.pt(0.75), Colour: b.Theme.Grid})
}

// layShadow lays the soft shadow of the top on the ground.
func (b *base) layShadow() {
	if !b.Show.Textures {
		return
	}
	spread := math.Max(14, b.pt(4)/b.Scale)
	throw := 0.8 * spread
	box := b.s.Outline.Bounds().Grow(throw + 2.5*spread)
	around := geom.Loop{box.Min, {X: box.Max.X, Y: box.Min.Y}, box.Max, {X: box.Min.X, Y: box.Max.Y}}
	b.add(scene.Fill{
		Loops: b.loops([]geom.Loop{around, b.face.Reversed()}),
		Paint: scene.Paint{Texture: look.Shadow([]geom.Loop{b.s.Outline}, throw, spread, b.Theme.Shadow)},
	})
}

// layWalls hatches a strip outside of every run of wall edges.
func (b *base) layWalls() {
	width := b.pt(wallWidth) / b.Scale
	for _, run := range wallRuns(b.s.Sides) {
		run = run.on(b.pt(26) / b.Scale)
		strip := stripOutside(run.points, run.closed, width)
		page := b.loops(strip)
		b.add(scene.Fill{Loops: page, Paint: scene.Paint{Colour: b.Theme.WallFill}})
		b.add(scene.Stroke{Lines: hatched(page, geom.Box{Max: geom.Vec{X: b.W, Y: b.H}}, b.pt(5)), Width: b.pt(0.7), Colour: b.Theme.Wall})
		b.add(scene.Stroke{Lines: [][]geom.Vec{b.path(run.points)}, Closed: run.closed, Width: b.pt(1.3), Colour: b.Theme.Wall})
	}
}

// wallRun is a stretch of the outline that lies along walls.
type wallRun struct {
	points []geom.Vec
	closed bool
}

// on is the run with its ends drawn on by a length: a wall goes further than the
// top.
func (w wallRun) on(by float64) wallRun {
	n := len(w.points)
	if w.closed || n < 2 {
		return w
	}
	first := w.points[0].Add(w.points[0].Sub(w.points[1]).Unit().Mul(by))
	last := w.points[n-1].Add(w.points[n-1].Sub(w.points[n-2]).Unit().Mul(by))
	out := append([]geom.Vec{first}, w.points...)
	return wallRun{points: append(out, last)}
}

// stripOutside is the strip of a breadth to the right of a run, as one quad for
// each of its pieces with mitred ends, all turning the same way.
func stripOutside(pts []geom.Vec, closed bool, width float64) []geom.Loop {
	n := len(pts)
	if n < 2 {
		return nil
	}
	out := offset(pts, closed, -width)
	var strip []geom.Loop
	for i := range n {
		j := i + 1
		if j == n {
			if !closed {
				break
			}
			j = 0
		}
		strip = append(strip, geom.Loop{pts[j], pts[i], out[i], out[j]})
	}
	return strip
}

// offset moves a polyline to its left by d, mitred at its corners up to three
// times d.
func offset(pts []geom.Vec, closed bool, d float64) []geom.Vec {
	n := len(pts)
	out := make([]geom.Vec, n)
	normal := func(i, j int) geom.Vec { return pts[j].Sub(pts[i]).Unit().Left() }
	for i, p := range pts {
		prev, next := i-1, i+1
		if closed {
			prev, next = (i+n-1)%n, (i+1)%n
		}
		var a, c geom.Vec
		if next < n {
			c = normal(i, next)
		}
		if prev >= 0 {
			a = normal(prev, i)
		} else {
			a = c
		}
		if next >= n {
			c = a
		}
		m := a.Add(c)
		if l := m.Dot(m) / 2; l > 0.11 { // 1 + cos of the turn
			m = m.Mul(1 / l)
		} else {
			m = a
		}
		out[i] = p.Add(m.Mul(d))
	}
	return out
}

// maxHatch bounds the lines of one hatching.
const maxHatch = 3000

// hatched gives the pieces of lines at 45 degrees, apart page units apart, that
// lie within the union of convex loops and meet the box.
func hatched(loops []geom.Loop, page geom.Box, apart float64) [][]geom.Vec {
	box := geom.EmptyBox()
	for _, l := range loops {
		box = box.Union(l.Bounds())
	}
	box.Min = geom.Vec{X: math.Max(box.Min.X, page.Min.X-50), Y: math.Max(box.Min.Y, page.Min.Y-50)}
	box.Max = geom.Vec{X: math.Min(box.Max.X, page.Max.X+50), Y: math.Min(box.Max.Y, page.Max.Y+50)}
	if box.Empty() {
		return nil
	}
	// Lines of constant x + y = c, with t = x along them.
	pitch := apart * math.Sqrt2
	first := math.Ceil((box.Min.X+box.Min.Y)/pitch) * pitch
	count := int((box.Max.X + box.Max.Y - first) / pitch)
	if !(count >= 0 && count <= maxHatch) {
		return nil
	}
	type span struct{ lo, hi float64 }
	spans := make([][]span, count+1)
	for _, l := range loops {
		lo, hi := math.Inf(1), math.Inf(-1)
		for _, p := range l {
			lo, hi = math.Min(lo, p.X+p.Y), math.Max(hi, p.X+p.Y)
		}
		from := max(0, int(math.Ceil((math.Max(lo, first)-first)/pitch)))
		to := min(count, int(math.Floor((math.Min(hi, first+float64(count)*pitch)-first)/pitch)))
		for k := from; k <= to; k++ {
			c := first + float64(k)*pitch
			a, z := math.Inf(1), math.Inf(-1)
			for i, p := range l {
				q := l[(i+1)%len(l)]
				dp, dq := p.X+p.Y-c, q.X+q.Y-c
				if (dp < 0) != (dq < 0) {
					x := p.X + (q.X-p.X)*dp/(dp-dq)
					a, z = math.Min(a, x), math.Max(z, x)
				}
			}
			if a < z {
				spans[k] = append(spans[k], span{a, z})
			}
		}
	}
	var out [][]geom.Vec
	for k, row := range spans {
		c := first + float64(k)*pitch
		slices.SortFunc(row, func(a, b span) int { return cmp.Compare(a.lo, b.lo) })
		for i := 0; i < len(row); {
			s := row[i]
			for i++; i < len(row) && row[i].lo <= s.hi+1e-6; i++ {
				s.hi = math.Max(s.hi, row[i].hi)
			}
			out = append(out, []geom.Vec{{X: s.lo, Y: c - s.lo}, {X: s.hi, Y: c - s.hi}})
		}
	}
	return out
}

// laySupports draws what carries the top, hidden below it, as dashed lines.
func (b *base) laySupports() {
	if !b.Show.Supports {
		return
	}
	for _, s := range b.s.Bearings {
		lines := make([][]geom.Vec, len(s.Loops))
		for i, l := range b.loops(s.Loops) {
			lines[i] = l
		}
		dash := []float64{b.pt(6), b.pt(4)}
		b.add(scene.Stroke{Lines: lines, Closed: true, Width: b.pt(2.6), Dash: dash, Colour: b.Theme.SupportHalo})
		b.add(scene.Stroke{Lines: lines, Closed: true, Width: b.pt(1.1), Dash: dash, Colour: b.Theme.Support})
	}
}
