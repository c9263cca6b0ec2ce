package ui

import (
	"fmt"
	"slices"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/keys"
	look "example.org/castwright/ui/theme"
	"example.org/castwright/ui/words"
	"fyne.io/fyne/v2"
)

// bindArrange says what is done to parts: copied, removed, locked, hidden, held, and
// set among each other.
func (w *window) bindArrange(b map[keys.ID]keys.Binding, drawing func() bool) {
	// on is an action on at least so many parts; one that changes them is not for
	// locked ones.
	on := func(id keys.ID, least int, changes bool, do func(ids []design.ID)) {
		b[id] = keys.Binding{
			Do:      func() { w.settle(); do(w.session.SelectedParts()) },
			Enabled: drawing,
			Why:     func() string { return w.partsMissing(least, changes) },
		}
	}
	free := func(id keys.ID, why func() string, do func()) {
		b[id] = keys.Binding{Do: func() { w.settle(); do() }, Enabled: drawing, Why: why}
	}
	step := func(e edit.Edit) { w.do(w.session.Do(e)) }

	free(keys.SelectAll, func() string {
		if len(w.session.Free()) == 0 {
			return "there is no part that is neither locked nor hidden"
		}
		return ""
	}, func() { w.session.SelectParts(w.session.Free()) })
	on(keys.Duplicate, 1, false, func([]design.ID) { w.panel.Duplicate() })
	free(keys.Remove, w.notRemoved, func() { w.board.Remove() })
	w.bindClip(on, free)

	b[keys.PartsList] = keys.Binding{Do: func() { w.panel.ToggleList() }, Enabled: drawing,
		Checked: func() bool { return w.panel.ListOpen() }}
	free(keys.Beneath, nil, func() {
		if !w.board.Beneath() {
			w.board.Note("Nothing lies under what is selected: point at parts that lie over each other, or pick one in the list of parts")
		}
	})
	w.bindHandling(b, on, free)
	on(keys.KeepTo, 1, false, func([]design.ID) { w.panel.ShowOffers() })
	keep := b[keys.KeepTo]
	keep.Why = func() string {
		if why := w.partsMissing(1, false); why != "" {
			return why
		}
		return w.panel.NoOffers()
	}
	b[keys.KeepTo] = keep
	on(keys.CutKept, 1, false, func(ids []design.ID) { step(edit.CutRelations(ids)) })
	cut := b[keys.CutKept]
	cut.Why = func() string {
		ids, d := w.session.SelectedParts(), w.session.Design()
		if why := w.partsMissing(1, false); why != "" {
			return why
		}
		if !slices.ContainsFunc(ids, func(id design.ID) bool { return edit.Held(d, id) }) {
			return "nothing holds what is selected"
		}
		return ""
	}
	b[keys.CutKept] = cut

	for id, how := range map[keys.ID]edit.Alignment{
		keys.AlignLeft: edit.AlignLeft, keys.AlignCentre: edit.AlignCentre, keys.AlignRight: edit.AlignRight,
		keys.AlignFront: edit.AlignFront, keys.AlignMiddle: edit.AlignMiddle, keys.AlignBack: edit.AlignBack,
	} {
		on(id, 2, true, func(ids []design.ID) { step(edit.Align(ids, how)) })
	}
	for id, axis := range map[keys.ID]design.Axis{keys.SpreadAcross: design.AxisX, keys.SpreadDeep: design.AxisY} {
		on(id, 3, true, func(ids []design.ID) { step(edit.Distribute(ids, axis)) })
	}
	on(keys.MirrorPart, 1, true, func(ids []design.ID) { step(edit.MirrorParts(ids)) })
	on(keys.Turn, 1, true, w.askTurn)
}

