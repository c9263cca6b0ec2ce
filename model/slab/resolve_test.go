package slab_test

import (
	"fmt"
	"math"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/units"
)

func only(s slab.Solid, kind slab.OpeningKind) []slab.Opening {
	var out []slab.Opening
	for _, o := range s.Openings {
		if o.Kind == kind {
			out = append(out, o)
		}
	}
	return out
}

// The sides run in order round the outline, end to end; a corner's cut is shared
// by the edge that arrives and the one that leaves.
func TestSides(t *testing.T) {
	n := rectangle(1000, 500)
	n[1].Corner = design.Corner{Kind: design.CornerRounded, Size: mm(60)}
	n[3].Corner = design.Corner{Kind: design.CornerChamfered, Size: mm(30)}
	d := top(38, profile(design.ProfileEased, 2), n)
	d.Outline.Nodes[0].Edge.Profile = profile(design.ProfileHalfRound, 0)
	d.Outline.Nodes[2].Edge.Side = design.SideWall
	s := slab.Resolve(d)
	var got []string
	for _, side := range s.Sides {
		got = append(got, fmt.Sprintf("%d/%d", side.Node, side.Corner))
	}
	if want := "[0/-1 0/1 1/1 1/-1 2/-1 2/3 3/3 3/-1]"; fmt.Sprint(got) != want {
		t.Errorf("sides %v, want %s", got, want)
	}
	for i, side := range s.Sides {
		next := s.Sides[(i+1)%len(s.Sides)]
		if side.Points[len(side.Points)-1] != next.Points[0] {
			t.Errorf("side %d ends at %v, the next starts at %v", i, side.Points[len(side.Points)-1], next.Points[0])
		}
		if wall := side.Node == 2; side.Wall != wall {
			t.Errorf("side %d: wall is %v", i, side.Wall)
		}
		if half := side.Profile.Kind == design.ProfileHalfRound; half != (side.Node == 0) {
			t.Errorf("side %d: profile %v", i, side.Profile)
		}
	}
	// Half of a quarter circle, half of a chamfer's hypotenuse.
	near(t, "half a fillet", s.Sides[1].Length, math.Pi/4*60, 1e-9)
	near(t, "half a chamfer", s.Sides[5].Length, 30*math.Sqrt2/2, 1e-9)
	m := s.Measure(0)
	near(t, "wall", m.WallLength, 970+30*math.Sqrt2/2, 1e-9)
	near(t, "seen", m.SeenLength, m.OutlinePerimeter-m.WallLength, 1e-9)
}

// A corner that does not fit stays square and says what would fit.
func TestCornerThatDoesNotFit(t *testing.T) {
	n := rectangle(1000, 100)
	n[1].Corner = design.Corner{Kind: design.CornerRounded, Size: mm(80)}
	n[2].Corner = design.Corner{Kind: design.CornerRounded, Size: mm(40)}
	d := top(38, design.Profile{}, n)
	d.Finish.Polish = 1
	s := slab.Resolve(d)
	if len(s.Faults) != 1 || s.Faults[0].Rule != design.RuleCorner || s.Faults[0].Field != "outline.nodes[1].corner.size_mm" {
		t.Fatalf("faults %v", s.Faults)
	}
	want := "corner 2 has a radius of 80 mm, which does not fit between its edges: at most 60.00 mm fits; until then it stays square"
	if s.Faults[0].Detail != want {
		t.Errorf("%q, want %q", s.Faults[0].Detail, want)
	}
	near(t, "area", s.Measure(0).PlanArea, 100000-(1-math.Pi/4)*1600, 1e-4)
}

