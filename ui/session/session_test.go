package session_test

import (
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/session"
)

func TestDirtyFollowsUndo(t *testing.T) {
	s := session.New(session.Blank(units.Metric), "")
	if s.Dirty() {
		t.Fatal("a new job is dirty")
	}
	if err := s.Do(edit.SetThickness(50 * units.Millimetre)); err != nil {
		t.Fatal(err)
	}
	if !s.Dirty() {
		t.Error("an edit leaves the job clean")
	}
	s.Undo()
	if s.Dirty() {
		t.Error("a job that is back where it was saved is dirty")
	}
	s.Redo()
	s.MarkSaved("a.json")
	if s.Dirty() || s.Path() != "a.json" {
		t.Errorf("after saving: dirty %v, path %q", s.Dirty(), s.Path())
	}
	s.Undo()
	if !s.Dirty() {
		t.Error("undo past the saved state leaves the job clean")
	}
}

func TestCancelledGestureLeavesNoTrace(t *testing.T) {
	s := session.New(session.Blank(units.Metric), "")
	s.BeginGesture()
	if err := s.DoGesture(edit.SetThickness(50 * units.Millimetre)); err != nil {
		t.Fatal(err)
	}
	s.CancelGesture()
	if s.Dirty() || s.UndoName() != "" {
		t.Errorf("dirty %v, undo %q", s.Dirty(), s.UndoName())
	}
}

func TestLoadForgets(t *testing.T) {
	s := session.New(session.Blank(units.Metric), "")
	if err := s.Do(edit.SetThickness(50 * units.Millimetre)); err != nil {
		t.Fatal(err)
	}
	s.Select(session.Pick{Node: 1})
	var told []session.Change
	s.OnChange(func(c session.Change) { told = append(told, c) })
	other := session.Blank(units.Imperial)
	other.Client = "someone"
	s.Load(other, "other.json")
	if s.Job().Client != "someone" || s.Path() != "other.json" || s.Dirty() || s.UndoName() != "" || len(s.Selection()) != 0 {
		t.Errorf("after loading: %q %q %v %q %v", s.Job().Client, s.Path(), s.Dirty(), s.UndoName(),
			s.Selection())
	}
	if len(told) != 1 || told[0] != (session.Change{Design: true, Job: true, Option: true,
		Selection: true}) {
		t.Errorf("told %v", told)
	}
}

func TestOptionInHand(t *testing.T) {
	s := session.New(session.Blank(units.Metric), "")
	do := func(e edit.JobEdit) {
		t.Helper()
		if err := s.DoJob(e); err != nil {
			t.Fatal(err)
		}
	}
	do(edit.DuplicateOption("A"))
	do(edit.DuplicateOption("B"))
	s.SetOption("B")
	do(edit.RenameOption("B", "river"))
	if got := s.Option().Name; got != "river" {
		t.Errorf("after renaming, %q is in hand", got)
	}
	s.Undo()
	if got := s.Option().Name; got != "B" {
		t.Errorf("after taking the name back, %q is in hand", got)
	}
	do(edit.RemoveOption("B"))
	if got := s.Option().Name; got != "C" {
		t.Errorf("after removing, %q is in hand, want its neighbour", got)
	}
}

func TestReportOfOtherOptions(t *testing.T) {
	s := session.New(session.Blank(units.Metric), "")
	if err := s.DoJob(edit.DuplicateOption("A")); err != nil {
		t.Fatal(err)
	}
	before, ok := s.ReportOf("B")
	if !ok {
		t.Fatal("no report of B")
	}
	s.SetOption("B")
	if err := s.Do(edit.SetThickness(80 * units.Millimetre)); err != nil {
		t.Fatal(err)
	}
	s.SetOption("A")
	after, _ := s.ReportOf("B")
	if after.Takeoff.WeightDry.Value <= before.Takeoff.WeightDry.Value {
		t.Errorf("twice as thick: %g kg after %g kg", after.Takeoff.WeightDry.Value,
			before.Takeoff.WeightDry.Value)
	}
	if _, ok := s.ReportOf("Q"); ok {
		t.Error("an option that is not there has a report")
	}
}

func TestBlankIsSound(t *testing.T) {
	for _, sys := range []units.System{units.Metric, units.Imperial} {
		s := session.New(session.Blank(sys), "")
		if f := s.Report().Faults; len(f) > 0 {
			t.Errorf("%v: %v", sys, f)
		}
		if d := s.Design(); len(d.Outline.Nodes) != 4 || d.Outline.Nodes[0].Edge.Profile.Kind != design.ProfileEased {
			t.Errorf("%v: not a plain top with eased edges", sys)
		}
	}
}
