package edit_test

import (
	"math"
	"os"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/material"
	"example.org/castwright/model/report"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/store"
	"example.org/castwright/model/units"
	"example.org/castwright/model/warn"
	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"
)

// in is a length of so many inches.
func in(x float64) units.Length { return units.Length(math.Round(x * float64(units.Inch))) }

func inches(x, y float64) design.Point { return design.Point{X: in(x), Y: in(y)} }

// emptyRectangle is what the window opens on for a maker who works in inches.
func emptyRectangle() design.Job {
	d := design.Design{Outline: edit.Rectangle(in(61), in(22)), Thickness: in(1.5),
		Finish: design.Finish{Colour: design.Colour{R: 0xa9, G: 0xa6, B: 0x9f}, Polish: 2, Grind: in(1.0 / 64)}}
	for i, n := range d.Outline.Nodes {
		if n.Edge.Side == design.SideSeen {
			d.Outline.Nodes[i].Edge.Profile = design.Profile{Kind: design.ProfileEased, Size: in(0.125)}
		}
	}
	return design.Job{Units: units.Imperial, Materials: material.Defaults(),
		Options: []design.Option{{Name: "A", Title: "First idea", Design: d}}}
}

// sessionSteps are the edits that a maker makes beside a client who wants a
// bowed wash counter with an oval basin, a river and a bank of glass.
func sessionSteps() []edit.Edit {
	// A cabinet of 3/4 in boards: its sides 1 in within the ends of the top, its
	// front 1-1/2 in behind the bow's crown, its back 3/4 in before the wall.
	board := func(kind design.SupportKind, from, to design.Point) edit.Edit {
		return edit.AddSupport(design.Support{Kind: kind, Width: in(0.75), Line: []design.Point{from, to}})
	}
	return []edit.Edit{
		edit.BendEdge(0, in(1.25)),
		edit.Resize(in(61.5), in(22.25)),
		board(design.SupportGable, inches(1.375, 1.25), inches(1.375, 21.25)),
		board(design.SupportGable, inches(60.125, 1.25), inches(60.125, 21.25)),
		board(design.SupportRail, inches(1.375, 1.625), inches(60.125, 1.625)),
		board(design.SupportRail, inches(1.375, 20.875), inches(60.125, 20.875)),
		edit.AddSink(design.Sink{At: inches(31, 10.5), Shape: design.Shape{Kind: design.ShapeEllipse,
			Width: in(17), Depth: in(14)}, BowlDepth: in(5.5), BowlMass: 9,
			Profile: design.Profile{Kind: design.ProfileEased, Size: in(0.125)}}),
		edit.AddRelation(design.Relation{Kind: design.RelationBetween, Part: "sink-1", Axis: design.AxisX,
			Other: "support-1", Second: "support-2"}),
		edit.KeepDistance("sink-1", design.SideBack),
		edit.AddTaps(design.TapSet{Pattern: design.TapThree8, Diameter: in(1.375), Sink: "sink-1", SetBack: in(2.25)}),
		edit.AddChannel(design.Channel{Depth: in(0.5),
			Fill: design.Fill{Resin: true, Colour: design.Colour{R: 0x1f, G: 0x6f, B: 0x86}, Opacity: 60 * units.Percent},
			Rivers: []design.River{{Start: design.EndOpen, Nodes: []design.RiverNode{
				{At: inches(0, 6), Width: in(2.5)}, {At: inches(6, 8.5), Width: in(2)},
				{At: inches(11, 7), Width: in(1.5)}, {At: inches(16, 10), Width: in(1.25)}}}}}),
		edit.TieRiver("channel-1", 0, design.RiverStart),
		edit.BankGlass("channel-1", edit.LeftBank, in(0.125), in(1.25), design.GlassBed{Grain: in(0.25),
			Depth: in(0.25), Coverage: 60 * units.Percent, Colour: design.Colour{R: 0x8e, G: 0xca, B: 0xc8}}),
	}
}

// nearly takes lengths for equal that are within 0.01 mm.
var nearly = cmp.Options{
	cmp.Comparer(func(a, b units.Length) bool { return (a - b).Abs() <= 10*units.Micrometre }),
	cmp.Comparer(func(a, b float64) bool { return math.Abs(a-b) <= 1e-9*math.Max(1, math.Abs(a)) }),
	cmp.Comparer(func(a, b decimal.Decimal) bool { return a.Equal(b) }),
}

