package edit_test

import (
	"strings"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/report"
	"example.org/castwright/model/units"
	"github.com/google/go-cmp/cmp"
)

// basin is an option with a top of 1200 by 500 mm, a round sink in its middle with
// tap holes behind it, two holes and a river across, its start tied to the left
// edge.
func basin(t failing) design.Job {
	d := design.Design{Outline: edit.Rectangle(mm(1200), mm(500)), Thickness: mm(40)}
	d = apply(t, d,
		edit.AddSink(design.Sink{At: at(600, 250), Shape: design.Shape{Kind: design.ShapeCircle, Width: mm(300)}}),
		edit.AddTaps(design.TapSet{Sink: "sink-1", Pattern: design.TapSingle, Diameter: mm(35), SetBack: mm(50)}),
		edit.AddHole(hole(100, 100, 40)), edit.AddHole(hole(200, 100, 40)),
		edit.AddChannel(design.Channel{Depth: mm(10), Rivers: []design.River{{Nodes: []design.RiverNode{
			{At: at(0, 400), Width: mm(30)}, {At: at(200, 420), Width: mm(30)}, {At: at(400, 400), Width: mm(30)},
		}}}}),
		edit.TieRiver("channel-1", 0, design.RiverStart))
	return design.Job{Options: []design.Option{{Name: "A", Design: d}}}
}

func doJob(t failing, j design.Job, edits ...edit.JobEdit) design.Job {
	t.Helper()
	for _, e := range edits {
		out, err := e.Apply(j)
		if err != nil {
			t.Fatalf("%s: %v", e.Name, err)
		}
		j = out
	}
	return j
}

func lock(ids ...design.ID) edit.JobEdit { return edit.LockParts("A", ids, true) }

func TestLockedPartsAreNotChanged(t *testing.T) {
	centred := design.Relation{Kind: design.RelationTop, Part: "sink-1"}
	for _, c := range []struct {
		name    string
		locked  []design.ID
		before  []edit.Edit
		edit    edit.Edit
		refused string // part of the error; "" when the edit is to pass
	}{
		{"moved", []design.ID{"sink-1"}, nil, edit.MovePart("sink-1", at(5, 0)), "sink-1 is locked"},
		{"moved with others", []design.ID{"hole-1"}, nil, edit.MoveParts([]design.ID{"hole-1", "hole-2"}, at(5, 0)), "hole-1 is locked"},
		{"removed", []design.ID{"hole-1"}, nil, edit.RemovePart("hole-1"), "hole-1 is locked"},
		{"changed", []design.ID{"hole-1"}, nil, edit.SetHole(design.Hole{ID: "hole-1", At: at(100, 100), Diameter: mm(50)}), "hole-1 is locked"},
		{"turned", []design.ID{"channel-1"}, nil, edit.RotatePart("channel-1", units.Degree), "channel-1 is locked"},
		{"a node of it moved", []design.ID{"channel-1"}, nil, edit.MoveRiverNode("channel-1", 0, 1, at(200, 300)), "channel-1 is locked"},
		{"its tied end moved along the edge", []design.ID{"channel-1"}, nil, edit.MoveRiverNode("channel-1", 0, 0, at(0, 300)), "channel-1 is locked"},
		{"held along x and moved along y", []design.ID{"sink-1"}, []edit.Edit{edit.AddRelation(centred)}, edit.MovePart("sink-1", at(0, 5)), "sink-1 is locked"},
		{"its distance changed", []design.ID{"hole-1"}, []edit.Edit{edit.KeepDistance("hole-1", design.SideLeft)}, edit.MovePart("hole-1", at(5, 0)), "hole-1 is locked"},
		{"freed by its sink's removal", []design.ID{"taps-1"}, nil, edit.RemovePart("sink-1"), "taps-1 is locked"},

		{"another moved", []design.ID{"sink-1"}, nil, edit.MovePart("hole-1", at(5, 0)), ""},
		{"its taps moved", []design.ID{"sink-1"}, nil, edit.MovePart("taps-1", at(5, 0)), ""},
		{"carried by its relation", []design.ID{"hole-2"}, []edit.Edit{edit.AddRelation(
			design.Relation{Kind: design.RelationPart, Part: "hole-2", Other: "hole-1"})}, edit.MovePart("hole-1", at(40, 0)), ""},
		{"the top resized", []design.ID{"sink-1", "hole-1"}, []edit.Edit{edit.AddRelation(centred)}, edit.Resize(mm(1400), mm(500)), ""},
		{"an edge moved", []design.ID{"sink-1"}, []edit.Edit{edit.AddRelation(centred)}, edit.MoveEdge(1, at(50, 0)), ""},
		{"the top mirrored", []design.ID{"hole-1"}, nil, edit.Mirror(), ""},
		{"a copy made", []design.ID{"hole-1"}, nil, edit.DuplicateParts([]design.ID{"hole-1"}, at(0, 100)), ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			j := basin(t)
			for _, e := range c.before {
				j = doJob(t, j, edit.On("A", e))
			}
			j = doJob(t, j, lock(c.locked...))
			got, err := edit.On("A", c.edit).Apply(j)
			switch {
			case c.refused == "" && err != nil:
				t.Errorf("refused: %v", err)
			case c.refused == "":
				if diff := cmp.Diff(j.Options[0].Design, got.Options[0].Design); diff == "" {
					t.Error("the edit has changed nothing")
				}
				if diff := cmp.Diff(apply(t, j.Options[0].Design, c.edit), got.Options[0].Design); diff != "" {
					t.Errorf("a lock elsewhere changes the edit (-want +got):\n%s", diff)
				}
			case err == nil || !strings.Contains(err.Error(), c.refused):
				t.Errorf("error %v, want %q", err, c.refused)
			case cmp.Diff(j, got) != "":
				t.Error("a refused edit has changed the job")
			}
			// Unlocked, all of these pass.
			if _, err := edit.On("A", c.edit).Apply(doJob(t, j, edit.LockParts("A", c.locked, false))); err != nil {
				t.Errorf("unlocked, it is refused: %v", err)
			}
		})
	}
}

