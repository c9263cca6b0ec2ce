package room

import (
	"bytes"
	"encoding/binary"
	"hash/crc32"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/material"
	"example.org/castwright/model/store"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/files"
	"example.org/castwright/ui/session"
	look "example.org/castwright/ui/theme"
)

// rig is the page in a window without a screen, on a job of two options with a file.
type rig struct {
	*Page
	dir    string
	closed int
	said   string
}

const pw, phh = 640, 480

func newRig(t testing.TB) *rig {
	t.Helper()
	a := test.NewTempApp(t)
	a.Settings().SetTheme(look.New(look.Light))
	win := test.NewTempWindow(t, nil)
	win.SetPadded(false)
	win.Resize(fyne.NewSize(1200, 760))
	f := control.NewFrame(win)
	f.Inline = true
	option := func(name string, w, d units.Length) design.Option {
		return design.Option{Name: name, Title: "Shelf", Design: design.Design{Outline: edit.Rectangle(w, d), Thickness: 40 * units.Millimetre,
			Finish: design.Finish{Colour: design.Colour{R: 0xb8, G: 0xb0, B: 0xa4}, Polish: 2}}}
	}
	r := &rig{dir: t.TempDir()}
	path := filepath.Join(r.dir, "kiln.json")
	job := design.Job{Client: "Kiln room", Units: units.Imperial, Materials: material.Defaults(),
		Options: []design.Option{option("A", 60*units.Inch, 22*units.Inch), option("B", 50*units.Inch, 20*units.Inch)}}
	if err := store.Save(path, job); err != nil {
		t.Fatal(err)
	}
	s := session.New(job, path)
	set := files.LoadSettings("")
	set.Folder = r.dir
	later := func(time.Duration, func()) {}
	r.Page = New(s, f, files.New(s, f, set, later), later, func() { r.closed++ })
	r.OnHint = func(text string) { r.said = text }
	win.SetContent(r.Object)
	r.Open()
	return r
}

// room is a photograph drawn by hand: a grey top on a pale wall, its corners where
// truth says.
var truth = [4]geom.Vec{{X: 200, Y: 220}, {X: 470, Y: 216}, {X: 520, Y: 330}, {X: 140, Y: 336}}

func kitchen() []byte {
	img := image.NewRGBA(image.Rect(0, 0, pw, phh))
	for y := range phh {
		for x := range pw {
			c := color.RGBA{205, 200, 190, 255}
			if y > 330 {
				c = color.RGBA{120, 95, 70, 255}
			}
			in := true
			for i := range truth {
				a, b := truth[i], truth[(i+1)&3]
				in = in && b.Sub(a).Cross(geom.Vec{X: float64(x), Y: float64(y)}.Sub(a)) > 0
			}
			if in {
				c = color.RGBA{140, 138, 132, 255}
			}
			img.SetRGBA(x, y, c)
		}
	}
	var b bytes.Buffer
	_ = jpeg.Encode(&b, img, nil)
	return b.Bytes()
}

func (r *rig) file(t testing.TB, name string, data []byte) string {
	t.Helper()
	path := filepath.Join(r.dir, name)
	if err := os.WriteFile(path, data, 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

// at is where a pixel of the photograph is seen in the stage, in points.
func (r *rig) at(p geom.Vec) fyne.Position {
	s := r.stage.fit.screen(p)
	return fyne.NewPos(float32(s.X/r.stage.px), float32(s.Y/r.stage.px))
}

func (r *rig) paint() { r.frame.Window.Canvas().Capture() }

// drag drags a corner to a pixel of the photograph.
func (r *rig) drag(i int, to geom.Vec) {
	r.hold(i, to)
	r.stage.DragEnd()
}

func (r *rig) hold(i int, to geom.Vec) {
	r.paint()
	h := r.stage.handles()[i]
	from := fyne.NewPos(float32(h.X/r.stage.px), float32(h.Y/r.stage.px))
	r.stage.MouseDown(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: from}, Button: desktop.MouseButtonPrimary})
	r.stage.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: r.at(to)}})
	r.paint()
}

func (r *rig) warned() string {
	top := r.frame.Window.Canvas().Overlays().Top()
	if top == nil {
		return ""
	}
	var words []string
	for _, o := range test.LaidOutObjects(top) {
		if l, ok := o.(interface{ Text() string }); ok {
			words = append(words, l.Text())
		}
		if l, ok := o.(interface{ String() string }); ok {
			words = append(words, l.String())
		}
	}
	r.frame.Key(&fyne.KeyEvent{Name: fyne.KeyEscape})
	return strings.Join(words, " ") + "!"
}

