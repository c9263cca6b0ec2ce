package keys

import (
	"slices"

	"fyne.io/fyne/v2"
)

// ID names an action.
type ID string

// The actions.
const (
	NewJob        ID = "new-job"
	Open          ID = "open"
	Recent        ID = "recent"
	Save          ID = "save"
	SaveAs        ID = "save-as"
	ExportPicture ID = "export-picture"
	ExportText    ID = "export-text"
	ExportJSON    ID = "export-json"
	JobSettings   ID = "job-settings"
	Quit          ID = "quit"

	Undo       ID = "undo"
	Redo       ID = "redo"
	Duplicate  ID = "duplicate"
	Remove     ID = "remove"
	SelectTop  ID = "select-top"
	SelectNone ID = "select-none"
	Mirror     ID = "mirror"

	Fit        ID = "fit"
	ZoomIn     ID = "zoom-in"
	ZoomOut    ID = "zoom-out"
	ZoomActual ID = "zoom-actual"
	Dimensions ID = "dimensions"
	Textures   ID = "textures"
	Supports   ID = "supports"
	Grid       ID = "grid"
	PanTool    ID = "pan"
	StepByZoom ID = "step-by-zoom"
	Step1      ID = "step-1"
	Step2      ID = "step-2"
	Step3      ID = "step-3"
	Step4      ID = "step-4"
	Step5      ID = "step-5"
	Units      ID = "units"
	Theme      ID = "theme"
	FullScreen ID = "full-screen"
	Showing    ID = "showing"

	PartShape    ID = "part-shape"
	PartEdge     ID = "part-edge"
	PartSink     ID = "part-sink"
	PartTaps     ID = "part-taps"
	PartHole     ID = "part-hole"
	PartChannel  ID = "part-channel"
	PartGlass    ID = "part-glass"
	PartFinish   ID = "part-finish"
	PartSupports ID = "part-supports"

	OptionNew       ID = "option-new"
	OptionDuplicate ID = "option-duplicate"
	OptionRename    ID = "option-rename"
	OptionLeft      ID = "option-left"
	OptionRight     ID = "option-right"
	OptionRemove    ID = "option-remove"
	OptionNext      ID = "option-next"
	OptionPrevious  ID = "option-previous"
	Compare         ID = "compare"

	ApprovalSheet    ID = "approval-sheet"
	ExportComparison ID = "export-comparison"
	Letterhead       ID = "letterhead"
	MarkApproved     ID = "mark-approved"
	ShowApproved     ID = "show-approved"

	Lessons ID = "lessons"
	Actions ID = "actions"
	About   ID = "about"
)

// Guard says what an action may meet.
type Guard uint8

// The guards.
const (
	// Settles first hands over what is being typed, then acts. It waits while
	// a dialog is open.
	Settles Guard = iota
	// Text goes to the text that is being typed, if there is one.
	Text
	// Looks only changes how things look: what is being typed stays.
	Looks
)

// Action is one thing that can be done.
type Action struct {
	ID    ID
	Menu  string // the menu that it stands in
	Name  string // as the menu says it
	Key   Key
	Also  []Key  // other keys for it
	Does  string // what it does, in one sentence
	Guard Guard
	Group bool // starts a group in its menu
}

// Menus are the menus from left to right.
var Menus = []string{"File", "Edit", "View", "Parts", "Draw", "Arrange", "Options", "Show", "Help"}

const (
	shift = fyne.KeyModifierShift
	alt   = fyne.KeyModifierAlt
)

// Table is every action, by menus.
var Table = slices.Concat(table, rooming, drawing, copying, arranging, comparing, picturing)

