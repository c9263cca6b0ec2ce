package tool

import (
	"errors"
	"math"
	"slices"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/units"
)

// tapFields are a set's set-back from the back edge and its offset from the
// centreline of its sink.
func tapFields(d design.Design, s slab.Solid, t design.TapSet) []field {
	f, ok := tapFrame(d, s, t)
	if !ok {
		return nil
	}
	at := f.back.Add(f.right.Mul(t.Offset.MM())).Sub(f.up.Mul(t.SetBack.MM()))
	onLine := at.Sub(f.right.Mul(t.Offset.MM()))
	return []field{
		{name: "Set-back", value: t.SetBack.MM(), from: at.Add(f.up.Mul(t.SetBack.MM())), to: at,
			dir: f.up.Mul(-1), beside: f.right},
		{name: "Off the centreline", value: t.Offset.MM(), from: onLine, to: at,
			dir: f.right, beside: f.up.Mul(-1), hidden: t.Offset == 0},
	}
}

// frame is a sink's own axes: the place on the back edge on its centreline, and
// the unit vectors to its right and its back.
type frame struct {
	centre, back, right, up geom.Vec
}

// tapFrame is the frame of the sink whose centreline a set keeps to.
func tapFrame(d design.Design, s slab.Solid, t design.TapSet) (frame, bool) {
	p, ok := find(d, t.Sink)
	if !ok || p.sink == nil {
		return frame{}, false
	}
	return sinkFrame(*p.sink, s)
}

func sinkFrame(k design.Sink, s slab.Solid) (frame, bool) {
	f := frame{centre: vec(k.At)}
	f.right = geom.Vec{X: 1}.Turn(k.Rotation.Radians())
	f.up = f.right.Left()
	dist := castLast(f.centre, f.up, s.Outline)
	if math.IsInf(dist, 0) {
		return frame{}, false
	}
	f.back = f.centre.Add(f.up.Mul(dist))
	return f, true
}

// partFields are the gaps about a part and its sizes.
func partFields(d design.Design, s slab.Solid, p part, id design.ID) []field {
	if p.taps != nil && p.taps.Sink != "" {
		if out := tapFields(d, s, *p.taps); out != nil {
			return out
		}
	}
	return append(partGaps(d, s, p, id), ownFields(p, id)...)
}

// handleFields are the measure that a handle of a part changes.
func handleFields(d design.Design, s slab.Solid, p part, g grip) []field {
	var out []field
	own := 0
	for _, f := range ownFields(p, g.part) {
		if f.grip = g.kind == gripTurn && f.angle || g.kind == gripSize && !f.angle && own == g.side; f.grip {
			f.hidden = false
			out = append(out, f)
		}
		own++
	}
	if g.kind == gripSize {
		for _, f := range partGaps(d, s, p, g.part) { // what is left beside it
			f.read = true
			out = append(out, f)
		}
	}
	return out
}

// ownFields are a part's sizes and its turn: of a sink its width, its depth and
// its turn; of a hole its diameter; of a support its length and width.
func ownFields(p part, id design.ID) []field {
	switch {
	case p.sink != nil:
		return sinkFields(*p.sink)
	case p.hole != nil:
		at, r := vec(p.hole.At), p.hole.Diameter.MM()/2
		u := geom.Vec{X: 1}.Turn(math.Pi / 4)
		return []field{{name: "Diameter", value: 2 * r, from: at.Sub(u.Mul(r)), to: at.Add(u.Mul(r)), beside: u.Left(),
			set: positive("diameter", func(d design.Design, l units.Length) edit.Edit {
				q, _ := find(d, id)
				k := *q.hole
				k.Diameter = l
				return edit.SetHole(k)
			})}}
	case p.taps != nil:
		return []field{turnField(vec(p.taps.At), p.taps.Rotation, id)}
	case p.support != nil && !p.support.Patch && len(p.support.Line) == 2:
		return supportFields(*p.support)
	}
	return nil
}

