package control

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"
)

// Choice is a list that drops down.
type Choice struct {
	widget.Select
	frame *Frame
	hint  string
	quiet bool
}

// NewChoice is a list of words; picked hears the number of the one picked.
func NewChoice(f *Frame, hint string, words []string, picked func(int)) *Choice {
	c := &Choice{frame: f, hint: hint}
	c.Options = words
	c.OnChanged = func(string) {
		if !c.quiet && picked != nil {
			picked(c.SelectedIndex())
		}
	}
	c.ExtendBaseWidget(c)
	return c
}

// SetPicked shows one of the words without picking it.
func (c *Choice) SetPicked(i int) {
	if i == c.SelectedIndex() {
		return
	}
	c.quiet = true
	if i < 0 {
		c.ClearSelected()
	} else {
		c.SetSelectedIndex(i)
	}
	c.quiet = false
}

// TypedKey lets Enter and Esc go on to the window; Space opens the list and the
// arrows go through it.
func (c *Choice) TypedKey(e *fyne.KeyEvent) {
	if isEnter(e) || isEsc(e) {
		c.frame.Key(e)
		return
	}
	c.Select.TypedKey(e)
}

// FocusGained shows the focus and says what is chosen here.
func (c *Choice) FocusGained() {
	c.Select.FocusGained()
	c.frame.reveal(c)
	c.frame.Say(c.hint)
}

// FocusLost gives the hint line back.
func (c *Choice) FocusLost() {
	c.Select.FocusLost()
	c.frame.Say("")
}

// MouseIn says what is chosen here.
func (c *Choice) MouseIn(e *desktop.MouseEvent) {
	c.Select.MouseIn(e)
	c.frame.Say(c.hint)
}

// MouseOut gives the hint line back.
func (c *Choice) MouseOut() {
	c.Select.MouseOut()
	c.frame.Say("")
}

// Segments is a row of a few buttons, one of which is on.
type Segments struct {
	*fyne.Container
	buttons []*Button
}

// NewSegments is a row of faces; picked hears the number of the one picked.
func NewSegments(f *Frame, faces []Face, picked func(int)) *Segments {
	s := &Segments{Container: container.New(layout.NewGridLayout(len(faces)))}
	for i, face := range faces {
		if face.Kind == Plain {
			face.Kind = Raised
		}
		b := NewButton(f, face, func() {
			if !s.buttons[i].On() {
				picked(i)
			}
		})
		s.buttons = append(s.buttons, b)
		s.Add(b)
	}
	return s
}

// SetPicked switches one on without picking it; -1 none.
func (s *Segments) SetPicked(i int) {
	for k, b := range s.buttons {
		b.SetOn(k == i)
	}
}

// SetEnabled enables or disables all of them.
func (s *Segments) SetEnabled(enabled bool) {
	for _, b := range s.buttons {
		b.SetEnabled(enabled)
	}
}

// Check is a box to tick.
type Check struct {
	widget.Check
	frame *Frame
	hint  string
	quiet bool
}

// NewCheck is a box with its words.
func NewCheck(f *Frame, words, hint string, changed func(bool)) *Check {
	c := &Check{frame: f, hint: hint}
	c.Text = words
	c.OnChanged = func(on bool) {
		if !c.quiet {
			changed(on)
		}
	}
	c.ExtendBaseWidget(c)
	return c
}

// SetTicked ticks the box or not, without telling.
func (c *Check) SetTicked(on bool) {
	if on != c.Checked {
		c.quiet = true
		c.SetChecked(on)
		c.quiet = false
	}
}

// TypedKey lets keys go on to the window.
func (c *Check) TypedKey(e *fyne.KeyEvent) {
	if isEnter(e) || isEsc(e) {
		c.frame.Key(e)
		return
	}
	c.Check.TypedKey(e)
}

// FocusGained shows the focus and says what the box is for.
func (c *Check) FocusGained() {
	c.Check.FocusGained()
	c.frame.reveal(c)
	c.frame.Say(c.hint)
}

// FocusLost gives the hint line back.
func (c *Check) FocusLost() {
	c.Check.FocusLost()
	c.frame.Say("")
}

// MouseIn says what the box is for.
func (c *Check) MouseIn(e *desktop.MouseEvent) {
	c.Check.MouseIn(e)
	c.frame.Say(c.hint)
}

// MouseOut gives the hint line back.
func (c *Check) MouseOut() {
	c.Check.MouseOut()
	c.frame.Say("")
}
