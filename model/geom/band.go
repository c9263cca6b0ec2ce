package geom

import "math"

// Band is a region about a natural cubic spline with a width that varies along
// it: at every place the cross line, square to the spline, reaches half the
// width to either side.
type Band struct {
	line  Natural
	width Monotone
	knots []float64
}

// BandEnd says how a band ends: round, or else straight on for Extend
// millimetres and flat.
type BandEnd struct {
	Round  bool
	Extend float64
}

// NewBand makes the band through points, which must differ from one to the next,
// over their cumulative chord length; false when there are fewer than two.
func NewBand(points []Vec, widths []float64) (Band, bool) {
	if len(points) < 2 || len(points) != len(widths) {
		return Band{}, false
	}
	s := make([]float64, len(points))
	for i := 1; i < len(points); i++ {
		s[i] = s[i-1] + points[i].Dist(points[i-1])
		if !(s[i] > s[i-1]) {
			return Band{}, false
		}
	}
	return Band{NewNatural(s, points), NewMonotone(s, widths), s}, true
}

// Length is the length of the centreline, by Gauss-Legendre quadrature on each
// span.
func (b Band) Length() float64 {
	sum := 0.0
	const parts = 4 // of a span
	for i := 1; i < len(b.knots); i++ {
		h := (b.knots[i] - b.knots[i-1]) / parts
		for j := range parts {
			for k, x := range gauss16.x {
				_, d, _ := b.line.At(b.knots[i-1] + (float64(j)+x)*h)
				sum += gauss16.w[k] * h * d.Norm()
			}
		}
	}
	return sum
}

// cross is the cross line at s: its middle, the direction of travel there, both
// ends and their derivatives.
type cross struct {
	s               float64
	mid, dir        Vec
	left, right     Vec
	leftBy, rightBy Vec
}

func (b Band) at(s float64) cross {
	p, d1, d2 := b.line.At(s)
	w, dw := b.width.At(s)
	t := d1.Unit()
	n := t.Left()
	v := d1.Norm()
	bend := curvature(d1, d2)
	half := n.Mul(w / 2)
	along, out := func(f float64) Vec { return t.Mul(v * (1 - f*bend*w/2)) }, n.Mul(dw/2)
	return cross{
		s: s, mid: p, dir: t,
		left: p.Add(half), right: p.Sub(half),
		leftBy: along(1).Add(out), rightBy: along(-1).Sub(out),
	}
}

// bulges is the signed area between either bank from x to y and its chord.
func (b Band) bulges(x, y cross) (left, right float64) {
	h, m := (y.s-x.s)/2, (x.s+y.s)/2
	off := h * math.Sqrt(0.6)
	for _, g := range [3]struct{ s, w float64 }{{m - off, 5}, {m, 8}, {m + off, 5}} {
		c := b.at(g.s)
		left += g.w * c.left.Sub(x.left).Cross(c.leftBy)
		right += g.w * c.right.Sub(x.right).Cross(c.rightBy)
	}
	return left * h / 18, right * h / 18
}

// FlatBand is a band flattened to a tolerance.
type FlatBand struct {
	crosses     []cross
	left, right []Vec // the banks, moved off their curves as in [Flatten]
	tol         float64
}

// Flatten flattens the band so that its area is kept.
func (b Band) Flatten(tol float64) FlatBand {
	f := FlatBand{crosses: []cross{b.at(0)}, tol: tol}
	var left, right []float64 // areas between steps and their chords
	for i := 1; i < len(b.knots); i++ {
		from, h := b.knots[i-1], b.knots[i]-b.knots[i-1]
		ts := spread(8, 2, MaxSteps/8, func(t float64) float64 { return h * b.density(from+t*h, tol) })
		for _, t := range ts[1:] {
			to := b.at(from + t*h)
			f.crosses, left, right = b.refine(f.crosses, left, right, to, tol, 6)
		}
	}
	f.standOff(left, right)
	return f
}

// density is how many steps a unit of the parameter needs at s on either bank.
func (b Band) density(s, tol float64) float64 {
	_, d1, d2 := b.line.At(s)
	w, _ := b.width.At(s)
	v := d1.Norm()
	if v < 1e-9 {
		return 0
	}
	bow := d1.Cross(d2) / v // of the centreline: v² curvature
	bank := math.Abs(bow) * (1 + math.Abs(bow)*w/(2*v*v))
	return math.Max(math.Sqrt((bank+math.Abs(b.width.second(s))/2)/(12*tol)), math.Abs(bow)/v/MaxTurn)
}

// refine appends a cross line, and before it those that its step still needs.
func (b Band) refine(cs []cross, left, right []float64, to cross, tol float64, depth int) ([]cross, []float64, []float64) {
	from := cs[len(cs)-1]
	l, r := b.bulges(from, to)
	if depth > 0 && (math.Abs(l) > 2.5*tol*from.left.Dist(to.left) || math.Abs(r) > 2.5*tol*from.right.Dist(to.right)) {
		cs, left, right = b.refine(cs, left, right, b.at((from.s+to.s)/2), tol, depth-1)
		return b.refine(cs, left, right, to, tol, depth-1)
	}
	return append(cs, to), append(left, l), append(right, r)
}

