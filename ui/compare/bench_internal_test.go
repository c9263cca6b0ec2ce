package compare

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"example.org/castwright/model/geom"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/keys"
	"example.org/castwright/ui/session"
	look "example.org/castwright/ui/theme"
)

// What a step of moving, of zooming and of wiping takes of the window's goroutine, at
// the size of a window: what is there already is looked at otherwise, new drawings
// come from elsewhere.
func BenchmarkLook(b *testing.B) {
	for _, size := range []fyne.Size{fyne.NewSize(1280, 800), fyne.NewSize(2560, 1440)} {
		test.NewTempApp(b).Settings().SetTheme(look.New(look.Light))
		w := test.NewTempWindow(b, widget.NewLabel(""))
		f := control.NewFrame(w)
		f.Inline = true
		p := New(session.New(demo(b), ""), f, func() {}, func(keys.ID) {})
		w.SetPadded(false)
		w.SetContent(p.Object)
		w.Resize(size)
		p.Open()
		seen(p.panes[0])
		seen(p.panes[1])
		p.busy = [2]bool{true, true} // nobody draws anew
		name := "1280x800"
		if size.Width > 1280 {
			name = "2560x1440"
		}
		both := func() {
			seen(p.panes[0])
			seen(p.panes[1])
		}
		d := geom.Vec{X: 3}
		b.Run("pan/"+name, func(b *testing.B) {
			for b.Loop() {
				p.pan(d)
				d = d.Mul(-1)
				both()
			}
		})
		b.Run("zoom/"+name, func(b *testing.B) {
			k := 1.01
			for b.Loop() {
				p.zoom(geom.Vec{X: 300, Y: 200}, k)
				k = 1 / k
				both()
			}
		})
		p.busy = [2]bool{}
		p.ToggleOver()
		seen(p.one)
		b.Run("wipe/"+name, func(b *testing.B) {
			n := p.one.Size()
			x := 0.3
			for b.Loop() {
				p.wiper.share = x
				x = 1 - x
				p.one.draw(int(n.Width), int(n.Height))
			}
		})
	}
}
