package change_test

import (
	"testing"

	"example.org/castwright/model/change"
	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/units"
	"github.com/google/go-cmp/cmp"
)

const mm = units.Millimetre

func counter() design.Design {
	return design.Design{
		Outline: edit.Rectangle(1500*mm, 550*mm), Thickness: 40 * mm, Finish: design.Finish{Polish: 2},
		Sinks: []design.Sink{{ID: "sink-1", At: design.Point{X: 700 * mm, Y: 280 * mm},
			Shape: design.Shape{Kind: design.ShapeEllipse, Width: 430 * mm, Depth: 350 * mm}}},
		Taps: []design.TapSet{{ID: "taps-1", Diameter: 35 * mm, Sink: "sink-1", SetBack: 60 * mm}},
		Channels: []design.Channel{{ID: "channel-1", Depth: 10 * mm, Rivers: []design.River{{Nodes: []design.RiverNode{
			{At: design.Point{X: 100 * mm, Y: 100 * mm}, Width: 40 * mm}, {At: design.Point{X: 300 * mm, Y: 300 * mm}, Width: 40 * mm},
		}}}}},
	}
}

func blue() design.Channel {
	c := counter().Channels[0]
	c.Fill = design.Fill{Resin: true, Colour: design.Colour{B: 200}}
	return c
}

// Each edit is said as what it is; nothing else is.
func TestBetween(t *testing.T) {
	hole := design.Hole{ID: "hole-1", At: design.Point{X: 1300 * mm, Y: 300 * mm}, Diameter: 50 * mm}
	for _, c := range []struct {
		name string
		edit edit.Edit
		want []string
	}{
		{"sink, and the taps with it", edit.MovePart("sink-1", design.Point{X: -40 * mm, Y: 10 * mm}),
			[]string{"Sink moved 40 mm to the left and 10 mm toward the back", "Tap holes moved 40 mm to the left"}},
		{"channel", edit.MovePart("channel-1", design.Point{Y: 25 * mm}), []string{"Channel moved 25 mm toward the back"}},
		{"colour", edit.SetChannel(blue()), []string{"Channel changed: filled with resin"}},
		{"top", edit.Resize(1600*mm, 550*mm), []string{"Top 1600 mm × 550 mm, was 1500 mm × 550 mm", "Sink moved 50 mm to the right",
			"Tap holes moved 50 mm to the right", "Channel moved 50 mm to the right"}},
		// A bow counts: the box about a top is that of its curves.
		{"bow", edit.BendEdge(0, 60*mm), []string{"Top 1500 mm × 610 mm, was 1500 mm × 550 mm"}},
		{"tap holes", edit.SetTaps(design.TapSet{ID: "taps-1", Pattern: design.TapThree8, Diameter: 35 * mm, Sink: "sink-1", SetBack: 60 * mm}),
			[]string{"Tap holes: three, spread 203.2 mm, was one"}},
		{"thickness", edit.SetThickness(50 * mm), []string{"Thickness 50 mm, was 40 mm"}},
		{"finish", edit.SetFinish(design.Finish{Polish: 3}), []string{"Finish changed: polish level 3, was 2"}},
		{"new", edit.AddHole(hole), []string{"Hole added"}},
		{"gone", edit.RemovePart("channel-1"), []string{"Channel removed"}},
		{"edge", edit.SetProfile(0, design.Profile{Kind: design.ProfileRounded, Size: 5 * mm}), []string{"Front edge: rounded 5 mm, was square"}},
	} {
		a := counter()
		b, err := c.edit.Apply(a)
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		var got []string
		for _, x := range change.Between(a, b, units.Metric) {
			got = append(got, x.Words)
		}
		if diff := cmp.Diff(c.want, got); diff != "" {
			t.Errorf("%s (-want +got):\n%s", c.name, diff)
		}
		if back := change.Between(a, a, units.Metric); len(back) > 0 {
			t.Errorf("a design differs from itself: %v", back)
		}
	}
}

