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
	solid    slab.Solid
	bounds   geom.Box
	body     *body
	concrete *concrete
	height   float64 // of what stands on the face
	flip     bool    // the key light comes from the right
	walls    [3]bool // on the left, the right and the back
	// Made when they are asked for first: the views from the side, the view
	// straight down, and the things of a top that is cut out, alone and with
	// what it stands on.
	room, table  func() *scene
	alone, stand func() *things
}

// SetOptions say what stands about the top.
type SetOptions struct {
	Draft  bool // coarser fields, for a first picture
	Bare   bool // no furniture below and no beaker
	NoTaps bool
	NoWall bool // walls at wall edges are left out
	Below  Below
}

// Build makes the set of a design; s is its solid. A design without an outline
// gives an empty set that shows a bare floor.
func Build(d design.Design, s slab.Solid, opt SetOptions) *Set {
	set := &Set{solid: s, bounds: s.Outline.Bounds(), concrete: newConcrete(d.Finish)}
	var parts, below, extra []triangle
	if len(s.Outline) < 3 || len(s.Sides) == 0 || !(s.Thickness > 0) {
		set.bounds = geom.Box{Max: geom.Vec{X: 1000, Y: 500}}
		set.body = noBody(set.bounds)
	} else {
		step := 1.0
		if opt.Draft {
			step = 2
		}
		set.body = newBody(s, step)
		for i, b := range s.Beds {
			if i < len(d.Glass) && len(b.Loops) > 0 {
				set.concrete.beds = append(set.concrete.beds, newBed(b, d.Glass[i], set.body, set.concrete.base))
			}
		}
		parts = append(basins(d, s), voids(s)...)
		if !opt.NoTaps {
			parts = append(parts, taps(s)...)
		}
		for i := range parts {
			set.height = max(set.height, parts[i].a.Z-s.Thickness)
		}
		walls := wallSides(s)
		set.flip = walls[0] && !walls[1]
		below = set.below(opt.Below)
		if !opt.NoWall {
			set.walls = walls
		}
		if p, ok := set.beakerSpot(); ok && !opt.Bare {
			extra = beaker(v3{p.X, p.Y, s.Thickness})
			set.height = max(set.height, 111)
		}
	}
	set.alone = sync.OnceValue(func() *things { return newThings(set.body.t, parts) })
	set.stand = sync.OnceValue(func() *things { return newThings(set.body.t, parts, below) })
	set.room = sync.OnceValue(func() *scene {
		if opt.Bare {
			below = nil
		}
		return set.lightRoom(newThings(set.body.t, parts, below, extra))
	})
	set.table = sync.OnceValue(set.lightTable)
	return set
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

// lightRoom is the scene of the views from the side.
func (s *Set) lightRoom(mesh *things) *scene {
	g := &scene{body: s.body, concrete: s.concrete, mesh: mesh, planes: s.roomPlanes(), rig: s.studio()}
	s.level(g)
	return g
}

// roomPlanes is the floor and the walls.
func (s *Set) roomPlanes() []plane {
	b, walls := s.bounds, s.walls
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

// lightTable is the scene of the view straight down, with another rig, for a
// lamp overhead would show its edge: two softboxes at 45 degrees and a pale
// table.
func (s *Set) lightTable() *scene {
	b, t := s.bounds, s.body.t
	mid := b.Centre()
	g := &scene{body: s.body, concrete: s.concrete, mesh: s.alone()}
	g.planes = []plane{{v3{Z: 1}, min(-60, g.mesh.bottom-30), matTable}}
	k := max(0.75, max(b.W(), b.H())/1250)
	target := v3{mid.X, mid.Y, t}
	at := func(x, y, z float64) v3 { return v3{mid.X + x*k, mid.Y + y*k, t + z*k} }
	g.rig = rig{low: 0.42, top: 0.60, lights: []softbox{
		newSoftbox(at(-2000, 2400, 3000), target, 2200*k, 1800*k, v3{11, 10.9, 10.6}),
		newSoftbox(at(3000, -600, 2900), target, 1800*k, 1800*k, v3{3.6, 3.7, 3.8}),
	}}
	s.level(g)
	return g
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
			d, _ := g.gather(p, v3{Z: 1}, -1, 40, &rnd)
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
	mid := v3{s.bounds.Centre().X, s.bounds.Centre().Y, s.body.t}
	key := g.rig.lights[0].l.mul(g.rig.lights[0].share(mid, v3{Z: 1}))
	g.keyShare = key.luma() / max(1e-6, g.rig.open(mid, v3{Z: 1}).luma())
}
