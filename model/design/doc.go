// Package design holds the document: a [Job] with its [Option]s, each of them
// one [Design] of a top.
//
// A design is an immutable value. Nothing changes a design in place; an edit
// (package edit) clones the slices that it touches and returns a new value, so
// undo is keeping the old one and two versions share all that is equal.
// Readers must never write into a slice that they reach through a Design.
//
// An invalid design can exist, be drawn and be explained: constructors never
// fail, nothing is silently mended, and [Design.Validate] lists every [Fault]
// with its place.
//
// Axes: x to the right, y toward the back wall, z up, as the client sees the
// top from above. Outlines run counter-clockwise.
package design
