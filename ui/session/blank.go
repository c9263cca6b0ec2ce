package session

import (
	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/material"
	"example.org/castwright/model/units"
)

// Blank is a job of one's own to start from: one option with a plain rectangular
// top of a usual vanity's size in round figures of the maker's system (common
// practice, no source), and the stock materials, without prices.
func Blank(sys units.System) design.Job {
	return design.Job{
		Units:     sys,
		Materials: material.Defaults(),
		Options:   []design.Option{{Name: "A", Title: "First idea", Design: Plain(sys)}},
	}
}

// Plain is the plain rectangular top of [Blank].
func Plain(sys units.System) design.Design {
	width, depth, thick, ease := 1500*units.Millimetre, 550*units.Millimetre, 40*units.Millimetre, 3*units.Millimetre
	if sys == units.Imperial {
		width, depth, thick, ease = 61*units.Inch, 22*units.Inch, 3*units.Inch/2, units.Inch/8
	}
	d := design.Design{
		Outline:   edit.Rectangle(width, depth),
		Thickness: thick,
		Finish: design.Finish{
			Colour: design.Colour{R: 0xa9, G: 0xa6,
				B: 0x9f}, Exposure: design.ExposureCream, Polish: 2,
			Grind: edit.UsualGrind(design.ExposureCream, sys),
		},
	}
	for i, n := range d.Outline.Nodes {
		if n.Edge.Side == design.SideSeen {
			d.Outline.Nodes[i].Edge.Profile = design.Profile{Kind: design.ProfileEased, Size: ease}
		}
	}
	return d
}
