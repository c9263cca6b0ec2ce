package ui

import (
	"bytes"
	"context"
	"encoding/json"
	"image"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"example.org/castwright/export/picture"
	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/store"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/board"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/files"
	"example.org/castwright/ui/keys"
	"example.org/castwright/ui/session"
	look "example.org/castwright/ui/theme"
)

// newRig is a whole window without a screen, 1280 by 800 points.
func newRig(t *testing.T) *window {
	t.Helper()
	a := test.NewTempApp(t)
	set := files.LoadSettings(filepath.Join(t.TempDir(), "settings.json"))
	set.Folder = t.TempDir()
	w := newWindow(a, set, host{post: func(f func()) { f() }, later: func(time.Duration, func()) {}})
	w.frame.Inline = true
	w.showing.SetRenderer(blank)
	t.Cleanup(w.win.Close)
	w.win.Resize(fyne.NewSize(startW, startH))
	return w
}

// blank takes pictures that show nothing, at once.
func blank(_ context.Context, _ *picture.Set, _ picture.View, _ picture.Quality, w, h int,
	_ func(string, float64, *image.NRGBA)) (*image.NRGBA, error) {
	return image.NewNRGBA(image.Rect(0, 0, w, h)), nil
}

func (w *window) press(name fyne.KeyName) {
	e := &fyne.KeyEvent{Name: name}
	if f := w.win.Canvas().Focused(); f != nil {
		f.TypedKey(e)
		return
	}
	w.frame.Key(e)
}

func TestOpensOnTheDemo(t *testing.T) {
	w := newRig(t)
	if n := len(w.session.Job().Options); n < 2 {
		t.Fatalf("the demo has %d options", n)
	}
	if w.session.Dirty() || w.session.Path() != "" {
		t.Errorf("it is dirty (%v) or has a file (%q)", w.session.Dirty(), w.session.Path())
	}
	if !w.welcome.Visible() {
		t.Error("nothing says how to start an own job")
	}
	w.keys.Run(keys.NewJob)
	if w.welcome.Visible() || len(w.session.Job().Options) != 1 {
		t.Errorf("after a new job: the line stays %v, %d options", w.welcome.Visible(),
			len(w.session.Job().Options))
	}
}

// TestNothingIsCutOff: at the smallest size that is promised, all that must be
// seen lies within the window, and buttons and rows keep their least size.
func TestNothingIsCutOff(t *testing.T) {
	w := newRig(t)
	if least := w.win.Content().MinSize(); least.Width > startW || least.Height > startH {
		t.Errorf("the window needs %v", least)
	}
	d := fyne.CurrentApp().Driver()
	for name, o := range map[string]fyne.CanvasObject{
		"bar": w.bar.object, "parts": w.parts.Object, "board": w.board, "panel": w.panel.Object, "strip": w.strip.Object, "hint": w.hint.object,
	} {
		at, size := d.AbsolutePositionForObject(o), o.Size()
		if at.X < 0 || at.Y < 0 || at.X+size.Width > startW+0.5 || at.Y+size.Height > startH+0.5 {
			t.Errorf("%s lies at %v, %v", name, at, size)
		}
		if least := o.MinSize(); size.Width < least.Width-0.5 || size.Height < least.Height-0.5 {
			t.Errorf("%s has %v and needs %v", name, size, least)
		}
	}
	if s := w.board.Size(); s.Width < 800 || s.Height < 450 {
		t.Errorf("the drawing has only %v", s)
	}
}

// TestEveryActionRuns runs every action of the table on the demo; none may
// panic, and whatever dialog it opens closes by Esc.
func TestEveryActionRuns(t *testing.T) {
	w := newRig(t)
	j := w.session.Job()
	for _, a := range keys.Table {
		if a.ID == keys.Quit {
			continue // ends the program
		}
		if w.comparing() {
			w.closeCompare()
		}
		if w.showing.Shown() && a.Menu != "Show" {
			w.closeShowing()
		}
		w.session.Load(j, "")
		w.session.Select(session.Pick{Part: w.session.Design().Sinks[0].ID, Node: -1})
		w.keys.Run(a.ID)
		for range 3 {
			if w.frame.Busy() {
				w.press(fyne.KeyEscape)
			}
		}
		if w.frame.Busy() {
			t.Errorf("%s leaves a dialog that Esc does not close", a.ID)
		}
	}
}

