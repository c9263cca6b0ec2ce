package edit

import (
	"fmt"
	"math"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
)

// BendEdge makes edge i an arc with this rise over its chord, positive
// outward on a counter-clockwise outline; 0 makes it straight.
func BendEdge(i int, rise units.Length) Edit {
	return edgeEdit("Bend edge", i, func(_ span, e design.Edge) (design.Edge, error) {
		if err := checkBound("the rise", rise); err != nil {
			return e, err
		}
		e.Curve, e.Rise, e.C1, e.C2 = design.CurveArc, rise, design.Point{}, design.Point{}
		if rise == 0 {
			e.Curve = design.CurveStraight
		}
		return e, nil
	})
}

// SetEdgeCurve turns edge i into another kind of curve, as near as may be to
// what it was: a spline starts as the line or arc that the edge was (an arc of
// up to a quarter turn is met within 0.03 % of its radius), an arc starts with
// the rise that the edge has at its middle, or a tenth of its chord when that
// is none.
func SetEdgeCurve(i int, kind design.CurveKind) Edit {
	name := map[design.CurveKind]string{
		design.CurveStraight: "Straighten edge",
		design.CurveArc:      "Bend edge",
		design.CurveSpline:   "Make edge a spline",
	}[kind]
	return edgeEdit(name, i, func(s span, e design.Edge) (design.Edge, error) {
		if kind > design.CurveSpline {
			return e, fmt.Errorf("curve kind %d is not known: use straight, arc or spline", kind)
		}
		if kind == e.Curve {
			return e, nil
		}
		return s.as(kind).edge(e), nil
	})
}

// as is the span as another kind of curve.
func (s span) as(kind design.CurveKind) span {
	out := span{kind: kind, a: s.a, b: s.b}
	chord := s.b.Sub(s.a)
	switch kind {
	case design.CurveArc:
		right := chord.Unit().Left().Mul(-1)
		out.rise = s.curve().At(0.5).Sub(s.a.Lerp(s.b, 0.5)).Dot(right)
		if math.Abs(out.rise) < 1e-6*chord.Norm() {
			out.rise = chord.Norm() / 10
		}
	case design.CurveSpline:
		out.c1, out.c2 = s.a.Lerp(s.b, 1.0/3), s.a.Lerp(s.b, 2.0/3)
		if s.kind == design.CurveArc {
			out.c1, out.c2 = s.handles()
		}
	}
	return out
}

// handles are the control points of the cubic that touches an arc at both ends
// and its crown.
func (s span) handles() (c1, c2 geom.Vec) {
	arc := s.arc()
	k := 4.0 / 3 * math.Tan(arc.Sweep/4)
	return s.a.Add(s.a.Sub(arc.Centre).Left().Mul(k)), s.b.Sub(s.b.Sub(arc.Centre).Left().Mul(k))
}

// SetSpline makes edge i a spline with these control points.
func SetSpline(i int, c1, c2 design.Point) Edit {
	return edgeEdit("Shape spline", i, func(_ span, e design.Edge) (design.Edge, error) {
		e.Curve, e.Rise, e.C1, e.C2 = design.CurveSpline, 0, c1, c2
		return e, nil
	})
}

// SetSide says whether edge i is seen or against a wall.
func SetSide(i int, side design.Side) Edit {
	name := "Show edge"
	if side == design.SideWall {
		name = "Put edge against wall"
	}
	return edgeEdit(name, i, func(_ span, e design.Edge) (design.Edge, error) {
		if side > design.SideWall {
			return e, fmt.Errorf("side %d is not known: use seen or wall", side)
		}
		e.Side = side
		return e, nil
	})
}

// SetProfile gives edge i a profile.
func SetProfile(i int, p design.Profile) Edit {
	return edgeEdit("Change edge profile", i, func(_ span, e design.Edge) (design.Edge, error) {
		if err := checkProfile(p); err != nil {
			return e, err
		}
		e.Profile = p
		return e, nil
	})
}

// SetSeenProfiles gives every seen edge of the outline this profile.
func SetSeenProfiles(p design.Profile) Edit {
	return outlineEdit("Change edge profiles", func(nodes []design.Node) ([]design.Node, error) {
		if err := checkProfile(p); err != nil {
			return nil, err
		}
		seen := false
		for i := range nodes {
			if nodes[i].Edge.Side == design.SideSeen {
				nodes[i].Edge.Profile, seen = p, true
			}
		}
		if !seen {
			return nil, fmt.Errorf("no edge of this outline is seen: set an edge as seen first")
		}
		return nodes, nil
	})
}

// edgeEdit is an edit of edge i alone.
func edgeEdit(name string, i int, f func(span, design.Edge) (design.Edge, error)) Edit {
	return outlineEdit(name, func(nodes []design.Node) ([]design.Node, error) {
		if err := atEdge(nodes, i); err != nil {
			return nil, err
		}
		e, err := f(spanOf(nodes, i), nodes[i].Edge)
		if err != nil {
			return nil, fmt.Errorf("edge %d: %w", i+1, err)
		}
		nodes[i].Edge = e
		return nodes, nil
	})
}

func checkProfile(p design.Profile) error {
	if p.Kind > design.ProfileRough {
		return fmt.Errorf("profile kind %d is not known: use square, eased, rounded, "+
			"bevelled, half round, full round or rough", p.Kind)
	}
	return checkLength("the profile's size", p.Size, 0)
}
