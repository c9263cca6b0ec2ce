package picture

import (
	"math"

	"example.org/castwright/model/design"
	"example.org/castwright/model/slab"
)

// bed is glass that lies in the face, ground flush with it.
type bed struct {
	plan *field
	cell float64
	r    float64 // radius of a piece of mean size
	tint v3      // absorption per mm
	pale v3      // what a crushed face scatters
	gain v3      // of its body's colour
	t    float64
}

// pieceArea is the mean area of pieces over the square of half the grain;
// TestGlassCovers holds it.
const pieceArea = 1.66

func newBed(s slab.Bed, g design.GlassBed, b *body, cement v3) bed {
	grain := max(0.8, min(80, s.Grain))
	cover := max(0.03, min(0.92, s.Coverage))
	k := bed{r: grain / 2, t: b.t}
	// A piece covers pieceArea r² on the average; they overlap, though less than
	// if they were strewn at random.
	k.cell = math.Sqrt(pieceArea * k.r * k.r / (-0.65*math.Log(1-cover) + 0.35*cover))
	k.plan = newField(s.Loops, s.Loops[0].Bounds().Grow(2*grain), b.outline.step)
	c := linearOf(g.Colour)
	k.tint, k.pale = glassTint(c, grain), c.mix(v3{0.85, 0.88, 0.86}, 0.12)
	k.calibrate(c, cement)
	return k
}

// at is the piece of glass that a place of the face lies in.
func (k *bed) at(p v3) (chip, bool) {
	if k.plan.at(p.X, p.Y) > k.r {
		return chip{}, false
	}
	ci, cj := int(math.Floor(p.X/k.cell)), int(math.Floor(p.Y/k.cell))
	best, found := chip{}, false
	top := -1.0
	for n := range 9 {
		i, j := ci+n%3-1, cj+n/3-1
		h := hash4(uint32(i), uint32(j), 7, 0xbed)
		c := v3{
			(float64(i) + 0.5 + 0.8*(draw(h, 41)-0.5)) * k.cell,
			(float64(j) + 0.5 + 0.8*(draw(h, 42)-0.5)) * k.cell, k.t}
		dx, dy, r := p.X-c.X, p.Y-c.Y, k.radius(h)
		if dx*dx+dy*dy > r*r || k.plan.at(c.X, c.Y) > 0 {
			continue
		}
		g := k.piece(c, h)
		if o := draw(h, 45); o > top && g.holds(p) {
			best, found, top = g, true, o
		}
	}
	return best, found
}

// bedded reports whether glass may lie within reach of a place of the face.
func (c *concrete) bedded(p v3, reach float64) bool {
	for i := range c.beds {
		if b := &c.beds[i]; b.plan.at(p.X, p.Y) <= b.r+reach {
			return true
		}
	}
	return false
}

// radius is that of the sphere about the piece of a hash.
func (k *bed) radius(h uint32) float64 {
	u := draw(h, 40)
	return k.r * (0.75 + 0.75*u*u)
}

// piece is the piece of a hash by a place of the face.
func (k *bed) piece(c v3, h uint32) chip {
	r := k.radius(h)
	c.Z -= 0.25 * r * draw(h, 44)
	return newChip(c, r, h, 0.55)
}

// Faces of a piece: where the cement has let go of it, air stands behind, and
// the face mirrors.
const (
	looseFaces  = 0.3  // of all
	crushedMost = 0.34 // of the light that a face may scatter
)

// look is what a piece shows along d through the face at p, over concrete of
// colour cement: its body's reflectance, and what its loose faces mirror of the
// lights and the studio.
func (k *bed) look(s *scene, g *chip, p, d, cement v3) (kd, shine v3) {
	in, ok := refracted(d, v3{Z: 1}, coatIndex)
	if !ok {
		in = v3{Z: -1}
	}
	r := ray{p, in}
	left := v3{1, 1, 1}
	through := func(l float64) v3 {
		return v3{math.Exp(-k.tint.X * l), math.Exp(-k.tint.Y * l), math.Exp(-k.tint.Z * l)}
	}
	for range 5 {
		_, out, _, fo, _ := g.hit(r)
		if fo < 0 {
			break
		}
		if r.d.Z > 0 {
			// Up to the ground face, and out of it.
			if t := (p.Z - r.o.Z) / r.d.Z; t < out {
				left = left.times(through(max(0, t)))
				if up, ok := refracted(r.d, v3{Z: -1}, 1/coatIndex); ok {
					f := 1 - fresnel(r.d.Z, 1/coatIndex)
					return kd.times(k.gain), shine.add(left.times(s.rig.sky(ray{off(p, v3{Z: 1}), up})).mul(f))
				}
				r = ray{r.at(t - 0.01), v3{r.d.X, r.d.Y, -r.d.Z}}
				continue
			}
		}
		left = left.times(through(out))
		n := g.n[fo].mul(-1)
		f := g.face(fo)
		crushed := crushedMost * unit01(rehash(f, 1))
		kd = kd.add(left.times(k.pale).mul(crushed * (0.55 + 0.45*max(0, n.Z))))
		left = left.mul(1 - crushed)
		q := r.at(out - 0.01)
		if unit01(f) > looseFaces {
			// The light that falls on the cement there has come down through
			// the glass.
			return kd.add(left.times(cement).times(through(1.2 * (p.Z - q.Z))).mul(0.9)).times(k.gain), shine
		}
		r = ray{q, r.d.mirrored(n)}
	}
	return kd.add(left.times(k.pale).mul(0.5)).times(k.gain), shine
}

// calibrate sets the gain so that the bed's glass has on the average the
// design's colour, as in the sketch.
func (k *bed) calibrate(colour, cement v3) {
	k.gain = v3{1, 1, 1}
	dark := scene{} // a place without lights
	var sum v3
	n := 0.0
	for i := range 1500 {
		h := hash4(uint32(i), 3, 5, 0xbed)
		c := v3{0, 0, k.t}
		g := k.piece(c, h)
		a := draw(h, 90) * 2 * math.Pi
		x := k.r * math.Sqrt(draw(h, 91)) * 1.2
		p := v3{x * math.Cos(a), x * math.Sin(a), k.t}
		if !g.holds(p) {
			continue
		}
		kd, _ := k.look(&dark, &g, p, v3{Z: -1}, cement)
		sum, n = sum.add(kd), n+1
	}
	gain := func(want, sum float64) float64 { return max(0.5, min(2, want*n/max(sum, 1e-6))) }
	k.gain = v3{gain(colour.X, sum.X), gain(colour.Y, sum.Y), gain(colour.Z, sum.Z)}
}
