package jobsheet

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/panel"
	"example.org/castwright/ui/session"
	look "example.org/castwright/ui/theme"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

// sheet is the open dialog: the job as it would be, and its entries.
type sheet struct {
	frame   *control.Frame
	s       *session.Session
	job     design.Job
	entries []*control.Entry
	fault   *widget.Label
}

// Show opens the sheet of a session's job. Its answer is one step of undo.
func Show(s *session.Session, f *control.Frame) {
	h := &sheet{frame: f, s: s, job: s.Job(), fault: control.SmallLines("")}
	h.fault.Importance = widget.DangerImportance
	h.fault.Hide()
	left := control.Column(look.Gap, h.client()...)
	right := control.Column(look.Gap, h.materials()...)
	columns := container.NewGridWithColumns(2, control.Pad(0, look.Space, left),
		control.Pad(0, look.Space, right))
	body := container.NewBorder(nil, h.fault, nil, nil,
		container.NewVScroll(columns))
	control.NewDialog(f, "Job and materials", body, control.Cancel(),
		control.Answer{Text: "Apply", Hint: "Takes all of it over (Enter).", Kind: control.Primary,
			Enter: true, Do: h.take}).
		First(h.entries[0]).Sized(880, 660).Show()
}

// take applies what was typed, unless some of it can't be read.
func (h *sheet) take() bool {
	for _, e := range h.entries {
		e.Settle()
		if err := e.Fault(); err != nil {
			h.say(err)
			h.frame.Window.Canvas().Focus(e)
			return false
		}
	}
	if err := h.s.DoJob(change(h.job)); err != nil {
		h.say(err)
		return false
	}
	return true
}

// change gives a job the client, site and materials of another.
func change(to design.Job) edit.JobEdit {
	steps := []edit.JobEdit{edit.SetClient(to.Client), edit.SetSite(to.Site),
		edit.SetMaterials(to.Materials)}
	return edit.JobEdit{Name: "Change job and materials",
		Apply: func(j design.Job) (design.Job, error) {
			out := j
			for _, s := range steps {
				var err error
				if out, err = s.Apply(out); err != nil {
					return j, err
				}
			}
			return out, nil
		}}
}

func (h *sheet) say(err error) {
	if err == nil {
		h.fault.Hide()
		return
	}
	h.fault.SetText(control.Sentence(err.Error()))
	h.fault.Show()
}

// line is a label with its entry; commit reads what was typed.
func (h *sheet) line(label, hint, value, unit string, commit func(string) error) fyne.CanvasObject {
	e := control.NewEntry(h.frame, hint)
	e.SetValue(value)
	e.Commit = commit
	e.OnFault = h.say
	h.entries = append(h.entries, e)
	return h.row(label, unit, e)
}

func (h *sheet) row(label, unit string, o fyne.CanvasObject) fyne.CanvasObject {
	return container.New(form{}, control.NewText(label).Muted().Cut(), o, control.NewText(unit).Muted())
}

func (h *sheet) text(label, hint string, at *string) fyne.CanvasObject {
	return h.line(label, hint, *at, "", func(t string) error { *at = strings.TrimSpace(t); return nil })
}

func (h *sheet) percent(label, hint string, at *float64) fyne.CanvasObject {
	// Shares are kept as fractions; a whole number of millionths survives.
	shown := math.Round(*at*1e8) / 1e6
	return h.line(label, hint, strconv.FormatFloat(shown, 'f', -1, 64), "%", func(t string) error {
		x, err := panel.ReadPercent(t)
		if err == nil {
			*at = x / 100
		}
		return err
	})
}

// length is a line for a length that need not be known.
func (h *sheet) length(label, hint string, at *units.Length) fyne.CanvasObject {
	return h.ofLength(label, hint, *at, "not known", func(l units.Length) { *at = l })
}

// ofLength is a line for a length that is not below zero; empty is what nothing
// means there, "" when it must be given.
func (h *sheet) ofLength(label, hint string, l units.Length, empty string, set func(units.Length)) fyne.CanvasObject {
	e := panel.NewLengthEntry(h.frame, hint, h.job.Units, l, empty)
	commit := e.Commit
	e.Commit = func(t string) error {
		err := commit(t)
		if err == nil && e.Length() < 0 {
			err = fmt.Errorf("%s is below zero: type a length", label)
			if empty != "" {
				err = fmt.Errorf("%w, or nothing when it is %s", err, empty)
			}
		}
		if err == nil {
			set(e.Length())
		}
		return err
	}
	nudge := e.Nudge
	e.Nudge = func(steps int) { nudge(steps); set(e.Length()) }
	e.OnFault = h.say
	h.entries = append(h.entries, e.Entry)
	return h.row(label, "", e.Entry)
}