func TestGeometryFaults(t *testing.T) {
	for _, c := range []struct {
		name  string
		rule  design.Rule
		field string
		edit  func(d *design.Design)
	}{
		{"clockwise", design.RuleDirection, "outline.nodes", func(d *design.Design) {
			d.Outline.Nodes = nodes(0, 0, 0, 500, 1000, 500, 1000, 0)
		}},
		{"bow tie", design.RuleCrossing, "outline.nodes", func(d *design.Design) {
			d.Outline.Nodes = nodes(0, 0, 1000, 500, 1000, 0, 200, 600)
		}},
		{"a curve over another edge", design.RuleCrossing, "outline.nodes", func(d *design.Design) {
			d.Outline.Nodes[0].Edge = design.Edge{Curve: design.CurveArc, Rise: mm(-600)}
		}},
		{"no area", design.RuleDegenerate, "outline.nodes", func(d *design.Design) { d.Outline.Nodes = nodes(0, 0, 500, 0, 1000, 0) }},
		{"a hole beside the top", design.RuleOutside, "", func(d *design.Design) {
			d.Holes = []design.Hole{{ID: "h", At: pt(1200, 100), Diameter: mm(50)}}
		}},
		{"a hole round the top", design.RuleOutside, "", func(d *design.Design) {
			d.Holes = []design.Hole{{ID: "h", At: pt(500, 250), Diameter: mm(5000)}}
		}},
		{"taps of no sink", design.RuleReference, "taps[0].sink", func(d *design.Design) {
			d.Taps = []design.TapSet{{ID: "t", Sink: "gone", Diameter: mm(35), At: pt(500, 400)}}
		}},
		{"a sink smaller than its overhang", design.RuleShape, "sinks[0].shape", func(d *design.Design) {
			d.Sinks = []design.Sink{{ID: "s", At: pt(500, 250), Shape: sinkShape(design.ShapeEllipse, 30, 20),
				Reveal: design.Reveal{Kind: design.RevealOverhang, Size: mm(12)}}}
		}},
		{"a crossing path", design.RuleCrossing, "sinks[0].shape.path", func(d *design.Design) {
			d.Sinks = []design.Sink{{ID: "s", At: pt(500, 250), Mount: design.MountOver,
				Shape: design.Shape{Kind: design.ShapePath, Path: nodes(-50, -50, 50, 60, 50, -50, -80, 70)}}}
		}},
		{"a river off the top", design.RuleOutside, "", func(d *design.Design) {
			d.Channels = []design.Channel{{ID: "r", Depth: mm(5), Rivers: []design.River{river(0, 0, 100, 900, 20, 800, 900, 20)}}}
		}},
		{"a river that folds", design.RuleFold, "channels[0].rivers[0]", func(d *design.Design) {
			d.Channels = []design.Channel{{ID: "r", Depth: mm(5), Rivers: []design.River{river(0, 0, 300, 200, 90, 400, 300, 90, 420, 180, 90)}}}
		}},
		{"an island outside", design.RuleOutside, "channels[0].regions[0].islands[0]", func(d *design.Design) {
			d.Channels = []design.Channel{{ID: "r", Depth: mm(5), Regions: []design.Region{{
				Outer: nodes(100, 100, 300, 100, 300, 300, 100, 300), Islands: [][]design.Node{nodes(500, 100, 600, 100, 600, 200)}}}}}
		}},
		{"a clockwise bed", design.RuleDirection, "glass_beds[0].region.outer", func(d *design.Design) {
			d.Glass = []design.GlassBed{{ID: "b", Grain: mm(5), Depth: mm(5), Region: design.Region{Outer: nodes(100, 100, 100, 300, 300, 300)}}}
		}},
	} {
		d := top(38, design.Profile{}, rectangle(1000, 500))
		d.Finish.Polish = 1
		if f := slab.Validate(d); len(f) != 0 {
			t.Fatalf("the plain top has faults: %v", f)
		}
		c.edit(&d)
		faults := slab.Validate(d)
		if len(faults) != 1 || faults[0].Rule != c.rule || faults[0].Field != c.field {
			t.Errorf("%s: %v, want one of %s at %q", c.name, faults, c.rule, c.field)
		}
	}
}

func river(start, end design.RiverEnd, xyw ...float64) design.River {
	v := design.River{Start: start, End: end}
	for i := 0; i < len(xyw); i += 3 {
		v.Nodes = append(v.Nodes, design.RiverNode{At: pt(xyw[i], xyw[i+1]), Width: mm(xyw[i+2])})
	}
	return v
}

