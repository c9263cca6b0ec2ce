//go:build window

package main_test

import (
	"image"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/material"
	"example.org/castwright/model/report"
	"example.org/castwright/model/store"
	"example.org/castwright/model/units"
)

const mm = units.Millimetre

// The size of the screen, which the window fills. Small, since a full repaint
// without a graphics card is slow; 1280 x 800 is the least that the layout is for.
const screenW, screenH = 1280, 800

// panel is the part of the window right of the board.
func (b board) panel() image.Rectangle {
	return image.Rect(int(b.X+b.W), int(b.Y), screenW, screenH)
}

// writeJob writes a job with two plain tops, A of 1200 x 600 mm, and gives its path.
func writeJob(t testing.TB, dir string) string {
	t.Helper()
	option := func(name string, width, depth units.Length) design.Option {
		d := design.Design{Outline: edit.Rectangle(width, depth), Thickness: 40 * mm,
			Finish: design.Finish{Colour: design.Colour{R: 0xb8, G: 0xb0, B: 0xa4}, Polish: 2}}
		return design.Option{Name: name, Title: "Shelf for the kiln room", Design: d}
	}
	job := design.Job{Client: "Kiln room", Materials: material.Defaults(), Units: units.Metric,
		Options: []design.Option{option("A", 1200*mm, 600*mm), option("B", 900*mm, 450*mm)}}
	path := filepath.Join(dir, "kiln-shelf.json")
	if err := store.Save(path, job); err != nil {
		t.Fatal(err)
	}
	return path
}

// saved gives the numbers of an option in a job's file, by the same reckoning as
// the command line's.
func saved(t testing.TB, path, option string) report.Report {
	t.Helper()
	job, err := store.Load(path)
	if err != nil {
		t.Fatal(err)
	}
	o, ok := job.Option(option)
	if !ok {
		t.Fatalf("%s holds no option %s", path, option)
	}
	return report.Derive(o.Design, job.Materials, job.Site)
}

// near reports whether two numbers are the same but for the rounding of sums.
func near(a, b float64) bool { return math.Abs(a-b) <= 1e-9*(1+math.Abs(b)) }

// TestDrawSaveReopenExport goes the way of a maker through the real window.
func TestDrawSaveReopenExport(t *testing.T) {
	d := startDisplay(t, screenW, screenH)
	h := d.hand(t)
	home := t.TempDir()
	path := writeJob(t, home)

	r := start(t, d, home, path)
	first := r.wait("the job is open", func(s state) bool { return s.Path == path && s.Option == "A" })
	if first.Dirty || first.WidthMM != 1200 || first.DepthMM != 600 {
		t.Errorf("just opened: %+v, want 1200 x 600 mm and nothing to save", first)
	}
	if want := saved(t, path, "A").Takeoff.WeightDry.Value; !near(first.WeightKG, want) {
		t.Errorf("the window says %g kg, the report %g kg", first.WeightKG, want)
	}
	before := d.shootStill(t, "1-opened")

	// Drag the front right corner outward, and look while the hand still holds.
	corner, out := first.Board.place(1200, 0), first.Board.place(1270, -60) // short of where the paper moves
	r.point(h, corner, "Drag moves the corner")
	h.down()
	h.move(at{corner.X + 10, corner.Y + 5})
	h.move(out)
	held := r.wait("the numbers follow the drag", func(s state) bool {
		return s.WidthMM > 1250 && s.DepthMM > 630 && s.WeightKG > first.WeightKG
	})
	after := d.shoot(t, "2-dragging")
	if share := changed(before, after, first.Board.panel()); share < 0.002 {
		t.Errorf("%.2f %% of the panel has changed during the drag", 100*share)
	}
	h.up()
	dropped := r.wait("the drag is an edit", func(s state) bool { return s.Dirty })
	if math.Abs(dropped.WidthMM-held.WidthMM) > 1 {
		t.Errorf("the width is %g mm after the release and was %g mm before it", dropped.WidthMM, held.WidthMM)
	}

	// Undo gives the very same top back.
	h.key("ctrl+z")
	undone := r.wait("undo", func(s state) bool { return s.WidthMM == 1200 })
	if undone.DepthMM != 600 || undone.WeightKG != first.WeightKG {
		t.Errorf("undone: %+v, want what was opened", undone)
	}

	// Pull the right edge and type its size in inches while the hand holds it.
	edge := undone.Board.place(1200, 150) // its middle has the handle that bends it
	r.point(h, edge, "Drag moves the right edge")
	h.down()
	h.move(at{edge.X + 15, edge.Y})
	r.wait("the edge follows", func(s state) bool { return s.WidthMM > 1200 && s.DepthMM == 600 })
	h.write(`50 1/2"`)
	d.shootStill(t, "3-typing")
	h.key("Return")
	typed := r.wait("the typed width", func(s state) bool { return near(s.WidthMM, 50.5*25.4) })
	h.up()
	d.shootStill(t, "4-typed")
	if typed.DepthMM != 600 {
		t.Errorf("the depth is %g mm after the width was typed", typed.DepthMM)
	}

	// Save; what stands in the file is what the window said.
	h.key("ctrl+s")
	kept := r.wait("the job is saved", func(s state) bool { return !s.Dirty })
	if kept.WidthMM != typed.WidthMM {
		t.Errorf("the width is %g mm after the release and was typed as %g mm", kept.WidthMM, typed.WidthMM)
	}
	numbers := saved(t, path, "A")
	if !near(numbers.Measures.Bounds.W(), 50.5*25.4) || !near(kept.WeightKG, numbers.Takeoff.WeightDry.Value) {
		t.Errorf("the file holds %g mm and %g kg, the window %g mm and %g kg", numbers.Measures.Bounds.W(),
			numbers.Takeoff.WeightDry.Value, kept.WidthMM, kept.WeightKG)
	}

	// The picture for the client.
	picture := filepath.Join(home, "shelf.png")
	h.key("ctrl+e")
	r.wait("the dialog asks where to", func(s state) bool { return s.Busy })
	h.key("ctrl+a")
	h.write(picture)
	d.shootStill(t, "5-export")
	h.key("Return")
	r.until("the picture is written", func() bool { _, err := os.Stat(picture); return err == nil })
	checkPicture(t, picture)
	d.shootStill(t, "6-exported")
	r.wait("the dialog says so", func(s state) bool { return s.Busy })
	h.key("Escape")
	r.wait("the dialog is gone", func(s state) bool { return !s.Busy })

	// The other option, then out.
	h.key("ctrl+Next")
	other := r.wait("option B", func(s state) bool { return s.Option == "B" })
	if other.WidthMM != 900 || other.Dirty {
		t.Errorf("option B: %+v, want 900 mm wide and nothing to save", other)
	}
	d.shootStill(t, "7-option-b")
	h.key("ctrl+q")
	r.ended()

	// Opened again, it is as it was saved.
	r = start(t, d, home, path)
	again := r.wait("the job is open again", func(s state) bool { return s.Path == path })
	if again.WidthMM != kept.WidthMM || again.WeightKG != kept.WeightKG || again.Dirty {
		t.Errorf("opened again: %+v, want %+v", again, kept)
	}
	d.shootStill(t, "8-reopened")
}

