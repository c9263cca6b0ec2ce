package edit_test

import (
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
)

// A drag is one step: each of its moves works from where the drag began.
func TestADragIsOneStep(t *testing.T) {
	h := edit.NewHistory(design.Job{Options: []design.Option{{Name: "A", Design: counter(t)}}})
	x := func() float64 { return h.Job().Options[0].Design.Sinks[0].At.X.MM() }
	for i := 1; i <= 5; i++ {
		if err := h.Do(edit.On("A", edit.MovePart("sink-1", at(float64(10*i), 0))), 1); err != nil {
			t.Fatal(err)
		}
	}
	near(t, "after the drag", x(), 550, 0)
	if name := h.UndoName(); name != "Move sink" {
		t.Errorf("undo would take back %q", name)
	}
	h.Undo()
	near(t, "undone", x(), 500, 0)
	h.Redo()
	near(t, "done again", x(), 550, 0)
	if err := h.Do(edit.On("A", edit.MovePart("sink-1", at(1, 0))), 2); err != nil {
		t.Fatal(err)
	}
	near(t, "another drag", x(), 551, 0)
	if !h.Cancel(2) || h.Cancel(2) || h.RedoName() != "" {
		t.Error("a cancelled drag left a trace")
	}
	near(t, "cancelled", x(), 550, 0)
}

func TestHistoryIsBounded(t *testing.T) {
	h := edit.NewHistory(design.Job{})
	for range 2000 {
		if err := h.Do(edit.SetClient("pottery studio"), 0); err != nil {
			t.Fatal(err)
		}
	}
	steps := 0
	for _, ok := h.Undo(); ok; _, ok = h.Undo() {
		steps++
	}
	if steps < 100 || steps > 1000 {
		t.Errorf("%d steps can be undone, want a few hundred", steps)
	}
}