// From the photograph to the saved picture, and back by undo.
func TestPage(t *testing.T) {
	r := newRig(t)
	r.paint()
	if r.stage.Visible() || !r.empty.object.Visible() {
		t.Fatal("without a photograph nothing says what to do")
	}
	data := kitchen()
	source := r.file(t, "from-the-camera.jpg", data)
	r.Bring(source)
	if w := r.warned(); w != "" {
		t.Fatal(w)
	}
	room := r.s.Job().Room
	if room.Photo != "kiln.room.jpg" || room.Width != 60*units.Inch || room.Depth != 22*units.Inch {
		t.Errorf("%+v", room)
	}
	// Byte for byte beside the job, and the source untouched.
	kept, err := os.ReadFile(filepath.Join(r.dir, room.Photo))
	again, _ := os.ReadFile(source)
	if err != nil || store.PhotoSum(kept) != store.PhotoSum(data) || room.SHA256 != store.PhotoSum(data) || !bytes.Equal(again, data) {
		t.Error("the photograph is not kept as it was", err)
	}

	// Each corner comes to lie where it is dropped, within a pixel of the screen.
	for i, p := range truth {
		r.drag(i, p)
		if got := r.spots()[i]; math.Abs(got.X.Fraction()*pw-p.X) > 1 || math.Abs(got.Y.Fraction()*phh-p.Y) > 1 {
			t.Errorf("corner %d lies at %v, want %v", i, got, p)
		}
	}
	marked := r.room()
	r.drag(2, geom.Vec{X: 600, Y: 400})
	if r.room() == marked || r.s.UndoName() != "Move a corner in the room" {
		t.Errorf("a drag is no step: %q", r.s.UndoName())
	}
	r.s.Undo()
	if r.room() != marked {
		t.Error("undo does not bring the corners back")
	}
	r.s.Redo()
	r.s.Undo()

	// Keys: Tab takes the next corner, arrows move it by a pixel, and ten of them are
	// one step of undo.
	r.corner = 0
	r.stage.FocusGained()
	key := func(name fyne.KeyName) { r.stage.TypedKey(&fyne.KeyEvent{Name: name}) }
	key(fyne.KeyTab)
	if r.corner != 1 || !strings.Contains(r.said, "back right") {
		t.Errorf("after Tab corner %d; %q", r.corner, r.said)
	}
	for range 10 {
		key(fyne.KeyRight)
	}
	key(fyne.KeyUp)
	moved := r.room().Corners[1]
	was := marked.Corners[1]
	if dx, dy := float64(moved.X-was.X)*pw/1e6, float64(moved.Y-was.Y)*phh/1e6; math.Abs(dx-10) > 0.01 || math.Abs(dy+1) > 0.01 {
		t.Errorf("nudged by %g, %g pixels", dx, dy)
	}
	for range 10 {
		key(fyne.KeyLeft)
	}
	key(fyne.KeyDown)
	if r.room() != marked {
		t.Errorf("there and back again: %v, was %v", r.room().Corners, marked.Corners)
	}
	r.s.Undo()
	if r.room() != marked {
		t.Error("undo of a nudge")
	}

	// The size as it is typed, in the job's units.
	for text, want := range map[string][2]units.Length{
		`60 1/2 x 22"`: {121 * units.Inch / 2, 22 * units.Inch}, "1250 x 560 mm": {1250 * units.Millimetre, 560 * units.Millimetre},
	} {
		if err := r.panel.setSize(text); err != nil || r.room().Width != want[0] || r.room().Depth != want[1] {
			t.Errorf("%q: %v x %v, %v", text, r.room().Width, r.room().Depth, err)
		}
		if err := r.panel.setSize(r.panel.size.Text); err != nil || r.room().Width != want[0] || r.room().Depth != want[1] {
			t.Errorf("%q can't be typed again: %v", r.panel.size.Text, err)
		}
	}
	for _, text := range []string{"", "60", "60 x", "x", "NaN x 3", "1e99 x 4", "0 x 0", "3000 x 10 m"} {
		before := r.room()
		if err := r.panel.setSize(text); err == nil || r.room() != before {
			t.Errorf("%q is taken for a size", text)
		}
	}
	_ = r.panel.setSize("60 x 22")
	// A text that is no size stays as it was typed, with the reason, and nothing is set
	// in before it is mended.
	r.panel.size.SetText("60 by 22")
	r.panel.size.Settle()
	r.Compose()
	if r.result || r.panel.size.Text != "60 by 22" || !strings.Contains(r.panel.bad.Text, "no size") || !r.panel.bad.Visible() || !r.panel.compose.Disabled() {
		t.Errorf("typed %q: %q", r.panel.size.Text, r.panel.bad.Text)
	}
	r.panel.size.Restore()
	if r.panel.bad.Visible() || r.panel.compose.Disabled() {
		t.Errorf("restored: %q", r.panel.bad.Text)
	}

	// Set in, looked at, wiped, saved.
	r.Compose()
	f := r.shown()
	if f == nil || f.stage != best || !r.result || f.set != nil {
		t.Fatalf("nothing is set in: %v; %q", r.State(), r.panel.bad.Text)
	}
	whole := f.whole(r.photo)
	if whole.Rect != r.photo.full.Rect || f.part.Rect == whole.Rect {
		t.Errorf("a picture of %v, of which the top has changed %v", whole.Rect, f.part.Rect)
	}
	var where [3]int
	for y := range phh {
		for x := range pw {
			c, o := whole.NRGBAAt(x, y), r.photo.full.RGBAAt(x, y)
			if c.R != o.R || c.G != o.G || c.B != o.B {
				where[0], where[1], where[2] = where[0]+x, where[1]+y, where[2]+1
			}
		}
	}
	if n := where[2]; n < 20_000 || math.Abs(float64(where[0]/n)-332) > 25 || math.Abs(float64(where[1]/n)-285) > 30 {
		t.Errorf("changed about (%d, %d): %d pixels", where[0]/max(1, where[2]), where[1]/max(1, where[2]), where[2])
	}
	shot := func() color.NRGBA {
		r.paint()
		m := r.stage.fit.screen(geom.Vec{X: 330, Y: 280})
		c := r.stage.out.RGBAAt(int(m.X), int(m.Y))
		return color.NRGBA(c)
	}
	with := shot()
	r.stage.KeyDown(&fyne.KeyEvent{Name: fyne.KeySpace})
	without := shot()
	r.stage.KeyUp(&fyne.KeyEvent{Name: fyne.KeySpace})
	if with == without || shot() != with || math.Abs(float64(without.R)-140) > 12 {
		t.Errorf("held: %v, let go %v and before %v", without, shot(), with)
	}
	r.Key(&fyne.KeyEvent{Name: fyne.KeyW})
	r.stage.MouseDown(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: r.at(geom.Vec{X: 400, Y: 100})}, Button: desktop.MouseButtonPrimary})
	if c := shot(); c != without || math.Abs(r.wipe-400.0/pw) > 0.01 {
		t.Errorf("left of the line: %v at %g", c, r.wipe)
	}
	r.stage.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: r.at(geom.Vec{X: 100, Y: 100})}})
	r.stage.DragEnd()
	if c := shot(); c != with {
		t.Errorf("right of the line: %v", c)
	}
	out := filepath.Join(r.dir, "picture.png")
	r.write(out)
	if w := r.warned(); !strings.Contains(w, "written") {
		t.Error(w)
	}
	saved, err := os.ReadFile(out)
	if err != nil {
		t.Fatal(err)
	}
	if img, err := png.Decode(bytes.NewReader(saved)); err != nil || img.Bounds() != whole.Rect {
		t.Error(err)
	} else if at := f.part.Rect.Min.Add(f.part.Rect.Size().Div(2)); color.NRGBAModel.Convert(img.At(at.X, at.Y)) != whole.NRGBAAt(at.X, at.Y) {
		t.Error("what is saved is another picture than what is seen")
	}
	if got := chunks(t, saved); got != "IHDR sRGB IDAT IEND" {
		t.Errorf("the picture holds %s", got) // no eXIf, tEXt or the like
	}
	// Never over the photograph.
	r.write(filepath.Join(r.dir, "kiln.room.jpg"))
	r.warned()
	if err := os.Symlink("kiln.room.jpg", filepath.Join(r.dir, "link.png")); err == nil {
		r.write(filepath.Join(r.dir, "link.png"))
		if w := r.warned(); !strings.Contains(w, "not written") {
			t.Error(w)
		}
	}
	if now, _ := os.ReadFile(filepath.Join(r.dir, "kiln.room.jpg")); !bytes.Equal(now, data) {
		t.Error("the photograph was written over")
	}

	// The other option in the same room; the first again without work.
	r.Key(&fyne.KeyEvent{Name: fyne.KeyRight})
	if g := r.shown(); r.s.Option().Name != "B" || g == nil || g.stage != best || bytes.Equal(g.whole(r.photo).Pix, whole.Pix) {
		t.Error("option B is not set in")
	}
	r.Key(&fyne.KeyEvent{Name: fyne.KeyLeft})
	if g := r.shown(); g == nil || g.part != f.part {
		t.Error("option A is made again")
	}
	// Larger and back.
	r.Key(&fyne.KeyEvent{Name: fyne.KeyF})
	small := r.stage.fit.scale
	r.paint()
	if r.stage.fit.scale < 1.15*small || shot() == without {
		t.Errorf("large it is shown at %g, before at %g", r.stage.fit.scale, small)
	}
	if r.side.Visible() || !r.stage.Visible() || !r.BackOut() || !r.side.Visible() || !r.result {
		t.Error("F and Esc do not make it large and small again")
	}
	// Esc: first back to the corners, then out.
	if !r.BackOut() || r.result || r.BackOut() {
		t.Error("Esc does not go back step by step")
	}

	// Taken out and back.
	r.Remove()
	if !r.room().None() || r.stage.Visible() {
		t.Error("the room is still there")
	}
	r.s.Undo()
	if r.room().None() || !r.stage.Visible() || r.photo == nil {
		t.Error("undo does not bring the room back")
	}
	r.Close()
	if r.Shown() || r.photo != nil || r.kept != nil {
		t.Error("closed, it keeps its pictures")
	}
}

