package panel

import (
	"reflect"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"example.org/castwright/model/amount"
	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/takeoff"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/session"
	"example.org/castwright/ui/words"
	"github.com/shopspring/decimal"
)

func TestShowsTheReport(t *testing.T) {
	r := demo(t)
	rep, j := r.s.Report(), r.s.Job()
	for i, want := range []string{
		amount.Figure(rep.Takeoff.WeightDry, j.Units),
		words.Size(rep.Measures.Bounds.W(), rep.Measures.Bounds.H(), j.Units),
		amount.Figure(rep.Takeoff.Bags, j.Units) + " · " + amount.Figure(rep.Takeoff.MixVolume, j.Units),
		amount.Figure(rep.Takeoff.ResinMix, j.Units) + " · " + amount.Figure(rep.Takeoff.Pours, j.Units),
		amount.Figure(rep.Takeoff.GlassMass, j.Units),
		amount.Money(j.Materials.Currency, rep.Takeoff.Total),
	} {
		if got := r.p.numbers.rows[i].value.Text(); got != want {
			t.Errorf("line %d shows %q, the report says %q", i+1, got, want)
		}
	}
	shown := 0
	for _, w := range r.p.risks.rows {
		if w.box.Visible() {
			shown++
		}
	}
	if shown != len(rep.Warnings) {
		t.Errorf("%d warnings are shown of %d", shown, len(rep.Warnings))
	}
	if got := r.p.risks.rows[0].title.Text; got != rep.Warnings[0].Title {
		t.Errorf("the first warning is %q, the worst one is %q", got, rep.Warnings[0].Title)
	}
}

func TestNumbersFollowAnEdit(t *testing.T) {
	r := blank(t, units.Metric)
	before := r.p.numbers.rows[0].value.Text()
	if err := r.s.Do(edit.SetThickness(80 * units.Millimetre)); err != nil {
		t.Fatal(err)
	}
	if after := r.p.numbers.rows[0].value.Text(); after == before {
		t.Errorf("twice as thick still weighs %s", after)
	}
	if got := r.text("Thickness"); got != "80 mm" {
		t.Errorf("the thickness shows %q", got)
	}
}

func TestTypedLengths(t *testing.T) {
	for _, tt := range []struct {
		sys         units.System
		label, text string
		want        units.Length
		shown       string
	}{
		// Exact sizes of the units: NIST SP 811 (2008), App. B.8.
		{units.Metric, "Width", "1700", 1700 * units.Millimetre, "1700 mm"},
		{units.Metric, "Width", "64.8 cm", 648 * units.Millimetre, "648 mm"},
		{units.Metric, "Width", `61 1/2"`, 123 * units.Inch / 2, "1562.1 mm"},
		{units.Imperial, "Width", "61 1/2", 123 * units.Inch / 2, `61 1/2"`},
		{units.Imperial, "Width", "60 - 2*3/4", 117 * units.Inch / 2, `58 1/2"`},
		{units.Imperial, "Depth", "560 mm", 560 * units.Millimetre, `22 1/16"`},
	} {
		r := blank(t, tt.sys)
		r.enter(tt.label, tt.text)
		box := r.s.Report().Measures.Bounds
		got := units.FromMM(box.W())
		if tt.label == "Depth" {
			got = units.FromMM(box.H())
		}
		if got != tt.want {
			t.Errorf("%q as %s in %s gives %v nm, want %v", tt.text, tt.label, tt.sys, got, tt.want)
		}
		if shown := r.text(tt.label); shown != tt.shown {
			t.Errorf("%q then shows %q, want %q", tt.text, shown, tt.shown)
		}
		if r.s.UndoName() == "" {
			t.Errorf("%q left no step to undo", tt.text)
		}
	}
}

func TestLeavingCommits(t *testing.T) {
	r := blank(t, units.Metric)
	r.typeIn("Thickness", "50")
	if r.s.Dirty() {
		t.Fatal("typing alone has changed the design")
	}
	r.p.frame.Window.Canvas().Unfocus()
	if got := r.s.Design().Thickness; got != 50*units.Millimetre {
		t.Errorf("the thickness is %v nm", got)
	}
}

