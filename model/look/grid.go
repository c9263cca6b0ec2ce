package look

import (
	"cmp"
	"math"
	"slices"

	"example.org/castwright/model/geom"
)

// maxTexels bounds a patch.
const maxTexels = 6 << 20

// grid is where the texels of a patch lie on the design.
type grid struct {
	origin geom.Vec // left front corner, mm
	cell   float64
	w, h   int
}

// gridOver covers a box with texels of at least cell mm; ok is false for a box
// that holds nothing or no finite numbers.
func gridOver(b geom.Box, cell float64) (grid, bool) {
	if b.Empty() || !b.Min.Finite() || !b.Max.Finite() || !(cell > 0) || b.W() > 1e6 || b.H() > 1e6 {
		return grid{}, false
	}
	for (b.W()/cell+2)*(b.H()/cell+2) > maxTexels {
		cell *= 2
	}
	// On whole texels of the design, so that a pattern stays in its place.
	x0, y0 := math.Floor(b.Min.X/cell), math.Floor(b.Min.Y/cell)
	return grid{
		origin: geom.Vec{X: x0 * cell, Y: y0 * cell}, cell: cell,
		w: int(math.Ceil(b.Max.X/cell)-x0) + 1, h: int(math.Ceil(b.Max.Y/cell)-y0) + 1,
	}, true
}

// cellFor is the size of texels, in mm, for a picture with this many pixels to
// the millimetre: a power of two, no larger than a pixel and none too small.
func cellFor(perMM float64) float64 {
	cell := 32.0
	for cell > 0.25 && cell > 1/perMM*1.001 {
		cell /= 2
	}
	return cell
}

// x is the middle of a column.
func (g grid) x(i int) float64 { return g.origin.X + (float64(i)+0.5)*g.cell }

// y is the middle of a row.
func (g grid) y(j int) float64 { return g.origin.Y + (float64(j)+0.5)*g.cell }

// column is the texels, counted from the grid's corner, at which x lies.
func (g grid) column(x float64) float64 { return (x - g.origin.X) / g.cell }

func (g grid) row(y float64) float64 { return (y - g.origin.Y) / g.cell }

// within clamps a range of texels to 0..n.
func within(lo, hi float64, n int) (int, int) {
	return int(max(0, min(float64(n), math.Floor(lo)))), int(max(0, min(float64(n), math.Ceil(hi))))
}

// crossing is where a loop crosses the middle of a row.
type crossing struct {
	x  float32 // texels, or mm
	by int32   // how the winding number changes to the right of it
}

// cover gives each texel's share, 0 to 1, that lies within the loops by the
// non-zero rule, taken along the middle of its row.
func (g grid) cover(loops []geom.Loop) []float32 {
	out := make([]float32, g.w*g.h)
	rows := make([][]crossing, g.h)
	for _, l := range loops {
		for i, p := range l {
			q := l[(i+1)%len(l)]
			by := int32(1)
			if p.Y > q.Y {
				p, q, by = q, p, -1
			}
			lo, hi := within(math.Ceil(g.row(p.Y)-0.5), math.Ceil(g.row(q.Y)-0.5), g.h)
			for j := lo; j < hi; j++ {
				t := (g.y(j) - p.Y) / (q.Y - p.Y)
				x := g.column(p.X + t*(q.X-p.X))
				rows[j] = append(rows[j], crossing{float32(max(-1, min(float64(g.w)+1, x))), by})
			}
		}
	}
	for j, row := range rows {
		slices.SortFunc(row, func(a, b crossing) int { return cmp.Compare(a.x, b.x) })
		wind := int32(0)
		for i := 0; i+1 < len(row); i++ {
			wind += row[i].by
			if wind != 0 {
				fillRun(out[j*g.w:(j+1)*g.w], row[i].x, row[i+1].x)
			}
		}
	}
	return out
}

// fillRun adds the cover of the run from a to b texels.
func fillRun(row []float32, a, b float32) {
	a, b = max(a, 0), min(b, float32(len(row)))
	if b <= a {
		return
	}
	i, k := int(a), int(b)
	if i == k {
		row[i] += b - a
		return
	}
	row[i] += float32(i+1) - a
	for x := i + 1; x < k; x++ {
		row[x] = 1
	}
	if k < len(row) {
		row[k] += b - float32(k)
	}
}

