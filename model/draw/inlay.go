package draw

import (
	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/look"
	"example.org/castwright/model/scene"
	"example.org/castwright/model/slab"
)

// onFace is a fill that is cut off at the rim of the top where it leaves it.
func (b *base) onFace(loops []geom.Loop, p scene.Paint) scene.Fill {
	f := scene.Fill{Loops: b.loops(loops), Paint: p}
	for _, l := range loops {
		if b.leaves(l) {
			f.Clip = b.loops([]geom.Loop{b.face})
			return f
		}
	}
	return f
}

// leaves reports whether a loop leaves the top. Where it would take long to
// tell, it may.
func (b *base) leaves(l geom.Loop) bool {
	if len(l)*len(b.face) > 400_000 {
		return true
	}
	for _, q := range l {
		if !b.face.Contains(q) {
			return true
		}
	}
	return false
}

// layGlass lays the glass beds.
func (b *base) layGlass() {
	for _, bed := range b.s.Beds {
		c, ok := bedColour(b.d, bed.Part)
		if !ok || len(bed.Loops) == 0 {
			continue
		}
		if !b.Show.Textures {
			b.add(b.onFace(bed.Loops, scene.Paint{Colour: scene.Colour{R: c.R, G: c.G, B: c.B, A: uint8(255 * min(1, max(0.2, bed.Coverage)))}}))
			continue
		}
		b.add(b.onFace(grown(bed.Loops, bed.Grain/2), scene.Paint{
			Texture: look.GlassBed(bed.Loops, bed.Grain, bed.Coverage, c, b.perMM())}))
	}
}

// grown is loops with room for pieces whose middle lies within them.
func grown(loops []geom.Loop, by float64) []geom.Loop {
	out := make([]geom.Loop, 0, len(loops))
	for _, l := range loops {
		if l.Area() > 0 {
			box := l.Bounds().Grow(by)
			out = append(out, geom.Loop{box.Min, {X: box.Max.X, Y: box.Min.Y}, box.Max, {X: box.Min.X, Y: box.Max.Y}})
		}
	}
	return out
}

func bedColour(d design.Design, id design.ID) (design.Colour, bool) {
	for _, g := range d.Glass {
		if g.ID == id {
			return g.Colour, true
		}
	}
	return design.Colour{}, false
}

// layChannels lays the channels with what fills them.
func (b *base) layChannels() {
	for _, r := range b.s.Recesses {
		if len(r.Loops) == 0 {
			continue
		}
		switch {
		case !r.Fill.Resin:
			b.layRecess(r)
		case b.Show.Textures:
			b.add(b.onFace(r.Loops, scene.Paint{
				Texture: look.Resin(r.Loops, r.Depth, r.Fill, b.d.Finish.Colour, b.perMM())}))
		default:
			b.add(b.onFace(r.Loops, scene.Paint{Colour: look.PlainResin(r.Fill, r.Depth, b.d.Finish.Colour)}))
		}
	}
}

// layRecess draws a channel that is left empty: concrete that lies lower, in the
// shade of its banks.
func (b *base) layRecess(r slab.Recess) {
	b.add(b.onFace(r.Loops, scene.Paint{Colour: black(0x26)}))
	if b.Show.Textures {
		b.add(b.onFace(r.Loops, scene.Paint{Texture: look.Hollow(r.Loops, r.Depth, 0.5)}))
	}
	for _, l := range r.Loops {
		if !b.leaves(l) {
			b.layArris(l.Reversed(), false)
		}
	}
}
