package picture

import (
	"math"

	"example.org/castwright/model/design"
)

// chip is a convex piece of broken glass: two broad faces and six sides.
type chip struct {
	c    v3
	r    float64 // of the sphere about it
	n    [8]v3
	d    [8]float64
	hash uint32
}

// newChip makes the piece of a hash with radius r about c; flat is how nearly
// level its broad faces lie, 1 level.
func newChip(c v3, r float64, h uint32, flat float64) chip {
	k := chip{c: c, r: r, hash: h}
	lean := (1 - flat) * 1.2
	k.n[0] = v3{lean * (draw(h, 1) - 0.5) * 2, lean * (draw(h, 2) - 0.5) * 2, 1}.unit()
	k.n[1] = v3{0.25 * (draw(h, 3) - 0.5), 0.25 * (draw(h, 4) - 0.5), 0}.sub(k.n[0]).unit()
	thick := 0.34 + 0.3*draw(h, 5)
	k.d[0], k.d[1] = r*thick, r*thick
	u, v := frame(k.n[0])
	turn := draw(h, 6)
	for i := range 6 {
		a := 2 * math.Pi * (float64(i)/6 + turn + 0.11*(draw(h, uint32(7+i))-0.5))
		s, co := math.Sincos(a)
		tip := 0.9 * (draw(h, uint32(13+i)) - 0.5)
		k.n[2+i] = u.mul(co).add(v.mul(s)).add(k.n[0].mul(tip)).unit()
		k.d[2+i] = r * (0.46 + 0.30*draw(h, uint32(19+i)))
	}
	return k
}

// hit is the part of a ray inside the piece and the faces it enters and leaves
// by.
func (k *chip) hit(r ray) (in, out float64, fi, fo int, ok bool) {
	q := r.o.sub(k.c)
	b := q.dot(r.d)
	if q.dot(q)-b*b > k.r*k.r {
		return 0, 0, 0, 0, false
	}
	in, out, fi, fo = -1e9, 1e9, -1, -1
	for i := range k.n {
		s, a := r.d.dot(k.n[i]), k.d[i]-q.dot(k.n[i])
		switch {
		case s < -1e-12:
			if t := a / s; t > in {
				in, fi = t, i
			}
		case s > 1e-12:
			if t := a / s; t < out {
				out, fo = t, i
			}
		case a < 0:
			return 0, 0, 0, 0, false
		}
	}
	return in, out, fi, fo, in < out
}

// holds reports whether a place lies in the piece.
func (k *chip) holds(p v3) bool {
	q := p.sub(k.c)
	for i := range k.n {
		if q.dot(k.n[i]) >= k.d[i] {
			return false
		}
	}
	return true
}

// face is the number that sets a face apart from others.
func (k *chip) face(i int) uint32 { return rehash(k.hash, uint32(60+i)) }

// cloud is the share of light that a face scatters where it is crushed.
func (k *chip) cloud(i int) float64 { return 0.10 + 0.30*unit01(k.face(i)) }

// scatter is glass broadcast into resin: a lattice of cells that each hold some
// pieces in places of their own.
type scatter struct {
	cell  float64
	grain float64
	each  float64 // mean number of pieces in a cell
	tint  v3      // absorption per mm
	pale  v3      // what a crushed face scatters
	depth float64
	share float64 // of the volume
	kept  *cells
}

// mostPieces bounds the pieces of a cell, cellGrains is its side in grains.
const (
	mostPieces = 128
	cellGrains = 2.5
	// What a piece fills, of the cube of the grain; TestGlassCovers holds it.
	pieceVolume = 0.155
)

func newScatter(g design.GlassFill, depth float64) *scatter {
	grain := max(0.8, min(60, g.Grain.MM()))
	s := &scatter{cell: cellGrains * grain, grain: grain, depth: depth, kept: new(cells)}
	// Pieces that overlap count once.
	share := max(0, min(0.6, g.Share.Fraction()))
	s.share = share
	s.each = min(mostPieces, -math.Log(1-share)*cellGrains*cellGrains*cellGrains/pieceVolume)
	c := linearOf(g.Colour)
	s.tint = glassTint(c, grain)
	s.pale = c.mix(v3{0.9, 0.9, 0.9}, 0.25)
	return s
}

