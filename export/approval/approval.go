// Package approval makes the sheet that a client signs: photo-like picture,
// dimensioned drawing, the words, and the fingerprint of the design, as PDF or as
// one PNG.
package approval

import (
	"context"
	"errors"
	"fmt"
	"image"
	"io"
	"math"
	"strings"

	"example.org/castwright/export/paper"
	"example.org/castwright/export/picture"
	"example.org/castwright/export/raster"
	"example.org/castwright/export/room"
	"example.org/castwright/model/approve"
	"example.org/castwright/model/design"
	"example.org/castwright/model/draw"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/report"
	"example.org/castwright/model/scene"
	"example.org/castwright/model/warn"
	qr "github.com/piglig/go-qr"
)

// Order says what to make.
type Order struct {
	Job    design.Job
	Option string
	// Revision is the frozen one to print, 0 for the option as it is.
	Revision int
	Date     string // of the sheet, as printed
	Paper    draw.PaperSize
	Price    bool // show the option's price
	Head     draw.Letterhead
	Quality  picture.Quality // of the pictures
	Dots     float64         // of these to the inch of paper, 0 for 200
	Pictures Pictures
	// Path is the job's file, beside which the photograph of its room lies; for pictures
	// in the room.
	Path string
}

// Pictures says what pictures stand on a sheet.
type Pictures uint8

// The pictures.
const (
	Studio Pictures = iota // photo-like, of the top by itself
	InRoom                 // set into the photograph of the client's room
	Both                   // beside each other
	None
)

func (p Pictures) studio() bool { return p == Studio || p == Both }
func (p Pictures) inRoom() bool { return p == InRoom || p == Both }

// Sheet is a made approval sheet.
type Sheet struct {
	order  Order
	job    design.Job
	option design.Option
	report report.Report
	notes  []string
	state  draw.ApprovalOptions
}

// Make reckons the option, takes its picture and gives the sheet. show, if not
// nil, tells the stage in words and the share that is done. The error says what
// stands against the sheet: no such option, a design that can't be cast, a
// cancelled context.
func Make(ctx context.Context, o Order, show func(stage string, done float64)) (*Sheet, error) {
	s := &Sheet{order: o, job: o.Job}
	if err := s.choose(); err != nil {
		return nil, err
	}
	d := s.option.Design
	s.report = report.Derive(d, s.job.Materials, s.job.Site)
	if len(s.report.Faults) > 0 {
		return nil, fmt.Errorf("option %s can't be cast as drawn, so there is nothing to approve yet: %s", s.option.Name, s.report.Faults[0])
	}
	print := approve.Fingerprint(d)
	mark, err := Mark(fmt.Sprintf("Castwright approval\n%s\nOption %s\nRevision %d\n%s",
		cut(s.job.Client, 40), cut(s.option.Name, 20), s.state.Revision, print))
	if err != nil {
		return nil, err
	}
	s.state.Fingerprint, s.state.Mark = print, mark
	s.state.Head, s.state.Price = o.Head, o.Price
	s.state.SheetOptions = draw.SheetOptions{Date: o.Date, Paper: o.Paper}
	if err := s.takePictures(ctx, show); err != nil {
		return nil, err
	}
	return s, ctx.Err()
}

// takePictures takes the pictures that are asked for, that in the room first: the other
// one has the shape that it leaves.
func (s *Sheet) takePictures(ctx context.Context, show func(stage string, done float64)) error {
	o := s.order
	from, share := 0.0, 1.0
	told := func(stage string, done float64) {
		if show != nil {
			show(stage, from+share*done)
		}
	}
	dots := 200 / 25.4
	if o.Dots >= 10 && o.Dots <= 600 {
		dots = o.Dots / 25.4
	}
	if o.Pictures == Both {
		share = 0.5
	}
	if o.Pictures.inRoom() {
		photo, focal35, err := room.Kept(o.Path, s.job.Room)
		if err != nil {
			return fmt.Errorf("the picture in the room: %w", err)
		}
		width := min(photo.Rect.Dx(), int(math.Round(draw.PaperWidth(s.job, s.state.SheetOptions)*dots)))
		out, err := room.Compose(ctx, room.Top{Design: s.option.Design, Solid: s.report.Solid},
			room.OrderOf(s.job.Room, photo, focal35, s.report.Solid), o.Quality, width, told)
		if err != nil {
			return fmt.Errorf("the picture in the room: %w", err)
		}
		s.state.Room, s.notes = out.Image, out.Notes
		from = share
	}
	if o.Pictures.studio() {
		width, high := draw.PictureShape(s.job, s.option, s.report, s.state)
		set := picture.Build(s.option.Design, s.report.Solid, picture.SetOptions{})
		img, err := picture.Render(ctx, set, picture.View{Kind: picture.Quarter}, o.Quality,
			int(math.Round(width*dots)), int(math.Round(width*high*dots)), func(stage string, done float64, _ *image.NRGBA) { told(stage, done) })
		if err != nil {
			return err
		}
		s.state.Picture = img
	}
	return nil
}

