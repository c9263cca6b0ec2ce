package panel

import (
	"testing"

	"example.org/castwright/assets"
	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/store"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/session"
)

// BenchmarkDragWithList is what the panel takes of a step of dragging a sink of the
// demo, with the list of parts open.
func BenchmarkDragWithList(b *testing.B) {
	j, err := store.Decode(assets.Demos()[0].Data)
	if err != nil {
		b.Fatal(err)
	}
	r := newRig(b, session.New(j, ""))
	r.p.ShowList(true)
	id := r.s.Design().Sinks[0].ID
	r.s.SelectParts([]design.ID{id})
	r.s.BeginGesture()
	i := units.Length(0)
	for b.Loop() {
		i = (i + 1) % 40
		b.StopTimer()
		if err := r.s.DoGesture(edit.MovePart(id, design.Point{X: i * units.Millimetre})); err != nil {
			b.Fatal(err)
		}
		b.StartTimer()
		r.p.changed(session.Change{Design: true})
	}
}
