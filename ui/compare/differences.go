package compare

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/castwright/model/amount"
	"example.org/castwright/model/design"
	"example.org/castwright/model/report"
	"example.org/castwright/model/takeoff"
	"example.org/castwright/model/units"
	"example.org/castwright/model/warn"
	"example.org/castwright/ui/panel"
	"example.org/castwright/ui/words"
)

// Side is one of the two options.
type Side struct {
	Option design.Option
	Report report.Report
}

// Line is one thing compared: how it is with each option, and in numbers by how
// much it differs.
type Line struct {
	What, A, B string
	Change     string // such as "+12.4 kg" from A to B, "" when it is no number
	Differs    bool
}

// Lines compares two options: first the numbers, then the parts in words.
func Lines(a, b Side, m design.Materials, sys units.System) []Line {
	return append(numbers(a, b, m, sys), parts(a, b, sys)...)
}

func numbers(a, b Side, m design.Materials, sys units.System) (out []Line) {
	measure := func(what string, x, y float64, say func(float64) string) {
		l := Line{What: what, A: say(x), B: say(y)}
		if l.Differs = l.A != l.B; l.Differs {
			l.Change = signed(y-x, say)
		}
		out = append(out, l)
	}
	unit := func(name string) func(float64) string {
		return func(x float64) string { return amount.Of(x, name, sys) }
	}
	ra, rb := a.Report, b.Report
	measure("Width", ra.Measures.Bounds.W(), rb.Measures.Bounds.W(), unit("mm"))
	measure("Depth", ra.Measures.Bounds.H(), rb.Measures.Bounds.H(), unit("mm"))
	measure("Thickness", a.Option.Design.Thickness.MM(), b.Option.Design.Thickness.MM(), unit("mm"))
	measure("Face area", ra.Measures.NetArea, rb.Measures.NetArea, unit("mm2"))
	figure := func(what string, f, g takeoff.Figure) {
		measure(what, f.Value, g.Value, func(x float64) string {
			f.Value = x
			return amount.Figure(f, sys)
		})
	}
	ta, tb := ra.Takeoff, rb.Takeoff
	figure("Weight", ta.WeightDry, tb.WeightDry)
	figure("Bags of mix", ta.Bags, tb.Bags)
	figure("Resin to mix", ta.ResinMix, tb.ResinMix)
	figure("Glass to buy", ta.GlassMass, tb.GlassMass)
	cost := Line{What: "Materials", A: panel.CostOf(ta, m.Currency), B: panel.CostOf(tb, m.Currency)}
	if cost.Differs = !ta.Total.Equal(tb.Total); cost.Differs {
		d := tb.Total.Sub(ta.Total)
		sign := "+"
		if d.IsNegative() {
			sign = "−"
		}
		cost.Change = sign + amount.Money(m.Currency, d.Abs())
	}
	out = append(out, cost)
	warns := Line{What: "Warnings", A: counts(ra), B: counts(rb)}
	warns.Differs = warns.A != warns.B
	return append(out, warns)
}

// signed writes a change with its sign.
func signed(x float64, say func(float64) string) string {
	if x < 0 {
		return "−" + say(math.Abs(x))
	}
	return "+" + say(x)
}

func counts(r report.Report) string {
	var n [3]int
	for _, w := range r.Warnings {
		n[w.Severity]++
	}
	if len(r.Faults) > 0 {
		return amount.Count(len(r.Faults), "fault")
	}
	var list []string
	for s := warn.Severe; ; s-- {
		if n[s] > 0 {
			word := s.String()
			if s != warn.Severe && n[s] > 1 {
				word += "s"
			}
			list = append(list, fmt.Sprintf("%d %s", n[s], word))
		}
		if s == warn.Note {
			break
		}
	}
	if len(list) == 0 {
		return "none"
	}
	return strings.Join(list, ", ")
}

// parts compares what the options are made of, in words.
func parts(a, b Side, sys units.System) (out []Line) {
	da, db := a.Option.Design, b.Option.Design
	for _, t := range []struct {
		what string
		say  func(design.Design, units.System) string
	}{
		{"Outline", sayOutline}, {"Edges", sayEdges}, {"Sinks", saySinks}, {"Taps", sayTaps}, {"Holes",
			sayHoles},
		{"Channels", sayChannels}, {"Glass", sayGlass}, {"Finish", sayFinish}, {"Supports",
			saySupports},
	} {
		l := Line{What: t.what, A: t.say(da, sys), B: t.say(db, sys)}
		l.Differs = l.A != l.B
		out = append(out, l)
	}
	return append(out, onlyOne(a.Report, b.Report))
}

// onlyOne names the warnings that one option has and the other has not.
func onlyOne(a, b report.Report) Line {
	titles := func(r, other report.Report) string {
		var list []string
		for _, w := range r.Warnings {
			if !slices.ContainsFunc(other.Warnings,
				func(o warn.Warning) bool { return o.Code == w.Code }) &&
				!slices.Contains(list, w.Title) {
				list = append(list, w.Title)
			}
		}
		return strings.Join(list, "; ")
	}
	l := Line{What: "Warned of here only", A: titles(a, b), B: titles(b, a)}
	l.Differs = l.A != l.B
	for _, s := range []*string{&l.A, &l.B} {
		if *s == "" {
			*s = "none"
		}
	}
	return l
}

