package partsrow

import (
	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/board"
	"example.org/castwright/ui/bring"
	"example.org/castwright/ui/icon"
	"example.org/castwright/ui/panel"
	"fyne.io/fyne/v2"
)

// starter is something to pick: it is put in hand, applied, or takes a tool.
type starter struct {
	name, hint string
	sample     design.Design // what its picture shows
	below      bool          // the picture shows what is below the top
	put        *board.Put
	edit       *edit.Edit
	tool       *board.Tool
	bring      *bring.As       // from a file
	icon       fyne.Resource   // of a tool, nil for the pen
	profile    *design.Profile // its picture is a section
}

// inHandHint ends the hint of what is put in hand.
const inHandHint = " A click here takes it in hand, a click on the top sets it down."

// kit makes starters in round figures of the maker's system. Sizes are common
// practice, no source, unless it is said otherwise.
type kit struct {
	sys units.System
	d   design.Design // in hand
	box geom.Box      // of its outline
}

// size is a length in the maker's system: whole millimetres, or inches in whole
// 64ths.
func (k kit) size(mm int, inches float64) units.Length {
	if k.sys == units.Imperial {
		return units.Length(inches*64) * units.Inch / 64
	}
	return units.Length(mm) * units.Millimetre
}

// swatch is a plain piece of the top in hand, as large as a box about a part.
func (k kit) swatch(w, d units.Length) design.Design {
	out := design.Design{Outline: edit.Rectangle(w, d), Thickness: k.d.Thickness, Finish: k.d.Finish}
	for i := range out.Outline.Nodes {
		out.Outline.Nodes[i].Edge.Side = design.SideSeen
	}
	return out
}

// shapes are outlines of an overall size.
func (k kit) shapes(w, d units.Length) []starter {
	radius, rise := k.size(50, 2), min(d/6, k.size(90, 3.5))
	leg := min(d, w*2/5)
	deep := max(d*2, d+k.size(500, 20))
	round := min(w, max(d, k.size(900, 36)))
	list := []struct {
		name, hint string
		o          design.Outline
	}{
		{"Rectangle", "A plain top with its back at a wall.", edit.Rectangle(w, d)},
		{"Bowed front", "A rectangle whose front bows out.", edit.BowedFront(w, d, rise)},
		{"Angled front", "Deeper at its left end than at its right.", angledFront(w, d, rise)},
		{"Wave front", "A front that swings out and in.", waveFront(w, d, rise)},
		{"L", "Along the back wall with a return at the left; the depth is that of each run.", edit.LShape(w, d, leg, deep, radius)},
		{"U", "Along the back wall with a return at each side; the depth is that of each run.",
			edit.UShape(max(w, 3*leg), d, leg, leg, deep, radius)},
		{"Oval", "An ellipse, seen all round.", edit.Oval(w, d)},
		{"Round", "A disc, seen all round.", edit.Round(round)},
	}
	var out []starter
	for _, s := range list {
		o := k.placed(s.o)
		e := edit.SetOutline(o)
		sample := design.Design{Outline: o, Thickness: k.d.Thickness, Finish: k.d.Finish}
		out = append(out,
			starter{name: s.name,
				hint:   s.hint + " A click takes it; what is on the top stays where it is.",
				sample: sample, edit: &e})
	}
	tool := board.Outline
	return append(out,
		starter{name: "Draw it", hint: "Draw the outline corner by corner, typing lengths as you go.",
			tool: &tool}, fromFile(bring.Top))
}

// angledFront is a rectangle whose front runs aslant, less deep at the right.
func angledFront(w, d, less units.Length) design.Outline {
	o := edit.Rectangle(w, d)
	o.Nodes[1].At.Y += less
	return o
}

// waveFront is a rectangle whose front is a spline that swings by a rise.
func waveFront(w, d, rise units.Length) design.Outline {
	top := design.Design{Outline: edit.Rectangle(w, d)}
	bent, err := edit.SetSpline(0, design.Point{X: w / 3, Y: -rise}, design.Point{X: w * 2 / 3, Y: rise}).Apply(top)
	if err != nil {
		return top.Outline
	}
	return bent.Outline
}

// fromFile takes an outline from a file.
func fromFile(as bring.As) starter {
	return starter{name: "From a file", hint: "Take an outline from an SVG or DXF file.", bring: &as, icon: icon.Open}
}

// placed puts an outline where the one in hand lies, with its seen edges' profile.
func (k kit) placed(o design.Outline) design.Outline {
	profile := design.Profile{Kind: design.ProfileEased,
		Size: panel.StartSize(design.ProfileEased, k.sys)}
	for _, n := range k.d.Outline.Nodes {
		if n.Edge.Side == design.SideSeen {
			profile = n.Edge.Profile
			break
		}
	}
	by := design.Point{}
	if !k.box.Empty() {
		by = design.Point{X: units.FromMM(k.box.Min.X), Y: units.FromMM(k.box.Min.Y)}
	}
	nodes := append([]design.Node(nil), o.Nodes...)
	for i := range nodes {
		n := &nodes[i]
		n.At = n.At.Add(by)
		if n.Edge.Curve == design.CurveSpline {
			n.Edge.C1, n.Edge.C2 = n.Edge.C1.Add(by), n.Edge.C2.Add(by)
		}
		if n.Edge.Side == design.SideSeen {
			n.Edge.Profile = profile
		}
	}
	return design.Outline{Nodes: nodes}
}

// profiles are edges to give one edge, or with edge -1 all seen ones.
func (k kit) profiles(edgeIndex int) []starter {
	var out []starter
	for kind := design.ProfileSquare; kind <= design.ProfileRough; kind++ {
		p := design.Profile{Kind: kind, Size: panel.StartSize(kind, k.sys)}
		e := edit.SetSeenProfiles(p)
		if edgeIndex >= 0 {
			e = edit.SetProfile(edgeIndex, p)
		}
		out = append(out, starter{profile: &p, edit: &e})
	}
	return out
}
