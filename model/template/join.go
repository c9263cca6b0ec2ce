package template

import (
	"math"
	"sort"

	"example.org/castwright/model/geom"
)

const (
	// joinGap is how near, in millimetres, two ends must lie to be taken as
	// one point; it is well below what a saw or a knife can follow.
	joinGap = 0.1
	// closeGap is how wide a gap between the ends of one chain is closed with
	// a straight line.
	closeGap = 2.0
	// tiny spans are dropped.
	tiny = 1e-6
)

// chain is a run of spans, each starting where the last one ends.
type chain []span

// join links spans into closed chains. Ends within joinGap meet in their
// middle; where several ends meet, the nearest unused one is taken. Repeated
// spans are dropped. Chains that stay open are closed over gaps up to closeGap
// and dropped beyond.
func join(spans []span, n *notes) []chain {
	spans = dropRepeats(spans, n)
	ends := newEndIndex(spans)
	used := make([]bool, len(spans))
	var out []chain
	for i := range spans {
		if used[i] {
			continue
		}
		used[i] = true
		c := chain{spans[i]}
		c = ends.extend(c, spans, used)
		if !c.closed() { // grow the other way too
			c = ends.extend(c.reversed(), spans, used)
		}
		if c = c.finish(n); c != nil {
			out = append(out, c)
		}
	}
	return out
}

func (c chain) start() geom.Vec { return c[0].a }
func (c chain) end() geom.Vec   { return c[len(c)-1].b }

// closed reports whether the ends meet; one or two specks are no chain yet.
func (c chain) closed() bool {
	return c.start().Dist(c.end()) <= joinGap && (len(c) > 2 || c.length() > 4*joinGap)
}