func TestUndoHasTheNameOfTheEdit(t *testing.T) {
	w := newRig(t)
	if err := w.session.Do(edit.SetThickness(50 * units.Millimetre)); err != nil {
		t.Fatal(err)
	}
	if got, want := w.keys.Name(keys.Undo), "Undo "; !strings.HasPrefix(got, want) || len(got) < 10 {
		t.Errorf("undo is called %q", got)
	}
	w.keys.Run(keys.Undo)
	if w.session.Dirty() {
		t.Error("undo did nothing")
	}
	if got := w.keys.Name(keys.Redo); len(got) < 10 {
		t.Errorf("redo is called %q", got)
	}
}

func TestTitleSaysWhatIsInHand(t *testing.T) {
	w := newRig(t)
	path := filepath.Join(t.TempDir(), "bench.json")
	if err := store.Save(path, session.Blank(units.Metric)); err != nil {
		t.Fatal(err)
	}
	w.files.OpenPath(path)
	if got := w.win.Title(); got != "bench.json – Castwright" {
		t.Errorf("the title is %q", got)
	}
	if err := w.session.Do(edit.SetThickness(50 * units.Millimetre)); err != nil {
		t.Fatal(err)
	}
	if got := w.win.Title(); got != "bench.json* – Castwright" {
		t.Errorf("changed, the title is %q", got)
	}
	w.keys.Run(keys.Save)
	if w.session.Dirty() || w.hint.state.Text() != "Saved" {
		t.Errorf("saved: dirty %v, %q", w.session.Dirty(), w.hint.state.Text())
	}
}

// TestSavingTakesWhatIsTyped: what stands in an entry, not entered yet, is saved
// too.
func TestSavingTakesWhatIsTyped(t *testing.T) {
	w := newRig(t)
	path := filepath.Join(t.TempDir(), "bench.json")
	if err := store.Save(path, session.Blank(units.Metric)); err != nil {
		t.Fatal(err)
	}
	w.files.OpenPath(path)
	e := w.entryShowing(t, "40 mm")
	w.win.Canvas().Focus(e)
	e.SetText("64")
	w.keys.Run(keys.Save)
	j, err := store.Load(path)
	if err != nil || j.Options[0].Design.Thickness != 64*units.Millimetre {
		t.Errorf("saved is a thickness of %v, %v", j.Options[0].Design.Thickness, err)
	}
}

// entryShowing finds the entry of the panel that shows a text.
func (w *window) entryShowing(t *testing.T, text string) *control.Entry {
	t.Helper()
	var found *control.Entry
	var walk func(fyne.CanvasObject)
	walk = func(o fyne.CanvasObject) {
		switch o := o.(type) {
		case *control.Entry:
			if o.Text == text {
				found = o
			}
		case *fyne.Container:
			for _, c := range o.Objects {
				walk(c)
			}
		case fyne.Widget:
			for _, c := range test.WidgetRenderer(o).Objects() {
				walk(c)
			}
		}
	}
	walk(w.panel.Object)
	if found == nil {
		t.Fatalf("no entry shows %q", text)
	}
	return found
}

// TestEnterInThePanelStaysThere: Enter takes what was typed in the panel and opens
// no number on the drawing, as it does there.
func TestEnterInThePanelStaysThere(t *testing.T) {
	w := newRig(t)
	w.keys.Run(keys.SelectTop)
	thick := units.Format(w.session.Design().Thickness, w.session.Job().Units)
	e := w.entryShowing(t, thick)
	w.win.Canvas().Focus(e)
	e.SetText("55 mm")
	w.press(fyne.KeyReturn)
	if got := w.session.Design().Thickness; got != 55*units.Millimetre {
		t.Fatalf("the top is %v thick", got)
	}
	if n, typing := w.board.Typing(); typing {
		t.Errorf("%s is being typed on the drawing", n.Name)
	}
	w.win.Canvas().Unfocus()
	w.press(fyne.KeyReturn)
	if _, typing := w.board.Typing(); !typing {
		t.Error("Enter on the drawing opens no number")
	}
}

