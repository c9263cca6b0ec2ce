// Package slab turns a design into the solid of its top and measures it.
//
// [Resolve] gives every part its place and its exact curves, flattened to
// [Tolerance]. The solid is then known by its sections: Section(z) is the plan
// region of concrete at height z, which is the outline drawn in by each edge's
// profile, less the openings (each grown by its arris profile) and less every
// channel deeper than z. Each thing is removed once, because what is removed is
// united first. Volume is the integral of section area over z, so no case of
// overlap needs a rule of its own.
//
// "Drawn in" is by distance: at height z a point is gone when it lies nearer to
// an edge than that edge's Inset(z). Around a sharp inside corner the cut is
// therefore round (the parallel body of Steiner), and at a corner between two
// profiles each edge cuts to its own distance.
package slab
