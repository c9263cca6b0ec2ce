package ui

import (
	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/keys"
)

// bindArrange says what is done to several parts at once.
func (w *window) bindArrange(b map[keys.ID]keys.Binding, drawing func() bool) {
	bind := func(id keys.ID, least int, do func(ids []design.ID)) {
		b[id] = keys.Binding{
			Do:      func() { w.settle(); do(w.session.SelectedParts()) },
			Enabled: func() bool { return drawing() && len(w.session.SelectedParts()) >= least },
		}
	}
	bind(keys.SelectAll, 0, func([]design.ID) { w.session.SelectParts(edit.NewParts(design.Design{}, w.session.Design())) })
	bind(keys.Copy, 1, w.copyParts)
	bind(keys.Cut, 1, func(ids []design.ID) {
		if w.copyParts(ids); len(w.clip.IDs()) > 0 {
			w.do(w.session.Do(edit.RemoveParts(ids)))
		}
	})
	bind(keys.Paste, 0, func([]design.ID) { w.pasteParts() })
	paste := b[keys.Paste]
	paste.Enabled = func() bool { return drawing() && len(w.clip.IDs()) > 0 }
	b[keys.Paste] = paste
	for id, how := range map[keys.ID]edit.Alignment{
		keys.AlignLeft: edit.AlignLeft, keys.AlignCentre: edit.AlignCentre, keys.AlignRight: edit.AlignRight,
		keys.AlignFront: edit.AlignFront, keys.AlignMiddle: edit.AlignMiddle, keys.AlignBack: edit.AlignBack,
	} {
		bind(id, 2, func(ids []design.ID) { w.do(w.session.Do(edit.Align(ids, how))) })
	}
	for id, axis := range map[keys.ID]design.Axis{keys.SpreadAcross: design.AxisX, keys.SpreadDeep: design.AxisY} {
		bind(id, 3, func(ids []design.ID) { w.do(w.session.Do(edit.Distribute(ids, axis))) })
	}
}

func (w *window) copyParts(ids []design.ID) {
	clip, err := edit.CopyParts(w.session.Design(), ids)
	if w.do(err) {
		w.clip, w.clipFrom, w.pasted = clip, w.session.Option().Name, 0
	}
}

// pasteParts puts the copied parts where they were, or a little beside when they
// come from the same option.
func (w *window) pasteParts() {
	at := w.clip.At
	if w.session.Option().Name == w.clipFrom {
		w.pasted++
		by := 40 * units.Millimetre
		if w.session.Job().Units == units.Imperial {
			by = 3 * units.Inch / 2
		}
		at.X += units.Length(w.pasted) * by
		at.Y -= units.Length(w.pasted) * by
	}
	before := w.session.Design()
	if w.do(w.session.Do(edit.PasteParts(w.clip, at))) {
		w.session.SelectParts(edit.NewParts(before, w.session.Design()))
	}
}
