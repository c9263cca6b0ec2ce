package ui

import (
	"example.org/castwright/export/picture"
	"example.org/castwright/ui/keys"
)

// bindPicture says what the actions of the picture mean.
func (w *window) bindPicture(b map[keys.ID]keys.Binding) {
	on := func(id keys.ID, do func()) {
		b[id] = keys.Binding{Do: do, Enabled: w.showing.InPicture}
	}
	b[keys.ShowPicture] = keys.Binding{
		Do: func() {
			switch {
			case w.showing.InPicture():
				w.showing.ShowDrawing()
			case w.showing.Shown():
				w.showing.ShowPicture()
			default:
				w.settle()
				w.openShowing()
				w.showing.ShowPicture()
			}
		},
		Enabled: func() bool { return !w.comparing() },
		Checked: w.showing.InPicture,
	}
	b[keys.SavePhoto] = keys.Binding{Do: func() { w.settle(); w.showing.SavePicture() }}
	for i, id := range []keys.ID{keys.PictureFront, keys.PictureAbove, keys.PictureNear} {
		on(id, func() { w.showing.View(i) })
	}
	on(keys.PictureLeft, func() { w.showing.Walk(-1, 0) })
	on(keys.PictureRight, func() { w.showing.Walk(1, 0) })
	on(keys.PictureUp, func() { w.showing.Walk(0, 1) })
	on(keys.PictureDown, func() { w.showing.Walk(0, -1) })
	toggled := func(id keys.ID, do func(), checked func() bool) {
		b[id] = keys.Binding{Do: do, Enabled: w.showing.InPicture, Checked: checked}
	}
	toggled(keys.PictureWall, w.showing.ToggleWall, w.showing.Wall)
	below := func(id keys.ID, what picture.Below) {
		toggled(id, func() { w.showing.ToggleBelow(what) }, func() bool { return w.showing.Below() == what })
	}
	below(keys.PictureCabinet, picture.BelowCabinet)
	below(keys.PictureLegs, picture.BelowLegs)
}