// checkPicture holds an exported picture to be one, of the width that the
// program offers.
func checkPicture(t testing.TB, path string) {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	img, err := png.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	if img.Bounds().Dx() < 1000 {
		t.Errorf("the picture is %v", img.Bounds())
	}
}

// TestUnsavedChangesAreAskedAbout: a window with changes does not close unasked.
func TestUnsavedChangesAreAskedAbout(t *testing.T) {
	d := startDisplay(t, screenW, screenH)
	h := d.hand(t)
	home := t.TempDir()
	path := writeJob(t, home)
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}

	r := start(t, d, home, path)
	r.wait("the job is open", func(s state) bool { return s.Path == path })
	h.key("ctrl+m") // mirror: an edit that needs no mouse
	r.wait("there are changes", func(s state) bool { return s.Dirty })
	h.key("ctrl+q")
	r.wait("the program asks", func(s state) bool { return s.Busy })
	d.shootStill(t, "9-asked")
	h.key("Escape")
	r.wait("the question is gone", func(s state) bool { return !s.Busy && s.Dirty })
	h.key("ctrl+z")
	r.wait("nothing is left to save", func(s state) bool { return !s.Dirty })
	h.key("ctrl+q")
	r.ended()
	if now, err := os.ReadFile(path); err != nil || string(now) != string(text) {
		t.Errorf("the file has changed though nothing was saved: %v", err)
	}
}

// TestUnreadableFileIsLeftAlone: a file that is not a job is refused in words,
// stays as it is, and the window works on.
func TestUnreadableFileIsLeftAlone(t *testing.T) {
	d := startDisplay(t, screenW, screenH)
	h := d.hand(t)
	home := t.TempDir()
	path := filepath.Join(home, "newer.json")
	const text = `{"format": "castwright-job", "version": 999}`
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	r := start(t, d, home, path)
	s := r.wait("the file is refused", func(s state) bool { return s.Busy })
	if s.Path != "" || s.WidthMM <= 0 {
		t.Errorf("the window works on %+v, want the demo", s)
	}
	d.shootStill(t, "10-refused")
	h.key("Return")
	r.wait("the dialog is gone", func(s state) bool { return !s.Busy })
	h.key("ctrl+q")
	r.ended()
	if now, err := os.ReadFile(path); err != nil || string(now) != text {
		t.Errorf("the file now holds %q, %v", now, err)
	}
}
