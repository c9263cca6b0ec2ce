// Package first sets what the toolkit reads from the environment while it is
// initialised, and how much memory the program may waste. Packages are initialised
// in the order of their import paths, as far as their imports allow (Go
// specification, "Program initialization"): this one imports nothing that the
// toolkit does not need too, and comes before it.
package first

import (
	"os"
	"runtime/debug"
)

// textureLife is how long the toolkit keeps the picture of a text that is no
// longer seen. By itself it keeps them for a minute, and the numbers that follow
// a hand then take a quarter of a gigabyte. From 10 s down it would walk through
// the whole window at each of its ticks to keep what is seen.
const textureLife = "12s"

// garbage is how much the heap grows before what is not used any more is
// collected, in hundredths of what is used. The runtime's own 100 would hold some
// 60 MB more in a window at work; the collector stays below 1 % of the time.
const garbage = 50

func init() {
	if _, set := os.LookupEnv("FYNE_CACHE"); !set {
		os.Setenv("FYNE_CACHE", textureLife)
	}
	if _, set := os.LookupEnv("GOGC"); !set {
		debug.SetGCPercent(garbage)
	}
}
