package control

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	look "example.org/castwright/ui/theme"
)

// reveal brings a control that has got the keyboard into sight, where it lies in
// something that scrolls.
func (f *Frame) reveal(o fyne.CanvasObject) {
	scrolls, at := f.around(o)
	for i, s := range scrolls {
		size, room, off := o.Size(), s.Size(), s.Offset
		low, high := at[i].Y-look.Gap, at[i].Y+size.Height+look.Gap
		switch {
		case low < off.Y || size.Height > room.Height:
			off.Y = low
		case high > off.Y+room.Height:
			off.Y = high - room.Height
		default:
			continue
		}
		s.ScrollToOffset(fyne.NewPos(off.X, fyne.Max(0, off.Y)))
	}
}

// around is what scrolls around a control of the window, the outermost first, and
// where it lies in the content of each.
func (f *Frame) around(o fyne.CanvasObject) (scrolls []*container.Scroll, at []fyne.Position) {
	root := f.Window.Canvas().Content()
	if top := f.Window.Canvas().Overlays().Top(); top != nil {
		root = top
	}
	if !around(root, o, fyne.Position{}, &scrolls, &at) {
		return nil, nil
	}
	return scrolls, at
}

// around finds what scrolls around o, below an object whose parent lies at from
// in the innermost of them.
func around(in, o fyne.CanvasObject, from fyne.Position, scrolls *[]*container.Scroll, at *[]fyne.Position) bool {
	if in == nil || !in.Visible() {
		return false
	}
	here := from.Add(in.Position())
	if k, ok := in.(interface{ control() fyne.CanvasObject }); ok && k.control() == o {
		if n := len(*scrolls); n > 0 {
			(*at)[n-1] = here
		}
		return true
	}
	switch k := in.(type) {
	case *fyne.Container:
		for _, c := range k.Objects {
			if around(c, o, here, scrolls, at) {
				return true
			}
		}
	case *overlay:
		return around(k.card, o, here, scrolls, at)
	case *container.Scroll:
		n := len(*scrolls)
		*scrolls, *at = append(*scrolls, k), append(*at, fyne.Position{})
		if around(k.Content, o, fyne.Position{}, scrolls, at) {
			if n > 0 { // the inner one itself is to be seen in the outer
				(*at)[n-1] = here
			}
			return true
		}
		*scrolls, *at = (*scrolls)[:n], (*at)[:n]
	}
	return false
}
