package showing

import (
	"image"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"example.org/castwright/assets"
	"example.org/castwright/model/amount"
	"example.org/castwright/model/draw"
	"example.org/castwright/model/scene"
	"example.org/castwright/model/store"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/session"
	look "example.org/castwright/ui/theme"
)

// rig is the page on the demo job, in a window of 1280 x 800 points.
func rig(t *testing.T) (*Page, *session.Session) {
	t.Helper()
	test.NewTempApp(t).Settings().SetTheme(look.New(look.Light))
	j, err := store.Decode(assets.Demos()[0].Data)
	if err != nil {
		t.Fatal(err)
	}
	s := session.New(j, "")
	w := test.NewTempWindow(t, nil)
	f := control.NewFrame(w)
	f.Inline = true
	step := func(by int) {
		for i, o := range j.Options {
			if to := i + by; o.Name == s.Option().Name && to >= 0 && to < len(j.Options) {
				s.SetOption(j.Options[to].Name)
				return
			}
		}
	}
	p := New(s, f, func() {}, step)
	f.OnSay = p.Say
	w.SetPadded(false)
	w.SetContent(p.Object)
	w.Resize(fyne.NewSize(1280, 800))
	p.Open()
	return p, s
}

func TestKeysGoThroughTheOptions(t *testing.T) {
	p, s := rig(t)
	for _, tt := range []struct {
		key  fyne.KeyName
		want string
	}{{fyne.KeyLeft, "A"}, {fyne.KeyRight, "B"}, {fyne.KeyPageDown, "B"}, {fyne.KeyUp, "A"}, {fyne.KeySpace, "B"}} {
		if !p.Key(&fyne.KeyEvent{Name: tt.key}) || s.Option().Name != tt.want {
			t.Errorf("%s leads to option %s, want %s", tt.key, s.Option().Name, tt.want)
		}
		if p.title.letter.Text != tt.want {
			t.Errorf("after %s the title says %q", tt.key, p.title.letter.Text)
		}
	}
	if p.Key(&fyne.KeyEvent{Name: fyne.KeyEscape}) || p.Key(&fyne.KeyEvent{Name: fyne.KeyF1}) {
		t.Error("keys of the window are taken")
	}
	p.Key(&fyne.KeyEvent{Name: fyne.KeyD})
	if !p.Dimensions() || !p.lines.On() {
		t.Error("D shows no dimensions")
	}
}

// TestNoCosts: what the maker pays is not for the client's eyes.
func TestNoCosts(t *testing.T) {
	p, s := rig(t)
	j := s.Job()
	for range j.Options {
		cost := s.Report().Takeoff.Total
		for _, text := range []string{p.title.name.Text, p.title.detail.Text, p.caption.text.Text} {
			if strings.Contains(text, amount.Money(j.Materials.Currency, cost)) || strings.Contains(text, cost.String()) {
				t.Errorf("%q tells the cost", text)
			}
		}
		if want := amount.Figure(s.Report().Takeoff.WeightDry, j.Units); !strings.Contains(p.title.detail.Text, want) {
			t.Errorf("%q does not say how heavy it is: %s", p.title.detail.Text, want)
		}
		p.step(1)
	}
}

// TestTopHasRoom: on any window the drawing of the top, with its dimensions, lies
// between title and bar.
func TestTopHasRoom(t *testing.T) {
	_, s := rig(t)
	for _, size := range [][2]float64{{1280, 800}, {2560, 1440}, {1920, 1080}, {900, 1200}, {640, 480}, {200, 100}} {
		w, h := size[0], size[1]
		u := float64(unit(float32(w), float32(h)))
		for _, dims := range []bool{false, true} {
			room := area(w, h, u, dims)
			if room.Min.X < 0 || room.Min.Y < 0 || room.Max.X > w || room.Max.Y > h || room.Empty() {
				t.Errorf("%v: room %v", size, room)
			}
			v := placed(s.Report().Solid.Outline.Bounds(), w, h, room)
			box := s.Report().Solid.Outline.Bounds()
			a, b := v.ToPage(box.Min), v.ToPage(box.Max)
			if a.X < room.Min.X-1e-6 || b.X > room.Max.X+1e-6 || b.Y < room.Min.Y-1e-6 || a.Y > room.Max.Y+1e-6 {
				t.Errorf("%v: the top lies from %v to %v, its room is %v", size, a, b, room)
			}
		}
	}
}