func sinkFields(k design.Sink) []field {
	at, right := vec(k.At), geom.Vec{X: 1}.Turn(k.Rotation.Radians())
	size := func(name string, set func(*design.Shape, units.Length)) func(design.Design, int64) (edit.Edit, error) {
		return positive(name, func(d design.Design, l units.Length) edit.Edit {
			q, _ := find(d, k.ID)
			s := *q.sink
			set(&s.Shape, l)
			return edit.SetSink(s)
		})
	}
	across := func(name string, u geom.Vec, l units.Length, set func(*design.Shape, units.Length)) field {
		// Labelled beside the handle; the bowl is seen anyway.
		return field{name: name, value: l.MM(), from: at.Add(u.Mul(l.MM() * 0.3)), to: at.Add(u.Mul(l.MM() / 2)), beside: u.Left(), bare: true,
			set: size(small(name), set)}
	}
	width := func(s *design.Shape, l units.Length) { s.Width = l }
	switch k.Shape.Kind {
	case design.ShapePath:
		return []field{turnField(at, k.Rotation, k.ID)}
	case design.ShapeCircle:
		return []field{across("Diameter", right, k.Shape.Width, width)}
	}
	return []field{
		across("Width", right, k.Shape.Width, width),
		across("Depth", right.Left().Mul(-1), k.Shape.Depth, func(s *design.Shape, l units.Length) { s.Depth = l }),
		turnField(at, k.Rotation, k.ID),
	}
}

// turnField is the angle by which a part is turned, counter-clockwise.
func turnField(at geom.Vec, now units.Angle, id design.ID) field {
	return field{name: "Turned", value: now.Degrees(), angle: true, from: at, to: at, hidden: now == 0,
		set: func(d design.Design, v int64) (edit.Edit, error) {
			p, _ := find(d, id)
			switch {
			case p.sink != nil:
				return edit.RotatePart(id, units.Angle(v)-p.sink.Rotation), nil
			case p.taps != nil:
				return edit.RotatePart(id, units.Angle(v)-p.taps.Rotation), nil
			}
			return edit.Edit{}, errors.New("this can't be turned")
		}}
}

func supportFields(k design.Support) []field {
	a, b := vec(k.Line[0]), vec(k.Line[1])
	u := b.Sub(a).Unit()
	half := u.Left().Mul(k.Width.MM() / 2)
	mid := a.Lerp(b, 0.5)
	change := func(name string, set func(*design.Support, units.Length)) func(design.Design, int64) (edit.Edit, error) {
		return positive(name, func(d design.Design, l units.Length) edit.Edit {
			q, _ := find(d, k.ID)
			s := *q.support
			s.Line = slices.Clone(s.Line)
			set(&s, l)
			return edit.SetSupport(s)
		})
	}
	return []field{
		{name: "Length", value: a.Dist(b), from: a, to: b, beside: u.Left(), bare: true,
			set: change("length", func(s *design.Support, l units.Length) {
				a, b := vec(s.Line[0]), vec(s.Line[1])
				u, mid := b.Sub(a).Unit(), a.Lerp(b, 0.5)
				s.Line[0], s.Line[1] = point(mid.Sub(u.Mul(l.MM()/2))), point(mid.Add(u.Mul(l.MM()/2)))
			})},
		{name: "Width", value: k.Width.MM(), from: mid.Sub(half), to: mid.Add(half), beside: u,
			set: change("width", func(s *design.Support, l units.Length) { s.Width = l })},
	}
}

func widthFields(r design.River, g grip) []field {
	node := g.node
	at, w := vec(r.Nodes[node].At), r.Nodes[node].Width.MM()
	side := bank(r, node, 0).Mul(w / 2)
	return []field{{name: "Width", value: w, from: at.Sub(side), to: at.Add(side), grip: g.kind == gripWidth,
		set: func(d design.Design, v int64) (edit.Edit, error) {
			return edit.SetRiverWidth(g.part, g.group, node, units.Length(v)), nil
		}, beside: bank(r, node, 0).Left()}}
}

// endFields are the lengths of a support beside one of its points, and the place
// of the point.
func endFields(k design.Support, d design.Design, g grip) []field {
	i := g.node
	var out []field
	at := vec(k.Line[i])
	add := func(j int, name string) {
		other := vec(k.Line[j])
		dir := at.Sub(other).Unit()
		if dir == (geom.Vec{}) {
			return
		}
		out = append(out, field{name: name, value: at.Dist(other), from: other, to: at, dir: dir, beside: dir.Left(), bare: true})
	}
	switch n := len(k.Line); {
	case n == 2:
		add(1-i, "Length")
	default:
		if i > 0 || k.Patch {
			add(wrap(i-1, n), "Length before")
		}
		if i+1 < n || k.Patch {
			add(wrap(i+1, n), "Length after")
		}
	}
	return append(out, placeFields(d, at)...)
}

