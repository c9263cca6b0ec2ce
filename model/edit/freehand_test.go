package edit_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
)

// blob is a jittered closed stroke round a place, as a hand draws it.
func blob(r *rand.Rand, x, y, size, jitter float64) []design.Point {
	a, f, p := 0.25*r.Float64(), 2+r.IntN(3), r.Float64()*math.Pi
	n := 120 + r.IntN(120)
	var out []design.Point
	for i := range n + 1 {
		t := 2 * math.Pi * float64(i) / float64(n)
		rad := size * (1 + a*math.Sin(float64(f)*t+p))
		out = append(out, at(x+rad*math.Cos(t)+jitter*r.NormFloat64(), y+0.7*rad*math.Sin(t)+jitter*r.NormFloat64()))
	}
	return out
}

// lineOf is a chain of splines at many points, closed.
func lineOf(chain []design.Node) []geom.Vec {
	var out []geom.Vec
	v := func(p design.Point) geom.Vec { return geom.Vec{X: p.X.MM(), Y: p.Y.MM()} }
	for i, n := range chain {
		c := geom.Cubic{P0: v(n.At), P1: v(n.Edge.C1), P2: v(n.Edge.C2), P3: v(chain[(i+1)%len(chain)].At)}
		for k := range 200 {
			out = append(out, c.At(float64(k)/200))
		}
	}
	return append(out, out[0])
}

// A closed stroke is fitted within its tolerance, without a bend at the seam, in
// few corners: property test over random blobs.
func TestLoopFromStroke(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 4))
	corners := 0
	const cases = 25
	for i := range cases {
		tolerance := mm(3 + 4*r.Float64())
		stroke := blob(r, 500, 300, 120+150*r.Float64(), 0.4)
		chain, off, err := edit.LoopFromStroke(stroke, tolerance)
		if err != nil {
			t.Fatalf("case %d: %v", i, err)
		}
		corners += len(chain)
		line := lineOf(chain)
		if geom.Loop(line[:len(line)-1]).Area() <= 0 {
			t.Errorf("case %d runs clockwise", i)
		}
		worst := 0.0
		for _, p := range stroke {
			_, d, _ := geom.NearestOnLine(geom.Vec{X: p.X.MM(), Y: p.Y.MM()}, line)
			worst = math.Max(worst, d)
		}
		if worst > tolerance.MM()*1.01 || worst > off.MM()+0.05 {
			t.Errorf("case %d: %.2f mm off, said %.2f, asked %.2f", i, worst, off.MM(), tolerance.MM())
		}
		for k, n := range chain { // the direction goes on across every corner
			before := chain[(k+len(chain)-1)%len(chain)]
			in := n.At.Sub(before.Edge.C2)
			out := n.Edge.C1.Sub(n.At)
			u, w := geom.Vec{X: in.X.MM(), Y: in.Y.MM()}.Unit(), geom.Vec{X: out.X.MM(), Y: out.Y.MM()}.Unit()
			if math.Abs(u.Cross(w)) > 1e-5 || u.Dot(w) < 0 {
				t.Errorf("case %d bends at corner %d", i, k)
			}
		}
	}
	t.Logf("%.1f corners in the mean", float64(corners)/cases)
	if corners > 14*cases {
		t.Errorf("%d corners for %d blobs", corners, cases)
	}
	for name, points := range map[string][]design.Point{
		"nothing": nil, "a line there and back": {at(0, 0), at(100, 0), at(0, 0)}, "two points": {at(0, 0), at(9, 9)},
	} {
		if _, _, err := edit.LoopFromStroke(points, mm(3)); err == nil {
			t.Errorf("%s was fitted", name)
		}
	}
}

// A branch leaves its river along that river: at its start it lies on the
// middle, within the banks, and in the river's direction to 12 degrees.
func TestBranchFromStroke(t *testing.T) {
	main := design.Channel{ID: "channel-1", Rivers: []design.River{{Nodes: []design.RiverNode{
		{At: at(0, 100), Width: mm(80)}, {At: at(400, 180), Width: mm(60)}, {At: at(900, 120), Width: mm(90)}}}}}
	for _, c := range []struct {
		name string
		to   geom.Vec
		dir  float64 // along the river or against it
	}{
		{"onward", geom.Vec{X: 800, Y: 420}, 1}, {"backward", geom.Vec{X: 60, Y: 420}, -1}, {"square", geom.Vec{X: 480, Y: 460}, 1},
	} {
		var stroke []design.Point
		for i := range 60 {
			p := geom.Vec{X: 420, Y: 175}.Lerp(c.to, float64(i)/59)
			stroke = append(stroke, at(p.X, p.Y))
		}
		r, off, err := edit.BranchFromStroke(main, stroke, mm(50), mm(4))
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		if off > mm(4) {
			t.Errorf("%s: %v off", c.name, off)
		}
		d := apply(t, rectangle(), edit.AddChannel(main), edit.AddRiver("channel-1", r))
		if n := len(d.Channels[0].Rivers); n != 2 {
			t.Fatalf("%s: %d rivers", c.name, n)
		}
		var points []geom.Vec
		for _, n := range r.Nodes {
			points = append(points, geom.Vec{X: n.At.X.MM(), Y: n.At.Y.MM()})
		}
		band, _ := geom.NewBand(points, make([]float64, len(points)))
		line := band.Flatten(0.05).Centreline()
		var trunk []geom.Vec
		for _, n := range main.Rivers[0].Nodes {
			trunk = append(trunk, geom.Vec{X: n.At.X.MM(), Y: n.At.Y.MM()})
		}
		trunkBand, _ := geom.NewBand(trunk, make([]float64, len(trunk)))
		middle := trunkBand.Flatten(0.05).Centreline()
		if _, dist, _ := geom.NearestOnLine(line[0], middle); dist > 1 {
			t.Errorf("%s: starts %.1f mm from the middle", c.name, dist)
		}
		way := line[5].Sub(line[0]).Unit()
		_, _, s := geom.NearestOnLine(line[0], middle)
		tangent := geom.Vec{}
		run := 0.0
		for i := 1; i < len(middle); i++ {
			if run += middle[i].Dist(middle[i-1]); run >= s {
				tangent = middle[i].Sub(middle[i-1]).Unit()
				break
			}
		}
		if turn := math.Acos(math.Min(1, c.dir*way.Dot(tangent))) * 180 / math.Pi; turn > 12 {
			t.Errorf("%s: leaves at %.0f degrees from the river", c.name, turn)
		}
		if r.Nodes[0].Width > mm(70) {
			t.Errorf("%s: starts %v wide in a river of about 60", c.name, r.Nodes[0].Width)
		}
	}
	// Clear of the river it is a stroke as any other.
	free := []design.Point{at(0, 400), at(300, 420), at(600, 400)}
	got, _, err := edit.BranchFromStroke(main, free, mm(50), mm(4))
	want, _, wantErr := edit.RiverFromStroke(free, mm(50), mm(4))
	if err != nil || wantErr != nil || len(got.Nodes) != len(want.Nodes) || got.Nodes[0] != want.Nodes[0] {
		t.Errorf("a stroke beside the river became %v, want %v", got, want)
	}
}

