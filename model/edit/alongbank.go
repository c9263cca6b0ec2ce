package edit

import (
	"math"
	"reflect"
	"slices"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
)

// alongBanks lays the glass anew that keeps to banks of channels which an edit has
// changed, or that the edit has changed itself.
func alongBanks(before, after design.Design) design.Design {
	owned := false
	done := map[design.Relation]bool{} // strips, by their relation less its part
	for _, r := range after.Relations {
		if r.Kind != design.RelationBank {
			continue
		}
		key := r
		key.Part = ""
		if _, bad := after.RelationFault(r); bad || done[key] {
			continue
		}
		beds := bedsAlong(after, key)
		if reflect.DeepEqual(channelOf(before, r.Other), channelOf(after, r.Other)) && sameBeds(before, after, beds) {
			continue
		}
		done[key] = true
		strips := bankRegions(*channelOf(after, r.Other), r.Bank, r.Distance.MM(), (r.Distance + r.Width).MM())
		if !owned {
			after, owned = cloneParts(after), true
		}
		layNearest(&after, bedsAt(before, after, r.Other, beds), strips)
	}
	return after
}

// bedsAlong are the glass beds of a strip along a bank.
func bedsAlong(d design.Design, key design.Relation) (out []design.ID) {
	for _, r := range d.Relations {
		id := r.Part
		if r.Part = ""; r == key && glass.find(&d, id) != nil {
			out = append(out, id)
		}
	}
	return out
}

// sameBeds reports whether an edit has left the shapes of beds alone. One that it
// has made is laid already.
func sameBeds(before, after design.Design, beds []design.ID) bool {
	for _, id := range beds {
		was, is := glass.find(&before, id), glass.find(&after, id)
		if was != nil && !reflect.DeepEqual(was.Region, is.Region) {
			return false
		}
	}
	return true
}

// bedAt is about where a bed is to lie.
type bedAt struct {
	id design.ID
	at geom.Vec
}

// bedsAt are about where beds are to lie: where an edit has put them, and those that
// it has not touched as far on as the middle of their channel has gone.
func bedsAt(before, after design.Design, channel design.ID, beds []design.ID) []bedAt {
	var by geom.Vec
	was, had := Centre(before, channel)
	if is, has := Centre(after, channel); had && has {
		by = vec(is).Sub(vec(was))
	}
	var out []bedAt
	for _, id := range beds {
		at := middleOfBed(glass.find(&after, id).Region)
		if sameBeds(before, after, []design.ID{id}) {
			at = at.Add(by)
		}
		out = append(out, bedAt{id, at})
	}
	return out
}

func middleOfBed(r design.Region) geom.Vec { return boundsOf(r.Outer).Centre() }

// layNearest gives each bed the strip whose middle is nearest to where it is to lie,
// each strip to one bed, the nearest pair first. A bed for which there is none stays.
func layNearest(d *design.Design, beds []bedAt, strips []design.Region) {
	for len(beds) > 0 && len(strips) > 0 {
		bed, strip, best := 0, 0, math.Inf(1)
		for i, b := range beds {
			for k, s := range strips {
				if off := b.at.Dist(middleOfBed(s)); off < best {
					bed, strip, best = i, k, off
				}
			}
		}
		if math.IsInf(best, 1) {
			return
		}
		glass.find(d, beds[bed].id).Region = strips[strip]
		beds, strips = slices.Delete(beds, bed, bed+1), slices.Delete(strips, strip, strip+1)
	}
}
