package draw_test

import (
	"strings"
	"testing"

	"example.org/castwright/model/change"
	"example.org/castwright/model/design"
	"example.org/castwright/model/draw"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/scene"
	"example.org/castwright/model/units"
)

// Changes bear the numbers of their list where they lie: what was there on the first
// side, what is there on the second; what is of the top itself when it is picked.
func TestMarks(t *testing.T) {
	a := counter()
	sink := a.Sinks[0].ID
	b, err := edit.MovePart(sink, design.Point{X: -100 * units.Millimetre}).Apply(a)
	if err != nil {
		t.Fatal(err)
	}
	if b, err = edit.SetThickness(70 * units.Millimetre).Apply(b); err != nil {
		t.Fatal(err)
	}
	list := change.Between(a, b, units.Metric)
	sides := [2]draw.Side{{Option: design.Option{Name: "A", Design: a}, Report: derive(a)}, {Option: design.Option{Name: "B", Design: b}, Report: derive(b)}}
	number := func(m draw.Marks, i int) map[string]geom.Vec {
		out := map[string]geom.Vec{}
		for _, it := range m.Items(sides[i], list, i == 1) {
			if x, ok := it.(scene.Text); ok {
				out[x.Text] = x.At
			}
		}
		return out
	}
	at := -1
	for i, c := range list {
		if c.Part == sink {
			at = i
		}
	}
	if at < 1 || list[0].Part != "" {
		t.Fatalf("%+v", list)
	}
	m := draw.Marks{Place: func(p geom.Vec) geom.Vec { return p }, Unit: 1, Theme: draw.Paper(), Picked: -1}
	was, is := number(m, 0), number(m, 1)
	if _, marked := was["1"]; len(was) == 0 || marked {
		t.Errorf("marked are %v", was)
	}
	n := string(rune('1' + at))
	if got := is[n].Sub(was[n]); got.Dist(geom.Vec{X: -100}) > 1e-6 {
		t.Errorf("the sink's number lies %v from where it was, want 100 mm to the left", got)
	}
	m.Picked = 0
	if got := number(m, 0); len(got) != len(was)+1 {
		t.Errorf("picked, what is of the top itself is not marked: %v", got)
	}
	m.Marked = func(i int) bool { return i == 0 }
	if got := number(m, 1); len(got) != 1 {
		t.Errorf("only the first is to be marked: %v", got)
	}
}

// What is compared is the same whichever side is first, and the same in the units of
// the job means that it reads the same.
func TestContrasts(t *testing.T) {
	a := counter()
	b, err := edit.SetThickness(50 * units.Millimetre).Apply(a)
	if err != nil {
		t.Fatal(err)
	}
	for _, sys := range []units.System{units.Metric, units.Imperial} {
		job := design.Job{Units: sys}
		x := draw.Side{Option: design.Option{Name: "A", Design: a}, Report: derive(a)}
		y := draw.Side{Option: design.Option{Name: "B", Design: b}, Report: derive(b)}
		there, back, still := draw.Contrasts(job, x, y, true), draw.Contrasts(job, y, x, true), draw.Contrasts(job, x, x, true)
		if len(there) != len(back) || len(there) < 20 {
			t.Fatalf("%d there, %d back", len(there), len(back))
		}
		for i, c := range there {
			d := back[i]
			if c.Key != d.Key || c.A != d.B || c.B != d.A || c.Same != (c.A == c.B) || c.Same && c.Change != "" {
				t.Errorf("there %+v, back %+v", c, d)
			}
			if !still[i].Same {
				t.Errorf("a design differs from itself: %+v", still[i])
			}
			if c.Key == "thickness_mm" && (!strings.HasPrefix(c.Change, "+") || c.Was.Empty()) {
				t.Errorf("%+v", c)
			}
		}
	}
}

// A change of an edge is marked on that edge, and the page bears the edge's number as the
// words name it.
func TestMarksEdges(t *testing.T) {
	a := counter()
	b, err := edit.SetProfile(3, design.Profile{Kind: design.ProfileBevelled, Size: 6 * units.Millimetre}).Apply(a)
	if err != nil {
		t.Fatal(err)
	}
	list := change.Between(a, b, units.Metric)
	if len(list) != 1 || list[0].Words != "Edge 4 (right): bevelled 6 mm, was broken stone" {
		t.Fatalf("%+v", list)
	}
	sides := [2]draw.Side{{Option: design.Option{Name: "A", Design: a}, Report: derive(a)}, {Option: design.Option{Name: "B", Design: b}, Report: derive(b)}}
	m := draw.Marks{Place: func(p geom.Vec) geom.Vec { return p }, Unit: 1, Theme: draw.Paper(), Picked: -1}
	met := false
	for _, it := range m.Items(sides[1], list, true) {
		if x, ok := it.(scene.Text); ok {
			met = true
			if x.At.X != 1600 || x.Text != "1" {
				t.Errorf("the change is marked %q at %v", x.Text, x.At)
			}
		}
	}
	if !met {
		t.Error("the edge is not marked")
	}
	numbers := map[string]int{}
	for _, it := range draw.Compare(design.Job{}, sides[0], sides[1], draw.CompareOptions{}).Items {
		if x, ok := it.(scene.Text); ok && len(x.Text) == 1 && x.Text >= "1" && x.Text <= "9" {
			numbers[x.Text]++
		}
	}
	// The change's own number on both drawings and in the list, the edge's on both.
	if numbers["1"] != 3 || numbers["4"] != 2 || len(numbers) != 2 {
		t.Errorf("the page bears the numbers %v", numbers)
	}
}
