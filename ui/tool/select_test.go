package tool_test

import (
	"strings"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/session"
	"example.org/castwright/ui/tool"
)

func pick(ids ...design.ID) []session.Pick {
	var out []session.Pick
	for _, id := range ids {
		out = append(out, session.Pick{Part: id, Node: -1})
	}
	return out
}

// bench is a top of 1200 by 500 mm: a sink of 300 mm at (400, 250) with tap holes
// behind it, two holes at the right, and a river that runs below the sink's rim.
func bench() design.Design {
	d := plain()
	d.Taps = []design.TapSet{{ID: "taps-1", Sink: "sink-1", SetBack: 50 * mm, Diameter: 35 * mm}}
	d.Holes = []design.Hole{{ID: "hole-1", At: at(900, 150), Diameter: 50 * mm}, {ID: "hole-2", At: at(1000, 350), Diameter: 50 * mm}}
	d.Channels = []design.Channel{{ID: "channel-1", Depth: 10 * mm, Rivers: []design.River{{Nodes: []design.RiverNode{
		{At: at(100, 130), Width: 80 * mm}, {At: at(700, 130), Width: 80 * mm},
	}}}}}
	return d
}

func TestFrameTakesWhatLiesWhollyInside(t *testing.T) {
	for _, c := range []struct {
		name           string
		x0, y0, x1, y1 float64
		want           []session.Pick
	}{
		{"left to right", 840, 60, 1080, 420, pick("hole-1", "hole-2")},
		{"right to left, bottom up", 1080, 420, 840, 60, pick("hole-1", "hole-2")},
		{"one of them half", 840, 60, 1000, 420, pick("hole-1")},
		{"none, and no corner", 760, 60, 840, 420, nil},
		{"the whole top from the ground", -60, -60, 1260, 560, pick("sink-1", "taps-1", "hole-1", "hole-2", "channel-1")},
		{"two corners", 1120, -40, 1240, 540, []session.Pick{{Node: 1}, {Node: 2}}},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := newRig(t, units.Metric, bench())
			r.drag(c.x0, c.y0, c.x1, c.y1)
			r.wantSelected(c.want...)
			r.wantNoTrace()
		})
	}
}

func TestFrameAddsAndBacksOut(t *testing.T) {
	r := newRig(t, units.Metric, bench())
	r.click(400, 300)
	r.wantSelected(pick("sink-1")...)
	r.mod = tool.Shift
	r.drag(840, 60, 960, 220)
	r.wantSelected(pick("sink-1", "hole-1")...)
	r.mod = 0

	// Esc gives back what was selected before the press, and the release after it
	// selects nothing.
	r.down(840, 60)
	r.move(900, 200)
	r.move(1080, 420)
	if o := r.h.Overlay(); o.Frame == nil || o.Frame.Min != vec(840, 60) || o.Frame.Max != vec(1080, 420) {
		t.Errorf("the frame is shown as %v", o.Frame)
	}
	if hint := r.h.Hint(); !strings.Contains(hint, "2 parts inside") || !strings.Contains(hint, "wholly inside") {
		t.Errorf("hint %q", hint)
	}
	if !r.h.Busy() {
		t.Error("a frame under way is no open gesture")
	}
	r.keys(tool.KeyEscape)
	r.up(1080, 420)
	r.wantSelected(pick("sink-1", "hole-1")...)
	if o := r.h.Overlay(); o.Frame != nil {
		t.Error("a frame that was taken back is shown")
	}
	// A click on the ground lets go; a shaky one is no frame.
	r.down(-50, -50)
	r.move(-48, -49)
	r.up(-48, -49)
	r.wantSelected()
}

// What lies under is reached by a click again, by Alt and a click, and by a key.
func TestReachWhatIsUnder(t *testing.T) {
	const x, y = 400, 160 // the sink's front, over the river
	r := newRig(t, units.Metric, bench())
	r.move(x, y)
	if hint := r.h.Hint(); !strings.Contains(hint, "Alt+click or Page down: the sink under it") &&
		!strings.Contains(hint, "Alt+click or Page down: the channel under it") {
		t.Errorf("over a pile the hint is %q", hint)
	}
	r.click(x, y)
	r.wantSelected(pick("sink-1")...)
	if hint := r.h.Hint(); !strings.Contains(hint, "the channel under it") {
		t.Errorf("hint %q", hint)
	}
	r.click(x, y)
	r.wantSelected(pick("channel-1")...)
	r.click(x, y)
	r.wantSelected(session.Pick{Node: -1})
	r.click(x, y)
	r.wantSelected(pick("sink-1")...)

	r = newRig(t, units.Metric, bench())
	r.mod = tool.Alt
	r.click(x, y)
	r.wantSelected(pick("channel-1")...)
	r.wantNoTrace()
	r.mod = 0

	r = newRig(t, units.Metric, bench())
	r.move(x, y)
	for _, want := range [][]session.Pick{pick("channel-1"), {{Node: -1}}, pick("sink-1"), pick("channel-1")} {
		if !r.h.Beneath() {
			t.Error("the key reaches nothing")
		}
		r.wantSelected(want...)
	}
	// With the mouse elsewhere the selected thing's own place counts.
	r.s.Select(pick("hole-1")...)
	r.move(-100, -100)
	if !r.h.Beneath() {
		t.Error("with the mouse away the key reaches nothing")
	}
	r.wantSelected(session.Pick{Node: -1})
}

