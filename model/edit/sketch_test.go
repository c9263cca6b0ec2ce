package edit_test

import (
	"math"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
	"pgregory.net/rapid"
)

func regionArea(r design.Region) float64 {
	sum := area(r.Outer)
	for _, island := range r.Islands {
		sum -= area(island)
	}
	return sum
}

// What a round brush sweeps over along a line is a stadium: L w + pi w2/4.
func TestGlassFromBrush(t *testing.T) {
	line := []design.Point{at(100, 100), at(250, 100), at(400, 100)}
	r, err := edit.GlassFromBrush(line, mm(80))
	if err != nil {
		t.Fatal(err)
	}
	around := 2*300 + math.Pi*80
	near(t, "stadium", regionArea(r), 300*80+math.Pi*40*40, around*edit.BrushTolerance.MM())
	dab, err := edit.GlassFromBrush(line[:1], mm(80))
	if err != nil {
		t.Fatal(err)
	}
	near(t, "dab", regionArea(dab), math.Pi*40*40, math.Pi*80*edit.BrushTolerance.MM())
	// Once round a circle the brush leaves an island: pi (R+w/2)2 - pi (R-w/2)2.
	var circle []design.Point
	for i := range 181 {
		s, c := math.Sincos(2 * math.Pi * float64(i) / 180)
		circle = append(circle, at(500+200*c, 300+200*s))
	}
	ring, err := edit.GlassFromBrush(circle, mm(80))
	if err != nil {
		t.Fatal(err)
	}
	if len(ring.Islands) != 1 || area(ring.Islands[0]) < 0 {
		t.Fatalf("%d islands", len(ring.Islands))
	}
	near(t, "ring", regionArea(ring), math.Pi*(240*240-160*160), 2*math.Pi*400*edit.BrushTolerance.MM())
	for _, width := range []units.Length{0, -1, units.MaxLength + 1} {
		if _, err := edit.GlassFromBrush(line, width); err == nil {
			t.Errorf("a brush of %v", width)
		}
	}
	if _, err := edit.GlassFromBrush(nil, mm(80)); err == nil {
		t.Error("no stroke painted something")
	}
}

func TestPaintAndErase(t *testing.T) {
	d := apply(t, rectangle(), edit.AddGlass(design.GlassBed{Region: design.Region{Outer: edit.Rectangle(mm(300), mm(90)).Nodes}}))
	wider := apply(t, d, edit.PaintGlass("glass-1", []design.Point{at(300, 45), at(500, 45)}, mm(90)))
	near(t, "painted on", regionArea(wider.Glass[0].Region), 300*90+200*90+math.Pi*45*45/2, 200)
	holed := apply(t, d, edit.EraseGlass("glass-1", []design.Point{at(150, 45)}, mm(40)))
	near(t, "with a hole", regionArea(holed.Glass[0].Region), 300*90-math.Pi*20*20, 60)
	if len(holed.Glass[0].Region.Islands) != 1 {
		t.Errorf("%d islands, want 1", len(holed.Glass[0].Region.Islands))
	}
	filled := apply(t, holed, edit.PaintGlass("glass-1", []design.Point{at(150, 45)}, mm(60)))
	near(t, "filled again", regionArea(filled.Glass[0].Region), 300*90, 1)
	for name, e := range map[string]edit.Edit{
		"a piece apart":    edit.PaintGlass("glass-1", []design.Point{at(900, 300)}, mm(40)),
		"cut in two":       edit.EraseGlass("glass-1", []design.Point{at(150, -50), at(150, 150)}, mm(40)),
		"nothing left":     edit.EraseGlass("glass-1", []design.Point{at(0, 45), at(300, 45)}, mm(200)),
		"no such bed":      edit.PaintGlass("glass-2", []design.Point{at(900, 300)}, mm(40)),
		"a brush too fine": edit.PaintGlass("glass-1", []design.Point{at(900, 300)}, 1),
	} {
		if _, err := e.Apply(d); err == nil {
			t.Error(name)
		}
	}
}

func TestRiverFromStroke(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tall := rapid.Float64Range(0, 120).Draw(t, "tall")
		var stroke []design.Point
		for i := range 120 {
			x := float64(i) * 10
			stroke = append(stroke, at(x, 300+tall*math.Sin(x/180)))
		}
		r, off, err := edit.RiverFromStroke(stroke, mm(70), mm(3))
		if err != nil {
			t.Fatal(err)
		}
		if off > mm(3) || len(r.Nodes) > 20 || r.Nodes[0].Width != mm(70) {
			t.Fatalf("%d nodes, %v off", len(r.Nodes), off)
		}
		d := apply(t, rectangle(), edit.AddChannel(design.Channel{Depth: mm(12), Rivers: []design.River{r}}))
		near(t, "from", d.Channels[0].Rivers[0].Nodes[0].At.Sub(stroke[0]).X.MM(), 0, 3)
	})
	for _, c := range []struct{ w, tol units.Length }{{0, mm(3)}, {mm(70), 0}, {mm(70), mm(3)}} {
		if _, _, err := edit.RiverFromStroke([]design.Point{at(0, 0)}, c.w, c.tol); err == nil {
			t.Errorf("a river of one point, width %v, tolerance %v", c.w, c.tol)
		}
	}
}

