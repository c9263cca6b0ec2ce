package picture

import (
	"math"
	"sync"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/slab"
)

// Set is a top with everything about it, ready for its pictures: fields,
// meshes, materials and lights. It never changes; any number of pictures may be
// taken of it at once.
type Set struct {
	solid  slab.Solid
	bounds geom.Box
	body   *body
	height float64 // of what stands on the face
	flip   bool    // the key light comes from the right
	walls  [3]bool // on the left, the right and the back
	room   *scene
	table  *scene
	// stand is what stands on and below the top, but no beaker.
	stand func() *bvh
}

// SetOptions say what stands about the top.
type SetOptions struct {
	Draft  bool // coarser fields, for a first picture
	Bare   bool // no furniture below and no beaker
	NoTaps bool
}

// scene is what rays meet, under one rig of lights.
type scene struct {
	body     *body
	concrete *concrete
	mesh     *bvh
	planes   []plane
	rig      rig
	key      v3 // toward the key light
	// Planes and cabinet of a scene that a top is cut out of are not seen, but
	// catch the top's shadow: alone is that scene without a cabinet, empty
	// without the top either.
	alone, empty *scene
}

// plane is an endless wall or floor, seen from the side that n points to.
type plane struct {
	n v3
	d float64
	m materialID
}

// hit is where a ray meets the scene.
type hit struct {
	t       float64
	p, n    v3 // n faces the ray
	m       materialID
	channel int // of resin
}

// Build makes the set of a design; s is its solid. A design without an outline
// gives an empty set that shows a bare floor.
func Build(d design.Design, s slab.Solid, opt SetOptions) *Set {
	set := &Set{solid: s, bounds: s.Outline.Bounds()}
	if len(s.Outline) < 3 || len(s.Sides) == 0 || !(s.Thickness > 0) {
		return set.empty(d)
	}
	step := 1.0
	if opt.Draft {
		step = 2
	}
	set.body = newBody(s, step)
	c := newConcrete(d.Finish)
	for i, b := range s.Beds {
		if i < len(d.Glass) && len(b.Loops) > 0 {
			c.beds = append(c.beds, newBed(b, d.Glass[i], set.body))
		}
	}
	parts := append(basins(d, s), voids(s)...)
	if !opt.NoTaps {
		parts = append(parts, taps(s)...)
	}
	for i := range parts {
		set.height = max(set.height, parts[i].a.Z-s.Thickness)
	}
	walls := wallSides(s)
	set.flip = walls[0] && !walls[1]
	set.walls = walls
	stand := append([]triangle(nil), parts...)
	below := furniture(s, walls[0] || walls[1] || walls[2])
	if !opt.Bare {
		stand = append(stand, below...)
		if p, ok := set.beakerSpot(); ok {
			stand = append(stand, beaker(v3{p.X, p.Y, s.Thickness})...)
			set.height = max(set.height, 111)
		}
	}
	var wg sync.WaitGroup
	var all, bare *bvh
	wg.Go(func() { all = newBVH(stand) })
	held := append(append([]triangle(nil), parts...), below...)
	wg.Go(func() { bare = newBVH(parts) })
	set.stand = sync.OnceValue(func() *bvh { return newBVH(held) })
	wg.Wait()
	set.room = &scene{body: set.body, concrete: c, mesh: all}
	set.table = &scene{body: set.body, concrete: c, mesh: bare}
	set.lightRoom(walls)
	set.lightTable()
	return set
}

// empty is the set of a design that has no top yet.
func (s *Set) empty(d design.Design) *Set {
	s.bounds = geom.Box{Max: geom.Vec{X: 1000, Y: 500}}
	l := geom.Loop{{X: -1e4, Y: -1e4}, {X: -1e4 + 1, Y: -1e4}, {X: -1e4, Y: -1e4 + 1}}
	s.body = &body{t: 1, outline: newField(nil, s.bounds, 50), openings: newField(nil, s.bounds, 50),
		lo: v3{l[0].X, l[0].Y, 0}, hi: v3{l[0].X, l[0].Y, 1}, edges: []edgeShape{{}}}
	s.body.class = make([]uint8, len(s.body.outline.d))
	s.room = &scene{body: s.body, concrete: newConcrete(d.Finish), mesh: newBVH(nil)}
	s.table = &scene{body: s.body, concrete: s.room.concrete, mesh: s.room.mesh}
	s.stand = func() *bvh { return s.room.mesh }
	s.lightRoom([3]bool{})
	s.lightTable()
	return s
}

// wallSides says on which sides of the top a wall stands: left, right, back.
func wallSides(s slab.Solid) (w [3]bool) {
	for _, side := range s.Sides {
		if !side.Wall || len(side.Points) < 2 {
			continue
		}
		d := side.Points[len(side.Points)-1].Sub(side.Points[0])
		switch n := d.Left().Mul(-1); { // outward
		case n.Y > math.Abs(n.X):
			w[2] = true
		case n.X < -math.Abs(n.Y):
			w[0] = true
		case n.X > math.Abs(n.Y):
			w[1] = true
		}
	}
	return w
}

// lightRoom sets the softboxes, the studio, walls and floor of the views from
// the side.
func (s *Set) lightRoom(walls [3]bool) {
	g := s.room
	g.planes = s.roomPlanes(walls)
	g.rig = s.studio()
	s.level(g)
}

// roomPlanes is the floor and the walls.
func (s *Set) roomPlanes(walls [3]bool) []plane {
	b := s.bounds
	out := []plane{{v3{Z: 1}, s.body.t - floorBelow, matFloor}}
	back := b.Max.Y
	if !walls[2] {
		back += 700
	}
	out = append(out, plane{v3{Y: -1}, -back, matWall})
	if walls[0] {
		out = append(out, plane{v3{X: 1}, b.Min.X, matWall})
	}
	if walls[1] {
		out = append(out, plane{v3{X: -1}, -b.Max.X, matWall})
	}
	return out
}