// bindHandling says what locks and hides parts.
func (w *window) bindHandling(b map[keys.ID]keys.Binding, on func(keys.ID, int, bool, func([]design.ID)),
	free func(keys.ID, func() string, func())) {
	on(keys.Lock, 1, false, func([]design.ID) { w.panel.ToggleLock() })
	lock := b[keys.Lock]
	lock.Name = func() string {
		if ids := w.session.SelectedParts(); len(ids) > 0 && w.session.AllLocked(ids) {
			return "Unlock"
		}
		return keys.ByID(keys.Lock).Name
	}
	b[keys.Lock] = lock
	on(keys.Hide, 1, false, func([]design.ID) { w.panel.ToggleHidden() })
	hide := b[keys.Hide]
	hide.Name = func() string {
		if ids := w.session.SelectedParts(); len(ids) > 0 && w.session.AllHidden(ids) {
			return "Show on the drawing"
		}
		return keys.ByID(keys.Hide).Name
	}
	b[keys.Hide] = hide
	free(keys.UnlockAll, func() string {
		if len(w.session.LockedParts()) == 0 {
			return "no part is locked"
		}
		return ""
	}, func() { w.do(w.session.DoJob(edit.LockParts(w.session.Option().Name, w.session.LockedParts(), false))) })
	free(keys.ShowHidden, func() string {
		if len(w.session.Option().HiddenParts()) == 0 {
			return "no part is hidden"
		}
		return ""
	}, func() { w.panel.ShowAll() })
}

// partsMissing is why an action on at least so many selected parts can't be done
// now, in the middle of a sentence; "" when it can. One that changes them is not
// for locked parts.
func (w *window) partsMissing(least int, changes bool) string {
	ids := w.session.SelectedParts()
	switch {
	case len(ids) == 0 && least == 1:
		return "no part is selected: pick one on the drawing or in the list of parts"
	case len(ids) < least:
		return fmt.Sprintf("it takes %s parts or more and %d %s selected: Shift and a click adds one",
			[...]string{2: "two", 3: "three"}[least], len(ids), plural(len(ids), "is", "are"))
	case changes:
		return w.locked(ids)
	}
	return ""
}

// locked says that one of the parts is locked, "" when none is.
func (w *window) locked(ids []design.ID) string {
	for _, id := range ids {
		if w.session.Locked(id) {
			d := w.session.Design()
			return words.Lower(words.Part(d, id)) + " " + words.IsAre(d, id) + " locked: " +
				keys.ByID(keys.Lock).Key.String() + " unlocks"
		}
	}
	return ""
}

// notRemoved is why what is selected can't be removed.
func (w *window) notRemoved() string {
	sel := w.session.Selection()
	switch {
	case len(sel) == 0:
		return "nothing is selected: pick a part or a corner first"
	case len(sel) == 1 && sel[0].Part == "" && sel[0].Node < 0:
		return "the top itself stays: pick a part or a corner of it"
	}
	return w.locked(w.session.SelectedParts())
}

func plural(n int, one, more string) string {
	if n == 1 {
		return one
	}
	return more
}

// askTurn turns parts by an angle that is asked for.
func (w *window) askTurn(ids []design.ID) {
	name := words.Part(w.session.Design(), ids[0])
	if len(ids) > 1 {
		name = fmt.Sprintf("%d parts", len(ids))
	}
	angle := control.NewEntry(w.frame, "Degrees, counter-clockwise; -90 is a quarter turn clockwise.")
	angle.SetValue("90")
	angle.EscLeaves = true
	var d *control.Dialog
	angle.OnSubmitted = func(string) { d.Enter() }
	take := func() bool {
		by, err := units.ParseAngle(angle.Text)
		if err == nil {
			err = w.session.Do(edit.RotateParts(ids, by))
		}
		return w.do(err)
	}
	line := control.Row(look.Space, control.Middle(control.NewText("By").Muted()), control.Sized(120, 0, angle),
		control.Middle(control.NewText("counter-clockwise").Muted()))
	d = control.NewDialog(w.frame, "Turn "+words.Lower(name), fyne.CanvasObject(line),
		control.Cancel(), control.Answer{Text: "Turn", Kind: control.Primary, Enter: true, Do: take})
	d.First(angle).Show()
}
