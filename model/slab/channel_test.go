package slab_test

import (
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/slab"
)

// Two crossing channels have each its own centroid: closed forms of boxes.
func TestChannelCentroids(t *testing.T) {
	d := top(40, design.Profile{}, rectangle(1000, 500))
	d.Channels = []design.Channel{
		{ID: "a", Depth: mm(10), Fill: design.Fill{Resin: true}, Regions: []design.Region{{Outer: nodes(100, 100, 300, 100, 300, 200, 100, 200)}}},
		{ID: "b", Depth: mm(20), Fill: design.Fill{Resin: true}, Regions: []design.Region{{Outer: nodes(200, 50, 250, 50, 250, 450, 200, 450)}}},
	}
	m := slab.Resolve(d).Measure(0)
	a, b := m.Channels[0], m.Channels[1]
	near(t, "area of a", a.Area, 200*100, 1e-6)
	near(t, "its centroid, y", a.AreaCentroid.Y, 150, 1e-9)
	near(t, "a, x", a.Centroid[0], 200, 1e-9)
	near(t, "a, z", a.Centroid[2], 35, 1e-9)
	// b keeps all of its lower half and what a leaves of the upper one.
	lower, upper := 50.*400*10, (50.*400-50*100)*10
	near(t, "volume of b", b.Volume, lower+upper, 1e-6)
	near(t, "b, x", b.Centroid[0], 225, 1e-9)
	near(t, "b, y", b.Centroid[1], (lower*250+50*400*10*250-50*100*10*150)/(lower+upper), 1e-9)
	near(t, "b, z", b.Centroid[2], (lower*25+upper*35)/(lower+upper), 1e-9)
	near(t, "area of b, y", b.AreaCentroid.Y, (50*400*250-50*100*150)/(50*400.-50*100), 1e-9)
}
