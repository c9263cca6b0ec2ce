//go:build window

package main_test

import (
	"math"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/store"
	"example.org/castwright/model/units"
)

// mostGestures is the bound that the session keeps below.
const mostGestures = 60

// TestBowedCounter is a session beside a client, by mouse and keyboard alone: from
// the empty rectangle of a new job to a bowed top of 61 1/2 by 22 1/4 in with a
// centred under-mounted oval, three tap holes at 8 in, a river off the left edge
// and a bank of glass. The file that the window saves is the design that package
// edit's TestSession makes in code, which lies in testdata: equal to 0.01 mm in
// every coordinate and size, and in every other value.
func TestBowedCounter(t *testing.T) {
	d := startDisplay(t, screenW, screenH)
	home := t.TempDir()
	inInches(t, home)
	m := newMaker(t, start(t, d, home), d.hand(t))
	in := func(x float64) float64 { return x * 25.4 }
	near := func(a, b float64) bool { return math.Abs(a-b) < 0.01 }

	m.press("ctrl+n", "the empty rectangle", func(s state) bool {
		return s.Path == "" && near(s.WidthMM, in(61)) && near(s.DepthMM, in(22)) && s.Undo == ""
	})
	// The bow, by its handle and a number while the hand holds it.
	m.clickAt(15, 0, "Drag moves the front edge", "the front edge is selected", func(s state) bool {
		return len(s.Selection) == 1 && s.Selection[0] == "edge 0"
	})
	m.pull("bend", 0, 40, "the edge bends", func(s state) bool { return s.DepthMM > in(22.5) })
	m.value("Rise", "1 1/4", "Return", "the bow", func(s state) bool { return near(s.DepthMM, in(23.25)) })
	m.up()
	// Its size over all.
	m.clickAt(50, 15, "Click selects the top", "the top is selected", func(s state) bool {
		return len(s.Selection) == 1 && s.Selection[0] == "top"
	})
	m.value("Width", "61 1/2", "Tab", "the width, and the depth is up", func(s state) bool {
		return near(s.WidthMM, in(61.5)) && typingFor("Depth")(s)
	})
	m.value("Depth", "22 1/4", "Return", "the depth", func(s state) bool { return near(s.DepthMM, in(22.25)) && s.Typing == nil })

	m.press("F10", "the supports are offered", func(s state) bool { return s.Busy })
	m.pick("Two gables and two rails", "the cabinet stands", undoes("Add cabinet"))

	m.press("F4", "the sinks are offered", func(s state) bool { return s.Busy })
	m.pick("Under-mount, oval", "the sink is in hand", func(s state) bool { return !s.Busy })
	m.over(30.8, 12, "On the centreline of the cabinet")
	m.value("Rail behind", "4 1/2", "Return", "the rail holds", func(s state) bool { return s.Typing == nil })
	m.clickAt(30.8, 12, "Rail behind 4 1/2", "the sink is set down", undoes("Add sink"))

	m.press("F5", "the taps are offered", func(s state) bool { return s.Busy })
	m.pick("Three holes, the outer two 8 in apart", "the taps are in hand", func(s state) bool { return !s.Busy })
	m.over(30.8, 20, "On the centreline of the sink")
	m.value("Set-back", "2 1/4", "Return", "the set-back holds", func(s state) bool { return s.Typing == nil })
	m.clickAt(30.8, 20, "Set-back 2 1/4", "the holes are set down", undoes("Add tap holes"))

	// The river, point by point from the left and the front, with its widths.
	m.press("ctrl+F7", "the river is drawn", func(s state) bool { return s.Tool == "river" })
	for _, p := range [][3]string{{"0", "6 1/4", "2 1/2"}, {"6", "8 3/4", "2"}, {"11", "7 1/4", "1 1/2"}, {"16", "10 1/4", "1 1/4"}} {
		m.value("From the left", p[0], "Tab", "its place from the left", typingFor("From the front"))
		m.value("From the front", p[1], "Tab", "its place from the front", typingFor("Width"))
		m.value("Width", p[2], "Return", "the point is set", func(s state) bool { return s.Typing == nil })
	}
	m.press("Return", "the river runs", undoes("Add channel"))
	d.shootStill(t, "session-1-river")

	// Glass along its left bank, and what it is of.
	m.press("ctrl+shift+F8", "glass is laid along a bank", func(s state) bool { return s.Tool == "bank" })
	m.over(6, 9.7, "A click lays glass along this bank")
	m.value("Width", "1 1/4", "Tab", "the strip's width, and its distance is up", typingFor("Away from the bank"))
	m.value("Away from the bank", "1/8", "Return", "its distance", func(s state) bool { return s.Typing == nil })
	m.clickAt(6, 9.7, "A click lays glass along this bank", "the glass is laid", undoes("Line bank with glass"))
	m.press("Return", "the hand is free", func(s state) bool { return s.Tool == "select" && len(s.Selection) == 1 })
	m.fill("Size of the pieces", "1/4", `1/4"`)
	m.fill("Share of the bed", "60", "60 %")
	m.fill("Depth of the layer", "1/4", `1/4"`)
	d.shootStill(t, "session-2-glass")

	path := filepath.Join(home, "bowed-counter.json")
	m.press("ctrl+s", "the window asks where to", func(s state) bool { return s.Busy })
	m.count("value %s Return", path)
	m.key("ctrl+a")
	m.write(path)
	m.key("Return")
	m.wait("the job is saved", func(s state) bool { return s.Path == path && !s.Dirty && !s.Busy })
	d.shootStill(t, "session-3-saved")

	for _, line := range m.log {
		t.Log(line)
	}
	if m.gestures >= mostGestures {
		t.Errorf("%d gestures, want fewer than %d", m.gestures, mostGestures)
	}
	want, err := store.Load("../../testdata/jobs/bowed-counter.json")
	if err != nil {
		t.Fatal(err)
	}
	got, err := store.Load(path)
	if err != nil {
		t.Fatal(err)
	}
	if diff := sameJob(want, got); diff != "" {
		t.Errorf("the saved job differs from the one made in code (-code +window):\n%s", diff)
	}
}

