package strip

import (
	"fyne.io/fyne/v2"

	"example.org/castwright/ui/control"
	look "example.org/castwright/ui/theme"
)

// heading sets an option's name, its title and its mark beside each other. A name
// that is a word is seen whole as long as it leaves a third of the room to the
// title.
type heading struct{ name, title *control.Text }

func (heading) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var size fyne.Size
	for _, o := range objects {
		m := o.MinSize()
		size.Width, size.Height = size.Width+m.Width, fyne.Max(size.Height, m.Height)
	}
	return size.AddWidthHeight(2*look.Space, 0)
}

func (h heading) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	name, title, mark := objects[0], objects[1], objects[2]
	room := size.Width - mark.MinSize().Width
	most := room
	if h.title.Text() != "" {
		most = room - fyne.Min(h.title.Whole()+2*look.Space, room/3)
	}
	w := fyne.Max(name.MinSize().Width, fyne.Min(h.name.Whole(), most))
	put := func(o fyne.CanvasObject, x, width float32) {
		high := o.MinSize().Height
		o.Move(fyne.NewPos(x, (size.Height-high)/2))
		o.Resize(fyne.NewSize(width, high))
	}
	put(name, 0, w)
	put(title, w+look.Space, fyne.Max(0, room-w-2*look.Space))
	put(mark, room, mark.MinSize().Width)
}