// Areas: a 400 x 200 pool less an island of pi 40 x 28; a river 500 x 80 with
// round ends less the same.
func TestAddIsland(t *testing.T) {
	island, _, err := edit.LoopFromStroke(ellipse(250, 100, 40, 28), mm(0.2))
	if err != nil {
		t.Fatal(err)
	}
	hole := math.Pi * 40 * 28
	pool := apply(t, rectangle(), edit.AddChannel(design.Channel{Regions: []design.Region{{Outer: edit.Rectangle(mm(400), mm(200)).Nodes}}}),
		edit.AddIsland("channel-1", island))
	if r := pool.Channels[0].Regions; len(r) != 1 || len(r[0].Islands) != 1 {
		t.Fatalf("the pool has %+v", r)
	}
	near(t, "island", area(pool.Channels[0].Regions[0].Islands[0]), hole, 60)
	river := design.River{Start: design.EndOpen, Nodes: []design.RiverNode{{At: at(0, 100), Width: mm(80)}, {At: at(500, 100), Width: mm(80)}}}
	d := apply(t, rectangle(), edit.AddChannel(design.Channel{Rivers: []design.River{river}}),
		edit.TieRiver("channel-1", 0, design.RiverStart), edit.AddIsland("channel-1", island))
	c := d.Channels[0]
	if len(c.Rivers) != 0 || len(c.Regions) != 1 || len(c.Regions[0].Islands) != 1 || len(d.Relations) != 0 {
		t.Fatalf("the river became %+v, relations %v", c, d.Relations)
	}
	// Its open end runs on by its width.
	near(t, "river", regionArea(c.Regions[0]), (500+80)*80+math.Pi*40*40/2-hole, 1300*edit.BrushTolerance.MM())
	if _, err := edit.AddIsland("channel-1", edit.Oval(mm(10), mm(10)).Nodes).Apply(d); err == nil {
		t.Error("an island off the channel was added")
	}
	both := apply(t, pool, edit.AddPool("channel-1", island))
	if len(both.Channels[0].Regions) != 2 {
		t.Error("no pool was added")
	}
}

func ellipse(x, y, a, b float64) []design.Point {
	var out []design.Point
	for i := range 181 {
		s, c := math.Sincos(2 * math.Pi * float64(i) / 180)
		out = append(out, at(x+a*c, y+b*s))
	}
	return out
}

// A brush across a bed parts it, over all of it takes it away, beside it does
// nothing; areas by hand.
func TestWipeGlass(t *testing.T) {
	d := apply(t, rectangle(),
		edit.AddGlass(design.GlassBed{Region: design.Region{Outer: edit.Rectangle(mm(300), mm(90)).Nodes}, Grain: mm(8)}),
		edit.AddGlass(design.GlassBed{Region: design.Region{Outer: moved(edit.Rectangle(mm(50), mm(50)).Nodes, 400, 0)}}))
	cut := apply(t, d, edit.WipeGlass([]design.Point{at(100, -80), at(100, 170)}, mm(20)))
	if len(cut.Glass) != 3 || cut.Glass[0].ID != "glass-1" || cut.Glass[1].ID != "glass-2" || cut.Glass[2].ID != "glass-3" {
		t.Fatalf("beds %+v", cut.Glass)
	}
	near(t, "the larger piece", regionArea(cut.Glass[0].Region), 190*90, 30)
	near(t, "the smaller piece", regionArea(cut.Glass[2].Region), 90*90, 30)
	if cut.Glass[2].Grain != mm(8) {
		t.Error("the piece is of another glass")
	}
	gone := apply(t, d, edit.WipeGlass([]design.Point{at(425, 25)}, mm(100)))
	if len(gone.Glass) != 1 || gone.Glass[0].ID != "glass-1" {
		t.Errorf("beds %+v", gone.Glass)
	}
	if _, err := edit.WipeGlass([]design.Point{at(800, 300)}, mm(40)).Apply(d); err == nil {
		t.Error("wiping where there is no glass did something")
	}
	if _, err := edit.WipeGlass([]design.Point{at(100, 40)}, units.Nanometre).Apply(d); err == nil {
		t.Error("a brush without width was taken")
	}
}

func moved(nodes []design.Node, x, y float64) []design.Node {
	for i := range nodes {
		nodes[i].At = nodes[i].At.Add(at(x, y))
	}
	return nodes
}