// Taps keep to the centreline of a turned sink: set back from the last edge
// behind it, moved to its right, spread along its right.
func TestTapsBehindSink(t *testing.T) {
	d := top(38, design.Profile{}, rectangle(1000, 500))
	d.Sinks = []design.Sink{{ID: "s", At: pt(400, 200), Rotation: 90 * units.Degree, Shape: sinkShape(design.ShapeRectangle, 300, 200)}}
	d.Taps = []design.TapSet{{ID: "t", Pattern: design.TapThree8, Diameter: mm(35), Sink: "s", SetBack: mm(50), Offset: mm(10)}}
	// Turned a quarter counter-clockwise its back looks to the left edge and its
	// right to the back wall.
	holes := only(slab.Resolve(d), slab.OpeningTap)
	if len(holes) != 3 {
		t.Fatalf("%d holes", len(holes))
	}
	for i, h := range holes {
		want := geom.Vec{X: 50, Y: 210 + float64(i-1)*4*25.4}
		near(t, fmt.Sprint("hole ", i), h.Centre.Dist(want), 0, 1e-9)
		near(t, "diameter", h.Diameter, 35, 0)
		if h.Index != i || h.Part != "t" {
			t.Errorf("hole %d of %q has the index %d", i, h.Part, h.Index)
		}
	}
	// Behind an inside corner the last edge counts, not the first.
	d.Outline.Nodes = nodes(0, 0, 1000, 0, 1000, 900, 0, 900, 0, 700, 600, 700, 600, 500, 0, 500)
	d.Sinks[0].Rotation = 0
	holes = only(slab.Resolve(d), slab.OpeningTap)
	near(t, "last edge", holes[1].Centre.Dist(geom.Vec{X: 410, Y: 850}), 0, 1e-9)
	// An own pattern turns with the sink; without one the set stands at its place.
	d.Taps[0].Pattern, d.Taps[0].Holes = design.TapOwn, []design.Point{pt(30, 20)}
	d.Taps[0].Sink, d.Taps[0].At, d.Taps[0].Rotation = "", pt(700, 100), 180*units.Degree
	holes = only(slab.Resolve(d), slab.OpeningTap)
	near(t, "own pattern", holes[0].Centre.Dist(geom.Vec{X: 670, Y: 80}), 0, 1e-9)
}