// A work that is stopped stays stopped: with a picture that one stays, without one
// the corners are shown; a change or Enter begins again.
func TestStop(t *testing.T) {
	r := newRig(t)
	r.Bring(r.file(t, "a.jpg", kitchen()))
	for i, p := range truth {
		r.drag(i, p)
	}
	stopped := 0
	r.result = true
	r.work = &work{key: r.key(), cancel: func() { stopped++ }}
	if !r.BackOut() || stopped != 1 || r.work != nil || r.result {
		t.Errorf("stopped %d times, shows a picture that is not there: %v", stopped, r.result)
	}
	r.Compose()
	f := *r.shown()
	f.stage = 0
	r.kept = []finished{f}
	r.work = &work{key: r.key(), cancel: func() { stopped++ }}
	if !r.BackOut() || stopped != 2 || r.work != nil || !r.result || r.shown().stage != 0 {
		t.Errorf("stopped %d times, result %v", stopped, r.result)
	}
	r.Refresh()
	if r.shown().stage != 0 {
		t.Error("it went on by itself")
	}
	r.panel.brighter.more.OnTapped()
	if g := r.shown(); g == nil || g.stage != best || r.room().Lit.Brighter <= 0 {
		t.Error("a change does not begin again")
	}
	r.s.Undo()
	r.Compose()
	if g := r.shown(); g == nil || g.stage != best {
		t.Error("it can't be begun again")
	}
}