func TestEscRestores(t *testing.T) {
	r := blank(t, units.Metric)
	r.typeIn("Thickness", "50")
	r.key("Thickness", fyne.KeyEscape)
	if got := r.text("Thickness"); got != "40 mm" {
		t.Errorf("after Esc it shows %q", got)
	}
	r.p.frame.Window.Canvas().Unfocus()
	if r.s.Dirty() {
		t.Error("what was taken back has changed the design")
	}
}

// TestNothingTypedIsLost: a text that can't be read stays, with the reason in
// words, and is there again when its part is selected again.
func TestNothingTypedIsLost(t *testing.T) {
	r := demo(t)
	sink := r.s.Design().Sinks[0]
	pick := session.Pick{Part: sink.ID, Node: -1}
	r.s.Select(pick)
	r.enter("Width", "46 zm")
	check := func(when string) {
		t.Helper()
		o := r.row("Width")
		if o.entry.Text != "46 zm" || o.entry.Fault() == nil {
			t.Errorf("%s: text %q, fault %v", when, o.entry.Text, o.entry.Fault())
		}
		if !o.fault.Visible() || !strings.Contains(o.fault.Text, "zm") {
			t.Errorf("%s: below the field stands %q", when, o.fault.Text)
		}
	}
	check("after Enter")
	if got := r.s.Design().Sinks[0].Shape.Width; got != sink.Shape.Width {
		t.Errorf("the width changed to %v", got)
	}
	if err := r.s.Do(edit.SetThickness(45 * units.Millimetre)); err != nil {
		t.Fatal(err)
	}
	check("after another edit")
	r.s.Select()
	r.s.Select(pick)
	check("after selecting it again")
	r.enter("Width", "470")
	if o := r.row("Width"); o.entry.Fault() != nil || o.fault.Visible() {
		t.Errorf("mended, it still says %v", o.entry.Fault())
	}
	if got := r.s.Design().Sinks[0].Shape.Width; got != 470*units.Millimetre {
		t.Errorf("mended, the width is %v", got)
	}
	r.s.Select()
	r.s.Select(pick)
	if got := r.text("Width"); got != "470 mm" {
		t.Errorf("selected again, it shows %q", got)
	}
}

// TestEditsAreRefusedInWords: what an edit refuses is said where it was typed.
func TestEditsAreRefusedInWords(t *testing.T) {
	r := blank(t, units.Metric)
	r.enter("Width", "0")
	if o := r.row("Width"); o.entry.Text != "0" || !o.fault.Visible() {
		t.Errorf("a width of nothing: text %q, fault %q", o.entry.Text, o.fault.Text)
	}
	if r.s.Dirty() {
		t.Error("a refused edit has changed the design")
	}
}

func TestNudgesAreOneStep(t *testing.T) {
	r := blank(t, units.Metric)
	e := r.row("Thickness").entry
	r.p.frame.Window.Canvas().Focus(e)
	for range 3 {
		r.key("Thickness", fyne.KeyUp)
	}
	r.key("Thickness", fyne.KeyDown)
	if got := r.s.Design().Thickness; got != 42*units.Millimetre {
		t.Errorf("three up and one down: %v nm", got)
	}
	if got := r.text("Thickness"); got != "42 mm" {
		t.Errorf("it shows %q", got)
	}
	r.s.Undo()
	if got := r.s.Design().Thickness; got != 40*units.Millimetre {
		t.Errorf("one undo leads to %v nm", got)
	}
	// Another gesture between two nudges stays what it is.
	r.key("Thickness", fyne.KeyUp)
	r.s.BeginGesture()
	if err := r.s.DoGesture(edit.Resize(1000*units.Millimetre, 500*units.Millimetre)); err != nil {
		t.Fatal(err)
	}
	r.key("Thickness", fyne.KeyUp)
	if got := r.s.Report().Measures.Bounds.W(); got != 1000 {
		t.Errorf("a nudge took the drag before it back: the width is %g", got)
	}
}

