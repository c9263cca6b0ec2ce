package tool

import (
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/units"
	"pgregory.net/rapid"
)

// The snap never carries a thing far: wherever the mouse is, the place held lies
// within the snap's reach, or its reach along one thing and a grid step along it,
// and the words say what holds it. Suspended it keeps to the mouse.
func TestSnapStaysNearTheMouse(t *testing.T) {
	const mm = units.Millimetre
	at := func(x, y float64) design.Point { return point(geom.Vec{X: x, Y: y}) }
	rapid.Check(t, func(t *rapid.T) {
		d := design.Design{Outline: edit.LShape(1800*mm, 600*mm, 600*mm, 1500*mm, 80*mm), Thickness: 40 * mm}
		coord := func(name string) float64 { return rapid.Float64Range(-200, 2000).Draw(t, name) }
		d.Outline.Nodes[0].Edge = design.Edge{Curve: design.CurveArc, Rise: units.FromMM(rapid.Float64Range(-90, 90).Draw(t, "rise"))}
		d.Outline.Nodes[2].At = d.Outline.Nodes[2].At.Add(at(rapid.Float64Range(-80, 80).Draw(t, "dx"), 0))
		for i := range rapid.IntRange(0, 3).Draw(t, "sinks") {
			d.Sinks = append(d.Sinks, design.Sink{ID: design.ID(rune('a' + i)), At: at(coord("sx"), coord("sy")),
				Rotation: units.FromDegrees(rapid.SampledFrom([]float64{0, 0, 30, 90}).Draw(t, "turn")),
				Shape:    design.Shape{Kind: design.ShapeEllipse, Width: 400 * mm, Depth: 300 * mm}})
		}
		d.Holes = []design.Hole{{ID: "h", At: at(coord("hx"), coord("hy")), Diameter: 50 * mm}}
		d.Supports = []design.Support{{ID: "s", Kind: design.SupportGable, Width: 18 * mm, Line: []design.Point{at(700, 950), at(700, 1500)}}}
		s := slab.Resolve(d)
		g := rapid.SampledFrom([]grip{
			{kind: gripCorner, node: 2}, {kind: gripEdge, node: 1}, {kind: gripPart, part: "h"}, {kind: gripEnd, part: "s"},
		}).Draw(t, "grip")
		anchor, ok := g.anchor(d, s, 1)
		if !ok {
			t.Skip()
		}
		p := geom.Vec{X: coord("x"), Y: coord("y")}
		sn := snapper{still: newStill(d, s, g, nil, anchor), nodes: d.Outline.Nodes, step: 10 * mm, fine: mm / 10, grid: "10 mm",
			reach: 7, point: 1, length: func(mm float64) string { return units.Format(units.FromMM(mm), units.Metric) }}
		for _, off := range []bool{false, true} {
			sn.off = off
			got := sn.plane(p)
			most := 1.5*sn.reach + sn.step.MM()
			if off {
				most = 0.1
			}
			if !got.at.Finite() || got.at.Dist(p) > most || got.words == "" {
				t.Fatalf("off %v: %v is held at %v, %.2f mm away, by %q", off, p, got.at, got.at.Dist(p), got.words)
			}
			u := geom.Vec{X: 1}.Turn(rapid.Float64Range(0, 7).Draw(t, "u"))
			along := sn.along(p, u)
			if !along.at.Finite() || along.at.Dist(p) > most || along.at.Sub(p).Cross(u) > 1e-6 || along.words == "" {
				t.Fatalf("off %v: along %v %v is held at %v by %q", off, u, p, along.at, along.words)
			}
		}
	})
}
