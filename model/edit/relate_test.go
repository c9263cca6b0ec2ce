package edit_test

import (
	"strings"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/units"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

func onTop(id design.ID, axis design.Axis) design.Relation {
	return design.Relation{Kind: design.RelationTop, Part: id, Axis: axis}
}

func inLine(id, other design.ID, axis design.Axis) design.Relation {
	return design.Relation{Kind: design.RelationPart, Part: id, Other: other, Axis: axis}
}

// vanity is a counter whose sink stands in a cabinet between two gables and
// whose river starts on the left edge.
func vanity(t failing) design.Design {
	t.Helper()
	d := design.Design{Outline: edit.Rectangle(mm(1500), mm(560)), Thickness: mm(40)}
	for _, e := range []edit.Edit{
		edit.AddSink(design.Sink{At: at(500, 300), Shape: design.Shape{Kind: design.ShapeEllipse,
			Width: mm(430), Depth: mm(330)}}),
		edit.AddTaps(design.TapSet{Pattern: design.TapSingle, Diameter: mm(35), Sink: "sink-1", SetBack: mm(60)}),
		edit.AddHole(design.Hole{Kind: design.HoleSoap, At: at(800, 450), Diameter: mm(35)}),
		edit.AddChannel(design.Channel{Depth: mm(12), Rivers: []design.River{{Start: design.EndOpen,
			Nodes: []design.RiverNode{{At: at(3, 140), Width: mm(60)}, {At: at(103, 140), Width: mm(60)},
				{At: at(303, 140), Width: mm(60)}}}}}),
		edit.AddSupport(design.Support{Kind: design.SupportGable, Width: mm(18),
			Line: []design.Point{at(100, 0), at(100, 500)}}),
		edit.AddSupport(design.Support{Kind: design.SupportGable, Width: mm(38),
			Line: []design.Point{at(900, 0), at(900, 500)}}),
	} {
		d = apply(t, d, e)
	}
	return d
}

func TestRelationsHold(t *testing.T) {
	centre := func(d design.Design, id design.ID) design.Point {
		p, ok := edit.Centre(d, id)
		if !ok {
			t.Fatalf("no %s", id)
		}
		return p
	}
	for _, c := range []struct {
		name     string
		relation edit.Edit
		part     design.ID
		now      design.Point // as soon as it is made
		then     edit.Edit
		after    design.Point
	}{
		{"centred on the top, which grows by 200", edit.AddRelation(onTop("sink-1", design.AxisX)),
			"sink-1", at(750, 300), edit.Resize(mm(1700), mm(560)), at(850, 300)},
		{"and when its right edge is moved", edit.AddRelation(onTop("sink-1", design.AxisX)),
			"sink-1", at(750, 300), edit.MoveEdge(1, at(-100, 0)), at(700, 300)},
		{"and when its front bows out by 60", edit.AddRelation(onTop("sink-1", design.AxisY)),
			"sink-1", at(500, 280), edit.BendEdge(0, mm(60)), at(500, 250)},
		// The clear width runs from 109 to 881.
		{"between two gables of which one moves", edit.AddRelation(design.Relation{
			Kind: design.RelationBetween, Part: "sink-1", Other: "support-1", Second: "support-2"}),
			"sink-1", at(495, 300), edit.MovePart("support-2", at(200, 0)), at(595, 300)},
		{"and named the other way round", edit.AddRelation(design.Relation{
			Kind: design.RelationBetween, Part: "sink-1", Other: "support-2", Second: "support-1"}),
			"sink-1", at(495, 300), edit.MovePart("support-1", at(-50, 0)), at(470, 300)},
		{"a distance from the right", edit.KeepDistance("hole-1", design.SideRight),
			"hole-1", at(800, 450), edit.Resize(mm(1700), mm(560)), at(1000, 450)},
		{"a distance from the back while the front moves", edit.KeepDistance("hole-1", design.SideBack),
			"hole-1", at(800, 450), edit.Resize(mm(1500), mm(600)), at(800, 450)},
		{"a distance from the front", edit.KeepDistance("hole-1", design.SideFront),
			"hole-1", at(800, 450), edit.MoveEdge(0, at(0, -40)), at(800, 410)},
		{"a soap hole in line with the tap", edit.AddRelation(inLine("hole-1", "taps-1", design.AxisY)),
			"hole-1", at(800, 500), edit.MovePart("taps-1", at(0, 10)), at(800, 510)},
		{"and when the back wall moves", edit.AddRelation(inLine("hole-1", "taps-1", design.AxisY)),
			"hole-1", at(800, 500), edit.MoveEdge(2, at(0, 25)), at(800, 525)},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := apply(t, vanity(t), c.relation)
			if got := centre(d, c.part); got != c.now {
				t.Fatalf("put at %v, want %v", got, c.now)
			}
			d = apply(t, d, c.then)
			if got := centre(d, c.part); got != c.after {
				t.Errorf("then at %v, want %v", got, c.after)
			}
			if len(d.Relations) != 1 {
				t.Errorf("%d relations left, want 1", len(d.Relations))
			}
		})
	}
}

