// Package geom is plane geometry in float64 millimetres: vectors, boxes, exact
// curves (line, circular arc, cubic, ellipse arc), their flattening to a stated
// tolerance, loops and regions, and the measuring of any boolean combination of
// regions by a sweep. It knows no concrete.
package geom
