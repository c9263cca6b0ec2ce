package slab

import "math"

// Measure reckons what the solid amounts to; grindMM is what grinding takes off
// the face, in millimetres.
func (s Solid) Measure(grindMM float64) Measures {
	var m Measures
	m.PlanArea = math.Abs(s.Outline.Area())
	m.NetArea = m.PlanArea
	m.Bounds = s.Outline.Bounds()
	for _, side := range s.Sides {
		m.OutlinePerimeter += side.Length
		if side.Wall {
			m.WallLength += side.Length
		} else {
			m.SeenLength += side.Length
		}
	}
	for _, o := range s.Openings {
		m.NetArea -= o.Loop.Area()
		m.CutoutPerimeter += o.Perimeter
	}
	m.ConcreteVolume = m.NetArea * s.Thickness
	for _, r := range s.Recesses {
		var c ChannelMeasure
		for _, l := range r.Loops {
			c.Area += l.Area()
		}
		c.Volume = c.Area * r.Depth
		for _, line := range r.Centrelines {
			for i := 1; i < len(line); i++ {
				c.Length += line[i].Dist(line[i-1])
			}
		}
		m.ConcreteVolume -= c.Volume
		if r.Fill.Resin {
			m.ResinVolume += c.Volume
			m.ResinArea += c.Area
		} else {
			m.EmptyVolume += c.Volume
		}
		m.Channels = append(m.Channels, c)
	}
	for _, b := range s.Beds {
		var bm BedMeasure
		for _, l := range b.Loops {
			bm.Area += l.Area()
			bm.Centroid = l.Centroid()
		}
		m.Beds = append(m.Beds, bm)
	}
	c := s.Outline.Centroid()
	m.ConcreteCentroid = [3]float64{c.X, c.Y, s.Thickness / 2}
	m.GrindVolume = m.NetArea * grindMM
	return m
}
