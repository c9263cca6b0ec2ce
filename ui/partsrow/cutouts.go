package partsrow

import (
	"example.org/castwright/model/design"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/board"
	"example.org/castwright/ui/bring"
	"example.org/castwright/ui/panel"
)

// sinks are basins of each mount.
func (k kit) sinks() []starter {
	shape := func(kind design.ShapeKind, w, d units.Length) design.Shape {
		return design.Shape{Kind: kind, Width: w, Depth: d}
	}
	rectangle := shape(design.ShapeRectangle, k.size(480, 19), k.size(330, 13))
	rectangle.CornerRadius = k.size(50, 2)
	bowed := shape(design.ShapeD, k.size(500, 20), k.size(400, 16))
	bowed.CornerRadius, bowed.Bow = k.size(40, 1.5), k.size(90, 3.5)
	round := shape(design.ShapeCircle, k.size(400, 16), k.size(400, 16))
	const vessel = "Stands on the face; only a drain hole goes through."
	list := []struct {
		name, hint string
		mount      design.Mount
		shape      design.Shape
	}{
		{"Under, oval", "Under-mount, oval.", design.MountUnder,
			shape(design.ShapeEllipse, k.size(430, 17), k.size(350, 14))},
		{"Under, rectangle", "Under-mount, rectangular with rounded corners.", design.MountUnder, rectangle},
		{"Under, D", "Under-mount, straight at the back and bowed in front.", design.MountUnder, bowed},
		{"Under, round", "Under-mount, round.", design.MountUnder, round},
		{"Over, rectangle", "Dropped in; its rim hides the cut-out's edge.", design.MountOver, rectangle},
		{"Vessel, round", vessel, design.MountVessel, round},
		{"Vessel, oval", vessel, design.MountVessel,
			shape(design.ShapeEllipse, k.size(520, 20), k.size(380, 15))},
	}
	var out []starter
	for _, i := range list {
		s := design.Sink{Mount: i.mount, Shape: i.shape, BowlDepth: k.size(140, 5.5), BowlMass: 9}
		switch s.Mount {
		case design.MountUnder:
			s.Profile.Kind = design.ProfileEased
			s.Profile.Size = panel.StartSize(design.ProfileEased, k.sys)
		case design.MountOver:
			s.Rim = k.size(15, 0.625)
		case design.MountVessel:
			s.Drain = k.size(45, 1.75)
		}
		m := k.size(90, 3.5)
		sample := k.swatch(s.Shape.Width+2*m, s.Shape.Depth+2*m)
		shown := s
		shown.ID, shown.At = "sink-1", design.Point{X: s.Shape.Width/2 + m, Y: s.Shape.Depth/2 + m}
		sample.Sinks = []design.Sink{shown}
		out = append(out, starter{name: i.name, hint: i.hint + inHandHint, sample: sample,
			put: &board.Put{Sink: &s}})
	}
	return append(out, fromFile(bring.Sink))
}

// taps are the usual patterns of tap holes.
func (k kit) taps() []starter {
	list := []struct {
		name, hint string
		p          design.TapPattern
	}{
		{"One hole", "A single hole for a mixer.", design.TapSingle},
		{"Three at 4 in", "Three holes, the outer two 4 in apart.", design.TapThree4},
		{"Three at 8 in", "Three holes, the outer two 8 in apart.", design.TapThree8},
	}
	var out []starter
	for _, i := range list {
		t := design.TapSet{Pattern: i.p, Diameter: k.size(35, 1.375)}
		sample := k.swatch(k.size(320, 12.5), k.size(140, 5.5))
		u := t
		u.ID, u.At = "taps-1", design.Point{X: k.size(160, 6.25), Y: k.size(70, 2.75)}
		sample.Taps = []design.TapSet{u}
		out = append(out,
			starter{name: i.name,
				hint:   i.hint + " Set down behind a sink they keep to its centreline." + inHandHint,
				sample: sample, put: &board.Put{Taps: &t}})
	}
	return out
}

// holes are plain round ones.
func (k kit) holes() []starter {
	list := []struct {
		name string
		kind design.HoleKind
		d    units.Length
	}{
		{"Drain", design.HoleDrain, k.size(45, 1.75)},
		{"Soap", design.HoleSoap, k.size(30, 1.25)},
		{"Cable", design.HoleCable, k.size(60, 2.375)},
		{"Other", design.HoleOther, k.size(35, 1.375)},
	}
	var out []starter
	for _, i := range list {
		h := design.Hole{Kind: i.kind, Diameter: i.d}
		sample := k.swatch(k.size(180, 7), k.size(110, 4.25))
		u := h
		u.ID, u.At = "hole-1", design.Point{X: k.size(90, 3.5), Y: k.size(55, 2.125)}
		sample.Holes = []design.Hole{u}
		out = append(out, starter{name: i.name, hint: "A plain hole, " + units.Format(i.d,
			k.sys) + " wide." + inHandHint,
			sample: sample, put: &board.Put{Hole: &h}})
	}
	return out
}
