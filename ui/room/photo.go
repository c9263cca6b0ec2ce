package room

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	"path/filepath"
	"strings"

	"example.org/castwright/export/intake"
	"example.org/castwright/export/room"
	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/pose"
	"example.org/castwright/model/store"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/files"
)

// photoExt are the endings of photographs' files.
const photoExt = ".jpg .jpeg .png"

// mostRoom is the longer side of the picture that a top is set into, in pixels; a
// larger photograph is scaled down.
const mostRoom = 3840

// Can reports whether a file may be a photograph, by its ending.
func Can(path string) bool {
	ext := strings.ToLower(filepath.Ext(path))
	return ext != "" && strings.Contains(" "+photoExt+" ", " "+ext+" ")
}

// Choose asks for a photograph of the room.
func (p *Page) Choose() {
	p.files.WithFile("The photograph is kept beside the job's file, so that the job finds it again. This job has no file yet.", func() {
		files.Choose(p.frame, files.Wish{Title: "Choose a photograph of the room", Accept: "Choose", Ext: photoExt,
			Start: p.files.Folder()}, p.Bring)
	})
}

// Bring takes a photograph into the job: it is kept beside the job's file as it is.
func (p *Page) Bring(path string) {
	p.files.WithFile("The photograph is kept beside the job's file, so that the job finds it again. This job has no file yet.",
		func() { p.bring(path) })
}

func (p *Page) bring(path string) {
	job := p.s.Path()
	p.stop()
	p.empty.say("Reading the photograph…")
	p.turn++
	turn := p.turn
	p.frame.Long(func() func() {
		data, err := store.Read(path, store.MaxPhotoBytes)
		var ph *photograph
		var name string
		if err == nil {
			ph, err = develop(data)
		}
		if err == nil && len(ph.ext) > 0 {
			name, _, err = store.KeepPhoto(job, data, ph.ext)
		}
		return func() {
			p.empty.say("")
			if p.turn != turn || p.s.Path() != job {
				return
			}
			if err != nil {
				control.Warn(p.frame, "The photograph can't be used", fmt.Errorf("the file %s: %w", filepath.Base(path), err))
				return
			}
			p.taken(name, ph)
		}
	})
}

// taken puts a photograph into the job.
func (p *Page) taken(name string, ph *photograph) {
	r := p.room()
	if r.SHA256 != ph.sum {
		r.Corners = firstCorners
	}
	r.Photo, r.SHA256 = name, ph.sum
	if r.Width == 0 || r.Depth == 0 {
		r.Width, r.Depth = p.extent()
	}
	p.photo, p.asked, p.lost = ph, ph.sum, nil
	p.result, p.corner = false, 0
	if err := p.s.DoJob(named(edit.SetRoom(r), "Choose the room's photograph")); err != nil {
		control.Warn(p.frame, "The photograph can't be used", err)
	}
	if p.Shown() {
		p.Refresh()
		p.frame.Window.Canvas().Focus(p.stage)
	}
}

func named(e edit.JobEdit, name string) edit.JobEdit {
	e.Name = name
	return e
}

// extent is the size of the option in hand, which the present top is taken for until
// its own is typed.
func (p *Page) extent() (w, d units.Length) {
	b := edit.Bounds(p.s.Design().Outline)
	if b.Empty() {
		return units.Metre, units.Metre / 2
	}
	within := func(x float64) units.Length {
		return min(max(units.FromMM(x), design.MinMarked), design.MaxMarked)
	}
	return within(b.W()), within(b.H())
}

// firstCorners are those of a photograph that nothing is marked in yet.
var firstCorners = [4]design.Spot{{X: 320_000, Y: 420_000}, {X: 680_000, Y: 420_000}, {X: 780_000, Y: 680_000}, {X: 220_000, Y: 680_000}}

// read reads the photograph that the job names, unless it is in hand.
func (p *Page) read(r design.Room) {
	if r.None() {
		p.photo, p.asked, p.lost, p.result = nil, "", nil, false
		p.stop()
		return
	}
	job := p.s.Path()
	if p.asked == r.SHA256 && (p.photo != nil || p.beside == job) {
		return
	}
	p.stop()
	p.photo, p.asked, p.lost, p.result = nil, r.SHA256, nil, false
	p.beside = job
	p.turn++
	turn := p.turn
	p.frame.Long(func() func() {
		data, err := store.Photo(job, r)
		var ph *photograph
		if err == nil {
			ph, err = develop(data)
		}
		return func() {
			if p.turn != turn {
				return
			}
			p.photo, p.lost = ph, err
			if p.Shown() {
				p.Refresh()
			}
		}
	})
}

// develop reads a photograph's bytes.
func develop(data []byte) (*photograph, error) {
	limits := intake.Photo
	limits.Side = mostRoom
	img, m, err := intake.Read(bytes.NewReader(data), limits)
	if err != nil {
		return nil, err
	}
	w, h := m.Upright()
	if w < leastSide || h < leastSide {
		return nil, fmt.Errorf("a picture of %d by %d pixels is too small to mark corners in: choose the photograph itself", w, h)
	}
	for i := 0; i+3 < len(img.Pix); i += 4 { // what is transparent would be lost in what is exported
		if a := uint32(img.Pix[i+3]); a != 255 {
			for k := range 3 {
				img.Pix[i+k] = uint8(uint32(img.Pix[i+k]) + 255 - a)
			}
			img.Pix[i+3] = 255
		}
	}
	out := &photograph{sum: store.PhotoSum(data), w: w, h: h, focal35: float64(m.Focal35), full: img}
	out.ext = map[string]string{"jpeg": ".jpg", "png": ".png"}[m.Format]
	if out.ext == "" {
		return nil, errors.New("this is not a JPEG or PNG picture: save it as one of these")
	}
	for _, st := range stages { // for the screen too
		out.at(st.width)
	}
	return out, nil
}

// leastSide is the least side of a photograph.
const leastSide = 160

// at is the photograph about w pixels wide; it keeps what it has made.
func (ph *photograph) at(w int) *image.RGBA {
	if w >= ph.full.Rect.Dx() {
		return ph.full
	}
	ph.mu.Lock()
	defer ph.mu.Unlock()
	for _, s := range ph.small {
		if s.Rect.Dx() == w {
			return s
		}
	}
	h := max(1, ph.full.Rect.Dy()*w/ph.full.Rect.Dx())
	out := intake.Scaled(ph.full, w, h)
	if ph.small = append(ph.small, out); len(ph.small) > 4 {
		ph.small = ph.small[1:]
	}
	return out
}

// fault is what keeps the corners from being measured from, nil when nothing does.
func (p *Page) fault() error {
	if p.photo == nil {
		return nil
	}
	c := room.Marks(p.spots(), p.photo.w, p.photo.h)
	return c.Check(p.photo.w, p.photo.h)
}

// faultAt is the corner that is to blame, in pixels of the whole photograph, with
// the reason.
func (p *Page) faultAt() (at geom.Vec, words string, ok bool) {
	err := p.fault()
	var f *pose.Fault
	if !errors.As(err, &f) {
		return geom.Vec{}, "", false
	}
	return room.Pixel(p.spots()[f.Corner], p.photo.w, p.photo.h), control.Sentence(f.Error()), true
}

func cornerName(i int) string { return pose.Corner(i & 3).String() }
