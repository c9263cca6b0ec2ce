package paper

import (
	"fmt"
	"io"
	"math"
	"time"

	"codeberg.org/go-pdf/fpdf"

	"example.org/castwright/model/geom"
	"example.org/castwright/model/scene"
)

// maxPage is the largest side of a page in millimetres; PDF's default user
// space ends near 5 m (ISO 32000-1, annex C).
const maxPage = 5000.0

// Info is what the file says of itself.
type Info struct {
	Title, Author string
	Made          time.Time // as given by the caller; the zero time is written as 1 January 2000
}

// Write writes pages, whose unit is the millimetre, as one PDF.
func Write(w io.Writer, pages []scene.Page, info Info) error {
	if len(pages) == 0 {
		return fmt.Errorf("there is no page to print")
	}
	made := info.Made
	if made.IsZero() {
		made = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)
	}
	f := fpdf.New("P", "mm", "A4", "")
	f.SetCreationDate(made)
	f.SetModificationDate(made)
	f.SetCatalogSort(true)
	f.SetProducer("Castwright", true)
	f.SetTitle(scene.Read(info.Title), true)
	f.SetAuthor(scene.Read(info.Author), true)
	f.SetMargins(0, 0, 0)
	f.SetAutoPageBreak(false, 0)
	f.SetLineCapStyle("round")
	f.SetLineJoinStyle("round")
	p := printer{taken: map[int]bool{}, f: f, fonts: newFonts(f)}
	for i, page := range pages {
		if !(page.W > 0 && page.W <= maxPage && page.H > 0 && page.H <= maxPage) {
			return fmt.Errorf("page %d is %g x %g mm: each side must be above 0 and at most %g", i+1, page.W, page.H, maxPage)
		}
		p.page(page)
	}
	if err := f.Error(); err != nil {
		return fmt.Errorf("making the PDF: %w", err)
	}
	return f.Output(w)
}

// printer draws scene items.
type printer struct {
	f      *fpdf.Fpdf
	fonts  *fonts
	origin geom.Vec
	perMM  float64
	w, h   float64
	taken  map[int]bool // widths of pictures; see [printer.widthFor]
}

func (p *printer) page(s scene.Page) {
	p.origin, p.perMM, p.w, p.h = s.Origin, s.PerMM, s.W, s.H
	p.f.AddPageFormat("P", fpdf.SizeType{Wd: s.W, Ht: s.H})
	if s.Ground.A > 0 {
		p.fillColour(s.Ground)
		p.f.Rect(0, 0, s.W, s.H, "F")
	}
	for _, item := range s.Items {
		switch item := item.(type) {
		case scene.Fill:
			p.fill(item)
		case scene.Stroke:
			p.stroke(item)
		case scene.Text:
			p.text(item)
		case scene.Picture:
			if b := item.Box; item.Image != nil && !b.Empty() && p.usable([]geom.Vec{b.Min, b.Max}) {
				p.f.SetAlpha(1, "Normal")
				p.picture(item.Image, b)
			}
		}
	}
}

func (p *printer) fillColour(c scene.Colour) {
	p.f.SetFillColor(int(c.R), int(c.G), int(c.B))
	p.f.SetAlpha(float64(c.A)/255, "Normal")
}

// usable reports whether a line can be written: finite, and not so far off the
// page that a reader's numbers break.
func (p *printer) usable(l []geom.Vec) bool {
	for _, v := range l {
		if !v.Finite() || math.Abs(v.X) > 20*maxPage || math.Abs(v.Y) > 20*maxPage {
			return false
		}
	}
	return len(l) >= 2
}

func (p *printer) trace(l []geom.Vec, closed bool) {
	p.f.MoveTo(l[0].X, l[0].Y)
	for _, v := range l[1:] {
		p.f.LineTo(v.X, v.Y)
	}
	if closed {
		p.f.ClosePath()
	}
}

// traceAll traces the loops that can be drawn and gives their bounds.
func (p *printer) traceAll(loops []geom.Loop) geom.Box {
	box := geom.EmptyBox()
	for _, l := range loops {
		if p.usable(l) {
			box = box.Union(l.Bounds())
		}
	}
	if !box.Empty() {
		for _, l := range loops {
			if p.usable(l) {
				p.trace(l, true)
			}
		}
	}
	return box
}

func (p *printer) fill(s scene.Fill) {
	if s.Clip != nil {
		p.f.TransformBegin()
		defer p.f.TransformEnd()
		if p.traceAll(s.Clip).Empty() {
			return
		}
		p.f.RawWriteStr("W n")
	}
	if s.Paint.Texture != nil && p.perMM > 0 {
		p.texture(s)
		return
	}
	if s.Paint.Colour.A == 0 {
		return
	}
	p.fillColour(s.Paint.Colour)
	if !p.traceAll(s.Loops).Empty() {
		p.f.DrawPath("F")
	}
}

func (p *printer) stroke(s scene.Stroke) {
	if s.Colour.A == 0 || !(s.Width > 0 && s.Width < maxPage) {
		return
	}
	p.f.SetDrawColor(int(s.Colour.R), int(s.Colour.G), int(s.Colour.B))
	p.f.SetAlpha(float64(s.Colour.A)/255, "Normal")
	p.f.SetLineWidth(s.Width)
	if len(s.Dash) > 0 {
		p.f.SetDashPattern(s.Dash, 0)
	}
	for _, l := range s.Lines {
		if p.usable(l) {
			p.trace(l, s.Closed)
			p.f.DrawPath("D")
		}
	}
	if len(s.Dash) > 0 {
		p.f.SetDashPattern(nil, 0)
	}
}
