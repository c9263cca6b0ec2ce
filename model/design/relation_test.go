package design_test

import (
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/units"
	"github.com/google/go-cmp/cmp"
)

// parts is a design with a part of each kind that relations tell apart.
func parts(relations ...design.Relation) design.Design {
	return design.Design{
		Thickness: 40 * units.Millimetre,
		Outline:   design.Outline{Nodes: make([]design.Node, 4)},
		Sinks:     []design.Sink{{ID: "sink-1"}},
		Taps:      []design.TapSet{{ID: "taps-1", Sink: "sink-1"}, {ID: "taps-2"}},
		Holes:     []design.Hole{{ID: "hole-1"}, {ID: "hole-2"}},
		Channels:  []design.Channel{{ID: "channel-1", Rivers: make([]design.River, 2)}},
		Glass:     []design.GlassBed{{ID: "glass-1"}},
		Supports:  []design.Support{{ID: "support-1"}, {ID: "support-2"}},
		Relations: relations,
	}
}

func line(part, other design.ID) design.Relation {
	return design.Relation{Kind: design.RelationPart, Part: part, Other: other}
}

func end(edge int, side design.RiverSide) design.Relation {
	return design.Relation{Kind: design.RelationEdge, Part: "channel-1", Edge: edge, End: side}
}

func TestRelationFaults(t *testing.T) {
	top := design.Relation{Kind: design.RelationTop, Part: "channel-1"}
	for _, c := range []struct {
		name      string
		relations []design.Relation
		want      []string // rule and field
	}{
		{"sound", []design.Relation{line("hole-1", "glass-1"), line("hole-2", "hole-1"), end(3, 0), end(3, 1)}, nil},
		{"a part gone", []design.Relation{line("hole-9", "glass-1")}, []string{"reference relations[0].part"}},
		{"another gone", []design.Relation{line("hole-1", "glass-9")}, []string{"reference relations[0].other"}},
		{"the second gone", []design.Relation{{Kind: design.RelationBetween, Part: "hole-1", Other: "support-1",
			Second: "support-3"}}, []string{"reference relations[0].second"}},
		{"between one", []design.Relation{{Kind: design.RelationBetween, Part: "hole-1", Other: "support-1",
			Second: "support-1"}}, []string{"relation relations[0].second"}},
		{"to itself", []design.Relation{line("hole-1", "hole-1")}, []string{"relation relations[0].other"}},
		{"taps on a centreline", []design.Relation{line("taps-1", "hole-1")}, []string{"relation relations[0].part"}},
		{"taps by themselves", []design.Relation{line("taps-2", "hole-1")}, nil},
		{"no such edge", []design.Relation{end(4, 0)}, []string{"reference relations[0].edge"}},
		{"beyond the edge", []design.Relation{{Kind: design.RelationEdge, Part: "channel-1",
			Along: 1.01}}, []string{"range relations[0].along_percent"}},
		{"no such river", []design.Relation{{Kind: design.RelationEdge, Part: "channel-1", River: 2}},
			[]string{"reference relations[0].river"}},
		{"a sink on an edge", []design.Relation{{Kind: design.RelationEdge, Part: "sink-1"}},
			[]string{"reference relations[0].part"}},
		{"held twice", []design.Relation{line("hole-1", "glass-1"), line("hole-1", "sink-1")},
			[]string{"relation relations[1].part"}},
		{"an end held twice", []design.Relation{end(0, 0), end(1, 0)}, []string{"relation relations[1].part"}},
		{"whole and by an end", []design.Relation{top, end(1, 0)}, []string{"relation relations[1].part"}},
		{"a ring", []design.Relation{line("hole-1", "hole-2"), line("hole-2", "hole-1"), line("sink-1", "glass-1")},
			[]string{"relation relations[0].part", "relation relations[1].part"}},
		{"a ring by a centreline", []design.Relation{line("sink-1", "taps-1")},
			[]string{"relation relations[0].part"}},
		{"kinds of later versions", []design.Relation{{Kind: 7}, {Part: "hole-1", Axis: 2},
			{Kind: design.RelationSide, Part: "hole-1", Side: 4}},
			[]string{"kind relations[0].kind", "kind relations[1].axis", "kind relations[2].side"}},
		{"too many", make([]design.Relation, design.MaxRelations+1), []string{"count relations"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			var got []string
			for _, f := range parts(c.relations...).Validate() {
				if len(f.Field) >= len("relations") && f.Field[:len("relations")] == "relations" {
					got = append(got, string(f.Rule)+" "+f.Field)
				}
			}
			if diff := cmp.Diff(c.want, got); diff != "" {
				t.Errorf("faults (-want +got):\n%s", diff)
			}
		})
	}
}

func TestRelationOrder(t *testing.T) {
	for _, c := range []struct {
		name      string
		relations []design.Relation
		want      []int
	}{
		{"as they come", []design.Relation{line("hole-1", "sink-1"), line("hole-2", "sink-1")}, []int{0, 1}},
		{"what is looked at first", []design.Relation{line("hole-1", "hole-2"), line("hole-2", "sink-1"),
			line("sink-1", "glass-1")}, []int{2, 1, 0}},
		{"through taps to their sink", []design.Relation{line("hole-1", "taps-1"), line("sink-1", "glass-1")},
			[]int{1, 0}},
		{"faults are passed over", []design.Relation{line("hole-9", "sink-1"), line("hole-1", "hole-2"),
			line("hole-2", "hole-1"), line("sink-1", "glass-1")}, []int{3}},
	} {
		if diff := cmp.Diff(c.want, parts(c.relations...).RelationOrder()); diff != "" {
			t.Errorf("%s (-want +got):\n%s", c.name, diff)
		}
	}
}

func TestRelationsOf(t *testing.T) {
	d := parts(line("hole-1", "sink-1"), line("hole-2", "hole-1"), line("sink-1", "glass-1"))
	if diff := cmp.Diff([]int{0}, d.RelationsOf("hole-1")); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff([]int{1}, d.RelationsTo("hole-1")); diff != "" {
		t.Error(diff)
	}
}

func TestRelationSentences(t *testing.T) {
	names := func(id design.ID) string { return map[design.ID]string{"support-1": "the left gable"}[id] }
	inches := func(l units.Length) string { return units.Format(l, units.Imperial) }
	for _, c := range []struct {
		relation design.Relation
		want     string
	}{
		{design.Relation{Kind: design.RelationBetween, Other: "support-3", Second: "support-4"},
			"Centred between support-3 and support-4"},
		{design.Relation{Kind: design.RelationTop, Axis: design.AxisY}, "Centred on the top, front to back"},
		{design.Relation{Kind: design.RelationPart, Other: "taps-1", Axis: design.AxisY},
			"In line with taps-1, front to back"},
		{design.Relation{Kind: design.RelationSide, Side: design.SideBack, Distance: 25*units.Millimetre + 1},
			"Keeps 25.000001 mm from the back side"},
		{design.Relation{Kind: design.RelationEdge, River: 1, End: design.RiverFinish, Edge: 2},
			"End of river 2 stays on edge 3"},
	} {
		if got := c.relation.Sentence(nil, nil); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
	got := design.Relation{Kind: design.RelationPart, Other: "support-1"}.Sentence(names, inches)
	if got != "In line with the left gable, left to right" {
		t.Error(got)
	}
}
