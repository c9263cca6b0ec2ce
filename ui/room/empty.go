package room

import (
	"errors"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/store"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/icon"
	look "example.org/castwright/ui/theme"
)

// empty is what stands in the photograph's place while there is none.
type empty struct {
	object *fyne.Container
	p      *Page
	title  *control.Text
	body   *widget.Label
	choose *control.Button
	out    *control.Button
	said   string
}

const howTo = "1.  Choose a photograph in which the present top, or a sheet of paper lying on it, is seen with all four corners. Clear the top first: what stands on it is painted over.\n" +
	"2.  Drag the four corners onto it and type its size.\n" +
	"3.  The new top is set in, in the right perspective and size and in the light of the room.\n\n" +
	"The photograph, JPEG or PNG, is kept beside the job as it is, and is never changed."

func newEmpty(p *Page) *empty {
	e := &empty{p: p, title: control.NewText("").Heading(), body: control.Lines("")}
	e.choose = control.NewButton(p.frame, control.Face{Icon: icon.Open, Text: "Choose a photograph…",
		Hint: "Chooses a photograph of the client's room.", Kind: control.Primary}, p.Choose)
	e.out = control.NewButton(p.frame, control.Face{Icon: icon.Remove, Text: "Take the room out",
		Hint: "Takes the room out of the job; undo brings it back.", Kind: control.Raised}, p.Remove)
	buttons := control.Row(look.Space, e.choose, e.out)
	card := container.NewStack(control.NewFill(look.Surface, 8), control.Pad(look.Section, look.Section+look.Space,
		control.Column(look.Space, control.Pad(0, 5, e.title), control.Narrow(460, e.body), control.Pad(0, 5, buttons))))
	e.object = control.Ground(look.Ground, container.NewCenter(card))
	return e
}

// say says what is going on, "" that it is over.
func (e *empty) say(words string) {
	e.said = words
	if e.p.Shown() {
		e.show(e.p.room())
	}
}

// show shows the steps, or why the photograph is not there.
func (e *empty) show(r design.Room) {
	if e.p.photo != nil && e.said == "" {
		e.object.Hide()
		return
	}
	e.object.Show()
	lost := e.p.lost
	busy := e.said != "" || !r.None() && lost == nil
	visible(e.choose, !busy)
	visible(e.out, !busy && !r.None())
	face := e.choose.Face()
	face.Text = "Choose a photograph…"
	switch {
	case busy:
		e.title.SetText("Reading the photograph…")
		e.body.SetText("")
	case r.None():
		e.title.SetText("The new top in the client's room")
		e.body.SetText(howTo)
	default:
		e.title.SetText("The photograph of the room can't be shown")
		if errors.Is(lost, store.ErrPhotoChanged) {
			e.title.SetText("The photograph of the room has changed")
		}
		e.body.SetText(control.Sentence(lost.Error()))
		face.Text = "Choose it again…"
	}
	e.choose.SetFace(face)
	e.object.Refresh()
}

// Remove takes the room out of the job.
func (p *Page) Remove() {
	if err := p.s.DoJob(edit.TakeRoom()); err != nil {
		control.Warn(p.frame, "That can't be done", err)
	}
}