// Hiding changes no number: it stands beside the design.
func TestHiddenPartsStayInTheTop(t *testing.T) {
	j := basin(t)
	want := report.Derive(j.Options[0].Design, j.Materials, j.Site)
	h := doJob(t, j, edit.HideParts("A", []design.ID{"sink-1", "channel-1"}, true))
	o := h.Options[0]
	if diff := cmp.Diff(j.Options[0].Design, o.Design); diff != "" {
		t.Errorf("hiding has changed the design:\n%s", diff)
	}
	got := report.Derive(o.Design, h.Materials, h.Site)
	if got.Takeoff.WeightDry.Value != want.Takeoff.WeightDry.Value {
		t.Errorf("the weight goes from %v to %v", want.Takeoff.WeightDry.Value, got.Takeoff.WeightDry.Value)
	}
	seen := edit.Seen(o)
	if diff := cmp.Diff([]design.ID{"taps-1", "hole-1", "hole-2"}, edit.Parts(seen)); diff != "" {
		t.Errorf("seen parts (-want +got):\n%s", diff)
	}
	place, _ := edit.Centre(o.Design, "taps-1")
	if at, _ := edit.Centre(seen, "taps-1"); at != place {
		t.Errorf("tap holes are seen at %v and lie at %v", at, place)
	}
	if diff := cmp.Diff([]design.ID{"sink-1", "channel-1"}, o.HiddenParts()); diff != "" {
		t.Errorf("hidden (-want +got):\n%s", diff)
	}
	all := doJob(t, h, edit.ShowParts("A"))
	if diff := cmp.Diff(j, all); diff != "" {
		t.Errorf("all shown (-want +got):\n%s", diff)
	}
	if _, err := edit.ShowParts("A").Apply(all); err == nil {
		t.Error("nothing is hidden, and showing all passes")
	}
}

// A part that is gone takes its lock along, also where its name comes back.
func TestHandlingEndsWithThePart(t *testing.T) {
	j := doJob(t, basin(t), edit.LockParts("A", []design.ID{"sink-1"}, true), edit.HideParts("A", []design.ID{"hole-2", "sink-1"}, true),
		edit.On("A", edit.RemovePart("hole-2")), edit.On("A", edit.AddHole(hole(300, 100, 40))))
	if id := j.Options[0].Design.Holes[1].ID; id != "hole-2" {
		t.Fatalf("the new hole is %s: the test needs the old name", id)
	}
	want := []design.Handling{{Part: "sink-1", Locked: true, Hidden: true}}
	if diff := cmp.Diff(want, j.Options[0].Handling); diff != "" {
		t.Errorf("handling (-want +got):\n%s", diff)
	}
	// A copy of the option is handled alike.
	if copied := doJob(t, j, edit.DuplicateOption("A")); !copied.Options[1].Locked("sink-1") {
		t.Error("a copy of the option has its parts unlocked")
	}
	for _, e := range []edit.JobEdit{edit.LockParts("A", []design.ID{"sink-9"}, true), edit.HideParts("A", nil, true),
		edit.HideParts("B", []design.ID{"sink-1"}, true)} {
		if _, err := e.Apply(j); err == nil {
			t.Errorf("%s: passes without a part", e.Name)
		}
	}
}

func TestHandlingNames(t *testing.T) {
	one, two := []design.ID{"sink-1"}, []design.ID{"sink-1", "hole-1"}
	for _, c := range []struct{ got, want string }{
		{edit.LockParts("A", one, true).Name, "Lock sink"}, {edit.LockParts("A", two, false).Name, "Unlock 2 parts"},
		{edit.HideParts("A", two, true).Name, "Hide 2 parts"}, {edit.HideParts("A", one, false).Name, "Show sink"},
	} {
		if c.got != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
}
