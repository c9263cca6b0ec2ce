package edit

import (
	"fmt"
	"slices"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
)

// WipeGlass takes what a brush sweeps over out of every glass bed that it meets.
// A bed that it parts becomes several, the largest with the old ID; one that it
// wipes out goes.
func WipeGlass(points []design.Point, width units.Length) Edit {
	loops, err := brushed(points, width)
	return newEdit("Erase glass", func(d design.Design) (design.Design, error) {
		if err != nil {
			return d, err
		}
		met := false
		var beds, parted []design.GlassBed
		for _, g := range d.Glass {
			regions, touched := wiped(g.Region, loops)
			if !touched {
				beds = append(beds, g)
				continue
			}
			met = true
			slices.SortStableFunc(regions, func(a, b design.Region) int {
				return compareFloat(flatChain(b.Outer).Area(), flatChain(a.Outer).Area())
			})
			for i, r := range regions {
				bed := cloneGlass(g)
				bed.Region = r
				if i == 0 {
					beds = append(beds, bed)
				} else {
					parted = append(parted, bed)
				}
			}
			if len(regions) == 0 {
				d.Extra = d.Extra.WithoutPart(g.ID)
			}
		}
		if !met {
			return d, fmt.Errorf("there is no glass there: drag over a bed of glass")
		}
		// Fresh IDs are those that no part had before, whatever goes.
		names := d
		for _, bed := range parted {
			bed.ID = NextID(names, glass.prefix)
			names.Glass = append(slices.Clone(names.Glass), bed)
			beds = append(beds, bed)
		}
		d.Glass = beds
		return d, nil
	})
}

// wiped is what loops leave of a region, and whether they meet it at all.
func wiped(r design.Region, loops []geom.Loop) (left []design.Region, met bool) {
	var sweep geom.Sweep
	sweep.Reset(vec(middleOf(r.Outer)))
	sweep.Add(0, flatChain(r.Outer))
	for _, island := range r.Islands {
		sweep.Add(1, flatChain(island))
	}
	for _, l := range loops {
		sweep.Add(2, l)
	}
	bounds := sweep.Loops(func(layers uint64) bool {
		met = met || layers == bedLayer|paintedLayer
		return layers == bedLayer
	})
	return regionsOf(bounds), met
}

func compareFloat(a, b float64) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

// RegionAt is the region about a place among those that loops bound, outer ones
// counter-clockwise and holes clockwise, with straight edges to
// [BrushTolerance]; false when none holds it.
func RegionAt(loops []geom.Loop, at design.Point) (design.Region, bool) {
	for _, r := range regionsOf(onGrid(loops)) {
		if !flatChain(r.Outer).Contains(vec(at)) {
			continue
		}
		within := true
		for _, island := range r.Islands {
			within = within && !flatChain(island).Contains(vec(at))
		}
		if within {
			return r, true
		}
	}
	return design.Region{}, false
}
