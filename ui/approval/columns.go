package approval

import (
	look "example.org/castwright/ui/theme"
	"fyne.io/fyne/v2"
)

// columns sets two things beside each other, the left one a share of the width.
type columns struct{ left float32 }

func (c columns) MinSize(objects []fyne.CanvasObject) fyne.Size {
	a, b := objects[0].MinSize(), objects[1].MinSize()
	return fyne.NewSize(a.Width+b.Width+look.Section, fyne.Max(a.Height, b.Height))
}

func (c columns) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	w := fyne.Max(objects[0].MinSize().Width, c.left*(size.Width-look.Section))
	objects[0].Move(fyne.NewPos(0, 0))
	objects[0].Resize(fyne.NewSize(w, size.Height))
	objects[1].Move(fyne.NewPos(w+look.Section, 0))
	objects[1].Resize(fyne.NewSize(size.Width-w-look.Section, size.Height))
}