// chunks are the names of a PNG's chunks, each once in a row (ISO/IEC 15948, 5.3).
func chunks(t *testing.T, data []byte) string {
	t.Helper()
	var out []string
	for at := 8; at+12 <= len(data); {
		n := int(binary.BigEndian.Uint32(data[at:]))
		if name := string(data[at+4 : at+8]); len(out) == 0 || out[len(out)-1] != name {
			out = append(out, name)
		}
		at += 12 + n
	}
	return strings.Join(out, " ")
}

// Corners that no top can have are kept where they were dropped, with a word beside
// them, and nothing is set in until they are mended.
func TestDegenerateCorners(t *testing.T) {
	r := newRig(t)
	r.Bring(r.file(t, "a.jpg", kitchen()))
	for i, p := range truth {
		r.drag(i, p)
	}
	for _, c := range []struct {
		corner int
		to     geom.Vec
		word   string
	}{
		{2, geom.Vec{X: 300, Y: 250}, "inside the other three"},
		{1, geom.Vec{X: 204, Y: 222}, "lies on the"},
		{0, geom.Vec{X: 560, Y: 260}, "cross"},
	} {
		good := r.room()
		r.hold(c.corner, c.to)
		if w := r.State().Wrong; !strings.Contains(w, c.word) {
			t.Errorf("held at %v: %q, want %q", c.to, w, c.word)
		}
		r.stage.DragEnd()
		if r.room().Corners[c.corner] == good.Corners[c.corner] {
			t.Error("the corner has sprung back")
		}
		if !r.panel.compose.Disabled() {
			t.Error("it can be set in")
		}
		r.Compose()
		if r.result || r.work != nil {
			t.Error("it is set in")
		}
		r.s.Undo()
		if r.room() != good || r.panel.compose.Disabled() {
			t.Error("undo does not mend it")
		}
	}
	// A drag that is backed out of leaves no trace.
	good, undo := r.room(), r.s.UndoName()
	r.hold(0, geom.Vec{X: 20, Y: 20})
	if !r.BackOut() || r.room() != good || r.s.UndoName() != undo {
		t.Error("Esc during a drag")
	}
	r.stage.DragEnd()
	if r.room() != good {
		t.Error("the drop after Esc moves the corner")
	}
}

