package partsrow

import (
	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/board"
)

// supports are what a top rests on.
func (k kit) supports() []starter {
	w, d := k.size(1200, 48), k.size(560, 22)
	if !k.box.Empty() {
		w, d = units.FromMM(k.box.W()), units.FromMM(k.box.H())
	}
	board18, ledger, leg, bracket := k.size(18, 0.75), k.size(40, 1.5), k.size(80,
		3), k.size(40, 1.5)
	at := func(x, y units.Length) design.Point { return design.Point{X: x, Y: y} }
	list := []struct {
		name, hint string
		s          design.Support
	}{
		{"Gable", "The side of a cabinet, front to back.",
			design.Support{Kind: design.SupportGable, Width: board18,
				Line: []design.Point{at(0, 0), at(0, d*9/10)}}},
		{"Rail", "The front rail of a cabinet, left to right.",
			design.Support{Kind: design.SupportRail, Width: board18,
				Line: []design.Point{at(0, 0), at(w*4/5, 0)}}},
		{"Wall bearing", "A ledger along a wall.", design.Support{Kind: design.SupportWall,
			Width: ledger, Line: []design.Point{at(0, 0), at(w, 0)}}},
		{"Bracket", "A bracket at the wall; local code and a licensed person decide on it.",
			design.Support{Kind: design.SupportBracket, Width: bracket,
				Line: []design.Point{at(0, 0), at(0, d*2/3)}}},
		{"Leg", "A leg, as a patch.", design.Support{Kind: design.SupportLeg, Patch: true,
			Line: []design.Point{at(0, 0), at(leg, 0), at(leg, leg), at(0, leg)}}},
	}
	var out []starter
	for _, i := range list {
		s := i.s
		sample := k.swatch(w, d)
		u := s
		u.ID = "support-1"
		by := at(w/2, d/20)
		switch s.Kind {
		case design.SupportRail:
			by = at(w/10, d/8)
		case design.SupportWall:
			by = at(0, d-ledger/2)
		case design.SupportBracket:
			by = at(w/2, d/3)
		case design.SupportLeg:
			by = at(w/10, d/8)
		}
		sample.Supports = []design.Support{u}
		if moved, err := edit.MovePart(u.ID, by).Apply(sample); err == nil {
			sample = moved
		}
		out = append(out, starter{name: i.name, hint: i.hint + inHandHint, sample: sample, below: true,
			put: &board.Put{Support: &s}})
	}
	if e, sample, ok := k.cabinet(w, d, board18); ok {
		out = append([]starter{{name: "Cabinet",
			hint: "Two gables and two rails under the whole top, at once.", sample: sample, below: true, edit: &e}}, out...)
	}
	tool := board.Support
	return append(out,
		starter{name: "Draw it", hint: "Draw the line that something carries the top along.",
			tool: &tool})
}

// cabinet is a cabinet under the whole box of the outline: gables at both sides,
// rails at front and back, set in as is usual for an overhang.
func (k kit) cabinet(w, d, thick units.Length) (edit.Edit, design.Design, bool) {
	side, front, back := k.size(25, 1), k.size(40, 1.5), k.size(20, 0.75)
	if w < 4*side || d < 2*(front+back) {
		return edit.Edit{}, design.Design{}, false
	}
	origin := design.Point{}
	if !k.box.Empty() {
		origin = design.Point{X: units.FromMM(k.box.Min.X), Y: units.FromMM(k.box.Min.Y)}
	}
	parts := func(o design.Point) []design.Support {
		x0, x1 := o.X+side+thick/2, o.X+w-side-thick/2
		y0, y1 := o.Y+front, o.Y+d-back
		line := func(kind design.SupportKind, a, b design.Point) design.Support {
			return design.Support{Kind: kind, Width: thick, Line: []design.Point{a, b}}
		}
		p := func(x, y units.Length) design.Point { return design.Point{X: x, Y: y} }
		return []design.Support{
			line(design.SupportGable, p(x0, y0), p(x0, y1)), line(design.SupportGable, p(x1, y0),
				p(x1, y1)),
			line(design.SupportRail, p(x0, y0+thick/2), p(x1, y0+thick/2)), line(design.SupportRail,
				p(x0, y1-thick/2), p(x1, y1-thick/2)),
		}
	}
	add := func(d design.Design, o design.Point) (design.Design, error) {
		out := d
		for _, s := range parts(o) {
			var err error
			if out, err = edit.AddSupport(s).Apply(out); err != nil {
				return d, err
			}
		}
		return out, nil
	}
	sample, err := add(k.swatch(w, d), design.Point{})
	return edit.Edit{Name: "Add cabinet", Apply: func(d design.Design) (design.Design,
		error) {
		return add(d, origin)
	}}, sample, err == nil
}
