package ui

import (
	"errors"

	"example.org/castwright/model/clip"
	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/keys"
)

// clips is what was copied and how often it was pasted where. What counts is the
// text on the system's clipboard, so that parts go from window to window; our own
// copy is for systems that keep none.
type clips struct {
	text   string
	pasted map[string]int // how often that text was pasted, by option
}

// bindClip says what copies, cuts and pastes parts.
func (w *window) bindClip(on func(keys.ID, int, bool, func([]design.ID)), free func(keys.ID, func() string, func())) {
	on(keys.Copy, 1, false, func(ids []design.ID) { w.copyParts(ids) })
	on(keys.Cut, 1, true, func(ids []design.ID) {
		if w.copyParts(ids) && w.do(w.session.Do(edit.RemoveParts(ids))) {
			w.clip.pasted = map[string]int{} // their place is free
			w.session.Select()
		}
	})
	free(keys.Paste, nil, w.pasteParts)
}

// copyParts puts parts on the clipboard.
func (w *window) copyParts(ids []design.ID) bool {
	c, err := edit.CopyParts(w.session.Design(), ids)
	if !w.do(err) {
		return false
	}
	text := clip.Text(c, w.session.Job().Units)
	w.app.Clipboard().SetContent(text)
	w.clip = clips{text: text, pasted: map[string]int{w.session.Option().Name: 1}}
	if len(ids) == 1 {
		w.board.Note("Copied: " + keys.ByID(keys.Paste).Key.String() + " pastes it, here, into another option or into another window")
	} else {
		w.board.Note("Copied: " + keys.ByID(keys.Paste).Key.String() + " pastes them, here, into another option or into another window")
	}
	return true
}

// pasteParts puts the parts on the clipboard where they were; a little beside where
// they lie already, and in the middle where their place is off the top.
func (w *window) pasteParts() {
	text := w.app.Clipboard().Content()
	if text == "" {
		text = w.clip.text
	}
	c, err := clip.Read(text)
	if errors.Is(err, clip.ErrOther) {
		w.board.Note("There are no copied parts on the clipboard: select parts and copy them first, with " +
			keys.ByID(keys.Copy).Key.String())
		return
	}
	if !w.do(err) {
		return
	}
	if text != w.clip.text {
		w.clip = clips{text: text, pasted: map[string]int{}}
	}
	before, option := w.session.Design(), w.session.Option().Name
	if w.do(w.session.Do(edit.PasteParts(c, w.pastePlace(c, option)))) {
		w.clip.pasted[option]++
		w.session.SelectParts(edit.NewParts(before, w.session.Design()))
	}
}

// pastePlace is where copied parts go.
func (w *window) pastePlace(c edit.Clip, option string) design.Point {
	at := c.At
	if box := edit.Bounds(w.session.Design().Outline); !box.Empty() &&
		!box.Contains(geom.Vec{X: at.X.MM(), Y: at.Y.MM()}) {
		at = design.Point{X: units.FromMM(box.Centre().X), Y: units.FromMM(box.Centre().Y)}
	}
	by := 40 * units.Millimetre
	if w.session.Job().Units == units.Imperial {
		by = 3 * units.Inch / 2
	}
	n := units.Length(w.clip.pasted[option])
	return design.Point{X: at.X + n*by, Y: at.Y - n*by}
}
