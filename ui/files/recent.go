package files

import (
	"image"
	"os"
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"

	"example.org/castwright/export/raster"
	"example.org/castwright/model/amount"
	"example.org/castwright/model/design"
	"example.org/castwright/model/draw"
	"example.org/castwright/model/report"
	"example.org/castwright/ui/control"
	look "example.org/castwright/ui/theme"
)

// The size of a picture of a job of late, in points.
const recentW, recentH = 192, 108

// Recent shows the jobs of late as pictures.
func (f *Files) Recent() {
	f.Settings.Recent = existing(f.Settings.Recent)
	if len(f.Settings.Recent) == 0 {
		control.Tell(f.frame, "Recent jobs",
			"There are none yet. Jobs that you open or save are shown here as pictures.")
		return
	}
	grid := container.NewGridWithColumns(3)
	var dialog *control.Dialog
	var first fyne.Focusable
	var cards []*recentCard
	for _, path := range f.Settings.Recent {
		c := f.newCard(path, func() {
			dialog.Close()
			f.OpenPath(path)
		})
		if first == nil {
			first = c.tile
		}
		cards = append(cards, c)
		grid.Add(c.tile)
	}
	dialog = control.NewDialog(f.frame, "Recent jobs", container.NewVScroll(control.Column(0, grid)),
		control.Answer{Text: "Another file…", Hint: "Opens a file from any folder.",
			Then: f.Open}, control.Cancel())
	dialog.First(first).Sized(3*(recentW+2*look.Space)+5*look.Section, 480).Show()
	f.fill(cards)
}

// existing leaves out what is gone.
func existing(paths []string) (out []string) {
	for _, p := range paths {
		if info, err := os.Stat(p); err == nil && !info.IsDir() {
			out = append(out, p)
		}
	}
	return out
}

// recentCard is a job of late.
type recentCard struct {
	path    string
	tile    *control.Tile
	client  *control.Text
	picture *control.Picture
	design  design.Design
	report  report.Report
	ready   bool
}

func (f *Files) newCard(path string, open func()) *recentCard {
	c := &recentCard{path: path, client: control.NewText("").Caption().Muted().Cut()}
	c.picture = control.NewPicture(f.frame, recentW, recentH, func(w, h int) control.Paint {
		d, r, ready := c.design, c.report, c.ready
		return func() *image.RGBA {
			if !ready {
				return image.NewRGBA(image.Rect(0, 0, w, h))
			}
			return raster.Image(draw.Thumb(d, r, float64(w), float64(h)))
		}
	})
	name := strings.TrimSuffix(filepath.Base(path), filepath.Ext(path))
	when := ""
	if info, err := os.Stat(path); err == nil {
		when = info.ModTime().Format("2 Jan 2006, 15:04")
	}
	body := control.Column(2, control.Ground(look.Ground, c.picture),
		control.NewText(name).Bold().Cut(), c.client,
		control.NewText(when).Caption().Muted().Cut())
	c.tile = control.NewTile(f.frame, "Opens "+path+".", control.Pad(look.Space, look.Space, body),
		open).OnGround(theme.ColorNameButton)
	return c
}

// fill reads the jobs in the background, one after the other, and shows each as
// it comes.
func (f *Files) fill(cards []*recentCard) {
	if len(cards) == 0 {
		return
	}
	c := cards[0]
	f.frame.Background(func() func() {
		j, err := ReadJob(c.path)
		if err != nil {
			return func() {
				c.client.SetText("can't be read")
				f.fill(cards[1:])
			}
		}
		o := j.Options[0]
		r := report.Derive(o.Design, j.Materials, j.Site)
		about := amount.Count(len(j.Options), "option")
		if j.Client != "" {
			about = j.Client
		}
		return func() {
			c.design, c.report, c.ready = o.Design, r, true
			c.client.SetText(about)
			c.picture.Renew()
			f.fill(cards[1:])
		}
	})
}
