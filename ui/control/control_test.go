package control_test

import (
	"errors"
	"image"
	"testing"

	"example.org/castwright/ui/control"
	look "example.org/castwright/ui/theme"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
)

func frame(t *testing.T) *control.Frame {
	t.Helper()
	test.NewTempApp(t).Settings().SetTheme(look.New(look.Light))
	w := test.NewTempWindow(t, widget.NewLabel(""))
	w.Resize(fyne.NewSize(800, 600))
	f := control.NewFrame(w)
	f.Inline = true
	return f
}

func press(o fyne.Focusable, name fyne.KeyName) { o.TypedKey(&fyne.KeyEvent{Name: name}) }

func TestSentence(t *testing.T) {
	for in, want := range map[string]string{
		"":                                   "",
		"the disk is full":                   "The disk is full.",
		"ärger mit der Platte!":              "Ärger mit der Platte!",
		"sink.svg: no outline was found":     "sink.svg: no outline was found.",
		"the file cut.jpg: it is damaged":    "The file cut.jpg: it is damaged.",
		"übung.svg: it is empty":             "übung.svg: it is empty.",
		"saving /home/a/job.json: disk full": "Saving /home/a/job.json: disk full.",
		"a width of 3.5 mm: too small":       "A width of 3.5 mm: too small.",
	} {
		if got := control.Sentence(in); got != want {
			t.Errorf("Sentence(%q) = %q, want %q", in, got, want)
		}
	}
}

// TestTheWheelScrollsOverAnEntry: a column of entries scrolls wherever the mouse is.
func TestTheWheelScrollsOverAnEntry(t *testing.T) {
	f := frame(t)
	var column []fyne.CanvasObject
	for range 60 {
		column = append(column, control.NewEntry(f, ""))
	}
	s := container.NewVScroll(control.Column(0, column...))
	f.Window.SetContent(s)
	f.Window.Resize(fyne.NewSize(300, 200))
	for i, y := range []float32{60, 70, 80} { // more than one of them is upon an entry
		test.Scroll(f.Window.Canvas(), fyne.NewPos(150, y), 0, -25)
		if want := float32(25 * (i + 1)); s.Offset.Y != want {
			t.Errorf("after %d turns of the wheel the column is at %g, want %g", i+1, s.Offset.Y, want)
		}
	}
}

func TestEntryTakesTheWholeText(t *testing.T) {
	f := frame(t)
	for _, was := range []string{"", "12", "a longer text"} {
		e := control.NewEntry(f, "")
		e.SetValue(was)
		f.Window.SetContent(e)
		f.Window.Canvas().Focus(e)
		for _, r := range "640" {
			e.TypedRune(r)
		}
		if e.Text != "640" {
			t.Errorf("640 typed over %q gives %q", was, e.Text)
		}
	}
}

// TestEntryShowsWhatItTook: what Commit takes stays as it was typed, unless Commit
// says how it is shown, in place of any value that stood there.
func TestEntryShowsWhatItTook(t *testing.T) {
	for _, c := range []struct {
		name, was, typed, want string
		commit                 func(e *control.Entry) error
	}{
		{"as typed", "25", "55", "55", func(*control.Entry) error { return nil }},
		{"as typed in an empty one", "", "55", "55", func(*control.Entry) error { return nil }},
		{"emptied", "25", "", "", func(*control.Entry) error { return nil }},
		{"as it is shown", "25 mm", "55", "55 mm", func(e *control.Entry) error { e.SetValue("55 mm"); return nil }},
		{"the same value", "25 mm", " 25.0", "25 mm", func(e *control.Entry) error { e.SetValue("25 mm"); return nil }},
	} {
		t.Run(c.name, func(t *testing.T) {
			f := frame(t)
			e := control.NewEntry(f, "")
			e.SetValue(c.was)
			e.Commit = func(string) error { return c.commit(e) }
			f.Window.SetContent(e)
			f.Window.Canvas().Focus(e)
			e.SetText(c.typed)
			f.Window.Canvas().Unfocus()
			if e.Text != c.want {
				t.Errorf("%q shows as %q, want %q", c.typed, e.Text, c.want)
			}
			if _, pending := e.Pending(); pending {
				t.Error("it counts as not taken yet")
			}
		})
	}
}

func TestEntryKeepsWhatItRefuses(t *testing.T) {
	f := frame(t)
	e := control.NewEntry(f, "")
	var faults []error
	e.OnFault = func(err error) { faults = append(faults, err) }
	bad := errors.New("no such size")
	e.Commit = func(text string) error {
		if text == "x" {
			return bad
		}
		e.SetValue(text + " mm")
		return nil
	}
	e.SetValue("10 mm")
	f.Window.SetContent(e)
	f.Window.Canvas().Focus(e)
	e.SetText("x")
	press(e, fyne.KeyReturn)
	if e.Text != "x" || e.Fault() != bad {
		t.Fatalf("refused, it holds %q, %v", e.Text, e.Fault())
	}
	e.SetValue("11 mm") // changed elsewhere meanwhile
	if e.Text != "x" {
		t.Errorf("a change elsewhere took %q away: it holds %q", "x", e.Text)
	}
	press(e, fyne.KeyEscape)
	if e.Text != "11 mm" || e.Fault() != nil {
		t.Errorf("Esc leaves %q, %v", e.Text, e.Fault())
	}
	e.SetText("12")
	f.Window.Canvas().Unfocus()
	if e.Text != "12 mm" {
		t.Errorf("left, it shows %q", e.Text)
	}
	if len(faults) != 2 || faults[0] != bad || faults[1] != nil {
		t.Errorf("told %v", faults)
	}
}

