package edit

import (
	"fmt"
	"math"
	"slices"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
)

// Resize gives the bounds of the outline this width and depth. Their left back
// corner stays in its place.
//
// The outline is stretched where that gives the size: corners right of the
// middle move right, corners in front of the middle move forward, the rest
// stays. So returns, bows, radii and clipped corners keep their own sizes. An
// outline that reaches its bounds by curves, such as a round one, can't be
// stretched so and is scaled: arcs become splines unless both scales agree.
//
// Sinks, holes, tap holes and channels keep their place relative to the middle
// of the bounds. Supports and glass beds are stretched, or scaled, with the
// outline, since they follow walls and cabinet. What relations hold follows
// these instead.
func Resize(width, depth units.Length) Edit {
	return keepingEdit("Resize top", func(d design.Design) (design.Design, error) {
		err := firstOf(
			checkLength("the width", width, units.Millimetre),
			checkLength("the depth", depth, units.Millimetre),
		)
		if err != nil {
			return d, err
		}
		old := boundsOf(d.Outline.Nodes)
		size := geom.Vec{X: old.W(), Y: old.H()}
		if size.X < tolerance || size.Y < tolerance {
			return d, fmt.Errorf("the outline has no size yet: draw or pick one first")
		}
		want := geom.Vec{X: width.MM(), Y: depth.MM()}
		if fits(size, want) {
			return d, nil
		}
		grow := want.Sub(size)
		var t transform = stretch{middle: old.Centre(),
			by: design.Point{X: units.FromMM(grow.X), Y: -units.FromMM(grow.Y)}}
		nodes := t.chain(d.Outline.Nodes)
		if now := boundsOf(nodes); !fits(geom.Vec{X: now.W(), Y: now.H()}, want) ||
			!fits(leftBack(now), leftBack(old)) || crossed(d.Outline.Nodes, nodes) {
			z := scaleTo(d.Outline.Nodes, old, want)
			t, nodes = z, z.chain(d.Outline.Nodes)
			d.Relations = remapped(d.Relations, z.edges(d.Outline.Nodes))
		}
		d.Outline.Nodes = nodes
		d = cloneParts(d)
		centre := point(geom.Vec{X: grow.X / 2, Y: -grow.Y / 2})
		shiftLoose(&d, centre)
		for i := range d.Glass {
			d.Glass[i].Region.Outer = t.chain(d.Glass[i].Region.Outer)
			for k, island := range d.Glass[i].Region.Islands {
				d.Glass[i].Region.Islands[k] = t.chain(island)
			}
		}
		for _, support := range d.Supports {
			for i := range support.Line {
				support.Line[i] = t.point(support.Line[i])
			}
		}
		return d, nil
	})
}

// shiftLoose moves all that keeps its place relative to the middle. Tap holes
// on a sink's centreline follow their sink by themselves: only the set-back
// counts there, and it is kept.
func shiftLoose(d *design.Design, by design.Point) {
	for i := range d.Sinks {
		d.Sinks[i].At = d.Sinks[i].At.Add(by)
	}
	for i := range d.Taps {
		if d.Taps[i].Sink == "" {
			d.Taps[i].At = d.Taps[i].At.Add(by)
		}
	}
	for i := range d.Holes {
		d.Holes[i].At = d.Holes[i].At.Add(by)
	}
	for i := range d.Channels {
		shiftChannel(&d.Channels[i], by)
	}
}

// transform is how an outline comes to its new size, and what follows it.
type transform interface {
	point(design.Point) design.Point
	chain([]design.Node) []design.Node
}

// tolerance is how near, in millimetres, a stretched outline must come to the
// size asked for.
const tolerance = 0.001

func fits(size, want geom.Vec) bool {
	return math.Abs(size.X-want.X) < tolerance && math.Abs(size.Y-want.Y) < tolerance
}

func leftBack(b geom.Box) geom.Vec { return geom.Vec{X: b.Min.X, Y: b.Max.Y} }

// crossed reports whether a straight edge of the chain has come to point
// another way, other than by its own stretching along x and y: the sign that
// the top was made so small that one side has passed the other.
func crossed(before, after []design.Node) bool {
	for i := range before {
		k := (i + 1) % len(before)
		was, is := before[k].At.Sub(before[i].At), after[k].At.Sub(after[i].At)
		if was.X > 0 && is.X < 0 || was.X < 0 && is.X > 0 ||
			was.Y > 0 && is.Y < 0 || was.Y < 0 && is.Y > 0 {
			return true
		}
	}
	return false
}

// stretch moves what lies right of the middle in x and what lies in front of
// it in y.
type stretch struct {
	middle geom.Vec
	by     design.Point
}

