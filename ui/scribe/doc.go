// Package scribe is the small table in which a wall's measured offsets are typed
// or pasted. The drawing shows them at once; Apply makes them one step of undo,
// Esc takes them back.
package scribe
