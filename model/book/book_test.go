package book_test

import (
	"testing"

	"example.org/castwright/model/book"
	"example.org/castwright/model/design"
	"example.org/castwright/model/store"
	"example.org/castwright/model/units"
	"github.com/google/go-cmp/cmp"
)

// What is kept comes back equal, also through the file.
func TestKeepAndUse(t *testing.T) {
	mm := units.Millimetre
	entries := []book.Entry{
		{Title: "Oval bowl", Kind: book.KindSink,
			Sink: design.Sink{ID: "sink-1", Shape: design.Shape{Kind: design.ShapeEllipse, Width: 430 * mm, Depth: 350 * mm}},
			Taps: []design.TapSet{{ID: "taps-1", Sink: "sink-1", Pattern: design.TapThree8, Diameter: 35 * mm, SetBack: 60 * mm}}},
		{Title: "Wall spout", Kind: book.KindTaps,
			Taps: []design.TapSet{{ID: "taps-1", Pattern: design.TapOwn, Holes: []design.Point{{X: -50 * mm}, {X: 50 * mm}}, Diameter: 28 * mm}}},
		{Title: "Soft edge", Kind: book.KindProfile, Profile: design.Profile{Kind: design.ProfileRounded, Size: 8 * mm}},
		{Title: "Bone cream", Kind: book.KindFinish,
			Finish: design.Finish{Colour: design.Colour{R: 216, G: 207, B: 189}, Polish: 2, Grind: 400 * units.Micrometre}},
	}
	b := book.New(units.Metric)
	for _, e := range entries {
		var err error
		if b, err = book.Keep(b, e); err != nil {
			t.Fatal(err)
		}
	}
	again, err := store.Decode(store.Encode(b))
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(entries, book.Entries(again)); diff != "" {
		t.Errorf("entries after a round trip (-want +got):\n%s", diff)
	}
	replaced := entries[2]
	replaced.Profile.Size = 10 * mm
	b2, err := book.Keep(b, replaced)
	if err != nil {
		t.Fatal(err)
	}
	if got := book.Entries(b2); len(got) != 4 || got[2].Profile.Size != 10*mm {
		t.Error("an entry of the same name was not replaced")
	}
	if book.Entries(b)[2].Profile.Size != 8*mm {
		t.Error("the book that was given has changed")
	}
	b3, err := book.Forget(b2, "Wall spout")
	if err != nil || len(book.Entries(b3)) != 3 {
		t.Errorf("forgetting left %d entries, error %v", len(book.Entries(b3)), err)
	}
}

func TestRename(t *testing.T) {
	b := book.New(units.Metric)
	for _, title := range []string{"Soft edge", "Sharp edge"} {
		var err error
		if b, err = book.Keep(b, book.Entry{Title: title, Kind: book.KindProfile}); err != nil {
			t.Fatal(err)
		}
	}
	renamed, err := book.Rename(b, "Soft edge", " Gentle edge ")
	if err != nil || book.Entries(renamed)[0].Title != "Gentle edge" || book.Entries(b)[0].Title != "Soft edge" {
		t.Errorf("renamed %v, was %v, error %v", book.Entries(renamed), book.Entries(b), err)
	}
	for _, c := range [][2]string{{"Soft edge", "Sharp edge"}, {"Soft edge", " "}, {"No edge", "Edge"}} {
		if _, err := book.Rename(b, c[0], c[1]); err == nil {
			t.Errorf("%q became %q", c[0], c[1])
		}
	}
	if _, err := book.Rename(b, "Soft edge", "Soft edge"); err != nil {
		t.Errorf("its own name is refused: %v", err)
	}
}

func TestRefusals(t *testing.T) {
	b := book.New(units.Imperial)
	for _, e := range []book.Entry{{Title: "  "}, {Title: "two", Kind: book.KindTaps}, {Title: "odd", Kind: 99}} {
		if _, err := book.Keep(b, e); err == nil {
			t.Errorf("%q was kept", e.Title)
		}
	}
	if _, err := book.Forget(b, "nothing"); err == nil {
		t.Error("something that is not there was forgotten")
	}
}