// A relation that looks at a part is solved after what holds this part,
// whatever their order.
func TestRelationsFollowEachOther(t *testing.T) {
	d := apply(t, vanity(t), edit.AddRelation(inLine("hole-1", "sink-1", design.AxisX)))
	d = apply(t, d, edit.AddRelation(onTop("sink-1", design.AxisX)))
	d = apply(t, d, edit.Resize(mm(1700), mm(560)))
	if d.Holes[0].At.X != mm(850) {
		t.Errorf("the hole is at %v, want at the middle, 850", d.Holes[0].At)
	}
	_, err := edit.AddRelation(inLine("sink-1", "hole-1", design.AxisY)).Apply(
		apply(t, d, edit.AddRelation(inLine("hole-1", "taps-1", design.AxisY))))
	if err == nil || !strings.Contains(err.Error(), "waits for it") {
		t.Errorf("a ring of relations: %v", err)
	}
}

func TestRiverEndStaysOnItsEdge(t *testing.T) {
	tied := apply(t, vanity(t), edit.TieRiver("channel-1", 0, design.RiverStart))
	nodes := func(d design.Design) []design.Point {
		var out []design.Point
		for _, n := range d.Channels[0].Rivers[0].Nodes {
			out = append(out, n.At)
		}
		return out
	}
	// The end comes from 3 mm off; the move fades along 100 and 200 mm.
	if diff := cmp.Diff([]design.Point{at(0, 140), at(101, 140), at(303, 140)}, nodes(tied)); diff != "" {
		t.Errorf("tied (-want +got):\n%s", diff)
	}
	grown := apply(t, tied, edit.MoveEdge(3, at(-303, 0)))
	if diff := cmp.Diff([]design.Point{at(-303, 140), at(-101, 140), at(303, 140)}, nodes(grown)); diff != "" {
		t.Errorf("the left edge moved out by 303 (-want +got):\n%s", diff)
	}
	// On an edge that is split, joined, turned or replaced, the end keeps its
	// place to the nanometre.
	for _, c := range []struct {
		name  string
		edits []edit.Edit
		edge  int
		want  design.Point
	}{
		{"split beyond the end", []edit.Edit{edit.InsertNode(3, at(0, 100))}, 3, at(0, 140)},
		{"split before the end", []edit.Edit{edit.InsertNode(3, at(0, 300))}, 4, at(0, 140)},
		{"split elsewhere", []edit.Edit{edit.InsertNode(0, at(500, 0))}, 4, at(0, 140)},
		{"split and joined", []edit.Edit{edit.InsertNode(3, at(0, 300)), edit.RemoveNode(4)}, 3, at(0, 140)},
		{"joined over the first corner", []edit.Edit{edit.InsertNode(3, at(0, 100)), edit.RemoveNode(0)}, 2,
			at(0, 140)},
		// The end lies 20 of the 160 mm from the last offset, 5 mm out, to the corner.
		{"scribed", []edit.Edit{edit.ScribeEdge(3, []edit.Offset{{mm(200), 0}, {mm(400), mm(5)}})}, 5,
			at(-5+5*20.0/160, 140)},
		{"mirrored", []edit.Edit{edit.Mirror()}, 0, at(1500, 140)},
		{"another outline", []edit.Edit{edit.SetOutline(edit.BowedFront(mm(1500), mm(560), mm(60)))}, 3, at(0, 140)},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := tied
			for _, e := range c.edits {
				d = apply(t, d, e)
			}
			if len(d.Relations) != 1 || d.Relations[0].Edge != c.edge {
				t.Fatalf("relations %+v, want one on edge %d", d.Relations, c.edge)
			}
			got, on := nodes(d)[0], d.Relations[0]
			near(t, "x", got.X.MM(), c.want.X.MM(), 3e-6)
			near(t, "y", got.Y.MM(), c.want.Y.MM(), 3e-6)
			p, _ := edit.OnEdge(d, on.Edge, on.Along)
			near(t, "off the edge", got.Sub(p).X.MM()+got.Sub(p).Y.MM(), 0, 0.001)
		})
	}
	twice := apply(t, apply(t, tied, edit.Mirror()), edit.Mirror())
	if diff := cmp.Diff(tied, twice); diff != "" {
		t.Errorf("mirrored twice (-want +got):\n%s", diff)
	}
	oval := apply(t, tied, edit.SetOutline(edit.Round(mm(900))))
	sized := apply(t, oval, edit.Resize(mm(1400), mm(900)))
	p, _ := edit.OnEdge(sized, sized.Relations[0].Edge, sized.Relations[0].Along)
	if nodes(sized)[0] != p {
		t.Errorf("on the scaled outline the end is at %v, want %v", nodes(sized)[0], p)
	}
}

