package keys

import "fyne.io/fyne/v2"

// What is done to several parts at once.
const (
	Copy         ID = "copy"
	Cut          ID = "cut"
	Paste        ID = "paste"
	SelectAll    ID = "select-all"
	AlignLeft    ID = "align-left"
	AlignCentre  ID = "align-centre"
	AlignRight   ID = "align-right"
	AlignFront   ID = "align-front"
	AlignMiddle  ID = "align-middle"
	AlignBack    ID = "align-back"
	SpreadAcross ID = "spread-across"
	SpreadDeep   ID = "spread-deep"
)

// arranging is what the menu Edit has for parts among each other.
var arranging = []Action{
	{ID: SelectAll, Menu: "Edit", Name: "Select all parts", Key: Key{fyne.KeyA, Ctrl}, Group: true,
		Does: "Selects every part of the top; Shift and a click adds or takes away one."},
	{ID: Copy, Menu: "Edit", Name: "Copy parts", Key: Key{fyne.KeyC, Ctrl}, Group: true,
		Does: "Keeps a copy of the selected parts, for this option or another."},
	{ID: Cut, Menu: "Edit", Name: "Cut parts", Key: Key{fyne.KeyX, Ctrl},
		Does: "Takes the selected parts out and keeps a copy of them."},
	{ID: Paste, Menu: "Edit", Name: "Paste parts", Key: Key{fyne.KeyV, Ctrl},
		Does: "Puts the copied parts into the option in hand: where they were, or beside."},
	{ID: AlignLeft, Menu: "Edit", Name: "Align left edges", Key: Key{fyne.KeyLeft, Ctrl | alt}, Group: true,
		Does: "Brings the left edges of the selected parts to the leftmost."},
	{ID: AlignCentre, Menu: "Edit", Name: "Align centres, left to right", Key: Key{fyne.KeyC, Ctrl | alt},
		Does: "Brings the selected parts onto one line from front to back."},
	{ID: AlignRight, Menu: "Edit", Name: "Align right edges", Key: Key{fyne.KeyRight, Ctrl | alt},
		Does: "Brings the right edges of the selected parts to the rightmost."},
	{ID: AlignFront, Menu: "Edit", Name: "Align fronts", Key: Key{fyne.KeyDown, Ctrl | alt},
		Does: "Brings the fronts of the selected parts to the foremost."},
	{ID: AlignMiddle, Menu: "Edit", Name: "Align middles, front to back", Key: Key{fyne.KeyR, Ctrl | alt},
		Does: "Brings the selected parts onto one line from left to right."},
	{ID: AlignBack, Menu: "Edit", Name: "Align backs", Key: Key{fyne.KeyUp, Ctrl | alt},
		Does: "Brings the backs of the selected parts to the hindmost."},
	{ID: SpreadAcross, Menu: "Edit", Name: "Equal gaps, left to right", Key: Key{fyne.KeyG, Ctrl | alt}, Group: true,
		Does: "Makes the gaps between three or more selected parts equal; the outermost stay."},
	{ID: SpreadDeep, Menu: "Edit", Name: "Equal gaps, front to back", Key: Key{fyne.KeyG, Ctrl | alt | shift},
		Does: "Makes the gaps between three or more selected parts equal; the outermost stay."},
}
