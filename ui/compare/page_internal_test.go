package compare

import (
	"image"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"example.org/castwright/assets"
	"example.org/castwright/export/comparison"
	"example.org/castwright/model/approve"
	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/report"
	"example.org/castwright/model/store"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/keys"
	"example.org/castwright/ui/session"
	look "example.org/castwright/ui/theme"
)

func demo(t testing.TB) design.Job {
	t.Helper()
	j, err := store.Decode(assets.Demos()[0].Data)
	if err != nil {
		t.Fatal(err)
	}
	return j
}

// rig is an open page on a job, with what it asked to have run.
func rig(t *testing.T, j design.Job) (*Page, *session.Session, *[]keys.ID) {
	t.Helper()
	test.NewTempApp(t).Settings().SetTheme(look.New(look.Light))
	w := test.NewTempWindow(t, widget.NewLabel(""))
	f := control.NewFrame(w)
	f.Inline = true
	s := session.New(j, "")
	var ran []keys.ID
	p := New(s, f, func() {}, func(id keys.ID) { ran = append(ran, id) })
	w.SetPadded(false)
	w.SetContent(p.Object)
	w.Resize(fyne.NewSize(1280, 720))
	p.Open()
	return p, s, &ran
}

// seen paints what a pane shows.
func seen(n *pane) *image.RGBA {
	size := n.Size()
	n.renew()
	return n.draw(int(size.Width), int(size.Height)).(*image.RGBA)
}

// texts are all words below an object.
func texts(o fyne.CanvasObject) string {
	var out []string
	var walk func(fyne.CanvasObject)
	walk = func(o fyne.CanvasObject) {
		switch k := o.(type) {
		case *fyne.Container:
			for _, c := range k.Objects {
				walk(c)
			}
		case *widget.Label:
			out = append(out, k.Text)
		case *control.Text:
			out = append(out, k.Text())
		case fyne.Widget:
			for _, c := range test.WidgetRenderer(k).Objects() {
				walk(c)
			}
		}
	}
	walk(o)
	return strings.Join(out, "\n")
}

// What the page says is what model says: of each difference its words, of each change
// its words too.
func TestListsAreTheModels(t *testing.T) {
	j := demo(t)
	for _, sys := range []units.System{units.Metric, units.Imperial} {
		j.Units = sys
		p, _, _ := rig(t, j)
		said := texts(p.lists.object)
		a, b := report.Derive(j.Options[0].Design, j.Materials, j.Site), report.Derive(j.Options[1].Design, j.Materials, j.Site)
		n := 0
		for _, d := range report.Differences(a, b) {
			if d.Unit == "" {
				continue
			}
			n++
			for _, want := range []string{d.Label, d.Text(d.A, sys, j.Materials.Currency), d.Text(d.B, sys, j.Materials.Currency), d.Change(sys, j.Materials.Currency)} {
				if !strings.Contains(said, want) {
					t.Errorf("the list does not say %q", want)
				}
			}
		}
		if n < 5 || len(p.lists.rows) != len(p.changes) || len(p.changes) == 0 {
			t.Errorf("%d numbers differ; %d changes, %d lines", n, len(p.changes), len(p.lists.rows))
		}
		for _, c := range p.changes {
			if !strings.Contains(said, c.Words) {
				t.Errorf("the list does not say %q", c.Words)
			}
		}
	}
}

