package tool

import (
	"fmt"
	"math"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/units"
)

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
	out[0].key, out[1].key = "before", "after"
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
	return field{name: name, value: a.Dist(b), from: a, to: b, beside: outward(a, b).Mul(-1), dir: dir, bare: true}
}

// topFields are the sizes of the top over all.
func topFields(d design.Design) []field {
	b := edit.Bounds(d.Outline)
	if b.Empty() {
		return nil
	}
	// The other size is that of the design as it stands, to the nanometre.
	size := func(d design.Design) (w, h units.Length) {
		b := edit.Bounds(d.Outline)
		return units.FromMM(b.W()), units.FromMM(b.H())
	}
	return []field{
		{name: "Width", value: b.W(), from: geom.Vec{X: b.Min.X, Y: b.Max.Y}, to: b.Max, beside: geom.Vec{Y: -1}, bare: true,
			set: positive("width", func(d design.Design, l units.Length) edit.Edit {
				_, h := size(d)
				return edit.Resize(l, h)
			})},
		{name: "Depth", value: b.H(), from: geom.Vec{X: b.Max.X, Y: b.Min.Y}, to: b.Max, beside: geom.Vec{X: -1}, bare: true,
			set: positive("depth", func(d design.Design, l units.Length) edit.Edit {
				w, _ := size(d)
				return edit.Resize(w, l)
			})},
	}
}

// edgeFields are how far the top reaches straight behind the middle of an edge, and
// the edge's length.
func edgeFields(nodes []design.Node, s slab.Solid, i int) []field {
	a, b := edgeEnds(nodes, i)
	out := outward(a, b)
	if out == (geom.Vec{}) {
		return nil
	}
	mid := a.Lerp(b, 0.5)
	across, ok := behind(mid, out.Mul(-1), s.Outline)
	if !ok {
		return nil
	}
	name := "Depth"
	if math.Abs(out.X) > math.Abs(out.Y) {
		name = "Width"
	}
	length := lengthField(nodes, i, b, a)
	dir := b.Sub(a).Unit()
	length.dir = geom.Vec{}
	// A longer edge carries the one after it along, square to it or not.
	length.set = positive("length", func(d design.Design, l units.Length) edit.Edit {
		a, b := edgeEnds(d.Outline.Nodes, i)
		e := edit.MoveEdge(wrap(i+1, len(d.Outline.Nodes)), point(dir.Mul(l.MM()-a.Dist(b))))
		e.Name = "Change edge length"
		return e
	})
	return []field{
		{name: name, value: across, from: mid.Sub(out.Mul(across)), to: mid, dir: out, beside: out.Left()},
		length,
	}
}

// behind is how far the top reaches along a unit vector behind a place on its rim,
// or before a rim that is bent inward: to where the line leaves the top first.
func behind(at, way geom.Vec, outline geom.Loop) (float64, bool) {
	const rim = 1e-3 // a crossing this near is the edge's own
	for _, t := range geom.NewFence(outline).Ray(at, way) {
		if t > rim && outline.Contains(at.Add(way.Mul(t-rim))) {
			return t, true
		}
	}
	return 0, false
}

// bendFields are the rise of an edge over its chord and the radius that it gives.
func bendFields(nodes []design.Node, g grip) []field {
	i := g.node
	e := nodes[i].Edge
	if e.Curve == design.CurveSpline {
		return nil
	}
	a, b := edgeEnds(nodes, i)
	mid := a.Lerp(b, 0.5)
	rise := 0.0
	if e.Curve == design.CurveArc {
		rise = e.Rise.MM()
	}
	bend := func(_ design.Design, v int64) (edit.Edit, error) { return edit.BendEdge(i, units.Length(v)), nil }
	out := []field{{
		name: "Rise", value: rise, from: mid, to: mid.Add(outward(a, b).Mul(rise)), set: bend,
		grip: g.kind == gripBend, beside: b.Sub(a).Unit(), hidden: rise == 0 && g.kind == gripEdge,
	}}
	if half := a.Dist(b) / 2; rise != 0 && half > 0 {
		r := (half*half + rise*rise) / (2 * math.Abs(rise))
		at := edgeMiddle(nodes, i)
		out = append(out, field{name: "Radius", value: r, from: at, to: at, set: bendTo(i),
			beside: outward(a, b).Mul(math.Copysign(1, rise))})
	}
	return out
}

// bendTo bends an edge to a radius, to the side to which it is bent, by the
// lesser arc over its chord.
func bendTo(i int) func(d design.Design, v int64) (edit.Edit, error) {
	return func(d design.Design, v int64) (edit.Edit, error) {
		a, b := edgeEnds(d.Outline.Nodes, i)
		r, half := units.Length(v).MM(), a.Dist(b)/2
		if r < half-1e-6 {
			return edit.Edit{}, fmt.Errorf("the radius can't be less than half the chord of the %s",
				edgeName(d.Outline.Nodes, i))
		}
		rise := r - math.Sqrt(math.Max(0, r*r-half*half))
		if d.Outline.Nodes[i].Edge.Rise < 0 {
			rise = -rise
		}
		return edit.BendEdge(i, units.FromMM(rise)), nil
	}
}

// roundFields are the size of a corner's cut, and its angle unless it is square.
func roundFields(nodes []design.Node, g grip, perMM float64) []field {
	i := g.node
	dir, sin, ok := bisector(nodes, i)
	if !ok {
		return nil
	}
	at, c := vec(nodes[i].At), nodes[i].Corner
	handle, _ := radiusHandle(nodes, i, perMM)
	tag := handle.Add(dir.Mul(radiusOut / perMM))
	f := field{name: "Radius", key: "Radius", from: handle, to: handle, tag: &tag, grip: g.kind == gripRadius,
		set: func(d design.Design, v int64) (edit.Edit, error) {
			return grip{kind: gripRadius, node: i}.setMeasure(d, units.Length(v))
		}}
	switch c.Kind {
	case design.CornerChamfered:
		f.name, f.value = "Chamfer", c.Size.MM()
	case design.CornerRounded:
		f.value = c.Size.MM()
		f.from = at.Add(dir.Mul(f.value / sin))
		f.to = f.from.Sub(dir.Mul(f.value))
	}
	out := []field{f}
	if angle := 360 / math.Pi * math.Asin(math.Min(1, sin)); math.Abs(angle-90) > 0.05 {
		out = append(out, field{name: "Angle", value: angle, angle: true, from: at, to: at, read: true,
			beside: dir.Mul(-1)})
	}
	return out
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
