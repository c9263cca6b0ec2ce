// Package coach shows a maker who begins a first job what to do, on the drawing
// itself: a few notes that point to where a hand goes next. Each goes away once
// what it speaks of has been done, or when it is put away, and does not come back
// by itself.
package coach
