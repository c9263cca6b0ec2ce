package slab

import (
	"math"
	"slices"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
)

// Measure reckons what the solid amounts to; grindMM is what grinding takes off
// the face, in millimetres.
//
// Volume is the integral of the section's area over the height. Heights at which
// a profile or channel starts divide it; within each part Gauss-Legendre points
// are set so that the vertical tangent of a quarter circle does no harm, and the
// part is halved where the area has a kink.
func (s Solid) Measure(grindMM float64) Measures {
	m := Measures{
		Bounds:   s.Outline.Bounds(),
		Channels: make([]ChannelMeasure, len(s.Recesses)),
		Beds:     make([]BedMeasure, len(s.Beds)),
	}
	s.measureLengths(&m)
	b := s.body
	if b == nil || b.outline == nil {
		if len(s.Outline) == 0 {
			m.Bounds = geom.Box{}
		}
		return m
	}
	if curves := b.curves[wholeTop]; len(curves) > 0 { // flattened, which keeps areas, they reach a little too far
		m.Bounds = geom.EmptyBox()
		for _, c := range curves {
			m.Bounds = m.Bounds.Union(c.Bounds())
		}
	}
	w := drawers.Get().(*drawer)
	defer drawers.Put(w)
	plan := s.plan(w)
	face := s.measurePlan(&m, plan)
	s.measureBeds(&m, w)
	s.integrate(&m, plan)
	if grind := clamp(grindMM, 0, reach); grind > 0 {
		if len(b.profiles) > 0 {
			b.add(w, b.thickness, b.thickness)
			area := 0.0
			for _, p := range w.sweep.Parts() {
				if p.Layers&(setConcrete|setGone) == setConcrete {
					area += p.Area
				}
			}
			if !w.sweep.Spent() {
				face = area
			}
		}
		m.GrindVolume = face * grind
	}
	return m
}

// measureLengths adds up what is measured along curves.
func (s Solid) measureLengths(m *Measures) {
	for _, side := range s.Sides {
		m.OutlinePerimeter += side.Length
		if side.Wall {
			m.WallLength += side.Length
		} else {
			m.SeenLength += side.Length
		}
	}
	m.CutoutPerimeter = s.cutoutPerimeter()
	for i, r := range s.Recesses {
		m.Channels[i].Length = r.length
	}
}

// plan sweeps the plan once; the parts are kept. Of an outline that can't be swept
// it is the area that its points give.
func (s Solid) plan(w *drawer) []geom.Part {
	s.body.addPlan(w)
	parts := slices.Clone(w.sweep.Parts())
	if w.sweep.Spent() {
		area := math.Abs(s.Outline.Area())
		return []geom.Part{{Layers: setConcrete, Area: area, Moment: s.Outline.Bounds().Centre().Mul(area)}}
	}
	return parts
}

// measurePlan fills in what the plan says, and gives the area less openings.
func (s Solid) measurePlan(m *Measures, plan []geom.Part) (net float64) {
	moments := make([]geom.Vec, len(m.Channels))
	for _, p := range plan {
		if p.Layers&setConcrete == 0 {
			continue
		}
		m.PlanArea += p.Area
		if p.Layers&setGone != 0 {
			continue
		}
		m.NetArea += p.Area
		if k := firstChannel(p.Layers); k >= 0 {
			m.Channels[k].Area += p.Area
			moments[k] = moments[k].Add(p.Moment)
			if s.Recesses[k].Fill.Resin {
				m.ResinArea += p.Area
			}
		}
	}
	for k := range m.Channels {
		if c := &m.Channels[k]; c.Area > 1e-9 {
			c.AreaCentroid = moments[k].Mul(1 / c.Area)
		}
	}
	return m.NetArea
}

// firstChannel is the first channel of a set of layers, -1 for none: where
// channels overlap, it keeps the space.
func firstChannel(layers uint64) int {
	for k := layerChannel; layers>>k != 0; k++ {
		if layers>>k&1 != 0 {
			return k - layerChannel
		}
	}
	return -1
}

// measureBeds measures the glass beds on the top, less openings and channels.
// Where beds overlap, the first one keeps the area.
func (s Solid) measureBeds(m *Measures, w *drawer) {
	if len(s.Beds) == 0 {
		return
	}
	b := s.body
	none := func(design.Profile) float64 { return 0 }
	w.sweep.Reset(b.centre)
	w.outline(b.outline, layerWhole, layerGone, none)
	for _, o := range b.openings {
		w.opening(o, layerGone, none)
	}
	for _, c := range b.recesses {
		if c.depth <= 0 {
			continue
		}
		for _, l := range c.loops {
			w.sweep.Add(layerGone, l)
		}
	}
	for i, bed := range s.Beds {
		for _, l := range bed.Loops {
			w.sweep.Add(layerChannel+i, l)
		}
	}
	moments := make([]geom.Vec, len(s.Beds))
	parts := w.sweep.Parts()
	if w.sweep.Spent() {
		return
	}
	for _, p := range parts {
		if p.Layers&(setConcrete|setGone) != setConcrete {
			continue
		}
		if k := firstChannel(p.Layers); k >= 0 {
			m.Beds[k].Area += p.Area
			moments[k] = moments[k].Add(p.Moment)
		}
	}
	for k := range m.Beds {
		if a := m.Beds[k].Area; a > 1e-9 {
			m.Beds[k].Centroid = moments[k].Mul(1 / a)
		}
	}
}

// volume gathers integrals over the height.
type volume struct {
	uncut    bool // no profile was cut
	concrete float64
	moment   [3]float64 // of the concrete
	channels []channelVolume
}

type channelVolume struct {
	v      float64
	moment [3]float64
}

func (s Solid) integrate(m *Measures, plan []geom.Part) {
	v := s.body.integrate(plan, len(s.Recesses))
	m.ConcreteVolume, m.Uncut = v.concrete, v.uncut
	for i := range 3 {
		if v.concrete > 0 {
			m.ConcreteCentroid[i] = v.moment[i] / v.concrete
		}
	}
	var resin [3]float64
	for k, c := range v.channels {
		m.Channels[k].Volume = c.v
		for i := range resin {
			if c.v > 1e-9 {
				m.Channels[k].Centroid[i] = c.moment[i] / c.v
			}
		}
		if !s.Recesses[k].Fill.Resin {
			m.EmptyVolume += c.v
			continue
		}
		m.ResinVolume += c.v
		for i := range resin {
			resin[i] += c.moment[i]
		}
	}
	if m.ResinVolume > 0 {
		for i := range resin {
			m.ResinCentroid[i] = resin[i] / m.ResinVolume
		}
	}
	m.ConcreteVolume = math.Max(0, m.ConcreteVolume)
}
