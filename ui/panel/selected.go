package panel

import (
	"example.org/castwright/model/amount"
	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/session"
	"example.org/castwright/ui/words"
)

// fieldsOf is the fields of what is selected; with nothing selected those of the
// top. The name of what is selected goes over them.
func fieldsOf(s *session.Session) (name string, fields []field) {
	b := &sheet{sys: s.Job().Units, d: s.Design()}
	box := edit.Bounds(b.d.Outline)
	sel := s.Selection()
	switch {
	case len(sel) > 1:
		if len(s.SelectedParts()) < len(sel) {
			return amount.Count(len(sel), "thing") + " selected", nil
		}
		return amount.Count(len(sel), "part") + " selected", nil
	case len(sel) == 1 && sel[0].Part != "":
		b.part(sel[0].Part, box)
		if s.Locked(sel[0].Part) {
			b.freeze()
		}
		return words.Part(b.d, sel[0].Part), b.fields
	case len(sel) == 1 && sel[0].Node >= 0 && sel[0].Node < len(b.d.Outline.Nodes):
		if sel[0].Edge {
			b.edge(sel[0].Node)
			return words.Edge(b.d.Outline, sel[0].Node), b.fields
		}
		b.corner(sel[0].Node, box)
		return words.Corner(b.d.Outline, sel[0].Node), b.fields
	}
	b.top(box)
	return "Top", b.fields
}

func (b *sheet) top(box geom.Box) {
	if !box.Empty() {
		w, d := units.FromMM(box.W()), units.FromMM(box.H())
		b.length("Width", "Left to right over all.", w,
			func(l units.Length) edit.Edit { return edit.Resize(l, d) })
		b.length("Depth", "Front to back over all.", d,
			func(l units.Length) edit.Edit { return edit.Resize(w, l) })
	}
	b.length("Thickness", "Of the finished top.", b.d.Thickness, edit.SetThickness)
	f := b.d.Finish
	set := func(change func(*design.Finish)) edit.Edit {
		g := f
		change(&g)
		return edit.SetFinish(g)
	}
	b.colour("Colour", "Base colour of the concrete. It is never exactly so: say it to the client.",
		f.Colour, ofConcrete,
		func(c design.Colour) edit.Edit { return set(func(g *design.Finish) { g.Colour = c }) })
	b.choice("Face", "What makes up most of the ground face; the grind goes with it, unless it is one of your own.",
		words.Exposures, int(f.Exposure), func(i int) edit.Edit { return edit.SetExposure(design.Exposure(i), b.sys) })
	b.choice("Polish", "How much the face mirrors.", words.Polishes, f.Polish-1,
		func(i int) edit.Edit { return set(func(g *design.Finish) { g.Polish = i + 1 }) })
	b.length("Grind", "What grinding takes off the face; the form is that much deeper.", f.Grind,
		func(l units.Length) edit.Edit { return set(func(g *design.Finish) { g.Grind = l }) })
	b.notes("Notes", "Whatever is to be remembered of this option.", b.d.Notes, edit.SetNotes)
}

func (b *sheet) corner(i int, box geom.Box) {
	n := b.d.Outline.Nodes[i]
	c := n.Corner
	b.choice("Kind", "How the two edges meet.", words.Corners, int(c.Kind), func(k int) edit.Edit {
		q := design.Corner{Kind: design.CornerKind(k), Size: c.Size}
		if q.Size == 0 {
			q.Size = 25 * units.Millimetre
			if b.sys == units.Imperial {
				q.Size = units.Inch
			}
		}
		if q.Kind == design.CornerSquare {
			q.Size = 0
		}
		return edit.SetCorner(i, q)
	})
	if c.Kind != design.CornerSquare {
		label, hint := "Radius", "Radius of the rounding."
		if c.Kind == design.CornerChamfered {
			label, hint = "Cut", "How much of each edge is cut off."
		}
		b.length(label, hint, c.Size, func(l units.Length) edit.Edit {
			return edit.SetCorner(i, design.Corner{Kind: c.Kind, Size: l})
		})
	}
	b.position(n.At, box, "", func(p design.Point) edit.Edit { return edit.MoveNode(i, p) })
}

// position is the fields for a place, from the left and the front of the top.
func (b *sheet) position(at design.Point, box geom.Box, of string, e func(design.Point) edit.Edit) {
	left, front := units.FromMM(box.Min.X), units.FromMM(box.Min.Y)
	if box.Empty() {
		left, front = 0, 0
	}
	b.length("From left", of+"From the leftmost point of the top.", at.X-left,
		func(l units.Length) edit.Edit {
			return e(design.Point{X: left + l, Y: at.Y})
		})
	b.length("From front", of+"From the foremost point of the top.", at.Y-front,
		func(l units.Length) edit.Edit {
			return e(design.Point{X: at.X, Y: front + l})
		})
}

func (b *sheet) edge(i int) {
	nodes := b.d.Outline.Nodes
	n, next := nodes[i], nodes[(i+1)%len(nodes)]
	e := n.Edge
	b.choice("Against", "Whether the edge is seen, or hidden at a wall.", words.Sides, int(e.Side),
		func(k int) edit.Edit { return edit.SetSide(i, design.Side(k)) })
	if e.Side == design.SideSeen {
		b.profile("Profile", "Shape of the edge in section.", e.Profile, words.Profiles,
			func(p design.Profile) edit.Edit { return edit.SetProfile(i, p) })
	}
	b.choice("Run", "Shape of the edge seen from above.", words.Curves, int(e.Curve),
		func(k int) edit.Edit { return edit.SetEdgeCurve(i, design.CurveKind(k)) })
	if e.Curve == design.CurveArc {
		b.length("Rise", "How far the arc bows out over its chord; below zero it bows in.", e.Rise,
			func(l units.Length) edit.Edit { return edit.BendEdge(i, l) })
	}
	chord := geom.Vec{X: next.At.X.MM() - n.At.X.MM(), Y: next.At.Y.MM() - n.At.Y.MM()}.Norm()
	label := "Length"
	if e.Curve != design.CurveStraight {
		label = "Chord"
	}
	b.reading(label, "From corner to corner; drag an end to change it.",
		units.Format(units.FromMM(chord), b.sys))
}
