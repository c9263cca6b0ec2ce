package slab

import "example.org/castwright/model/geom"

// Measures is what a solid amounts to, in millimetres and their powers.
type Measures struct {
	PlanArea         float64 // inside the outline, nothing taken off
	NetArea          float64 // less the openings
	OutlinePerimeter float64 // along the exact curves
	SeenLength       float64 // of the outline, seen edges
	WallLength       float64 // of the outline, wall edges
	CutoutPerimeter  float64 // of sink cut-outs and holes, where they bound the top

	ConcreteVolume   float64    // the solid by its sections, glass beds counted as concrete
	ConcreteCentroid [3]float64 // x, y, z
	Uncut            bool       // the edges cross each other too often: profiles are left out of the volume

	ResinVolume   float64 // space of all resin-filled channels on the top, each point once
	ResinCentroid [3]float64
	ResinArea     float64 // plan area of resin-filled channels on the top
	EmptyVolume   float64 // space of channels that are left empty

	Channels []ChannelMeasure
	Beds     []BedMeasure

	// GrindVolume is what the grind takes off the face: the grind times the area of
	// the section at the face, with openings and profiles cut and channels not.
	GrindVolume float64
	Bounds      geom.Box // of the outline, its corners treated, by the exact curves
}

// ChannelMeasure is one channel's share; where channels overlap the first one
// that is deep enough keeps the space.
type ChannelMeasure struct {
	Area         float64  // plan area on the top
	AreaCentroid geom.Vec // of that area
	Volume       float64
	Centroid     [3]float64 // of the volume
	Length       float64    // of all its centrelines
}

// BedMeasure is one glass bed on the top, less openings and channels; where beds
// overlap the first one keeps the area.
type BedMeasure struct {
	Area     float64
	Centroid geom.Vec
}