func TestLockedPartsStayOutOfTheHand(t *testing.T) {
	locked := func(t *testing.T) *rig {
		r := newRig(t, units.Metric, bench())
		if err := r.s.DoJob(edit.LockParts("A", []design.ID{"sink-1", "channel-1"}, true)); err != nil {
			t.Fatal(err)
		}
		return r
	}
	for _, c := range []struct {
		name string
		do   func(*rig)
	}{
		{"dragged", func(r *rig) { r.drag(400, 300, 500, 300) }},
		{"nudged", func(r *rig) { r.click(400, 300); r.keys(tool.KeyLeft) }},
		{"typed", func(r *rig) { r.click(400, 300); r.type_("500"); r.keys(tool.KeyEnter) }},
		{"deleted", func(r *rig) { r.click(400, 300); r.keys(tool.KeyDelete) }},
		{"dragged with another", func(r *rig) {
			r.click(900, 150)
			r.mod = tool.Shift
			r.click(400, 300)
			r.mod = 0
			r.drag(900, 150, 950, 150)
		}},
		{"given a node", func(r *rig) { r.double(600, 130) }},
		{"by its node", func(r *rig) { r.click(600, 130); r.drag(700, 130, 700, 60) }},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := locked(t)
			c.do(r)
			r.want()
			if hint := r.h.Hint(); !strings.Contains(hint, "locked") {
				t.Errorf("the hint does not say why: %q", hint)
			}
			if got := r.s.UndoName(); got != "Lock 2 parts" {
				t.Errorf("undo would take back %q", got)
			}
		})
	}
	r := locked(t)
	r.click(400, 300)
	r.wantSelected(pick("sink-1")...) // it can be selected
	if o := r.h.Overlay(); len(o.Handles) > 0 {
		t.Errorf("a locked part offers %d handles", len(o.Handles))
	}
	r.drag(-60, -60, 1260, 560)
	r.wantSelected(pick("taps-1", "hole-1", "hole-2")...)
}

func TestHiddenPartsAreNotTaken(t *testing.T) {
	r := newRig(t, units.Metric, bench())
	if err := r.s.DoJob(edit.HideParts("A", []design.ID{"sink-1"}, true)); err != nil {
		t.Fatal(err)
	}
	r.click(400, 160)
	r.wantSelected(pick("channel-1")...)
	r.click(400, 300)
	r.wantSelected(session.Pick{Node: -1}) // the bare face
	r.drag(-60, -60, 1260, 560)
	r.wantSelected(pick("taps-1", "hole-1", "hole-2", "channel-1")...)
	// Nothing snaps to what is not seen: 400 is the hidden sink's middle.
	r.drag(900, 150, 403, 402)
	if got := r.s.Design().Holes[0].At; got != at(405, 400) {
		t.Errorf("the hole went to %v, want the grid's (405, 400)", got)
	}
	if len(r.s.Design().Sinks) != 1 {
		t.Error("the hidden sink has left the design")
	}
}

// The overlay shows what a part is held to; moved off it, the hint says what ends.
func TestRelationsAreShownAndTold(t *testing.T) {
	d := bench()
	d.Relations = []design.Relation{{Kind: design.RelationTop, Part: "hole-1"}, {Kind: design.RelationPart, Part: "hole-2", Other: "sink-1", Axis: design.AxisY}}
	d.Holes[0].At, d.Holes[1].At = at(600, 100), at(1000, 250)
	r := newRig(t, units.Metric, d)
	r.s.Select(pick("hole-1")...)
	want := []tool.Link{{From: vec(600, 100), To: vec(0, 100)}, {From: vec(600, 100), To: vec(1200, 100)}}
	if got := r.h.Overlay().Links; len(got) != 2 || got[0].To != want[0].To || got[1].To != want[1].To || got[0].From != want[0].From {
		t.Errorf("links %v, want %v", got, want)
	}
	r.s.Select(pick("sink-1")...)
	if got := r.h.Overlay().Links; len(got) != 2 { // its tap holes, and hole 2
		t.Errorf("the sink shows %d links, want 2", len(got))
	}
	r.down(600, 100)
	r.move(620, 100)
	r.move(650, 100)
	if hint := r.h.Hint(); !strings.Contains(hint, "This ends that drain hole 1 stays centred on the top") {
		t.Errorf("hint %q", hint)
	}
	if got := r.h.Overlay().Links; len(got) != 0 {
		t.Errorf("an ended relation shows %d links", len(got))
	}
	r.move(600, 100)
	if hint := r.h.Hint(); strings.Contains(hint, "This ends") {
		t.Errorf("back in its place, the hint is %q", hint)
	}
	r.up(600, 100)
	r.wantNoTrace()
}

// Parts that are moved together keep their relations to each other.
func TestTogetherKeepsRelations(t *testing.T) {
	d := bench()
	d.Holes[1].At = at(900, 350)
	d.Relations = []design.Relation{{Kind: design.RelationPart, Part: "hole-2", Other: "hole-1"}}
	r := newRig(t, units.Metric, d)
	r.s.Select(pick("hole-1", "hole-2")...)
	r.drag(900, 150, 955, 170)
	if got := r.s.Design(); len(got.Relations) != 1 || got.Holes[0].At.X != got.Holes[1].At.X || got.Holes[0].At == d.Holes[0].At {
		t.Errorf("holes at %v and %v with %d relations", got.Holes[0].At, got.Holes[1].At, len(got.Relations))
	}
	r.wantOneStep("Move 2 parts")
}