// A click on what differs shows it in the middle of both sides.
func TestFind(t *testing.T) {
	p, s, _ := rig(t, demo(t))
	if err := s.DoJob(edit.DuplicateOption("A")); err != nil {
		t.Fatal(err)
	}
	name := s.Job().Options[1].Name
	sink := s.Job().Options[0].Design.Sinks[0].ID
	s.SetOption(name)
	if err := s.Do(edit.MovePart(sink, design.Point{X: -40 * units.Millimetre})); err != nil {
		t.Fatal(err)
	}
	p.a, p.b = "A", name
	p.Refresh()
	k := -1
	for i, c := range p.changes {
		if c.Part == sink {
			k = i
		}
	}
	if k < 0 {
		t.Fatalf("the sink is not among %+v", p.changes)
	}
	p.lists.rows[k].Tapped(nil)
	if p.picked != k || !p.lists.rows[k].On() {
		t.Errorf("change %d is picked, its line shows it: %v", p.picked, p.lists.rows[k].On())
	}
	c := p.changes[k]
	at := p.plan.views[1].Point(c.Was.Union(c.Is).Centre())
	if mid := (geom.Vec{X: float64(p.size.Width) / 2, Y: float64(p.size.Height) / 2}); at.Dist(mid) > 1 {
		t.Errorf("the sink lies at %v, the middle is %v", at, mid)
	}
	p.Fit()
	if p.picked != -1 || p.plan.moved {
		t.Error("the whole is not shown again")
	}
}

// Empty states: one option, the same as approved, alike, and a revision that was
// changed in the file.
func TestEmptyStates(t *testing.T) {
	j := demo(t)
	j.Options = j.Options[:1]
	p, s, ran := rig(t, j)
	if !p.Empty() || p.body.Visible() || !p.nothing.Visible() || p.Key(&fyne.KeyEvent{Name: fyne.KeyP}) {
		t.Fatal("one option alone is compared")
	}
	for _, o := range control.Spots(p.nothing, fyne.Position{}) {
		if strings.Contains(o.Says, keys.ByID(keys.OptionDuplicate).Does) {
			*ran = append(*ran, "offered")
		}
	}
	if len(*ran) != 1 {
		t.Error("nothing is offered to do about it")
	}
	if err := s.DoJob(approve.Approve("A", approve.Deal{Date: "2031-05-04"})); err != nil {
		t.Fatal(err)
	}
	if p.a != comparison.AsApproved("A") || p.b != "A" || p.nothing.Visible() {
		t.Fatalf("approved, %q and %q are shown", p.a, p.b)
	}
	if said := texts(p.lists.object); !strings.Contains(said, "nothing was changed") || !strings.Contains(said, "No size, weight") {
		t.Errorf("alike, it says:\n%s", said)
	}
	seen(p.panes[0])
	if err := s.Do(edit.SetThickness(50 * units.Millimetre)); err != nil {
		t.Fatal(err)
	}
	if said := texts(p.lists.object); !strings.Contains(said, "Thickness 50 mm") {
		t.Errorf("changed, it says:\n%s", said)
	}
	bad := s.Job()
	bad.Approvals = append([]design.Approval{}, bad.Approvals...)
	bad.Approvals[0].Design.Thickness++
	s.Load(bad, "")
	p.Open()
	p.a, p.b = comparison.AsApproved("A"), "A"
	p.Refresh()
	if p.of[0].err == nil || !strings.Contains(p.of[0].err.Error(), "not as approved") {
		t.Errorf("a revision changed in the file: %v", p.of[0].err)
	}
	seen(p.panes[0])
}

// A choice at one side that stands at the other changes sides.
func TestChoose(t *testing.T) {
	p, s, _ := rig(t, demo(t))
	if p.a != "A" || p.b != "B" {
		t.Fatalf("%q and %q", p.a, p.b)
	}
	p.chooseA.SetSelectedIndex(1)
	if p.a != "B" || p.b != "A" || p.chooseB.SelectedIndex() != 0 {
		t.Errorf("B at the left: %q and %q", p.a, p.b)
	}
	p.Swap()
	if p.a != "A" || p.b != "B" {
		t.Errorf("swapped: %q and %q", p.a, p.b)
	}
	// An option that goes while it is shown.
	if err := s.DoJob(edit.RemoveOption("B")); err != nil {
		t.Fatal(err)
	}
	if p.b == "B" {
		t.Error("an option that is gone is shown")
	}
}

