package report

import (
	"math"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"example.org/castwright/model/amount"
	"example.org/castwright/model/takeoff"
	"example.org/castwright/model/units"
	"example.org/castwright/model/warn"
)

// Difference is one thing in which two reports may differ.
type Difference struct {
	Key   string // stable, as in the JSON report
	Label string // plain words: "Weight, dry"
	// A and B are the values in Unit, for a difference in numbers: "mm", "mm2",
	// "kg", "L", "bag", "pour", "count" or "money".
	A, B float64
	Unit string
	// WordsA and WordsB are the values of a difference in words; both are ""
	// when it is one in numbers.
	WordsA, WordsB string
}

// Differences lists what differs from a to b in the order in which a client
// asks: size, weight, what goes in, cost, what is risky. Values that read the
// same are left out.
func Differences(a, b Report) []Difference {
	return slices.DeleteFunc(Compare(a, b), Difference.Same)
}

// Compare lists all that two reports are compared by, in the order of
// [Differences], what is the same with it.
func Compare(a, b Report) []Difference {
	var out []Difference
	number := func(key, label string, x, y float64, unit string) {
		out = append(out, Difference{Key: key, Label: label, A: x, B: y, Unit: unit})
	}
	figure := func(f, g takeoff.Figure) { number(g.Key, g.Label, f.Value, g.Value, g.Unit) }

	number("width_mm", "Width", a.Measures.Bounds.W(), b.Measures.Bounds.W(), "mm")
	number("depth_mm", "Depth", a.Measures.Bounds.H(), b.Measures.Bounds.H(), "mm")
	number("thickness_mm", "Thickness", a.Solid.Thickness, b.Solid.Thickness, "mm")
	number("plan_area_mm2", "Area in plan", a.Measures.PlanArea, b.Measures.PlanArea, "mm2")
	number("net_area_mm2", "Area less openings", a.Measures.NetArea, b.Measures.NetArea, "mm2")
	number("seen_length_mm", "Finished edge", a.Measures.SeenLength, b.Measures.SeenLength, "mm")
	ta, tb := a.Takeoff, b.Takeoff
	figure(ta.WeightDry, tb.WeightDry)
	figure(ta.WeightFull, tb.WeightFull)
	figure(ta.Bags, tb.Bags)
	figure(ta.ResinMix, tb.ResinMix)
	figure(ta.Pours, tb.Pours)
	figure(ta.GlassArea, tb.GlassArea)
	figure(ta.GlassMass, tb.GlassMass)
	number("cost", "Cost of materials", ta.Total.InexactFloat64(), tb.Total.InexactFloat64(), "money")
	for _, s := range [...]struct {
		key, label string
		severity   warn.Severity
	}{{"warnings_severe", "Severe warnings", warn.Severe}, {"warnings_caution", "Cautions", warn.Caution}} {
		number(s.key, s.label, float64(count(a, s.severity)), float64(count(b, s.severity)), "count")
	}
	return append(out, Difference{Key: "warnings", Label: "Warned of", WordsA: only(a, b), WordsB: only(b, a)})
}

// Same reports whether both values read the same.
func (d Difference) Same() bool {
	if d.Unit == "" {
		return d.WordsA == d.WordsB
	}
	return d.A == d.B || d.Text(d.A, units.Metric, "") == d.Text(d.B, units.Metric, "")
}

func count(r Report, s warn.Severity) int {
	n := 0
	for _, w := range r.Warnings {
		if w.Severity == s {
			n++
		}
	}
	return n
}

// Nothing stands for no warnings in the words of a difference.
const Nothing = "nothing that the other is not"

// Only is the warnings above notes that r has and other has not, each title once.
func Only(r, other Report) []warn.Warning {
	seen := map[string]bool{}
	for _, w := range other.Warnings {
		seen[w.Title] = true
	}
	var out []warn.Warning
	for _, w := range r.Warnings {
		if w.Severity > warn.Note && !seen[w.Title] {
			seen[w.Title] = true
			out = append(out, w)
		}
	}
	return out
}

// only is the titles of [Only] in one line.
func only(r, other Report) string {
	var titles []string
	for _, w := range Only(r, other) {
		titles = append(titles, w.Title)
	}
	if len(titles) == 0 {
		return Nothing
	}
	return strings.Join(titles, "; ")
}

// Text writes a value of the difference's unit for reading, money in the job's
// currency.
func (d Difference) Text(x float64, sys units.System, currency string) string {
	if d.Unit == "money" {
		return amount.Money(currency, decimal.NewFromFloat(x).Round(2))
	}
	return amount.Of(x, d.Unit, sys)
}

// Change writes how B differs from A: a signed amount, or "" for words. Who checks
// it with a pencil reckons with the two values as they are written, so it is their
// difference, to the places that both have; where they are written in different
// units, the difference of the values themselves.
func (d Difference) Change(sys units.System, currency string) string {
	if d.WordsA != "" || d.WordsB != "" || math.IsNaN(d.B-d.A) || math.IsInf(d.B-d.A, 0) {
		return ""
	}
	sign := "+"
	if d.B < d.A {
		sign = "−"
	}
	switch d.Unit {
	case "mm", "money", "bag", "pour": // written exactly
	default:
		a, unitA, okA := written(d.Text(d.A, sys, currency))
		b, unitB, okB := written(d.Text(d.B, sys, currency))
		places := max(a.Exponent(), b.Exponent())
		if by := b.Sub(a).Abs().Round(-places); okA && okB && unitA == unitB && !by.IsZero() {
			return strings.TrimSpace(sign + by.StringFixed(-places) + " " + unitA)
		}
	}
	return sign + d.Text(math.Abs(d.B-d.A), sys, currency)
}

// written takes a text such as "98.8 kg" apart into the decimal and its unit.
func written(text string) (decimal.Decimal, string, bool) {
	number, unit, _ := strings.Cut(text, " ")
	x, err := decimal.NewFromString(number)
	return x, unit, err == nil
}
