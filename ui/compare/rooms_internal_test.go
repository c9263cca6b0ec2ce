package compare

import (
	"testing"

	"fyne.io/fyne/v2"

	"example.org/castwright/model/design"
	"example.org/castwright/model/draw"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/scene"
	"example.org/castwright/model/units"
)

// Whatever the size of the window and the way of looking, each dimension of both sides
// lies within its pane and is not covered by the pane's name.
func TestDimensionsWithinPanes(t *testing.T) {
	j := demo(t)
	long := demo(t).Options[1] // a shallow top with a long name, as wide as its pane
	long.Name = "A much longer name than a letter"
	long.Design.Outline.Nodes = append([]design.Node{}, long.Design.Outline.Nodes...)
	for i := range long.Design.Outline.Nodes {
		long.Design.Outline.Nodes[i].At.Y /= 3
	}
	long.Design.Sinks, long.Design.Taps = nil, nil
	j.Options = append(j.Options, long)
	p, _, _ := rig(t, j)
	for _, sys := range []units.System{units.Metric, units.Imperial} {
		for _, other := range []string{"B", long.Name} {
			for _, way := range []string{"one scale", "fitted", "over each other"} {
				for _, size := range []fyne.Size{{Width: 1000, Height: 640}, {Width: 1280, Height: 700}, {Width: 2560, Height: 1340}} {
					j.Units = sys
					p.s.Load(j, "")
					p.a, p.b = "A", other
					p.over, p.fitted, p.plain = way == "over each other", way == "fitted", [2]bool{}
					p.frame.Window.Resize(size)
					p.Refresh()
					for i, s := range p.of {
						v := p.plan.views[i]
						if v.W < 200 {
							t.Fatalf("a pane is %g points wide", v.W)
						}
						plan := draw.View{W: v.W, H: v.H, Scale: v.Scale, Centre: v.Design(geom.Vec{X: v.W / 2, Y: v.H / 2}), Point: 1,
							Theme: draw.Light(), Show: shown(true), Units: sys}
						pane, name := geom.Box{Max: geom.Vec{X: v.W, Y: v.H}}, p.nameBox(i, v.W)
						for _, it := range draw.Dimensions(s.Option.Design, s.Report, plan).Items {
							text, ok := it.(scene.Text)
							if !ok {
								continue
							}
							half := geom.Vec{X: text.Width() / 2, Y: text.Size / 2}
							if text.Angle != 0 {
								half = geom.Vec{X: half.Y, Y: half.X}
							}
							switch text.Anchor {
							case scene.AnchorStart:
								text.At.X += half.X
							case scene.AnchorEnd:
								text.At.X -= half.X
							}
							b := geom.Box{Min: text.At.Sub(half), Max: text.At.Add(half)}
							if b.Min.X < pane.Min.X || b.Min.Y < pane.Min.Y || b.Max.X > pane.Max.X || b.Max.Y > pane.Max.Y {
								t.Errorf("A beside %s, %s, %v, side %d: %q lies at %v, the pane is %v", other, way, size, i, text.Text, b, pane)
							}
							if b.Min.X < name.Max.X && b.Max.X > name.Min.X && b.Min.Y < name.Max.Y {
								t.Errorf("A beside %s, %s, %v, side %d: %q at %v is covered by the name at %v", other, way, size, i, text.Text, b, name)
							}
						}
					}
				}
			}
		}
	}
}