// What the hand does along the way in which a part is held counts more than
// the relation; across it, the relation stays.
func TestTheHandWins(t *testing.T) {
	d := vanity(t)
	for _, e := range []edit.Edit{
		edit.AddRelation(onTop("sink-1", design.AxisX)),
		edit.KeepDistance("hole-1", design.SideRight),
		edit.TieRiver("channel-1", 0, design.RiverStart),
	} {
		d = apply(t, d, e)
	}
	sink := d.Sinks[0]
	sink.At.X += mm(20)
	for _, c := range []struct {
		name string
		by   edit.Edit
		want []string
	}{
		{"across", edit.MovePart("sink-1", at(0, 30)), []string{"Centred on the top, left to right",
			"Keeps 700 mm from the right side", "Start of river 1 stays on edge 4"}},
		{"along", edit.MovePart("sink-1", at(20, 0)), []string{"Keeps 700 mm from the right side",
			"Start of river 1 stays on edge 4"}},
		{"typed", edit.SetSink(sink), []string{"Keeps 700 mm from the right side",
			"Start of river 1 stays on edge 4"}},
		{"nowhere", edit.MovePart("sink-1", at(0, 0)), []string{"Centred on the top, left to right",
			"Keeps 700 mm from the right side", "Start of river 1 stays on edge 4"}},
		{"a distance takes the new value", edit.MovePart("hole-1", at(150, 9)), []string{
			"Centred on the top, left to right", "Keeps 550 mm from the right side",
			"Start of river 1 stays on edge 4"}},
		{"a river's end along its edge", edit.MoveRiverNode("channel-1", 0, 0, at(0, 300)), []string{
			"Centred on the top, left to right", "Keeps 700 mm from the right side",
			"Start of river 1 stays on edge 4"}},
		{"a river's end to another edge", edit.MoveRiverNode("channel-1", 0, 0, at(300, 0.2)), []string{
			"Centred on the top, left to right", "Keeps 700 mm from the right side",
			"Start of river 1 stays on edge 1"}},
		{"a river's end inland", edit.MoveRiverNode("channel-1", 0, 0, at(40, 140)), []string{
			"Centred on the top, left to right", "Keeps 700 mm from the right side"}},
		{"the river's other end", edit.MoveRiverNode("channel-1", 0, 2, at(400, 200)), []string{
			"Centred on the top, left to right", "Keeps 700 mm from the right side",
			"Start of river 1 stays on edge 4"}},
		{"the river goes", edit.RemovePart("channel-1"), []string{"Centred on the top, left to right",
			"Keeps 700 mm from the right side"}},
		{"all moved with the top", edit.Together("Move all", edit.MoveEdge(1, at(7, 0)), edit.MoveEdge(3, at(7, 0)),
			edit.MovePart("sink-1", at(7, 0)), edit.MovePart("hole-1", at(7, 0)),
			edit.MovePart("channel-1", at(7, 0))), []string{
			"Centred on the top, left to right", "Keeps 700 mm from the right side",
			"Start of river 1 stays on edge 4"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			out := apply(t, d, c.by)
			var got []string
			for _, r := range out.Relations {
				got = append(got, r.Sentence(nil, nil))
			}
			if diff := cmp.Diff(c.want, got); diff != "" {
				t.Errorf("relations (-want +got):\n%s", diff)
			}
		})
	}
}

// Parts that move together stay in line with each other.
func TestPartsMovedTogetherKeepTheirRelations(t *testing.T) {
	d := apply(t, vanity(t), edit.AddRelation(inLine("hole-1", "sink-1", design.AxisX)))
	out := apply(t, d, edit.Together("Move 2 things", edit.MovePart("hole-1", at(30, 5)),
		edit.MovePart("sink-1", at(30, 5))))
	if len(out.Relations) != 1 || out.Holes[0].At != d.Holes[0].At.Add(at(30, 5)) {
		t.Errorf("hole at %v with %d relations", out.Holes[0].At, len(out.Relations))
	}
}