func (s stretch) shift(p design.Point) design.Point {
	var by design.Point
	if p.X.MM() > s.middle.X {
		by.X = s.by.X
	}
	if p.Y.MM() < s.middle.Y {
		by.Y = s.by.Y
	}
	return by
}

func (s stretch) point(p design.Point) design.Point { return p.Add(s.shift(p)) }

// chain stretches a closed chain. The control points of a spline take a third
// and two thirds of the way from its one end's shift to its other's: the curve
// is the old one and a straight drift.
func (s stretch) chain(nodes []design.Node) []design.Node {
	out := slices.Clone(nodes)
	for i, n := range nodes {
		a, b := s.shift(n.At), s.shift(nodes[(i+1)%len(nodes)].At)
		out[i].At = n.At.Add(a)
		if n.Edge.Curve == design.CurveSpline {
			out[i].Edge.C1 = n.Edge.C1.Add(between(a, b, 1))
			out[i].Edge.C2 = n.Edge.C2.Add(between(a, b, 2))
		}
	}
	return out
}

// between is the point thirds/3 of the way from a to b.
func between(a, b design.Point, thirds units.Length) design.Point {
	return design.Point{X: a.X + (b.X-a.X)*thirds/3, Y: a.Y + (b.Y-a.Y)*thirds/3}
}

// scale draws everything larger or smaller, such that from comes to lie at to.
type scale struct {
	from, to geom.Vec
	x, y     float64
}

// scaleTo is the scale that brings a chain to a size about its left back
// corner. The splines that stand for arcs stray from them by some millionths of
// the radius, so what they come to is measured and made good.
func scaleTo(nodes []design.Node, old geom.Box, want geom.Vec) scale {
	z := scale{leftBack(old), leftBack(old), want.X / old.W(), want.Y / old.H()}
	got := boundsOf(z.chain(nodes))
	more := geom.Vec{X: want.X / got.W(), Y: want.Y / got.H()}
	off := leftBack(got).Sub(z.to)
	z.x, z.y = z.x*more.X, z.y*more.Y
	z.to = z.to.Sub(geom.Vec{X: off.X * more.X, Y: off.Y * more.Y})
	return z
}

func (z scale) vec(v geom.Vec) geom.Vec {
	v = v.Sub(z.from)
	return z.to.Add(geom.Vec{X: v.X * z.x, Y: v.Y * z.y})
}

func (z scale) point(p design.Point) design.Point { return point(z.vec(vec(p))) }

// chain scales a closed chain. A circular arc stays one when both scales agree
// to a millionth, else it is drawn by splines of an eighth of a turn or less
// and scaled with them. Corners keep their own sizes.
func (z scale) chain(nodes []design.Node) []design.Node {
	var out []design.Node
	for i, n := range nodes {
		for k, s := range z.parts(nodes, i) {
			s.a, s.b, s.c1, s.c2 = z.vec(s.a), z.vec(s.b), z.vec(s.c1), z.vec(s.c2)
			s.rise *= z.x
			part := design.Node{At: point(s.a), Edge: s.edge(n.Edge)}
			if k == 0 {
				part.Corner = n.Corner
			}
			out = append(out, part)
		}
	}
	return out
}

// parts are the spans that stand for edge i when it is scaled.
func (z scale) parts(nodes []design.Node, i int) []span {
	s := spanOf(nodes, i)
	if even := math.Abs(z.x-z.y) < 1e-6*z.x; s.kind == design.CurveArc && !even {
		return s.eighths()
	}
	return []span{s}
}

// edges is the map from the edges of a chain to those of the scaled one.
func (z scale) edges(nodes []design.Node) edgeMap {
	first := make([]int, len(nodes)+1)
	for i := range nodes {
		first[i+1] = first[i] + len(z.parts(nodes, i))
	}
	return func(edge int, share float64) (int, float64) {
		if edge < 0 || edge >= len(nodes) {
			return edge, share
		}
		n := first[edge+1] - first[edge]
		k := min(n-1, int(share*float64(n)))
		return first[edge] + k, share*float64(n) - float64(k)
	}
}

// eighths parts an arc into cubics of an eighth of a turn or less.
func (s span) eighths() []span {
	n := int(math.Ceil(math.Abs(s.arc().Sweep)/(math.Pi/4) - 1e-9))
	var out []span
	rest := s
	for k := n; k > 0; k-- {
		part := rest
		if k > 1 {
			part, rest = rest.split(1 / float64(k))
		}
		out = append(out, part.as(design.CurveSpline))
	}
	return out
}
