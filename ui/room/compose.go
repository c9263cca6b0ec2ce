package room

import (
	"context"
	"fmt"
	"image"
	"io"
	"os"
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2"

	"example.org/castwright/export/intake"
	"example.org/castwright/export/picture"
	"example.org/castwright/export/raster"
	"example.org/castwright/export/room"
	"example.org/castwright/model/design"
	"example.org/castwright/model/store"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/files"
)

// key is what a finished picture is of.
type key struct {
	room   design.Room
	option string
	design design.Design
}

func (k key) is(o key) bool {
	return k.room == o.room && k.option == o.option && same(k.design, o.design)
}

// key is what a picture would be of now.
func (p *Page) key() key {
	r := p.room()
	r.Photo = "" // its sum says which one it is
	return key{r, p.s.Option().Name, p.s.Design()}
}

// work is a picture that is being worked at.
type work struct {
	key
	cancel context.CancelFunc
	words  string
	done   float64
}

// stages are the pictures that follow each other: the first at once, the last in
// the photograph's own size.
var stages = [...]struct {
	quality picture.Quality
	width   int
	words   string
}{{picture.First, 640, "First look"}, {picture.Quick, 1280, "Clearer"}, {picture.Good, mostRoom, "Clear"}}

// best is the stage of a picture that can be saved.
const best = len(stages) - 1

// mostKept is how many pictures are kept, so that two options can be looked at in
// turn without waiting.
const mostKept = 2

// shown is the picture of what is in hand, nil when there is none yet.
func (p *Page) shown() *finished {
	k := p.key()
	for i := range p.kept {
		if p.kept[i].is(k) {
			return &p.kept[i]
		}
	}
	return nil
}

// Able reports whether the top can be set in now, and why not.
func (p *Page) Able() error {
	switch {
	case p.photo == nil:
		return fmt.Errorf("there is no photograph yet: choose one")
	case p.fault() != nil:
		return p.fault()
	}
	if f := p.room().Faults(); len(f) > 0 {
		return f[0]
	}
	_, err := p.order(p.photo.full).Camera()
	return err
}

// order is what is set into a photograph of any size.
func (p *Page) order(photo *image.RGBA) room.Order {
	r := p.room()
	r.Corners = p.spots()
	return room.OrderOf(r, photo, p.photo.focal35, p.s.Report().Solid)
}

// Compose sets the option in hand into the photograph.
func (p *Page) Compose() {
	if !p.Shown() {
		return
	}
	if p.Able() != nil || p.panel.refused() != nil {
		if p.photo != nil {
			p.panel.tell()
		}
		return
	}
	p.result, p.hold, p.halted = true, false, key{}
	if p.see == seeRoom {
		p.see = seeTop
	}
	p.frame.Window.Canvas().Focus(p.stage)
	p.Refresh()
}

// follow sees to it that the picture is of what is in hand.
func (p *Page) follow() {
	if p.Able() != nil {
		p.stop()
		p.result = false
		return
	}
	k := p.key()
	if p.work != nil && p.work.is(k) || p.halted.option != "" && p.halted.is(k) {
		return
	}
	p.stop()
	if f := p.shown(); f != nil && f.stage == best {
		return
	}
	p.start(k, 0)
}

// stop gives up what is being worked at.
func (p *Page) stop() {
	if p.work != nil {
		p.work.cancel()
		p.work = nil
	}
}

// halt stops the work for good, until the top is set in again or something is
// changed. What there is of the picture stays; with nothing, the corners are shown.
func (p *Page) halt() {
	p.stop()
	p.halted = p.key()
	if p.shown() == nil {
		p.result = false
	}
	p.Refresh()
}

