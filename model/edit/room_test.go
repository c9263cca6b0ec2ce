package edit_test

import (
	"strings"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/units"
)

func kitchen() design.Room {
	return design.Room{Photo: "counter.room.jpg", SHA256: strings.Repeat("0a", 32),
		Corners: [4]design.Spot{{X: 200_000, Y: 300_000}, {X: 800_000, Y: 310_000}, {X: 900_000, Y: 700_000}, {X: 100_000, Y: 690_000}},
		Width:   60 * units.Inch, Depth: 22 * units.Inch}
}

func TestSetRoom(t *testing.T) {
	was := design.Job{Extra: design.Extra{"/room/lens": `"wide"`, "/shelf": "1"}}
	j, err := edit.SetRoom(kitchen()).Apply(was)
	if err != nil || j.Room != kitchen() {
		t.Fatal(err)
	}
	if _, old := j.Extra["/room/lens"]; old || j.Extra["/shelf"] != "1" || len(was.Extra) != 2 {
		t.Errorf("what was said of another photograph: %v, and before: %v", j.Extra, was.Extra)
	}
	j.Extra = design.Extra{"/room/lens": `"wide"`}
	moved, err := edit.PlaceRoomCorner(2, design.Spot{X: 1, Y: 1_000_000}).Apply(j)
	if err != nil || moved.Room.Corners[2] != (design.Spot{X: 1, Y: 1_000_000}) || j.Room != kitchen() || moved.Extra["/room/lens"] == "" {
		t.Error(moved, err)
	}
	gone, err := edit.TakeRoom().Apply(j)
	if err != nil || !gone.Room.None() || len(gone.Extra) != 0 {
		t.Error(gone, err)
	}
}

// Every number is checked, at each of its bounds.
func TestSetRoomRefuses(t *testing.T) {
	for _, c := range []struct {
		what   string
		change func(*design.Room)
		ok     bool
	}{
		{"as it is", func(*design.Room) {}, true},
		{"a folder's name", func(r *design.Room) { r.Photo = "../a.jpg" }, false},
		{"no name", func(r *design.Room) { r.Photo = "" }, false},
		{"a device of a system", func(r *design.Room) { r.Photo = "C:a.jpg" }, false},
		{"broken text", func(r *design.Room) { r.Photo = "a\xff.jpg" }, false},
		{"a sum of capitals", func(r *design.Room) { r.SHA256 = strings.Repeat("0A", 32) }, false},
		{"a short sum", func(r *design.Room) { r.SHA256 = "0a" }, false},
		{"the edge", func(r *design.Room) { r.Corners[0] = design.Spot{} }, true},
		{"left of the picture", func(r *design.Room) { r.Corners[0].X = -1 }, false},
		{"below the picture", func(r *design.Room) { r.Corners[3].Y = units.Whole + 1 }, false},
		{"another mark", func(r *design.Room) { r.Marks = 2 }, false},
		{"the least width", func(r *design.Room) { r.Width = 50 * units.Millimetre }, true},
		{"less", func(r *design.Room) { r.Width = 50*units.Millimetre - 1 }, false},
		{"the most depth", func(r *design.Room) { r.Depth = 20 * units.Metre }, true},
		{"more", func(r *design.Room) { r.Depth = 20*units.Metre + 1 }, false},
		{"a thin old top", func(r *design.Room) { r.Old = 4 * units.Millimetre }, false},
		{"a laminate", func(r *design.Room) { r.Old = 28 * units.Millimetre }, true},
		{"far away", func(r *design.Room) { r.At.X = 21 * units.Metre }, false},
		{"a turn", func(r *design.Room) { r.Turn = -360 * units.Degree }, true},
		{"a spin", func(r *design.Room) { r.Turn = 361 * units.Degree }, false},
		{"three stops", func(r *design.Room) { r.Lit.Brighter = -3 * units.Whole }, true},
		{"four stops", func(r *design.Room) { r.Lit.Brighter = 4 * units.Whole }, false},
		{"as warm as it gets", func(r *design.Room) { r.Lit.Warmer = units.Whole }, true},
		{"warmer", func(r *design.Room) { r.Lit.Warmer = units.Whole + 1 }, false},
		{"light from below", func(r *design.Room) { r.Lit.From = 5 }, false},
	} {
		r := kitchen()
		c.change(&r)
		if _, err := edit.SetRoom(r).Apply(design.Job{}); (err == nil) != c.ok {
			t.Errorf("%s: %v", c.what, err)
		}
	}
}

// Corners that are dragged undo as one step to where they were, exactly.
func TestRoomUndo(t *testing.T) {
	h := edit.NewHistory(design.Job{Room: kitchen()})
	for i := range 5 {
		if err := h.Do(edit.PlaceRoomCorner(1, design.Spot{X: units.Share(700_000 + i), Y: 5}), 1); err != nil {
			t.Fatal(err)
		}
	}
	h.Undo()
	if h.Job().Room != kitchen() {
		t.Error("undo leads elsewhere")
	}
	h.Redo()
	if h.Job().Room.Corners[1] != (design.Spot{X: 700_004, Y: 5}) {
		t.Error("redo leads elsewhere")
	}
}