// What is no photograph is refused in plain words, and nothing changes.
func TestHostilePhotographs(t *testing.T) {
	r := newRig(t)
	whole := kitchen()
	huge := bytes.Clone(pngOf(40, 40))
	binary.BigEndian.PutUint32(huge[16:], 60_000)
	binary.BigEndian.PutUint32(huge[20:], 60_000)
	binary.BigEndian.PutUint32(huge[29:], crc32.ChecksumIEEE(huge[12:29])) // ISO/IEC 15948, 5.5
	for name, c := range map[string]struct {
		data []byte
		word string
	}{
		"text.jpg":      {[]byte("not a picture"), "JPEG or PNG"},
		"nothing.png":   {nil, "JPEG or PNG"},
		"truncated.jpg": {whole[:len(whole)/3], "damaged"},
		"huge.png":      {huge, "too large"},
		"tiny.png":      {pngOf(20, 20), "too small"},
	} {
		r.Bring(r.file(t, name, c.data))
		w := r.warned()
		if !strings.Contains(w, c.word) {
			t.Errorf("%s: %q, want %q", name, w, c.word)
		}
		if !r.room().None() || r.s.Dirty() || !r.empty.choose.Visible() {
			t.Errorf("%s changed something", name)
		}
	}
	list, _ := filepath.Glob(filepath.Join(r.dir, "kiln.room*"))
	if len(list) > 0 {
		t.Errorf("left behind: %v", list)
	}
}

func pngOf(w, h int) []byte {
	var b bytes.Buffer
	_ = png.Encode(&b, image.NewGray(image.Rect(0, 0, w, h)))
	return b.Bytes()
}

// A photograph that is gone or another one is said so, with the way out.
func TestLostPhotograph(t *testing.T) {
	r := newRig(t)
	r.Bring(r.file(t, "a.jpg", kitchen()))
	kept := filepath.Join(r.dir, "kiln.room.jpg")
	r.Close()
	os.Rename(kept, filepath.Join(r.dir, "elsewhere.jpg"))
	r.Open()
	if r.State().Photo != "lost" || !strings.Contains(r.empty.body.Text, "no kiln.room.jpg") || !r.empty.choose.Visible() || !r.empty.out.Visible() {
		t.Errorf("gone: %q", r.empty.body.Text)
	}
	corners := r.room().Corners
	corners[0].X += 5
	if err := r.change(func(room *design.Room) { room.Corners = corners }); err != nil {
		t.Fatal(err)
	}
	// The same again keeps the corners.
	r.Bring(filepath.Join(r.dir, "elsewhere.jpg"))
	if r.State().Photo != "kiln.room.jpg" || r.room().Corners != corners {
		t.Errorf("chosen again: %v", r.State())
	}
	r.Close()
	if err := os.WriteFile(kept, pngOf(400, 300), 0o644); err != nil {
		t.Fatal(err)
	}
	r.Open()
	if r.State().Photo != "lost" || !strings.Contains(r.empty.title.Text(), "changed") {
		t.Errorf("changed: %q", r.empty.title.Text())
	}
}

