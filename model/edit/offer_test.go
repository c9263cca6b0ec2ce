package edit_test

import (
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/units"
)

// What is offered can be kept, moves the part by what it says, and is not offered
// again. The places are those of plain sums on the drawing of vanity.
func TestOffersCanBeKept(t *testing.T) {
	d := vanity(t)
	for _, id := range edit.Parts(d) {
		offers := edit.Offers(d, id)
		for _, o := range offers {
			before, _ := edit.Centre(d, id)
			next := apply(t, d, o.Edit)
			after, _ := edit.Centre(next, id)
			if got := after.Sub(before); (got.X.Abs()+got.Y.Abs()-o.Moves).Abs() > 1000 && o.Relation.Kind != design.RelationEdge {
				t.Errorf("%s, %s: it moved by %v, told were %v", id, o.Relation.Sentence(nil, nil), got, o.Moves)
			}
			if faults := next.Validate(); len(faults) > len(d.Validate()) {
				t.Errorf("%s, %s: %v", id, o.Relation.Sentence(nil, nil), faults)
			}
			if len(edit.Offers(next, id)) >= len(offers) {
				t.Errorf("%s, %s is offered again", id, o.Relation.Sentence(nil, nil))
			}
		}
	}
	moves := map[string]units.Length{}
	for _, o := range edit.Offers(d, "sink-1") {
		moves[o.Relation.Sentence(nil, nil)] = o.Moves
	}
	for _, want := range []string{"Centred between support-1 and support-2", "Centred on the top, left to right",
		"Centred on the top, front to back", "Keeps 500 mm from the left side", "Keeps 260 mm from the back side"} {
		if _, ok := moves[want]; !ok {
			t.Errorf("%q is not among what is offered: %v", want, moves)
		}
	}
	if n := len(edit.Offers(d, "taps-1")); n != 0 {
		t.Errorf("tap holes that keep to a sink have %d offers", n)
	}
	if n := len(edit.Offers(design.Design{}, "sink-1")); n != 0 {
		t.Errorf("without a top there are %d offers", n)
	}
}

// Tap holes that were freed and tied again stand where they stood, and go with
// their sink again.
func TestTieTaps(t *testing.T) {
	d := apply(t, vanity(t), edit.FreeTaps("taps-1"))
	d = apply(t, d, edit.MovePart("taps-1", at(30, -10)))
	before, _ := edit.Centre(d, "taps-1")
	d = apply(t, d, edit.TieTaps("taps-1", "sink-1"))
	if after, _ := edit.Centre(d, "taps-1"); after != before {
		t.Errorf("tying moved the tap holes from %v to %v", before, after)
	}
	d = apply(t, d, edit.MovePart("sink-1", at(100, -40)))
	// The back edge is straight: the set-back stays, and so does the place across.
	if after, _ := edit.Centre(d, "taps-1"); after != before.Add(at(100, 0)) {
		t.Errorf("with the sink 100 to the right the tap holes are at %v, were at %v", after, before)
	}
	if _, err := edit.TieTaps("taps-1", "sink-9").Apply(d); err == nil {
		t.Error("tap holes keep to a sink that is not there")
	}
}

// What is cut stays where it is and no longer follows.
func TestCutRelations(t *testing.T) {
	d := apply(t, vanity(t), edit.AddRelation(onTop("sink-1", design.AxisX)))
	sink, _ := edit.Centre(d, "sink-1")
	taps, _ := edit.Centre(d, "taps-1")
	cut := apply(t, d, edit.CutRelations([]design.ID{"sink-1", "taps-1", "hole-1"}))
	for _, id := range []design.ID{"sink-1", "taps-1", "hole-1"} {
		if edit.Held(cut, id) {
			t.Errorf("%s is still held", id)
		}
	}
	if s, _ := edit.Centre(cut, "sink-1"); s != sink {
		t.Errorf("cutting moved the sink to %v", s)
	}
	if k, _ := edit.Centre(cut, "taps-1"); k != taps {
		t.Errorf("cutting moved the tap holes to %v", k)
	}
	moved := apply(t, cut, edit.MovePart("sink-1", at(50, 0)))
	if k, _ := edit.Centre(moved, "taps-1"); k != taps {
		t.Errorf("cut tap holes went with the sink to %v", k)
	}
	if _, err := edit.CutRelations([]design.ID{"hole-1"}).Apply(d); err == nil {
		t.Error("what is held by nothing was cut")
	}
}
