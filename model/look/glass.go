package look

import (
	"cmp"
	"math"
	"slices"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/scene"
)

// sheet is a grid of colours in linear light with alpha that shapes are painted
// on while a patch is baked.
type sheet struct {
	grid
	c []rgb
	a []float32
}

func (g grid) sheet() *sheet {
	return &sheet{g, make([]rgb, g.w*g.h), make([]float32, g.w*g.h)}
}

// lay paints a convex polygon, in mm of the design, with a colour and alpha.
func (s *sheet) lay(pts []xy, c rgb, alpha float32) {
	var q [maxCorners]xy
	pts = pts[:min(len(pts), maxCorners)]
	for i, p := range pts {
		q[i] = xy{float32(s.column(float64(p.x))), float32(s.row(float64(p.y)))}
	}
	k := convexOf(q[:len(pts)])
	x0, x1 := max(0, k.x0), min(s.w-1, k.x1)
	var at [maxCorners]float32
	for y := max(0, k.y0); y <= min(s.h-1, k.y1); y++ {
		k.along(x0, y, &at)
		for x := x0; x <= x1; x++ {
			cover := alpha * clamp01(k.step(&at)+0.5)
			if cover <= 0 {
				continue
			}
			i := y*s.w + x
			a := cover + s.a[i]*(1-cover)
			s.c[i] = s.c[i].mix(c, cover/a)
			s.a[i] = a
		}
	}
}

// chip is a piece of broken glass seen from above: its outline in mm and what
// sets it apart from its neighbours.
type chip struct {
	pts  []xy
	peak xy // where its facets meet
	dice *dice
}

// pieceArea is the mean area of a piece over the square of half the grain;
// TestGlassCoverage holds it.
const pieceArea = 1.76

// chips scatters pieces of the given size over the loops, with this share of
// their area covered, and visits those that reach into the box. Every piece is
// whole and its middle lies within the loops, so a bed has the ragged rim of
// scattered glass. The pieces are anchored to the design: they stay where they
// are when the region grows, and whatever the box.
func chips(loops []geom.Loop, box geom.Box, grain, share float64, seed uint32, visit func(chip)) {
	r := grain / 2
	// Pieces cover pieceArea r² each on the average over sizes. Where they would
	// overlap as if strewn at random, a share takes -ln(1 - share) of them; they
	// lie a little more evenly than that.
	share = max(0.02, min(0.90, share))
	cell := max(0.5, math.Sqrt(pieceArea*r*r/(-math.Log(1-share)*0.6+share*0.4)))
	all := bounds(loops)
	box = box.Grow(1.5*grain + cell)
	box.Min = geom.Vec{X: max(box.Min.X, all.Min.X), Y: max(box.Min.Y, all.Min.Y)}
	box.Max = geom.Vec{X: min(box.Max.X, all.Max.X), Y: min(box.Max.Y, all.Max.Y)}
	i0, i1 := int(math.Floor(box.Min.X/cell)), int(math.Ceil(box.Max.X/cell))
	j0, j1 := int(math.Floor(box.Min.Y/cell)), int(math.Ceil(box.Max.Y/cell))
	if box.Empty() || (i1-i0+1)*(j1-j0+1) > 400_000 {
		return
	}
	inside := insides(loops, box.Grow(cell))
	for j := j0; j <= j1; j++ {
		for i := i0; i <= i1; i++ {
			d := diceOf(seed, i, j)
			c := geom.Vec{
				X: (float64(i) + 0.5 + 0.46*float64(d.between(-1, 1))) * cell,
				Y: (float64(j) + 0.5 + 0.46*float64(d.between(-1, 1))) * cell,
			}
			if !inside(c) {
				continue
			}
			u := d.roll()
			size := float32(r) * (0.62 + 0.75*u*u)
			at := xy{float32(c.X), float32(c.Y)}
			pts := pebble(d, at, size, 4+int(2.4*d.roll()), nil)
			peak := xy{at.x + 0.35*size*d.between(-1, 1), at.y + 0.35*size*d.between(-1, 1)}
			visit(chip{pts, peak, d})
		}
	}
}

// speckled is the size of pieces, in texels, below which their shapes are not
// seen: they are drawn as specks.
const speckled = 3

// speckle is glass in small pieces: its colour and cover at a texel. Each square
// of the design has one piece at most, so that their share is kept.
func (g grid) speckle(i, j int, grain, share float64, colour rgb) (rgb, float32) {
	// A round piece of this radius covers the share of its square, were there
	// one in each.
	side := max(grain*0.8/math.Sqrt(min(1, 1.2*share)), g.cell)
	x, y := g.x(i)/side, g.y(j)/side
	ci, cj := math.Floor(x), math.Floor(y)
	h := mixed(73, uint32(int32(ci)), uint32(int32(cj)))
	c := colour.mul(0.75 + 0.5*float32(h>>16&0xff)/255)
	if side < 2*g.cell { // finer than is seen
		return c, float32(share) * (0.7 + 0.6*float32(h&0xff)/255)
	}
	r := math.Sqrt(share/math.Pi) * side
	free := max(0, side/2-r)
	dx := (x-ci-0.5)*side - free*(float64(h&0xff)/127.5-1)
	dy := (y-cj-0.5)*side - free*(float64(h>>8&0xff)/127.5-1)
	return c, clamp01(float32((r-math.Sqrt(dx*dx+dy*dy))/g.cell) + 0.5)
}

