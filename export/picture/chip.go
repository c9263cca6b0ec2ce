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
		k.d[2+i] = r * (0.50 + 0.42*draw(h, uint32(19+i)))
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

// scatter is glass broadcast into resin: a lattice of cells with at most one
// piece in each.
type scatter struct {
	cell  float64
	fill  float64 // share of the cells that hold a piece
	tint  v3      // absorption per mm
	pale  v3      // what a crushed face scatters
	depth float64
}

func newScatter(g design.GlassFill, depth float64) *scatter {
	grain := max(0.8, min(60, g.Grain.MM()))
	s := &scatter{cell: 1.15 * grain, depth: depth}
	// A piece of mean size holds about 0.13 of its cell.
	s.fill = min(1, g.Share.Fraction()/0.13)
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

// at is the piece of a cell.
func (s *scatter) at(i, j, k int) (chip, bool) {
	h := hash4(uint32(i), uint32(j), uint32(k), 0x61a55)
	drift := 0.5 + 0.6*noise2(float64(i)*s.cell/55, float64(j)*s.cell/55, 9)
	if unit01(h) > s.fill*(0.45+1.1*clamp01(drift)) {
		return chip{}, false
	}
	u := draw(h, 40)
	r := s.cell * (0.24 + 0.26*u*u)
	free := s.cell/2 - r
	at := func(n int, k uint32) float64 { return (float64(n)+0.5)*s.cell + free*(2*draw(h, k)-1) }
	return newChip(v3{at(i, 41), at(j, 42), at(k, 43)}, r, h, 0.35), true
}

// walk visits the pieces along a ray from 0 to way, nearest cell first, until
// visit says stop.
func (s *scatter) walk(r ray, way float64, visit func(k *chip, in, out float64, fi, fo int) bool) {
	inv := 1 / s.cell
	cell := [3]int{int(math.Floor(r.o.X * inv)), int(math.Floor(r.o.Y * inv)), int(math.Floor(r.o.Z * inv))}
	o, d := [3]float64{r.o.X, r.o.Y, r.o.Z}, [3]float64{r.d.X, r.d.Y, r.d.Z}
	var step [3]int
	var next, span [3]float64
	for a := range 3 {
		next[a], span[a] = math.Inf(1), math.Inf(1)
		if d[a] > 0 {
			step[a], span[a] = 1, s.cell/d[a]
			next[a] = (float64(cell[a]+1)*s.cell - o[a]) / d[a]
		} else if d[a] < 0 {
			step[a], span[a] = -1, -s.cell/d[a]
			next[a] = (float64(cell[a])*s.cell - o[a]) / d[a]
		}
	}
	for range 200 {
		if k, ok := s.at(cell[0], cell[1], cell[2]); ok {
			if in, out, fi, fo, hit := k.hit(r); hit && in > 0 && in < way {
				if visit(&k, in, min(out, way), fi, fo) {
					return
				}
			}
		}
		a := 0
		if next[1] < next[a] {
			a = 1
		}
		if next[2] < next[a] {
			a = 2
		}
		if next[a] > way {
			return
		}
		cell[a] += step[a]
		next[a] += span[a]
	}
}

// glassLook is what glass does to a way through resin.
type glassLook struct {
	through v3      // of what lies behind
	shade   float64 // of the floor, by pieces between it and the key light
	body    v3      // what faces scatter back, with the resin's share
	gleam   v3
}

// look gathers the glass along a view ray inside the resin.
func (s *scatter) look(sc *scene, c *channel, r ray, way float64, m *resin) glassLook {
	g := glassLook{through: v3{1, 1, 1}, shade: 1}
	key, _ := refracted(sc.key.mul(-1), v3{Z: 1}, resinIndex)
	key = key.mul(-1) // toward the light, inside the resin
	s.walk(r, way, func(k *chip, in, out float64, fi, fo int) bool {
		if k.c.Z > sc.body.t-0.75*k.r || k.c.Z < sc.body.t-s.depth+0.2*k.r {
			return false
		}
		n := k.n[fi]
		f := rehash(k.hash, uint32(60+fi))
		cloud := 0.10 + 0.30*unit01(f)
		lit := 0.35 + 0.75*max(0, n.dot(key))
		down := 1.18 * max(0, sc.body.t-k.c.Z)
		part := g.through.times(m.clear(in + down)).mul(cloud * lit)
		g.body = g.body.add(part.times(s.pale))
		if f%3 == 0 {
			h := key.sub(r.d).unit()
			g.gleam = g.gleam.add(g.through.times(m.clear(in + down)).mul(0.30 * math.Pow(max(0, h.dot(n)), 40)))
		}
		l := out - in
		t := v3{math.Exp(-s.tint.X * l), math.Exp(-s.tint.Y * l), math.Exp(-s.tint.Z * l)}
		g.through = g.through.times(t).mul(1 - cloud)
		return g.through.most() < 0.02
	})
	up := ray{r.at(way), key}
	s.walk(up, max(0, sc.body.t-up.o.Z)/max(0.2, key.Z), func(k *chip, in, out float64, fi, fo int) bool {
		if k.c.Z > sc.body.t-0.75*k.r || k.c.Z < sc.body.t-s.depth+0.2*k.r {
			return false
		}
		g.shade *= 1 - 0.42*min(1, (out-in)/k.r)
		return g.shade < 0.2
	})
	return g
}
