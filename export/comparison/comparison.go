// Package comparison makes the page that shows two options side by side, as
// drawings or as pictures, with what differs marked, in words and in numbers.
package comparison

import (
	"context"
	"fmt"
	"image"
	"io"
	"strings"

	"example.org/castwright/export/paper"
	"example.org/castwright/export/picture"
	"example.org/castwright/export/raster"
	"example.org/castwright/model/approve"
	"example.org/castwright/model/design"
	"example.org/castwright/model/draw"
	"example.org/castwright/model/report"
	"example.org/castwright/model/scene"
)

// Approved is the name that stands for the latest approved revision of the other
// option, unless an option has that name; [AsApproved] is that of any option.
const Approved = "approved"

// AsApproved is the name that stands for the latest approved revision of an option,
// unless an option has that name.
func AsApproved(option string) string { return Approved + ":" + option }

// Order says what to compare.
type Order struct {
	Job      design.Job
	A, B     string // names of options; see [Approved] and [AsApproved]
	Pictures bool   // photo-like pictures in place of drawings
	Above    bool   // pictures are taken from straight above, not from the front
	Quality  picture.Quality
	About    picture.SetOptions // what stands about the tops in pictures
	Paper    draw.PaperSize
	Date     string
	Cost     bool // tell what the materials cost the maker
}

// Page is a comparison that is made.
type Page struct {
	order Order
	a, b  draw.Side
}

// Make reckons both options and takes their pictures, if asked for. show, if not
// nil, tells the stage in words and the share that is done.
func Make(ctx context.Context, o Order, show func(stage string, done float64)) (*Page, error) {
	p := &Page{order: o}
	if o.A == o.B {
		return nil, fmt.Errorf("option %q and option %q are the same one: give two", o.A, o.B)
	}
	var err error
	if p.a, err = Side(o.Job, o.A, o.B); err != nil {
		return nil, err
	}
	if p.b, err = Side(o.Job, o.B, o.A); err != nil {
		return nil, err
	}
	if !o.Pictures {
		return p, nil
	}
	const w, h = 1000, 720
	sides := []*draw.Side{&p.a, &p.b}
	sets := make([]*picture.Set, len(sides))
	for i, s := range sides {
		sets[i] = picture.Build(s.Option.Design, s.Report.Solid, o.About)
	}
	views := picture.SameScale(w, h, sets...)
	if o.Above {
		views = plans(w, h, sets...)
	}
	for i, v := range views {
		sides[i].Picture, err = picture.Render(ctx, sets[i], v, o.Quality, w, h,
			func(stage string, done float64, _ *image.NRGBA) {
				if show != nil {
					show(stage, (float64(i)+done)/float64(len(sides)))
				}
			})
		if err != nil {
			return nil, err
		}
	}
	return p, nil
}

// plans is the views of several sets from straight above, at the scale of the one
// that needs most room, for pictures of w x h pixels.
func plans(w, h int, sets ...*picture.Set) []picture.View {
	scale := 0.0
	out := make([]picture.View, len(sets))
	for i, s := range sets {
		k, middle := s.PlanScale(w, h)
		scale = max(scale, k)
		out[i] = picture.View{Kind: picture.Top, At: middle}
	}
	for i := range out {
		out[i].Span = scale * float64(w)
	}
	return out
}

// Side finds what a name stands for beside another one.
func Side(j design.Job, name, other string) (draw.Side, error) {
	if o, ok := j.Option(name); ok {
		return draw.Side{Option: o, Report: report.Derive(o.Design, j.Materials, j.Site)}, nil
	}
	of, ok := strings.CutPrefix(name, Approved)
	switch {
	case ok && of == "":
		of = other
	case ok && of[0] == ':':
		of = of[1:]
	default:
		return draw.Side{}, fmt.Errorf("there is no option %q in this job", name)
	}
	a, ok := approve.Latest(j, of)
	if !ok {
		return draw.Side{}, fmt.Errorf("option %q has not been approved yet, so there is nothing to compare it with", of)
	}
	if approve.Fingerprint(a.Design) != a.Fingerprint {
		return draw.Side{}, fmt.Errorf("revision %d in the file is not as approved: go by the signed sheet", a.Revision)
	}
	o := design.Option{Name: fmt.Sprintf("%s, revision %d", a.Option, a.Revision), Title: "as approved " + a.Date, Price: a.Price, Design: a.Design}
	return draw.Side{Option: o, Report: report.Derive(a.Design, a.Materials, j.Site), Approved: true}, nil
}

// page is the page, width page units wide; 0 for millimetres.
func (p *Page) page(width float64) scene.Page {
	return draw.Compare(p.order.Job, p.a, p.b, draw.CompareOptions{
		SheetOptions: draw.SheetOptions{Width: width, Date: p.order.Date, Paper: p.order.Paper}, Cost: p.order.Cost})
}

// PDF writes the page, drawings as vectors.
func (p *Page) PDF(w io.Writer) error {
	return paper.Write(w, []scene.Page{p.page(0)}, paper.Info{Title: "Two options side by side"})
}

// PNG writes the page width pixels wide.
func (p *Page) PNG(w io.Writer, width int) error {
	return raster.PNG(w, p.page(float64(width)), raster.Options{})
}
