package draw

import (
	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/look"
	"example.org/castwright/model/scene"
	"example.org/castwright/model/slab"
)

// faceLoop is the outline as it is seen: rough edges are broken lines.
func faceLoop(s slab.Solid) geom.Loop {
	rough := false
	for _, side := range s.Sides {
		rough = rough || side.Profile.Kind == design.ProfileRough
	}
	if !rough {
		return s.Outline
	}
	var out geom.Loop
	for _, side := range s.Sides {
		pts := side.Points
		if side.Profile.Kind == design.ProfileRough && !side.Wall {
			pts = look.Broken(pts, side.Profile.Size.MM(), uint32(side.Node))
		}
		if len(pts) > 1 {
			out = append(out, pts[:len(pts)-1]...)
		}
	}
	return out
}

// layFace lays the concrete, with the light on its edges.
func (b *base) layFace() {
	if len(b.face) < 3 {
		return
	}
	paint := scene.Paint{Colour: look.Plain(b.d.Finish)}
	if b.Show.Textures {
		paint.Texture = look.NewConcrete(b.d.Finish, b.s.Outline.Bounds())
	}
	face := b.loops([]geom.Loop{b.face})
	b.add(scene.Fill{Loops: face, Paint: paint})
	if b.Show.Textures {
		if rims := b.rims(); len(rims) > 0 {
			b.add(scene.Fill{Loops: face, Paint: scene.Paint{
				Texture: look.Relief(rims, b.s.Thickness, b.d.Finish.Polish, b.perMM())}})
		}
	}
	b.layArris(b.face, true)
}

// rims are the edges whose profile shows from above.
func (b *base) rims() []look.Rim {
	var out []look.Rim
	show := func(p design.Profile) bool { return p.Kind != design.ProfileSquare }
	for _, s := range b.s.Sides {
		if show(s.Profile) && !s.Wall {
			out = append(out, look.Rim{Points: s.Points, Profile: s.Profile})
		}
	}
	for _, o := range b.s.Openings {
		if o.Kind == slab.OpeningSink && show(o.Profile) {
			out = append(out, look.Rim{Points: o.Loop.Reversed(), Profile: o.Profile, Closed: true})
		}
	}
	return out
}

// layArris draws the pair of lines by which an edge is seen: light where it
// looks toward the light, dark where it looks away. Concrete lies to the left of
// the loop's direction.
func (b *base) layArris(l geom.Loop, outer bool) {
	n := len(l)
	if n < 3 {
		return
	}
	// Five grades, from dark to light; runs of the same grade are one line.
	grade := func(i int) int {
		out := l[(i+1)%n].Sub(l[i]).Unit().Left().Mul(-1)
		switch f := out.Dot(look.Light); {
		case f > 0.6:
			return 4
		case f > 0.15:
			return 3
		case f < -0.6:
			return 0
		case f < -0.15:
			return 1
		}
		return 2
	}
	width := 1.1
	lines := make([][][]geom.Vec, 5)
	in := b.path(offset(l, true, 0.5*b.pt(width)/b.Scale))
	start := 0
	for start < n && grade(start) == grade((start+n-1)%n) {
		start++
	}
	for k := 0; k < n; {
		g := grade((start + k) % n)
		run := []geom.Vec{in[(start+k)%n]}
		for k < n && grade((start+k)%n) == g {
			k++
			run = append(run, in[(start+k)%n])
		}
		lines[g] = append(lines[g], run)
	}
	colours := [5]scene.Colour{black(0x74), black(0x50), black(0x2c), white(0x5c), white(0x9c)}
	if !outer {
		colours[2] = black(0x40)
	}
	for g, c := range colours {
		if len(lines[g]) > 0 {
			b.add(scene.Stroke{Lines: lines[g], Width: b.pt(width), Colour: c})
		}
	}
}
