package theme

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// Colours that the toolkit has no name for.
const (
	Surface  fyne.ThemeColorName = "castwright-surface"  // of panels and cards
	Muted    fyne.ThemeColorName = "castwright-muted"    // text that explains
	Selected fyne.ThemeColorName = "castwright-selected" // ground of what is chosen
	Note     fyne.ThemeColorName = "castwright-note"     // the mildest warnings
	Ground   fyne.ThemeColorName = "castwright-ground"   // behind pictures of tops
	Veil     fyne.ThemeColorName = "castwright-veil"     // behind words that lie on a picture
)

type palette map[fyne.ThemeColorName]color.NRGBA

func grey(v uint8) color.NRGBA { return color.NRGBA{v, v, v, 0xff} }

func rgb(hex uint32) color.NRGBA {
	return color.NRGBA{uint8(hex >> 16), uint8(hex >> 8), uint8(hex), 0xff}
}

func (c palette) with(name fyne.ThemeColorName, alpha uint8) color.NRGBA {
	x := c[name]
	x.A = alpha
	return x
}

// light and dark hold a contrast of at least 4.5 between text and what it stands
// on, and of 3 for borders and marks (WCAG 2.2, 1.4.3 and 1.4.11).
var (
	light = palette{
		theme.ColorNameBackground:          grey(0xf3),
		Surface:                            grey(0xfb),
		theme.ColorNameHeaderBackground:    grey(0xe9),
		theme.ColorNameMenuBackground:      grey(0xff),
		theme.ColorNameOverlayBackground:   grey(0xfb),
		theme.ColorNameInputBackground:     grey(0xff),
		theme.ColorNameInputBorder:         grey(0x8c),
		theme.ColorNameButton:              grey(0xe4),
		theme.ColorNameDisabledButton:      grey(0xea),
		theme.ColorNameSeparator:           grey(0xda),
		theme.ColorNameForeground:          grey(0x1c),
		Muted:                              grey(0x5a),
		theme.ColorNamePlaceHolder:         grey(0x62),
		theme.ColorNameDisabled:            grey(0x62),
		theme.ColorNamePrimary:             rgb(0x09627a),
		theme.ColorNameForegroundOnPrimary: grey(0xff),
		theme.ColorNameError:               rgb(0xae2219),
		theme.ColorNameForegroundOnError:   grey(0xff),
		theme.ColorNameWarning:             rgb(0x855400),
		theme.ColorNameForegroundOnWarning: grey(0xff),
		theme.ColorNameSuccess:             rgb(0x2b6732),
		theme.ColorNameForegroundOnSuccess: grey(0xff),
		Note:                               rgb(0x41566b),
		Ground:                             grey(0xb9),
		theme.ColorNameScrollBar:           {0, 0, 0, 0x66},
		theme.ColorNameScrollBarBackground: {0, 0, 0, 0x10},
		theme.ColorNameHover:               {0, 0, 0, 0x12},
		theme.ColorNamePressed:             {0, 0, 0, 0x22},
		theme.ColorNameShadow:              {0, 0, 0, 0x48},
	}
	dark = palette{
		theme.ColorNameBackground:          grey(0x22),
		Surface:                            grey(0x2a),
		theme.ColorNameHeaderBackground:    grey(0x32),
		theme.ColorNameMenuBackground:      grey(0x2e),
		theme.ColorNameOverlayBackground:   grey(0x2e),
		theme.ColorNameInputBackground:     grey(0x1a),
		theme.ColorNameInputBorder:         grey(0x7a),
		theme.ColorNameButton:              grey(0x3a),
		theme.ColorNameDisabledButton:      grey(0x30),
		theme.ColorNameSeparator:           grey(0x3e),
		theme.ColorNameForeground:          grey(0xee),
		Muted:                              grey(0xb8),
		theme.ColorNamePlaceHolder:         grey(0x9e),
		theme.ColorNameDisabled:            grey(0xa2),
		theme.ColorNamePrimary:             rgb(0x5fc0d8),
		theme.ColorNameForegroundOnPrimary: rgb(0x06242c),
		theme.ColorNameError:               rgb(0xf5938b),
		theme.ColorNameForegroundOnError:   rgb(0x2b0704),
		theme.ColorNameWarning:             rgb(0xe8b65c),
		theme.ColorNameForegroundOnWarning: rgb(0x2a1a00),
		theme.ColorNameSuccess:             rgb(0x8fcb95),
		theme.ColorNameForegroundOnSuccess: rgb(0x06200a),
		Note:                               rgb(0xa9bdd0),
		Ground:                             grey(0x52),
		theme.ColorNameScrollBar:           {0xff, 0xff, 0xff, 0x66},
		theme.ColorNameScrollBarBackground: {0xff, 0xff, 0xff, 0x10},
		theme.ColorNameHover:               {0xff, 0xff, 0xff, 0x14},
		theme.ColorNamePressed:             {0xff, 0xff, 0xff, 0x26},
		theme.ColorNameShadow:              {0, 0, 0, 0x80},
	}
)

func init() {
	for _, c := range []palette{light, dark} {
		c[theme.ColorNameHyperlink] = c[theme.ColorNamePrimary]
		c[theme.ColorNameFocus] = c.with(theme.ColorNamePrimary, 0x55)
		c[theme.ColorNameSelection] = c.with(theme.ColorNamePrimary, 0x44)
		c[Selected] = c.with(theme.ColorNamePrimary, 0x24)
		c[Veil] = c.with(theme.ColorNameBackground, 0xd8)
		c[theme.ColorNameInnerWindowBorder] = c[theme.ColorNameSeparator]
		c[theme.ColorNameInnerWindowBorderInactive] = c[theme.ColorNameSeparator]
	}
}