// start works at one stage in the background, then at the next.
func (p *Page) start(k key, stage int) {
	ctx, cancel := context.WithCancel(context.Background())
	w := &work{key: k, cancel: cancel, words: stages[stage].words}
	p.work = w
	ph, last := p.photo, finished{key: k, solid: p.s.Report().Solid}
	if f := p.shown(); f != nil {
		last = *f
	}
	told, sw, sh := -1, int(p.stage.fit.box.W()), int(p.stage.fit.box.H())
	p.frame.Long(func() func() {
		f := last
		f.key, f.stage = k, stage
		photo := ph.at(stages[stage].width)
		top := room.Top{Design: k.design, Solid: f.solid, Set: f.set}
		if top.Set == nil {
			top.Set = room.Build(top)
		}
		f.set = top.Set
		out, err := room.Compose(ctx, top, room.OrderOf(k.room, photo, ph.focal35, f.solid), stages[stage].quality, 0,
			func(_ string, done float64) {
				if step := int(done / control.Shown); step != told {
					told = step
					p.post(func() {
						if p.work == w {
							w.done = done
							p.panel.progress()
						}
					})
				}
			})
		if err == nil {
			f.take(out)
			f.seen = intake.Scaled(out.Image, sw, sh)
			if stage == best {
				f.set = nil // nothing comes after it
			}
		}
		cancel()
		return func() {
			if p.work != w {
				return
			}
			p.work = nil
			if err != nil {
				p.result = false
				p.Refresh()
				p.panel.fault(err)
				return
			}
			p.keep(f)
			if stage < best {
				p.start(k, stage+1)
			}
			p.panel.show()
			p.stage.again()
		}
	})
}

// post runs something on the main goroutine.
func (p *Page) post(f func()) {
	if p.frame.Inline {
		f()
		return
	}
	fyne.Do(f)
}

// keep keeps a picture, in the place of that of the same thing or of the oldest.
func (p *Page) keep(f finished) {
	kept := []finished{f}
	for _, o := range p.kept {
		if !o.is(f.key) && len(kept) < mostKept {
			kept = append(kept, o)
		}
	}
	p.kept = kept
}

// CanSave reports whether there is something to save.
func (p *Page) CanSave() bool { return p.Shown() && p.photo != nil && p.Able() == nil }

// Save asks where to, and writes the photograph with the top in it as a PNG. It holds
// nothing of the photograph's file but the picture.
func (p *Page) Save() {
	if !p.CanSave() {
		return
	}
	files.Choose(p.frame, files.Wish{Title: "Save the picture of the room", Accept: "Save", Ext: ".png", Write: true,
		Start: p.files.ExportName("-room", ".png")}, p.write)
}

func (p *Page) write(path string) {
	if !strings.EqualFold(filepath.Ext(path), ".png") {
		path += ".png"
	}
	if p.isPhoto(path) {
		control.Warn(p.frame, "The picture is not written",
			fmt.Errorf("%s is the photograph itself, which is kept as it is: give the picture another name", filepath.Base(path)))
		return
	}
	k, ph := p.key(), p.photo
	var done *finished
	if f := p.shown(); f != nil && f.stage == best {
		done = f
	} else {
		p.stop() // one work at a time
	}
	solid := p.s.Report().Solid
	control.Start(p.frame, p.later, control.Work{
		Title: "Setting the top into the room",
		Do: func(ctx context.Context, show func(string, float64)) error {
			var whole *image.NRGBA
			if done != nil {
				whole = done.whole(ph)
			} else {
				out, err := room.Compose(ctx, room.Top{Design: k.design, Solid: solid},
					room.OrderOf(k.room, ph.full, ph.focal35, solid), picture.Good, 0,
					func(stage string, done float64) { show(stage, 0.9*done) })
				if err != nil {
					return err
				}
				f := finished{key: k, solid: solid, stage: best}
				f.take(out)
				whole = out.Image
				p.post(func() { p.keep(f) })
			}
			show("Writing the file", 0.95)
			return store.Write(path, func(w io.Writer) error {
				if err := ctx.Err(); err != nil {
					return err
				}
				return raster.Photo(w, whole)
			})
		},
		Done: func(err error) {
			if p.Shown() {
				p.Refresh()
			}
			if err != nil {
				control.Warn(p.frame, "The picture is not written", err)
				return
			}
			control.TellFile(p.frame, "The picture", path)
		},
		Stopped: func() {
			if p.Shown() {
				p.Refresh()
			}
		},
	})
}

// isPhoto reports whether a file is the job's photograph.
func (p *Page) isPhoto(path string) bool {
	a, err := os.Stat(path)
	b, other := os.Stat(filepath.Join(filepath.Dir(p.s.Path()), p.room().Photo))
	return err == nil && other == nil && os.SameFile(a, b)
}
