package slab_test

import (
	"fmt"

	"example.org/castwright/model/design"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/units"
)

func ExampleSolid_Measure() {
	const in = units.Inch
	d := design.Design{Thickness: 3 * in / 2, Outline: design.Outline{Nodes: []design.Node{
		{At: design.Point{}}, {At: design.Point{X: 60 * in}},
		{At: design.Point{X: 60 * in, Y: 22 * in}}, {At: design.Point{Y: 22 * in}},
	}}}
	d.Outline.Nodes[0].Edge.Profile = design.Profile{Kind: design.ProfileRounded, Size: in / 2}
	m := slab.Resolve(d).Measure(0)
	fmt.Printf("%.0f mm2, %.1f mm round, %.0f mm3\n", m.PlanArea, m.OutlinePerimeter, m.ConcreteVolume)
	// Output: 851611 mm2, 4165.6 mm round, 32393636 mm3
}
