package draw

import (
	"math"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/look"
	"example.org/castwright/model/scene"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/units"
)

// Colours of what is set into or on the top.
var (
	glaze = scene.Colour{R: 0xf0, G: 0xee, B: 0xea, A: 0xff}
	dark  = scene.Colour{R: 0x1d, G: 0x1e, B: 0x20, A: 0xff}
)

// layOpenings draws sinks, then tap holes and plain holes.
func (b *base) layOpenings() {
	for _, k := range b.d.Sinks {
		bowl, ok := bowlOf(b.s, k.ID)
		if !ok || len(bowl.Loop) < 3 {
			continue
		}
		opening, cut := openingOf(b.s, k.ID)
		switch {
		case k.Mount == design.MountVessel:
			b.layVessel(k, bowl)
		case k.Mount == design.MountOver:
			b.layOver(k, bowl)
		case cut:
			b.layUnder(k, bowl, opening)
		}
	}
	for _, o := range b.s.Openings {
		if o.Kind == slab.OpeningTap || o.Kind == slab.OpeningHole {
			b.layHole(o.Loop)
		}
	}
}

func bowlOf(s slab.Solid, id design.ID) (slab.Bowl, bool) {
	for _, b := range s.Bowls {
		if b.Part == id {
			return b, true
		}
	}
	return slab.Bowl{}, false
}

func openingOf(s slab.Solid, id design.ID) (slab.Opening, bool) {
	for _, o := range s.Openings {
		if o.Part == id && o.Kind == slab.OpeningSink {
			return o, true
		}
	}
	return slab.Opening{}, false
}

// layHole draws a hole through the top.
func (b *base) layHole(l geom.Loop) {
	b.fill(dark, l)
	b.layArris(l.Reversed(), false)
}

// depth of a basin in mm, a usual one where it is not known.
func depth(l units.Length) float64 {
	if mm := l.MM(); mm > 20 && mm < 600 {
		return mm
	}
	return 130
}

// layUnder draws a basin below the top, seen through its cut-out.
func (b *base) layUnder(k design.Sink, bowl slab.Bowl, o slab.Opening) {
	seen := []geom.Loop{o.Loop}
	basin := seen
	if k.Reveal.Kind == design.RevealRimShows && k.Reveal.Size > 0 {
		b.fill(scene.Colour{R: 0xd9, G: 0xd7, B: 0xd2, A: 0xff}, o.Loop)
		basin = []geom.Loop{bowl.Loop}
	}
	b.layBasin(basin, depth(k.BowlDepth))
	if b.Show.Textures {
		// The top is thick: its rim shades the bowl.
		b.add(scene.Fill{Loops: b.loops(seen), Paint: scene.Paint{Texture: look.Hollow(seen, 0.7*b.s.Thickness, 0.55)}})
	}
	if k.Reveal.Kind == design.RevealRimShows && k.Reveal.Size > 0 {
		b.line(black(0x50), 0.7, bowl.Loop)
	}
	b.layDrain(bowl.Loop.Bounds().Centre(), 22)
	b.layArris(o.Loop.Reversed(), false)
}

// layOver draws a basin whose rim lies on the face.
func (b *base) layOver(k design.Sink, bowl slab.Bowl) {
	rim := math.Max(10, k.Rim.MM()+6)
	b.layRim(bowl.Loop, 0.35, 5)
	in := inset(bowl.Loop, rim)
	b.layBasin([]geom.Loop{in}, depth(k.BowlDepth))
	b.line(black(0x28), 0.7, in)
	b.layDrain(bowl.Loop.Bounds().Centre(), 22)
}

// layVessel draws a bowl that stands on the face.
func (b *base) layVessel(k design.Sink, bowl slab.Bowl) {
	b.layRim(bowl.Loop, 1.1, 5)
	in := inset(bowl.Loop, 11)
	b.layBasin([]geom.Loop{in}, depth(k.BowlDepth))
	if b.Show.Textures {
		b.add(scene.Fill{Loops: b.loops([]geom.Loop{in}), Paint: scene.Paint{Texture: look.Hollow([]geom.Loop{in}, 22, 0.30)}})
	}
	b.line(black(0x30), 0.7, in)
	b.layDrain(geom.Vec{X: k.At.X.MM(), Y: k.At.Y.MM()}, math.Max(12, math.Min(40, k.Drain.MM()/2)))
}

