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
	tint v3
	pale v3
	t    float64
}

func newBed(s slab.Bed, g design.GlassBed, b *body) bed {
	grain := max(0.8, min(80, s.Grain))
	cover := max(0.03, min(0.92, s.Coverage))
	k := bed{r: grain / 2, t: b.t}
	// A piece covers 2.2 r² on the average.
	k.cell = math.Sqrt(2.2 * k.r * k.r / cover)
	k.plan = newField(s.Loops, s.Loops[0].Bounds().Grow(2*grain), b.outline.step)
	c := linearOf(g.Colour)
	k.tint, k.pale = glassTint(c, grain), c.mix(v3{0.85, 0.88, 0.86}, 0.12)
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
		u := draw(h, 40)
		r := k.r * (0.75 + 0.75*u*u)
		dx, dy := p.X-c.X, p.Y-c.Y
		if dx*dx+dy*dy > r*r || k.plan.at(c.X, c.Y) > 0 {
			continue
		}
		c.Z -= 0.25 * r * draw(h, 44)
		g := newChip(c, r, h, 0.55)
		in := true
		q := p.sub(c)
		for f := range g.n {
			in = in && q.dot(g.n[f]) < g.d[f]
		}
		if o := draw(h, 45); in && o > top {
			best, found, top = g, true, o
		}
	}
	return best, found
}

// look is the colour of a piece seen along d through the face at p, over
// concrete of colour cement, and the sparkle of its far faces.
func (k *bed) look(g *chip, p, d, key, cement v3) (kd v3, gleam float64) {
	in, ok := refracted(d, v3{Z: 1}, coatIndex)
	if !ok {
		in = v3{Z: -1}
	}
	_, out, _, fo, _ := g.hit(ray{p, in})
	if fo < 0 {
		return k.pale, 0
	}
	n := g.n[fo].mul(-1) // toward the eye
	f := rehash(g.hash, uint32(60+fo))
	through := func(l float64) v3 {
		return v3{math.Exp(-k.tint.X * l), math.Exp(-k.tint.Y * l), math.Exp(-k.tint.Z * l)}
	}
	lit := 0.55 + 0.6*max(0, n.dot(key)) + 0.25*(unit01(f)-0.5)
	cloud := 0.30 + 0.35*unit01(rehash(f, 1))
	kd = k.pale.mul(lit).times(through(0.6*out)).mix(cement.mul(0.8).times(through(2*out)), 1-cloud)
	// A faint line along the rim, where the piece is thin.
	kd = kd.mul(0.80 + 0.20*smooth(0, 0.25*g.r, out))
	if f%3 != 0 {
		return kd, 0
	}
	h := key.sub(in).unit()
	return kd, 0.12 * math.Pow(max(0, h.dot(n)), 26)
}