// A scripted session: the same edits as in the window, and the same file.
func TestSession(t *testing.T) {
	h := edit.NewHistory(emptyRectangle())
	var names []string
	for _, e := range sessionSteps() {
		if err := h.Do(edit.On("A", e), 0); err != nil {
			t.Fatal(err)
		}
		names = append(names, h.UndoName())
	}
	want := []string{"Bend edge", "Resize top", "Add support", "Add support", "Add support", "Add support", "Add sink",
		"Centre sink", "Keep distance of sink", "Add tap holes", "Add channel", "Tie river to edge",
		"Line bank with glass"}
	if diff := cmp.Diff(want, names); diff != "" {
		t.Errorf("undo offers (-want +got):\n%s", diff)
	}
	data, err := os.ReadFile("../../testdata/jobs/bowed-counter.json")
	if err != nil {
		t.Fatal(err)
	}
	kept, err := store.Decode(data)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(data), string(store.Encode(kept))); diff != "" {
		t.Errorf("the file is not as it would be saved (-is +would be):\n%s", diff)
	}
	job := h.Job()
	if diff := cmp.Diff(kept, job, nearly); diff != "" {
		t.Errorf("made anew it differs (-file +made):\n%s", diff)
	}
	d := job.Options[0].Design
	looksAsAskedFor(t, d)
	r := report.Derive(d, job.Materials, job.Site)
	for _, f := range r.Faults {
		t.Errorf("fault: %v", f)
	}
	for _, w := range r.Warnings {
		if w.Severity == warn.Severe {
			t.Errorf("warning: %+v", w)
		}
	}

	// "Could it be a little wider?" All keeps its meaning.
	if err := h.Do(edit.On("A", edit.Resize(in(66), in(22.25))), 0); err != nil {
		t.Fatal(err)
	}
	wide := h.Job().Options[0].Design
	near(t, "sink in the middle", wide.Sinks[0].At.X.MM(), in(33).MM(), 1e-3)
	near(t, "river at the left edge", wide.Channels[0].Rivers[0].Nodes[0].At.X.MM(), 0, 1e-3)
	again := apply(t, wide, edit.BankGlass("channel-1", edit.LeftBank, in(0.125), in(1.25), wide.Glass[0]))
	if diff := cmp.Diff(again.Glass[1].Region, wide.Glass[0].Region); diff != "" {
		t.Errorf("the glass is not where it would be laid now (-laid +is):\n%s", diff)
	}
	for range sessionSteps() {
		h.Undo()
	}
	h.Undo()
	if diff := cmp.Diff(emptyRectangle(), h.Job()); diff != "" {
		t.Errorf("undone to the start (-want +got):\n%s", diff)
	}
}

// looksAsAskedFor measures the top as the client has it described.
func looksAsAskedFor(t *testing.T, d design.Design) {
	t.Helper()
	box := boxOf(d.Outline.Nodes)
	near(t, "width", box.W(), 61.5*25.4, 1e-3)
	near(t, "depth", box.H(), 22.25*25.4, 1e-3)
	solid := slab.Resolve(d)
	middle := (box.Min.X + box.Max.X) / 2
	var taps []float64
	for _, o := range solid.Openings {
		switch o.Kind {
		case slab.OpeningSink:
			near(t, "sink's centre", o.Centre.X, middle, 1e-3)
			// Check values, ellipse: half axes 8.5 and 7 in give 186.924763 in2.
			near(t, "cut-out", -math.Abs(o.Loop.Area()), -186.924763*645.16, 15)
		case slab.OpeningTap:
			taps = append(taps, o.Centre.X-middle)
			near(t, "tap hole from the back", box.Max.Y-o.Centre.Y, 2.25*25.4, 1e-3)
		}
	}
	if len(taps) != 3 {
		t.Fatalf("%d tap holes, want 3", len(taps))
	}
	for i, x := range []float64{-4, 0, 4} {
		near(t, "tap hole off the centreline", taps[i], x*25.4, 1e-3)
	}
	if r := solid.Recesses; len(r) != 1 || len(r[0].Open) != 1 || math.Abs(r[0].Open[0].At.X-box.Min.X) > 0.01 {
		t.Errorf("the river does not leave the top at its left: %+v", r)
	}
	if len(d.Glass) != 1 {
		t.Errorf("%d glass beds, want 1", len(d.Glass))
	}
	if len(d.Relations) != 4 {
		t.Errorf("%d relations, want 4", len(d.Relations))
	}
}