func TestOptions(t *testing.T) {
	w := newRig(t)
	w.keys.Run(keys.OptionDuplicate)
	if got := w.session.Option().Name; got != "C" || len(w.session.Job().Options) != 3 {
		t.Fatalf("after duplicating, %q is in hand of %d", got, len(w.session.Job().Options))
	}
	w.keys.Run(keys.OptionNext)
	if got := w.session.Option().Name; got != "B" {
		t.Errorf("next is %q", got)
	}
	w.keys.Run(keys.OptionNext) // there is none
	w.keys.Run(keys.OptionPrevious)
	if got := w.session.Option().Name; got != "C" {
		t.Errorf("previous is %q", got)
	}
	w.keys.Run(keys.OptionLeft)
	if got := w.session.Job().Options[0].Name; got != "C" {
		t.Errorf("moved left, %q is first", got)
	}
	w.keys.Run(keys.OptionRemove)
	if len(w.session.Job().Options) != 2 {
		t.Errorf("%d options after removing one", len(w.session.Job().Options))
	}
	before := w.session.Report().Measures.Bounds
	w.keys.Run(keys.OptionNew)
	after := w.session.Report().Measures.Bounds
	if after.W() != before.W() || after.H() != before.H() || w.session.Option().Title != "New idea" {
		t.Errorf("a new option is %q, %g by %g", w.session.Option().Title, after.W(), after.H())
	}
}

func TestRenameOption(t *testing.T) {
	w := newRig(t)
	w.keys.Run(keys.OptionRename)
	e, ok := w.win.Canvas().Focused().(*control.Entry)
	if !ok {
		t.Fatalf("%T has the keyboard", w.win.Canvas().Focused())
	}
	e.SetText("River along the back")
	w.press(fyne.KeyReturn)
	if w.frame.Busy() || w.session.Option().Title != "River along the back" || w.session.Option().Name != "A" {
		t.Errorf("open %v, option %q %q", w.frame.Busy(), w.session.Option().Name,
			w.session.Option().Title)
	}
}

func TestCompareAndBack(t *testing.T) {
	w := newRig(t)
	w.keys.Run(keys.Compare)
	if !w.comparing() || w.main.Visible() {
		t.Fatal("nothing is compared")
	}
	w.keys.Run(keys.Mirror)
	if w.session.Dirty() {
		t.Error("the drawing was changed behind the comparison")
	}
	w.press(fyne.KeyEscape)
	if w.comparing() || !w.main.Visible() {
		t.Error("Esc does not lead back")
	}
}

// What is compared is worked by keys alone, and by the actions that the drawing has
// too.
func TestCompareByKeys(t *testing.T) {
	w := newRig(t)
	w.press(fyne.KeyP) // means nothing on the drawing
	w.keys.Run(keys.Compare)
	if o := w.compare.Shown(); o.A != "A" || o.B != "B" || o.Pictures {
		t.Fatalf("%+v is compared", o)
	}
	w.press(fyne.KeyS)
	w.press(fyne.KeyM)
	w.press(fyne.KeyL)
	if !w.compare.Fitted() || w.compare.Marked() || !w.compare.Same() {
		t.Errorf("fitted %v, marked %v, same %v", w.compare.Fitted(), w.compare.Marked(), w.compare.Same())
	}
	w.press(fyne.KeyD)
	if w.compare.Dimensions() || !w.board.Shown().Dimensions {
		t.Errorf("dimensions there %v, on the drawing %v", w.compare.Dimensions(), w.board.Shown().Dimensions)
	}
	w.press(fyne.KeyX)
	if o := w.compare.Shown(); o.A != "B" || o.B != "A" {
		t.Errorf("sides changed: %q and %q", o.A, o.B)
	}
	w.press(fyne.KeyO)
	if !w.compare.Over() || w.keys.Enabled(keys.CompareScale) {
		t.Error("one does not lie over the other, or at another scale")
	}
	was := w.board.Geometry()
	for _, id := range []keys.ID{keys.ZoomIn, keys.ZoomOut, keys.Fit} {
		w.keys.Run(id)
	}
	if now := w.board.Geometry(); now.PerMM != was.PerMM || now.Origin != was.Origin {
		t.Error("the drawing was zoomed behind the comparison")
	}
	w.press(fyne.KeyRight) // moves the wipe
	w.press(fyne.KeyEscape)
	if w.comparing() || w.session.Dirty() {
		t.Error("Esc does not lead back from the wipe, or something was changed")
	}
	for _, id := range []keys.ID{keys.ComparePicture, keys.CompareOver, keys.CompareSwap, keys.CompareStop} {
		if w.keys.Enabled(id) {
			t.Errorf("%s can be done while nothing is compared", id)
		}
	}
}

