package partsrow

import (
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/board"
	"example.org/castwright/ui/session"
)

func kits() map[string]kit {
	out := map[string]kit{}
	for _, sys := range []units.System{units.Metric, units.Imperial} {
		d := session.Plain(sys)
		out[sys.String()] = kit{sys, d, edit.Bounds(d.Outline)}
		out[sys.String()+", nothing drawn"] = kit{sys: sys,
			d: design.Design{Thickness: d.Thickness,
				Finish: d.Finish}, box: edit.Bounds(design.Outline{})}
	}
	return out
}

// TestEveryStarterCanBeUsed sets each part down in the middle of a plain top, and
// applies each edit.
func TestEveryStarterCanBeUsed(t *testing.T) {
	for name, k := range kits() {
		w, d := k.size(1500, 61), k.size(550, 22)
		lists := map[string][]starter{
			"shapes": k.shapes(w,
				d), "profiles": k.profiles(-1), "sinks": k.sinks(), "taps": k.taps(), "holes": k.holes(),
			"channels": k.channels(), "glass": k.glass(), "supports": k.supports(),
		}
		for list, starters := range lists {
			if len(starters) < 3 {
				t.Errorf("%s: only %d %s", name, len(starters), list)
			}
			for _, s := range starters {
				what := name + ", " + list + ", " + s.name
				if n := given(s.put != nil, s.edit != nil, s.tool != nil, s.bring != nil); n != 1 {
					t.Errorf("%s does %d things", what, n)
				}
				top := session.Plain(k.sys)
				e := s.edit
				if s.put != nil {
					added := add(*s.put)
					e = &added
				}
				if e == nil {
					continue
				}
				out, err := e.Apply(top)
				if err != nil {
					t.Errorf("%s: %v", what, err)
					continue
				}
				if s.put != nil {
					continue // it lies about the origin until it is set down
				}
				for _, f := range slab.Validate(out) {
					t.Errorf("%s: %v", what, f)
				}
			}
		}
	}
}

func given(have ...bool) (n int) {
	for _, h := range have {
		if h {
			n++
		}
	}
	return n
}

func add(p board.Put) edit.Edit {
	switch {
	case p.Sink != nil:
		return edit.AddSink(*p.Sink)
	case p.Taps != nil:
		return edit.AddTaps(*p.Taps)
	case p.Hole != nil:
		return edit.AddHole(*p.Hole)
	case p.Channel != nil:
		return edit.AddChannel(*p.Channel)
	case p.Glass != nil:
		return edit.AddGlass(*p.Glass)
	}
	return edit.AddSupport(*p.Support)
}

// TestSamplesAreSound: what the pictures show has no faults.
func TestSamplesAreSound(t *testing.T) {
	for name, k := range kits() {
		for _, list := range [][]starter{k.sinks(), k.taps(), k.holes(), k.channels(), k.glass(),
			k.supports()} {
			for _, s := range list {
				if s.tool != nil || s.bring != nil {
					continue
				}
				if f := slab.Validate(s.sample); len(f) > 0 {
					t.Errorf("%s, %s: %v", name, s.name, f)
				}
			}
		}
	}
}

// TestShapesKeepTheSize: an outline has the size that was typed and lies where
// the one in hand lies, with its seen edges' profile.
func TestShapesKeepTheSize(t *testing.T) {
	d := session.Plain(units.Metric)
	moved, err := edit.MoveEdge(3, design.Point{X: 100 * units.Millimetre}).Apply(d)
	if err != nil {
		t.Fatal(err)
	}
	k := kit{units.Metric, moved, edit.Bounds(moved.Outline)}
	w, depth := 1800*units.Millimetre, 500*units.Millimetre
	for _, s := range k.shapes(w, depth)[:2] {
		out, err := s.edit.Apply(moved)
		if err != nil {
			t.Fatal(err)
		}
		box := slab.Resolve(out).Outline.Bounds()
		if box.W() != 1800 || box.H() < 499.99 || box.H() > 500.01 {
			t.Errorf("%s is %g x %g", s.name, box.W(), box.H())
		}
		if box.Min.Dist(k.box.Min) > 0.01 { // the tolerance of flattening
			t.Errorf("%s lies at %v, want %v", s.name, box.Min, k.box.Min)
		}
		if p := out.Outline.Nodes[0].Edge.Profile; p != moved.Outline.Nodes[0].Edge.Profile {
			t.Errorf("%s has the profile %v", s.name, p)
		}
	}
}

// TestEdgesOfOneOnly: with an edge selected only that one is treated.
func TestEdgesOfOneOnly(t *testing.T) {
	d := session.Plain(units.Metric)
	k := kit{units.Metric, d, edit.Bounds(d.Outline)}
	out, err := k.profiles(1)[2].edit.Apply(d)
	if err != nil {
		t.Fatal(err)
	}
	for i, n := range out.Outline.Nodes {
		want := d.Outline.Nodes[i].Edge.Profile
		if i == 1 {
			want.Kind, want.Size = design.ProfileRounded, 10*units.Millimetre
		}
		if n.Edge.Profile != want {
			t.Errorf("edge %d has %v, want %v", i, n.Edge.Profile, want)
		}
	}
}

func TestPicturesShowSomething(t *testing.T) {
	d := session.Plain(units.Metric)
	k := kit{units.Metric, d, edit.Bounds(d.Outline)}
	for kind := design.ProfileSquare; kind <= design.ProfileRough; kind++ {
		img := paintProfile(d, design.Profile{Kind: kind, Size: 10 * units.Millimetre}, 116, 72)
		if n := painted(img.Pix); n < 116*72/4 || n > 116*72*3/4 {
			t.Errorf("profile %d paints %d of %d pixels", kind, n, 116*72)
		}
	}
	for _, s := range k.sinks() {
		if s.bring != nil {
			continue
		}
		if n := painted(paintDesign(s.sample, false, 116, 72).Pix); n < 116*72/8 {
			t.Errorf("%s paints %d of %d pixels", s.name, n, 116*72)
		}
	}
}

func painted(pix []uint8) (n int) {
	for i := 3; i < len(pix); i += 4 {
		if pix[i] > 0x80 {
			n++
		}
	}
	return n
}
