package slab

import (
	"slices"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
)

// body is what sections are cut from: the flattened chains with their parallels.
type body struct {
	thickness float64
	centre    geom.Vec // near the top, for the sweep's digits
	outline   *ring    // nil when there is none
	openings  []*ring  // clockwise
	recesses  []recessLoops
	profiles  []profileLength      // that draw something in, alike ones together
	curves    map[int][]geom.Curve // of the openings by index, and of the outline
	fence     *geom.Fence          // of the outline
	fences    []*geom.Fence        // of the openings
}

// profileLength is a profile and the length of all edges that have it.
type profileLength struct {
	profile design.Profile
	length  float64
}

// addProfiles gathers the profiles of a ring.
func (b *body) addProfiles(r *ring) {
	for _, s := range r.stretches {
		if size, _ := profileSpan(s.profile, b.thickness); !(size > 0) {
			continue
		}
		i := slices.IndexFunc(b.profiles, func(p profileLength) bool {
			return sameInset(p.profile, s.profile, b.thickness)
		})
		if i < 0 {
			i = len(b.profiles)
			b.profiles = append(b.profiles, profileLength{profile: s.profile})
		}
		b.profiles[i].length += s.length
	}
}

type recessLoops struct {
	depth float64
	loops []geom.Loop
}

// rings is the outline's and all openings' rings.
func (b *body) rings() []*ring {
	if b.outline == nil {
		return nil
	}
	return append([]*ring{b.outline}, b.openings...)
}

// The layers of a section's sweep; channels follow.
const (
	layerWhole   = iota // inside the outline
	layerGone           // taken off by profiles and openings
	layerChannel        // the first channel
)

// Every channel, and every glass bed, has a layer of its own.
const _ = uint(geom.MaxLayers - layerChannel - design.MaxInlays)

const (
	setConcrete uint64 = 1 << layerWhole
	setGone     uint64 = 1 << layerGone
)

// add puts the section at the height z into the drawer's sweep, with the
// channels that are deeper than depth below the face.
func (b *body) add(w *drawer, z, depth float64) {
	inset := func(p design.Profile) float64 { return Inset(p, b.thickness, z) }
	w.sweep.Reset(b.centre)
	w.outline(b.outline, layerWhole, layerGone, inset)
	for _, o := range b.openings {
		w.opening(o, layerGone, inset)
	}
	b.addChannels(w, depth)
}

// addPlan puts the plan into the drawer's sweep: outline, openings and channels
// as drawn, with no profile cut.
func (b *body) addPlan(w *drawer) {
	none := func(design.Profile) float64 { return 0 }
	w.sweep.Reset(b.centre)
	w.outline(b.outline, layerWhole, layerGone, none)
	for _, o := range b.openings {
		w.opening(o, layerGone, none)
	}
	b.addChannels(w, 0)
}

func (b *body) addChannels(w *drawer, depth float64) {
	for i, c := range b.recesses {
		if c.depth <= depth {
			continue
		}
		for _, l := range c.loops {
			w.sweep.Add(layerChannel+i, l)
		}
	}
}

// Section is the region of concrete at the height z above the underside, in
// millimetres: outer loops counter-clockwise, holes clockwise. Where a profile
// or a channel begins at z, the section is the one just below.
func (s Solid) Section(z float64) []geom.Loop {
	b := s.body
	if b == nil || b.outline == nil || !(z >= 0 && z <= b.thickness) {
		return nil
	}
	var w drawer
	b.add(&w, z, b.thickness-z)
	return w.sweep.Loops(func(layers uint64) bool { return layers == setConcrete })
}

// Fillings is the region at the height z that lies in channels, whatever is in
// them, with what profiles and openings take off left out.
func (s Solid) Fillings(z float64) []geom.Loop {
	b := s.body
	if b == nil || b.outline == nil || !(z >= 0 && z <= b.thickness) {
		return nil
	}
	var w drawer
	b.add(&w, z, b.thickness-z)
	return w.sweep.Loops(func(layers uint64) bool {
		return layers&setConcrete != 0 && layers&setGone == 0 && layers != setConcrete
	})
}