func TestNudgeInInches(t *testing.T) {
	r := blank(t, units.Imperial)
	r.key("Thickness", fyne.KeyUp)
	if got := r.text("Thickness"); got != `1 9/16"` {
		t.Errorf("a step up from 1 1/2 in shows %q", got)
	}
}

func TestUndoShowsTheOldValue(t *testing.T) {
	r := blank(t, units.Metric)
	r.enter("Thickness", "55")
	r.s.Undo()
	if got := r.text("Thickness"); got != "40 mm" {
		t.Errorf("after undo it shows %q", got)
	}
}

// TestEveryPartHasFields selects all there is in the demo jobs.
func TestEveryPartHasFields(t *testing.T) {
	r := demo(t)
	for _, o := range r.s.Job().Options {
		r.s.SetOption(o.Name)
		for _, id := range edit.NewParts(design.Design{}, o.Design) {
			r.s.Select(session.Pick{Part: id, Node: -1})
			if len(r.p.rows) == 0 || r.p.name.Text() == "Top" {
				t.Errorf("%s in option %s: %q with %d fields", id, o.Name, r.p.name.Text(),
					len(r.p.rows))
			}
		}
		for i := range o.Design.Outline.Nodes {
			r.s.Select(session.Pick{Node: i})
			r.row("From left")
			r.s.Select(session.Pick{Node: i, Edge: true})
			r.row("Run")
		}
	}
}

// TestPickingInTheLists picks every word of every list and sees that the design
// took it.
func TestPickingInTheLists(t *testing.T) {
	r := demo(t)
	for _, option := range r.s.Job().Options {
		r.s.SetOption(option.Name)
		for _, id := range edit.NewParts(design.Design{}, r.s.Design()) {
			r.s.Select(session.Pick{Part: id, Node: -1})
			_, fields := fieldsOf(r.s)
			for k, f := range fields {
				for i, word := range f.words {
					before := r.s.Design()
					r.p.rows[k].choice.SetSelectedIndex(i)
					if got := r.p.rows[k].choice.Selected; got != word {
						t.Errorf("%s, %s: picked %q, shows %q", id, f.label, word, got)
					}
					changed := !reflect.DeepEqual(before, r.s.Design())
					if changed != (i != f.at) {
						t.Errorf("%s, %s: picked %q from %q, changed %v", id, f.label, word,
							f.words[f.at], changed)
					}
					if changed {
						r.s.Undo()
					}
				}
			}
		}
	}
}

func TestWarningLeadsToItsPlace(t *testing.T) {
	r := demo(t)
	var at int
	for i, w := range r.s.Report().Warnings {
		if w.Part != "" {
			at = i
		}
	}
	w := r.s.Report().Warnings[at]
	test.Tap(r.p.risks.rows[at].tile)
	if len(r.placed) != 1 || r.placed[0] != w.At {
		t.Errorf("it leads to %v, want %v", r.placed, w.At)
	}
	if sel := r.s.Selection(); w.Part != "" && (len(sel) != 1 || sel[0].Part != w.Part) {
		t.Errorf("it selects %v, want %s", sel, w.Part)
	}
	o := r.p.risks.rows[at]
	if !o.detail.Visible() || !strings.Contains(o.detail.Text, w.Source) {
		t.Errorf("open, it says %q", o.detail.Text)
	}
	test.Tap(o.tile)
	if o.detail.Visible() {
		t.Error("a second click leaves it open")
	}
}

func TestHowItWasReckoned(t *testing.T) {
	r := demo(t)
	row := r.p.numbers.rows[0]
	test.Tap(row.tile)
	f := r.s.Report().Takeoff.WeightDry
	if !row.scroll.Visible() || len(row.lines) == 0 {
		t.Fatal("nothing opened")
	}
	said := row.lines[0].words.Text
	if !strings.Contains(said, f.How) || !strings.Contains(said, f.Source) {
		t.Errorf("it says %q, want how %q and source %q", said, f.How, f.Source)
	}
	other := r.p.numbers.rows[2]
	test.Tap(other.tile)
	if row.scroll.Visible() || !other.scroll.Visible() {
		t.Error("opening one does not close the other")
	}
}

