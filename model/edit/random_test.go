package edit_test

import (
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/units"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// drawEdit draws any edit, with arguments that make sense for d or not.
func drawEdit(t *rapid.T, d design.Design) edit.Edit {
	index := func(n int) int { return rapid.IntRange(-1, n).Draw(t, "index") }
	length := func() units.Length { return mm(rapid.Float64Range(-5, 400).Draw(t, "length")) }
	place := func() design.Point {
		return at(rapid.Float64Range(-500, 2500).Draw(t, "x"), rapid.Float64Range(-500, 1500).Draw(t, "y"))
	}
	ids := []design.ID{"nobody"}
	for _, s := range d.Sinks {
		ids = append(ids, s.ID)
	}
	for _, s := range d.Taps {
		ids = append(ids, s.ID)
	}
	for _, h := range d.Holes {
		ids = append(ids, h.ID)
	}
	for _, c := range d.Channels {
		ids = append(ids, c.ID)
	}
	for _, g := range d.Glass {
		ids = append(ids, g.ID)
	}
	for _, s := range d.Supports {
		ids = append(ids, s.ID)
	}
	id := func() design.ID { return rapid.SampledFrom(ids).Draw(t, "id") }
	corners := len(d.Outline.Nodes)
	edits := []func() edit.Edit{
		func() edit.Edit { return edit.MoveNode(index(corners), place()) },
		func() edit.Edit { return edit.MoveEdge(index(corners), place()) },
		func() edit.Edit { return edit.InsertNode(index(corners), place()) },
		func() edit.Edit { return edit.RemoveNode(index(corners)) },
		func() edit.Edit {
			return edit.SetCorner(index(corners), design.Corner{Kind: design.CornerRounded, Size: length()})
		},
		func() edit.Edit {
			return edit.SetAllCorners(design.Corner{Kind: design.CornerChamfered, Size: length()})
		},
		func() edit.Edit { return edit.BendEdge(index(corners), length()) },
		func() edit.Edit {
			return edit.SetEdgeCurve(index(corners), design.CurveKind(rapid.IntRange(0, 3).Draw(t, "curve")))
		},
		func() edit.Edit { return edit.SetSpline(index(corners), place(), place()) },
		func() edit.Edit { return edit.SetSide(index(corners), design.SideWall) },
		func() edit.Edit {
			return edit.SetProfile(index(corners), design.Profile{Kind: design.ProfileEased, Size: length()})
		},
		func() edit.Edit { return edit.SetSeenProfiles(design.Profile{Kind: design.ProfileFullRound}) },
		func() edit.Edit { return edit.SetThickness(length()) },
		func() edit.Edit { return edit.SetNotes("seen by the client") },
		func() edit.Edit { return edit.Resize(5*length(), 5*length()) },
		func() edit.Edit { return edit.Mirror() },
		func() edit.Edit { return edit.SetOutline(edit.Oval(mm(900), mm(600))) },
		func() edit.Edit { return edit.SetFinish(design.Finish{Polish: index(5), Grind: length()}) },
		func() edit.Edit { return edit.AddSink(design.Sink{At: place()}) },
		func() edit.Edit { return edit.SetSink(design.Sink{ID: id(), At: place()}) },
		func() edit.Edit { return edit.AddTaps(design.TapSet{Sink: id(), Holes: []design.Point{place()}}) },
		func() edit.Edit { return edit.SetTaps(design.TapSet{ID: id(), At: place()}) },
		func() edit.Edit { return edit.FreeTaps(id()) },
		func() edit.Edit { return edit.AddHole(design.Hole{At: place(), Diameter: length()}) },
		func() edit.Edit { return edit.SetHole(design.Hole{ID: id(), At: place()}) },
		func() edit.Edit {
			return edit.AddChannel(design.Channel{Rivers: []design.River{{
				Nodes: []design.RiverNode{{At: place(), Width: length()}, {At: place()}}}}})
		},
		func() edit.Edit { return edit.SetChannel(design.Channel{ID: id(), Depth: length()}) },
		func() edit.Edit {
			return edit.AddRiver(id(), design.River{Nodes: []design.RiverNode{{At: place()}, {At: place()}}})
		},
		func() edit.Edit { return edit.RemoveRiver(id(), index(1)) },
		func() edit.Edit { return edit.MoveRiverNode(id(), index(1), index(3), place()) },
		func() edit.Edit { return edit.InsertRiverNode(id(), index(1), index(3), place()) },
		func() edit.Edit { return edit.RemoveRiverNode(id(), index(1), index(3)) },
		func() edit.Edit { return edit.SetRiverWidth(id(), index(1), index(3), length()) },
		func() edit.Edit { return edit.SetRiverEnds(id(), index(1), design.EndFlat, design.EndOpen) },
		func() edit.Edit {
			return edit.AddGlass(design.GlassBed{Region: design.Region{Outer: edit.Round(mm(90)).Nodes}})
		},
		func() edit.Edit { return edit.SetGlass(design.GlassBed{ID: id(), Depth: length()}) },
		func() edit.Edit { return edit.MoveRegionNode(id(), index(1), index(2), index(4), place()) },
		func() edit.Edit { return edit.AddSupport(design.Support{Line: []design.Point{place(), place()}}) },
		func() edit.Edit { return edit.SetSupport(design.Support{ID: id(), Width: length()}) },
		func() edit.Edit { return edit.MoveSupportPoint(id(), index(3), place()) },
		func() edit.Edit { return edit.MovePart(id(), place()) },
		func() edit.Edit { return edit.RemovePart(id()) },
		func() edit.Edit { return edit.DuplicatePart(id(), place()) },
		func() edit.Edit { return edit.Align([]design.ID{id(), id()}, edit.Alignment(index(5)+1)) },
		func() edit.Edit { return edit.Distribute([]design.ID{id(), id(), id()}, design.AxisY) },
		func() edit.Edit { return edit.MirrorParts([]design.ID{id(), id()}) },
		func() edit.Edit { return edit.RotatePart(id(), units.Angle(length())) },
		func() edit.Edit { return edit.DuplicateParts([]design.ID{id(), id()}, place()) },
		func() edit.Edit { return edit.RemoveParts([]design.ID{id(), id()}) },
		func() edit.Edit { return edit.PullEdgeThrough(index(corners), place()) },
		func() edit.Edit { return edit.SplineThrough(index(corners), []design.Point{place(), place()}) },
		func() edit.Edit { return edit.JoinEdges(index(corners)) },
		func() edit.Edit { return edit.SmoothCorner(index(corners)) },
		func() edit.Edit { return edit.PaintGlass(id(), []design.Point{place(), place()}, length()) },
		func() edit.Edit {
			return edit.BankGlass(id(), edit.BankSide(rapid.IntRange(0, 2).Draw(t, "bank")), length(), length(),
				design.GlassBed{})
		},
		func() edit.Edit { return edit.AddRelation(drawRelation(t, id, corners)) },
		func() edit.Edit { return edit.CutRelation(index(len(d.Relations))) },
		func() edit.Edit {
			return edit.KeepDistance(id(), design.TopSide(rapid.IntRange(0, 4).Draw(t, "side")))
		},
		func() edit.Edit {
			return edit.TieRiver(id(), index(1), design.RiverSide(rapid.IntRange(0, 1).Draw(t, "end")))
		},
		func() edit.Edit {
			by := place()
			return edit.Together("Move two", edit.MovePart(id(), by), edit.MovePart(id(), by))
		},
	}
	return rapid.SampledFrom(edits).Draw(t, "edit")()
}

func drawRelation(t *rapid.T, id func() design.ID, corners int) design.Relation {
	small := func(what string, most int) int { return rapid.IntRange(0, most).Draw(t, what) }
	return design.Relation{
		Kind: design.RelationKind(small("kind", 5)), Part: id(), Axis: design.Axis(small("axis", 1)),
		Other: id(), Second: id(), Side: design.TopSide(small("side", 3)),
		Distance: mm(rapid.Float64Range(0, 900).Draw(t, "distance")),
		River:    small("river", 1), End: design.RiverSide(small("end", 1)), Edge: small("edge", corners),
		Along: float64(small("along", 1000)) / 1000,
	}
}

// An edit never changes what it was given: after any sequence every earlier
// version is still deeply equal to its snapshot, and undo comes back to them
// one by one.
func TestEditsNeverWriteBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := design.Job{Options: []design.Option{{Name: "A", Design: counter(t)}, {Name: "B"}}}
		h := edit.NewHistory(job)
		kept, snapshots := []design.Job{job}, []design.Job{snapshot(job)}
		for range rapid.IntRange(1, 20).Draw(t, "edits") {
			before := h.Job()
			e := drawEdit(t, before.Options[0].Design)
			if err := h.Do(edit.On("A", e), 0); err != nil {
				if diff := cmp.Diff(before, h.Job()); diff != "" {
					t.Fatalf("%s failed and changed the job (-want +got):\n%s", e.Name, diff)
				}
				continue
			}
			kept, snapshots = append(kept, h.Job()), append(snapshots, snapshot(h.Job()))
		}
		for i := range kept {
			if diff := cmp.Diff(snapshots[i], kept[i]); diff != "" {
				t.Fatalf("version %d was written into (-want +got):\n%s", i, diff)
			}
		}
		for i := len(kept) - 2; i >= 0; i-- {
			if _, ok := h.Undo(); !ok {
				t.Fatalf("undo ends at version %d", i+1)
			}
			if diff := cmp.Diff(snapshots[i], h.Job()); diff != "" {
				t.Fatalf("undo to version %d (-want +got):\n%s", i, diff)
			}
		}
	})
}

// The same edit of the same design gives the same design.
func TestEditsAreDeterministic(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := counter(t)
		e := drawEdit(t, d)
		one, errOne := e.Apply(d)
		two, errTwo := e.Apply(d)
		if diff := cmp.Diff(one, two); diff != "" || (errOne == nil) != (errTwo == nil) {
			t.Fatalf("%s: %v and %v\n%s", e.Name, errOne, errTwo, diff)
		}
	})
}