func TestRelationsThatCantBe(t *testing.T) {
	d := apply(t, vanity(t), edit.TieRiver("channel-1", 0, design.RiverStart))
	for _, c := range []struct {
		relation design.Relation
		want     string
	}{
		{onTop("sink-9", design.AxisX), "no part"},
		{inLine("hole-1", "sink-9", design.AxisX), "no part"},
		{inLine("hole-1", "hole-1", design.AxisX), "to itself"},
		{onTop("taps-1", design.AxisX), "free it first"},
		{onTop("channel-1", design.AxisX), "start of river 1 stays on edge 4: cut that"},
		{design.Relation{Kind: design.RelationEdge, Part: "sink-1"}, "no channel"},
		{design.Relation{Kind: design.RelationEdge, Part: "channel-1", River: 1}, "1 rivers"},
		{design.Relation{Kind: design.RelationEdge, Part: "channel-1", Edge: 4}, "4 edges"},
		{design.Relation{Kind: 9, Part: "sink-1"}, "not known"},
		{design.Relation{Kind: design.RelationSide, Part: "sink-1", Distance: units.MaxLength + 1}, "give less"},
	} {
		if _, err := edit.AddRelation(c.relation).Apply(d); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%+v: %v, want %q", c.relation, err, c.want)
		}
	}
	if _, err := edit.CutRelation(1).Apply(d); err == nil {
		t.Error("relation 2 of 1 was cut")
	}
	if got := apply(t, d, edit.CutRelation(0)); got.Relations != nil {
		t.Errorf("relations %v after the only one was cut", got.Relations)
	}
	// A new one along the same axis takes the old one's place.
	d = apply(t, d, edit.AddRelation(onTop("sink-1", design.AxisX)))
	d = apply(t, d, edit.KeepDistance("sink-1", design.SideLeft))
	if got := d.RelationsOf("sink-1"); len(got) != 1 || d.Relations[got[0]].Kind != design.RelationSide {
		t.Errorf("relations %+v", d.Relations)
	}
}

// After any edits, every relation that can be kept holds.
func TestRelationsHoldAfterAnyEdits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := vanity(t)
		ids := []design.ID{"sink-1", "taps-1", "hole-1", "channel-1", "support-1", "support-2"}
		id := func() design.ID { return rapid.SampledFrom(ids).Draw(t, "id") }
		for range 6 {
			if out, err := edit.AddRelation(drawRelation(t, id, 4)).Apply(d); err == nil {
				d = out
			}
		}
		for range rapid.IntRange(0, 8).Draw(t, "edits") {
			if out, err := drawEdit(t, d).Apply(d); err == nil {
				d = out
			}
		}
		order := d.RelationOrder()
		if len(order) != len(d.Relations) {
			t.Fatalf("%d of %d relations can be kept: %+v", len(order), len(d.Relations), d.Relations)
		}
		for _, r := range d.Relations {
			tie, ok := edit.TieOf(d, r)
			if !ok {
				continue // no points to go by
			}
			if r.Kind == design.RelationBank {
				holdsBank(t, d, r)
				continue // its tie runs from middle to middle
			}
			to := tie.To[0]
			if len(tie.To) == 2 {
				to = design.Point{X: (to.X + tie.To[1].X) / 2, Y: (to.Y + tie.To[1].Y) / 2}
			}
			off := tie.At.Sub(to)
			axis, along := r.Holds()
			if r.Kind == design.RelationSide {
				off = off.Sub(design.Point{X: r.Distance, Y: r.Distance})
				if r.Side == design.SideRight || r.Side == design.SideBack {
					off = off.Add(design.Point{X: 2 * r.Distance, Y: 2 * r.Distance})
				}
			}
			if !along || axis == design.AxisX {
				near(t, r.Sentence(nil, nil), off.X.MM(), 0, 0.001)
			}
			if !along || axis == design.AxisY {
				near(t, r.Sentence(nil, nil), off.Y.MM(), 0, 0.001)
			}
		}
	})
}

// holdsBank holds a bed to the strips that are laid along the same bank anew.
func holdsBank(t failing, d design.Design, r design.Relation) {
	t.Helper()
	fresh, err := edit.BankGlass(r.Other, r.Bank, r.Distance, r.Width, design.GlassBed{}).Apply(d)
	if err != nil {
		return // no bank is left to lie along
	}
	var bed design.GlassBed
	for _, g := range d.Glass {
		if g.ID == r.Part {
			bed = g
		}
	}
	strips := fresh.Glass[len(d.Glass):]
	for _, s := range strips {
		if cmp.Equal(s.Region, bed.Region) {
			return
		}
	}
	beds := 0
	for _, other := range d.Relations {
		if other.Part = r.Part; other == r {
			beds++
		}
	}
	if beds <= len(strips) {
		t.Errorf("%s is none of the %d strips along the bank of %s", r.Part, len(strips), r.Other)
	}
}
