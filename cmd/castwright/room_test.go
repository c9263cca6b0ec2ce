//go:build window

package main_test

import (
	"bytes"
	"image"
	"image/color"
	"image/jpeg"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/castwright/model/store"
)

// The corners of a grey top in a photograph that is drawn here.
var topInPhoto = [4]at{{210, 230}, {470, 226}, {520, 330}, {150, 336}}

const photoW, photoH = 640, 480

func photograph(t *testing.T, path string) []byte {
	t.Helper()
	img := image.NewRGBA(image.Rect(0, 0, photoW, photoH))
	for y := range photoH {
		for x := range photoW {
			c := color.RGBA{205, 200, 190, 255}
			if y > 335 {
				c = color.RGBA{120, 95, 70, 255}
			}
			in := true
			for i, a := range topInPhoto {
				b := topInPhoto[(i+1)&3]
				in = in && (b.X-a.X)*(float64(y)-a.Y)-(b.Y-a.Y)*(float64(x)-a.X) > 0
			}
			if in {
				c = color.RGBA{140, 138, 132, 255}
			}
			img.SetRGBA(x, y, c)
		}
	}
	var b bytes.Buffer
	if err := jpeg.Encode(&b, img, nil); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, b.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// TestRoom goes from a photograph to the picture with the top in it, by mouse and
// keys, and saves both job and picture.
func TestRoom(t *testing.T) {
	d := startDisplay(t, screenW, screenH)
	home := t.TempDir()
	path := writeJob(t, home)
	data := photograph(t, filepath.Join(home, "from-the-camera.jpg"))
	m := newMaker(t, start(t, d, home, path), d.hand(t))
	m.wait("the job is open", func(s state) bool { return s.Path == path })
	m.press("ctrl+F12", "the room is shown", func(s state) bool { return s.Room != nil && strings.Contains(s.Hint, "Choose a photograph") })
	m.press("ctrl+shift+F12", "it asks for a photograph", func(s state) bool { return s.Busy })
	m.write("from-the-camera.jpg")
	marked := func(s state) bool { return s.Room != nil && len(s.Room.Corners) == 4 && s.Room.Corners[2].X > 50 }
	m.press("Return", "the photograph is there", func(s state) bool { return !s.Busy && marked(s) })
	s := m.wait("its corners are seen", marked)

	// Where the photograph lies: the first corners stand at known shares of it.
	c := s.Room.Corners
	k := (c[1].X - c[0].X) / (0.36 * photoW)
	place := func(p at) at { return at{c[0].X + (p.X-0.32*photoW)*k, c[0].Y + (p.Y-0.42*photoH)*k} }
	// A corner is let go only once it is seen where the hand has it.
	drag := func(i int, to at) {
		t.Helper()
		now := m.wait("the corner", marked).Room.Corners[i]
		m.move(at{now.X, now.Y})
		m.down()
		m.wait("the corner is held", func(s state) bool { return marked(s) && s.Room.Held })
		m.move(at{now.X + 8, now.Y + 6})
		m.move(to)
		m.wait("the corner follows the hand", func(s state) bool {
			return marked(s) && math.Hypot(s.Room.Corners[i].X-to.X, s.Room.Corners[i].Y-to.Y) < 2.5
		})
		m.up()
		m.wait("the corner is let go", func(s state) bool { return marked(s) && !s.Room.Held })
	}
	for i, p := range topInPhoto {
		drag(i, place(p))
		m.wait("the drag is a step", func(s state) bool { return s.Undo == "Move a corner in the room" })
	}
	d.shootStill(t, "room-1-marked")
	drag(2, place(at{300, 260}))
	m.wait("a corner that can't be is said so", func(s state) bool { return marked(s) && strings.Contains(s.Room.Wrong, "inside the other three") })
	d.shootStill(t, "room-2-wrong")
	m.press("ctrl+z", "undo mends it", func(s state) bool { return marked(s) && s.Room.Wrong == "" })

	m.press("ctrl+Return", "the picture is made", func(s state) bool { return s.Room != nil && s.Room.Result == "Clear" && s.Room.Work == "" })
	d.shootStill(t, "room-3-picture")
	m.press("Right", "the other option in the same room", func(s state) bool { return s.Option == "B" && s.Room.Result == "Clear" })
	m.press("ctrl+alt+s", "it asks where to", func(s state) bool { return s.Busy })
	m.key("ctrl+a")
	m.write("in-the-room.png")
	m.press("Return", "the picture is written", func(s state) bool {
		info, err := os.Stat(filepath.Join(home, "in-the-room.png"))
		// And that is said, on a card with nothing but a button to close it.
		return err == nil && info.Size() > 50_000 && s.Busy && len(s.Controls) == 1 && s.Controls[0].Says == ""
	})
	m.press("Return", "the word is read", func(s state) bool { return !s.Busy })
	m.press("Escape", "back to the corners", func(s state) bool { return marked(s) && s.Room.Result == "" })
	m.press("Escape", "back to the drawing", func(s state) bool { return s.Room == nil })
	m.press("ctrl+s", "saved", func(s state) bool { return !s.Dirty })

	job, err := store.Load(path)
	if err != nil {
		t.Fatal(err)
	}
	kept, err := store.Photo(path, job.Room)
	if err != nil || !bytes.Equal(kept, data) {
		t.Error("the photograph beside the job is not the one that was chosen:", err)
	}
	for i, p := range topInPhoto {
		got := job.Room.Corners[i]
		if x, y := got.X.Fraction()*photoW, got.Y.Fraction()*photoH; math.Hypot(x-p.X, y-p.Y) > 3/k {
			t.Errorf("corner %d was saved at (%.1f, %.1f), want (%g, %g)", i, x, y, p.X, p.Y)
		}
	}
}