// straightRiver runs 600 mm, 60 wide, with flat ends.
func straightRiver(t failing) design.Design {
	return apply(t, rectangle(), edit.AddChannel(design.Channel{Depth: mm(12), Rivers: []design.River{{
		Start: design.EndFlat, End: design.EndFlat, Nodes: []design.RiverNode{
			{At: at(300, 280), Width: mm(60)}, {At: at(600, 280), Width: mm(60)}, {At: at(900, 280), Width: mm(60)}}}}}))
}

// Round a rectangle of a by b the strip from r to s is, by Steiner's formula
// for parallel bodies, 2 (a + b) (s - r) + pi (s2 - r2).
func TestBankGlass(t *testing.T) {
	d := straightRiver(t)
	bed := design.GlassBed{Grain: mm(6), Depth: mm(6), Coverage: 60 * units.Percent}
	both := apply(t, d, edit.BankGlass("channel-1", edit.BothBanks, mm(5), mm(40), bed))
	g := both.Glass[0]
	if len(both.Glass) != 1 || len(g.Region.Islands) != 1 || g.ID != "glass-1" || g.Grain != mm(6) {
		t.Fatalf("%d beds, %d islands", len(both.Glass), len(g.Region.Islands))
	}
	near(t, "both banks", regionArea(g.Region), 2*660*40+math.Pi*(45*45-5*5), 3000*edit.BrushTolerance.MM())
	// One side has half of it, since the line runs straight on.
	for _, side := range []edit.BankSide{edit.LeftBank, edit.RightBank} {
		one := apply(t, d, edit.BankGlass("channel-1", side, mm(5), mm(40), bed)).Glass[0].Region
		near(t, "one bank", regionArea(one), 660*40+math.Pi*(45*45-5*5)/2, 1500*edit.BrushTolerance.MM())
		a, b, _ := edit.Extent(design.Design{Glass: []design.GlassBed{{ID: "g", Region: one}}}, "g")
		if left := a.Y > mm(275); left != (side == edit.LeftBank) || (b.Y < mm(285)) == left {
			t.Errorf("the bed of side %d reaches from %v to %v", side, a, b)
		}
	}
	for _, e := range []edit.Edit{edit.BankGlass("channel-9", edit.BothBanks, 0, mm(40), bed),
		edit.BankGlass("channel-1", edit.BothBanks, -1, mm(40), bed),
		edit.BankGlass("channel-1", edit.BothBanks, 0, 0, bed), edit.BankGlass("channel-1", 3, 0, mm(4), bed)} {
		if _, err := e.Apply(d); err == nil {
			t.Error("a bank that can't be was lined")
		}
	}
}

// No point of a bed strays from its distances to the channel's banks by more
// than the brush's tolerance, however the river winds.
func TestBankGlassKeepsItsDistance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(what string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, what) }
		var nodes []design.RiverNode
		for i := range 4 {
			nodes = append(nodes, design.RiverNode{At: at(300*float64(i), draw("y", 200, 350)), Width: mm(draw("w", 30, 90))})
		}
		d := apply(t, rectangle(), edit.AddChannel(design.Channel{Rivers: []design.River{{Nodes: nodes}}}))
		offset, width := draw("offset", 1, 20), draw("width", 10, 80)
		out := apply(t, d, edit.BankGlass("channel-1", edit.BothBanks, mm(offset), mm(width), design.GlassBed{}))
		banks := bankFence(d.Channels[0].Rivers[0])
		for _, g := range out.Glass {
			for _, n := range g.Region.Outer {
				_, dist := banks.Nearest(geom.Vec{X: n.At.X.MM(), Y: n.At.Y.MM()})
				near(t, "outer edge", dist, offset+width, edit.BrushTolerance.MM())
			}
		}
	})
}

// bankFence is the outline of a river with round ends, drawn by package geom.
func bankFence(r design.River) *geom.Fence {
	var points []geom.Vec
	var widths []float64
	for _, n := range r.Nodes {
		points, widths = append(points, geom.Vec{X: n.At.X.MM(), Y: n.At.Y.MM()}), append(widths, n.Width.MM())
	}
	band, _ := geom.NewBand(points, widths)
	return geom.NewFence(geom.Union(band.Flatten(0.01).Loops(geom.BandEnd{Round: true}, geom.BandEnd{Round: true})...)...)
}
