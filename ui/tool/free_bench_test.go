package tool_test

import (
	"math"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/session"
	"example.org/castwright/ui/tool"
)

// A move of the mouse with a stroke tool in use, what is shown included: late in a
// long wavy stroke of a brush, and along the bank of a river.
func BenchmarkStrokeMove(b *testing.B) {
	d := empty()
	var nodes []design.RiverNode
	for i := range 8 {
		nodes = append(nodes, design.RiverNode{At: at(100+140*float64(i), 250+60*math.Sin(2*float64(i))), Width: 80 * mm})
	}
	d.Channels = []design.Channel{{ID: "channel-1", Depth: 10 * mm, Rivers: []design.River{{Nodes: nodes}}}}
	for name, which := range map[string]tool.Tool{"brush": tool.Brush, "bank": tool.Bank, "flood": tool.Flood} {
		b.Run(name, func(b *testing.B) {
			s := session.New(design.Job{Units: units.Metric, Options: []design.Option{{Name: "A", Design: d}}}, "")
			h := tool.New(s)
			h.SetTool(which)
			place := func(i int) tool.Pointer {
				t := float64(i) / 40
				return tool.Pointer{At: geom.Vec{X: 600 + 300*math.Cos(t), Y: 300 + 150*math.Sin(1.7*t)}, PerMM: 1}
			}
			h.Down(place(0))
			for i := range 400 {
				h.Move(place(i))
			}
			i := 400
			b.ReportAllocs()
			for b.Loop() {
				h.Move(place(i%2 + 400))
				h.Overlay()
				i++
			}
		})
	}
}
