// Package slab turns a design into the solid of its top and measures it.
//
// [Resolve] gives every part its place and its exact curves, flattened to
// [Tolerance] with their area kept, and notes what can't be as drawn.
// [Validate] adds the values that are out of range.
//
// The solid is known by its sections: [Solid.Section] is the plan region of
// concrete at a height, which is the outline drawn in by each edge's profile, less
// the openings (each grown by its arris profile) and less every channel that is
// deeper there. Each thing is removed once, because what is removed is united
// first. [Solid.Measure] integrates the sections' area over the height, so no case
// of overlap needs a rule of its own.
//
// "Drawn in" is by distance: at height z a point is gone when it lies nearer to
// an edge than that edge's [Inset], straight in front of it on its inner side or
// round one of its ends; what lies behind an edge, across a gap, is not near it.
// Around a sharp inside corner the cut is
// therefore round (the parallel body of Steiner), and at a corner between two
// profiles each edge cuts to its own distance. An opening with an arris profile
// grows outward in the same way, round at its corners.
//
// # How a section is cut
//
// The outline and each opening are a ring: a closed chain whose vertices know
// their place on the parallel at any distance. What an edge's profile takes off is
// a strip, a sum of quadrangles and fans that all run counter-clockwise, so that a
// sweep by winding numbers unites them without ever finding an intersection by
// itself (drawin.go). Where a strip's back folds over, because the inset exceeds a
// bend's radius, it goes through the bend instead.
//
// # How the height is divided
//
// Profiles and channels start at certain heights; between them the area is
// smooth but for the vertical tangent of a quarter circle at the face, which points
// set by the square root of the depth take out (integrate.go). What the insets
// take off evenly is integrated in closed form; the rest is small.
//
// # Accuracy
//
// Against closed forms (Steiner, Pappus) 1e-8 or better; against GEOS, sections of
// random tops to 1e-6 of the area; against OpenCascade and finer sections of some
// hundred tops 5e-7 of the volume. Where curves cross, some hundredths of a square
// millimetre are lost or gained, which tells on small crescents alone. The tests
// name their sources.
package slab
