package raster

import (
	"math"

	"example.org/castwright/model/geom"
	"example.org/castwright/model/scene"
)

const (
	maxWidth = 4096 // of a line, pixels
	// maxDashes bounds the dashes of one polyline; a pattern finer than that
	// is drawn whole.
	maxDashes = 20_000
)

// stroke paints lines with round ends and joins.
func (t *painter) stroke(s scene.Stroke) {
	if s.Colour.A == 0 || !(s.Width > 0 && s.Width <= maxWidth) {
		return
	}
	for _, l := range s.Lines {
		if len(l) < 2 || !finite(l) {
			continue
		}
		for _, part := range t.parts(l, s) {
			t.line(part, s.Width/2)
		}
	}
	t.paint(s.Colour)
}

// parts cuts a polyline into what lies near the picture, and into its dashes.
func (t *painter) parts(l []geom.Vec, s scene.Stroke) [][]geom.Vec {
	if s.Closed {
		t.path = append(append(t.path[:0], l...), l[0])
		l = t.path
	}
	keep := t.keep.Grow(s.Width)
	on := pattern(s.Dash)
	period := 0.0
	for _, d := range on {
		period += d
	}
	if period == 0 {
		inside := true
		for _, p := range l {
			inside = inside && keep.Contains(p)
		}
		if inside {
			return append(t.dashed[:0], l)
		}
	}
	out := t.dashed[:0]
	var run []geom.Vec
	flush := func() {
		if len(run) > 1 {
			out = append(out, run)
		}
		run = nil
	}
	along := 0.0 // length so far, modulo the period
	for i := 1; i < len(l); i++ {
		a, b := l[i-1], l[i]
		length := a.Dist(b)
		lo, hi, ok := clipSegment(a, b, keep)
		if !ok || length == 0 {
			flush()
			along = modulo(along+length, period)
			continue
		}
		if lo > 0 {
			flush()
		}
		if period == 0 || (hi-lo)*length/period*float64(len(on)) > maxDashes {
			if run == nil {
				run = append(run, a.Lerp(b, lo))
			}
			run = append(run, a.Lerp(b, hi))
		} else {
			run, out = dash(run, out, a, b, lo*length, hi*length, along, length, on, period)
		}
		if hi < 1 {
			flush()
		}
		along = modulo(along+length, period)
	}
	flush()
	t.dashed = out
	return out
}

// dash runs along the segment from a to b between the lengths from and to,
// where the pattern stands at along at a, and adds the dashes to run and out.
func dash(run []geom.Vec, out [][]geom.Vec, a, b geom.Vec, from, to, along, length float64, on []float64, period float64) ([]geom.Vec, [][]geom.Vec) {
	at := modulo(along+from, period)
	k := 0
	for k < len(on)-1 && at >= on[k] {
		at -= on[k]
		k++
	}
	for x := from; x < to; {
		end := math.Min(to, x+math.Max(on[k]-at, 1e-3))
		if k%2 == 0 {
			if run == nil {
				run = append(run, a.Lerp(b, x/length))
			}
			run = append(run, a.Lerp(b, end/length))
			if end < to && len(run) > 1 {
				out, run = append(out, run), nil
			}
		} else if len(run) > 1 {
			out, run = append(out, run), nil
		}
		x, at = end, 0
		if k++; k == len(on) {
			k = 0
		}
	}
	return run, out
}

// pattern is a usable dash pattern of even length, or none.
func pattern(d []float64) []float64 {
	sum := 0.0
	for _, x := range d {
		if !(x >= 0) || math.IsInf(x, 0) {
			return nil
		}
		sum += x
	}
	if len(d) == 0 || len(d) > 16 || !(sum > 0.05) || sum > 1e6 {
		return nil
	}
	if len(d)%2 == 1 {
		d = append(append([]float64(nil), d...), d...)
	}
	return d
}

func modulo(x, m float64) float64 {
	if m == 0 || math.IsInf(x, 0) {
		return 0
	}
	return math.Mod(x, m)
}

// line gathers a polyline of half width r: a band for each segment, wedges and
// discs where they meet. All loops turn the same way, so together they are one.
func (t *painter) line(l []geom.Vec, r float64) {
	if l[0] == l[len(l)-1] && len(l) > 3 {
		t.join(l[len(l)-2], l[0], l[1], r)
	} else {
		t.cap(l[0], l[1].Sub(l[0]), r)
		t.cap(l[len(l)-1], l[len(l)-2].Sub(l[len(l)-1]), r)
	}
	low, high := float64(t.top)-2*r-1, float64(t.top+t.h)+2*r+1
	for i := 1; i < len(l); i++ {
		if a, b := l[i-1].Y, l[i].Y; a < low && b < low || a > high && b > high {
			continue // in another band
		}
		n := l[i].Sub(l[i-1]).Unit().Left().Mul(r)
		t.gather([]geom.Vec{l[i-1].Sub(n), l[i].Sub(n), l[i].Add(n), l[i-1].Add(n)})
		if i+1 < len(l) {
			t.join(l[i-1], l[i], l[i+1], r)
		}
	}
}

// cap rounds an end at p, where the line goes on toward in.
func (t *painter) cap(p, in geom.Vec, r float64) {
	if r > 1.6 {
		t.disc(p, r)
		return
	}
	u := in.Unit().Mul(-0.8 * r)
	n := in.Unit().Left().Mul(r)
	t.gather([]geom.Vec{p.Add(n), p.Add(n).Add(u), p.Sub(n).Add(u), p.Sub(n)})
}

// join fills the gap on the outside of the bend at b.
func (t *painter) join(a, b, c geom.Vec, r float64) {
	u, v := b.Sub(a).Unit(), c.Sub(b).Unit()
	turn := math.Atan2(u.Cross(v), u.Dot(v))
	switch gap := math.Abs(turn) * r; {
	case gap < 0.1:
		return
	case math.Abs(turn) > 0.5 && r > 1.6:
		t.disc(b, r)
		return
	}
	m, n := u.Left().Mul(r), v.Left().Mul(r)
	// The tip of the mitre, no further out than the round join reaches.
	tip := m.Add(n).Unit().Mul(r)
	if turn > 0 {
		t.gather([]geom.Vec{b, b.Sub(m), b.Sub(tip), b.Sub(n)})
	} else {
		t.gather([]geom.Vec{b, b.Add(n), b.Add(tip), b.Add(m)})
	}
}

// disc gathers a circle.
func (t *painter) disc(c geom.Vec, r float64) {
	n := 8 + int(2*math.Sqrt(r)*4)
	pts := make([]geom.Vec, n)
	for i := range pts {
		s, k := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		pts[i] = geom.Vec{X: c.X + r*k, Y: c.Y + r*s}
	}
	t.gather(pts)
}