// TestSameJob holds the comparison to what it claims: 0.01 mm and names pass, more
// and other things do not.
func TestSameJob(t *testing.T) {
	read := func() design.Job {
		j, err := store.Load("../../testdata/jobs/bowed-counter.json")
		if err != nil {
			t.Fatal(err)
		}
		return j
	}
	for _, tt := range []struct {
		name   string
		change func(*design.Design)
		same   bool
	}{
		{"nothing", func(*design.Design) {}, true},
		{"a hundredth of a millimetre", func(d *design.Design) { d.Sinks[0].At.X += 10 * units.Micrometre }, true},
		{"a hair more", func(d *design.Design) { d.Sinks[0].At.X += 10*units.Micrometre + 1 }, false},
		{"another name", func(d *design.Design) {
			d.Sinks[0].ID, d.Taps[0].Sink, d.Relations[0].Part, d.Relations[1].Part = "bowl", "bowl", "bowl", "bowl"
		}, true},
		{"taps of no sink", func(d *design.Design) { d.Taps[0].Sink = "" }, false},
		{"another order", func(d *design.Design) { slices.Reverse(d.Supports); slices.Reverse(d.Relations) }, true},
		{"a relation less", func(d *design.Design) { d.Relations = d.Relations[1:] }, false},
		{"another glass", func(d *design.Design) { d.Glass[0].Coverage++ }, false},
		{"one corner of the glass", func(d *design.Design) { d.Glass[0].Region.Outer[40].At.Y += 11 * units.Micrometre }, false},
	} {
		j := read()
		tt.change(&j.Options[0].Design)
		if diff := sameJob(read(), j); (diff == "") != tt.same {
			t.Errorf("%s: same is %v\n%s", tt.name, diff == "", diff)
		}
	}
}

// inInches lets a home's maker work in inches.
func inInches(t testing.TB, home string) {
	t.Helper()
	dir := filepath.Join(home, ".config", "castwright")
	if err := os.MkdirAll(dir, 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(dir, "settings.json"), []byte(`{"imperial": true}`), 0o644); err != nil {
		t.Fatal(err)
	}
}