// Notes are what the maker should know of the picture in the room, in sentences.
func (s *Sheet) Notes() []string { return s.notes }

// choose finds what is to be printed: the option as it is, as the next revision,
// or a frozen one with what it was reckoned with.
func (s *Sheet) choose() error {
	o := s.order
	if o.Revision == 0 {
		option, ok := s.job.Option(o.Option)
		if !ok {
			return fmt.Errorf("there is no option %q in this job", o.Option)
		}
		s.option = option
		s.state.Revision = approve.Next(s.job)
		if st := approve.Of(s.job, o.Option); st.State == approve.Agreed {
			s.agreed(st.Approval)
		}
		return nil
	}
	for _, a := range s.job.Approvals {
		if a.Revision != o.Revision {
			continue
		}
		if got := approve.Fingerprint(a.Design); got != a.Fingerprint {
			return fmt.Errorf("revision %d in the file is not as approved: its fingerprint is %s, that of the approval %s", a.Revision, got, a.Fingerprint)
		}
		s.option = design.Option{Name: a.Option, Title: a.Title, Price: a.Price, Design: a.Design}
		s.job.Client, s.job.Terms, s.job.Units, s.job.Materials = a.Client, a.Terms, a.Units, a.Materials
		s.agreed(a)
		return nil
	}
	return fmt.Errorf("there is no revision %d in this job", o.Revision)
}

func (s *Sheet) agreed(a design.Approval) {
	s.state.Revision = a.Revision
	s.state.Agreed = a.When()
}

// Severe is the titles of the severe warnings against the option. The sheet does not
// tell the client of them: whoever makes it should know before it is signed.
func (s *Sheet) Severe() []string {
	var out []string
	for _, w := range s.report.Warnings {
		if w.Severity == warn.Severe {
			out = append(out, w.Title)
		}
	}
	return out
}

// pages is the sheet's pages, width page units wide; 0 for millimetres.
func (s *Sheet) pages(width float64) []scene.Page {
	o := s.state
	o.Width = width
	return draw.Approval(s.job, s.option, s.report, o)
}

// PDF writes the sheet: drawings as vectors, texts in embedded fonts.
func (s *Sheet) PDF(w io.Writer) error {
	title := strings.TrimSpace("Approval, " + s.job.Client)
	return paper.Write(w, s.pages(0), paper.Info{Title: strings.TrimSuffix(title, ","), Author: first(s.order.Head.Lines)})
}

// PNG writes the pages below each other as one picture, width pixels wide, or
// narrower where it would grow too high.
func (s *Sheet) PNG(w io.Writer, width int) error {
	pages := s.pages(float64(width))
	if len(pages) == 0 {
		return errors.New("the sheet has no page")
	}
	if high := pages[0].H * float64(len(pages)); high > raster.MaxSide {
		width = int(float64(width) * raster.MaxSide / high)
		pages = s.pages(float64(width))
	}
	all := scene.Page{W: float64(width), Print: pages[0].Print, Ground: pages[0].Ground}
	for _, p := range pages {
		img := raster.Image(p)
		b := img.Bounds()
		all.Items = append(all.Items, scene.Picture{Image: img, Box: geom.Box{
			Min: geom.Vec{Y: all.H}, Max: geom.Vec{X: float64(b.Dx()), Y: all.H + float64(b.Dy())},
		}})
		all.H += float64(b.Dy())
	}
	return raster.PNG(w, all, raster.Options{})
}

// Mark is a text as the modules of a QR code (ISO/IEC 18004), rows from the top,
// at the middle of its levels of error correction.
func Mark(text string) ([][]bool, error) {
	code, err := qr.EncodeText(text, qr.Medium)
	if err != nil {
		return nil, fmt.Errorf("the fingerprint's QR code: %w", err)
	}
	out := make([][]bool, code.Size())
	for y := range out {
		out[y] = make([]bool, code.Size())
		for x := range out[y] {
			out[y][x] = code.Module(x, y)
		}
	}
	return out, nil
}

// cut is the first n characters of one line of text.
func cut(text string, n int) string {
	r := []rune(strings.Join(strings.Fields(text), " "))
	return string(r[:min(n, len(r))])
}

func first(lines []string) string {
	if len(lines) == 0 {
		return ""
	}
	return lines[0]
}
