package assets_test

import (
	"math"
	"testing"

	"example.org/castwright/assets"
	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/report"
	"example.org/castwright/model/store"
	"example.org/castwright/model/units"
	"example.org/castwright/model/warn"
)

func demo(t *testing.T, i int) design.Job {
	t.Helper()
	j, err := store.Decode(assets.Demos()[i].Data)
	if err != nil {
		t.Fatal(err)
	}
	return j
}

// A demo is what a maker sees first: it can be built as it is, and it shows a
// warning that teaches something and none that frightens.
func TestDemosCanBeBuilt(t *testing.T) {
	for i := range assets.Demos() {
		j := demo(t, i)
		for _, o := range j.Options {
			r := report.Derive(o.Design, j.Materials, j.Site)
			for _, f := range r.Faults {
				t.Errorf("%s %s: %v", j.Client, o.Name, f)
			}
			if len(r.Warnings) == 0 {
				t.Errorf("%s %s shows no warning", j.Client, o.Name)
			}
			for _, w := range r.Warnings {
				if w.Severity == warn.Severe {
					t.Errorf("%s %s: %s: %g %s, limit %g", j.Client, o.Name, w.Title, w.Value, w.Unit, w.Limit)
				}
			}
		}
	}
}

// The first demo's two options differ in everything, and between them show
// what the program can do.
func TestTheFirstDemoShowsWhatThereIs(t *testing.T) {
	a, b := demo(t, 0).Options[0].Design, demo(t, 0).Options[1].Design
	edges := func(d design.Design, has func(design.Node) bool) bool {
		for _, n := range d.Outline.Nodes {
			if has(n) {
				return true
			}
		}
		return false
	}
	for what, shown := range map[string]bool{
		"thickness differs": a.Thickness != b.Thickness,
		"finish differs": a.Finish.Exposure == design.ExposureCoarse && b.Finish.Exposure == design.ExposureCream &&
			a.Finish.Polish != b.Finish.Polish && a.Finish.Colour != b.Finish.Colour,
		"an L with a rounded inside corner": len(a.Outline.Nodes) == 6 &&
			a.Outline.Nodes[2].Corner.Kind == design.CornerRounded,
		"a spline front": edges(a, func(n design.Node) bool { return n.Edge.Curve == design.CurveSpline }),
		"a half round edge": edges(a, func(n design.Node) bool {
			return n.Edge.Profile.Kind == design.ProfileHalfRound
		}),
		"a bowed front":     edges(b, func(n design.Node) bool { return n.Edge.Curve == design.CurveArc && n.Edge.Rise > 0 }),
		"a rough edge":      edges(b, func(n design.Node) bool { return n.Edge.Profile.Kind == design.ProfileRough }),
		"a D mounted under": a.Sinks[0].Shape.Kind == design.ShapeD && a.Sinks[0].Mount == design.MountUnder,
		"a vessel":          b.Sinks[0].Mount == design.MountVessel,
		"a river that branches and leaves by one end": len(a.Channels[0].Rivers) == 2 &&
			a.Channels[0].Rivers[0].End == design.EndOpen && a.Channels[0].Rivers[1].End != design.EndOpen,
		"resin with glass": a.Channels[0].Fill.Resin && a.Channels[0].Fill.Glass != nil,
		"a glass bed":      len(a.Glass) == 0 && len(b.Glass) == 1,
		"taps at 8 in":     b.Taps[0].Pattern == design.TapThree8,
	} {
		if !shown {
			t.Errorf("the demo does not show: %s", what)
		}
	}
}

func TestTheSecondDemoIsInInches(t *testing.T) {
	j := demo(t, 1)
	nodes := j.Options[0].Design.Outline.Nodes
	if j.Units != units.Imperial || nodes[2].At != (design.Point{X: 61 * units.Inch, Y: 22 * units.Inch}) {
		t.Errorf("units %v, far corner at %v", j.Units, nodes[2].At)
	}
}

func TestWhatIsHandedOutIsACopy(t *testing.T) {
	assets.Schema()[0] = 'x'
	assets.Demos()[0].Data[0] = 'x'
	if assets.Schema()[0] != '{' || assets.Demos()[0].Data[0] != '{' {
		t.Error("a reader has written into the assets")
	}
}

// A mirrored top takes and weighs the same, its centre of gravity mirrored.
func TestMirroredDemosWeighTheSame(t *testing.T) {
	for i := range assets.Demos() {
		j := demo(t, i)
		for _, o := range j.Options {
			m, err := edit.Mirror().Apply(o.Design)
			if err != nil {
				t.Fatal(err)
			}
			is := report.Derive(m, j.Materials, j.Site)
			was := report.Derive(o.Design, j.Materials, j.Site)
			width := was.Measures.Bounds.Min.X + was.Measures.Bounds.Max.X
			for what, pair := range map[string][2]float64{
				"plan":     {is.Measures.PlanArea, was.Measures.PlanArea},
				"concrete": {is.Measures.ConcreteVolume, was.Measures.ConcreteVolume},
				"resin":    {is.Measures.ResinVolume, was.Measures.ResinVolume},
				"weight":   {is.Takeoff.WeightDry.Value, was.Takeoff.WeightDry.Value},
				"centre":   {width - is.Takeoff.CentreX.Value, was.Takeoff.CentreX.Value},
				"warnings": {float64(len(is.Warnings)), float64(len(was.Warnings))},
			} {
				if math.Abs(pair[0]-pair[1]) > 1e-6*math.Abs(pair[1]) {
					t.Errorf("%s %s: %s is %g mirrored and %g before", j.Client, o.Name, what, pair[0], pair[1])
				}
			}
		}
	}
}