func TestSubtitleFollowsUnits(t *testing.T) {
	_, s := rig(t)
	got := subtitle(s.Design(), s.Report(), units.Imperial)
	if !strings.Contains(got, `" ×`) || !strings.Contains(got, "lb") {
		t.Errorf("in inches: %q", got)
	}
}

// TestFade: a fade begins with the one picture and ends with the other.
func TestFade(t *testing.T) {
	a := []uint8{0, 255, 10, 20, 30, 40, 50, 60, 70, 80, 90}
	b := []uint8{255, 0, 20, 10, 40, 30, 60, 50, 80, 70, 91}
	got := make([]uint8, len(a))
	for f, want := range map[float64][]uint8{0: a, 1: b, 7: b, -1: a,
		0.5: {127, 127, 15, 15, 35, 35, 55, 55, 75, 75, 90}} {
		if mix(got, a, b, f); string(got) != string(want) {
			t.Errorf("at %g: %v, want %v", f, got, want)
		}
	}
}

// TestLightIsNeutral: the ground has no tint, and is the theme's on the average.
func TestLightIsNeutral(t *testing.T) {
	img := image.NewRGBA(image.Rect(0, 0, 320, 200))
	ground := draw.Light().Ground
	light(img, ground)
	sum := 0
	for i := 0; i < len(img.Pix); i += 4 {
		if img.Pix[i] != img.Pix[i+1] || img.Pix[i] != img.Pix[i+2] || img.Pix[i+3] != 0xff {
			t.Fatalf("pixel %d is %v", i/4, img.Pix[i:i+4])
		}
		sum += int(img.Pix[i])
	}
	if mean := float64(4*sum) / float64(len(img.Pix)); mean < float64(ground.R)-2 || mean > float64(ground.R)+6 {
		t.Errorf("the ground is %.1f on the average, the theme's %d", mean, ground.R)
	}
	light(img, scene.Colour{}) // black stays black
}

// The bar grows with the page's type on a large screen, fits it, and is never smaller
// than for a finger.
func TestBarGrows(t *testing.T) {
	p, _ := shown(t)
	bar := p.Object.Objects[4]
	for _, c := range []struct {
		size fyne.Size
		by   float32
	}{{fyne.NewSize(1000, 640), 1}, {fyne.NewSize(1280, 800), 1}, {fyne.NewSize(2560, 1440), 1.8}, {fyne.NewSize(1280, 800), 1}} {
		p.Object.Resize(c.size)
		for _, picture := range []bool{false, true} {
			p.show(picture)
			if got := p.before.Size(); got.Width < c.by*touch-0.5 || got.Width > c.by*touch+0.5 || got.Height < c.by*touch-0.5 {
				t.Errorf("%v, picture %v: a button is %v, want %g times %d", c.size, picture, got, c.by, touch)
			}
			if at := bar.Position(); at.X < 0 || at.X+bar.Size().Width > c.size.Width || at.Y+bar.Size().Height > c.size.Height {
				t.Errorf("%v, picture %v: the bar lies at %v, %v large", c.size, picture, at, bar.Size())
			}
		}
		p.show(false)
	}
}

// A long title is set smaller, and cut before it leaves the page.
func TestLongTitle(t *testing.T) {
	p, s := rig(t)
	size := float32(0)
	for _, words := range []int{2, 12, 60} {
		j := s.Job()
		j.Options = append(j.Options[:0:0], j.Options...)
		j.Options[0].Title = strings.Repeat("glazing ", words)
		s.Load(j, "")
		p.Refresh()
		name := p.title.name
		if at := name.Position().X + name.MinSize().Width; at > p.title.box.Size().Width+1 {
			t.Errorf("a title of %d words reaches %g, the page %g", words, at, p.title.box.Size().Width)
		}
		if cut := strings.HasSuffix(name.Text, "…"); cut != (words == 60) || size > 0 && name.TextSize >= size {
			t.Errorf("a title of %d words is %q, in %g", words, name.Text, name.TextSize)
		}
		if words < 60 {
			size = name.TextSize
		}
	}
}