func (c chain) length() float64 {
	sum := 0.0
	for _, s := range c {
		_, _, l := s.moments()
		sum += l
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

// finish welds the joints and closes the chain, or says why it can't be used.
func (c chain) finish(n *notes) chain {
	gap := c.start().Dist(c.end())
	switch {
	case gap > closeGap || (gap > joinGap && len(c) == 1):
		n.count("dropped %d open line(s) that bound no area")
		return nil
	case gap > joinGap:
		n.count("closed %d outline(s) over a gap of up to 2 mm")
		c = append(c, span{a: c.end(), b: c.start()})
	}
	welded := false
	for i := range c {
		j := (i + 1) % len(c)
		if c[i].b != c[j].a {
			p := c[i].b.Lerp(c[j].a, 0.5)
			welded = welded || c[i].b.Dist(c[j].a) > 1e-3
			c[i].b, c[j].a = p, p
		}
	}
	if welded {
		n.count("joined the ends of %d outline(s) over gaps of up to 0.1 mm")
	}
	return c
}

// dropRepeats removes spans without length and spans drawn twice, in either
// direction, to a micrometre.
func dropRepeats(spans []span, n *notes) []span {
	type key struct{ ax, ay, bx, by, mx, my int64 }
	seen := make(map[key]bool, len(spans))
	out := spans[:0:0]
	for _, s := range spans {
		m := s.at(0.5)
		if s.a.Dist(s.b) < tiny && s.a.Dist(m) < tiny {
			n.count("dropped %d piece(s) without length")
			continue
		}
		a, b := s.a, s.b
		if b.X < a.X || (b.X == a.X && b.Y < a.Y) {
			a, b = b, a
		}
		q := func(v float64) int64 { return int64(math.Round(v * 1000)) }
		k := key{q(a.X), q(a.Y), q(b.X), q(b.Y), q(m.X), q(m.Y)}
		if seen[k] {
			n.count("dropped %d piece(s) drawn twice")
			continue
		}
		seen[k] = true
		out = append(out, s)
	}
	return out
}

// endIndex finds span ends near a point: cells of joinGap hold the ends.
type endIndex map[[2]int64][]int // 2*i for the start of span i, 2*i+1 for its end

func cell(p geom.Vec) [2]int64 {
	return [2]int64{int64(math.Floor(p.X / joinGap)), int64(math.Floor(p.Y / joinGap))}
}

func newEndIndex(spans []span) endIndex {
	ix := endIndex{}
	for i, s := range spans {
		ix[cell(s.a)] = append(ix[cell(s.a)], 2*i)
		ix[cell(s.b)] = append(ix[cell(s.b)], 2*i+1)
	}
	return ix
}

// extend adds spans at the end of c until it closes or nothing fits.
func (ix endIndex) extend(c chain, spans []span, used []bool) chain {
	for !c.closed() {
		e, ok := ix.nearest(c.end(), spans, used)
		if !ok {
			return c
		}
		used[e/2] = true
		s := spans[e/2]
		if e%2 == 1 {
			s = s.reversed()
		}
		c = append(c, s)
	}
	return c
}

func (ix endIndex) nearest(p geom.Vec, spans []span, used []bool) (end int, ok bool) {
	at, best := cell(p), joinGap
	for dx := int64(-1); dx <= 1; dx++ {
		for dy := int64(-1); dy <= 1; dy++ {
			k := [2]int64{at[0] + dx, at[1] + dy}
			live := ix[k][:0]
			for _, e := range ix[k] {
				if used[e/2] {
					continue
				}
				live = append(live, e)
				q := spans[e/2].a
				if e%2 == 1 {
					q = spans[e/2].b
				}
				if d := q.Dist(p); d <= best && (d < best || !ok || e < end) {
					best, end, ok = d, e, true
				}
			}
			if len(live) > 0 || len(ix[k]) > 0 {
				ix[k] = live
			}
		}
	}
	return end, ok
}

// nest sorts closed chains into outlines and the holes directly in them; what
// lies inside a hole is an outline again.
func nest(chains []chain, n *notes) ([]Loop, error) {
	if len(chains) > maxLoops {
		return nil, fail(0, "the drawing has more than %d closed outlines: save only those needed", maxLoops)
	}
	shapes := make([]shape, 0, len(chains))
	for _, c := range chains {
		s := newShape(c)
		if s.area < minArea {
			n.count("dropped %d outline(s) of less than 1 mm2")
			continue
		}
		shapes = append(shapes, s)
	}
	sort.SliceStable(shapes, func(i, j int) bool { return shapes[i].area > shapes[j].area })
	for i := range shapes {
		for j := i - 1; j >= 0; j-- { // the smallest larger one that holds it
			if shapes[j].holds(shapes[i]) {
				shapes[i].parent, shapes[i].level = j, shapes[j].level+1
				break
			}
		}
	}
	var loops []Loop
	place := make([]int, len(shapes))
	for i, s := range shapes {
		if s.level%2 == 0 {
			place[i] = len(loops)
			loops = append(loops, Loop{
				Nodes: nodes(s.chain), Area: s.area, Perimeter: s.length, Centroid: s.first,
			})
			continue
		}
		l := &loops[place[s.parent]]
		l.Holes = append(l.Holes, nodes(s.chain.reversed()))
		l.Centroid = l.Centroid.Sub(s.first)
		l.Area -= s.area
	}
	for i := range loops { // Centroid held the first moments so far
		loops[i].Centroid = loops[i].Centroid.Mul(1 / loops[i].Area)
	}
	return loops, nil
}

const minArea = 1.0 // mm2

// shape is a closed chain, counter-clockwise, with its measures.
type shape struct {
	chain         chain
	area, length  float64
	first         geom.Vec // first moments of area
	flat          geom.Loop
	box           geom.Box
	parent, level int
}

func newShape(c chain) shape {
	s := shape{chain: c, parent: -1}
	for _, p := range c {
		a, f, l := p.moments()
		s.area += a
		s.first = s.first.Add(f)
		s.length += l
	}
	if s.area < 0 {
		s.area, s.first, s.chain = -s.area, s.first.Mul(-1), c.reversed()
	}
	for _, p := range s.chain {
		k := 1
		if p.kind != line {
			k = 16
		}
		for i := range k {
			s.flat = append(s.flat, p.at(float64(i)/float64(k)))
		}
	}
	s.box = s.flat.Bounds()
	return s
}

// holds reports whether most of a few points of t lie inside s.
func (s shape) holds(t shape) bool {
	if !s.box.Contains(t.box.Min) || !s.box.Contains(t.box.Max) {
		return false
	}
	in, step := 0, max(1, len(t.flat)/7)
	count := 0
	for i := 0; i < len(t.flat); i += step {
		count++
		if s.flat.Contains(t.flat[i]) {
			in++
		}
	}
	return 2*in > count
}
