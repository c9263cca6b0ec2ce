package picture

import (
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/units"
)

// Designs that no one can cast give some picture in bounded time and memory:
// the window shows whatever is drawn while it is drawn.
func TestAbsurdDesigns(t *testing.T) {
	chain := func(points ...[2]float64) (o design.Outline) {
		for _, p := range points {
			o.Nodes = append(o.Nodes, design.Node{At: at(p[0], p[1]), Edge: design.Edge{Profile: design.Profile{Kind: design.ProfileRough, Size: mm(18)}}})
		}
		return o
	}
	whole := poured()
	for name, change := range map[string]func(*design.Design){
		"as long as can be": func(d *design.Design) { d.Outline = edit.Rectangle(units.MaxLength, mm(1)) },
		"as large as can be": func(d *design.Design) {
			d.Outline, d.Thickness = edit.Rectangle(units.MaxLength, units.MaxLength), units.MaxLength
		},
		"rough and as large as can be": func(d *design.Design) {
			m := units.MaxLength.MM()
			d.Outline, d.Thickness = chain([2]float64{0, 0}, [2]float64{m, 0}, [2]float64{m, m}), units.MaxLength
		},
		"a nanometre":       func(d *design.Design) { d.Outline, d.Thickness = edit.Rectangle(1, 1), 1 },
		"without thickness": func(d *design.Design) { d.Thickness = 0 },
		"crossing itself": func(d *design.Design) {
			d.Outline = chain([2]float64{0, 0}, [2]float64{500, 500}, [2]float64{500, 0}, [2]float64{0, 500})
		},
		"clockwise":        func(d *design.Design) { d.Outline = chain([2]float64{0, 0}, [2]float64{0, 500}, [2]float64{500, 0}) },
		"one point":        func(d *design.Design) { d.Outline = chain([2]float64{5, 5}) },
		"points on points": func(d *design.Design) { d.Outline = chain([2]float64{5, 5}, [2]float64{5, 5}, [2]float64{5, 5}) },
		"all hole":         func(d *design.Design) { d.Sinks[0].Shape.Width, d.Sinks[0].Shape.Depth = mm(5000), mm(5000) },
		"a sink of nothing": func(d *design.Design) {
			d.Sinks[0].Shape.Width, d.Sinks[0].Shape.Depth, d.Sinks[0].BowlDepth = 0, 0, 0
		},
		"deeper than thick": func(d *design.Design) { d.Channels[0].Depth = mm(500) },
		"a river of no width": func(d *design.Design) {
			d.Channels[0].Rivers = []design.River{river(true, node(0, 0, 0), node(0, 0, 0), node(900, 0, 0))}
		},
		"glass of every size": func(d *design.Design) {
			d.Channels[0].Fill.Glass = &design.GlassFill{Grain: 1, Share: units.Whole}
			d.Glass = []design.GlassBed{{ID: "g", Grain: units.MaxLength, Coverage: 1, Depth: units.MaxLength,
				Region: design.Region{Outer: chain([2]float64{0, 0}, [2]float64{1e6, 0}, [2]float64{0, 1e6}).Nodes}}}
		},
	} {
		t.Run(name, func(t *testing.T) {
			d := whole
			d.Sinks = append([]design.Sink(nil), whole.Sinks...)
			d.Channels = append([]design.Channel(nil), whole.Channels...)
			change(&d)
			s := built(d, SetOptions{Draft: true})
			for k := Top; k <= Orbit; k++ {
				shotOf(t, s, View{Kind: k, Rise: 20}, First, 48, 27, 2)
			}
		})
	}
}
