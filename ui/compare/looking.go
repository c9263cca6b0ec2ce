package compare

import (
	"fmt"
	"image"
	"math"
	"time"

	"fyne.io/fyne/v2"

	"example.org/castwright/export/picture"
	"example.org/castwright/export/raster"
	"example.org/castwright/model/draw"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/scene"
	"example.org/castwright/model/units"
	look "example.org/castwright/ui/theme"
	"example.org/castwright/ui/view"
)

// ask is a picture that is taken, or would be.
type ask struct {
	of   subject
	view view.View
}

// front reports whether pictures from the front are shown, which have a page of
// their own; else what is seen is to the scale of the drawing.
func (p *Page) front() bool { return p.picture && !p.above }

// lock is how both sides are looked at now.
func (p *Page) lock() *lock {
	if p.front() {
		return &p.eye
	}
	return &p.plan
}

// aim makes the lock fit what is shown and its size, and says the scale.
func (p *Page) aim() {
	w, h := float64(p.size.Width), float64(p.size.Height)
	if w < 8 || h < 8 {
		return
	}
	fitted := p.Fitted()
	if p.front() {
		page := geom.Box{Min: geom.Vec{Y: -h}, Max: geom.Vec{X: w}}
		p.eye = aimed(p.eye, w, h, [2]geom.Box{page, page}, geom.Vec{}, [2]view.Edges{}, fitted)
	} else {
		var tops [2]geom.Box
		for i, s := range p.of {
			tops[i] = geom.EmptyBox()
			if s.err == nil {
				if b := s.Report.Solid.Outline.Bounds(); !b.Empty() && b.Min.Finite() && b.Max.Finite() {
					tops[i] = b
				}
			}
		}
		beside := p.beside()
		p.plan = aimed(p.plan, w, h, tops, beside, p.rooms(w, h, tops, beside, fitted), fitted)
	}
	p.words.SetText(p.scaleWords())
}

// aimed is a lock on other tops, or the same one when they are those that it has.
func aimed(l lock, w, h float64, tops [2]geom.Box, beside geom.Vec, rooms [2]view.Edges, fitted bool) lock {
	if l.tops != tops || l.fitted != fitted || l.beside != beside {
		return newLock(w, h, tops, beside, rooms, fitted)
	}
	l.rooms = rooms
	return l.resize(w, h)
}

// scaleWords says at which scale the two are seen.
func (p *Page) scaleWords() string {
	sys := p.s.Job().Units
	a, b := p.plan.scales()
	switch {
	case p.front() && p.Fitted():
		return "Each as large as fits, so not to one scale."
	case p.front():
		return "Both seen from the same place, at the same scale."
	case p.Fitted() && math.Abs(a/b-1) > 0.01:
		return "Each as large as fits: left " + ratio(a, sys) + ", right " + ratio(b, sys) + ", on this screen."
	}
	return "Both at the same scale, " + ratio(a, sys) + " on this screen."
}

// beside is what is added to the second side's places to lay it onto the first.
func (p *Page) beside() geom.Vec {
	if p.of[0].err != nil || p.of[1].err != nil {
		return geom.Vec{}
	}
	return onto(p.of[0].Report.Solid, p.of[1].Report.Solid)
}

// ratio says a scale of so many millimetres to the point of a screen of 96 to the
// inch, as near as such a screen is to that.
func ratio(mm float64, sys units.System) string {
	one := mm * view.ActualScale
	text := fmt.Sprintf("%.2g", one)
	if one >= 100 {
		text = fmt.Sprintf("%.0f", one)
	}
	if one < 1 {
		return fmt.Sprintf("about %.2g:1", 1/one)
	}
	if sys == units.Imperial && one < 60 {
		foot := units.FromMM(math.Max(1, math.Round(304.8/one/25.4*8)) * 25.4 / 8)
		return fmt.Sprintf("about %s to the foot (1:%s)", units.Format(foot, sys), text)
	}
	return "about 1:" + text + ""
}

// pan shifts both sides.
func (p *Page) pan(d geom.Vec) { p.move(p.lock().pan(d)) }

// zoom scales both sides about a place.
func (p *Page) zoom(at geom.Vec, factor float64) { p.move(p.lock().zoom(at, factor)) }

// ZoomIn brings both sides nearer.
func (p *Page) ZoomIn() { p.zoomMiddle(1.25) }

// ZoomOut shows more of both sides.
func (p *Page) ZoomOut() { p.zoomMiddle(1 / 1.25) }

func (p *Page) zoomMiddle(factor float64) {
	p.zoom(geom.Vec{X: float64(p.size.Width) / 2, Y: float64(p.size.Height) / 2}, factor)
}

// Fit shows the whole of both sides.
func (p *Page) Fit() {
	p.picked = -1
	p.lists.pick(-1)
	p.move(p.lock().fit())
}

func (p *Page) move(l lock) {
	*p.lock() = l
	p.stopped = false
	p.words.SetText(p.scaleWords())
	p.renew()
}

// resized is that a pane has another size.
func (p *Page) resized(size fyne.Size) {
	if size != p.size {
		p.size = size
		p.aim()
		p.renew()
	}
}

