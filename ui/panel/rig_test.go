package panel

import (
	"strings"
	"testing"

	"example.org/castwright/assets"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/store"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/session"
	look "example.org/castwright/ui/theme"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
)

// rig is a panel in a window without a screen.
type rig struct {
	t      testing.TB
	s      *session.Session
	p      *Panel
	placed []geom.Vec
}

func newRig(t testing.TB, s *session.Session) *rig {
	t.Helper()
	test.NewTempApp(t).Settings().SetTheme(look.New(look.Light))
	w := test.NewTempWindow(t, widget.NewLabel(""))
	f := control.NewFrame(w)
	f.Inline = true
	r := &rig{t: t, s: s, p: New(s, f)}
	r.p.OnPlace = func(v geom.Vec) { r.placed = append(r.placed, v) }
	w.SetContent(r.p.Object)
	w.Resize(fyne.NewSize(Width, 640))
	return r
}

func blank(t *testing.T, sys units.System) *rig {
	return newRig(t, session.New(session.Blank(sys), ""))
}

// demo is a rig on the first demo job.
func demo(t *testing.T) *rig {
	t.Helper()
	j, err := store.Decode(assets.Demos()[0].Data)
	if err != nil {
		t.Fatal(err)
	}
	return newRig(t, session.New(j, ""))
}

// row gives the row of a label.
func (r *rig) row(label string) *row {
	r.t.Helper()
	var labels []string
	for _, o := range r.p.rows {
		if o.f.label == label {
			return o
		}
		labels = append(labels, o.f.label)
	}
	r.t.Fatalf("there is no field %q among %s", label, strings.Join(labels, ", "))
	return nil
}

// enter types a text into a field and presses Enter.
func (r *rig) enter(label, text string) {
	r.t.Helper()
	r.typeIn(label, text)
	r.key(label, fyne.KeyReturn)
}

func (r *rig) typeIn(label, text string) {
	r.t.Helper()
	e := r.row(label).entry
	r.p.frame.Window.Canvas().Focus(e)
	test.Type(e, text)
}

func (r *rig) key(label string, name fyne.KeyName) {
	r.t.Helper()
	r.row(label).entry.TypedKey(&fyne.KeyEvent{Name: name})
}

// text is what a field shows.
func (r *rig) text(label string) string {
	r.t.Helper()
	o := r.row(label)
	switch {
	case o.entry != nil:
		return o.entry.Text
	case o.reading != nil:
		return o.reading.Text()
	case o.choice != nil:
		return o.choice.Selected
	}
	return o.f.text
}
