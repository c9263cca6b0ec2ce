// Package picture makes the photo-like picture of a top: its solid with edges
// that catch the light, basin and taps in place, resin with depth, under soft
// studio light. It is pure Go and gives the same bytes for the same design,
// view and seed, whatever the number of threads.
//
// Build turns a design into a Set: the concrete as a signed distance (body.go,
// channel.go, broken.go), basins, taps and furniture as meshes in a tree of boxes
// (mesh.go, bvh.go, basin.go, furniture.go), materials that are functions of
// millimetres (concrete.go, stone.go, bed.go, resin.go, bank.go, chip.go,
// surface.go) and softboxes (softbox.go, lobe.go, scene.go). Render takes a picture
// of it.
//
// Light is smooth and material is not: light is traced at a part of the
// picture's resolution and filtered there (gather.go, light.go), while material,
// edges, mirrors and resin are shaded for each pixel (pixel.go, guess.go, render.go). A
// plain path tracer of the same scene (reference.go) is the measure that the
// quick method is held to.
//
// The light is levelled so that a matt face has the brightness of the design's
// colour, as it has in the sketch of package look. Lengths are millimetres in the
// design's axes, z = 0 the underside of the top. Colours are linear sRGB; the
// film writes them as sRGB (IEC 61966-2-1).
package picture