// In the sides' middle both show their tops at one place for one place, wiped the
// left is the first and the right the second.
func TestWipe(t *testing.T) {
	p, _, ran := rig(t, demo(t))
	p.marks = false
	p.ToggleOver()
	if p.panes[0].Visible() || !p.one.Visible() || !p.wiper.Visible() {
		t.Fatal("the two do not lie over each other")
	}
	if p.Fitted() {
		t.Error("over each other they are not of one scale")
	}
	both := seen(p.one)
	w := both.Rect.Dx()
	for x := 0; x < w; x += 7 {
		from := p.one.painted[1]
		if x < w/2 {
			from = p.one.painted[0]
		}
		if y := both.Rect.Dy() / 2; both.RGBAAt(x, y) != from.RGBAAt(x, y) {
			t.Fatalf("at %d of %d the wrong one is seen", x, w)
		}
	}
	for _, c := range []struct {
		key  fyne.KeyName
		want float64
	}{{fyne.KeyRight, 0.52}, {fyne.KeyLeft, 0.5}, {fyne.KeyHome, 0}, {fyne.KeyLeft, 0}, {fyne.KeyEnd, 1}, {fyne.KeyPageDown, 0.9}} {
		p.wiper.TypedKey(&fyne.KeyEvent{Name: c.key})
		if got := p.wiper.share; got < c.want-1e-9 || got > c.want+1e-9 {
			t.Errorf("%s: the line stands at %g, want %g", c.key, got, c.want)
		}
	}
	p.wiper.set(0.5)
	p.wiper.hold = 0
	p.wiper.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(wiperSide/2+100, 10)}})
	if mid := p.wiper.Position().X + wiperSide/2; mid < p.one.Size().Width/2+90 || mid > p.one.Size().Width/2+110 {
		t.Errorf("dragged by 100 the line lies at %g of %g", mid, p.one.Size().Width)
	}
	if side := p.wiper.Size(); side.Width < 24 || p.wiper.AccessibilityLabel() == "" {
		t.Errorf("the grip is %v, named %q", side, p.wiper.AccessibilityLabel())
	}
	// A letter goes on to the page's own keys.
	p.Key(&fyne.KeyEvent{Name: fyne.KeyP})
	if len(*ran) != 1 || (*ran)[0] != keys.ComparePicture {
		t.Errorf("P does %v", *ran)
	}
}

// Pictures come, are the same after looking at something else, and stop when told to.
func TestPictures(t *testing.T) {
	p, _, _ := rig(t, demo(t))
	p.frame.Window.Resize(fyne.NewSize(900, 520)) // small, since they are taken here and now
	p.TogglePicture()
	for range 3 {
		for _, n := range p.panes {
			seen(n)
		}
	}
	want := seen(p.panes[1])
	before := len(p.kept.list)
	l, exact := p.kept.best(p.asked[1].of, p.asked[1].view)
	if l == nil || !exact || l.grade != len(grades)-1 {
		t.Fatalf("no clear picture: %v", l)
	}
	shown := append([]uint8{}, want.Pix...)
	p.TogglePicture()
	seen(p.panes[0])
	p.TogglePicture()
	got := seen(p.panes[1])
	if string(got.Pix) != string(shown) {
		t.Error("after the drawing the picture is another")
	}
	for _, o := range p.kept.list {
		if o.of.photo {
			before--
		}
	}
	if before != 0 {
		t.Errorf("%d pictures were taken again", -before)
	}
	p.StopOrGoOn()
	p.pan(geom.Vec{X: 10})
	if p.stopped {
		t.Error("looking elsewhere does not take new pictures")
	}
}

