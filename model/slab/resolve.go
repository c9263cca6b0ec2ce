package slab

import (
	"math"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
)

// Resolve places every part of a design and flattens its curves. It never
// fails: what can't be placed is left out or placed as well as may be, and
// stands in Faults.
func Resolve(d design.Design) Solid {
	s := Solid{Thickness: clamp(d.Thickness.MM(), 0, reach)}
	s.resolveOutline(d.Outline)
	for _, k := range d.Sinks {
		s.resolveSink(k)
	}
	for _, t := range d.Taps {
		s.resolveTaps(d, t)
	}
	for _, h := range d.Holes {
		if r := clamp(h.Diameter.MM(), 0, reach) / 2; r > 0 {
			s.Openings = append(s.Openings, round(h.ID, OpeningHole, 0, vec(h.At), r))
		}
	}
	for _, c := range d.Channels {
		s.Recesses = append(s.Recesses, resolveChannel(c))
	}
	for _, b := range d.Glass {
		s.Beds = append(s.Beds, Bed{
			Part:     b.ID,
			Loops:    regionLoops(b.Region),
			Grain:    b.Grain.MM(),
			Depth:    b.Depth.MM(),
			Coverage: b.Coverage.Fraction(),
		})
	}
	for _, p := range d.Supports {
		s.Bearings = append(s.Bearings, resolveSupport(p))
	}
	return s
}

func (s *Solid) resolveOutline(o design.Outline) {
	pieces, misfits := chain(o.Nodes)
	var vs []geom.Vertex
	for _, p := range pieces {
		vs = geom.Flatten(vs[:0], p.curve, Tolerance)
		points := make([]geom.Vec, len(vs))
		for i, v := range vs {
			points[i] = v.P
		}
		edge := o.Nodes[p.node].Edge
		s.Sides = append(s.Sides, Side{
			Node: p.node, Corner: p.corner, Points: points, Length: p.curve.Length(),
			Wall: edge.Side == design.SideWall, Profile: edge.Profile,
		})
		s.Outline = append(s.Outline, points[:len(points)-1]...)
	}
	for _, m := range misfits {
		s.Faults = append(s.Faults, design.Fault{Rule: "corner-size", At: o.Nodes[m.node].At,
			Detail: "the corner does not fit between its edges; it stays square"})
	}
}

// flattenChain flattens a closed chain of curves; it gives the loop and the
// exact length.
func flattenChain(curves []geom.Curve) (geom.Loop, float64) {
	var loop geom.Loop
	var vs []geom.Vertex
	length := 0.0
	for _, c := range curves {
		vs = geom.Flatten(vs[:0], c, Tolerance)
		for _, v := range vs[:len(vs)-1] {
			loop = append(loop, v.P)
		}
		length += c.Length()
	}
	return loop, length
}

func moved(curves []geom.Curve, rad float64, d geom.Vec) []geom.Curve {
	out := make([]geom.Curve, len(curves))
	for i, c := range curves {
		out[i] = c.Moved(rad, d)
	}
	return out
}

func round(id design.ID, kind OpeningKind, index int, at geom.Vec, r float64) Opening {
	loop, length := flattenChain(moved(circle(r), 0, at))
	return Opening{Part: id, Kind: kind, Index: index, Loop: loop, Centre: at, Diameter: 2 * r, Perimeter: length}
}