func TestEntryWithoutCommitKeepsItsText(t *testing.T) {
	f := frame(t)
	e := control.NewEntry(f, "")
	e.SetValue("start")
	e.SetText("typed")
	e.Settle()
	if e.Text != "typed" {
		t.Errorf("it holds %q", e.Text)
	}
}

func TestDialogKeys(t *testing.T) {
	for _, tt := range []struct {
		key         fyne.KeyName
		yes, closed bool
	}{
		{fyne.KeyReturn, true, true}, {fyne.KeyEnter, true, true}, {fyne.KeyEscape, false,
			true}, {fyne.KeyA, false, false},
	} {
		f := frame(t)
		yes, passed := false, false
		f.OnKey = func(*fyne.KeyEvent) { passed = true }
		control.NewDialog(f, "Sure?", widget.NewLabel("?"), control.Cancel(),
			control.Answer{Text: "Yes", Kind: control.Primary, Enter: true,
				Then: func() { yes = true }}).Show()
		b, ok := f.Window.Canvas().Focused().(*control.Button)
		if !ok || b.Face().Text != "Yes" {
			t.Fatalf("%v has the keyboard, want the answer of Enter", f.Window.Canvas().Focused())
		}
		press(b, tt.key)
		if yes != tt.yes || f.Busy() == tt.closed || passed {
			t.Errorf("%s: yes %v, open %v, the window got it %v", tt.key, yes, f.Busy(), passed)
		}
	}
}

// TestDialogOverDialog: only the upper one has the keys, and what is left below
// works again after it.
func TestDialogOverDialog(t *testing.T) {
	f := frame(t)
	lower := control.NewDialog(f, "Lower", widget.NewLabel(""), control.Cancel(),
		control.Answer{Text: "Go", Kind: control.Primary, Enter: true,
			Do: func() bool { control.Tell(f, "Upper", "read"); return false }}).Show()
	lower.Enter()
	if n := len(f.Window.Canvas().Overlays().List()); n != 2 {
		t.Fatalf("%d dialogs are open", n)
	}
	press(f.Window.Canvas().Focused(), fyne.KeyEscape)
	if n := len(f.Window.Canvas().Overlays().List()); n != 1 {
		t.Fatalf("after Esc %d dialogs are open", n)
	}
	press(f.Window.Canvas().Focused(), fyne.KeyEscape)
	if f.Busy() {
		t.Error("the lower one stays open")
	}
}

func TestDialogCanRefuseToClose(t *testing.T) {
	f := frame(t)
	d := control.NewDialog(f, "?", widget.NewLabel(""),
		control.Answer{Text: "Go", Enter: true, Do: func() bool { return false }}).Show()
	d.Enter()
	if !f.Busy() {
		t.Error("it closed")
	}
}

func TestPopoverClosesByAClickElsewhere(t *testing.T) {
	f := frame(t)
	b := control.NewButton(f, control.Face{Text: "open"}, nil)
	f.Window.SetContent(b)
	closed := 0
	control.ShowPopover(f, b, control.Sized(100, 80, widget.NewLabel("card")), nil, func() { closed++ })
	over := f.Window.Canvas().Overlays().Top().(fyne.Tappable)
	over.Tapped(&fyne.PointEvent{Position: fyne.NewPos(790, 590)})
	if f.Busy() || closed != 1 {
		t.Errorf("open %v, closed %d times", f.Busy(), closed)
	}
	control.ShowPopover(f, b, control.Sized(100, 80, widget.NewLabel("card")), nil, func() { closed++ })
	f.Key(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if f.Busy() || closed != 2 {
		t.Errorf("after Esc: open %v, closed %d times", f.Busy(), closed)
	}
}

func TestButton(t *testing.T) {
	f := frame(t)
	said := []string{}
	f.OnSay = func(s string) { said = append(said, s) }
	n := 0
	b := control.NewButton(f, control.Face{Text: "Go", Hint: "Goes."}, func() { n++ })
	f.Window.SetContent(b)
	test.Tap(b)
	press(b, fyne.KeySpace)
	press(b, fyne.KeyReturn)
	b.SetEnabled(false)
	test.Tap(b)
	if n != 3 {
		t.Errorf("done %d times, want 3", n)
	}
	b.MouseIn(nil)
	b.MouseOut()
	if len(said) != 2 || said[0] != "Goes." || said[1] != "" {
		t.Errorf("said %q", said)
	}
	if s := b.MinSize(); s.Height < 24 || s.Width < 24 {
		t.Errorf("%v is below the 24 points of WCAG 2.2, 2.5.8", s)
	}
}

func TestPictureIsPaintedOnceASize(t *testing.T) {
	f := frame(t)
	n := 0
	p := control.NewPicture(f, 40, 30, func(w, h int) control.Paint {
		return func() *image.RGBA { n++; return image.NewRGBA(image.Rect(0, 0, w, h)) }
	})
	f.Window.SetContent(p)
	f.Window.Canvas().Capture()
	first := n
	f.Window.Canvas().Capture()
	if n != first || n == 0 {
		t.Errorf("painted %d times, then %d", first, n)
	}
	p.Renew()
	f.Window.Canvas().Capture()
	if n != first+1 {
		t.Errorf("renewed, it was painted %d times more", n-first)
	}
}

func TestTextFits(t *testing.T) {
	f := frame(t)
	long := control.NewText("a text that is much too long for its place").Cut()
	f.Window.SetContent(control.Sized(80, 20, long))
	f.Window.Resize(fyne.NewSize(100, 60))
	if w := long.MinSize().Width; w > 80 {
		t.Errorf("it asks for %g", w)
	}
	if long.Text() != "a text that is much too long for its place" {
		t.Errorf("it forgot its text: %q", long.Text())
	}
}
