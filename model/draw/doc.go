// Package draw turns a design and its report into scene pages: the plan on the
// board, the sheet that the client takes home, thumbnails and comparisons. It
// paints nothing itself; package raster and the other writers do.
package draw
