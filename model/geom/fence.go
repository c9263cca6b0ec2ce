package geom

import (
	"math"
	"slices"
)

// fenceBlock is how many edges share a box. Measured on 300 to 2,000 edges: 8
// and 32 are each slower by about a tenth.
const fenceBlock = 16

// Fence is a set of closed loops to ask about: what lies inside, where a line
// crosses, what is nearest. Boxes about runs of edges keep the answers fast. It
// must not be changed once made, and is safe for concurrent use.
type Fence struct {
	a, b   []Vec // edges
	blocks []Box
	box    Box
}

// NewFence makes a fence of loops. Points that are not finite are left out.
func NewFence(loops ...Loop) *Fence {
	n := 0
	for _, l := range loops {
		n += len(l)
	}
	points := make([]Vec, 2*n)
	f := &Fence{
		a: points[:0:n], b: points[n : n : 2*n], box: EmptyBox(),
		blocks: make([]Box, 0, n/fenceBlock+1),
	}
	for _, l := range loops {
		for i, p := range l {
			if q := l[(i+1)%len(l)]; p.Finite() && q.Finite() {
				f.a, f.b = append(f.a, p), append(f.b, q)
			}
		}
	}
	for i := 0; i < len(f.a); i += fenceBlock {
		box := EmptyBox()
		for k := i; k < min(i+fenceBlock, len(f.a)); k++ {
			box = box.Include(f.a[k]).Include(f.b[k])
		}
		f.blocks = append(f.blocks, box)
		f.box = f.box.Union(box)
	}
	return f
}

// Bounds is the smallest box that holds the fence.
func (f *Fence) Bounds() Box { return f.box }

// block gives the edges of a block, as a range.
func (f *Fence) block(i int) (from, to int) {
	return i * fenceBlock, min((i+1)*fenceBlock, len(f.a))
}

// Contains reports whether p lies inside by the non-zero rule.
func (f *Fence) Contains(p Vec) bool {
	if !f.box.Contains(p) {
		return false
	}
	w := 0
	for i, box := range f.blocks {
		if p.Y < box.Min.Y || p.Y >= box.Max.Y || p.X > box.Max.X {
			continue
		}
		from, to := f.block(i)
		for k := from; k < to; k++ {
			a, b := f.a[k], f.b[k]
			if (a.Y <= p.Y) == (b.Y <= p.Y) {
				continue
			}
			side := b.Sub(a).Cross(p.Sub(a))
			if b.Y > a.Y && side > 0 {
				w++
			} else if b.Y < a.Y && side < 0 {
				w--
			}
		}
	}
	return w != 0
}

// Crossings gives, in order, where the way from a to b meets the fence, as
// fractions of that way. Edges along the way are not met.
func (f *Fence) Crossings(a, b Vec) []float64 {
	var out []float64
	way := EmptyBox().Include(a).Include(b)
	d := b.Sub(a)
	for i, box := range f.blocks {
		if !box.Touches(way) {
			continue
		}
		from, to := f.block(i)
		for k := from; k < to; k++ {
			sa, sb := d.Cross(f.a[k].Sub(a)), d.Cross(f.b[k].Sub(a))
			if (sa <= 0) == (sb <= 0) {
				continue
			}
			e := f.b[k].Sub(f.a[k])
			if t := f.a[k].Sub(a).Cross(e) / d.Cross(e); t >= 0 && t <= 1 {
				out = append(out, t)
			}
		}
	}
	slices.Sort(out)
	return out
}

// Ray gives, in order, the distances from p along the unit vector u at which the
// fence is met.
func (f *Fence) Ray(p, u Vec) []float64 {
	if f.box.Empty() {
		return nil
	}
	far := p.Dist(f.box.Centre()) + f.box.W() + f.box.H()
	out := f.Crossings(p, p.Add(u.Mul(far)))
	for i := range out {
		out[i] *= far
	}
	return out
}

// Nearest is the point of the fence nearest to p and its distance; infinite when
// the fence is empty.
func (f *Fence) Nearest(p Vec) (q Vec, dist float64) {
	return f.nearest(p, math.Inf(1))
}

// NearestFrom is Nearest for who knows that the fence comes as near to p as q, a
// point of the fence: what was nearest to a place beside p is a good guess, and
// most of the fence then needs no look.
func (f *Fence) NearestFrom(q, p Vec) (Vec, float64) {
	if to, dist := f.nearest(p, q.Dist(p)); !math.IsInf(dist, 1) && dist < q.Dist(p) {
		return to, dist
	}
	return q, q.Dist(p)
}

// Near reports whether the fence comes nearer to p than d.
func (f *Fence) Near(p Vec, d float64) bool {
	_, dist := f.nearest(p, d)
	return dist < d
}

// nearest looks for a point of the fence nearer than dist.
func (f *Fence) nearest(p Vec, dist float64) (Vec, float64) {
	var q Vec
	for i, box := range f.blocks {
		if box.distance(p) >= dist {
			continue
		}
		from, to := f.block(i)
		for k := from; k < to; k++ {
			c := NearestOnSegment(p, f.a[k], f.b[k])
			if d := c.Dist(p); d < dist {
				q, dist = c, d
			}
		}
	}
	return q, dist
}

