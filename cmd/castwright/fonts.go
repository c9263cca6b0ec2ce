package main

import (
	_ "unsafe" // for go:linkname

	"fyne.io/fyne/v2"
	"github.com/go-text/typesetting/shaping"
)

// shaper is the toolkit's own, which sets all text. Its text library keeps a plan
// for every font that it has ever met, and the toolkit reads all its fonts anew
// when the theme changes: 3 MB a time that nothing gives back.
//
//go:linkname shaper fyne.io/fyne/v2/internal/painter.shaper
var shaper *shaping.HarfbuzzShaper

// forgetFonts has the toolkit forget the fonts that a change of the theme has put
// away. It is only called on the main goroutine, where all text is set. Where the
// toolkit's next version has no such shaper this does nothing, and the test of
// the window's memory fails.
func forgetFonts(fyne.Settings) {
	if shaper != nil {
		*shaper = shaping.HarfbuzzShaper{}
	}
}
