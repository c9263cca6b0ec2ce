package tool

import (
	"math"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/slab"
)

// field is one measure of the thing in hand: shown live, and set by typing.
type field struct {
	name     string
	value    float64 // mm
	from, to geom.Vec
	beside   geom.Vec // side on which the label stands off
	// dir is the unit vector along which the grip moves to make the value
	// grow one for one. It is zero for a measure of the grip itself, such as
	// a radius, and for what can only be read.
	dir  geom.Vec
	own  bool // the grip's own measure: radius, rise, width
	read bool // can't be set
	bare bool // of a line that is seen anyway
	tag  *geom.Vec
}

// fields are the measures of the grip in the design as it stands.
func (g grip) fields(d design.Design, s slab.Solid, perMM float64) []field {
	if !g.exists(d) {
		return nil
	}
	nodes := d.Outline.Nodes
	p, _ := find(d, g.part)
	switch g.kind {
	case gripCorner:
		return append(cornerFields(nodes, g.node), radiusFields(nodes, g.node, perMM)...)
	case gripEdge:
		return edgeFields(nodes, s, g.node)
	case gripBend:
		return bendFields(nodes, g.node)
	case gripRadius:
		return radiusFields(nodes, g.node, perMM)
	case gripControl:
		return controlFields(nodes, g.node, g.side)
	case gripPart:
		if p.taps != nil && p.taps.Sink != "" {
			if out := tapFields(d, s, *p.taps); out != nil {
				return out
			}
		}
		return partGaps(d, s, g.part)
	case gripRiver:
		at := vec(p.channel.Rivers[g.group].Nodes[g.node].At)
		return gaps(s, g.part, farthestOf([]geom.Loop{{at}}))
	case gripWidth:
		return widthFields(p.channel.Rivers[g.group], g.node)
	case gripNode:
		return cornerFields(chainOf(p.regions()[g.group], g.chain), g.node)
	case gripEnd:
		return endFields(*p.support, s, g.part, g.node)
	}
	return nil
}

// cornerFields are the lengths of the two edges at a corner.
func cornerFields(nodes []design.Node, i int) []field {
	n := len(nodes)
	if n < 2 {
		return nil
	}
	before := wrap(i-1, n)
	out := []field{
		lengthField(nodes, before, vec(nodes[i].At), vec(nodes[before].At)),
		lengthField(nodes, i, vec(nodes[i].At), vec(nodes[wrap(i+1, n)].At)),
	}
	if out[0].name == out[1].name {
		out[0].name += " before the corner"
		out[1].name += " after the corner"
	}
	return out
}

// lengthField is the length of an edge, measured to a moving corner from the
// one at its other end.
func lengthField(nodes []design.Node, edge int, moving, fixed geom.Vec) field {
	a, b := edgeEnds(nodes, edge)
	name := capital(edgeName(nodes, edge))
	if nodes[edge].Edge.Curve != design.CurveStraight {
		name = "Chord of the " + edgeName(nodes, edge)
	}
	dir := moving.Sub(fixed).Unit()
	if dir == (geom.Vec{}) {
		dir = geom.Vec{X: 1}
	}
	return field{name: name, value: a.Dist(b), from: a, to: b, beside: outward(a, b), dir: dir, bare: true}
}

// edgeFields are how far the top reaches behind an edge, and the edge's length.
func edgeFields(nodes []design.Node, s slab.Solid, i int) []field {
	a, b := edgeEnds(nodes, i)
	out := outward(a, b)
	if out == (geom.Vec{}) {
		return nil
	}
	far, ok := farthest(out.Mul(-1), []geom.Loop{s.Outline})
	if !ok {
		return nil
	}
	mid := a.Lerp(b, 0.5)
	across := mid.Sub(far).Dot(out)
	name := "Depth"
	if math.Abs(out.X) > math.Abs(out.Y) {
		name = "Width"
	}
	length := lengthField(nodes, i, b, a)
	length.read = true
	return []field{
		{name: name, value: across, from: mid.Sub(out.Mul(across)), to: mid, dir: out, beside: out.Left()},
		length,
	}
}

// bendFields are the rise of an edge over its chord and the radius that it gives.
func bendFields(nodes []design.Node, i int) []field {
	a, b := edgeEnds(nodes, i)
	mid := a.Lerp(b, 0.5)
	rise := 0.0
	if nodes[i].Edge.Curve == design.CurveArc {
		rise = nodes[i].Edge.Rise.MM()
	}
	out := []field{{
		name: "Rise", value: rise, from: mid, to: mid.Add(outward(a, b).Mul(rise)),
		own: true, beside: b.Sub(a).Unit(),
	}}
	if half := a.Dist(b) / 2; rise != 0 && half > 0 {
		r := (half*half + rise*rise) / (2 * math.Abs(rise))
		at := edgeMiddle(nodes, i)
		out = append(out, field{name: "Radius", value: r, from: at, to: at,
			read: true, beside: outward(a, b).Mul(math.Copysign(1, rise))})
	}
	return out
}