// What of a part is another is told, once.
func TestDetail(t *testing.T) {
	resin := counter()
	resin.Channels = []design.Channel{blue()}
	with := func(f func(*design.Channel)) design.Design {
		d := resin
		d.Channels = []design.Channel{blue()}
		f(&d.Channels[0])
		return d
	}
	sink := func(f func(*design.Sink)) design.Design {
		d := resin
		d.Sinks = append([]design.Sink{}, resin.Sinks...)
		f(&d.Sinks[0])
		return d
	}
	for want, b := range map[string]design.Design{
		"Channel changed: colour":                                     with(func(c *design.Channel) { c.Fill.Colour.R = 90 }),
		"Channel changed: depth 12 mm, was 10 mm; with glass in it":   with(func(c *design.Channel) { c.Depth, c.Fill.Glass = 12*mm, &design.GlassFill{Grain: 6 * mm} }),
		"Channel changed: left empty":                                 with(func(c *design.Channel) { c.Fill = design.Fill{} }),
		"Sink changed: mounted otherwise; drain hole 45 mm, was 0 mm": sink(func(k *design.Sink) { k.Mount, k.Drain = design.MountVessel, 45*mm }),
		"Sink changed: another shape":                                 sink(func(k *design.Sink) { k.Shape.Kind = design.ShapeRectangle }),
		"Sink 450 mm × 350 mm, was 430 mm × 350 mm; reveal":           sink(func(k *design.Sink) { k.Shape.Width, k.Reveal.Size = 450*mm, 3*mm }),
		"Sink changed: mounted otherwise; moved 20 mm toward the back": func() design.Design {
			d := sink(func(k *design.Sink) { k.Mount, k.At.Y = design.MountOver, k.At.Y+20*mm })
			d.Taps = nil
			return d
		}(),
	} {
		var got []string
		for _, c := range change.Between(resin, b, units.Metric) {
			if c.Kind == change.Removed {
				continue // the taps
			}
			got = append(got, c.Words)
		}
		if len(got) != 1 || got[0] != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}

// What is in the file alone is said too: the fingerprint sees it.
func TestUnseen(t *testing.T) {
	base := counter()
	for want, f := range map[string]func(*design.Design){
		"What keeps its place with what changed": func(d *design.Design) {
			d.Relations = []design.Relation{{Kind: design.RelationTop, Part: "sink-1"}}
		},
		"Members of the file that this version does not know changed": func(d *design.Design) {
			d.Extra = design.Extra{"/seam": "1"}
		},
		"Parts lie in another order": func(d *design.Design) {
			d.Holes = []design.Hole{d.Holes[1], d.Holes[0]}
		},
	} {
		a := base
		a.Holes = []design.Hole{{ID: "hole-1", Diameter: 30 * mm}, {ID: "hole-2", Diameter: 40 * mm}}
		b := a
		f(&b)
		got := change.Between(a, b, units.Metric)
		if len(got) != 1 || got[0].Words != want {
			t.Errorf("%v, want %q", got, want)
		}
	}
}

// Where a change lies is the part's place in each of the two.
func TestWhere(t *testing.T) {
	a := counter()
	b, err := edit.MovePart("sink-1", design.Point{X: 100 * mm}).Apply(a)
	if err != nil {
		t.Fatal(err)
	}
	if gone, err := edit.RemovePart("channel-1").Apply(a); err != nil || !change.Between(a, gone, units.Metric)[0].Is.Empty() ||
		!change.Between(gone, a, units.Metric)[0].Was.Empty() {
		t.Error("a part has a place in the design that it is not in")
	}
	c := change.Between(a, b, units.Metric)[0]
	if c.Kind != change.Moved || c.Was.Min.X != 700-215 || c.Is.Max.X != 800+215 {
		t.Errorf("%+v", c)
	}
}
