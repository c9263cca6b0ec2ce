package compare

import (
	"fmt"
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"example.org/castwright/model/amount"
	"example.org/castwright/model/change"
	"example.org/castwright/model/draw"
	"example.org/castwright/model/geom"
	"example.org/castwright/ui/control"
	look "example.org/castwright/ui/theme"
)

// lists is what differs, in two columns: what was done, numbered as it is marked,
// and what it is in words and numbers.
type lists struct {
	object  *fyne.Container
	frame   *control.Frame
	made    *fyne.Container
	values  *fyne.Container
	rows    []*control.Tile // of what was done
	find    func(i int, was, is geom.Box)
	scrolls [2]*container.Scroll
}

func newLists(f *control.Frame, find func(i int, was, is geom.Box)) *lists {
	l := &lists{frame: f, find: find, made: control.Column(0), values: control.Column(0)}
	for i, c := range [...]*fyne.Container{l.made, l.values} {
		l.scrolls[i] = container.NewVScroll(control.Pad(look.Gap, look.Space, c))
	}
	l.object = container.New(shares{}, control.Ground(look.Surface, l.scrolls[0]), control.Ground(look.Surface, l.scrolls[1]))
	return l
}

// shares gives what was done three eighths of the width.
type shares struct{}

func (shares) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(620, 96) }

func (shares) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	w := (size.Width - look.Space) * 0.37
	objects[0].Move(fyne.NewPos(0, 0))
	objects[0].Resize(fyne.NewSize(w, size.Height))
	objects[1].Move(fyne.NewPos(w+look.Space, 0))
	objects[1].Resize(fyne.NewSize(size.Width-w-look.Space, size.Height))
}

// mostListed is the most things done that are listed one by one.
const mostListed = 60

// show lists what differs between two sides; same lists what is the same too.
func (l *lists) show(names [2]string, list []change.Change, values []draw.Contrast, same bool) {
	l.made.RemoveAll()
	l.values.RemoveAll()
	l.rows = nil
	differs := 0
	for _, c := range values {
		if !c.Same {
			differs++
		}
	}
	l.made.Add(heading(fmt.Sprintf("From %s to %s: %s", names[0], names[1], counted(len(list)))))
	if len(list) > mostMarked {
		l.made.Add(control.SmallLines("Too many to mark all of them at once: click one to see where it lies."))
	}
	for i, c := range list {
		if i == mostListed {
			l.made.Add(control.SmallLines("And " + amount.Count(len(list)-i, "more change") + ": these two have little in common."))
			break
		}
		t := control.NewTile(l.frame, "Shows this on both sides, and marks it.", row(numbered{}, badge(i+1), control.Lines(c.Words)), nil)
		t.OnTapped = func() { l.find(i, c.Was, c.Is) }
		l.rows = append(l.rows, t)
		l.made.Add(t)
	}
	l.values.Add(row(columns{}, cell("", true, false), cell(names[0], true, false), cell(names[1], true, false), cell("Change", true, false)))
	for _, c := range values {
		if c.Same && !same {
			continue
		}
		l.values.Add(control.Rule())
		low := c.Same
		label := c.Label
		if !c.Same && same {
			label = "≠ " + label
		}
		cells := row(columns{}, cell(label, false, low), cell(c.A, false, low), cell(c.B, false, low), cell(c.Change, !low, low))
		if c.Same || c.Was.Empty() && c.Is.Empty() {
			l.values.Add(cells)
			continue
		}
		l.values.Add(control.NewTile(l.frame, "Shows where that is on both sides.", cells, func() { l.find(-1, c.Was, c.Is) }))
	}
	if differs == 0 {
		l.values.Add(control.Lines("No size, weight, amount, price or warning differs."))
	}
	for _, s := range l.scrolls {
		s.ScrollToTop()
	}
}

func counted(n int) string {
	if n == 0 {
		return "nothing was changed"
	}
	return amount.Count(n, "change")
}

// pick shows which of the things done stands out, -1 for none.
func (l *lists) pick(i int) {
	for k, t := range l.rows {
		t.SetOn(k == i)
	}
}

func heading(text string) fyne.CanvasObject {
	w := control.Lines(text)
	w.TextStyle.Bold = true
	return w
}

// cell is a text of the table; low steps back.
func cell(text string, bold, low bool) *widget.Label {
	w := control.Lines(text)
	w.TextStyle.Bold = bold
	if low {
		w.Importance = widget.LowImportance
	}
	return w
}

// badge is a number in a disc, as it stands on the sides.
func badge(n int) fyne.CanvasObject {
	return container.NewStack(control.NewFill(theme.ColorNameForeground, badgeSide/2),
		control.Middle(control.NewText(strconv.Itoa(n)).Caption().Bold().Centred().Colour(theme.ColorNameBackground)))
}

const badgeSide = 20

func row(of fyne.Layout, objects ...fyne.CanvasObject) *fyne.Container {
	return container.New(of, objects...)
}

// numbered sets a badge before words that may run over several lines.
type numbered struct{}

func (numbered) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(120, fyne.Max(look.Target, objects[1].MinSize().Height))
}

func (numbered) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	objects[0].Move(fyne.NewPos(look.Gap, (look.Target-badgeSide)/2))
	objects[0].Resize(fyne.NewSquareSize(badgeSide))
	x := float32(badgeSide + 2*look.Gap)
	objects[1].Resize(fyne.NewSize(size.Width-x, objects[1].MinSize().Height))
	objects[1].Move(fyne.NewPos(x, fyne.Max(0, (size.Height-objects[1].MinSize().Height)/2)))
}

// columns are the table's: name, two values, change.
type columns struct{}

func (columns) widths(w float32) [4]float32 {
	name, change := fyne.Min(150, 0.22*w), fyne.Min(120, 0.16*w)
	rest := fyne.Max(100, w-name-change) / 2
	return [4]float32{name, rest, rest, change}
}

func (c columns) MinSize(objects []fyne.CanvasObject) fyne.Size {
	h := float32(0)
	for _, o := range objects {
		h = fyne.Max(h, o.MinSize().Height)
	}
	return fyne.NewSize(360, h)
}

func (c columns) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	x := float32(0)
	for i, w := range c.widths(size.Width) {
		objects[i].Move(fyne.NewPos(x, 0))
		objects[i].Resize(fyne.NewSize(w, objects[i].MinSize().Height))
		x += w
	}
}
