// Package geom is plane geometry in float64 millimetres. It knows no concrete.
//
// # Curves
//
// A [Curve] is exact: [Line], [Arc], [Cubic], [EllipseArc] and [Parallel], which
// runs beside any of them. [Fillet] and [Chamfer] cut the corner of any two.
// [Natural] and [Monotone] are the splines of a [Band], a river.
//
// # Flattening
//
// [Flatten] turns a curve into a polyline that strays from it by no more than a
// tolerance and keeps its area, so that areas of flattened regions carry no bias.
// Each vertex also knows where it moves to on the curve's parallels.
//
// # Regions
//
// A [Loop] is a closed polyline. A [Sweep] takes any number of loops and open
// chains on up to 64 layers and gives, in one pass, the area and moments of every
// combination of layers ([Sweep.Parts]) or the boundary of one ([Sweep.Loops]).
// A point belongs to a layer where its winding number there is not zero, so pieces
// of a layer may overlap. There is no case that fails; see [Sweep] on the time.
//
// A [Fence] answers questions of place: inside or outside, where a ray meets it,
// what is nearest, how much room there is between two.
//
// # Axes
//
// x to the right and y up; counter-clockwise is positive; left of the direction of
// travel is inside a counter-clockwise loop.
package geom