var table = []Action{
	{ID: NewJob, Menu: "File", Name: "New job", Key: Key{fyne.KeyN, Ctrl},
		Does: "Starts a job of your own with a plain rectangular top."},
	{ID: Open, Menu: "File", Name: "Open…", Key: Key{fyne.KeyO, Ctrl},
		Does: "Opens a job's file."},
	{ID: Recent, Menu: "File", Name: "Recent jobs…", Key: Key{fyne.KeyO, Ctrl | shift},
		Does: "Shows the jobs that you worked on last, as pictures."},
	{ID: Save, Menu: "File", Name: "Save", Key: Key{fyne.KeyS, Ctrl}, Group: true,
		Does: "Saves the job in its file."},
	{ID: SaveAs, Menu: "File", Name: "Save as…", Key: Key{fyne.KeyS, Ctrl | shift},
		Does: "Saves the job in another file and goes on there."},
	{ID: BringIn, Menu: "File", Name: "Bring in an outline…", Key: Key{fyne.KeyI, Ctrl}, Group: true,
		Does: "Takes in hand a sink's template, a scanned wall or another outline from an SVG or DXF file."},
	{ID: ExportPicture, Menu: "File", Name: "Export picture…", Key: Key{fyne.KeyE, Ctrl}, Group: true,
		Does: "Writes the option in hand as a picture for the client."},
	{ID: ExportText, Menu: "File", Name: "Export report as text…", Key: Key{fyne.KeyE, Ctrl | shift},
		Does: "Writes every number of the option in hand as text."},
	{ID: ExportJSON, Menu: "File", Name: "Export report as JSON…", Key: Key{fyne.KeyE, Ctrl | alt},
		Does: "Writes every number of the option in hand for other programs."},
	{ID: ApprovalSheet, Menu: "File", Name: "Approval sheet…", Key: Key{fyne.KeyP, Ctrl}, Group: true,
		Does: "Makes the sheet that the client signs: picture, drawing, words and the design's fingerprint."},
	{ID: ExportComparison, Menu: "File", Name: "Export comparison…", Key: Key{fyne.KeyK, Ctrl | shift},
		Does: "Writes two options side by side, or one as approved and as it is now, with what differs."},
	{ID: Letterhead, Menu: "File", Name: "Letterhead…", Key: Key{fyne.KeyH, Ctrl | shift},
		Does: "Your name, address and logo at the head of the sheets."},
	{ID: JobSettings, Menu: "File", Name: "Job and materials…", Key: Key{fyne.KeyJ, Ctrl}, Group: true,
		Does: "Client, site, money, and the materials with their prices."},
	{ID: Quit, Menu: "File", Name: "Quit", Key: Key{fyne.KeyQ, Ctrl}, Group: true,
		Does: "Ends the program; asks about changes that are not saved."},

	{ID: Undo, Menu: "Edit", Name: "Undo", Key: Key{fyne.KeyZ, Ctrl}, Guard: Text,
		Does: "Takes the last change back."},
	{ID: Redo, Menu: "Edit", Name: "Redo", Key: Key{fyne.KeyY, Ctrl},
		Also: []Key{{fyne.KeyZ, Ctrl | shift}}, Guard: Text,
		Does: "Does again what was taken back."},
	{ID: Duplicate, Menu: "Edit", Name: "Duplicate parts", Key: Key{fyne.KeyD, Ctrl}, Group: true,
		Does: "Puts copies of the selected parts beside them, where there is room."},
	{ID: Remove, Menu: "Edit", Name: "Remove", Key: Key{fyne.KeyDelete, 0},
		Does: "Removes the selected part, corner or point."},
	{ID: SelectTop, Menu: "Edit", Name: "Select the top", Key: Key{fyne.KeyT, Ctrl}, Group: true,
		Does: "Shows the fields of the top as a whole."},
	{ID: SelectNone, Menu: "Edit", Name: "Back out", Key: Key{fyne.KeyEscape, 0},
		Does: "Backs out of one thing: a number, a drag, a drawing, a selection, another page."},
	{ID: Mirror, Menu: "Edit", Name: "Mirror the top", Key: Key{fyne.KeyM, Ctrl}, Group: true,
		Does: "Turns the top and all that is on it left to right."},

	{ID: Fit, Menu: "View", Name: "Whole top", Key: Key{fyne.Key0, Ctrl}, Guard: Looks,
		Does: "Shows the whole top; on the drawing F or 0 does the same."},
	{ID: ZoomIn, Menu: "View", Name: "Zoom in", Key: Key{fyne.KeyEqual, Ctrl},
		Also: []Key{{fyne.KeyPlus, Ctrl}, {fyne.KeyEqual, Ctrl | shift},
			{fyne.KeyPlus, Ctrl | shift}}, Guard: Looks,
		Does: "Brings the drawing nearer; on the drawing + or the wheel does the same."},
	{ID: ZoomOut, Menu: "View", Name: "Zoom out", Key: Key{fyne.KeyMinus, Ctrl}, Guard: Looks,
		Does: "Shows more of the drawing; on the drawing - or the wheel does the same."},
	{ID: ZoomActual, Menu: "View", Name: "Actual size", Key: Key{fyne.Key1, Ctrl}, Guard: Looks,
		Does: "Shows the top about as large as it will be."},
	{ID: Dimensions, Menu: "View", Name: "Dimensions", Key: Key{fyne.KeyD, Ctrl | shift}, Guard: Looks,
		Group: true,
		Does:  "Shows or hides the dimension lines."},
	{ID: Textures, Menu: "View", Name: "Material colours", Key: Key{fyne.KeyT, Ctrl | shift},
		Guard: Looks,
		Does:  "Shows concrete, stone, glass and resin as they look, or plain."},
	{ID: Supports, Menu: "View", Name: "Supports below", Key: Key{fyne.KeyU, Ctrl | shift},
		Guard: Looks,
		Does:  "Shows or hides what carries the top, dashed."},
	{ID: Grid, Menu: "View", Name: "Grid", Key: Key{fyne.KeyG, Ctrl}, Guard: Looks,
		Does: "Shows or hides the grid that the snap holds."},
	{ID: PanTool, Menu: "View", Name: "Move the paper", Key: Key{fyne.KeySpace, Ctrl}, Guard: Looks,
		Does: "Dragging moves the paper, until Esc or the same key; Space held, or the middle button, does it for one drag."},
	{ID: StepByZoom, Menu: "View", Name: "Steps by the zoom", Key: Key{fyne.Key0, Ctrl | shift}, Guard: Looks,
		Group: true,
		Does:  "The snap rounds to the finest step that a hand can aim at; near to, it is finer."},
	{ID: Step1, Menu: "View", Name: "Steps of 1/16 in or 1 mm", Key: Key{fyne.Key1, Ctrl | shift}, Guard: Looks,
		Does: "The snap and the arrow keys round to this step at every zoom."},
	{ID: Step2, Menu: "View", Name: "Steps of 1/8 in or 2 mm", Key: Key{fyne.Key2, Ctrl | shift}, Guard: Looks,
		Does: "The snap and the arrow keys round to this step at every zoom."},
	{ID: Step3, Menu: "View", Name: "Steps of 1/4 in or 5 mm", Key: Key{fyne.Key3, Ctrl | shift}, Guard: Looks,
		Does: "The snap and the arrow keys round to this step at every zoom."},
	{ID: Step4, Menu: "View", Name: "Steps of 1/2 in or 10 mm", Key: Key{fyne.Key4, Ctrl | shift}, Guard: Looks,
		Does: "The snap and the arrow keys round to this step at every zoom."},
	{ID: Step5, Menu: "View", Name: "Steps of 1 in or 50 mm", Key: Key{fyne.Key5, Ctrl | shift}, Guard: Looks,
		Does: "The snap and the arrow keys round to this step at every zoom."},
	{ID: Units, Menu: "View", Group: true, Name: "Inches or millimetres", Key: Key{fyne.KeyU, Ctrl},
		Does: "Shows and takes lengths in the other system; no length changes."},
	{ID: Theme, Menu: "View", Name: "Light or dark", Key: Key{fyne.KeyL, Ctrl}, Guard: Looks,
		Does: "Changes between the light and the dark window."},
	{ID: Showing, Menu: "View", Name: "Show to the client", Key: Key{fyne.KeyF12, 0}, Group: true,
		Does: "Gives the whole screen to the option in hand, as a large drawing or as a picture; changes nothing."},
	{ID: FullScreen, Menu: "View", Name: "Full screen", Key: Key{fyne.KeyF11, 0}, Guard: Looks,
		Does: "Gives the window the whole screen, or gives it back."},

	{ID: PartShape, Menu: "Parts", Name: "Shape…", Key: Key{fyne.KeyF2, 0},
		Does: "Offers shapes for the top."},
	{ID: PartEdge, Menu: "Parts", Name: "Edge…", Key: Key{fyne.KeyF3, 0},
		Does: "Offers profiles for the edges."},
	{ID: PartSink, Menu: "Parts", Name: "Sink…", Key: Key{fyne.KeyF4, 0},
		Does: "Offers sinks to put in."},
	{ID: PartTaps, Menu: "Parts", Name: "Taps…", Key: Key{fyne.KeyF5, 0},
		Does: "Offers sets of tap holes to put in."},
	{ID: PartHole, Menu: "Parts", Name: "Hole…", Key: Key{fyne.KeyF6, 0},
		Does: "Offers plain holes to put in."},
	{ID: PartChannel, Menu: "Parts", Name: "Channel…", Key: Key{fyne.KeyF7, 0},
		Does: "Offers rivers and pools of resin to put in."},
	{ID: PartGlass, Menu: "Parts", Name: "Glass…", Key: Key{fyne.KeyF8, 0},
		Does: "Offers beds of glass to put in."},
	{ID: PartFinish, Menu: "Parts", Name: "Finish…", Key: Key{fyne.KeyF9, 0},
		Does: "Offers colours and finishes of the face."},
	{ID: PartSupports, Menu: "Parts", Name: "Supports…", Key: Key{fyne.KeyF10, 0},
		Does: "Offers what the top rests on."},
	{ID: KeepPart, Menu: "Parts", Name: "Keep in your book…", Key: Key{fyne.KeyP, Ctrl | shift}, Group: true,
		Does: "Keeps the selected sink, tap holes or edge, or the top's finish, for the next job."},
	{ID: ShowBook, Menu: "Parts", Name: "Your book of parts…", Key: Key{fyne.KeyY, Ctrl | shift},
		Does: "Shows the parts that you have kept, to use, rename or remove."},

	{ID: OptionNew, Menu: "Options", Name: "New option", Key: Key{fyne.KeyN, Ctrl | shift},
		Does: "Adds an option with a plain top of the same size."},
	{ID: OptionDuplicate, Menu: "Options", Name: "Duplicate option", Key: Key{fyne.KeyD, Ctrl | alt},
		Does: "Adds a copy of the option in hand, to try something on."},
	{ID: OptionRename, Menu: "Options", Name: "Rename option…", Key: Key{fyne.KeyR, Ctrl},
		Does: "Gives the option in hand another letter and title."},
	{ID: OptionLeft, Menu: "Options", Name: "Move option left", Key: Key{fyne.KeyPageUp, Ctrl | shift},
		Group: true,
		Does:  "Puts the option in hand before the one to its left."},
	{ID: OptionRight, Menu: "Options", Name: "Move option right",
		Key:  Key{fyne.KeyPageDown, Ctrl | shift},
		Does: "Puts the option in hand after the one to its right."},
	{ID: OptionRemove, Menu: "Options", Name: "Remove option", Key: Key{fyne.KeyR, Ctrl | shift},
		Does: "Takes the option in hand out of the job; undo brings it back."},
	{ID: OptionPrevious, Menu: "Options", Name: "Previous option", Key: Key{fyne.KeyPageUp, Ctrl},
		Group: true,
		Does:  "Takes the option to the left in hand."},
	{ID: OptionNext, Menu: "Options", Name: "Next option", Key: Key{fyne.KeyPageDown, Ctrl},
		Does: "Takes the option to the right in hand."},
	{ID: Compare, Menu: "Options", Name: "Compare two options", Key: Key{fyne.KeyK, Ctrl}, Group: true,
		Does: "Shows two options side by side with their numbers and what differs."},
	{ID: MarkApproved, Menu: "Options", Name: "Mark as approved…", Key: Key{fyne.KeyA, Ctrl | shift}, Group: true,
		Does: "Freezes the option in hand as the client agreed to it; later changes are shown against it."},
	{ID: ShowApproved, Menu: "Options", Name: "What was approved…", Key: Key{fyne.KeyA, Ctrl | alt},
		Does: "Shows what was approved, what has changed since, and the way back to it."},

	{ID: Lessons, Menu: "Help", Name: "First steps on the drawing", Key: Key{fyne.KeyH, Ctrl},
		Does: "Shows on the drawing what to do first, or puts it away again."},
	{ID: Actions, Menu: "Help", Name: "Keys and actions…", Key: Key{fyne.KeyF1, 0},
		Does: "Finds any action by a word of it, with its key and its place in the menu."},
	{ID: About, Menu: "Help", Name: "About and cautions…", Key: Key{fyne.KeyF1, Ctrl},
		Does: "Says what the program is, what it is not, and what to take care of."},
}

// ByID gives an action of the table.
func ByID(id ID) Action {
	for _, a := range Table {
		if a.ID == id {
			return a
		}
	}
	panic("keys: no action " + string(id))
}

// Hint is what an action does and its key, for the hint line.
func Hint(id ID) string {
	a := ByID(id)
	return a.Does + " (" + a.Key.String() + ")"
}
