package slab

import (
	"fmt"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
)

// open adds an opening.
func (r *resolver) open(o Opening, shape grownPart) {
	if len(r.solid.Openings) >= maxOpenings {
		if len(r.solid.Openings) == maxOpenings && !r.full {
			r.full = true
			r.fault(design.RuleCount, o.Part, "", o.Centre,
				"the top has more than %d openings: the ones from here on are left out, remove some", maxOpenings)
		}
		return
	}
	runs := r.flat(shape.curves, o.Profile)
	o.Loop, o.Perimeter = loopOf(runs)
	if len(o.Loop) < 3 {
		return
	}
	if shape.length > 0 {
		o.Perimeter = shape.length
	}
	switch area := o.Loop.Area(); {
	case area == 0:
		return
	case area > 0:
		runs = reversed(runs)
	default:
		o.Loop = o.Loop.Reversed()
	}
	r.curves[len(r.solid.Openings)] = shape.curves
	r.solid.Openings = append(r.solid.Openings, o)
	r.rings = append(r.rings, newRing(runs, r.solid.Thickness))
	for _, l := range shape.islands {
		// Run counter-clockwise, a ring takes its inside out of the opening again.
		r.rings = append(r.rings, newRing(r.flat(lines(l.Reversed()), o.Profile), r.solid.Thickness))
	}
	r.fences = append(r.fences, geom.NewFence(append([]geom.Loop{o.Loop}, shape.islands...)...))
	r.onTop(o.Part, "opening", o.Centre, o.Loop[0], r.fences[len(r.fences)-1])
}

// onTop reports a part that lies outside the top, or that the top lies within;
// point is any one of its fence.
func (r *resolver) onTop(part design.ID, name string, at, point geom.Vec, f *geom.Fence) {
	if r.fence == nil || r.fence.Contains(point) || f.Within(r.fence, within) {
		return
	}
	if f.Contains(r.solid.Outline[0]) {
		r.fault(design.RuleOutside, part, "", at, "the %s is larger than the top: make it smaller or the top larger", name)
		return
	}
	r.fault(design.RuleOutside, part, "", at, "the %s lies outside the top: move it onto the top or remove it", name)
}

// openRound adds a round opening.
func (r *resolver) openRound(part design.ID, kind OpeningKind, index int, at geom.Vec, diameter float64) {
	radius := clamp(diameter, 0, reach) / 2
	r.open(Opening{Part: part, Kind: kind, Index: index, Centre: at, Diameter: 2 * radius},
		grownPart{curves: moved(circle(radius), 0, at)})
}

func (r *resolver) resolveHole(h design.Hole) {
	r.openRound(h.ID, OpeningHole, 0, vec(h.At), h.Diameter.MM())
}

func (r *resolver) resolveSink(i int, k design.Sink) {
	at, turn := vec(k.At), k.Rotation.Radians()
	field := fmt.Sprintf("sinks[%d].shape", i)
	if k.Shape.Kind == design.ShapePath {
		_, misfits := chain(k.Shape.Path)
		r.misfits(field+".path", k.ID, k.Shape.Path, misfits, geom.Line{A: at, B: geom.Vec{X: 1}.Turn(turn)})
		loop, _ := loopOf(r.flat(moved(shapeCurves(k.Shape, 0), turn, at), design.Profile{}))
		r.chainFaults(field+".path", k.ID, "the path", loop, at)
	}
	cut, bowl := 0.0, 0.0
	switch size := clamp(k.Reveal.Size.MM(), 0, reach); {
	case k.Mount == design.MountUnder && k.Reveal.Kind == design.RevealRimShows:
		cut = size
	case k.Mount == design.MountUnder && k.Reveal.Kind == design.RevealOverhang:
		cut = -size
	case k.Mount == design.MountOver:
		bowl = clamp(k.Rim.MM(), 0, reach)
	}
	basin := Bowl{Part: k.ID, Mount: k.Mount, Back: geom.Vec{Y: 1}.Turn(turn)}
	if rims := r.grown(k.Shape, bowl, at, turn); len(rims) > 0 {
		basin.Loop, _ = loopOf(r.flat(rims[0].curves, design.Profile{}))
		if basin.Loop.Area() < 0 {
			basin.Loop = basin.Loop.Reversed()
		}
	}
	r.solid.Bowls = append(r.solid.Bowls, basin)
	if k.Mount == design.MountVessel {
		r.openRound(k.ID, OpeningVesselDrain, 0, at, k.Drain.MM())
		return
	}
	o := Opening{Part: k.ID, Kind: OpeningSink, Centre: at}
	if k.Mount == design.MountUnder {
		o.Profile = k.Profile
	}
	parts := r.grown(k.Shape, cut, at, turn)
	if k.Shape.Kind == design.ShapeCircle && len(parts) > 0 {
		o.Diameter = k.Shape.Width.MM() + 2*cut
	}
	before := len(r.solid.Openings)
	for _, p := range parts {
		o.Index = len(r.solid.Openings) - before
		r.open(o, p)
	}
	if len(r.solid.Openings) == before && k.Shape.Kind != design.ShapePath {
		r.fault(design.RuleShape, k.ID, field, at,
			"the cut-out has no area as it is sized; make it larger than its reveal")
	}
	r.shapeFaults(field, k, parts)
}

