package tool_test

import (
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/session"
	"example.org/castwright/ui/tool"
)

// A sink from the book brings its tap holes along, in one step of undo.
func TestSinkWithTaps(t *testing.T) {
	r := newRig(t, units.Metric, empty())
	sink := design.Sink{ID: "sink-9", Shape: design.Shape{Kind: design.ShapeEllipse, Width: 430 * mm, Depth: 350 * mm}}
	taps := design.TapSet{ID: "taps-9", Sink: "sink-9", Pattern: design.TapThree8, Diameter: 35 * mm, SetBack: 60 * mm}
	r.h.Put(tool.Put{Sink: &sink, With: []design.TapSet{taps}})
	r.move(402, 203)
	r.click(402, 203)
	sink.ID, sink.At = "", at(400, 205)
	taps.ID, taps.Sink = "", "sink-1"
	r.want(edit.AddSink(sink), edit.AddTaps(taps))
	r.wantOneStep("Add sink")
	r.wantSelected(session.Pick{Part: "sink-1", Node: -1})
}
