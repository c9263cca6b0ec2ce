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
	Turn         ID = "turn"

	Beneath    ID = "beneath"
	PartsList  ID = "parts-list"
	Lock       ID = "lock"
	UnlockAll  ID = "unlock-all"
	Hide       ID = "hide"
	ShowHidden ID = "show-hidden"
	KeepTo     ID = "keep-to"
	CutKept    ID = "cut-kept"
)

// copying is what the menu Edit has for parts.
var copying = []Action{
	{ID: SelectAll, Menu: "Edit", Name: "Select all parts", Key: Key{fyne.KeyA, Ctrl}, Group: true,
		Does: "Selects every part that is neither locked nor hidden; Shift and a click adds or takes away one."},
	{ID: Copy, Menu: "Edit", Name: "Copy parts", Key: Key{fyne.KeyC, Ctrl}, Group: true,
		Does: "Keeps a copy of the selected parts, for this option, another, or another job."},
	{ID: Cut, Menu: "Edit", Name: "Cut parts", Key: Key{fyne.KeyX, Ctrl},
		Does: "Takes the selected parts out and keeps a copy of them."},
	{ID: Paste, Menu: "Edit", Name: "Paste parts", Key: Key{fyne.KeyV, Ctrl},
		Does: "Puts the copied parts into the option in hand: where they were, or beside."},
}

// arranging is the menu of what is done to parts among each other.
var arranging = []Action{
	{ID: PartsList, Menu: "Arrange", Name: "List of parts", Key: Key{fyne.KeyP, Ctrl | alt},
		Does: "Opens or closes the list of all parts in the panel, to select, lock or hide them by name."},
	{ID: Beneath, Menu: "Arrange", Name: "Select what is under", Key: Key{fyne.KeyPageDown, 0},
		Does: "Selects what lies under the mouse or under what is selected, one thing deeper each time; Alt and a click does the same."},
	{ID: Lock, Menu: "Arrange", Name: "Lock", Key: Key{fyne.KeyL, Ctrl | alt}, Group: true,
		Does: "Keeps the hand off the selected parts: they are neither moved, changed nor removed until they are unlocked, by the same key."},
	{ID: UnlockAll, Menu: "Arrange", Name: "Unlock all parts", Key: Key{fyne.KeyL, Ctrl | alt | shift},
		Does: "Unlocks every part of the option."},
	{ID: Hide, Menu: "Arrange", Name: "Hide on the drawing", Key: Key{fyne.KeyH, Ctrl | alt},
		Does: "Leaves the selected parts out on the drawing; they are still cast, counted, priced and printed."},
	{ID: ShowHidden, Menu: "Arrange", Name: "Show all hidden parts", Key: Key{fyne.KeyH, Ctrl | alt | shift},
		Does: "Shows every hidden part of the option again."},
	{ID: KeepTo, Menu: "Arrange", Name: "Keep to…", Key: Key{fyne.KeyK, Ctrl | alt}, Group: true,
		Does: "Offers what the selected part can keep to when the top changes: a middle, a line, a distance, an edge."},
	{ID: CutKept, Menu: "Arrange", Name: "Cut relations", Key: Key{fyne.KeyK, Ctrl | alt | shift},
		Does: "Cuts all that the selected parts keep to; they stay where they are."},
	{ID: AlignLeft, Menu: "Arrange", Name: "Align left edges", Key: Key{fyne.KeyLeft, Ctrl | alt}, Group: true,
		Does: "Brings the left edges of the selected parts to the leftmost."},
	{ID: AlignCentre, Menu: "Arrange", Name: "Align centres, left to right", Key: Key{fyne.KeyC, Ctrl | alt},
		Does: "Brings the selected parts onto one line from front to back."},
	{ID: AlignRight, Menu: "Arrange", Name: "Align right edges", Key: Key{fyne.KeyRight, Ctrl | alt},
		Does: "Brings the right edges of the selected parts to the rightmost."},
	{ID: AlignFront, Menu: "Arrange", Name: "Align fronts", Key: Key{fyne.KeyDown, Ctrl | alt},
		Does: "Brings the fronts of the selected parts to the foremost."},
	{ID: AlignMiddle, Menu: "Arrange", Name: "Align middles, front to back", Key: Key{fyne.KeyR, Ctrl | alt},
		Does: "Brings the selected parts onto one line from left to right."},
	{ID: AlignBack, Menu: "Arrange", Name: "Align backs", Key: Key{fyne.KeyUp, Ctrl | alt},
		Does: "Brings the backs of the selected parts to the hindmost."},
	{ID: SpreadAcross, Menu: "Arrange", Name: "Equal gaps, left to right", Key: Key{fyne.KeyG, Ctrl | alt}, Group: true,
		Does: "Makes the gaps between three or more selected parts equal; the outermost stay."},
	{ID: SpreadDeep, Menu: "Arrange", Name: "Equal gaps, front to back", Key: Key{fyne.KeyG, Ctrl | alt | shift},
		Does: "Makes the gaps between three or more selected parts equal; the outermost stay."},
	{ID: MirrorPart, Menu: "Arrange", Name: "Mirror the parts", Key: Key{fyne.KeyM, Ctrl | alt}, Group: true,
		Does: "Turns the selected parts left to right where they are."},
	{ID: Turn, Menu: "Arrange", Name: "Turn by an angle…", Key: Key{fyne.KeyT, Ctrl | alt},
		Does: "Turns the selected parts together by the degrees that you type, counter-clockwise."},
}