// shapeFaults reports what the making of a cut-out found.
func (r *resolver) shapeFaults(field string, k design.Sink, parts []grownPart) {
	if k.Shape.Kind == design.ShapeD {
		if _, misfits := dChain(k.Shape); len(misfits) > 0 {
			r.fault(design.RuleCorner, k.ID, field+".corner_radius_mm", vec(k.At),
				"a corner radius of %s mm does not fit the D's short edges: make it smaller; until then those corners stay square",
				units.DecimalMM(k.Shape.CornerRadius))
		}
	}
	if len(parts) > 1 {
		r.fault(design.RuleShape, k.ID, field, parts[1].curves[0].At(0),
			"the reveal parts the cut-out into %d holes: make it smaller or the shape wider at its neck", len(parts))
	}
	for _, p := range parts {
		for _, l := range p.islands {
			r.fault(design.RuleShape, k.ID, field, l[0],
				"the cut-out closes round a piece of the top, which would fall out: make the reveal smaller")
		}
	}
}

func moved(curves []geom.Curve, turn float64, d geom.Vec) []geom.Curve {
	out := make([]geom.Curve, len(curves))
	for i, c := range curves {
		out[i] = c.Moved(turn, d)
	}
	return out
}

// tapHoles gives the holes of a set relative to its place, before turning.
func tapHoles(t design.TapSet) []geom.Vec {
	const inch = 25.4
	switch t.Pattern {
	case design.TapThree4:
		return []geom.Vec{{X: -2 * inch}, {}, {X: 2 * inch}}
	case design.TapThree8:
		return []geom.Vec{{X: -4 * inch}, {}, {X: 4 * inch}}
	case design.TapOwn:
		var out []geom.Vec
		for _, h := range some(t.Holes, design.MaxPattern) {
			out = append(out, vec(h))
		}
		return out
	}
	return []geom.Vec{{}}
}

func (r *resolver) resolveTaps(i int, t design.TapSet) {
	at, turn := vec(t.At), t.Rotation.Radians()
	if t.Sink != "" {
		at, turn = r.behindSink(i, t, at, turn)
	}
	for k, h := range tapHoles(t) {
		r.openRound(t.ID, OpeningTap, k, at.Add(h.Turn(turn)), t.Diameter.MM())
	}
}

// behindSink is the place and turn of a set that keeps to a sink's centreline.
func (r *resolver) behindSink(i int, t design.TapSet, at geom.Vec, turn float64) (geom.Vec, float64) {
	for _, k := range r.d.Sinks {
		if k.ID != t.Sink {
			continue
		}
		rot := k.Rotation.Radians()
		back, right := geom.Vec{Y: 1}.Turn(rot), geom.Vec{X: 1}.Turn(rot)
		centre := vec(k.At)
		if r.fence != nil {
			if met := r.fence.Ray(centre, back); len(met) > 0 {
				along := met[len(met)-1] - clamp(t.SetBack.MM(), -reach, reach)
				across := clamp(t.Offset.MM(), -reach, reach)
				return centre.Add(back.Mul(along)).Add(right.Mul(across)), rot
			}
		}
		r.fault(design.RuleOutside, t.ID, fmt.Sprintf("taps[%d].sink", i), centre,
			"there is no back edge behind sink %q, because it lies outside the top; the taps stand where at_mm says", t.Sink)
		return at, turn
	}
	r.fault(design.RuleReference, t.ID, fmt.Sprintf("taps[%d].sink", i), at,
		"there is no sink %q; the taps stand where at_mm says until another sink is named", t.Sink)
	return at, turn
}