// One option alone has nothing beside it, and the page says what to do.
func TestCompareOne(t *testing.T) {
	w := newRig(t)
	w.keys.Run(keys.NewJob)
	w.keys.Run(keys.Compare)
	if !w.comparing() || !w.compare.Empty() {
		t.Fatal("the page does not open on one option")
	}
	w.keys.Run(keys.OptionDuplicate)
	if o := w.compare.Shown(); o.A != "A" || o.B != "B" {
		t.Errorf("duplicated, %q and %q are compared", o.A, o.B)
	}
	w.press(fyne.KeyEscape)
	if w.comparing() {
		t.Error("Esc does not lead back")
	}
}

// Several parts are copied to another option, lined up and taken back by name.
func TestArrange(t *testing.T) {
	w := newRig(t)
	w.keys.Run(keys.SelectAll)
	all := w.session.SelectedParts()
	if len(all) < 3 {
		t.Fatalf("%d parts are selected", len(all))
	}
	w.session.SelectParts(all[:2])
	w.keys.Run(keys.Copy)
	w.session.SetOption("B")
	before := len(edit.NewParts(design.Design{}, w.session.Design()))
	w.keys.Run(keys.Paste)
	if now := len(edit.NewParts(design.Design{}, w.session.Design())); now != before+2 || len(w.session.SelectedParts()) != 2 {
		t.Errorf("%d parts became %d, %d selected", before, now, len(w.session.SelectedParts()))
	}
	w.session.SetOption("A")
	var sinks []design.ID
	for _, k := range w.session.Design().Holes {
		sinks = append(sinks, k.ID)
	}
	w.session.SelectParts([]design.ID{w.session.Design().Sinks[0].ID, sinks[0]})
	w.keys.Run(keys.AlignFront)
	if got := w.session.UndoName(); got == "" {
		t.Error("nothing was lined up")
	}
	was := w.session.Design()
	w.keys.Run(keys.Cut)
	if len(w.session.Design().Sinks) != len(was.Sinks)-1 {
		t.Error("the sink was not cut")
	}
	w.keys.Run(keys.Undo)
	if len(w.session.Design().Sinks) != len(was.Sinks) {
		t.Error("undo does not bring the cut parts back")
	}
}

// The view for the client changes nothing, goes from option to option and back.
func TestShowing(t *testing.T) {
	w := newRig(t)
	w.keys.Run(keys.Showing)
	if !w.covered() || w.main.Visible() || w.rooms[0].Visible() {
		t.Fatal("the top is not shown alone")
	}
	w.keys.Run(keys.Mirror)
	w.keys.Run(keys.Compare)
	if w.session.Dirty() || w.comparing() {
		t.Error("something was done behind the view for the client")
	}
	w.keys.Run(keys.OptionNext)
	if w.session.Option().Name != "B" {
		t.Errorf("the next option is %q", w.session.Option().Name)
	}
	w.press(fyne.KeyEscape)
	if w.covered() || !w.main.Visible() || !w.rooms[0].Visible() {
		t.Error("Esc does not lead back")
	}
}

func TestUnitsAndTheme(t *testing.T) {
	w := newRig(t)
	before := w.session.Design()
	w.keys.Run(keys.Units)
	if w.session.Job().Units != units.Imperial || !w.settings.Imperial {
		t.Errorf("units are %v, remembered %v", w.session.Job().Units, w.settings.Imperial)
	}
	if w.session.Design().Thickness != before.Thickness {
		t.Error("a length changed with the units")
	}
	was := look.IsDark()
	w.keys.Run(keys.Theme)
	if look.IsDark() == was {
		t.Error("the theme stays")
	}
}

// TestLooks: the view toggles reach the drawing and the menu.
func TestLooks(t *testing.T) {
	w := newRig(t)
	for id, shown := range map[keys.ID]func(board.Show) bool{
		keys.Dimensions: func(s board.Show) bool { return s.Dimensions }, keys.Textures: func(s board.Show) bool { return s.Textures },
		keys.Supports: func(s board.Show) bool { return s.Supports }, keys.Grid: func(s board.Show) bool { return s.Grid },
	} {
		before := shown(w.board.Shown())
		w.keys.Run(id)
		if shown(w.board.Shown()) == before || w.bar.looks[id].On() == before {
			t.Errorf("%s: shown %v, button %v", id, shown(w.board.Shown()), w.bar.looks[id].On())
		}
	}
}

