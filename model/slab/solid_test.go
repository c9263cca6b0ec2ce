package slab_test

import (
	"testing"

	"example.org/castwright/model/slab"
)

// Volumes and centroids of varied tops by adaptive integration of GEOS sections
// (testdata/solid/make.py): every profile, corners that meet, channels that cross
// and leave, sinks at edges, overlapping holes, a neck, a profile larger than the
// slab. The reference's sampling leaves about 1e-6.
func TestAgainstSections(t *testing.T) {
	tops := cases(t, "solid/tops.json")
	var want map[string]struct {
		Concrete float64    `json:"concrete_volume_mm3"`
		Centroid [3]float64 `json:"centroid_mm"`
		Channels []float64  `json:"channel_volume_mm3"`
	}
	expected(t, "solid/volumes.json", &want)
	if len(want) != len(tops) || len(want) < 25 {
		t.Fatalf("%d expected values for %d tops", len(want), len(tops))
	}
	for name, w := range want {
		m := slab.Resolve(tops[name]).Measure(0)
		same(t, name, m.ConcreteVolume, w.Concrete, 3e-6)
		for i, axis := range []string{"x", "y", "z"} {
			near(t, name+" "+axis, m.ConcreteCentroid[i], w.Centroid[i], 1e-3)
		}
		for i, c := range w.Channels {
			near(t, name+" channel", m.Channels[i].Volume, c, 3e-6*w.Concrete)
		}
	}
}