// distance gives each texel's distance in mm from the loops, positive within
// them by the non-zero rule, negative outside, cut off at reach.
func (g grid) distance(loops []geom.Loop, reach float64) []float32 {
	out := g.cover(loops)
	box := g.box().Grow(reach)
	for i, c := range out {
		if c >= 0.5 {
			out[i] = float32(reach * reach)
		} else {
			out[i] = -float32(reach * reach)
		}
	}
	for _, l := range loops {
		l = decimated(l, 0.1*g.cell)
		for i, p := range l {
			q := l[(i+1)%len(l)]
			if meets(box, geom.EmptyBox().Include(p).Include(q)) {
				g.near(out, p, q, reach)
			}
		}
	}
	for i, d := range out {
		if d < 0 {
			out[i] = -float32(math.Sqrt(float64(-d)))
		} else {
			out[i] = float32(math.Sqrt(float64(d)))
		}
	}
	return out
}

// near lowers the squared distances, which carry their sign, to those from the
// segment.
func (g grid) near(out []float32, p, q geom.Vec, reach float64) {
	y0, y1 := within(g.row(min(p.Y, q.Y)-reach), g.row(max(p.Y, q.Y)+reach)+1, g.h)
	d := q.Sub(p)
	ll := d.Dot(d)
	if ll < 1e-12 {
		return
	}
	length := math.Sqrt(ll)
	for j := y0; j < y1; j++ {
		y := g.y(j)
		// The row meets the band about the segment from x0 to x1.
		x0, x1 := min(p.X, q.X)-reach, max(p.X, q.X)+reach
		if math.Abs(d.Y) > 1e-9 {
			at, half := p.X+(y-p.Y)*d.X/d.Y, reach*length/math.Abs(d.Y)
			x0, x1 = max(x0, at-half), min(x1, at+half)
		}
		i0, i1 := within(g.column(x0), g.column(x1)+1, g.w)
		row := out[j*g.w:]
		for i := i0; i < i1; i++ {
			ex, ey := g.x(i)-p.X, y-p.Y
			t := max(0, min(1, (ex*d.X+ey*d.Y)/ll))
			ex, ey = ex-t*d.X, ey-t*d.Y
			if s := float32(ex*ex + ey*ey); row[i] > s {
				row[i] = s
			} else if row[i] < -s {
				row[i] = -s
			}
		}
	}
}

// decimated is the loop with fewer points: each one left out lies within tol of
// the chord that takes its place.
func decimated(l geom.Loop, tol float64) geom.Loop {
	if len(l) < 8 {
		return l
	}
	out := geom.Loop{l[0]}
	from := 0
	for i := 2; i <= len(l); i++ {
		end := l[i%len(l)]
		if i-from < 64 && fits(l, from, i, end, tol) {
			continue
		}
		from = i - 1
		out = append(out, l[from])
	}
	return out
}

func fits(l geom.Loop, from, to int, end geom.Vec, tol float64) bool {
	a := l[from]
	u := end.Sub(a)
	n := u.Norm()
	if n == 0 {
		return false
	}
	u = u.Mul(1 / n)
	for k := from + 1; k < to; k++ {
		w := l[k].Sub(a)
		if along := w.Dot(u); math.Abs(w.Cross(u)) > tol || along < 0 || along > n {
			return false
		}
	}
	return true
}

// bounds is the box of all loops.
func bounds(loops []geom.Loop) geom.Box {
	b := geom.EmptyBox()
	for _, l := range loops {
		b = b.Union(l.Bounds())
	}
	return b
}

// sloped is the value of a grid at a place, between texels by straight lines, and
// how it grows with x and y there.
func (g grid) sloped(v []float32, x, y float64) (float32, geom.Vec) {
	u, w := max(0, min(float64(g.w-1), g.column(x)-0.5)), max(0, min(float64(g.h-1), g.row(y)-0.5))
	i, j := min(int(u), max(0, g.w-2)), min(int(w), max(0, g.h-2))
	i1, j1 := min(i+1, g.w-1), min(j+1, g.h-1)
	fu, fw := float32(u-float64(i)), float32(w-float64(j))
	a, b, c, d := v[j*g.w+i], v[j*g.w+i1], v[j1*g.w+i], v[j1*g.w+i1]
	low, high := a+(b-a)*fu, c+(d-c)*fu
	return low + (high-low)*fw, geom.Vec{
		X: float64((b-a)*(1-fw)+(d-c)*fw) / g.cell,
		Y: float64(high-low) / g.cell,
	}
}

// about is the value of the texel that a place lies in.
func (g grid) about(v []float32, x, y float64) float32 {
	i, j := int(g.column(x)), int(g.row(y))
	return v[max(0, min(g.h-1, j))*g.w+max(0, min(g.w-1, i))]
}
