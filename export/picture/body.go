package picture

import (
	"math"
	"sync"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/slab"
)

// body is the concrete as a signed distance in space: the twin of the slab's
// Section(z). It is the outline's distance bent by the nearest edge's profile,
// less the openings and the channels.
type body struct {
	t        float64
	outline  *field
	edges    []edgeShape // by segment of the outline
	openings *field
	rims     []edgeShape // by segment of the openings
	channels []channel
	lo, hi   v3 // box that holds the body
	rough    bool
	broken   *strip    // nil when no edge is rough
	bulges   bool      // some resin stands above the concrete's shape
	top      float64   // the highest place of it, t without a coat
	segs     []segment // of the outline
	way      []float64 // along the outline at each one's start
	class    []uint8   // by cell of the outline's field
	plan     []planNode
}

// edgeShape is one profile, ready to bend a distance.
type edgeShape struct {
	kind design.ProfileKind
	r    float64
	wall bool // it stands at a wall
}

// Classes of cells, so that most rays need no march.
const (
	classMixed   uint8 = iota
	classFlat          // the face is flat concrete here
	classChannel       // and above: the level top of filled channel class - classChannel
)

// How near a march comes to the skin, in mm: for what is seen, and for light on
// its way.
const (
	seenNear = 0.004
	wayNear  = 0.012
	maxSteps = 200
)

// newBody builds the fields of a solid with the given grid step.
func newBody(s slab.Solid, step float64) *body {
	b := &body{t: s.Thickness, top: s.Thickness}
	bounds := s.Outline.Bounds()
	grid := bounds.Grow(24)
	var loop geom.Loop
	way := 0.0
	for _, side := range s.Sides {
		e := shapeOf(side.Profile, s.Thickness)
		if side.Wall {
			e = edgeShape{kind: design.ProfileSquare, r: 0.5, wall: true}
		}
		b.rough = b.rough || e.kind == design.ProfileRough
		for i := 0; i+1 < len(side.Points); i++ {
			loop = append(loop, side.Points[i])
			b.segs = append(b.segs, segment{side.Points[i], side.Points[i+1]})
			b.way = append(b.way, way)
			way += side.Points[i].Dist(side.Points[i+1])
			b.edges = append(b.edges, e)
		}
	}
	var holes []geom.Loop
	for _, o := range s.Openings {
		holes = append(holes, o.Loop)
		for range o.Loop {
			b.rims = append(b.rims, shapeOf(o.Profile, s.Thickness))
		}
	}
	plans := make([]*field, len(s.Recesses))
	var wg sync.WaitGroup
	wg.Go(func() { b.outline = newField([]geom.Loop{loop}, grid, step) })
	wg.Go(func() { b.openings = newField(holes, grid, step) })
	for i, r := range s.Recesses {
		if len(r.Loops) > 0 && r.Depth > 0 {
			wg.Go(func() { plans[i] = newField(r.Loops, grid, step) })
		}
	}
	if b.rough {
		b.broken = newStrip(loop, b.edges, b.t, 0.7*step)
	}
	wg.Wait()
	b.interleave()
	for i, r := range s.Recesses {
		if plans[i] != nil {
			c := newChannel(r, b, plans[i])
			b.bulges = b.bulges || c.bulges()
			b.top = max(b.top, b.t+c.coat)
			b.channels = append(b.channels, c)
		}
	}
	b.lo = v3{bounds.Min.X - 8, bounds.Min.Y - 8, 0}
	if b.bulges {
		b.lo.Z = -8 // drops hang from the lower end
	}
	b.hi = v3{bounds.Max.X + 8, bounds.Max.Y + 8, b.top}
	b.classify()
	return b
}

// noBody is the body of a design that has no top yet: it lies out of sight.
func noBody(bounds geom.Box) *body {
	b := &body{t: 1, top: 1, segs: []segment{{}}, way: []float64{0}, outline: newField(nil, bounds, 50), openings: newField(nil, bounds, 50),
		lo: v3{-1e4, -1e4, 0}, hi: v3{-1e4 + 1, -1e4 + 1, 1}, edges: []edgeShape{{}}}
	b.class = make([]uint8, len(b.outline.d))
	b.interleave()
	return b
}

func shapeOf(p design.Profile, t float64) edgeShape {
	e := edgeShape{kind: p.Kind, r: p.Size.MM()}
	switch p.Kind {
	case design.ProfileSquare:
		// No cast arris is quite sharp; this much catches the light.
		e.r = 0.8
	case design.ProfileHalfRound:
		if e.r == 0 {
			e.r = t / 2
		}
	case design.ProfileFullRound:
		e.r = t / 2
	case design.ProfileRough:
		e.r = 1.5
	}
	e.r = min(max(e.r, 0.3), t)
	return e
}

