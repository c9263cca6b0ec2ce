package control

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
)

// Spot is where a control lies in the window, in points, and what it says in the
// hint line. It is for tests of the real window, which find their way by it.
type Spot struct {
	Says  string
	Value string // what an entry or a choice shows, the word on a button
	At    fyne.Position
	Size  fyne.Size
}

// said is what a control says in the hint line.
func (t *Tile) said() string   { return t.hint }
func (b *Button) said() string { return b.face.Hint }
func (e *Entry) said() string  { return e.hint }
func (c *Choice) said() string { return c.hint }
func (c *Check) said() string  { return c.hint }

// control is the control itself, whatever it is a part of.
func (t *Tile) control() fyne.CanvasObject   { return t }
func (b *Button) control() fyne.CanvasObject { return b }
func (e *Entry) control() fyne.CanvasObject  { return e }
func (c *Choice) control() fyne.CanvasObject { return c }
func (c *Check) control() fyne.CanvasObject  { return c }

func (b *Button) value() string { return b.face.Text }
func (e *Entry) value() string  { return e.Text }
func (c *Choice) value() string { return c.Selected }

// Spots are the controls in sight below an object whose place is given, in their
// order. What is covered by a card over the window is not left out.
func Spots(o fyne.CanvasObject, at fyne.Position) []Spot {
	var out []Spot
	gather(o, at, at, fyne.NewSize(1e6, 1e6), &out)
	return out
}

// gather adds the spots below o, whose parent lies at from; what does not lie
// within the window from clip on is out of sight.
func gather(o fyne.CanvasObject, from, clip fyne.Position, room fyne.Size, out *[]Spot) {
	if o == nil || !o.Visible() {
		return
	}
	at := from.Add(o.Position())
	switch k := o.(type) {
	case *fyne.Container:
		for _, c := range k.Objects {
			gather(c, at, clip, room, out)
		}
	case *container.Scroll:
		gather(k.Content, at, at, k.Size(), out)
	case *overlay:
		gather(k.card, at, clip, room, out)
	case interface{ said() string }:
		size := o.Size()
		mid := at.AddXY(size.Width/2, size.Height/2)
		if mid.X >= clip.X && mid.Y >= clip.Y && mid.X <= clip.X+room.Width && mid.Y <= clip.Y+room.Height {
			s := Spot{Says: k.said(), At: at, Size: size}
			if v, ok := k.(interface{ value() string }); ok {
				s.Value = v.value()
			}
			*out = append(*out, s)
		}
	}
}
