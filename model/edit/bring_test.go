package edit_test

import (
	"math"
	"os"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/template"
	"example.org/castwright/model/units"
)

// plate is a drawing of a 300 by 200 mm plate with an arched side and a round
// hole of 40 mm.
const plate = `<svg xmlns="http://www.w3.org/2000/svg" width="400mm" height="300mm" viewBox="0 0 400 300">
<path d="M50 50 H350 V250 A300 300 0 0 1 50 250 Z" fill="none"/><circle cx="120" cy="150" r="20"/></svg>`

func brought(t *testing.T) template.Loop {
	t.Helper()
	drawing, err := template.Read([]byte(plate), template.UnitUnknown)
	if err != nil {
		t.Fatal(err)
	}
	if len(drawing.Loops) != 1 || len(drawing.Loops[0].Holes) != 1 {
		t.Fatalf("%d loops", len(drawing.Loops))
	}
	return drawing.Loops[0]
}

func TestBringIn(t *testing.T) {
	l := brought(t)
	outer := area(l.Nodes)
	for _, turn := range []units.Angle{0, 90 * units.Degree, 33 * units.Degree} {
		d := apply(t, rectangle(), edit.PlaceOutline(l, at(700, 300), turn))
		near(t, "outline's area", area(d.Outline.Nodes), outer, 0.01)
		if turn%(90*units.Degree) == 0 {
			c := boxOf(d.Outline.Nodes).Centre()
			near(t, "middle x", c.X, 700, 1e-3)
			near(t, "middle y", c.Y, 300, 1e-3)
		}
		if len(d.Sinks) != 1 || d.Sinks[0].Shape.Kind != design.ShapePath {
			t.Fatalf("sinks %+v", d.Sinks)
		}
		near(t, "hole's area", area(d.Sinks[0].Shape.Path), math.Pi*20*20, 0.01)
		// The arch rises 300 (1 - cos 30 degrees) over its chord; the hole lies
		// 80 left of the middle, and level with that of the straight part.
		near(t, "hole's distance", math.Hypot(d.Sinks[0].At.X.MM()-700, d.Sinks[0].At.Y.MM()-300),
			math.Hypot(80, 150*(1-math.Sqrt(3)/2)), 0.01)
	}
	bowl := design.Sink{At: at(500, 280), Rotation: 10 * units.Degree, Mount: design.MountOver, Rim: mm(12)}
	d := apply(t, rectangle(), edit.PlaceSink(l, bowl))
	s := d.Sinks[0]
	near(t, "sink's area", area(s.Shape.Path), outer, 0.01)
	if s.At != bowl.At || s.Rim != bowl.Rim || s.Rotation != bowl.Rotation {
		t.Errorf("sink %+v", s)
	}
	d = apply(t, rectangle(), edit.PlaceChannel(l, design.Channel{Depth: mm(9)}, at(500, 280), 0))
	near(t, "channel's region", regionArea(d.Channels[0].Regions[0]), l.Area, 0.01)
	d = apply(t, rectangle(), edit.PlaceGlass(l, design.GlassBed{Depth: mm(9)}, at(500, 280), 0))
	near(t, "glass bed", regionArea(d.Glass[0].Region), l.Area, 0.01)
	for _, e := range []edit.Edit{edit.PlaceOutline(template.Loop{}, at(0, 0), 0), edit.PlaceSink(template.Loop{}, bowl),
		edit.PlaceChannel(template.Loop{}, design.Channel{}, at(0, 0), 0),
		edit.PlaceGlass(template.Loop{}, design.GlassBed{}, at(0, 0), 0)} {
		if _, err := e.Apply(rectangle()); err == nil {
			t.Errorf("%s: an empty outline was placed", e.Name)
		}
	}
}

// A drawing made by an independent library comes in at its size.
func TestBringInDXF(t *testing.T) {
	data, err := os.ReadFile("../../testdata/template/sink-R2010.dxf")
	if err != nil {
		t.Fatal(err)
	}
	drawing, err := template.Read(data, template.UnitUnknown)
	if err != nil {
		t.Fatal(err)
	}
	for _, l := range drawing.Loops {
		d := apply(t, rectangle(), edit.PlaceGlass(l, design.GlassBed{}, at(700, 280), 45*units.Degree))
		near(t, "area", regionArea(d.Glass[0].Region), l.Area, 1e-4*l.Area)
	}
}
