package picture

import (
	"math"
	"testing"

	"example.org/castwright/assets"
	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/store"
	"example.org/castwright/model/units"
)

func mm(x float64) units.Length { return units.FromMM(x) }

func at(x, y float64) design.Point { return design.Point{X: mm(x), Y: mm(y)} }

// share is a share of the whole in percent.
func share(percent float64) units.Share { return units.FromFraction(percent / 100) }

func river(open bool, nodes ...design.RiverNode) design.River {
	r := design.River{Nodes: nodes}
	if open {
		r.End = design.EndOpen
	}
	return r
}

func node(x, y, w float64) design.RiverNode { return design.RiverNode{At: at(x, y), Width: mm(w)} }

// poured is the top that the proofs use: a bowed front with a river of clear
// tinted resin that runs over it, a broken left end, a bowl below, a single tap.
func poured() design.Design {
	d := design.Design{Thickness: mm(45)}
	d.Outline = edit.BowedFront(mm(1250), mm(560), mm(40))
	d.Outline.Nodes[0].Edge.Profile = design.Profile{Kind: design.ProfileRounded, Size: mm(9)}
	d.Outline.Nodes[1].Edge.Profile = design.Profile{Kind: design.ProfileEased, Size: mm(3)}
	d.Outline.Nodes[3].Edge.Profile = design.Profile{Kind: design.ProfileRough, Size: mm(18)}
	d.Sinks = []design.Sink{{ID: "sink-1", At: at(850, 270), Mount: design.MountUnder, BowlDepth: mm(150), BowlMass: 8,
		Shape:   design.Shape{Kind: design.ShapeEllipse, Width: mm(430), Depth: mm(330)},
		Profile: design.Profile{Kind: design.ProfileEased, Size: mm(3)}}}
	d.Taps = []design.TapSet{{ID: "taps-1", Diameter: mm(35), Sink: "sink-1", SetBack: mm(60)}}
	d.Channels = []design.Channel{{ID: "channel-1", Depth: mm(13),
		Rivers: []design.River{river(true, node(230, 520, 70), node(330, 380, 82), node(270, 220, 90), node(360, 40, 104), node(385, -40, 112))},
		Fill:   design.Fill{Resin: true, Colour: design.Colour{R: 60, G: 150, B: 150}}}}
	d.Finish = design.Finish{Colour: design.Colour{R: 176, G: 171, B: 163}, Polish: 3}
	return d
}

// glassy is poured with glass broadcast into the resin.
func glassy() design.Design {
	d := poured()
	d.Channels[0].Fill.Glass = &design.GlassFill{Grain: mm(5), Share: share(12), Colour: design.Colour{R: 190, G: 226, B: 214}}
	return d
}

func demo(t testing.TB, file, option int) design.Design {
	t.Helper()
	j, err := store.Decode(assets.Demos()[file].Data)
	if err != nil {
		t.Fatal(err)
	}
	return j.Options[option].Design
}

func built(d design.Design, opt SetOptions) *Set { return Build(d, slab.Resolve(d), opt) }

// edgeSpot is the corner of them that is looked at.
var edgeSpot = geom.Vec{X: 10, Y: 30}

// edges are short tops that differ in the profile of their front.
func edges() []design.Design {
	var out []design.Design
	for _, p := range []design.Profile{
		{Kind: design.ProfileSquare}, {Kind: design.ProfileEased, Size: mm(3)}, {Kind: design.ProfileRounded, Size: mm(12)},
		{Kind: design.ProfileBevelled, Size: mm(8)}, {Kind: design.ProfileHalfRound}, {Kind: design.ProfileFullRound}, {Kind: design.ProfileRough, Size: mm(18)},
	} {
		d := design.Design{Thickness: mm(40), Finish: design.Finish{Colour: design.Colour{R: 168, G: 165, B: 158}, Polish: 2}}
		d.Outline = edit.Rectangle(mm(600), mm(400))
		for i := range d.Outline.Nodes {
			d.Outline.Nodes[i].Edge.Profile = p
		}
		out = append(out, d)
	}
	return out
}

// terrazzo is a round free-standing top of opened stone with an over-mounted
// bowl; island a long one with an island in its pool of resin.
func terrazzo() design.Design {
	d := design.Design{Thickness: mm(40), Outline: edit.Round(mm(900)), Finish: design.Finish{Colour: design.Colour{R: 205, G: 203, B: 198}, Exposure: design.ExposureCoarse, Polish: 4, Grind: mm(5)}}
	for i := range d.Outline.Nodes {
		d.Outline.Nodes[i].Edge.Profile = design.Profile{Kind: design.ProfileFullRound}
	}
	d.Sinks = []design.Sink{{ID: "s", At: at(450, 430), Mount: design.MountOver, Rim: mm(22), BowlDepth: mm(140), Shape: design.Shape{Kind: design.ShapeCircle, Width: mm(360)}}}
	d.Taps = []design.TapSet{{ID: "t", Diameter: mm(35), At: at(450, 690)}}
	return d
}

func island() design.Design {
	d := design.Design{Thickness: mm(50), Outline: edit.Rectangle(mm(1800), mm(600)), Finish: design.Finish{Colour: design.Colour{R: 74, G: 72, B: 72}, Polish: 4}}
	for i := range d.Outline.Nodes {
		d.Outline.Nodes[i].Edge.Profile = design.Profile{Kind: design.ProfileBevelled, Size: mm(6)}
	}
	ring := func(cx, cy, rx, ry float64) []design.Node {
		var n []design.Node
		for i := range 24 {
			a := 2 * math.Pi * float64(i) / 24
			n = append(n, design.Node{At: at(cx+rx*math.Cos(a), cy+ry*math.Sin(a))})
		}
		return n
	}
	d.Channels = []design.Channel{{ID: "c", Depth: mm(16), Regions: []design.Region{{Outer: ring(560, 300, 330, 170), Islands: [][]design.Node{ring(500, 300, 90, 60)}}},
		Fill: design.Fill{Resin: true, Colour: design.Colour{R: 230, G: 190, B: 120}}}}
	d.Glass = []design.GlassBed{{ID: "g", Region: design.Region{Outer: ring(1300, 300, 260, 150)}, Grain: mm(14), Coverage: share(55), Depth: mm(10), Colour: design.Colour{R: 120, G: 170, B: 210}}}
	return d
}