// Reveals make parallel bodies (Steiner): A + P d + pi d² where corners go round,
// and lengths longer by 2 pi d.
func TestReveals(t *testing.T) {
	const w, h, r = 400.0, 300.0, 40.0
	perimeter, area := 2*(w+h)-(8-2*math.Pi)*r, w*h-(4-math.Pi)*r*r
	bow := 60.0
	radius := (w*w/4 + bow*bow) / (2 * bow)
	half := math.Asin(w / 2 / radius)
	dArea := w*(h-bow) + radius*radius*(half-math.Sin(2*half)/2)
	dPerimeter := w + 2*(h-bow) + 2*radius*half
	for _, c := range []struct {
		name    string
		shape   design.Shape
		kind    design.RevealKind
		size    float64
		a, p    float64
		precise float64
	}{
		{"flush", design.Shape{Width: mm(w), Depth: mm(h), CornerRadius: mm(r)}, design.RevealFlush, 9, area, perimeter, 1e-10},
		{"rim shows", design.Shape{Width: mm(w), Depth: mm(h), CornerRadius: mm(r)}, design.RevealRimShows, 5,
			area + perimeter*5 + math.Pi*25, perimeter + 10*math.Pi, 1e-10},
		{"overhang", design.Shape{Width: mm(w), Depth: mm(h), CornerRadius: mm(r)}, design.RevealOverhang, 5,
			area - perimeter*5 + math.Pi*25, perimeter - 10*math.Pi, 1e-10},
		{"sharp, rim shows", design.Shape{Width: mm(w), Depth: mm(h)}, design.RevealRimShows, 5,
			w*h + 2*(w+h)*5 + math.Pi*25, 2*(w+h) + 10*math.Pi, 1e-10},
		{"sharp, overhang", design.Shape{Width: mm(w), Depth: mm(h)}, design.RevealOverhang, 5, (w - 10) * (h - 10), 2 * (w + h - 20), 1e-10},
		{"radius less than the overhang", design.Shape{Width: mm(w), Depth: mm(h), CornerRadius: mm(3)}, design.RevealOverhang, 5,
			(w - 10) * (h - 10), 2 * (w + h - 20), 1e-10},
		{"circle", sinkShape(design.ShapeCircle, w, 0), design.RevealRimShows, 5, math.Pi * 205 * 205, 410 * math.Pi, 1e-10},
		// The handbook's ellipse with the axes 17 and 14, in centimetres.
		{"ellipse", sinkShape(design.ShapeEllipse, 170, 140), design.RevealRimShows, 5,
			18692.4763 + 488.087624311*5 + math.Pi*25, 488.087624311 + 10*math.Pi, 1e-7},
		{"ellipse overhung", sinkShape(design.ShapeEllipse, 170, 140), design.RevealOverhang, 5,
			18692.4763 - 488.087624311*5 + math.Pi*25, 488.087624311 - 10*math.Pi, 1e-7},
		{"D", design.Shape{Kind: design.ShapeD, Width: mm(w), Depth: mm(h), Bow: mm(bow)}, design.RevealRimShows, 5,
			dArea + 5*dPerimeter + 25*math.Pi, dPerimeter + 10*math.Pi, 1e-9},
		{"half a disc", design.Shape{Kind: design.ShapeD, Width: mm(w), Depth: mm(h), Bow: mm(w / 2)}, design.RevealFlush, 0,
			w*(h-w/2) + math.Pi*w*w/8, w + 2*(h-w/2) + math.Pi*w/2, 1e-9},
		{"path", design.Shape{Kind: design.ShapePath, Path: nodes(-200, -150, 200, -150, 200, 150, -200, 150)}, design.RevealRimShows, 5,
			w*h + 2*(w+h)*5 + math.Pi*25, 2*(w+h) + 10*math.Pi, 5e-7},
		{"path overhung", design.Shape{Kind: design.ShapePath, Path: nodes(-200, -150, 200, -150, 200, 150, -200, 150)}, design.RevealOverhang, 5,
			(w - 10) * (h - 10), 2 * (w + h - 20), 1e-9},
	} {
		d := top(38, design.Profile{}, rectangle(1200, 700))
		d.Sinks = []design.Sink{{ID: "s", At: pt(600, 350), Rotation: 20 * units.Degree, Shape: c.shape,
			Reveal: design.Reveal{Kind: c.kind, Size: mm(c.size)}}}
		o := slab.Resolve(d).Openings[0]
		same(t, c.name+" area", o.Loop.Area(), c.a, c.precise)
		same(t, c.name+" perimeter", o.Perimeter, c.p, c.precise)
	}
}

// The D fits its box: straight back to the sink's back, the bow's crown opposite.
func TestDShape(t *testing.T) {
	d := top(38, design.Profile{}, rectangle(1200, 700))
	d.Sinks = []design.Sink{{ID: "s", At: pt(600, 350), Mount: design.MountOver, Rim: mm(15),
		Shape: design.Shape{Kind: design.ShapeD, Width: mm(400), Depth: mm(300), Bow: mm(60), CornerRadius: mm(30)}}}
	s := slab.Resolve(d)
	box := s.Openings[0].Loop.Bounds()
	near(t, "left", box.Min.X, 400, 1e-9)
	near(t, "right", box.Max.X, 800, 1e-9)
	near(t, "back", box.Max.Y, 500, 1e-9)
	near(t, "front", box.Min.Y, 200, slab.Tolerance)
	if !s.Openings[0].Loop.Contains(geom.Vec{X: 600, Y: 202}) || s.Openings[0].Loop.Contains(geom.Vec{X: 420, Y: 205}) {
		t.Error("the bow is not at the front")
	}
	// Its rim lies on the face all round.
	rim := s.Bowls[0].Loop.Bounds()
	near(t, "rim", rim.W(), 430, 1e-9)
	if s.Bowls[0].Back != (geom.Vec{Y: 1}) {
		t.Errorf("back %v", s.Bowls[0].Back)
	}
}