// partGaps are the distances from a part to what lies beside it. A sink's are
// measured from its cut-out, a vessel's from its bowl.
func partGaps(d design.Design, s slab.Solid, p part, id design.ID) []field {
	loops := loopsOf(s, id)
	what := matterOfPart(s, id)
	switch {
	case p.hole != nil:
		// Exactly: a flattened circle keeps its area, not its reach.
		return gaps(s, id, what, func(u geom.Vec) (geom.Vec, bool) {
			return vec(p.hole.At).Add(u.Mul(p.hole.Diameter.MM() / 2)), true
		})
	case p.sink == nil:
		return gaps(s, id, what, farthestOf(loops))
	case p.sink.Mount == design.MountVessel:
		return gaps(s, id, matterOther, farthestOf(loops))
	}
	loops = nil
	for _, o := range s.Openings {
		if o.Part == id {
			loops = append(loops, o.Loop)
		}
	}
	return gaps(s, id, what, func(u geom.Vec) (geom.Vec, bool) {
		at, ok := farthest(u, loops)
		if reach, exact := sinkReach(*p.sink, u); ok && exact {
			at = at.Add(u.Mul(vec(p.sink.At).Dot(u) + reach - at.Dot(u)))
		}
		return at, ok
	})
}

// farthestOf is [farthest] of some loops.
func farthestOf(loops []geom.Loop) func(geom.Vec) (geom.Vec, bool) {
	return func(u geom.Vec) (geom.Vec, bool) { return farthest(u, loops) }
}

// sinkReach is how far a sink's cut-out reaches from its centre along u, exactly
// (a flattened curve falls short of it by up to the tolerance): known for round
// and oval ones in every direction, for others along their own axes.
func sinkReach(k design.Sink, u geom.Vec) (float64, bool) {
	grow := 0.0
	if k.Mount == design.MountUnder {
		switch k.Reveal.Kind {
		case design.RevealRimShows:
			grow = k.Reveal.Size.MM()
		case design.RevealOverhang:
			grow = -k.Reveal.Size.MM()
		}
	}
	right := geom.Vec{X: 1}.Turn(k.Rotation.Radians())
	x, y := u.Dot(right), u.Dot(right.Left())
	a, b := k.Shape.Width.MM()/2, k.Shape.Depth.MM()/2
	switch k.Shape.Kind {
	case design.ShapeCircle:
		return a + grow, true
	case design.ShapeEllipse:
		return math.Hypot(a*x, b*y) + grow, true
	case design.ShapePath:
		return 0, false
	}
	switch {
	case math.Abs(y) < 1e-9:
		return a + grow, true
	case math.Abs(x) < 1e-9:
		return b + grow, true
	}
	return 0, false
}

// gaps are the distances from a thing on the top to what it meets first to the
// left, right, front and back: the outline, or another opening. reach is the
// place of the thing that lies farthest in a direction, what says what it is.
func gaps(s slab.Solid, id design.ID, what matter, reach func(geom.Vec) (geom.Vec, bool)) []field {
	var out []field
	for _, side := range [...]struct {
		u    geom.Vec
		name string
	}{
		{geom.Vec{X: -1}, "To the left"}, {geom.Vec{X: 1}, "To the right"},
		{geom.Vec{Y: -1}, "Rail in front"}, {geom.Vec{Y: 1}, "Rail behind"},
	} {
		from, ok := reach(side.u)
		if !ok {
			continue
		}
		if !s.Outline.Contains(from) {
			// A cut-out or hole that runs over the edge: by how much.
			back := cast(from, side.u.Mul(-1), s.Outline)
			if (what == matterSink || what == matterRound) && !math.IsInf(back, 0) {
				out = append(out, field{name: side.name, value: -back, from: from.Sub(side.u.Mul(back)), to: from,
					dir: side.u.Mul(-1), beside: side.u.Left(), met: matterEdge, low: low{severe: true, over: true}})
			}
			continue
		}
		dist, met := cast(from, side.u, s.Outline), matterEdge
		for _, o := range s.Openings {
			if o.Part == id {
				continue
			}
			if t := cast(from, side.u, o.Loop); t < dist {
				dist, met = t, matterOf(o.Kind)
			}
		}
		if math.IsInf(dist, 0) {
			continue
		}
		f := field{
			name: side.name, value: dist, from: from, to: from.Add(side.u.Mul(dist)),
			dir: side.u.Mul(-1), beside: side.u.Left(), met: met,
		}
		if code, ok := between(what, met); ok {
			f.low = lowOf(code, dist, s.Thickness)
		}
		out = append(out, f)
	}
	return out
}
