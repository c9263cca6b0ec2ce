// Package stroke fits what the maker draws freehand: a stroke of many jittered
// points becomes a river's centreline of few nodes, a natural cubic spline that
// stays within a stated tolerance of the stroke.
package stroke