func TestVessel(t *testing.T) {
	d := top(38, design.Profile{}, rectangle(1200, 700))
	d.Sinks = []design.Sink{{ID: "v", At: pt(600, 350), Mount: design.MountVessel, Drain: mm(45), Shape: sinkShape(design.ShapeCircle, 400, 0),
		Profile: profile(design.ProfileRounded, 5)}}
	s := slab.Resolve(d)
	if len(s.Openings) != 1 || s.Openings[0].Kind != slab.OpeningVesselDrain || s.Openings[0].Diameter != 45 {
		t.Fatalf("openings %+v", s.Openings)
	}
	near(t, "bowl", s.Bowls[0].Loop.Bounds().W(), 400, 0.02)
	near(t, "net", s.Measure(0).NetArea, 1200*700-math.Pi*45*45/4, 1e-5)
}

// An open end runs on until both banks have left the top; the gap that it makes
// is reported once, in its middle, with its edge.
func TestOpenEnds(t *testing.T) {
	d := top(38, profile(design.ProfileHalfRound, 0), rectangle(1000, 500))
	d.Channels = []design.Channel{{ID: "r", Depth: mm(10), Fill: design.Fill{Resin: true},
		Rivers: []design.River{river(design.EndFlat, design.EndOpen, 300, 250, 40, 700, 250, 60)}}}
	s := slab.Resolve(d)
	r := s.Recesses[0]
	if len(r.Open) != 1 || r.Open[0].Node != 1 {
		t.Fatalf("open ends %+v", r.Open)
	}
	near(t, "gap", r.Open[0].Width, 60, 1e-6)
	near(t, "place", r.Open[0].At.Dist(geom.Vec{X: 1000, Y: 250}), 0, 1e-6)
	// By the trapezium and the strip beyond: the resin ends where the edge does.
	m := s.Measure(0)
	area := 400*50. + 300*60
	near(t, "channel", m.Channels[0].Area, area, 1e-3)
	inset := 0.0 // integral of the inset over the channel's ten millimetres
	const steps = 20000
	for i := range steps {
		u := math.Sqrt(10) * (float64(i) + 0.5) / steps
		inset += slab.Inset(profile(design.ProfileHalfRound, 0), 38, 38-u*u) * 2 * u * math.Sqrt(10) / steps
	}
	near(t, "resin", m.ResinVolume, area*10-60*inset, 0.05)

	// Out at an angle through a rounded corner: one gap over three sides.
	d.Outline.Nodes[2].Corner = design.Corner{Kind: design.CornerRounded, Size: mm(30)}
	d.Channels[0].Rivers[0] = river(design.EndRound, design.EndOpen, 500, 100, 50, 800, 350, 120)
	s = slab.Resolve(d)
	if len(s.Recesses[0].Open) != 1 {
		t.Fatalf("open ends %+v", s.Recesses[0].Open)
	}
	// Nothing of the corner stands beyond the river.
	f := geom.NewFence(s.Recesses[0].Loops...)
	if !f.Contains(geom.Vec{X: 985, Y: 485}) {
		t.Error("the corner was left standing")
	}

	// An end that lies outside already is left alone; a region drawn along the very
	// edge is open there.
	d = top(38, design.Profile{}, rectangle(1000, 500))
	d.Channels = []design.Channel{
		{ID: "a", Depth: mm(10), Rivers: []design.River{river(design.EndOpen, design.EndFlat, -100, 250, 40, 300, 250, 40)}},
		{ID: "b", Depth: mm(10), Regions: []design.Region{{Outer: nodes(600, 300, 800, 300, 800, 500, 600, 500)}}},
		{ID: "c", Depth: mm(10), Regions: []design.Region{{Outer: nodes(400, 100, 500, 100, 500, 200, 400, 200)}}},
	}
	s = slab.Resolve(d)
	near(t, "outside already", s.Recesses[0].Loops[0].Bounds().Min.X, -100, 1e-6)
	if len(s.Recesses[0].Open) != 1 || len(s.Recesses[1].Open) != 1 || len(s.Recesses[2].Open) != 0 {
		t.Fatalf("open ends %v %v %v", s.Recesses[0].Open, s.Recesses[1].Open, s.Recesses[2].Open)
	}
	near(t, "along the edge", s.Recesses[1].Open[0].Width, 200, 0.05)
	near(t, "along the edge", s.Recesses[1].Open[0].At.Dist(geom.Vec{X: 700, Y: 500}), 0, 0.05)

	// A gap over the outline's first point is one gap.
	d.Channels = []design.Channel{{ID: "a", Depth: mm(5), Regions: []design.Region{{Outer: nodes(-50, -50, 100, -50, 100, 80, -50, 80)}}}}
	s = slab.Resolve(d)
	if len(s.Recesses[0].Open) != 1 {
		t.Fatalf("over the first point: %+v", s.Recesses[0].Open)
	}
	near(t, "over the first point", s.Recesses[0].Open[0].Width, 180, 0.1)
}

