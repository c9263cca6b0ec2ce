package panel

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/icon"
	look "example.org/castwright/ui/theme"
)

// showHandling shows what can be done with what is selected, and how it is handled.
func (p *Panel) showHandling() {
	ids := p.s.SelectedParts()
	part, locked := len(ids) > 0, len(ids) > 0 && p.s.AllLocked(ids)
	p.lock.SetEnabled(part)
	p.lock.SetFace(lockFace(locked, "what is selected", " (Ctrl+Alt+L)"))
	p.lock.SetOn(locked)
	gone := part && p.s.AllHidden(ids)
	p.hide.SetEnabled(part)
	p.hide.SetFace(hideFace(gone, "what is selected", " (Ctrl+Alt+H)"))
	p.hide.SetOn(gone)
	p.copy.SetEnabled(part)
	some := false
	for _, id := range ids {
		some = some || p.s.Locked(id)
	}
	face := control.Face{Icon: icon.Remove, Hint: "Removes what is selected (Delete)."}
	switch {
	case some:
		face.Hint = "What is locked is not removed: unlock it first (Ctrl+Alt+L)."
	case !part && !p.isCorner():
		face.Hint = "The top itself is not removed: pick a part or a corner of it."
	}
	p.remove.SetFace(face)
	p.remove.SetEnabled(!some && (part || p.isCorner()))
}

// lockFace is the button that locks a thing, or lets it go when it is locked.
func lockFace(locked bool, thing, key string) control.Face {
	if locked {
		return control.Face{Icon: icon.Lock, Hint: "Unlocks " + thing + key + "."}
	}
	return control.Face{Icon: icon.Unlock, Hint: "Locks " + thing + ": it is neither moved, changed nor removed by hand" + key + "."}
}

// hideFace is the button that hides a thing, or shows it when it is hidden.
func hideFace(hidden bool, thing, key string) control.Face {
	if hidden {
		return control.Face{Icon: icon.Hide, Hint: "Shows " + thing + " on the drawing again" + key + "."}
	}
	return control.Face{Icon: icon.Show, Hint: "Hides " + thing + " on the drawing; it is still cast and counted" + key + "."}
}

// ToggleLock locks the selected parts, or lets them go when all are locked.
func (p *Panel) ToggleLock() { p.setLocked(p.s.SelectedParts()) }

// setLocked locks parts, or lets them go when all of them are locked.
func (p *Panel) setLocked(ids []design.ID) {
	p.report(p.s.DoJob(edit.LockParts(p.s.Option().Name, ids, !p.s.AllLocked(ids))))
}

// ToggleHidden hides the selected parts, or shows them when all are hidden.
func (p *Panel) ToggleHidden() { p.setHidden(p.s.SelectedParts()) }

// setHidden hides parts, or shows them when all of them are hidden. What is hidden
// is let go: a key is not to change what nobody sees.
func (p *Panel) setHidden(ids []design.ID) {
	hide := !p.s.AllHidden(ids)
	if !p.report(p.s.DoJob(edit.HideParts(p.s.Option().Name, ids, hide))) || !hide {
		return
	}
	rest := p.s.Selection()[:0:0]
	for _, k := range p.s.Selection() {
		if k.Part == "" || !p.s.Hidden(k.Part) {
			rest = append(rest, k)
		}
	}
	if len(rest) < len(p.s.Selection()) {
		p.s.Select(rest...)
	}
}

// ShowAll shows every hidden part again.
func (p *Panel) ShowAll() { p.report(p.s.DoJob(edit.ShowParts(p.s.Option().Name))) }

// lockedNow are the selected parts that are locked.
func (p *Panel) lockedNow() []design.ID {
	var out []design.ID
	for _, id := range p.s.SelectedParts() {
		if p.s.Locked(id) {
			out = append(out, id)
		}
	}
	return out
}

// addLocked says that what is selected is locked, and offers to let it go.
func (p *Panel) addLocked() {
	locked := p.lockedNow()
	if p.locks = locked; len(locked) == 0 {
		return
	}
	words := "Locked: stays as it is."
	if len(locked) < len(p.s.SelectedParts()) {
		words = "Some are locked: they stay."
	}
	unlock := control.NewButton(p.frame, control.Face{Text: "Unlock", Kind: control.Raised,
		Hint: "Lets the locked parts go (Ctrl+Alt+L)."}, func() { p.setLocked(locked) })
	p.fields.Add(signed(icon.Lock, control.SmallLines(words), unlock))
}

// signed is a line with a sign before it and a button behind it.
func signed(sign fyne.Resource, text, button fyne.CanvasObject) fyne.CanvasObject {
	return container.NewBorder(nil, nil, control.Middle(control.Sized(18, 18, control.Icon(sign, theme.ColorNamePrimary))),
		control.Pad(0, look.Gap, control.Middle(button)), control.Middle(text))
}