func radiusFields(nodes []design.Node, i int, perMM float64) []field {
	dir, sin, ok := bisector(nodes, i)
	if !ok {
		return nil
	}
	at, c := vec(nodes[i].At), nodes[i].Corner
	handle, _ := radiusHandle(nodes, i, perMM)
	tag := handle.Add(dir.Mul(radiusOut / perMM))
	f := field{name: "Radius", from: handle, to: handle, own: true, tag: &tag}
	switch c.Kind {
	case design.CornerChamfered:
		f.name, f.value = "Chamfer", c.Size.MM()
	case design.CornerRounded:
		f.value = c.Size.MM()
		f.from = at.Add(dir.Mul(f.value / sin))
		f.to = f.from.Sub(dir.Mul(f.value))
	}
	return []field{f}
}

func controlFields(nodes []design.Node, i, side int) []field {
	a, b := edgeEnds(nodes, i)
	root, at := a, vec(nodes[i].Edge.C1)
	if side == 1 {
		root, at = b, vec(nodes[i].Edge.C2)
	}
	dir := at.Sub(root).Unit()
	if dir == (geom.Vec{}) {
		dir = b.Sub(a).Unit()
	}
	return []field{{name: "Reach of the handle", value: at.Dist(root), from: root, to: at, dir: dir, beside: dir.Left()}}
}

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
			dir: f.right, beside: f.up.Mul(-1)},
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

func widthFields(r design.River, node int) []field {
	at, w := vec(r.Nodes[node].At), r.Nodes[node].Width.MM()
	side := bank(r, node, 0).Mul(w / 2)
	return []field{{name: "Width", value: w, from: at.Sub(side), to: at.Add(side), own: true,
		beside: bank(r, node, 0).Left()}}
}

// endFields are the lengths of a support beside one of its points, and the gaps
// from there to the edges.
func endFields(k design.Support, s slab.Solid, id design.ID, i int) []field {
	var out []field
	at := vec(k.Line[i])
	add := func(j int, name string) {
		other := vec(k.Line[j])
		dir := at.Sub(other).Unit()
		if dir == (geom.Vec{}) {
			return
		}
		out = append(out, field{name: name, value: at.Dist(other), from: other, to: at, dir: dir, beside: dir.Left()})
	}
	if i > 0 || k.Patch {
		add(wrap(i-1, len(k.Line)), "Length before")
	}
	if i+1 < len(k.Line) || k.Patch {
		add(wrap(i+1, len(k.Line)), "Length after")
	}
	return append(out, gaps(s, id, farthestOf([]geom.Loop{{at}}))...)
}

// partGaps are the distances from a part to what lies beside it. A sink's are
// measured from its cut-out, a vessel's from its bowl.
func partGaps(d design.Design, s slab.Solid, id design.ID) []field {
	loops := loopsOf(s, id)
	p, _ := find(d, id)
	if p.sink == nil || p.sink.Mount == design.MountVessel {
		return gaps(s, id, farthestOf(loops))
	}
	loops = nil
	for _, o := range s.Openings {
		if o.Part == id {
			loops = append(loops, o.Loop)
		}
	}
	return gaps(s, id, func(u geom.Vec) (geom.Vec, bool) {
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
// place of the thing that lies farthest in a direction.
func gaps(s slab.Solid, id design.ID, reach func(geom.Vec) (geom.Vec, bool)) []field {
	others := []geom.Loop{s.Outline}
	for _, o := range s.Openings {
		if o.Part != id {
			others = append(others, o.Loop)
		}
	}
	var out []field
	for _, side := range [...]struct {
		u    geom.Vec
		name string
	}{
		{geom.Vec{X: -1}, "To the left"}, {geom.Vec{X: 1}, "To the right"},
		{geom.Vec{Y: -1}, "Rail in front"}, {geom.Vec{Y: 1}, "Rail behind"},
	} {
		from, ok := reach(side.u)
		if !ok || !s.Outline.Contains(from) {
			continue
		}
		dist := cast(from, side.u, others...)
		if math.IsInf(dist, 0) {
			continue
		}
		out = append(out, field{
			name: side.name, value: dist, from: from, to: from.Add(side.u.Mul(dist)),
			dir: side.u.Mul(-1), beside: side.u.Left(),
		})
	}
	return out
}