// Channels that cross: each point belongs to the first one that is deep enough.
func TestCrossingChannels(t *testing.T) {
	d := top(40, design.Profile{}, rectangle(1000, 500))
	bar := func(x0, y0, x1, y1 float64) []design.Region {
		return []design.Region{{Outer: nodes(x0, y0, x1, y0, x1, y1, x0, y1)}}
	}
	d.Channels = []design.Channel{
		{ID: "shallow", Depth: mm(6), Regions: bar(100, 200, 900, 260), Fill: design.Fill{Resin: true}},
		{ID: "deep", Depth: mm(15), Regions: bar(400, 50, 450, 450)},
		{ID: "island", Depth: mm(6), Fill: design.Fill{Resin: true},
			Regions: []design.Region{{Outer: nodes(600, 300, 800, 300, 800, 450, 600, 450), Islands: [][]design.Node{nodes(650, 350, 700, 350, 700, 400, 650, 400)}}}},
	}
	m := slab.Resolve(d).Measure(0)
	island := 200*150. - 50*50
	near(t, "shallow", m.Channels[0].Area, 800*60, 1e-4)
	near(t, "shallow volume", m.Channels[0].Volume, 800*60*6, 1e-3)
	near(t, "deep", m.Channels[1].Area, 50*400-50*60, 1e-4)
	near(t, "deep volume", m.Channels[1].Volume, 50*400*15-50*60*6, 1e-3)
	near(t, "island", m.Channels[2].Volume, island*6, 1e-3)
	near(t, "resin", m.ResinVolume, 800*60*6+island*6, 1e-3)
	near(t, "resin area", m.ResinArea, 800*60+island, 1e-3)
	near(t, "empty", m.EmptyVolume, m.Channels[1].Volume, 1e-9)
	near(t, "concrete", m.ConcreteVolume, 1000*500*40-m.ResinVolume-m.EmptyVolume, 1e-2)
	near(t, "resin height", m.ResinCentroid[2], 37, 1e-9)
}