// insides tells for many places of a box whether they lie within the loops, by
// the level line of whole millimetres below each, so that the answer is the same
// whatever the box.
func insides(loops []geom.Loop, box geom.Box) func(geom.Vec) bool {
	const step = 1.0
	rows := map[int][]crossing{}
	return func(p geom.Vec) bool {
		if !box.Contains(p) {
			return false
		}
		j := int(math.Floor(p.Y / step))
		row, ok := rows[j]
		if !ok {
			row = crossings(loops, (float64(j)+0.5)*step)
			rows[j] = row
		}
		wind := int32(0)
		for _, c := range row {
			if float64(c.x) > p.X {
				break
			}
			wind += c.by
		}
		return wind != 0
	}
}

// crossings is where loops cross a level line, from left to right, in mm.
func crossings(loops []geom.Loop, y float64) []crossing {
	var out []crossing
	for _, l := range loops {
		for i, p := range l {
			q := l[(i+1)%len(l)]
			if (p.Y <= y) == (q.Y <= y) {
				continue
			}
			by := int32(1)
			if p.Y > q.Y {
				by = -1
			}
			out = append(out, crossing{float32(p.X + (y-p.Y)/(q.Y-p.Y)*(q.X-p.X)), by})
		}
	}
	slices.SortFunc(out, func(a, b crossing) int { return cmp.Compare(a.x, b.x) })
	return out
}

// layChip paints a piece: its shade below, its body, facets that catch the light
// each in its own way. Fine is whether the picture shows facets.
func (s *sheet) layChip(c chip, colour rgb, shade float32, fine bool) {
	d := c.dice
	body := colour
	switch k := d.roll(); {
	case k < 0.10: // clear pieces
		body = body.mix(rgb{0.80, 0.84, 0.82}, 0.65)
	case k < 0.22: // thick ones, darker and fuller
		body = body.times(body).mix(body, 0.35).mul(0.9)
	}
	body = body.mul(d.between(0.72, 1.30))
	if shade > 0 {
		low := make([]xy, len(c.pts))
		off := 0.16 * reachOf(c)
		for i, p := range c.pts {
			low[i] = xy{p.x - float32(Light.X)*off, p.y - float32(Light.Y)*off}
		}
		s.lay(low, rgb{}, shade)
	}
	s.lay(c.pts, body, 0.96)
	if !fine {
		return
	}
	for i, p := range c.pts {
		q := c.pts[(i+1)%len(c.pts)]
		// A facet leans outward from the peak.
		mx, my := float64(p.x+q.x)/2-float64(c.peak.x), float64(p.y+q.y)/2-float64(c.peak.y)
		n := math.Hypot(mx, my)
		if n < 1e-6 {
			continue
		}
		toward := float32((mx*Light.X + my*Light.Y) / n)
		tri := []xy{p, q, c.peak}
		if cross(p, q, c.peak) < 0 {
			tri = []xy{q, p, c.peak}
		}
		switch {
		case d.roll() < 0.10:
			s.lay(tri, rgb{1, 1, 1}.mix(body, 0.15), 0.75) // mirrors the light
		case toward > 0:
			s.lay(tri, rgb{1, 1, 1}.mix(body, 0.45), 0.34*toward*d.between(0.5, 1.2))
		default:
			s.lay(tri, body.mul(0.35), -0.50*toward*d.between(0.5, 1.1))
		}
	}
}

func cross(a, b, c xy) float32 { return (b.x-a.x)*(c.y-a.y) - (b.y-a.y)*(c.x-a.x) }

func reachOf(c chip) float32 {
	return float32(math.Hypot(float64(c.pts[0].x-c.peak.x), float64(c.pts[0].y-c.peak.y)))
}

// glassLift is how much brighter glass in a bed looks than its colour, for what
// its faces mirror: as much as in the photo-like picture.
const glassLift = 1.10

// GlassBed is glass seeded in the face over loops, transparent between its
// pieces: size of the pieces in mm, share of the area that they cover. perMM is
// the picture's pixels to the millimetre.
func GlassBed(loops []geom.Loop, grain, share float64, colour design.Colour, perMM float64) scene.Rows {
	if !(grain >= 1) {
		grain = 1
	}
	grain = min(60, grain)
	cell := min(cellFor(perMM), 16)
	loops = sane(loops)
	k := newKey("bed").loops(loops).number(grain).number(share).number(cell).colour(colour)
	base := fromDesign(colour)
	return newMosaic(k, cell, 256, perMM, bounds(loops).Grow(grain), false, func(g grid) []uint32 {
		if grain < speckled*g.cell {
			return g.specks(loops, grain, share, base)
		}
		var s *sheet
		chips(loops, g.box(), grain, share, 71, func(c chip) {
			if s == nil {
				s = g.sheet()
			}
			s.layChip(c, base.mul(glassLift), 0.24, grain/g.cell > 3)
		})
		if s == nil {
			return nil
		}
		return s.texels()
	})
}

// specks is a bed of small pieces.
func (g grid) specks(loops []geom.Loop, grain, share float64, colour rgb) []uint32 {
	cover := g.cover(loops)
	pix := make([]uint32, g.w*g.h)
	some := false
	for n, in := range cover {
		if in == 0 {
			continue
		}
		c, a := g.speckle(n%g.w, n/g.w, grain, max(0, min(0.9, share)), colour.mul(glassLift))
		pix[n] = premultiplied(encode(c.r), encode(c.g), encode(c.b), a*in)
		some = true
	}
	if !some {
		return nil
	}
	return pix
}

// texels is the sheet as premultiplied sRGB.
func (s *sheet) texels() []uint32 {
	pix := make([]uint32, s.w*s.h)
	for i, a := range s.a {
		if a > 0 {
			c := s.c[i]
			pix[i] = premultiplied(encode(c.r), encode(c.g), encode(c.b), a)
		}
	}
	return pix
}