func TestEscLetsGo(t *testing.T) {
	w := newRig(t)
	w.session.Select(session.Pick{Part: w.session.Design().Sinks[0].ID, Node: -1})
	w.press(fyne.KeyEscape)
	if len(w.session.Selection()) != 0 {
		t.Errorf("selected is %v", w.session.Selection())
	}
	w.keys.Run(keys.DrawRiver)
	w.press(fyne.KeyEscape)
	if w.board.Tool() != board.Select {
		t.Errorf("the tool is %v", w.board.Tool())
	}
}

func TestState(t *testing.T) {
	w := newRig(t)
	w.session.Select(session.Pick{Part: w.session.Design().Sinks[0].ID, Node: -1})
	text, err := json.Marshal(w.state())
	if err != nil {
		t.Fatal(err)
	}
	var got map[string]any
	if err := json.Unmarshal(text, &got); err != nil {
		t.Fatal(err)
	}
	r := w.session.Report()
	if got["width_mm"] != r.Measures.Bounds.W() || got["weight_kg"] != r.Takeoff.WeightDry.Value || got["option"] != "A" {
		t.Errorf("the state is %s", text)
	}
	b := got["board"].(map[string]any)
	if b["w"].(float64) < 100 || b["scale"].(float64) <= 0 {
		t.Errorf("the drawing lies at %v", b)
	}
	if s := got["selection"].([]any); len(s) != 1 || s[0] != string(w.session.Design().Sinks[0].ID) {
		t.Errorf("selected is %v", s)
	}
}

func TestReady(t *testing.T) {
	w := newRig(t)
	var out bytes.Buffer
	w.tellReady(Args{Ready: &out})
	if out.Len() != 0 {
		t.Fatal("it is ready before there is a picture")
	}
	w.win.Canvas().Capture()
	w.win.Canvas().Capture()
	if out.String() != "READY\n" {
		t.Errorf("it says %q", out.String())
	}
}

func TestBadPathKeepsTheDemo(t *testing.T) {
	w := newRig(t)
	bad := filepath.Join(t.TempDir(), "bad.json")
	if err := os.WriteFile(bad, []byte("{"), 0o644); err != nil {
		t.Fatal(err)
	}
	w.start(Args{Path: bad})
	if !w.frame.Busy() {
		t.Error("nothing says that it can't be opened")
	}
	if len(w.session.Job().Options) < 2 {
		t.Error("the demo is gone")
	}
}

func TestFindingActions(t *testing.T) {
	for text, want := range map[string]keys.ID{"save as": keys.SaveAs, "ctrl+k": keys.Compare,
		"glass bed": keys.DrawGlass} {
		found := matching(text)
		ok := false
		for _, a := range found {
			ok = ok || a.ID == want
		}
		if !ok || len(found) > 8 {
			t.Errorf("%q finds %d actions, %s among them: %v", text, len(found), want, ok)
		}
	}
	if got := len(matching("")); got != len(keys.Table) {
		t.Errorf("nothing typed lists %d", got)
	}
	if len(matching("zzz")) != 0 {
		t.Error("nonsense finds something")
	}
}

// BenchmarkDragStep is what one step of a drag costs beside the drawing: edit,
// report, panel, strip, bar.
func BenchmarkDragStep(b *testing.B) {
	a := test.NewTempApp(b)
	w := newWindow(a, files.LoadSettings(""), host{post: func(f func()) { f() },
		later: func(time.Duration, func()) {}})
	w.win.Resize(fyne.NewSize(startW, startH))
	at := w.session.Design().Outline.Nodes[0].At
	w.session.BeginGesture()
	b.ReportAllocs()
	i := 0
	for b.Loop() {
		i++
		to := design.Point{X: at.X - units.Length(i%40)*units.Millimetre, Y: at.Y}
		if err := w.session.DoGesture(edit.MoveNode(0, to)); err != nil {
			b.Fatal(err)
		}
	}
}

