package jobsheet

import (
	"math"
	"strings"
	"testing"

	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/shopspring/decimal"

	"example.org/castwright/model/units"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/session"
)

// open makes the sheet of a session's job.
func open(t *testing.T, s *session.Session) *sheet {
	t.Helper()
	test.NewTempApp(t)
	f := control.NewFrame(test.NewTempWindow(t, widget.NewLabel("")))
	h := &sheet{frame: f, s: s, job: s.Job(), fault: control.SmallLines("")}
	h.client()
	h.materials()
	return h
}

// entry is the one whose hint begins with a text.
func (h *sheet) entry(t *testing.T, hint string) *control.Entry {
	t.Helper()
	for _, e := range h.entries {
		if strings.HasPrefix(e.Hint(), hint) {
			return e
		}
	}
	t.Fatalf("no entry says %q", hint)
	return nil
}

// TestInThePoundsOfTheSheet: a maker who works in inches gives what the bag and the
// bottle say in pounds, quarts and cubic feet. Sizes of the units: NIST SP 811
// (2008), App. B.8.
func TestInThePoundsOfTheSheet(t *testing.T) {
	s := session.New(session.Blank(units.Imperial), "")
	tests := []struct {
		hint, typed, again string
		want               float64
		got                func() float64
	}{
		{"Dry mix in a bag", "55", "55", 24.94758035, func() float64 { return s.Job().Materials.Mix.BagMass }},
		{"In the form", "154.75", "154.75", 2478.857208, func() float64 { return s.Job().Materials.Mix.FreshDensity }},
		{"Fresh mix from a bag", "0.5", "0.5", 14.158423296, func() float64 { return s.Job().Materials.Mix.BagYield }},
		{"To a bag", "5", "5", 4.73176473, func() float64 { return s.Job().Materials.Mix.BagWater }},
		{"When dry", "150", "150", 2402.769507, func() float64 { return s.Job().Materials.Mix.CuredDensity }},
		{"The largest depth", "1/2", `1/2"`, 12.7, func() float64 { return s.Job().Materials.Resin.MaxPour }},
		{"Of one quart", "30", "30.00", 31.7006, func() float64 { return s.Job().Materials.Resin.LitrePrice.InexactFloat64() }},
		{"Of one pound", "4.35", "4.35", 9.5901, func() float64 { return s.Job().Materials.Glass.KgPrice.InexactFloat64() }},
	}
	h := open(t, s)
	for _, c := range tests {
		e := h.entry(t, c.hint)
		e.SetText(c.typed)
		if e.Settle(); strings.Trim(e.Text, `"`) != c.typed {
			t.Errorf("%s: %s shows as %s once it is left", c.hint, c.typed, e.Text)
		}
	}
	if !h.take() {
		t.Fatal(h.fault.Text)
	}
	h = open(t, s)
	for _, c := range tests {
		if got := c.got(); math.Abs(got-c.want) > 1e-6*c.want {
			t.Errorf("%s: %s gives %.9g, want %.9g", c.hint, c.typed, got, c.want)
		}
		if got := h.entry(t, c.hint).Text; got != c.again {
			t.Errorf("%s: %s is shown as %s afterwards", c.hint, c.typed, got)
		}
	}
}

// TestStockInPounds: stock figures in metric are shown short.
func TestStockInPounds(t *testing.T) {
	h := open(t, session.New(session.Blank(units.Imperial), ""))
	for hint, want := range map[string]string{
		"Dry mix in a bag": "55.12", "Fresh mix from a bag": "0.4944", "To a bag": "5.178", "When dry": "149.8",
	} {
		if got := h.entry(t, hint).Text; got != want {
			t.Errorf("%s: %s, want %s", hint, got, want)
		}
	}
}

// TestNothingTypedChangesNothing, in either system and with figures that are not
// round in the other.
func TestNothingTypedChangesNothing(t *testing.T) {
	for _, sys := range []units.System{units.Metric, units.Imperial} {
		j := session.Blank(sys)
		j.Materials.Mix.BagMass, j.Materials.Resin.MaxPour = 22.68, 3
		j.Materials.Resin.LitrePrice = decimal.RequireFromString("24.37")
		s := session.New(j, "")
		h := open(t, s)
		if !h.take() {
			t.Fatal(h.fault.Text)
		}
		if diff := cmp.Diff(j.Materials, s.Job().Materials, cmpopts.EquateComparable()); diff != "" {
			t.Errorf("%v: %s", sys, diff)
		}
	}
}