// renew has what is seen painted again.
func (p *Page) renew() {
	if p.over {
		p.one.renew()
		return
	}
	for _, n := range p.panes {
		n.renew()
	}
}

// find brings a change, or what lies at a place of each side, into the middle of both.
func (p *Page) find(i int, was, is geom.Box) {
	p.picked = i
	p.lists.pick(i)
	l := p.lock()
	if p.front() {
		was, is = p.onPage(0, was), p.onPage(1, is)
	}
	p.move(l.centre(was, is))
}

// onPage is where a box of a design lies on the page of a picture from the front, as
// the lock knows it.
func (p *Page) onPage(i int, b geom.Box) geom.Box {
	cam, face, ok := p.camera(i)
	out := geom.EmptyBox()
	if b.Empty() || !ok {
		return out
	}
	for _, q := range [...]geom.Vec{b.Min, {X: b.Max.X, Y: b.Min.Y}, b.Max, {X: b.Min.X, Y: b.Max.Y}} {
		if x, y, ok := cam.At(q.X, q.Y, face); ok {
			out = out.Include(geom.Vec{X: x / p.px, Y: -y / p.px})
		}
	}
	return out
}

// pixels is the size of a side in device pixels.
func (p *Page) pixels() (w, h int) {
	return int(math.Round(float64(p.size.Width) * p.px)), int(math.Round(float64(p.size.Height) * p.px))
}

// subject is what is seen of a side now; false while that is not known.
func (p *Page) subject(i int) (subject, bool) {
	s := p.of[i]
	if s.err != nil {
		return subject{}, false
	}
	out := subject{print: s.print, photo: p.picture}
	switch {
	case !p.picture:
		out.drawn = drawn{dimensions: p.Dimensions(), dark: look.IsDark(), imperial: p.s.Job().Units == units.Imperial}
	case p.above:
		out.seen = picture.View{Kind: picture.Top}
	default:
		cam, _, ok := p.camera(i)
		if !ok {
			return out, false
		}
		out.seen = picture.View{Kind: picture.Through, Camera: cam}
		out.w, out.h = p.pixels()
	}
	return out, true
}

// place is where a place of a side's design, mm, is seen, in pixels.
func (p *Page) place(i int, v view.View) func(geom.Vec) geom.Vec {
	if !p.front() {
		return v.Point
	}
	cam, face, ok := p.camera(i)
	return func(q geom.Vec) geom.Vec {
		if x, y, seen := cam.At(q.X, q.Y, face); ok && seen {
			return v.Point(geom.Vec{X: x / p.px, Y: -y / p.px})
		}
		return geom.Vec{X: -1e4, Y: -1e4}
	}
}

// theme is the colours of the window.
func themed() draw.Theme {
	if look.IsDark() {
		return draw.Dark()
	}
	return draw.Light()
}

// paint paints a side as far as it is there, and has the rest made.
func (p *Page) paint(dst *image.RGBA, i int, px float64) {
	p.px = px
	v := p.lock().views[i].Pixels(px)
	th := themed()
	note := scene.Page{W: float64(dst.Rect.Dx()), H: float64(dst.Rect.Dy())}
	fill(dst, th.Ground)
	say := func(words string) {
		size := 13 * px
		// Each where its side is seen, whatever lies over it.
		at, room := geom.Vec{X: note.W / 2, Y: note.H / 2}, 0.9*note.W
		if p.over {
			at.X, room = note.W*(0.25+0.5*float64(i)), 0.45*note.W
		}
		note.Items = append(note.Items, scene.Text{At: at, Size: size, Colour: th.Ink, Text: scene.Fitted(words, size, false, room)})
	}
	of, ok := p.subject(i)
	switch {
	case p.of[i].err != nil:
		say(p.of[i].err.Error())
	case p.of[i].Report.Solid.Outline.Bounds().Empty():
		say("Nothing is drawn here yet.")
	default:
		var l *layer
		exact := false
		if ok {
			if l, exact = p.kept.best(of, v); l != nil {
				l.paint(dst, v)
			}
		}
		switch {
		case l != nil || !p.picture:
		case p.stopped:
			say("Stopped before this picture was taken.")
		default:
			say("The picture is being set up…")
		}
		if p.marks && l != nil {
			m := draw.Marks{Place: p.place(i, v), Unit: px * view.ActualScale, Theme: th, Marked: p.marksOne, Picked: p.picked}
			note.Items = append(note.Items, m.Items(p.of[i].Side, p.changes, i == 1)...)
		}
		if p.picture {
			p.askPictures()
		} else if !exact {
			p.makeDrawing(i, of, v, dst.Rect)
		}
	}
	note.Items = append(note.Items, p.chip(i, px, note.W, th)...)
	raster.Draw(dst, note)
}

// mostMarked is the most changes that are all marked: more hide what they mark.
const mostMarked = 12

