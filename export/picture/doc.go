// Package picture makes the photo-like picture of a top: its solid with edges
// that catch the light, basin and taps in place, resin with depth, under soft
// studio light. It is pure Go and gives the same bytes for the same design,
// view and seed, whatever the number of threads.
//
// Light is smooth and material is not: light is traced at a part of the
// picture's resolution and filtered there (light.go), while material, edges,
// mirrors and resin are shaded for each pixel (pixel.go). A plain path tracer
// of the same scene (reference.go) is the measure that the quick method is held
// to.
//
// Lengths are millimetres in the design's axes, z = 0 the underside of the
// top. Colours are linear sRGB; the film writes them as sRGB.
package picture