// A sheet of paper: its size by name in the job's units, the new top about it.
func TestSheet(t *testing.T) {
	r := newRig(t)
	r.Bring(r.file(t, "a.jpg", kitchen()))
	r.panel.mark(1)
	room := r.room()
	if room.Marks != design.MarkedSheet || room.Width != 11*units.Inch || room.Depth != 17*units.Inch/2 {
		t.Errorf("a maker of inches lays down %v x %v", room.Width, room.Depth)
	}
	r.panel.pickSheet(1) // A4, its long side across: ISO 216, 210 x 297
	if room = r.room(); room.Width != 210*units.Millimetre || room.Depth != 297*units.Millimetre || sheetOf(room.Width, room.Depth) != 1 {
		t.Errorf("A4: %v x %v", room.Width, room.Depth)
	}
	// 12 in from the top's left end, 3 in before its back.
	if err := r.panel.setRight("12"); err != nil || r.room().At.X != -12*units.Inch {
		t.Error(r.room().At, err)
	}
	if err := r.panel.setBack("3"); err != nil || r.room().At.Y != 3*units.Inch {
		t.Error(r.room().At, err)
	}
	r.panel.mark(0)
	if room = r.room(); room.Marks != design.MarkedTop || room.At != (design.Point{}) || room.Width != 60*units.Inch {
		t.Errorf("back to the top: %+v", room)
	}
}

func TestFitting(t *testing.T) {
	f := fit(4000, 3000, 1000, 900, 10)
	if f.box.W() != 980 || f.box.H() != 735 || f.box.Min.X != 10 || f.box.Min.Y != 82 {
		t.Errorf("%+v", f)
	}
	// What is shown large has the shape of the screen, holds the box and stays in the
	// photograph.
	for _, b := range []geom.Box{{Min: geom.Vec{X: 100, Y: 100}, Max: geom.Vec{X: 700, Y: 300}}, {Max: geom.Vec{X: 4000, Y: 2900}}, {Min: geom.Vec{X: 3900, Y: 2900}, Max: geom.Vec{X: 3950, Y: 2990}}} {
		n := near(b, 4000, 3000, 1200, 700)
		if n.Min.X < 0 || n.Min.Y < 0 || n.Max.X > 4000 || n.Max.Y > 3000 || !n.Contains(b.Centre()) ||
			n.W() < 4000 && n.H() < 3000 && (math.Abs(n.W()/n.H()-1200.0/700) > 1e-9 || n.W() < b.W() || n.H() < b.H()) {
			t.Errorf("%v is shown by %v", b, n)
		}
	}
	f.from = geom.Vec{X: 300, Y: 20}
	p := geom.Vec{X: 1234.5, Y: 678}
	if d := f.photo(f.screen(p)).Dist(p); d > 1e-9 {
		t.Error(d)
	}
	if i := nearest([4]geom.Vec{{}, {X: 10}, {X: 20}, {X: 30}}, geom.Vec{X: 21}, 5); i != 2 {
		t.Error(i)
	}
	if i := nearest([4]geom.Vec{}, geom.Vec{X: 21}, 5); i != -1 {
		t.Error(i)
	}
	// The loupe stays in sight and off the corner, wherever that lies.
	for x := 0.0; x <= 600; x += 20 {
		for y := 0.0; y <= 500; y += 20 {
			at := loupeAt(geom.Vec{X: x, Y: y}, 150, 30, 600, 500)
			if at.X < 0 || at.Y < 0 || at.X+150 > 600 || at.Y+150 > 500 || x > at.X && x < at.X+150 && y > at.Y && y < at.Y+150 {
				t.Fatalf("at %g, %g the loupe lies at %v", x, y, at)
			}
		}
	}
	if got := wrapped("one two three", 12, 60); len(got) < 2 || strings.Join(got, " ") != "one two three" {
		t.Errorf("%q", got)
	}
}

// BenchmarkDrag is a step of dragging a corner, from the event to the picture at
// 1400 x 900 pixels: the camera, the wire, the loupe.
func BenchmarkDrag(b *testing.B) {
	r := newRig(b)
	r.Bring(r.file(b, "a.jpg", kitchen()))
	for i, p := range truth {
		r.drag(i, p)
	}
	r.hold(2, truth[2])
	i := 0
	b.ReportAllocs()
	for b.Loop() {
		i++
		r.stage.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: r.at(truth[2].Add(geom.Vec{X: float64(i % 9)}))}})
		r.stage.draw(1400, 900)
	}
}
