package compare_test

import (
	"strings"
	"testing"

	"example.org/castwright/model/amount"
	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/report"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/compare"
	"example.org/castwright/ui/session"
)

func side(j design.Job, edits ...edit.Edit) compare.Side {
	o := j.Options[0]
	for _, e := range edits {
		d, err := e.Apply(o.Design)
		if err != nil {
			panic(err)
		}
		o.Design = d
	}
	return compare.Side{Option: o, Report: report.Derive(o.Design, j.Materials, j.Site)}
}

func find(t *testing.T, lines []compare.Line, what string) compare.Line {
	t.Helper()
	for _, l := range lines {
		if l.What == what {
			return l
		}
	}
	t.Fatalf("no line says %q", what)
	return compare.Line{}
}

func TestSameOptionsDoNotDiffer(t *testing.T) {
	j := session.Blank(units.Metric)
	for _, l := range compare.Lines(side(j), side(j), j.Materials, j.Units) {
		if l.Differs || l.Change != "" || l.A != l.B {
			t.Errorf("%+v", l)
		}
	}
}

func TestLines(t *testing.T) {
	j := session.Blank(units.Metric)
	sink := design.Sink{
		Mount: design.MountVessel, Drain: 45 * units.Millimetre, At: design.Point{X: 700 * units.Millimetre, Y: 280 * units.Millimetre},
		Shape: design.Shape{Kind: design.ShapeCircle, Width: 400 * units.Millimetre},
	}
	a := side(j)
	b := side(j, edit.Resize(1600*units.Millimetre, 550*units.Millimetre),
		edit.SetThickness(50*units.Millimetre), edit.AddSink(sink),
		edit.SetSeenProfiles(design.Profile{Kind: design.ProfileFullRound}))
	lines := compare.Lines(a, b, j.Materials, j.Units)
	for _, want := range []compare.Line{
		{What: "Width", A: "1500 mm", B: "1600 mm", Change: "+100 mm", Differs: true},
		{What: "Depth", A: "550 mm", B: "550 mm"},
		{What: "Thickness", A: "40 mm", B: "50 mm", Change: "+10 mm", Differs: true},
		{What: "Sinks", A: "none", B: "vessel, round, 400 mm", Differs: true},
		{What: "Edges", A: "3 × eased 3 mm", B: "3 × full round", Differs: true},
		{What: "Taps", A: "none", B: "none"},
	} {
		if got := find(t, lines, want.What); got != want {
			t.Errorf("got  %+v\nwant %+v", got, want)
		}
	}
	w := find(t, lines, "Weight")
	if w.A != amount.Figure(a.Report.Takeoff.WeightDry,
		j.Units) || w.B != amount.Figure(b.Report.Takeoff.WeightDry, j.Units) {
		t.Errorf("the weights are %+v, not those of the reports", w)
	}
	if !strings.HasPrefix(w.Change, "+") {
		t.Errorf("a heavier top changes by %q", w.Change)
	}
	back := compare.Lines(b, a, j.Materials, j.Units)
	if got := find(t, back, "Width").Change; got != "−100 mm" {
		t.Errorf("the other way round the width changes by %q", got)
	}
}

func TestWarningsOfOneOnly(t *testing.T) {
	j := session.Blank(units.Metric)
	a, b := side(j), side(j, edit.Resize(4000*units.Millimetre, 900*units.Millimetre))
	l := find(t, compare.Lines(a, b, j.Materials, j.Units), "Warned of here only")
	if !l.Differs || l.B == "none" {
		t.Errorf("a top four metres long is warned of by %+v", l)
	}
}

func TestImperial(t *testing.T) {
	j := session.Blank(units.Imperial)
	l := find(t, compare.Lines(side(j), side(j, edit.Resize(123*units.Inch/2, 22*units.Inch)),
		j.Materials, j.Units), "Width")
	if l.A != `61"` || l.B != `61 1/2"` || l.Change != `+1/2"` {
		t.Errorf("%+v", l)
	}
}