// reach is how far in from the edge the profile bends the face.
func (e *edgeShape) reach() float64 {
	if e.kind == design.ProfileRough {
		return brokenReach
	}
	return e.r + 0.5
}

// bend is the signed distance to a slab that ends where d is 0, by its profile;
// h is the height above the face, t the thickness.
func (e *edgeShape) bend(d, h, t float64) float64 {
	slab := max(h, -h-t)
	switch e.kind {
	case design.ProfileBevelled:
		return max(max(d, slab), (d+h+e.r)*math.Sqrt2/2)
	case design.ProfileFullRound:
		if d+e.r > 0 {
			return math.Sqrt((d+e.r)*(d+e.r)+(h+e.r)*(h+e.r)) - e.r
		}
		return slab
	}
	if d+e.r > 0 && h+e.r > 0 {
		return max(math.Sqrt((d+e.r)*(d+e.r)+(h+e.r)*(h+e.r))-e.r, -h-t)
	}
	return max(d, slab)
}

// planNode is what the fields of outline and openings say at a node: one fetch
// for all that a step of a march asks.
type planNode struct {
	d, o        float32 // distances to outline and openings
	near, onear int32   // their nearest segments
}

// interleave packs the fields. All fields of a body share one grid.
func (b *body) interleave() {
	b.plan = make([]planNode, len(b.outline.d))
	for i := range b.plan {
		b.plan[i] = planNode{b.outline.d[i], b.openings.d[i], max(0, b.outline.near[i]), max(0, b.openings.near[i])}
	}
}

// about is what the plan says at a spot: distances to outline and openings and
// the node by it.
func (b *body) about(g spot) (d, o float64, node *planNode) {
	lo, hi := b.plan[g.k:g.k+2:g.k+2], b.plan[g.k+b.outline.nx:g.k+b.outline.nx+2:g.k+b.outline.nx+2]
	a, c := float64(lo[0].d), float64(hi[0].d)
	a += (float64(lo[1].d) - a) * g.u
	c += (float64(hi[1].d) - c) * g.u
	d = a + (c-a)*g.v
	a, c = float64(lo[0].o), float64(hi[0].o)
	a += (float64(lo[1].o) - a) * g.u
	c += (float64(hi[1].o) - c) * g.u
	o = a + (c-a)*g.v
	i := 0
	if g.u > 0.5 {
		i = 1
	}
	if g.v > 0.5 {
		return d, o, &hi[i]
	}
	return d, o, &lo[i]
}

// edge is the outline's distance d at p, moved in where the edge is broken, and
// the profile that bends it; k is how far a march may trust it. near is the
// nearest segment.
func (b *body) edge(p v3, d float64, near int32) (float64, *edgeShape, float64) {
	e := &b.edges[near]
	if e.kind == design.ProfileRough && d > -brokenReach && d < brokenReach {
		return d + b.broken.at(p, near), e, 0.6
	}
	return d, e, 1
}

// solid is the distance to the top before channels are taken out, at p over the
// spot g of the plan.
func (b *body) solid(p v3, g spot) float64 {
	h := p.Z - b.t
	d, o, node := b.about(g)
	d, e, k := b.edge(p, d, node.near)
	f := e.bend(d, h, b.t) * k
	if o < 40 {
		f = max(f, b.rims[node.onear].bend(-o, h, b.t))
	}
	return f
}

// at is the distance to the concrete.
func (b *body) at(p v3) float64 {
	g := b.outline.spot(p.X, p.Y)
	f := b.solid(p, g)
	for i := range b.channels {
		if d := b.channels[i].at(b, p, g); -d > f {
			f = -d
		}
	}
	return f
}

// skin is the distance to what is seen from outside: concrete, with resin where
// a channel is filled.
func (b *body) skin(p v3) float64 {
	g := b.outline.spot(p.X, p.Y)
	f := b.solid(p, g)
	for i := range b.channels {
		c := &b.channels[i]
		if c.filled {
			if c.bulges() && p.Z < b.top+12 {
				f = c.risen(b, p, g, f)
			}
		} else if d := c.at(b, p, g); -d > f {
			f = -d
		}
	}
	return f
}

// resinAt is the filled channel whose resin is at a place of the skin, or -1.
func (b *body) resinAt(p v3) int {
	g := b.outline.spot(p.X, p.Y)
	for i := range b.channels {
		c := &b.channels[i]
		if c.filled && c.plan.in(g) < 0 && (c.falls || p.Z > b.t-c.depth) {
			return i
		}
	}
	return -1
}