// several joins descriptions and counts equal ones.
func several(list []string) string {
	if len(list) == 0 {
		return "none"
	}
	var out []string
	n := map[string]int{}
	for _, s := range list {
		if n[s] == 0 {
			out = append(out, s)
		}
		n[s]++
	}
	for i, s := range out {
		if n[s] > 1 {
			out[i] = fmt.Sprintf("%d × %s", n[s], s)
		}
	}
	return strings.Join(out, "; ")
}

func lower(s string) string {
	if s == "" || len(s) > 1 && s[1] == '-' { // D-shape
		return s
	}
	return strings.ToLower(s[:1]) + s[1:]
}

func length(l units.Length, sys units.System) string { return units.Format(l, sys) }

func sayOutline(d design.Design, _ units.System) string {
	curved := map[design.CurveKind]int{}
	treated := map[design.CornerKind]int{}
	for _, n := range d.Outline.Nodes {
		curved[n.Edge.Curve]++
		treated[n.Corner.Kind]++
	}
	list := []string{amount.Count(len(d.Outline.Nodes), "corner")}
	for _, x := range []struct {
		n    int
		word string
	}{
		{curved[design.CurveArc], "arc"}, {curved[design.CurveSpline], "spline"},
		{treated[design.CornerRounded], "rounding"}, {treated[design.CornerChamfered],
			"clipped corner"},
	} {
		if x.n > 0 {
			list = append(list, amount.Count(x.n, x.word))
		}
	}
	return strings.Join(list, ", ")
}

func sayEdges(d design.Design, sys units.System) string {
	var list []string
	for _, n := range d.Outline.Nodes {
		if n.Edge.Side == design.SideSeen {
			list = append(list, lower(words.Profile(n.Edge.Profile,
				func() string { return length(n.Edge.Profile.Size, sys) })))
		}
	}
	return several(list)
}

func saySinks(d design.Design, sys units.System) string {
	var list []string
	for _, k := range d.Sinks {
		size := length(k.Shape.Width, sys)
		if k.Shape.Kind != design.ShapeCircle && k.Shape.Kind != design.ShapePath {
			size = words.Size(k.Shape.Width.MM(), k.Shape.Depth.MM(), sys)
		}
		list = append(list, lower(words.Of(words.Mounts,
			int(k.Mount)))+", "+lower(words.Of(words.Shapes, int(k.Shape.Kind)))+", "+size)
	}
	return several(list)
}

func sayTaps(d design.Design, sys units.System) string {
	var list []string
	for _, t := range d.Taps {
		list = append(list, lower(words.Of(words.Patterns, int(t.Pattern)))+", "+length(t.Diameter,
			sys))
	}
	return several(list)
}

func sayHoles(d design.Design, sys units.System) string {
	var list []string
	for _, h := range d.Holes {
		list = append(list, lower(words.Of(words.HoleKinds, int(h.Kind)))+", "+length(h.Diameter, sys))
	}
	return several(list)
}

func sayChannels(d design.Design, sys units.System) string {
	var list []string
	for _, c := range d.Channels {
		what := []string{}
		if n := len(c.Rivers); n == 1 {
			what = append(what, "river")
		} else if n > 1 {
			what = append(what, fmt.Sprintf("river of %d arms", n))
		}
		if n := len(c.Regions); n > 0 {
			what = append(what, amount.Count(n, "pool"))
		}
		open := 0
		for _, r := range c.Rivers {
			for _, e := range []design.RiverEnd{r.Start, r.End} {
				if e == design.EndOpen {
					open++
				}
			}
		}
		s := strings.Join(what, " and ") + ", " + length(c.Depth, sys) + " deep"
		if open > 0 {
			s += ", over " + amount.Count(open, "edge")
		}
		switch {
		case !c.Fill.Resin:
			s += ", empty"
		case c.Fill.Glass != nil:
			s += ", " + colour(panel.ResinColours, c.Fill.Colour) + " resin with glass"
		default:
			s += ", " + colour(panel.ResinColours, c.Fill.Colour) + " resin"
		}
		list = append(list, s)
	}
	return several(list)
}

func colour(list []panel.Swatch, c design.Colour) string {
	if name := panel.ColourName(list, c); name != "" {
		return lower(name)
	}
	return panel.Hex(c)
}

func sayGlass(d design.Design, sys units.System) string {
	var list []string
	for _, g := range d.Glass {
		list = append(list, fmt.Sprintf("%s, %s grain, %s covered",
			colour(panel.GlassColours, g.Colour), length(g.Grain, sys), units.FormatShare(g.Coverage)))
	}
	return several(list)
}

func sayFinish(d design.Design, sys units.System) string {
	f := d.Finish
	return colour(panel.ConcreteColours, f.Colour) + ", " + lower(words.Of(words.Exposures,
		int(f.Exposure))) + ", " +
		lower(words.Of(words.Polishes, f.Polish-1)) + ", " + length(f.Grind, sys) + " ground off"
}

func saySupports(d design.Design, _ units.System) string {
	var list []string
	for _, s := range d.Supports {
		list = append(list, lower(words.Of(words.Supports, int(s.Kind))))
	}
	return several(list)
}
