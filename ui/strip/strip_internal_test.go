package strip

import (
	"slices"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"example.org/castwright/model/amount"
	"example.org/castwright/model/approve"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/keys"
	"example.org/castwright/ui/session"
	look "example.org/castwright/ui/theme"
)

type rig struct {
	s    *session.Session
	p    *Strip
	ran  []keys.ID
	soon []func()
}

func newRig(t *testing.T) *rig {
	t.Helper()
	test.NewTempApp(t).Settings().SetTheme(look.New(look.Light))
	w := test.NewTempWindow(t, widget.NewLabel(""))
	f := control.NewFrame(w)
	f.Inline = true
	r := &rig{s: session.New(session.Blank(units.Metric), "")}
	r.p = New(r.s, f, func(id keys.ID) { r.ran = append(r.ran, id) },
		func(_ time.Duration, do func()) { r.soon = append(r.soon, do) })
	w.SetContent(r.p.Object)
	w.Resize(fyne.NewSize(900, 110))
	return r
}

func (r *rig) do(t *testing.T, e edit.JobEdit) {
	t.Helper()
	if err := r.s.DoJob(e); err != nil {
		t.Fatal(err)
	}
}

func TestCardsFollowTheJob(t *testing.T) {
	r := newRig(t)
	r.do(t, edit.DuplicateOption("A"))
	r.do(t, edit.RetitleOption("B", "With a river"))
	if len(r.p.cards) != 2 || r.p.cards[1].title.Text() != "With a river" {
		t.Fatalf("%d cards", len(r.p.cards))
	}
	test.Tap(r.p.cards[1].tile)
	if r.s.Option().Name != "B" || !r.p.cards[1].tile.On() || r.p.cards[0].tile.On() {
		t.Errorf("a click takes %q in hand", r.s.Option().Name)
	}
	if err := r.s.Do(edit.SetThickness(60 * units.Millimetre)); err != nil {
		t.Fatal(err)
	}
	for i, c := range r.p.cards {
		rep, _ := r.s.ReportOf(c.name)
		if want := amount.Figure(rep.Takeoff.WeightDry, units.Metric); c.weight.Text() != want {
			t.Errorf("card %d says %q, its report %q", i, c.weight.Text(), want)
		}
	}
	if r.p.cards[0].weight.Text() == r.p.cards[1].weight.Text() {
		t.Error("a thicker top weighs the same")
	}
	r.do(t, edit.MoveOption("B", 0))
	if r.p.cards[0].name != "B" {
		t.Errorf("after moving, %q is first", r.p.cards[0].name)
	}
	r.do(t, edit.RemoveOption("A"))
	if len(r.p.cards) != 1 {
		t.Errorf("%d cards after removing one", len(r.p.cards))
	}
}

// TestPicturesWaitForADragToRest: many changes, one painting.
func TestPicturesWaitForADragToRest(t *testing.T) {
	r := newRig(t)
	r.soon = nil
	r.s.BeginGesture()
	for i := range 20 {
		if err := r.s.DoGesture(edit.SetThickness(units.Length(40+i) * units.Millimetre)); err != nil {
			t.Fatal(err)
		}
	}
	if len(r.soon) != 1 {
		t.Fatalf("%d paintings are due", len(r.soon))
	}
	if !r.p.cards[0].stale {
		t.Error("the picture counts as painted")
	}
	r.soon[0]()
	if r.p.cards[0].stale {
		t.Error("the picture was not painted")
	}
}

func TestButtons(t *testing.T) {
	r := newRig(t)
	for _, id := range []keys.ID{keys.OptionRemove, keys.Compare, keys.OptionLeft, keys.OptionRight} {
		if !r.p.buttons[id].Disabled() {
			t.Errorf("with one option, %s can be tapped", id)
		}
	}
	r.do(t, edit.DuplicateOption("A"))
	if r.p.buttons[keys.Compare].Disabled() || r.p.buttons[keys.OptionRight].Disabled() || !r.p.buttons[keys.OptionLeft].Disabled() {
		t.Error("with two options the buttons of the first are not right")
	}
	test.Tap(r.p.buttons[keys.OptionDuplicate])
	if !slices.Equal(r.ran, []keys.ID{keys.OptionDuplicate}) {
		t.Errorf("ran %v", r.ran)
	}
}

// A card says how its option stands to what was approved, by a mark and in words.
func TestCardsSayWhatIsApproved(t *testing.T) {
	r := newRig(t)
	run := func() {
		for len(r.soon) > 0 {
			do := r.soon[0]
			r.soon = r.soon[1:]
			do()
		}
	}
	r.do(t, edit.DuplicateOption("A"))
	says := func(i int, marked bool, want string) {
		t.Helper()
		run()
		c := r.p.cards[i]
		if c.mark.Visible() != marked || want != "" && !strings.HasPrefix(c.tile.Hint(), want) {
			t.Errorf("card %s is marked %v and says %q, want %v, %q", c.name, c.mark.Visible(), c.tile.Hint(), marked, want)
		}
	}
	says(0, false, "Option A")
	r.do(t, approve.Approve("A", approve.Deal{Date: "2031-05-04"}))
	says(0, true, "Approved, revision 1. Option A is in hand.")
	says(1, false, "A click takes option B")
	mark := r.p.cards[0].mark.Resource
	if err := r.s.Do(edit.SetThickness(60 * units.Millimetre)); err != nil {
		t.Fatal(err)
	}
	says(0, true, "Changed since revision 1.")
	if r.p.cards[0].mark.Resource.Name() == mark.Name() {
		t.Error("both marks have the same shape")
	}
	r.s.Undo()
	says(0, true, "Approved, revision 1.")
	r.do(t, approve.Withdraw(1, "2031-06-01"))
	says(0, false, "Option A")
}

// TestNamesAreSeen: a name that is a short word is seen whole, a long one leaves
// room for the title.
func TestNamesAreSeen(t *testing.T) {
	r := newRig(t)
	for _, name := range []string{"B", "Oak", "River 2", strings.Repeat("long", 12)} {
		r.do(t, edit.RenameOption(r.s.Option().Name, name))
		for _, title := range []string{"", "First idea", strings.Repeat("so many words ", 5)} {
			r.do(t, edit.RetitleOption(name, title))
			c := r.p.cards[0]
			room := c.heading.Size().Width - 20 // the mark's
			whole, w, x := c.letter.Whole(), c.letter.Size().Width, c.title.Position().X
			if len(name) < 10 && w < whole {
				t.Errorf("%q beside %q has %g of %g points", name, title, w, whole)
			}
			if w > room || title != "" && (w > x || x+c.title.Size().Width > room || c.title.Size().Width < fyne.Min(c.title.Whole(), room/3-2*look.Space)) {
				t.Errorf("%q takes %g points of %g, its title has %g from %g on", name, w, room, c.title.Size().Width, x)
			}
		}
	}
}

// TestTheOptionInHandIsSeen: whichever way it is taken in hand, its card is wholly
// in sight.
func TestTheOptionInHandIsSeen(t *testing.T) {
	r := newRig(t)
	for range 4 {
		r.do(t, edit.DuplicateOption("A"))
	}
	for _, name := range []string{"A", "E", "C", "A", "B", "E"} {
		r.s.SetOption(name)
		for i, o := range r.s.Job().Options {
			at, seen := float32(i)*(cardW+look.Space)-r.p.scroll.Offset.X, r.p.scroll.Size().Width
			if o.Name == name && (at < -0.5 || at+cardW > seen+0.5) {
				t.Errorf("the card of %s lies from %g to %g, what is seen is %g wide", name, at, at+cardW, seen)
			}
		}
	}
}