// TestFormulasInInches: formulas are metric, and say so to who works in inches; what
// materials cost is told by the units that they are sold by there.
func TestFormulasInInches(t *testing.T) {
	const how = "0.014495 m2 x 12.7 mm x 50 % = 0.092 L of glass x 2500 kg/m3 = 0.23 kg"
	const metric = "0.014495 m² × 12.7 mm × 50 % = 0.092 L of glass × 2500 kg/m³ = 0.23 kg"
	if got := formula(how, units.Metric); got != metric {
		t.Errorf("metric: %q", got)
	}
	if got := formula(how, units.Imperial); got != "In metric units: "+metric {
		t.Errorf("inches: %q", got)
	}
	if got := formula("rounded up", units.Imperial); got != "rounded up" {
		t.Errorf("without a unit: %q", got)
	}
	// 2 litres are 2.113 US quarts; a quart is 0.946352946 L (NIST SP 811, App. B.8).
	cost := takeoff.Takeoff{Costs: []takeoff.Cost{
		{Label: "Resin", Amount: 2, Unit: "L", Price: decimal.RequireFromString("31.7006"), Total: decimal.NewFromInt(63)},
		{Label: "Mix", Amount: 3, Unit: "bag", Price: decimal.NewFromInt(12), Total: decimal.NewFromInt(36)},
	}}
	for sys, want := range map[units.System][]string{
		units.Metric: {"2.00 L × $31.7006 a L", "3 bags × $12.00 a bag"}, units.Imperial: {"2.113 qt × $30.00 a quart", "3 bags × $12.00 a bag"},
	} {
		for i, line := range costsOf(cost, "$", sys) {
			if line.how != want[i] {
				t.Errorf("%v: %q, want %q", sys, line.how, want[i])
			}
		}
	}
}

func TestDuplicateAndRemove(t *testing.T) {
	r := demo(t)
	sink := r.s.Design().Sinks[0]
	n := len(r.s.Design().Sinks)
	r.s.Select(session.Pick{Part: sink.ID, Node: -1})
	r.p.Duplicate()
	if got := len(r.s.Design().Sinks); got != n+1 {
		t.Fatalf("%d sinks after duplicating one of %d", got, n)
	}
	if sel := r.s.Selection(); len(sel) == 0 || sel[0].Part == sink.ID {
		t.Errorf("selected is %v, want the copy", sel)
	}
	r.s.Select(session.Pick{Part: sink.ID, Node: -1})
	r.p.Remove()
	if got := len(r.s.Design().Sinks); got != n {
		t.Errorf("%d sinks after removing one", got)
	}
	if len(r.s.Selection()) != 0 {
		t.Errorf("selected is %v", r.s.Selection())
	}
}

// A sink takes its taps along, once, whether they are selected too or not.
func TestDuplicateTakesTapsOnce(t *testing.T) {
	for _, also := range []bool{false, true} {
		r := demo(t)
		d := r.s.Design()
		ids := []design.ID{d.Sinks[0].ID}
		if also {
			ids = append(ids, d.Taps[0].ID)
		}
		r.s.SelectParts(ids)
		r.p.Duplicate()
		if got := r.s.Design(); len(got.Sinks) != len(d.Sinks)+1 || len(got.Taps) != len(d.Taps)+1 {
			t.Errorf("taps selected too %v: %d sinks and %d tap sets became %d and %d", also,
				len(d.Sinks), len(d.Taps), len(got.Sinks), len(got.Taps))
		}
	}
}

func TestRoughLengthsNeverChangeUnedited(t *testing.T) {
	r := blank(t, units.Metric)
	r.enter("Width", "1580")
	if err := r.s.DoJob(edit.SetUnits(units.Imperial)); err != nil {
		t.Fatal(err)
	}
	// 1580 mm is 62.2047 in.
	if got := r.text("Width"); got != `62 3/16"` {
		t.Errorf("in inches it shows %q", got)
	}
	if hint := r.row("Width").f.hint; !strings.Contains(hint, "Exactly 1580 mm") {
		t.Errorf("the hint is %q", hint)
	}
	r.p.frame.Window.Canvas().Focus(r.row("Width").entry)
	r.key("Width", fyne.KeyReturn)
	if got := r.s.Report().Measures.Bounds.W(); got != 1580 {
		t.Errorf("Enter on what was not edited made it %g mm", got)
	}
	if got := r.text("Thickness"); got != `1 9/16"` {
		t.Errorf("40 mm shows as %q", got)
	}
}

