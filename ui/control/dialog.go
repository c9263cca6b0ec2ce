package control

import (
	"path/filepath"
	"regexp"
	"strings"
	"unicode"
	"unicode/utf8"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"

	"example.org/castwright/ui/icon"
	look "example.org/castwright/ui/theme"
)

// Dialog is a card in the middle of the window that waits for an answer. Enter
// gives the answer that is most likely wanted, Esc the one that changes nothing.
type Dialog struct {
	over       *overlay
	enter, esc func()
	first      fyne.Focusable
}

// Answer is a button of a dialog. Do, which may be nil, reports whether the
// dialog may close; Then, which may be nil, runs once it has closed.
type Answer struct {
	Text  string
	Hint  string
	Kind  Kind
	Enter bool // Enter gives this answer
	Esc   bool // Esc gives this answer
	Do    func() bool
	Then  func()
}

// Cancel is the answer that changes nothing.
func Cancel() Answer { return Answer{Text: "Cancel", Hint: "Changes nothing (Esc).", Esc: true} }

// NewDialog is a dialog with a title, some content and its answers from left to
// right.
func NewDialog(f *Frame, title string, content fyne.CanvasObject, answers ...Answer) *Dialog {
	d := &Dialog{}
	buttons := []fyne.CanvasObject{layout.NewSpacer()}
	for _, a := range answers {
		do := func() {
			if a.Do != nil && !a.Do() {
				return
			}
			d.Close()
			if a.Then != nil {
				a.Then()
			}
		}
		kind := a.Kind
		if kind == Plain {
			kind = Raised
		}
		b := NewButton(f, Face{Text: a.Text, Hint: a.Hint, Kind: kind}, do)
		buttons = append(buttons, Sized(96, 32, b))
		if a.Enter {
			d.enter, d.first = do, b
		}
		if a.Esc {
			d.esc = do
		}
	}
	head := Column(look.Space, NewText(title).Heading(), Rule())
	foot := Row(look.Space, buttons...)
	inner := container.New(layout.NewBorderLayout(head, foot, nil, nil), head, foot,
		Pad(look.Space, 0, content))
	d.over = newOverlay(f, Pad(look.Section, look.Section, inner), d.key)
	return d
}

// First has the keyboard when the dialog opens; without it the answer of Enter
// has.
func (d *Dialog) First(w fyne.Focusable) *Dialog { d.first = w; return d }

// Sized gives the dialog a size, where the window has room for it.
func (d *Dialog) Sized(w, h float32) *Dialog { d.over.wish = fyne.NewSize(w, h); return d }

// Show opens the dialog.
func (d *Dialog) Show() *Dialog {
	d.over.open(d.first)
	return d
}

// Close closes the dialog; the keyboard goes back to where it was.
func (d *Dialog) Close() { d.over.shut() }

// Enter gives the answer that Enter gives.
func (d *Dialog) Enter() {
	if d.enter != nil {
		d.enter()
	}
}

// Esc gives the answer that Esc gives.
func (d *Dialog) Esc() {
	if d.esc != nil {
		d.esc()
	}
}

func (d *Dialog) key(e *fyne.KeyEvent) bool {
	switch {
	case isEnter(e):
		d.Enter()
	case isEsc(e):
		d.Esc()
	}
	return true
}

// Ask asks a question of words alone.
func Ask(f *Frame, title, text string, answers ...Answer) {
	NewDialog(f, title, message(text), answers...).Show()
}

// Tell says something that only needs to be read.
func Tell(f *Frame, title, text string) {
	Ask(f, title, text, Answer{Text: "Close", Kind: Primary, Enter: true, Esc: true})
}

// TellFile says of what in which file it stands now, and more in lines of their own.
// Name and folder have a line each: a path in one breaks anywhere.
func TellFile(f *Frame, what, path string, more ...string) {
	lines := append([]string{filepath.Base(path), "in " + filepath.Dir(path)}, more...)
	Tell(f, what+" is written", strings.Join(lines, "\n"))
}

// Warn says what went wrong.
func Warn(f *Frame, title string, err error) {
	sign := container.New(layout.NewCustomPaddedVBoxLayout(0),
		Sized(28, 28, Icon(icon.Severe, theme.ColorNameError)))
	body := container.New(layout.NewBorderLayout(nil, nil, sign, nil), sign,
		message(Sentence(err.Error())))
	NewDialog(f, title, body, Answer{Text: "Close", Kind: Primary, Enter: true, Esc: true}).Show()
}

// fileName is how the name of a file looks that stands before a colon; one with
// blanks can't be told from words.
var fileName = regexp.MustCompile(`^[^/\\\s]+\.[A-Za-z][A-Za-z0-9]{1,4}$`)

// Sentence is an error's words with a capital and a full stop. The name of a file
// that it begins with stays as it is.
func Sentence(s string) string {
	if s == "" {
		return ""
	}
	if name, _, _ := strings.Cut(s, ": "); !fileName.MatchString(name) {
		first, n := utf8.DecodeRuneInString(s)
		s = string(unicode.ToUpper(first)) + s[n:]
	}
	if !strings.ContainsAny(s[len(s)-1:], ".!?") {
		s += "."
	}
	return s
}

// message is text of a width that reads well.
func message(text string) fyne.CanvasObject { return Narrow(440, Lines(text)) }

// Narrow holds text that runs over several lines to a width.
func Narrow(width float32, o fyne.CanvasObject) *fyne.Container {
	return container.New(narrow{width}, o)
}

type narrow struct{ width float32 }

func (n narrow) MinSize(objects []fyne.CanvasObject) fyne.Size {
	if objects[0].Size().Width != n.width {
		objects[0].Resize(fyne.NewSize(n.width, objects[0].MinSize().Height))
	}
	return fyne.NewSize(n.width, objects[0].MinSize().Height)
}

func (n narrow) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	objects[0].Move(fyne.NewPos(0, 0))
	objects[0].Resize(size)
}

// Popover is a small card beside what opened it. A click elsewhere or Esc closes
// it.
type Popover struct {
	// OnKey may take keys that nothing on the card wants; OnMoved hears where
	// in the window the mouse moves beside the card.
	OnKey   func(*fyne.KeyEvent) bool
	OnMoved func(fyne.Position)

	over   *overlay
	closed func()
}

// ShowPopover opens a card below something. first, which may be nil, gets the
// keyboard; closed, which may be nil, hears the end.
func ShowPopover(f *Frame, below, content fyne.CanvasObject, first fyne.Focusable,
	closed func()) *Popover {
	p := &Popover{closed: closed}
	p.over = newOverlay(f, Pad(look.Space+look.Gap, look.Space+look.Gap, content),
		func(e *fyne.KeyEvent) bool {
			if isEsc(e) {
				p.Close()
			} else if p.OnKey != nil {
				p.OnKey(e)
			}
			return true
		})
	p.over.anchor, p.over.outside = below, p.Close
	p.over.moved = func(at fyne.Position) {
		if p.OnMoved != nil {
			p.OnMoved(at)
		}
	}
	p.over.open(first)
	return p
}

// Close closes the card.
func (p *Popover) Close() {
	if p.over.shut() && p.closed != nil {
		p.closed()
	}
}