// Once nothing is asked of them for a while the sets are let go. What is seen stays,
// and a look from nearer is as clear as ever.
func TestSetsAreLetGo(t *testing.T) {
	p, _, _ := rig(t, demo(t))
	p.frame.Window.Resize(fyne.NewSize(900, 520))
	var later []func()
	p.Later = func(d time.Duration, do func()) {
		if d == setLife {
			later = append(later, do)
		}
	}
	look := func() string {
		var pix []byte
		for _, n := range p.panes {
			pix = append(pix, seen(n).Pix...)
		}
		return string(pix)
	}
	clear := func() bool {
		s := p.State()
		return s.Grade == len(grades)-1 && s.Work == ""
	}
	p.TogglePicture()
	look()
	want := look()
	if !clear() || len(p.shots.sets) != 2 || len(later) == 0 {
		t.Fatalf("%+v of %d sets, %d to come", p.State(), len(p.shots.sets), len(later))
	}
	early := later[0] // for before the pictures were clear
	later[len(later)-1]()
	if len(p.shots.sets) > 0 {
		t.Error("the sets are held")
	}
	if got := look(); got != want || !clear() || len(p.shots.sets) > 0 {
		t.Errorf("without its sets another picture is seen, or it is taken again: %+v", p.State())
	}
	p.ZoomIn()
	look()
	if got := look(); got == want || !clear() || len(p.shots.sets) != 2 {
		t.Errorf("from nearer: %+v of %d sets", p.State(), len(p.shots.sets))
	}
	if early(); len(p.shots.sets) != 2 {
		t.Error("sets that were wanted since are let go")
	}
}

// A wall that both tops have is the same wall.
func TestOnto(t *testing.T) {
	top := func(w, d units.Length, edits ...int) report.Report {
		x := design.Design{Outline: edit.Rectangle(w, d), Thickness: 40 * units.Millimetre, Finish: design.Finish{Polish: 1}}
		for i := range x.Outline.Nodes {
			x.Outline.Nodes[i].Edge.Side = design.SideSeen
		}
		for _, i := range edits {
			x.Outline.Nodes[i].Edge.Side = design.SideWall
		}
		return report.Derive(x, demo(t).Materials, design.Site{})
	}
	const mm = units.Millimetre
	// Edges of a rectangle run from the front left corner: front, right, back, left.
	for _, c := range []struct {
		name string
		a, b report.Report
		want geom.Vec
	}{
		{"no walls", top(1000*mm, 500*mm), top(1200*mm, 600*mm), geom.Vec{}},
		{"back", top(1000*mm, 500*mm, 2), top(1200*mm, 600*mm, 2), geom.Vec{Y: -100}},
		{"back and right", top(1000*mm, 500*mm, 1, 2), top(1200*mm, 600*mm, 1, 2), geom.Vec{X: -200, Y: -100}},
		{"back and left", top(1000*mm, 500*mm, 2, 3), top(1200*mm, 600*mm, 2, 3), geom.Vec{Y: -100}},
		{"a wall of one alone", top(1000*mm, 500*mm, 1, 2), top(1200*mm, 600*mm), geom.Vec{}},
	} {
		if got := onto(c.a.Solid, c.b.Solid); got.Dist(c.want) > 1e-9 {
			t.Errorf("%s: moved by %v, want %v", c.name, got, c.want)
		}
	}
}

func TestScaleInWords(t *testing.T) {
	// A screen of 96 points to the inch: 25.4/96 mm to the point is full size.
	for _, c := range []struct {
		mm   float64
		sys  units.System
		want string
	}{
		{25.4 / 96, units.Metric, "about 1:1"}, {4 * 25.4 / 96, units.Metric, "about 1:4"},
		{4 * 25.4 / 96, units.Imperial, `about 3" to the foot (1:4)`}, {25.4 / 192, units.Metric, "about 2:1"},
		{17 * 25.4 / 96, units.Metric, "about 1:17"}, {120 * 25.4 / 96, units.Imperial, "about 1:120"},
	} {
		if got := ratio(c.mm, c.sys); got != c.want {
			t.Errorf("%g mm to the point: %q, want %q", c.mm, got, c.want)
		}
	}
}