// Clearance is the least distance between two fences with its two ends, p on f
// and q on g: 0 where they cross. A fence within the other is at its distance;
// an empty one is infinitely far.
func (f *Fence) Clearance(g *Fence) (p, q Vec, dist float64) {
	if len(f.a) == 0 || len(g.a) == 0 {
		return Vec{}, Vec{}, math.Inf(1)
	}
	// A first guess, so that most blocks need no look.
	p = f.a[0]
	for range 3 {
		q, _ = g.Nearest(p)
		p, dist = f.Nearest(q)
	}
	f.closer(g, dist, func(x, y Vec, d float64) float64 {
		p, q, dist = x, y, d
		return d
	})
	return p, q, dist
}

// Within reports whether two fences come nearer to each other than d.
func (f *Fence) Within(g *Fence, d float64) bool {
	found := false
	f.closer(g, d, func(Vec, Vec, float64) float64 {
		found = true
		return 0
	})
	return found
}

// closer calls take for pairs of edges that are nearer than the limit; take gives
// the new limit, and 0 ends it.
func (f *Fence) closer(g *Fence, limit float64, take func(x, y Vec, d float64) float64) {
	for i, box := range f.blocks {
		if limit <= 0 {
			return
		}
		if box.apart(g.box) >= limit {
			continue
		}
		i0, i1 := f.block(i)
		for j, other := range g.blocks {
			if box.apart(other) >= limit {
				continue
			}
			j0, j1 := g.block(j)
			for a := i0; a < i1; a++ {
				edge := spanning(f.a[a], f.b[a])
				if edge.apart(other) >= limit {
					continue
				}
				for b := j0; b < j1; b++ {
					if spanning(g.a[b], g.b[b]).apart(edge) >= limit {
						continue
					}
					if x, y, d := segmentClearance(f.a[a], f.b[a], g.a[b], g.b[b]); d < limit {
						limit = take(x, y, d)
					}
				}
			}
		}
	}
}

// spanning is the box of a segment.
func spanning(a, b Vec) Box {
	if a.X > b.X {
		a.X, b.X = b.X, a.X
	}
	if a.Y > b.Y {
		a.Y, b.Y = b.Y, a.Y
	}
	return Box{a, b}
}

// segmentClearance is the least distance of two segments and its ends.
func segmentClearance(a, b, c, d Vec) (p, q Vec, dist float64) {
	u, v := b.Sub(a), d.Sub(c)
	if det := u.Cross(v); det != 0 {
		s, t := c.Sub(a).Cross(v)/det, c.Sub(a).Cross(u)/det
		if s >= 0 && s <= 1 && t >= 0 && t <= 1 {
			x := a.Lerp(b, s)
			return x, x, 0
		}
	}
	dist = math.Inf(1)
	try := func(x, y Vec) {
		if e := x.Dist(y); e < dist {
			p, q, dist = x, y, e
		}
	}
	try(a, NearestOnSegment(a, c, d))
	try(b, NearestOnSegment(b, c, d))
	try(NearestOnSegment(c, a, b), c)
	try(NearestOnSegment(d, a, b), d)
	return p, q, dist
}

// NearestOnSegment is the point nearest to p of the segment from a to b.
func NearestOnSegment(p, a, b Vec) Vec {
	d := b.Sub(a)
	n := d.Dot(d)
	if n == 0 {
		return a
	}
	return a.Add(d.Mul(clamp01(p.Sub(a).Dot(d) / n)))
}

// NearestOnLine is the point of an open polyline nearest to p, its distance and
// the length along the polyline to it.
func NearestOnLine(p Vec, line []Vec) (q Vec, dist, along float64) {
	dist = math.Inf(1)
	if len(line) == 1 {
		return line[0], line[0].Dist(p), 0
	}
	run := 0.0
	for i := 1; i < len(line); i++ {
		c := NearestOnSegment(p, line[i-1], line[i])
		if d := c.Dist(p); d < dist {
			q, dist, along = c, d, run+c.Dist(line[i-1])
		}
		run += line[i].Dist(line[i-1])
	}
	return q, dist, along
}

// Touches reports whether the boxes share a point.
func (b Box) Touches(c Box) bool {
	return b.Min.X <= c.Max.X && c.Min.X <= b.Max.X && b.Min.Y <= c.Max.Y && c.Min.Y <= b.Max.Y
}

// distance is how far p lies outside the box.
func (b Box) distance(p Vec) float64 {
	dx := math.Max(0, math.Max(b.Min.X-p.X, p.X-b.Max.X))
	dy := math.Max(0, math.Max(b.Min.Y-p.Y, p.Y-b.Max.Y))
	return math.Sqrt(dx*dx + dy*dy)
}

// apart is the distance between two boxes.
func (b Box) apart(c Box) float64 {
	if b.Touches(c) {
		return 0
	}
	dx := math.Max(0, math.Max(b.Min.X-c.Max.X, c.Min.X-b.Max.X))
	dy := math.Max(0, math.Max(b.Min.Y-c.Max.Y, c.Min.Y-b.Max.Y))
	return math.Sqrt(dx*dx + dy*dy)
}
