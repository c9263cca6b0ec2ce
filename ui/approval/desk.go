package approval

import (
	"time"

	"example.org/castwright/export/picture"
	"example.org/castwright/model/design"
	"example.org/castwright/model/draw"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/files"
	"example.org/castwright/ui/keys"
	"example.org/castwright/ui/session"
	look "example.org/castwright/ui/theme"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

// Desk is what one window does about approvals. It belongs to the main goroutine.
type Desk struct {
	// Chip says at all times how the option in hand stands to what was approved; a
	// click opens [Desk.Show].
	Chip *control.Button

	s     *session.Session
	frame *control.Frame
	files *files.Files
	run   func(keys.ID)
	later func(time.Duration, func())

	quality picture.Quality // of pictures

	waiting bool // the chip is to be looked at soon
	asked   int  // how often it was
}

// New is a desk on a session. run does an action of the table; later runs something
// on the main goroutine after a while.
func New(s *session.Session, f *control.Frame, files *files.Files, run func(keys.ID), later func(time.Duration, func())) *Desk {
	d := &Desk{s: s, frame: f, files: files, run: run, later: later, quality: picture.Good}
	d.Chip = control.NewButton(f, control.Face{Text: "Not approved yet"}, func() { run(keys.ShowApproved) })
	s.OnChange(d.changed)
	d.look()
	return d
}

// paper is the size that the maker chose last, or that of the job's units.
func (d *Desk) paper() draw.PaperSize {
	switch d.files.Settings.Paper {
	case "a4":
		return draw.PaperA4
	case "letter":
		return draw.PaperLetter
	}
	if d.s.Job().Units == units.Imperial {
		return draw.PaperLetter
	}
	return draw.PaperA4
}

func (d *Desk) setPaper(size draw.PaperSize) {
	word := "a4"
	if size == draw.PaperLetter {
		word = "letter"
	}
	if d.files.Settings.Paper != word {
		d.files.Settings.Paper = word
		d.files.Settings.Save()
	}
}

// today is the date as sheets print it.
func (d *Desk) today() string { return d.files.Now().Format("2 January 2006") }

// paperChoice is the two papers.
func (d *Desk) paperChoice(size *draw.PaperSize) *control.Segments {
	*size = d.paper()
	var s *control.Segments
	s = control.NewSegments(d.frame, []control.Face{
		{Text: "A4", Hint: "210 by 297 mm."}, {Text: "Letter", Hint: "8 1/2 by 11 in."},
	}, func(i int) {
		*size = [...]draw.PaperSize{draw.PaperA4, draw.PaperLetter}[i]
		s.SetPicked(i)
	})
	s.SetPicked(map[draw.PaperSize]int{draw.PaperA4: 0, draw.PaperLetter: 1}[*size])
	return s
}

// fileKind is PDF or PNG.
type fileKind int

func (k fileKind) ext() string { return [...]string{".pdf", ".png"}[k] }

// kindChoice is the two kinds of file.
func (d *Desk) kindChoice(kind *fileKind) *control.Segments {
	var s *control.Segments
	s = control.NewSegments(d.frame, []control.Face{
		{Text: "PDF", Hint: "To print and to send: drawings stay sharp, words can be searched."},
		{Text: "PNG", Hint: "One picture, to show on a telephone."},
	}, func(i int) {
		*kind = fileKind(i)
		s.SetPicked(i)
	})
	s.SetPicked(int(*kind))
	return s
}

// label is a row of a form: a word, level with the first line of what belongs to it.
func label(word string, o fyne.CanvasObject) fyne.CanvasObject {
	return container.New(row{}, control.NewText(word).Muted(), o)
}

type row struct{}

func (row) MinSize(objects []fyne.CanvasObject) fyne.Size {
	m := objects[1].MinSize()
	return fyne.NewSize(labelW+m.Width, fyne.Max(look.Target, m.Height))
}

func (row) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	h := objects[0].MinSize().Height
	objects[0].Move(fyne.NewPos(0, (fyne.Min(size.Height, 32)-h)/2))
	objects[0].Resize(fyne.NewSize(labelW, h))
	objects[1].Move(fyne.NewPos(labelW, 0))
	objects[1].Resize(fyne.NewSize(size.Width-labelW, size.Height))
}

const labelW = 84

// text is an entry of several lines.
func (d *Desk) text(hint, value string, rows int) *control.Entry {
	e := control.NewEntry(d.frame, hint)
	e.MultiLine, e.Wrapping = true, fyne.TextWrapWord
	e.SetMinRowsVisible(rows)
	e.SetValue(value)
	e.EscLeaves = true
	return e
}

// line is an entry of one line.
func (d *Desk) line(hint, value string) *control.Entry {
	e := control.NewEntry(d.frame, hint)
	e.SetValue(value)
	e.EscLeaves = true
	return e
}

// fault is where a dialog says why it does not close.
func fault() *widget.Label {
	f := control.SmallLines("")
	f.Importance = widget.DangerImportance
	return f
}

// together is several edits of the job as one step of undo, nil when there are none.
func together(name string, list ...edit.JobEdit) edit.JobEdit {
	return edit.JobEdit{Name: name, Apply: func(j design.Job) (design.Job, error) {
		out := j
		for _, e := range list {
			var err error
			if out, err = e.Apply(out); err != nil {
				return j, err
			}
		}
		return out, nil
	}}
}

func section(words string) fyne.CanvasObject {
	return control.Column(look.Gap, control.NewText(words).Bold(), control.Rule())
}
