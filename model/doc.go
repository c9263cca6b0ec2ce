// Package model is the root of the domain: it holds no code, only this map and
// the import law (layers_test.go).
//
// # Axes and units
//
// Every top is described as it lies in the client's room, seen from above:
// x to the right, y toward the back wall, z up. z = 0 is the underside and
// z = thickness is the face. Outlines run counter-clockwise.
//
// A length in a design, in a file and at every API edge is an exact integer of
// nanometres, [units.Length]. The engine computes in float64 millimetres,
// newtons, megapascals (N/mm2) and kilograms. Money is decimal.
//
// # Rooms, from the ground up
//
//	units     lengths, angles, shares; reading and writing them as people do
//	geom      vectors, exact curves, flattening, measuring regions
//	material  mixes, resin, glass, pipes: property tables with their sources
//	design    the job, its options, the design of a top: values and faults
//	edit      named edits, Design -> (Design, error), starters, history
//	slab      the solid of a top by its sections, and where things lie on it
//	edging    the names of edges, and their finish in words
//	takeoff   amounts: mix, water, bags, resin, glass, weight, cost
//	warn      limits with sources, and the rules that compare a top with them
//	report    Derive(Design) -> Report: the one source of numbers
//	scene     a page of fills, strokes and texts: the one source of pictures
//	look      how materials look: stone, grains, resin, glass, edges
//	draw      design and report -> scene pages
//	store     JSON codec, schema check, atomic files
//
// Beside these:
//
//	amount    quantities and money in words
//	lift      what people may lift
//	stroke    a freehand stroke -> a river of few nodes
//	template  outlines from SVG and DXF
//	clip      copied parts as text
//	book      the maker's parts to keep
//	terms     what is included, what is not, care
//	change    what was done between two states of a design
//	canon     canonical JSON, which a fingerprint is taken of
//	approve   revisions frozen as agreed, and what changed since
//	pose      the camera of a photograph from four corners
package model
