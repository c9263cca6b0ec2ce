package template

import (
	"math"
	"slices"

	"example.org/castwright/model/geom"
)

// How many lines and arcs are held against each other, and how often they may meet:
// more are a texture.
const (
	maxCut = 3000
	maxMet = 20_000
)

// cut parts open lines and arcs where they cross or meet in their middle, so that
// an outline whose lines run on past its corners can be traced. It reports whether
// there was anything to part. What is filled or closed is left as it is.
func cut(runs []run, n *notes) ([]run, bool) {
	var out []run
	var loose []span
	for _, r := range runs {
		if r.closed || r.filled {
			out = append(out, r)
			continue
		}
		for _, s := range r.spans {
			if s.kind == cubic || s.length() < tiny {
				out = append(out, run{spans: []span{s}})
				continue
			}
			loose = append(loose, s)
		}
	}
	if len(loose) > maxCut {
		return runs, false
	}
	boxes := make([]geom.Box, len(loose))
	at := make([][]float64, len(loose))
	met := 0
	for i, s := range loose {
		boxes[i] = geom.EmptyBox()
		for k := range 17 {
			boxes[i] = boxes[i].Include(s.at(float64(k) / 16))
		}
		// An arc leaves the points on it by at most a hundredth of its radius.
		boxes[i] = boxes[i].Grow(joinGap + 0.02*(boxes[i].W()+boxes[i].H()))
		for j := range i {
			if !boxes[i].Touches(boxes[j]) {
				continue
			}
			for _, p := range crossings(loose[i], loose[j]) {
				if met++; met > maxMet {
					return runs, false
				}
				at[i], at[j] = append(at[i], p[0]), append(at[j], p[1])
			}
		}
	}
	parted := 0
	for i, s := range loose {
		pieces := s.split(at[i])
		if len(pieces) > 1 {
			parted++
		}
		for _, p := range pieces {
			out = append(out, run{spans: []span{p}})
		}
	}
	n.add(parted, "cut %d line where another one meets it", "cut %d lines where others meet them")
	return out, parted > 0
}

// crossings are the places where two lines or arcs meet, by the share of each; a
// share may lie a little outside of 0 to 1, where an end stops just short.
func crossings(s, t span) [][2]float64 {
	switch {
	case s.kind == line && t.kind == line:
		d, e := s.b.Sub(s.a), t.b.Sub(t.a)
		den := d.Cross(e)
		if math.Abs(den) < 1e-9*d.Norm()*e.Norm() {
			return nil
		}
		w := t.a.Sub(s.a)
		return within(s, t, [2]float64{w.Cross(e) / den, w.Cross(d) / den})
	case s.kind == line:
		return lineArc(s, t)
	case t.kind == line:
		out := lineArc(t, s)
		for i, p := range out {
			out[i] = [2]float64{p[1], p[0]}
		}
		return out
	}
	return nil
}

// lineArc is where a line meets an arc.
func lineArc(l, c span) [][2]float64 {
	centre, r, start, sweep := c.circle()
	d, w := l.b.Sub(l.a), l.a.Sub(centre)
	a, b := d.Dot(d), d.Dot(w)
	root := b*b - a*(w.Dot(w)-r*r)
	if root < 0 {
		return nil
	}
	var out [][2]float64
	for _, sign := range [...]float64{-1, 1} {
		u := (-b + sign*math.Sqrt(root)) / a
		p := w.Add(d.Mul(u))
		turn := math.Mod((math.Atan2(p.Y, p.X)-start)*math.Copysign(1, sweep)+4*math.Pi, 2*math.Pi)
		if turn > math.Pi+math.Abs(sweep)/2 { // nearer before its start than past its end
			turn -= 2 * math.Pi
		}
		out = append(out, within(l, c, [2]float64{u, turn / math.Abs(sweep)})...)
	}
	return out
}

// within is a crossing that lies on both, give or take the gap at which ends meet.
func within(s, t span, p [2]float64) [][2]float64 {
	for i, l := range [...]float64{s.length(), t.length()} {
		if gap := joinGap / l; p[i] < -gap || p[i] > 1+gap {
			return nil
		}
	}
	return [][2]float64{p}
}

// split is a line or an arc in pieces that end at shares of it.
func (s span) split(at []float64) []span {
	slices.Sort(at)
	l := s.length()
	from := 0.0
	var out []span
	for _, t := range at {
		if (t-from)*l > joinGap && (1-t)*l > joinGap {
			out = append(out, s.part(from, t))
			from = t
		}
	}
	return append(out, s.part(from, 1))
}

// part is a line or an arc from one share of it to another.
func (s span) part(from, to float64) span {
	p := s
	if from > 0 {
		p.a = s.at(from)
	}
	if to < 1 {
		p.b = s.at(to)
	}
	if s.kind == arc {
		p.bulge = math.Tan(math.Atan(s.bulge) * (to - from))
	}
	return p
}