func (s *Solid) resolveSink(k design.Sink) {
	at, rot := vec(k.At), k.Rotation.Radians()
	bowl := Bowl{Part: k.ID, Mount: k.Mount, Back: geom.Vec{Y: 1}.Turn(rot)}
	grow, rim := 0.0, 0.0
	switch {
	case k.Mount == design.MountUnder && k.Reveal.Kind == design.RevealRimShows:
		grow = k.Reveal.Size.MM()
	case k.Mount == design.MountUnder && k.Reveal.Kind == design.RevealOverhang:
		grow = -k.Reveal.Size.MM()
	case k.Mount == design.MountOver:
		rim = k.Rim.MM()
	}
	bowl.Loop, _ = flattenChain(moved(shapeCurves(k.Shape, clamp(rim, 0, reach)), rot, at))
	s.Bowls = append(s.Bowls, bowl)
	if k.Mount == design.MountVessel {
		if r := clamp(k.Drain.MM(), 0, reach) / 2; r > 0 {
			s.Openings = append(s.Openings, round(k.ID, OpeningVesselDrain, 0, at, r))
		}
		return
	}
	loop, length := flattenChain(moved(shapeCurves(k.Shape, clamp(grow, -reach, reach)), rot, at))
	if len(loop) < 3 {
		return
	}
	o := Opening{Part: k.ID, Kind: OpeningSink, Loop: loop, Centre: at, Perimeter: length}
	if k.Shape.Kind == design.ShapeCircle {
		o.Diameter = length / math.Pi
	}
	if k.Mount == design.MountUnder {
		o.Profile = k.Profile
	}
	s.Openings = append(s.Openings, o)
}

// tapHoles gives the holes of a set relative to its place, before turning.
func tapHoles(t design.TapSet) []geom.Vec {
	const inch = 25.4
	switch t.Pattern {
	case design.TapThree4:
		return []geom.Vec{{X: -2 * inch}, {}, {X: 2 * inch}}
	case design.TapThree8:
		return []geom.Vec{{X: -4 * inch}, {}, {X: 4 * inch}}
	case design.TapOwn:
		var out []geom.Vec
		for _, h := range t.Holes {
			out = append(out, vec(h))
		}
		return out
	}
	return []geom.Vec{{}}
}

func (s *Solid) resolveTaps(d design.Design, t design.TapSet) {
	at, rot := vec(t.At), t.Rotation.Radians()
	for i, k := range d.Sinks {
		if t.Sink == "" || k.ID != t.Sink {
			continue
		}
		back := geom.Vec{Y: 1}.Turn(k.Rotation.Radians())
		right := geom.Vec{X: 1}.Turn(k.Rotation.Radians())
		from := vec(d.Sinks[i].At)
		if far := lastCrossing(s.Outline, from, back); far > 0 {
			at = from.Add(back.Mul(far - t.SetBack.MM())).Add(right.Mul(t.Offset.MM()))
			rot = k.Rotation.Radians()
		}
		break
	}
	r := clamp(t.Diameter.MM(), 0, reach) / 2
	if r <= 0 {
		return
	}
	for i, h := range tapHoles(t) {
		s.Openings = append(s.Openings, round(t.ID, OpeningTap, i, at.Add(h.Turn(rot)), r))
	}
}

// lastCrossing is the distance from p along the unit vector u to the last
// crossing of the loop, or -1.
func lastCrossing(l geom.Loop, p, u geom.Vec) float64 {
	far := -1.0
	for i, a := range l {
		b := l[(i+1)%len(l)]
		sa, sb := u.Cross(a.Sub(p)), u.Cross(b.Sub(p))
		if (sa <= 0) == (sb <= 0) {
			continue
		}
		far = math.Max(far, a.Lerp(b, sa/(sa-sb)).Sub(p).Dot(u))
	}
	return far
}

func resolveSupport(p design.Support) Bearing {
	b := Bearing{Part: p.ID, Kind: p.Kind, Patch: p.Patch}
	for _, q := range p.Line {
		b.Line = append(b.Line, vec(q))
	}
	if p.Patch {
		if len(b.Line) > 2 {
			b.Loops = []geom.Loop{geom.Loop(b.Line)}
		}
		return b
	}
	half := clamp(p.Width.MM(), 0, reach) / 2
	for i := 0; i+1 < len(b.Line); i++ {
		x, y := b.Line[i], b.Line[i+1]
		n := y.Sub(x).Unit().Left().Mul(half)
		b.Loops = append(b.Loops, geom.Loop{x.Sub(n), y.Sub(n), y.Add(n), x.Add(n)})
	}
	return b
}
