package partsrow

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"example.org/castwright/model/units"
	"example.org/castwright/ui/board"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/session"
	look "example.org/castwright/ui/theme"
)

// TestARefusedSizeIsTold: a width that can't be is told in words above the shapes,
// until it is mended.
func TestARefusedSizeIsTold(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(look.New(look.Light))
	w := test.NewTempWindow(t, widget.NewLabel(""))
	f := control.NewFrame(w)
	f.Inline = true
	s := session.New(session.Blank(units.Metric), "")
	r := New(s, f, board.New(s, w))
	card := r.openShape()
	w.SetContent(card)
	var wide *control.Entry
	var fault *widget.Label
	var walk func(fyne.CanvasObject)
	walk = func(o fyne.CanvasObject) {
		switch k := o.(type) {
		case *control.Entry:
			if strings.HasPrefix(k.Hint(), "Width over all") {
				wide = k
			}
		case *widget.Label:
			fault = k
		case *fyne.Container:
			for _, c := range k.Objects {
				walk(c)
			}
		}
	}
	walk(card)
	if wide == nil || fault == nil || fault.Visible() {
		t.Fatalf("entry %v, words %v", wide, fault)
	}
	for text, want := range map[string]string{
		"abc": "is not a unit", "0": "above zero", "-5": "above zero", "": "othing is written", "1e300": "is not a unit",
	} {
		wide.SetText(text)
		wide.Settle()
		if !fault.Visible() || !strings.Contains(fault.Text, want) {
			t.Errorf("%q: shown %v, %q", text, fault.Visible(), fault.Text)
		}
		wide.SetText("1400")
		wide.Settle()
		if fault.Visible() {
			t.Errorf("after it was mended it still says %q", fault.Text)
		}
	}
}
