package picture

import (
	"math"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/slab"
)

// ring is one row of a loft: the loop moved in by inset and drawn together
// about its middle by shrink, at a height.
type ring struct{ inset, shrink, z float64 }

// loft stretches a skin over rings of a loop. Rings that go down make it face
// inward.
func loft(l geom.Loop, rings []ring, m materialID) []triangle {
	l = denser(l, 96)
	c := l.Bounds().Centre()
	rows := make([][]v3, len(rings))
	for i, r := range rings {
		rows[i] = make([]v3, len(l))
		for j, q := range inset(l, r.inset) {
			p := c.Add(q.Sub(c).Mul(r.shrink))
			rows[i][j] = v3{p.X, p.Y, r.z}
		}
	}
	return gridMesh(rows, true, m)
}

// denser is a loop with no side longer than a share of its length.
func denser(l geom.Loop, sides int) geom.Loop {
	most := l.Perimeter() / float64(sides)
	if !(most > 0) {
		return l
	}
	var out geom.Loop
	last := geom.Vec{X: math.Inf(1)}
	for i, p := range l {
		q := l[(i+1)%len(l)]
		if p.Dist(last) > most/3 || i == 0 {
			out, last = append(out, p), p
		}
		n := int(p.Dist(q) / most)
		for k := 1; k <= n; k++ {
			last = p.Lerp(q, float64(k)/float64(n+1))
			out = append(out, last)
		}
	}
	return out
}

// inset moves the points of a counter-clockwise loop inward by d along the mean
// of their sides' normals, with mitred corners.
func inset(l geom.Loop, d float64) geom.Loop {
	if d == 0 {
		return l
	}
	out := make(geom.Loop, len(l))
	n := len(l)
	for i, p := range l {
		a := p.Sub(l[(i+n-1)%n]).Unit().Left()
		b := l[(i+1)%n].Sub(p).Unit().Left()
		m := a.Add(b)
		out[i] = p.Add(m.Mul(d / max(0.6, 1+a.Dot(b))))
	}
	return out
}

// hollow is the inside of a bowl below height z, depth deep.
func hollow(from []ring, insetMM, z, depth float64) []ring {
	const n = 16
	for i := 1; i <= n; i++ {
		a := float64(i) / n * math.Pi / 2
		s, c := math.Sincos(a)
		// A superellipse: upright sides, a well-rounded foot, a level bottom.
		from = append(from, ring{insetMM, max(0.02, math.Pow(c, 0.42)), z - depth*math.Pow(s, 0.55)})
	}
	return from
}

// basins are the bowls of a top in place.
func basins(d design.Design, s slab.Solid) []triangle {
	var out []triangle
	sinks := map[design.ID]design.Sink{}
	for _, k := range d.Sinks {
		sinks[k.ID] = k
	}
	for _, b := range s.Bowls {
		k, ok := sinks[b.Part]
		if !ok || len(b.Loop) < 3 {
			continue
		}
		depth := max(40, min(400, k.BowlDepth.MM()))
		low := -depth
		var rings []ring
		switch b.Mount {
		case design.MountUnder:
			rings = hollow([]ring{{-16, 1, 0.6}, {-2, 1, 0.6}, {0, 1, 0.4}, {0.8, 1, -0.4}}, 1.5, -1, depth)
		case design.MountOver:
			t, rim := s.Thickness, max(6, k.Rim.MM())
			low = t - depth
			rings = []ring{{0, 1, t}, {0.3, 1, t + 3}, {1.6, 1, t + 5.6}, {4, 1, t + 7}, {rim * 0.6, 1, t + 7.4},
				{rim * 0.95, 1, t + 7}, {rim + 1.5, 1, t + 5.2}, {rim + 2.6, 1, t + 2}}
			rings = hollow(rings, rim+3, t-1, depth)
		default:
			t := s.Thickness
			h := depth + 10
			low = t + 10
			for i := range 13 {
				a := float64(i) / 12 * math.Pi / 2
				sn, c := math.Sincos(a)
				rings = append(rings, ring{0, 0.60 + 0.40*math.Pow(sn, 0.8), t + h*(1-math.Pow(c, 0.9))})
			}
			rings = append(rings, ring{0.8, 1, t + h + 2.2}, ring{2.6, 1, t + h + 3}, ring{4.4, 1, t + h + 2.2}, ring{5.4, 1, t + h})
			rings = hollow(rings, 6, t+h-1, depth)
		}
		out = append(out, loft(b.Loop, rings, matGlaze)...)
		out = append(out, drain(b.Loop.Bounds().Centre(), low)...)
	}
	return out
}