// layRim draws the glazed rim of a bowl above the face: its shadow, its body and
// its rounded edge. Height is how much of a shadow it throws.
func (b *base) layRim(l geom.Loop, height, round float64) {
	if b.Show.Textures {
		spread := 8 + 10*height
		throw := 5 + 13*height
		box := l.Bounds().Grow(throw + 2.5*spread)
		around := geom.Loop{box.Min, {X: box.Max.X, Y: box.Min.Y}, box.Max, {X: box.Min.X, Y: box.Max.Y}}
		shadow := scene.Paint{Texture: look.Shadow([]geom.Loop{l}, throw, spread, 0.5)}
		b.add(b.onFace([]geom.Loop{around}, shadow))
	}
	b.fill(glaze, l)
	if b.Show.Textures {
		rim := look.Rim{Points: l, Closed: true,
			Profile: design.Profile{Kind: design.ProfileRounded, Size: units.FromMM(round)}}
		b.add(scene.Fill{Loops: b.loops([]geom.Loop{l}), Paint: scene.Paint{
			Texture: look.Relief([]look.Rim{rim}, 2*round, 3, b.perMM())}})
	}
	b.layArris(l, true)
}

// layBasin draws the inside of a bowl.
func (b *base) layBasin(loops []geom.Loop, depth float64) {
	paint := scene.Paint{Colour: scene.Colour{R: 0xd8, G: 0xd6, B: 0xd2, A: 0xff}}
	if b.Show.Textures {
		paint.Texture = look.Bowl(loops, depth, glaze)
	}
	b.add(scene.Fill{Loops: b.loops(loops), Paint: paint})
}

// layDrain draws a waste of metal.
func (b *base) layDrain(at geom.Vec, r float64) {
	off := look.Light.Mul(0.10 * r)
	b.fill(black(0x38), ring(at.Sub(look.Light.Mul(0.18*r)), 1.12*r))
	b.fill(scene.Colour{R: 0x85, G: 0x89, B: 0x8d, A: 0xff}, ring(at, r))
	b.fill(scene.Colour{R: 0xd9, G: 0xdc, B: 0xde, A: 0xff}, ring(at.Add(off), 0.86*r))
	b.fill(scene.Colour{R: 0xa9, G: 0xad, B: 0xb0, A: 0xff}, ring(at, 0.80*r))
	b.fill(dark, ring(at, 0.52*r))
	b.fill(scene.Colour{R: 0x9b, G: 0x9f, B: 0xa3, A: 0xff}, ring(at, 0.34*r))
}

// ring is a circle as a loop.
func ring(c geom.Vec, r float64) geom.Loop {
	const n = 48
	out := make(geom.Loop, n)
	for i := range out {
		s, k := math.Sincos(2 * math.Pi * float64(i) / n)
		out[i] = geom.Vec{X: c.X + r*k, Y: c.Y + r*s}
	}
	return out
}

// inset is a counter-clockwise loop moved in by d: the parts of its parallel
// line that are d away from all of it. A loop that leaves nothing comes back as
// it is.
func inset(l geom.Loop, d float64) geom.Loop {
	moved := offset(l, true, d)
	var out geom.Loop
	for _, p := range moved {
		if clearOf(l, p, 0.97*d) {
			out = append(out, p)
		}
	}
	if len(out) < 3 || geom.Loop(out).Area() <= 0 {
		return l
	}
	return out
}

// clearOf reports whether p is at least d away from every side of the loop.
func clearOf(l geom.Loop, p geom.Vec, d float64) bool {
	for i, a := range l {
		e, w := l[(i+1)%len(l)].Sub(a), p.Sub(a)
		if ll := e.Dot(e); ll > 0 {
			w = w.Sub(e.Mul(max(0, min(1, w.Dot(e)/ll))))
		}
		if w.Dot(w) < d*d {
			return false
		}
	}
	return true
}
