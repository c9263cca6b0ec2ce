package showing

import (
	"math"

	"example.org/castwright/export/picture"
	"example.org/castwright/model/geom"
	"fyne.io/fyne/v2"
)

// How far the eye goes.
const (
	lowRise, highRise = 5.0, 86.0 // degrees above the horizon
	nearAway, farAway = 0.3, 3.0  // of the distance that shows the whole top
	nearSpan, farSpan = 60.0, 1500.0
	turnStep          = 6.0 // degrees, of an arrow key
	riseStep          = 4.0
	zoomStep          = 1.2 // of a button or key
	dragTurn          = 0.35
	wheelZoom         = 0.004
)

// Which is the number of the given view that is shown: 0 from the front, 1 from
// above, 2 a close look, -1 another.
func (p *photo) which() int {
	switch p.view.Kind {
	case picture.Quarter:
		return 0
	case picture.Top:
		return 1
	case picture.Close:
		return 2
	}
	return -1
}

// take takes one of the given views: from the front, from above, close.
func (p *photo) take(i int) {
	if i == 2 {
		p.look(geom.Vec{})
		return
	}
	p.turnTo(picture.View{Kind: [...]picture.Kind{picture.Quarter, picture.Top}[i]})
}

// turnTo shows another view.
func (p *photo) turnTo(v picture.View) {
	p.view = v
	p.walked()
	p.ask()
}

// look looks at a place of the design from near; no place takes one by the front.
func (p *photo) look(at geom.Vec) {
	v := picture.View{Kind: picture.Close, At: at}
	if p.view.Kind == picture.Close { // from the same side, as near
		v.Span, v.Turn, v.Rise = p.view.Span, p.view.Turn, p.view.Rise
	} else {
		p.whole = p.view
		if p.view.Kind == picture.Orbit {
			v.Turn, v.Rise = p.view.Turn, math.Min(p.view.Rise, 60)
		}
	}
	p.turnTo(v)
}

// back goes from a close look to what was seen before it; it reports whether there
// was one.
func (p *photo) back() bool {
	if p.view.Kind != picture.Close {
		return false
	}
	p.turnTo(p.whole)
	return true
}

// wholeTop shows all of the top, from the side where the eye is.
func (p *photo) wholeTop() {
	switch p.view.Kind {
	case picture.Close:
		p.back()
	case picture.Orbit:
		v := p.view
		v.Away = 1
		p.turnTo(v)
	case picture.Top:
		p.turnTo(picture.View{Kind: picture.Top})
	}
}

// framed is a view as the page shows it: straight down, the top lies between title
// and bar.
func (p *photo) framed(v picture.View) picture.View {
	size := p.raster.Size()
	box := p.s.Report().Solid.Outline.Bounds()
	if v.Kind != picture.Top || v.Span > 0 || box.Empty() || size.Width < 1 || size.Height < 1 {
		return v
	}
	w, h := float64(size.Width), float64(size.Height)
	room := area(w, h, float64(unit(size.Width, size.Height)), false)
	k := math.Max(box.W()/room.W(), box.H()/room.H()) // mm to the point
	if !(k > 0) {
		return v
	}
	v.Span = k * w
	v.At = box.Centre().Add(geom.Vec{X: (w/2 - room.Centre().X) * k, Y: (room.Centre().Y - h/2) * k})
	return v
}

// nearerAt comes nearer to what lies at a place of the picture, in points; straight
// down it stays there.
func (p *photo) nearerAt(by float64, at fyne.Position) {
	size := p.raster.Size()
	v := p.framed(p.view)
	if v.Kind != picture.Top || !(v.Span > 0) {
		if p.view.Kind != picture.Top {
			p.nearer(by)
		}
		return
	}
	was := v.Span / float64(size.Width) // mm to the point
	v.Span = math.Min(farSpan*4, math.Max(nearSpan, v.Span/by))
	d := was - v.Span/float64(size.Width)
	v.At = v.At.Add(geom.Vec{X: float64(at.X-size.Width/2) * d, Y: -float64(at.Y-size.Height/2) * d})
	p.turnTo(v)
}

// turning is the view as one that turns.
func (p *photo) turning() picture.View {
	set := p.set
	if set == nil {
		set = p.shotOf
	}
	if set == nil { // nothing is seen yet
		return picture.View{Kind: picture.Orbit, Rise: 34, Away: 1}
	}
	return set.Turning(p.view)
}

// walk takes the eye round the top, by degrees to its right and up.
func (p *photo) walk(right, up float64) {
	v := p.turning()
	v.Turn = math.Mod(v.Turn+right, 360)
	v.Rise = math.Min(highRise, math.Max(lowRise, v.Rise+up))
	p.turnTo(v)
}

// nearer brings the eye nearer by a factor, or farther when it is below 1.
func (p *photo) nearer(by float64) {
	if p.view.Kind == picture.Top {
		size := p.raster.Size()
		p.nearerAt(by, fyne.NewPos(size.Width/2, size.Height/2))
		return
	}
	v := p.turning()
	if v.Kind == picture.Close {
		v.Span = math.Min(farSpan, math.Max(nearSpan, v.Span/by))
	} else {
		v.Away = math.Min(farAway, math.Max(nearAway, v.Away/by))
	}
	p.turnTo(v)
}

// Dragged walks the eye round the top.
func (p *photo) Dragged(e *fyne.DragEvent) {
	p.walk(-dragTurn*float64(e.Dragged.DX), dragTurn*float64(e.Dragged.DY))
}

// DragEnd leaves the picture to grow clearer.
func (p *photo) DragEnd() {}

// Scrolled brings the eye nearer or farther.
func (p *photo) Scrolled(e *fyne.ScrollEvent) {
	p.nearerAt(math.Exp(wheelZoom*float64(e.Scrolled.DY)), e.Position)
}

// Tapped looks at the place of the top that was clicked from near.
func (p *photo) Tapped(e *fyne.PointEvent) {
	size := p.raster.Size()
	if p.shotOf == nil || size.Width <= 0 || size.Height <= 0 {
		return
	}
	// As the picture that is seen was taken, which may be of another size.
	b := p.shot.Bounds()
	x, y := float64(e.Position.X/size.Width)*float64(b.Dx()), float64(e.Position.Y/size.Height)*float64(b.Dy())
	if at, ok := p.shotOf.Place(p.shotAt, b.Dx(), b.Dy(), x, y); ok {
		p.look(at)
	}
}

// TappedSecondary goes back from a close look.
func (p *photo) TappedSecondary(*fyne.PointEvent) { p.back() }

// setAbout has other things stand about the top.
func (p *photo) setAbout(about picture.SetOptions) {
	p.about, p.set = about, nil
	p.ask()
}