// marksOne reports whether a change is marked: the one picked, and all where there are
// not too many; in a picture but what is seen there.
func (p *Page) marksOne(i int) bool {
	if i == p.picked {
		return true
	}
	if len(p.changes) > mostMarked || !p.picture {
		return len(p.changes) <= mostMarked
	}
	for _, s := range p.of {
		for _, x := range s.Option.Design.Supports {
			if x.ID == p.changes[i].Part {
				return false
			}
		}
	}
	return true
}

func fill(dst *image.RGBA, c scene.Colour) {
	if len(dst.Pix) < 4 {
		return
	}
	copy(dst.Pix, []byte{c.R, c.G, c.B, 0xff})
	for n := 4; n < len(dst.Pix); n *= 2 {
		copy(dst.Pix[n:], dst.Pix[:n])
	}
}

// chip is the name of a side in its upper corner, on a pane w pixels wide.
func (p *Page) chip(i int, px, w float64, th draw.Theme) []scene.Item {
	box := p.nameBox(i, w/px)
	box = geom.Box{Min: box.Min.Mul(px), Max: box.Max.Mul(px)}
	return []scene.Item{scene.Fill{Loops: []geom.Loop{{box.Min, {X: box.Max.X, Y: box.Min.Y}, box.Max, {X: box.Min.X, Y: box.Max.Y}}},
		Paint: scene.Paint{Colour: th.Ink}}, scene.Text{At: box.Centre(), Size: nameSize * px, Bold: true, Colour: th.Halo, Text: p.nameOf(i, w/px)}}
}

// makeDrawing has a side drawn in the background; one at a time of each side.
func (p *Page) makeDrawing(i int, of subject, v view.View, size image.Rectangle) {
	if p.busy[i] {
		return
	}
	p.busy[i] = true
	d, r := p.of[i].Option.Design, p.of[i].Report
	plan := draw.View{W: float64(size.Dx()), H: float64(size.Dy()), Scale: v.Scale, Point: p.px, Theme: themed(), Show: shown(of.drawn.dimensions),
		Units: p.s.Job().Units}
	plan.Centre = v.Design(geom.Vec{X: plan.W / 2, Y: plan.H / 2})
	p.frame.Background(func() func() {
		img := image.NewRGBA(size)
		raster.Draw(img, draw.Plan(d, r, plan))
		return func() {
			p.busy[i] = false
			p.kept.add(&layer{of: of, view: v, image: img})
			if p.Object.Visible() {
				p.renew()
			}
		}
	})
}

// pause is how long nothing moves before pictures are taken.
const pause = 160 * time.Millisecond

// askPictures has the pictures taken that are seen now, once nothing moves any more.
func (p *Page) askPictures() {
	var want [2]ask
	for i := range want {
		if p.of[i].err == nil {
			of, _ := p.subject(i)
			want[i] = ask{of, p.lock().views[i].Pixels(p.px)}
		}
	}
	if want == p.asked || p.stopped {
		return
	}
	p.shots.stop()
	p.asked = want
	start := func() {
		if p.asked == want && !p.stopped && p.picture && p.Object.Visible() {
			p.takePictures()
		}
	}
	if p.Later == nil || p.frame.Inline {
		start()
		return
	}
	p.Later(pause, start)
}

// takePictures builds the sets, then takes the pictures of both sides.
func (p *Page) takePictures() {
	list := func() (out []shot) {
		w, h := p.pixels()
		for i, s := range p.of {
			of, known := p.subject(i)
			if p.bare(i) {
				continue
			}
			v := p.lock().views[i].Pixels(p.px)
			t := shot{name: called(p.of[0], p.of[1])[i], of: of, view: v, design: s.Option.Design, solid: s.Report.Solid, w: w, h: h}
			if p.above {
				t.camera = picture.View{Kind: picture.Top, At: v.Design(geom.Vec{X: float64(w) / 2, Y: float64(h) / 2}), Span: float64(w) / v.Scale}
			} else if known {
				t.camera = picture.View{Kind: picture.Through, Camera: of.seen.Camera.Window(v.Scale/p.px, v.Origin.X, v.Origin.Y)}
			}
			out = append(out, t)
		}
		return out
	}
	p.shots.build(list(), func() {
		// With the sets the cameras are known.
		ready := list()
		for i := range p.asked {
			if p.of[i].err == nil {
				of, _ := p.subject(i)
				p.asked[i] = ask{of, p.lock().views[i].Pixels(p.px)}
			}
		}
		p.shots.want(ready)
	})
}

// progress shows how far the pictures are.
func (p *Page) progress(words string, done float64) {
	working := words != ""
	show(p.barBox, working)
	show(p.halt, working || p.stopped && p.picture)
	p.doing.SetText(words)
	p.bar.SetValue(done)
	face := p.halt.Face()
	if face.Text = "Stop"; p.stopped {
		face.Text = "Go on"
	}
	p.halt.SetFace(face)
}

// StopOrGoOn stops the pictures that are being taken, or takes them further.
func (p *Page) StopOrGoOn() {
	if !p.picture {
		return
	}
	if p.stopped = !p.stopped; p.stopped {
		p.shots.stop()
		p.doing.SetText("Stopped: the pictures are not as clear as they could be.")
		p.renew()
		return
	}
	p.asked = [2]ask{}
	p.renew()
}
