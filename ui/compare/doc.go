// Package compare shows two options side by side, or one as it is beside the same as
// it was approved. Both are looked at together: what zooms or moves one does the same
// to the other (lock.go). They are drawings to scale or photo-like pictures, which come
// in the background and grow clearer (shots.go), and may lie over each other with a
// line that wipes from one to the other (wipe.go). What differs is marked, and listed
// in the words of packages change and draw.
package compare