// studio is the lights of the views from the side. They keep their angles about
// tops of any size.
func (s *Set) studio() rig {
	b, t := s.bounds, s.body.t
	mid := b.Centre()
	k := max(0.75, max(b.W(), 1.6*b.H())/1250)
	side := 1.0
	if s.flip {
		side = -1
	}
	target := v3{mid.X, mid.Y, t}
	at := func(x, y, z float64) v3 { return v3{mid.X + side*x*k, mid.Y + y*k, t + z*k} }
	return rig{low: 0.36, top: 0.57, tilt: 0.22, glow: 2.4, lights: []softbox{
		newSoftbox(at(-1150, -620, 1150), target, 1100*k, 900*k, v3{12, 11.8, 11.4}),
		newSoftbox(at(760, 60, 1350), target, 1500*k, 420*k, v3{5.3, 5.4, 5.6}),
	}}
}

// lightTable sets another rig for the view straight down, where a lamp overhead
// would show its edge: two softboxes at 45 degrees and a pale table.
func (s *Set) lightTable() {
	b, t := s.bounds, s.body.t
	mid := b.Centre()
	low := -60.0
	for i := range s.table.mesh.tris {
		low = min(low, s.table.mesh.tris[i].a.Z-30)
	}
	g := s.table
	g.planes = append(g.planes, plane{v3{Z: 1}, low, matTable})
	k := max(0.75, max(b.W(), b.H())/1250)
	target := v3{mid.X, mid.Y, t}
	at := func(x, y, z float64) v3 { return v3{mid.X + x*k, mid.Y + y*k, t + z*k} }
	g.rig = rig{low: 0.42, top: 0.60, lights: []softbox{
		newSoftbox(at(-1000, 1200, 1500), target, 1100*k, 900*k, v3{11, 10.9, 10.6}),
		newSoftbox(at(1500, -300, 1450), target, 900*k, 900*k, v3{3.6, 3.7, 3.8}),
	}}
	s.level(g)
}

// level makes the light so bright that the mean irradiance over pi on the open
// face is 1: then a matt face has the brightness of its colour.
func (s *Set) level(g *scene) {
	g.key = g.rig.lights[0].c.sub(v3{s.bounds.Centre().X, s.bounds.Centre().Y, s.body.t}).unit()
	sum, n := 0.0, 0
	for i := range 12 {
		for j := range 8 {
			p := v3{s.bounds.Min.X + s.bounds.W()*(float64(i)+0.5)/12, s.bounds.Min.Y + s.bounds.H()*(float64(j)+0.5)/8, s.body.t}
			if s.body.kind(p.X, p.Y) == classMixed {
				continue
			}
			rnd := source{seed: hash4(uint32(i), uint32(j), 17, 29)}
			d, _ := g.gather(p, v3{Z: 1}, -1, 12, &rnd)
			sum += d.luma()
			n++
		}
	}
	if n == 0 {
		sum, n = g.rig.open(v3{s.bounds.Centre().X, s.bounds.Centre().Y, s.body.t}, v3{Z: 1}).luma(), 1
	}
	if sum > 0 {
		g.rig.scale(float64(n) / sum)
	}
}

const far = 1e5

// hit finds the nearest thing on a ray.
func (s *scene) hit(r ray) (hit, bool) {
	h := hit{t: far, channel: -1}
	found := false
	for i := range s.planes {
		pl := &s.planes[i]
		if k := r.d.dot(pl.n); k < -1e-9 {
			if t := (pl.d - r.o.dot(pl.n)) / k; t > 0 && t < h.t {
				if pl.m == matGround && s.body != nil {
					if p := r.at(t); s.body.openings.at(p.X, p.Y) < 0 {
						continue // through a cut-out one sees the bowl
					}
				}
				h.t, h.n, h.m, found = t, pl.n, pl.m, true
			}
		}
	}
	t, onBody := 0.0, false
	if s.body != nil {
		t, onBody = s.body.hit(r, h.t)
	}
	if onBody {
		h.t, found = t, true
	}
	if m, ok := s.mesh.hit(r, h.t); ok {
		h.t, h.n, h.m = m.t, s.mesh.normal(m), s.mesh.tris[m.tri].material
		if g := s.mesh.tris[m.tri].face(); g.dot(r.d)*g.dot(h.n) > 0 {
			h.n = h.n.mul(-1)
		}
		// Where the smooth normal turns from the eye, take the edge of sight.
		h.p, h.n = r.at(m.t), facing(h.n, r.d)
		return h, true
	}
	h.p = r.at(h.t)
	if !onBody {
		return h, found
	}
	h.m = matConcrete
	switch class := s.body.kind(h.p.X, h.p.Y); {
	case class == classMixed || h.p.Z < s.body.t-0.05:
		h.n = facing(s.body.normal(h.p), r.d)
		if h.channel = s.body.resinAt(h.p); h.channel >= 0 {
			h.m = matResin
		}
	case class >= classChannel:
		h.n, h.m, h.channel = v3{Z: 1}, matResin, int(class-classChannel)
	default:
		h.n = v3{Z: 1}
	}
	return h, true
}

// blocked reports whether the top, its basins or furniture stand on a ray before
// limit. Walls and floor hide no light.
func (s *scene) blocked(r ray, limit float64) bool {
	if s.mesh.blocked(r, limit) {
		return true
	}
	if s.body == nil {
		return false
	}
	_, ok := s.body.hit(r, limit)
	return ok
}

// off is where a ray may leave a surface without meeting it again at once.
func off(p, n v3) v3 { return p.along(n, 0.05) }