// drain is the waste's ring and its dark hole in the bottom of a bowl.
func drain(c geom.Vec, z float64) []triangle {
	at := v3{c.X, c.Y, z}
	ring := lathe(at, []geom.Vec{{X: 33, Y: 0.2}, {X: 32.2, Y: 1.6}, {X: 30, Y: 2.4}, {X: 23, Y: 1.6}, {X: 21.5, Y: 0.9}}, 40, matMetal)
	return append(ring, lathe(at, []geom.Vec{{X: 21.6, Y: 0.9}, {X: 0.1, Y: 0.8}}, 24, matDark)...)
}

// voids are dark discs under plain holes: below a top there is no light.
func voids(s slab.Solid) []triangle {
	var out []triangle
	for _, o := range s.Openings {
		if o.Kind == slab.OpeningHole {
			out = append(out, lathe(v3{o.Centre.X, o.Centre.Y, -3}, []geom.Vec{{X: o.Diameter/2 + 3}, {X: 0.1}}, 24, matDark)...)
		}
	}
	return out
}

// taps are plain taps in their holes.
func taps(s slab.Solid) []triangle {
	var out []triangle
	sets := map[design.ID][]slab.Opening{}
	var order []design.ID
	for _, o := range s.Openings {
		if o.Kind == slab.OpeningTap {
			if len(sets[o.Part]) == 0 {
				order = append(order, o.Part)
			}
			sets[o.Part] = append(sets[o.Part], o)
		}
	}
	for _, id := range order {
		holes := sets[id]
		var mid geom.Vec
		for _, h := range holes {
			mid = mid.Add(h.Centre.Mul(1 / float64(len(holes))))
		}
		toward, reach, height := geom.Vec{Y: -1}, 120.0, 150.0
		near := math.Inf(1)
		for _, b := range s.Bowls {
			c := b.Loop.Bounds().Centre()
			if d := c.Dist(mid); d < near && d < 700 && d > 1 {
				near = d
				toward = c.Sub(mid).Unit()
				reach = max(90, min(190, d*0.72))
				if b.Mount == design.MountVessel {
					height = 290
				}
			}
		}
		spout := 0
		for i, h := range holes {
			if h.Centre.Dist(mid) < holes[spout].Centre.Dist(mid)-1e-6 {
				spout = i
			}
		}
		for i, h := range holes {
			r := max(24, h.Diameter/2+5)
			at := v3{h.Centre.X, h.Centre.Y, s.Thickness}
			out = append(out, lathe(at, []geom.Vec{{X: r, Y: 0}, {X: r, Y: 3}, {X: r - 1.5, Y: 5}, {X: 17, Y: 6.5}, {X: 15.5, Y: 9}}, 40, matMetal)...)
			if i == spout {
				out = append(out, swanNeck(at, toward, reach, height)...)
				if len(holes) == 1 {
					out = append(out, lever(at.add(v3{Z: 0.36 * height}), toward.Left().Mul(-1))...)
				}
				continue
			}
			out = append(out, lathe(at, []geom.Vec{{X: 15.5, Y: 8}, {X: 14, Y: 34}, {X: 16, Y: 40}, {X: 16, Y: 52}, {X: 13, Y: 55}, {X: 0.1, Y: 55.5}}, 32, matMetal)...)
			side := h.Centre.Sub(holes[spout].Centre).Unit()
			out = append(out, lever(at.add(v3{Z: 46}), side)...)
		}
	}
	return out
}

// swanNeck is a spout that rises, bends over and ends above the bowl.
func swanNeck(at v3, toward geom.Vec, reach, height float64) []triangle {
	r := reach / 2
	var path []v3
	var radius []float64
	add := func(along, z, w float64) {
		path = append(path, at.add(v3{toward.X * along, toward.Y * along, z}))
		radius = append(radius, w)
	}
	add(0, 4, 15)
	add(0, 0.3*height, 14.5)
	add(0, 0.45*height, 13)
	add(0, height, 12)
	for i := 1; i <= 18; i++ {
		s, c := math.Sincos(math.Pi * float64(i) / 18)
		add(r-r*c, height+r*s, 12)
	}
	add(reach, height-26, 12)
	add(reach, height-30, 12.6)
	add(reach, height-44, 12.6)
	add(reach, height-44.5, 0.2)
	return sweep(path, radius, 28, matMetal)
}

// lever is a short round handle that leaves a place sideways and a little up.
func lever(at v3, side geom.Vec) []triangle {
	var path []v3
	for i := range 8 {
		a := float64(i) / 7
		path = append(path, at.add(v3{side.X * (10 + 62*a), side.Y * (10 + 62*a), 9 * a * a}))
	}
	end := path[len(path)-1]
	path = append(path, end.add(v3{side.X * 1.2, side.Y * 1.2, 0.3}), end.add(v3{side.X * 1.8, side.Y * 1.8, 0.4}))
	return sweep(path, []float64{7, 6.6, 6, 5.5, 5.2, 5.2, 5.2, 5.2, 4.2, 0.2}, 20, matMetal)
}
