package bring

import (
	"fmt"
	"image"
	"path/filepath"
	"strings"

	"example.org/castwright/model/amount"
	"example.org/castwright/model/template"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/control"
	look "example.org/castwright/ui/theme"
	"example.org/castwright/ui/words"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

// sheet is the open dialog.
type sheet struct {
	b        *Bring
	got      found
	unit     int // which of the readings is meant, -1 until it is said
	picked   int
	as       As
	turn     units.Angle
	mirrored bool

	dialog  *control.Dialog
	picture *control.Picture
	list    *fyne.Container
	tiles   []*control.Tile
	kinds   *control.Segments
	units   *control.Segments
	turned  *control.Entry
	sizes   *widget.Label
	notes   *widget.Label
	fault   *widget.Label
}

// show opens the dialog on what was found.
func (b *Bring) show(got found, as As) *sheet {
	h := &sheet{b: b, got: got, as: as, unit: -1}
	if got.says {
		h.unit = 0
	}
	h.fault = control.SmallLines("")
	h.fault.Importance = widget.DangerImportance
	h.notes = control.SmallLines("")
	h.sizes = control.SmallLines("")
	h.list = control.Column(0)
	h.picture = control.NewPicture(b.Frame, 420, 380, func(w, ht int) control.Paint {
		d, ok := h.drawing()
		picked, turn, mirrored, sys, c := h.picked, h.turn, h.mirrored, b.Session.Job().Units, coloursNow()
		if !ok {
			d = h.got.as[1] // of some size, while the unit is not said
			picked = -1
		}
		return func() *image.RGBA { return paint(d, picked, turn, mirrored, sys, c, w, ht) }
	})
	side := control.Column(look.Space, h.unitChoice(), control.NewText("Outlines").Bold(),
		control.Sized(0, 150, container.NewVScroll(h.list)), control.NewText("Bring in as").Bold(), h.kindChoice(), h.turning())
	body := container.NewBorder(nil, control.Column(look.Gap, h.notes, h.fault), nil,
		control.Pad(0, look.Space, control.Sized(300, 0, side)), h.picture)
	h.dialog = control.NewDialog(b.Frame, "Bring in "+filepath.Base(got.path), body, control.Cancel(),
		control.Answer{Text: "Take in hand", Hint: "The outline follows the mouse; a click on the drawing sets it down (Enter).",
			Kind: control.Primary, Enter: true, Do: h.take})
	h.refresh()
	h.dialog.Sized(880, 600).Show()
	return h
}

// drawing is the reading that is meant; false until the unit is said.
func (h *sheet) drawing() (template.Drawing, bool) {
	if h.unit < 0 || h.got.faults[h.unit] != nil {
		return template.Drawing{}, false
	}
	return h.got.as[h.unit], true
}

// sizeAs is how large the whole drawing is in one of the readings.
func (h *sheet) sizeAs(u int) string {
	if err := h.got.faults[u]; err != nil {
		return err.Error()
	}
	box := bounds(h.got.as[u].Loops[0], 0, false)
	return words.Size(box.W(), box.H(), h.b.Session.Job().Units)
}

// unitChoice asks what the file's numbers mean, with the size that each answer
// gives.
func (h *sheet) unitChoice() fyne.CanvasObject {
	if h.got.fixed {
		return control.SmallLines("The drawing says its own size.")
	}
	faces := []control.Face{{Text: "mm", Hint: "The file's numbers are millimetres."}, {Text: "inches", Hint: "The file's numbers are inches."}}
	first := 1
	if h.got.says {
		faces = append([]control.Face{{Text: "As it says", Hint: "The file says its unit: take it."}}, faces...)
		first = 0
	}
	h.units = control.NewSegments(h.b.Frame, faces, func(i int) {
		h.unit = first + i
		h.refresh()
	})
	words := "The file does not say its unit. The largest outline would be"
	if h.got.says {
		words = "The largest outline is"
	}
	var sizes []string
	for i, f := range faces {
		sizes = append(sizes, h.sizeAs(first+i)+" ("+strings.ToLower(f.Text[:1])+f.Text[1:]+")")
	}
	h.sizes.SetText(words + " " + strings.Join(sizes, ", or ") + ".")
	return control.Column(look.Gap, control.NewText("Unit").Bold(), h.units.Container, h.sizes)
}

func (h *sheet) kindChoice() fyne.CanvasObject {
	var faces []control.Face
	for _, w := range asWords {
		faces = append(faces, control.Face{Text: w.name, Hint: w.hint})
	}
	h.kinds = control.NewSegments(h.b.Frame, faces, func(i int) {
		h.as = As(i)
		h.refresh()
	})
	return h.kinds.Container
}

// turning asks how the outline is turned and whether it is mirrored.
func (h *sheet) turning() fyne.CanvasObject {
	h.turned = control.NewEntry(h.b.Frame, "By how many degrees the outline is turned counter-clockwise, such as 90 or 22.5.")
	h.turned.SetValue(units.FormatAngle(0))
	h.turned.Commit = func(text string) error {
		a, err := units.ParseAngle(text)
		if err != nil {
			return err
		}
		h.turn = a % (360 * units.Degree)
		h.turned.SetValue(units.FormatAngle(a))
		h.refresh()
		return nil
	}
	h.turned.Nudge = func(steps int) {
		h.turn = (h.turn + units.Angle(steps)*5*units.Degree) % (360 * units.Degree)
		h.turned.SetValue(units.FormatAngle(h.turn))
		h.refresh()
	}
	h.turned.OnFault = h.say
	mirror := control.NewCheck(h.b.Frame, "Mirrored", "Turned over, left to right, as a form drawing shows it.", func(on bool) {
		h.mirrored = on
		h.refresh()
	})
	return control.Row(look.Space, control.Middle(control.NewText("Turned").Muted()), control.Sized(80, 0, h.turned), mirror)
}

// refresh shows what has been chosen.
func (h *sheet) refresh() {
	if h.units != nil {
		i := h.unit
		if !h.got.says {
			i--
		}
		h.units.SetPicked(i)
	}
	h.kinds.SetPicked(int(h.as))
	d, ok := h.drawing()
	h.list.RemoveAll()
	h.tiles = nil
	h.picked = min(h.picked, max(0, len(d.Loops)-1))
	for i, l := range d.Loops {
		if i == mostListed {
			h.list.Add(control.SmallLines(fmt.Sprintf("and %d smaller ones", len(d.Loops)-i)))
			break
		}
		t := h.line(i, l)
		t.SetOn(i == h.picked)
		h.tiles = append(h.tiles, t)
		h.list.Add(t)
	}
	notes := "Nothing had to be joined or left out."
	if len(d.Notes) > 0 {
		notes = control.Sentence(strings.Join(d.Notes, "; "))
	}
	if !ok {
		h.list.Add(control.SmallLines("Say first whether the drawing is in millimetres or in inches."))
		notes = ""
	}
	h.notes.SetText(notes)
	h.say(nil)
	h.picture.Renew()
}

// mostListed bounds the list of outlines: of a template the first few count.
const mostListed = 60

// line is an outline to pick.
func (h *sheet) line(i int, l template.Loop) *control.Tile {
	sys := h.b.Session.Job().Units
	box := bounds(l, h.turn, h.mirrored)
	about := []string{amount.Of(l.Area, "mm2", sys), amount.Count(len(l.Nodes), "corner")}
	if n := len(l.Holes); n > 0 {
		about = append(about, amount.Count(n, "hole"))
	}
	body := control.Column(0, control.NewText(words.Size(box.W(), box.H(), sys)).Cut(),
		control.NewText(strings.Join(about, ", ")).Caption().Muted().Cut())
	return control.NewTile(h.b.Frame, "A click picks this outline.", control.Pad(look.Gap, look.Space, body), func() {
		h.picked = i
		for k, t := range h.tiles {
			t.SetOn(k == i)
		}
		h.picture.Renew()
	})
}

func (h *sheet) say(err error) {
	text := ""
	if err != nil {
		text = control.Sentence(err.Error())
	}
	if h.fault.Text != text {
		h.fault.SetText(text)
	}
}

// take takes the outline in hand, unless something is still to be said.
func (h *sheet) take() bool {
	h.turned.Settle()
	if err := h.turned.Fault(); err != nil {
		h.say(err)
		return false
	}
	d, ok := h.drawing()
	switch {
	case h.unit < 0:
		h.say(fmt.Errorf("say first whether the drawing is in millimetres or in inches"))
		return false
	case !ok:
		h.say(h.got.faults[h.unit])
		return false
	}
	s := h.b.Session
	p := put(d.Loops[h.picked], h.as, h.turn, h.mirrored, s.Design(), s.Job().Units)
	h.dialog.Close()
	h.b.Hands.Put(p)
	return false // it is closed already, and the board has the keyboard
}