func TestShares(t *testing.T) {
	for _, tt := range []struct {
		name                            string
		room, fields, numbers, warnings float32
	}{
		{"all fits", 800, 200, 150, 200},
		{"many fields", 520, 480, 150, 300},
		{"one opened", 520, 200, 600, 300},
		{"short window", 300, 400, 150, 300},
		{"no warnings", 520, 480, 150, 20},
	} {
		f, n, w := shares(tt.room, tt.fields, tt.numbers, tt.warnings)
		if f < 0 || n < 0 || w < 0 || f+n+w > tt.room+0.01 {
			t.Errorf("%s: %g + %g + %g of %g", tt.name, f, n, w, tt.room)
		}
		if n < min(tt.numbers, 144) {
			t.Errorf("%s: the quantities get %g", tt.name, n)
		}
		if f > tt.fields {
			t.Errorf("%s: the fields get %g and want %g", tt.name, f, tt.fields)
		}
	}
}

func TestReadingNumbers(t *testing.T) {
	for _, tt := range []struct {
		in   string
		sys  units.System
		want float64
		ok   bool
	}{
		{"12", units.Metric, 12, true}, {"12,5 kg", units.Metric, 12.5, true},
		// An avoirdupois pound is 0.45359237 kg: NIST SP 811 (2008), App. B.8.
		{"10 lb", units.Metric, 4.5359237, true}, {"10", units.Imperial, 4.5359237, true}, {"3 kg",
			units.Imperial, 3, true},
		{"-1", units.Metric, 0, false}, {"nan", units.Metric, 0, false}, {"1e999", units.Metric, 0,
			false}, {"heavy", units.Metric, 0, false}, {"", units.Metric, 0, false},
	} {
		got, err := ReadMass(tt.in, tt.sys)
		if (err == nil) != tt.ok || tt.ok && (got-tt.want > 1e-12 || tt.want-got > 1e-12) {
			t.Errorf("ReadMass(%q, %s) = %g, %v; want %g", tt.in, tt.sys, got, err, tt.want)
		}
	}
	if x, err := ReadDegrees("15°"); x != 15 || err != nil {
		t.Errorf("15° reads %g, %v", x, err)
	}
	if _, err := ReadDegrees("900"); err == nil {
		t.Error("900 degrees were taken")
	}
	if x, err := ReadPercent("40 %"); x != 40 || err != nil {
		t.Errorf("40 %% reads %g, %v", x, err)
	}
	if _, err := ReadPercent("140"); err == nil {
		t.Error("140 per cent were taken")
	}
	for in, want := range map[string]design.Colour{"#a9a69f": {R: 0xa9, G: 0xa6, B: 0x9f},
		"FFF": {R: 255, G: 255, B: 255}, " 0a0B0c ": {R: 10, G: 11, B: 12}} {
		if c, err := ReadHex(in); c != want || err != nil {
			t.Errorf("ReadHex(%q) = %v, %v", in, c, err)
		}
	}
	for _, bad := range []string{"", "#12345", "green", "#gggggg", "#+12345"} {
		if c, err := ReadHex(bad); err == nil {
			t.Errorf("ReadHex(%q) took it for %v", bad, c)
		}
	}
}

// BenchmarkFollow is one step of a drag as the panel sees it.
func BenchmarkFollow(b *testing.B) {
	s := session.New(session.Blank(units.Metric), "")
	newRig(b, s)
	s.BeginGesture()
	b.ReportAllocs()
	i := 0
	for b.Loop() {
		i++
		if err := s.DoGesture(edit.SetThickness(units.Length(40+i%20) * units.Millimetre)); err != nil {
			b.Fatal(err)
		}
	}
}
