package ui

import (
	"example.org/castwright/ui/control"
	look "example.org/castwright/ui/theme"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
)

// hintLine says what the next click or key does; over a control it says what
// that does.
type hintLine struct {
	object fyne.CanvasObject
	text   *control.Words
	state  *control.Words
	drawn  string // what the drawing says
	cover  string // what a page over the drawing says, before it
	said   string // what a control says, before both
}

// stateMost is how wide the state may be, in points: a reason why nothing can be kept
// wraps, and leaves the hint its room.
const stateMost = 290

// newHintLine is the line, with something that is always seen beside the state.
func newHintLine(beside fyne.CanvasObject) *hintLine {
	h := &hintLine{text: control.NewWords(), state: control.NewWords().Muted().Narrow(stateMost)}
	h.object = control.Ground(theme.ColorNameHeaderBackground,
		control.Pad(look.Gap, look.Space+look.Gap,
			container.NewBorder(nil, nil, nil, control.Row(look.Space, beside,
				control.Pad(0, look.Space, h.state)), h.text)))
	return h
}

// base is what the drawing says.
func (h *hintLine) base(text string) {
	h.drawn = text
	h.show()
}

// over is what a page over the drawing says, "" when it is gone.
func (h *hintLine) over(text string) {
	h.cover = text
	h.show()
}

// say is what a control says, "" when it is done.
func (h *hintLine) say(text string) {
	h.said = text
	h.show()
}

// saved is whether the job is saved.
func (h *hintLine) saved(text string) { h.state.SetText(text) }

func (h *hintLine) show() {
	for _, text := range []string{h.said, h.cover, h.drawn} {
		if text != "" {
			h.text.SetText(text)
			return
		}
	}
	h.text.SetText("")
}
