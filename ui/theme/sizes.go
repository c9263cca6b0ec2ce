package theme

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// The grid: every distance in the window is one of these, in points.
const (
	Gap     = 4  // between things that belong together
	Space   = 8  // around things and between groups
	Section = 16 // between sections
)

// Target is the least side of what is clicked or touched, above the 24 points of
// WCAG 2.2, success criterion 2.5.8.
const Target = 28

// The sizes of type, in points.
const (
	Caption = 11 // what explains
	Body    = 13 // everything else
	Heading = 15 // of a section or dialog
	Figure  = 20 // the number that counts
)

var sizes = map[fyne.ThemeSizeName]float32{
	theme.SizeNamePadding:            Gap,
	theme.SizeNameInnerPadding:       5, // makes an entry 27 high
	theme.SizeNameLineSpacing:        2,
	theme.SizeNameCaptionText:        Caption,
	theme.SizeNameText:               Body,
	theme.SizeNameSubHeadingText:     Heading,
	theme.SizeNameHeadingText:        Figure,
	theme.SizeNameInlineIcon:         18,
	theme.SizeNameScrollBar:          12,
	theme.SizeNameScrollBarSmall:     4,
	theme.SizeNameScrollBarRadius:    4,
	theme.SizeNameSeparatorThickness: 1,
	theme.SizeNameInputBorder:        1,
	theme.SizeNameInputRadius:        4,
	theme.SizeNameSelectionRadius:    4,
	theme.SizeNameButtonRadius:       4,
	theme.SizeNameCardRadius:         4,
	theme.SizeNameMenuRadius:         4,
	theme.SizeNamePopupRadius:        8,
	theme.SizeNameDialogRadius:       8,
	// A blur behind dialogs costs a full-window layer each frame where the
	// picture is drawn in software.
	theme.SizeNameModalBlurRadius: 0,
}
