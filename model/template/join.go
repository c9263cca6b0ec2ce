package template

import (
	"math"

	"example.org/castwright/model/geom"
)

const (
	// joinGap is how near, in millimetres, two ends must lie to be taken as
	// one point; it is well below what a saw or a knife can follow.
	joinGap = 0.1
	// closeGap is how wide a gap between two loose ends is closed with a
	// straight line.
	closeGap = 2.0
	// tiny spans are dropped.
	tiny = 1e-6
)

// chain is a run of spans, each starting where the last one ends.
type chain []span

// ring is a closed chain, and whether it covers what it winds round an odd number
// of times rather than what it winds round at all.
type ring struct {
	chain
	odd bool
}

func (c chain) start() geom.Vec { return c[0].a }
func (c chain) end() geom.Vec   { return c[len(c)-1].b }

func (c chain) length() float64 {
	sum := 0.0
	for _, s := range c {
		sum += s.length()
	}
	return sum
}

func (c chain) reversed() chain {
	r := make(chain, len(c))
	for i, s := range c {
		r[len(c)-1-i] = s.reversed()
	}
	return r
}

// join makes closed chains of runs. A run that closes on itself is a chain and
// is left alone. Ends of others within [joinGap] meet; loose ends are bridged
// over gaps up to [closeGap]; what then still hangs loose is dropped, or closed
// by a straight line where it is filled. The outer boundary of what is left is
// traced, so that lines across an outline don't lead astray.
func join(runs []run, n *notes) []ring {
	var out []ring
	var loose []run
	seen := map[runKey]bool{}
	for _, r := range runs {
		c := r.clean(n)
		if len(c) == 0 {
			continue
		}
		if r.closed || c.meets() {
			out = append(out, ring{c.weld(n), r.odd})
			continue
		}
		k := keyOf(c)
		if seen[k] {
			n.count("dropped %d piece drawn twice", "dropped %d pieces drawn twice")
			continue
		}
		seen[k] = true
		loose = append(loose, run{spans: c, filled: r.filled})
	}
	for _, c := range traceLoose(loose, n) {
		out = append(out, ring{chain: c})
	}
	return out
}

// clean is the run without spans that have no length.
func (r run) clean(n *notes) chain {
	c := make(chain, 0, len(r.spans))
	for _, s := range r.spans {
		if s.a.Dist(s.b) < tiny && s.a.Dist(s.at(0.5)) < tiny && s.length() < tiny {
			continue
		}
		c = append(c, s)
	}
	if len(c) == 0 {
		n.count("dropped %d piece without length", "dropped %d pieces without length")
	}
	return c
}

// meets reports whether the ends of a chain meet; a speck's don't count.
func (c chain) meets() bool {
	return c.start().Dist(c.end()) <= samePlace && c.length() > 4*joinGap
}

// weld closes the joints of a chain that closes.
func (c chain) weld(n *notes) chain {
	wide := false
	for i := range c {
		j := (i + 1) % len(c)
		if c[i].b != c[j].a {
			p := c[i].b.Lerp(c[j].a, 0.5)
			wide = wide || c[i].b.Dist(c[j].a) > 1e-3
			c[i] = c[i].between(c[i].a, p)
			c[j] = c[j].between(p, c[j].b)
		}
	}
	if wide {
		n.count("joined the ends of %d outline over gaps of up to 0.1 mm",
			"joined the ends of %d outlines over gaps of up to 0.1 mm")
	}
	return c
}

// runKey is the same for open runs drawn twice, in either direction, to a
// micrometre.
type runKey struct {
	ax, ay, bx, by, mx, my int64
	n                      int
}

func keyOf(c chain) runKey {
	a, b := c.start(), c.end()
	if b.X < a.X || (b.X == a.X && b.Y < a.Y) {
		a, b = b, a
	}
	m := c[len(c)/2].a
	if len(c)%2 == 1 {
		m = c[len(c)/2].at(0.5)
	}
	q := func(v float64) int64 { return int64(math.Round(v * 1000)) }
	return runKey{q(a.X), q(a.Y), q(b.X), q(b.Y), q(m.X), q(m.Y), len(c)}
}