// glassTint gives glass of the size grain about its colour in three passes.
func glassTint(c v3, grain float64) v3 {
	each := func(x float64) float64 { return -math.Log(max(0.01, min(0.98, x))) / (1.5 * grain) }
	return v3{each(c.X), each(c.Y), each(c.Z)}
}

// through is what a way in a piece leaves of light.
func (s *scatter) through(way float64) v3 {
	return v3{math.Exp(-s.tint.X * way), math.Exp(-s.tint.Y * way), math.Exp(-s.tint.Z * way)}
}

// most is the radius of the largest pieces.
func (s *scatter) most() float64 { return 0.68 * s.grain }

// crossing is a piece that a ray passes through.
type crossing struct {
	p       *piece
	k       *chip
	in, out float64
	fi      int
}

// mostCells bounds the cells about a ray.
const mostCells = 4096

// near visits the cells whose pieces may reach a ray, given in the lattice,
// before way.
func (s *scatter) near(o, d v3, way float64, visit func(i, j, k int)) {
	r := s.most()
	e := o.along(d, way)
	cell := func(x float64) int { return int(math.Floor(x / s.cell)) }
	i0, i1 := cell(min(o.X, e.X)-r), cell(max(o.X, e.X)+r)
	j0, j1 := cell(min(o.Y, e.Y)-r), cell(max(o.Y, e.Y)+r)
	k0, k1 := cell(min(o.Z, e.Z)-r), cell(max(o.Z, e.Z)+r)
	if (i1-i0+1)*(j1-j0+1)*(k1-k0+1) > mostCells {
		if way > 4*s.cell {
			s.near(o, d, way/2, visit)
		}
		return
	}
	// A cell and what its pieces reach is a cube: the line meets it where the
	// cube's shadow along d covers it.
	half := s.cell/2 + r
	for k := k0; k <= k1; k++ {
		for j := j0; j <= j1; j++ {
			for i := i0; i <= i1; i++ {
				x := (float64(i)+0.5)*s.cell - o.X
				y := (float64(j)+0.5)*s.cell - o.Y
				z := (float64(k)+0.5)*s.cell - o.Z
				if math.Abs(y*d.Z-z*d.Y) > half*(math.Abs(d.Y)+math.Abs(d.Z)) ||
					math.Abs(z*d.X-x*d.Z) > half*(math.Abs(d.Z)+math.Abs(d.X)) ||
					math.Abs(x*d.Y-y*d.X) > half*(math.Abs(d.X)+math.Abs(d.Y)) {
					continue
				}
				visit(i, j, k)
			}
		}
	}
}

// crossings is room for the pieces that a ray meets, the nearest ones if there are
// more. Who walks has it, so that none is made anew for each ray.
type crossings [24]crossing

// walk gives the pieces along a ray from 0 to way, nearest first, in met.
func (s *scatter) walk(r ray, way float64, met *crossings) []crossing {
	o, d := toLattice(r.o), toLattice(r.d)
	m := 0
	s.near(o, d, way, func(i, j, k int) {
		cell := s.pieces(i, j, k)
		for n := range cell.pieces {
			p := &cell.pieces[n]
			if !p.near(o, d, way) {
				continue
			}
			g := p.shape()
			in, out, fi, _, hit := g.hit(r)
			if !hit || in <= 0 || in >= way {
				continue
			}
			at := m
			for ; at > 0 && met[at-1].in > in; at-- {
			}
			if at == len(met) {
				continue
			}
			m = min(m+1, len(met))
			copy(met[at+1:m], met[at:m-1])
			met[at] = crossing{p, g, in, min(out, way), fi}
		}
	})
	return met[:m]
}

// inside reports whether a place lies in a piece.
func (s *scatter) inside(p v3) bool {
	in := false
	o := toLattice(p)
	s.near(o, v3{X: 1}, 0, func(i, j, k int) {
		cell := s.pieces(i, j, k)
		for n := range cell.pieces {
			if g := &cell.pieces[n]; g.near(o, v3{X: 1}, 0) && g.shape().holds(p) {
				in = true
			}
		}
	})
	return in
}