func heading(text string) fyne.CanvasObject {
	return control.Column(look.Gap, control.NewText(text).Bold(), control.Rule())
}

func (h *sheet) client() []fyne.CanvasObject {
	j := &h.job
	notes := control.NewEntry(h.frame, "Whatever is to be remembered of the place.")
	notes.MultiLine, notes.Wrapping = true, fyne.TextWrapWord
	notes.SetMinRowsVisible(4)
	notes.SetValue(j.Site.Notes)
	notes.Commit = func(t string) error { j.Site.Notes = t; return nil }
	out := []fyne.CanvasObject{
		heading("Client and site"),
		h.text("Client", "Name of the client, as on the sheets.", &j.Client),
		h.row("Site notes", "", notes),
	}
	h.entries = append(h.entries, notes)
	helpers := float64(j.Site.Helpers)
	return append(out,
		heading("The way in"),
		h.length("Door, width", "The narrowest door on the way; nothing when it is not known.",
			&j.Site.DoorWidth),
		h.length("Door, height", "Height of that door.", &j.Site.DoorHeight),
		h.length("Stair, width", "Clear width of the narrowest stair or passage.", &j.Site.StairWidth),
		h.length("Stair, turn", "Clear length at the tightest turn or landing.", &j.Site.StairTurn),
		h.line("People to carry", "How many carry, you included; 0 when it is not known.",
			strconv.Itoa(int(helpers)), "", func(t string) error {
				n, err := strconv.Atoi(strings.TrimSpace(t))
				if err != nil || n < 0 || n > 100 {
					return fmt.Errorf("%q people: type a whole number, 0 when it is not known", t)
				}
				j.Site.Helpers = n
				return nil
			}),
		heading("Money"),
		h.text("Currency", "Sign or letters of your money, such as $ or EUR.", &j.Materials.Currency))
}

func (h *sheet) materials() []fyne.CanvasObject {
	m := &h.job.Materials
	return []fyne.CanvasObject{
		heading("Mix"),
		h.text("Name", "Name of the bagged mix.", &m.Mix.Name),
		h.price("Price", "", measure{"bag", "bag", 1}, &m.Mix.BagPrice),
		h.number("Bag", "Dry mix in a bag, from its data sheet.", mass, &m.Mix.BagMass),
		h.number("Yield", "Fresh mix from a bag, from its data sheet.", bulk, &m.Mix.BagYield),
		h.number("Water", "To a bag, from its data sheet.", liquid, &m.Mix.BagWater),
		h.number("Fresh density", "In the form.", density, &m.Mix.FreshDensity),
		h.number("Cured density", "When dry.", density, &m.Mix.CuredDensity),
		h.percent("Waste", "Added for spill and bucket.", &m.Mix.Waste),
		heading("Resin"),
		h.text("Name", "Name of the casting resin.", &m.Resin.Name),
		h.price("Price", ", mixed", measure{"litre", "quart", units.QuartL}, &m.Resin.LitrePrice),
		h.number("Parts A", "By volume.", parts, &m.Resin.PartsA),
		h.number("Parts B", "By volume.", parts, &m.Resin.PartsB),
		h.number("Density", "Mixed.", density, &m.Resin.Density),
		h.depth("Deepest pour", "The largest depth of one pour, from its data sheet.", &m.Resin.MaxPour),
		h.percent("Waste", "Added for cups and drips.", &m.Resin.Waste),
		heading("Glass"),
		h.text("Name", "Name of the glass.", &m.Glass.Name),
		h.price("Price", "", measure{"kilogram", "pound", units.PoundKG}, &m.Glass.KgPrice),
		h.number("Density", "Of the solid glass.", density, &m.Glass.Density),
		h.percent("Waste", "Added for what is left over.", &m.Glass.Waste),
	}
}

// form sets a label, an entry and a unit beside each other.
type form struct{}

const (
	labelWidth = 112
	unitWidth  = 80
)

func (form) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(labelWidth+120+unitWidth, fyne.Max(look.Target, objects[1].MinSize().Height))
}

func (form) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	x := float32(0)
	for i, w := range []float32{labelWidth, size.Width - labelWidth - unitWidth, unitWidth} {
		h, y := objects[i].MinSize().Height, float32(0)
		if i == 1 {
			h = size.Height
		} else {
			y = (fyne.Min(size.Height, look.Target) - h) / 2
		}
		if i == 2 {
			x += look.Space
		}
		objects[i].Move(fyne.NewPos(x, y))
		objects[i].Resize(fyne.NewSize(w-look.Space*float32(i/2), h))
		x += w
	}
}
