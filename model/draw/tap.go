package draw

import (
	"math"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/look"
	"example.org/castwright/model/scene"
	"example.org/castwright/model/slab"
)

// Colours of brushed metal, from dark to light.
var metal = [...]scene.Colour{
	{R: 0x6e, G: 0x72, B: 0x76, A: 0xff},
	{R: 0x9a, G: 0x9e, B: 0xa2, A: 0xff},
	{R: 0xc6, G: 0xca, B: 0xcd, A: 0xff},
	{R: 0xee, G: 0xf0, B: 0xf1, A: 0xff},
}

// layTaps draws a generic tap over each set of holes: a spout over the middle
// one, a lever over each other one, or on the spout when there is but one.
func (b *base) layTaps() {
	if !b.Show.Taps {
		return
	}
	for _, t := range b.d.Taps {
		var holes []slab.Opening
		for _, o := range b.s.Openings {
			if o.Kind == slab.OpeningTap && o.Part == t.ID {
				holes = append(holes, o)
			}
		}
		if len(holes) > 0 && len(holes) <= 8 {
			b.layTap(t, holes)
		}
	}
}

// layTap draws one tap; its spout reaches toward the sink.
func (b *base) layTap(t design.TapSet, holes []slab.Opening) {
	front := geom.Vec{Y: -1}.Turn(t.Rotation.Radians())
	middle := len(holes) / 2
	reach := 125.0
	for _, k := range b.d.Sinks {
		bowl, ok := bowlOf(b.s, k.ID)
		if t.Sink != k.ID || t.Sink == "" || !ok {
			continue
		}
		front = bowl.Back.Mul(-1)
		to := geom.Vec{X: k.At.X.MM(), Y: k.At.Y.MM()}.Sub(holes[middle].Centre)
		reach = math.Max(90, math.Min(170, 0.62*to.Dot(front)))
	}
	side := front.Left()
	for i, h := range holes {
		r := math.Max(23, h.Diameter/2+5)
		if i == middle {
			b.layRound(h.Centre, r)
			if len(holes) == 1 {
				b.layTube(h.Centre.Sub(front.Mul(4)), h.Centre.Add(side.Mul(-46)).Sub(front.Mul(10)), 5.5, 10)
			}
			b.layTube(h.Centre, h.Centre.Add(front.Mul(reach)), 11.5, 34)
			continue
		}
		b.layRound(h.Centre, r)
		out := side
		if h.Centre.Sub(holes[middle].Centre).Dot(side) < 0 {
			out = side.Mul(-1)
		}
		b.layTube(h.Centre.Sub(out.Mul(8)), h.Centre.Add(out.Mul(44)), 7, 16)
	}
}

// layRound draws a round foot.
func (b *base) layRound(c geom.Vec, r float64) {
	b.cast(ring(c, r), 7)
	b.fill(metal[0], ring(c, r))
	b.fill(metal[2], ring(c.Add(look.Light.Mul(0.08*r)), 0.90*r))
	b.fill(metal[1], ring(c.Sub(look.Light.Mul(0.05*r)), 0.80*r))
	b.fill(metal[2], ring(c.Sub(look.Light.Mul(0.02*r)), 0.70*r))
}

// cast draws the shadow of a thing that stands off the face by throw mm, aslant.
func (b *base) cast(l geom.Loop, throw float64) {
	if !b.Show.Textures {
		return
	}
	spread := 3 + 0.35*throw
	box := l.Bounds().Grow(throw + 2.5*spread)
	around := geom.Loop{box.Min, {X: box.Max.X, Y: box.Min.Y}, box.Max, {X: box.Min.X, Y: box.Max.Y}}
	b.add(scene.Fill{Loops: b.loops([]geom.Loop{around}), Paint: scene.Paint{
		Texture: look.Shadow([]geom.Loop{l}, throw, spread, 0.45)}})
}

// layTube draws a tube with round ends from a to c, of half breadth r, standing
// height above the face.
func (b *base) layTube(a, c geom.Vec, r, height float64) {
	b.cast(capsule(a, c, r), 0.55*height)
	b.fill(metal[0], capsule(a, c, r))
	// Bands along it, lighter toward the light.
	n := c.Sub(a).Unit().Left()
	lean := n.Dot(look.Light)
	for _, band := range [...]struct {
		off, half float64
		c         scene.Colour
	}{{0.10, 0.80, metal[1]}, {0.28, 0.52, metal[2]}, {0.42, 0.20, metal[3]}, {-0.52, 0.12, metal[2]}} {
		d := n.Mul(band.off * r * math.Copysign(1, lean))
		b.fill(band.c, capsule(a.Add(d), c.Add(d), band.half*r))
	}
}

// capsule is what lies within r of the line from a to c.
func capsule(a, c geom.Vec, r float64) geom.Loop {
	u := c.Sub(a).Unit()
	if u == (geom.Vec{}) {
		return ring(a, r)
	}
	const n = 16
	out := make(geom.Loop, 0, 2*n+2)
	for i := range n + 1 {
		out = append(out, c.Add(u.Turn(math.Pi*(float64(i)/n-0.5)).Mul(r)))
	}
	for i := range n + 1 {
		out = append(out, a.Add(u.Turn(math.Pi*(float64(i)/n+0.5)).Mul(r)))
	}
	return out
}