// classify finds the cells over which the face is flat.
func (b *body) classify() {
	f := b.outline
	b.class = make([]uint8, len(f.d))
	far := 2 * f.step
	for j := range f.ny - 1 {
		for i := range f.nx - 1 {
			k := j*f.nx + i
			e := &b.edges[max(0, f.near[k])]
			if float64(f.d[k]) > -e.reach()-far {
				continue
			}
			if len(b.rims) > 0 && float64(b.openings.d[k]) < 3+b.rims[max(0, b.openings.near[k])].reach()+far {
				continue
			}
			class := classFlat
			for c := range b.channels {
				if d := float64(b.channels[c].plan.d[k]); d <= far {
					class = classMixed
					if d < -far-b.channels[c].rim() && b.channels[c].filled && c < 250 && !(b.channels[c].falls && float64(f.d[k]) > -3*b.t) {
						class = classChannel + uint8(c)
					}
					break
				}
			}
			b.class[k] = class
		}
	}
}

// kind is the class of the cell at a place.
func (b *body) kind(x, y float64) uint8 {
	return b.class[b.outline.spot(x, y).k]
}

// clip is the part of a ray within the body's box.
func (b *body) clip(r ray) (in, out float64, ok bool) {
	in, out = 0, math.Inf(1)
	for k := range 3 {
		lo, hi, o, d := axis(b.lo, k)-1, axis(b.hi, k)+1, axis(r.o, k), axis(r.d, k)
		if d == 0 {
			if o < lo || o > hi {
				return 0, 0, false
			}
			continue
		}
		t0, t1 := (lo-o)/d, (hi-o)/d
		in, out = max(in, min(t0, t1)), min(out, max(t0, t1))
	}
	return in, out, in <= out
}

// hit finds where a ray from outside comes as near as near to the skin, before
// limit.
func (b *body) hit(r ray, limit, near float64) (float64, bool) {
	if r.d.Z > 0 && r.o.Z > b.top-0.02 {
		return 0, false // nothing of it stands above
	}
	above := 0.0
	if r.d.Z < 0 && r.o.Z > b.top {
		above = (b.top - r.o.Z) / r.d.Z
		if t, ok := b.level(&r, above); ok {
			return t, t < limit
		}
	}
	in, out, ok := b.clip(r)
	if !ok || in > limit {
		return 0, false
	}
	in = max(in, above-40)
	return b.march(r, in, min(out, limit), near)
}

// level finds where a ray meets a level part of the top, from above; t is where
// it comes as low as the highest of them.
func (b *body) level(r *ray, t float64) (float64, bool) {
	p := r.at(t)
	k := b.kind(p.X, p.Y)
	if k == classMixed {
		return 0, false
	}
	h := b.t
	if k >= classChannel {
		h += b.channels[k-classChannel].coat
	}
	if h == b.top {
		return t, true
	}
	// Lower ones: where the way there is short, nothing else stands in it.
	t = (h - r.o.Z) / r.d.Z
	q := r.at(t)
	short := 2 * b.outline.step
	return t, math.Abs(q.X-p.X) < short && math.Abs(q.Y-p.Y) < short && b.kind(q.X, q.Y) == k
}

// march steps along a ray by a distance that never overshoots by much; close to the
// skin by how fast that distance falls, as it falls slower than the way where the
// ray comes aslant or resin has risen. Where it has overshot, it halves the way back.
func (b *body) march(r ray, t, end, near float64) (float64, bool) {
	last, d, before := t, 0.0, 0.0
	for range maxSteps {
		d = b.skin(r.at(t))
		if d < near {
			if d < -0.02 {
				lo, hi := last, t
				for hi-lo > 0.008 {
					if m := (lo + hi) / 2; b.skin(r.at(m)) > 0 {
						lo = m
					} else {
						hi = m
					}
				}
				t = lo
			}
			return t, true
		}
		step := d
		if fall := before - d; d < closeBy && fall > 0 {
			step = min(0.97*d*(t-last)/fall, 2.5*d)
		}
		before, last = d, t
		if t += step; t > end {
			return 0, false
		}
	}
	// It glides along the skin: as good as met.
	return t, d < 0.3
}

// closeBy is how near to the skin, in mm, a march looks at how fast it comes nearer.
const closeBy = 4

// normal is the skin's normal at a point on it.
func (b *body) normal(p v3) v3 {
	if p.Z > b.t-0.02 && b.kind(p.X, p.Y) != classMixed {
		return v3{Z: 1}
	}
	return gradient(b.skin, p, 0.25)
}

// gradient is the direction in which a distance grows.
func gradient(at func(v3) float64, p v3, h float64) v3 {
	return v3{
		at(v3{p.X + h, p.Y, p.Z}) - at(v3{p.X - h, p.Y, p.Z}),
		at(v3{p.X, p.Y + h, p.Z}) - at(v3{p.X, p.Y - h, p.Z}),
		at(v3{p.X, p.Y, p.Z + h}) - at(v3{p.X, p.Y, p.Z - h}),
	}.unit()
}
