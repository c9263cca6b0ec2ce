package panel

import (
	look "example.org/castwright/ui/theme"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
)

// stack gives the sections of the panel their heights: the list of parts when it is
// open and what is said of hidden ones, the head and fields of what is selected, the quantities, the head of the warnings and their list.
// Where the height is short, the fields and the warnings scroll first, so that
// the quantities and the count of the warnings are always in sight.
type stack struct{}

const (
	fieldsLeast   = 96 // about three fields
	warningsLeast = 76 // about two warnings
	listLeast     = 84 // three parts
	listShare     = 0.28
)

// shares divides a height among fields, quantities and warnings by what each
// would like.
func shares(room, fields, numbers, warnings float32) (f, n, w float32) {
	// What stands behind a quantity may take what the others can spare.
	n = fyne.Min(numbers, fyne.Max(room-fieldsLeast-warningsLeast, room/2))
	rest := fyne.Max(0, room-n)
	f = fyne.Min(fields, fyne.Max(rest-fyne.Min(warnings, rest*0.45), fyne.Min(fieldsLeast, rest)))
	return f, n, fyne.Max(0, rest-f)
}

func (stack) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	parts, list, hidden, rule0 := objects[0], objects[1], objects[2], objects[3]
	objects = objects[4:]
	head, fields, rule1, numbers, rule2, risk, warnings := objects[0], objects[1], objects[2], objects[3], objects[4], objects[5], objects[6]
	fixed := parts.MinSize().Height + head.MinSize().Height + risk.MinSize().Height + 5*look.Space + 3
	if hidden.Visible() {
		fixed += hidden.MinSize().Height
	}
	room, l := size.Height-fixed, float32(0)
	if list.Visible() {
		l = fyne.Min(contentHeight(list), fyne.Max(listLeast, room*listShare))
		room -= l
	}
	f, n, w := shares(room, contentHeight(fields), contentHeight(numbers), contentHeight(warnings))
	y := float32(0)
	put := func(o fyne.CanvasObject, h, gap float32) {
		o.Move(fyne.NewPos(0, y))
		o.Resize(fyne.NewSize(size.Width, h))
		y += h + gap
	}
	put(parts, parts.MinSize().Height, 0)
	if list.Visible() {
		put(list, l, 0)
	}
	if hidden.Visible() {
		put(hidden, hidden.MinSize().Height, 0)
	}
	put(rule0, 1, look.Space)
	put(head, head.MinSize().Height, 0)
	put(fields, f, look.Space)
	put(rule1, 1, look.Space)
	put(numbers, n, look.Space)
	put(rule2, 1, look.Space)
	put(risk, risk.MinSize().Height, 0)
	put(warnings, w, 0)
}

func (stack) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(0, 340) }

// contentHeight is what a scrolled section would like.
func contentHeight(o fyne.CanvasObject) float32 {
	if s, ok := o.(*container.Scroll); ok {
		return s.Content.MinSize().Height
	}
	return o.MinSize().Height
}

// accordion sets the quantities below each other, each followed by what stands
// behind it, of which the one that is open gets the height that is left.
type accordion struct{}

func (accordion) MinSize(objects []fyne.CanvasObject) fyne.Size {
	h := float32(0)
	for _, o := range objects {
		if o.Visible() {
			h += contentHeight(o)
		}
	}
	return fyne.NewSize(0, h)
}

func (accordion) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	left := size.Height
	for i, o := range objects {
		if i%2 == 0 {
			left -= o.MinSize().Height
		}
	}
	y := float32(0)
	for i, o := range objects {
		if !o.Visible() {
			continue
		}
		h := o.MinSize().Height
		if i%2 == 1 {
			h = fyne.Max(0, left)
		}
		o.Move(fyne.NewPos(0, y))
		o.Resize(fyne.NewSize(size.Width, h))
		y += h
	}
}

// width holds a thing to a width.
type width struct{ points float32 }

func (w width) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(w.points, objects[0].MinSize().Height)
}

func (w width) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	objects[0].Move(fyne.NewPos(0, 0))
	objects[0].Resize(size)
}

// rightInset leaves room for a scroll bar.
type rightInset struct{}

const barRoom = 6

func (rightInset) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return objects[0].MinSize().Add(fyne.NewSize(barRoom, 0))
}

func (rightInset) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	objects[0].Move(fyne.NewPos(0, 0))
	objects[0].Resize(fyne.NewSize(size.Width-barRoom, size.Height))
}
