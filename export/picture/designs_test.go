package picture

import (
	"testing"

	"example.org/castwright/assets"
	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
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
