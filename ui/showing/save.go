package showing

import (
	"context"
	"fmt"
	"image"
	"io"
	"strconv"
	"strings"

	"example.org/castwright/export/picture"
	"example.org/castwright/export/raster"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/store"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/files"
	look "example.org/castwright/ui/theme"
)

// The widths of a saved picture, in pixels.
const (
	leastWidth   = 320
	mostWidth    = 3840
	defaultWidth = 1920
)

// wish is how a picture is to be saved.
type wish struct {
	width   int
	shape   picture.Shape
	quality picture.Quality
}

func (w wish) filled() wish {
	if w.width == 0 {
		return wish{defaultWidth, picture.Wide, picture.Good}
	}
	return w
}

// SavePicture asks where to, and writes the picture as it is seen, or from the front
// while the drawing is.
func (p *Page) SavePicture() {
	v, set := picture.View{Kind: picture.Quarter}, (*picture.Set)(nil)
	if p.InPicture() {
		v, set = p.photo.view, p.photo.set
	}
	want := p.wish.filled()
	size := control.NewText("").Muted()
	tell := func() {
		words := "pixels"
		if want.shape != picture.OwnShape || set != nil { // the top's own needs the top
			words = fmt.Sprintf("× %d pixels", set.Height(v, want.shape, want.width))
		}
		size.SetText(words)
	}
	width := control.NewEntry(p.frame, fmt.Sprintf("Width of the picture in pixels, %d to %d; 1920 fills a screen, 3840 a large one or a print.", leastWidth, mostWidth))
	width.SetValue(strconv.Itoa(want.width))
	width.Commit = func(text string) error {
		n, err := strconv.Atoi(strings.TrimSpace(text))
		if err != nil || n < leastWidth || n > mostWidth {
			return fmt.Errorf("%q is no width: type %d to %d pixels", text, leastWidth, mostWidth)
		}
		want.width = n
		tell()
		return nil
	}
	var shape, quality *control.Segments
	shape = control.NewSegments(p.frame, []control.Face{
		{Text: "16:9", Hint: "The shape of a screen."},
		{Text: "4:3", Hint: "The shape of a print or a tablet."},
		{Text: "Top's own", Hint: "As wide and high as the top needs from here."},
	}, func(i int) {
		want.shape = picture.Shape(i)
		shape.SetPicked(i)
		tell()
	})
	shape.SetPicked(int(want.shape))
	qualities := [...]picture.Quality{picture.Quick, picture.Good}
	pick := func(i int) {
		want.quality = qualities[i]
		quality.SetPicked(i)
	}
	quality = control.NewSegments(p.frame, []control.Face{
		{Text: "Quick", Hint: "Done in a moment; shadows are a little softer."},
		{Text: "Good", Hint: "Some seconds, for what is kept or printed."},
	}, pick)
	pick(map[picture.Quality]int{picture.Quick: 0, picture.Good: 1}[want.quality])
	tell()
	word := func(s string) *control.Text { return control.NewText(s).Muted() }
	extra := control.Column(look.Gap,
		control.Row(look.Space, control.Sized(52, 0, control.Middle(word("Width"))), control.Sized(80, 0, width), control.Middle(size)),
		control.Row(look.Space, control.Sized(52, 0, control.Middle(word("Shape"))), control.Sized(252, 0, shape.Container),
			control.Pad(0, look.Space, control.Middle(word("Quality"))), control.Sized(148, 0, quality.Container)))
	files.Choose(p.frame, files.Wish{Title: "Save the picture", Accept: "Save", Ext: ".png", Write: true,
		Start: p.Files.ExportName("-picture", ".png"), Extra: extra,
		Check: func() error {
			width.Settle()
			return width.Fault()
		}}, func(path string) {
		p.wish = want
		p.writePicture(path, v, set, want)
	})
}

// writePicture takes a picture in the background and writes it, wholly or not at all.
func (p *Page) writePicture(path string, v picture.View, set *picture.Set, want wish) {
	d, about, render := p.s.Design(), p.photo.about, p.photo.render
	p.photo.stop() // the processors are for this one
	p.photo.say("")
	done := func() {
		if p.InPicture() {
			p.photo.ask()
		}
	}
	control.Start(p.frame, p.Later, control.Work{
		Title: "Taking the picture",
		Do: func(ctx context.Context, show func(string, float64)) error {
			show("Making ready", 0)
			if set == nil {
				set = picture.Build(d, slab.Resolve(d), about)
			}
			img, err := render(ctx, set, v, want.quality, want.width, set.Height(v, want.shape, want.width),
				func(stage string, done float64, _ *image.NRGBA) { show(stageWords(stage), overall(stage, done)) })
			if err != nil {
				return err
			}
			show("Writing the file", 0.97)
			return store.Write(path, func(w io.Writer) error { return raster.Photo(stopping{ctx, w}, img) })
		},
		Done: func(err error) {
			done()
			if err != nil {
				control.Warn(p.frame, "The picture is not written", err)
				return
			}
			control.TellFile(p.frame, "The picture", path)
		},
		Stopped: done,
	})
}

// stageWords says what the renderer is at.
func stageWords(stage string) string {
	return map[string]string{"first look": "A first look", "light": "Tracing the light", "picture": "Painting the picture"}[stage]
}

// overall is the share of the whole that is done when a stage is: about a third of
// the time goes into the light.
func overall(stage string, done float64) float64 {
	switch stage {
	case "first look":
		return 0.03
	case "light":
		return 0.03 + 0.32*done
	case "picture":
		return 0.35 + 0.60*done
	}
	return 0.95
}

// stopping is a writer that fails once the work is to stop.
type stopping struct {
	ctx context.Context
	io.Writer
}

func (s stopping) Write(b []byte) (int, error) {
	if err := s.ctx.Err(); err != nil {
		return 0, err
	}
	return s.Writer.Write(b)
}