func TestStartSize(t *testing.T) {
	for _, tt := range []struct{ room, last, want fyne.Size }{
		{want: fyne.NewSize(1280, 800)},
		{room: fyne.NewSize(2560, 1440), want: fyne.NewSize(2560*startShareW, 1440*startShareH)},
		{room: fyne.NewSize(1366, 768), want: fyne.NewSize(1280, 768)},
		{room: fyne.NewSize(1280, 1440), want: fyne.NewSize(1280, 1440*startShareH)},
		{room: fyne.NewSize(2560, 1440), last: fyne.NewSize(1400, 900), want: fyne.NewSize(1400, 900)},
		{room: fyne.NewSize(1366, 768), last: fyne.NewSize(2500, 1400), want: fyne.NewSize(1366, 768)},
	} {
		w := &window{settings: &files.Settings{}, host: host{screen: func() fyne.Size { return tt.room }}}
		w.settings.Width, w.settings.Height = tt.last.Width, tt.last.Height
		if got := w.startSize(); got != tt.want {
			t.Errorf("on a screen of %v, last %v: %v, want %v", tt.room, tt.last, got, tt.want)
		}
	}
}

// TestFirstSteps: a job of one's own begins with notes on the drawing, an opened one
// does not, and Help brings them back.
func TestFirstSteps(t *testing.T) {
	w := newRig(t)
	if w.coach.Teaching() {
		t.Error("the demo job is covered with notes")
	}
	w.keys.Run(keys.NewJob)
	if !w.coach.Teaching() {
		t.Fatal("a first job begins without notes")
	}
	w.keys.Run(keys.Lessons)
	if w.coach.Teaching() {
		t.Error("the notes can't be put away")
	}
	w.settings.Learned = nil
	w.keys.Run(keys.Lessons)
	if !w.coach.Teaching() {
		t.Error("Help does not bring the notes back")
	}
	w.keys.Run(keys.Showing)
	w.press(fyne.KeyEscape)
	if !slices.Contains(w.settings.Learned, lessonShow) {
		t.Errorf("after a showing %v is learned", w.settings.Learned)
	}
}

// TestNotesStandByTheirNouns: at every size of the window a note of the first
// steps stands below the noun that it is about, or over the place on the drawing,
// and wholly within the window.
func TestNotesStandByTheirNouns(t *testing.T) {
	for _, size := range []fyne.Size{{Width: 1280, Height: 800}, {Width: 1600, Height: 1000}, {Width: 2560, Height: 1440}} {
		w := newRig(t)
		w.win.Resize(size)
		w.keys.Run(keys.NewJob)
		d := fyne.CurrentApp().Driver()
		notes := w.coach.Object.Objects
		for i, o := range map[int]fyne.CanvasObject{1: w.parts.Noun(keys.PartSink), 2: w.parts.Noun(keys.PartFinish)} {
			if !notes[i].Visible() {
				t.Errorf("at %v note %d is not shown", size, i)
			}
			at, noun := d.AbsolutePositionForObject(notes[i]), d.AbsolutePositionForObject(o)
			x := noun.X + fyne.Min(nounMiddle, o.Size().Width/2)
			if x < at.X || x > at.X+notes[i].Size().Width || at.Y-d.AbsolutePositionForObject(w.board).Y > 8 {
				t.Errorf("at %v note %d lies at %v, its noun at %v", size, i, at, noun)
			}
			if at.X+notes[i].Size().Width > size.Width {
				t.Errorf("at %v note %d is cut off", size, i)
			}
		}
		if !notes[0].Visible() {
			t.Errorf("at %v the drawing's own note is not shown", size)
		}
		w.session.Select(session.Pick{Node: 0, Edge: true})
		if notes[2].Visible() {
			t.Errorf("at %v the note about the finish lies over the name of what is selected", size)
		}
		w.session.Select()
		if !notes[2].Visible() {
			t.Errorf("at %v the note about the finish does not come back", size)
		}
	}
}

// TestNoteGoesAfterATypedNumber: the note about the size goes when a number that
// was typed is set, not at the next thing that happens.
func TestNoteGoesAfterATypedNumber(t *testing.T) {
	w := newRig(t)
	w.keys.Run(keys.NewJob)
	note := w.coach.Object.Objects[0]
	w.session.Select(session.Pick{Node: -1})
	for _, r := range "1300" {
		w.board.TypedRune(r)
	}
	w.board.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	if !slices.Contains(w.settings.Learned, lessonSize) || note.Visible() {
		t.Errorf("after the number %v is learned, the note is seen: %v", w.settings.Learned, note.Visible())
	}
}