// glassLook is what glass and pigment do to a way through resin.
type glassLook struct {
	through v3      // of what lies behind, by glass alone
	veiled  v3      // share of the way's end at pigment, tinted by the glass before
	shade   float64 // of the floor, by pieces between it and the key light
	body    v3      // what faces scatter back, with the resin's share
	gleam   v3      // what loose faces mirror of lights and studio
}

// look gathers the glass along a view ray inside the resin.
func (s *scatter) look(sc *scene, c *channel, r ray, way float64, m *resin) glassLook {
	g := glassLook{through: v3{1, 1, 1}, shade: 1}
	key, _ := refracted(sc.key.mul(-1), v3{Z: 1}, resinIndex)
	key = key.mul(-1) // toward the light, inside the resin
	past, left := 0.0, 1.0
	// pigment adds what pigment scatters before t; its light leaves through the
	// glass above.
	pigment := func(t float64) {
		now := math.Exp(-m.veil * t)
		if now < left {
			mid := (past + t) / 2
			g.veiled = g.veiled.add(g.through.times(s.haze(mid)).mul(left - now))
		}
		past, left = t, now
	}
	var met crossings
	for i := range s.walk(r, way, &met) {
		x := &met[i]
		k, in, out, fi := x.k, x.in, x.out, x.fi
		lie := x.p.lieIn(c, sc.body)
		if !lie.held {
			continue
		}
		pigment(in)
		n := k.n[fi]
		f, cloud := k.face(fi), k.cloud(fi)
		lit := 0.35 + 0.75*max(0, n.dot(key))
		deep := lie.deep
		part := g.through.times(m.clear(in + 1.18*deep)).mul(cloud * lit * left * math.Exp(-m.veil*1.18*deep))
		g.body = g.body.add(part.times(s.pale))
		if f%3 == 0 {
			// Air stands behind it: it mirrors what is above.
			if w := r.d.mirrored(n); w.Z > 0 {
				if up, ok := refracted(w, v3{Z: -1}, 1/resinIndex); ok {
					seen := sc.rig.sky(ray{r.at(in), up}).mul(0.4 * (1 - fresnel(w.Z, 1/resinIndex)))
					g.gleam = g.gleam.add(g.through.times(m.clear(in + deep/w.Z)).times(seen).mul(left * math.Exp(-m.veil*deep/w.Z)))
				}
			}
		}
		g.through = g.through.times(s.through(out - in)).mul(1 - cloud)
		if g.through.most()*left < 0.02 {
			break
		}
	}
	pigment(way)
	up := ray{r.at(way), key}
	if left < 0.02 || up.o.Z < sc.body.t-s.depth-1 {
		return g // nothing of the floor is seen, or down a fall
	}
	for i := range s.walk(up, max(0, sc.body.t-up.o.Z)/max(0.2, key.Z), &met) {
		x := &met[i]
		if !x.p.lieIn(c, sc.body).held {
			continue
		}
		g.shade *= 1 - 0.42*min(1, (x.out-x.in)/x.k.r)
		if g.shade < 0.2 {
			break
		}
	}
	return g
}

// haze is what glass leaves of diffuse light on its way up from t mm below the
// surface, on the mean.
func (s *scatter) haze(t float64) v3 {
	chord := 0.6 * s.grain
	k := s.share / chord * 1.6 * t
	one := s.through(chord)
	const clouded = 0.25
	each := func(x, pale float64) float64 { return math.Exp(-k * (1 - x*(1-clouded*(1-0.6*pale)))) }
	return v3{each(one.X, s.pale.X), each(one.Y, s.pale.Y), each(one.Z, s.pale.Z)}
}

// holds reports whether a piece lies wholly within the resin, about.
func (c *channel) holds(b *body, k *chip) bool {
	if !c.falls {
		return k.c.Z < b.t-0.75*k.r && k.c.Z > b.t-c.depth+0.2*k.r
	}
	return c.depthAt(b, k.c) > 0.75*k.r && b.at(k.c) > 0.2*k.r
}