// standOff fills in the banks.
func (f *FlatBand) standOff(leftArea, rightArea []float64) {
	cs := f.crosses
	f.left, f.right = make([]Vec, len(cs)), make([]Vec, len(cs))
	for i := range cs {
		c := &cs[i]
		f.left[i], f.right[i] = c.left, c.right
		if i == 0 || i == len(cs)-1 {
			continue
		}
		n := c.leftBy.Unit().Left()
		f.left[i] = c.left.Add(n.Mul(standOff(cs[i-1].left, cs[i+1].left, n, share(leftArea, i), f.tol)))
		n = c.rightBy.Unit().Left()
		f.right[i] = c.right.Add(n.Mul(standOff(cs[i-1].right, cs[i+1].right, n, share(rightArea, i), f.tol)))
	}
}

// Ends gives the two ends of the first or last cross line, to the left and right
// of the direction of travel, and the direction in which the band leaves there.
func (b Band) Ends(last bool) (left, right, dir Vec) {
	c := b.at(0)
	if last {
		c = b.at(b.knots[len(b.knots)-1])
		return c.left, c.right, c.dir
	}
	return c.left, c.right, c.dir.Mul(-1)
}

// Fold is the first place where the band bends more sharply than half its width,
// so that its bank folds back; false when there is none.
func (b Band) Fold() (at Vec, folded bool) {
	const samples = 16 // of a span
	for i := 1; i < len(b.knots); i++ {
		for k := range samples + 1 {
			c := b.at(b.knots[i-1] + (b.knots[i]-b.knots[i-1])*float64(k)/samples)
			if c.leftBy.Dot(c.dir) < 0 || c.rightBy.Dot(c.dir) < 0 {
				return c.mid, true
			}
		}
	}
	return Vec{}, false
}

// Centreline is the flattened spline.
func (f FlatBand) Centreline() []Vec {
	out := make([]Vec, len(f.crosses))
	for i, c := range f.crosses {
		out[i] = c.mid
	}
	return out
}

// Loops is the band as counter-clockwise loops. Their union is the band: its ends
// are loops of their own, and where it bends more sharply than half its width the
// pieces overlap.
func (f FlatBand) Loops(start, end BandEnd) []Loop {
	n := len(f.crosses) - 1
	var out []Loop
	from := 0 // of the sound run under way
	flush := func(to int) {
		if to == from {
			return
		}
		l := append(make(Loop, 0, 2*(to-from+1)), f.right[from:to+1]...)
		for i := to; i >= from; i-- {
			l = append(l, f.left[i])
		}
		out = append(out, l)
	}
	for i := range n {
		if quad := [4]Vec{f.right[i], f.right[i+1], f.left[i+1], f.left[i]}; !sound(quad) {
			flush(i)
			out = append(out, unfolded(quad)...)
			from = i + 1
		}
	}
	flush(n)
	out = appendCap(out, f.right[n], f.left[n], f.crosses[n].dir, end, f.tol)
	return appendCap(out, f.left[0], f.right[0], f.crosses[0].dir.Mul(-1), start, f.tol)
}

// sound reports whether the quadrangle between two cross lines is simple and
// counter-clockwise: neither of its sides runs backward.
func sound(q [4]Vec) bool {
	return q[1].Sub(q[0]).Cross(q[2].Sub(q[0])) >= 0 && q[2].Sub(q[0]).Cross(q[3].Sub(q[0])) >= 0
}

// unfolded gives what two cross lines sweep over where they cross: two triangles,
// both counter-clockwise.
func unfolded(q [4]Vec) []Loop {
	r0, r1, l1, l0 := q[0], q[1], q[2], q[3]
	u, v := l0.Sub(r0), l1.Sub(r1)
	if det := u.Cross(v); det != 0 {
		s, t := r1.Sub(r0).Cross(v)/det, r1.Sub(r0).Cross(u)/det
		if s > 0 && s < 1 && t > 0 && t < 1 {
			x := r0.Add(u.Mul(s))
			return []Loop{forward(Loop{r0, r1, x}), forward(Loop{x, l1, l0})}
		}
	}
	return []Loop{forward(Loop{r0, r1, l1}), forward(Loop{r0, l1, l0})}
}

// forward is the loop run counter-clockwise.
func forward(l Loop) Loop {
	if l.Area() < 0 {
		return l.Reversed()
	}
	return l
}

// appendCap adds the end of a band beyond the cross line from a to b, which is
// run with the end to its right.
func appendCap(out []Loop, a, b, dir Vec, end BandEnd, tol float64) []Loop {
	width := a.Dist(b)
	switch {
	case width < slit:
	case end.Round:
		from := a.Sub(a.Lerp(b, 0.5))
		arc := Arc{a.Lerp(b, 0.5), width / 2, math.Atan2(from.Y, from.X), math.Pi}
		l := Loop{a}
		vs := Flatten(nil, arc, tol)
		for _, v := range vs[1 : len(vs)-1] {
			l = append(l, v.P)
		}
		out = append(out, append(l, b))
	case end.Extend > 0:
		d := dir.Mul(end.Extend)
		out = append(out, Loop{a, a.Add(d), b.Add(d), b})
	}
	return out
}