// A bed less the openings and channels in it.
func TestBeds(t *testing.T) {
	d := top(40, profile(design.ProfileRounded, 10), rectangle(1000, 500))
	d.Holes = []design.Hole{{ID: "h", At: pt(200, 200), Diameter: mm(60)}}
	d.Channels = []design.Channel{{ID: "c", Depth: mm(6), Regions: []design.Region{{Outer: nodes(250, 0, 300, 0, 300, 500, 250, 500)}}}}
	d.Glass = []design.GlassBed{
		{ID: "a", Grain: mm(6), Depth: mm(6), Region: design.Region{Outer: nodes(100, 100, 400, 100, 400, 300, 100, 300)}},
		{ID: "b", Grain: mm(6), Depth: mm(6), Region: design.Region{Outer: nodes(350, 100, 600, 100, 600, 300, 350, 300)}},
		{ID: "c", Grain: mm(6), Depth: mm(6), Region: design.Region{Outer: nodes(900, 400, 1100, 400, 1100, 600, 900, 600)}},
	}
	m := slab.Resolve(d).Measure(0)
	near(t, "first", m.Beds[0].Area, 300*200-math.Pi*900-50*200, 1e-3)
	near(t, "second, less the first", m.Beds[1].Area, 200*200, 1e-3)
	near(t, "over the edge", m.Beds[2].Area, 100*100, 1e-3)
	near(t, "centre", m.Beds[1].Centroid.Dist(geom.Vec{X: 500, Y: 200}), 0, 1e-6)
}

// Bearings: flat ends, mitred turns, rounded where they are sharp.
func TestBearings(t *testing.T) {
	d := top(40, design.Profile{}, rectangle(1000, 500))
	d.Supports = []design.Support{
		{ID: "line", Line: []design.Point{pt(0, 0), pt(300, 400)}, Width: mm(30)},
		{ID: "angle", Line: []design.Point{pt(0, 0), pt(400, 0), pt(400, 300)}, Width: mm(40)},
		{ID: "back", Line: []design.Point{pt(0, 0), pt(400, 0), pt(100, 100)}, Width: mm(40)},
		{ID: "patch", Line: []design.Point{pt(0, 0), pt(100, 0), pt(100, 50), pt(0, 50)}, Patch: true},
		{ID: "clockwise", Line: []design.Point{pt(0, 50), pt(100, 50), pt(100, 0), pt(0, 0)}, Patch: true},
	}
	area := func(i int) float64 {
		sum := 0.0
		for _, l := range slab.Resolve(d).Bearings[i].Loops {
			sum += l.Area()
		}
		return sum
	}
	near(t, "line", area(0), 500*30, 1e-4)
	near(t, "angle", area(1), 400*40+300*40+20*20-20*20, 1e-4)
	// Half discs round the sharp turn less what the two strips share is the strips'
	// union with a disc at the turn, cut square at the far ends.
	if got := area(2); got < 400*40+math.Hypot(300, 100)*40-40*40*4 || got > 400*40+math.Hypot(300, 100)*40+math.Pi*400 {
		t.Errorf("back: %g", got)
	}
	near(t, "patch", area(3), 5000, 1e-6)
	near(t, "clockwise patch", area(4), 5000, 1e-6)
}

// An outline run clockwise is measured as if it were not.
func TestClockwise(t *testing.T) {
	n := nodes(0, 0, 0, 500, 1000, 500, 1000, 0)
	d := top(38, profile(design.ProfileRounded, 10), n)
	m := slab.Resolve(d).Measure(1)
	want := slab.Resolve(top(38, profile(design.ProfileRounded, 10), rectangle(1000, 500))).Measure(1)
	compareMeasures(t, "clockwise", m, want, 1, 1e-9)
}

// Overlapping holes and one over the edge: lens and segment by the handbook.
func TestOverlappingHoles(t *testing.T) {
	d := top(38, design.Profile{}, rectangle(1000, 500))
	d.Holes = []design.Hole{
		{ID: "a", At: pt(300, 250), Diameter: mm(100)}, {ID: "b", At: pt(350, 250), Diameter: mm(100)},
		{ID: "edge", At: pt(700, 0), Diameter: mm(100)}, {ID: "twin", At: pt(300, 250), Diameter: mm(100)},
	}
	m := slab.Resolve(d).Measure(0)
	angle := 2 * math.Acos(0.5) // of the lens's segments: centres a radius apart
	lens := 2 * 50 * 50 * (angle - math.Sin(angle)) / 2
	near(t, "net", m.NetArea, 500000-2*math.Pi*2500+lens-math.Pi*1250, 0.05)
	near(t, "perimeter", m.CutoutPerimeter, 2*(2*math.Pi-angle)*50+math.Pi*50, 5e-3)
}
