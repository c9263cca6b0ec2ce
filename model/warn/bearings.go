package warn

import (
	"math"
	"slices"

	"example.org/castwright/model/geom"
	"example.org/castwright/model/slab"
)

// edge is one straight piece of a bearing's rim under the top.
type edge struct {
	a, b   geom.Vec
	corner [2]geom.Vec // outward normals of the neighbours at a and b
	square [2]bool     // whether the rim turns at a and b by about a right angle
	normal geom.Vec    // outward
	rim    *chain      // that it is a piece of
}

// bearings are the rims of the supports, as far as they lie under the top.
type bearings struct {
	top     *check
	edges   []edge
	bridges []edge // lines between bearings
	rims    []*chain
	hull    []geom.Vec // of what carries the top
	fan     fan        // scratch
}

// newBearings cuts the bearings off at the outline and joins what is no farther
// apart than most, mm; nil when none is left.
func newBearings(c *check, most float64) *bearings {
	b := &bearings{top: c}
	for _, s := range c.s.Bearings {
		for _, l := range rims(s) {
			rim := newChain(l)
			if rim == nil {
				continue
			}
			b.rims = append(b.rims, rim)
			for i := range rim.pts {
				b.addEdge(rim, i)
			}
		}
	}
	var carried []geom.Vec
	for _, e := range b.edges {
		carried = append(carried, e.a, e.b)
	}
	for _, p := range c.outline.pts {
		if b.on(p) {
			carried = append(carried, p)
		}
	}
	if len(carried) == 0 {
		return nil
	}
	b.hull = hull(carried)
	b.join(most)
	return b
}

// How many corners of bearings are joined with each other, of one bearing and
// in all: their pairs grow with the square. A cabinet has 10 to 40; of a bearing
// drawn round, a dozen of its corners stand for all.
const (
	joinedOfOne = 12
	joinedInAll = 100
)

// corners gives the corners of the bearings that are joined.
func (b *bearings) corners() []geom.Vec {
	var all []geom.Vec
	for from := 0; from < len(b.edges); {
		to := from
		for to < len(b.edges) && b.edges[to].rim == b.edges[from].rim {
			to++
		}
		stride := 1 + (to-from-1)/joinedOfOne
		for i := from; i < to; i += stride {
			for _, p := range [...]geom.Vec{b.edges[i].a, b.edges[i].b} {
				if !slices.Contains(all, p) && len(all) < joinedInAll {
					all = append(all, p)
				}
			}
		}
		from = to
	}
	return all
}

// join adds the lines over concrete, no longer than most, between corners of
// the bearings.
func (b *bearings) join(most float64) {
	corners := b.corners()
	for i, p := range corners {
		for _, q := range corners[:i] {
			d := apart(p, q)
			mid := p.Lerp(q, 0.5)
			if d > most || d <= near || b.on(mid) || !b.top.under(mid) {
				continue
			}
			// A corner may lie on the outline; start a hair along the line.
			if b.top.clear(p.Lerp(q, near/d), q) {
				b.bridges = append(b.bridges, edge{a: p, b: q})
			}
		}
	}
}

// rims gives a bearing's loops, counter-clockwise.
func rims(s slab.Bearing) []geom.Loop {
	loops := slices.Clone(s.Loops)
	for i, l := range loops {
		if l.Area() < 0 {
			loops[i] = l.Reversed()
		}
	}
	return loops
}

// addEdge adds the parts of segment i of a rim that lie under the top.
func (b *bearings) addEdge(rim *chain, i int) {
	n := len(rim.pts)
	p, q := rim.seg(i)
	before, _ := rim.seg((i + n - 1) % n)
	_, after := rim.seg((i + 1) % n)
	out := func(u, v geom.Vec) geom.Vec { return v.Sub(u).Left().Unit().Mul(-1) }
	whole := edge{a: p, b: q, normal: out(p, q)}
	whole.corner = [2]geom.Vec{out(before, p), out(q, after)}
	for k := range 2 {
		// Between 45 and 135 degrees; a pointed or a round rim has no square.
		whole.square[k] = whole.corner[k] != geom.Vec{} &&
			math.Abs(whole.normal.Dot(whole.corner[k])) < math.Sqrt2/2
	}
	if apart(p, q) == 0 {
		return
	}
	ts := b.top.outline.crossings(p, q, []float64{0, 1})
	slices.Sort(ts)
	for k := 1; k < len(ts); k++ {
		part := whole
		part.a, part.b = p.Lerp(q, ts[k-1]), p.Lerp(q, ts[k])
		part.square[0] = whole.square[0] && ts[k-1] == 0
		part.square[1] = whole.square[1] && ts[k] == 1
		if part.a != part.b && b.top.under(part.a.Lerp(part.b, 0.5)) {
			b.edges = append(b.edges, part)
		}
	}
}

// under reports whether p lies within the outline or on it.
func (c *check) under(p geom.Vec) bool {
	if c.outline.contains(p) {
		return true
	}
	_, near := c.outline.fromSegment(p, p, near)
	return near
}

// on reports whether p lies on a bearing.
func (b *bearings) on(p geom.Vec) bool {
	for _, r := range b.rims {
		if r.contains(p) {
			return true
		}
	}
	return false
}

// reach is the distance from p to a foot on the edge, square to the bearing, and
// the direction in which it is measured, away from the bearing.
func (e edge) reach(p, foot geom.Vec) (float64, geom.Vec) {
	v := p.Sub(foot)
	for k, end := range [2]geom.Vec{e.a, e.b} {
		if foot != end || !e.square[k] {
			continue
		}
		d, away := v.Dot(e.normal), e.normal
		if other := v.Dot(e.corner[k]); other > d {
			d, away = other, e.corner[k]
		}
		return d, away
	}
	return math.Sqrt(v.Dot(v)), v.Unit()
}
