package edit_test

import (
	"math"
	"reflect"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
)

func mm(x float64) units.Length { return units.FromMM(x) }

func at(x, y float64) design.Point { return design.Point{X: mm(x), Y: mm(y)} }

// curvesOf are the edges of a chain as exact curves, corners untreated.
func curvesOf(nodes []design.Node) []geom.Curve {
	vec := func(p design.Point) geom.Vec { return geom.Vec{X: p.X.MM(), Y: p.Y.MM()} }
	out := make([]geom.Curve, len(nodes))
	for i, n := range nodes {
		a, b := vec(n.At), vec(nodes[(i+1)%len(nodes)].At)
		switch n.Edge.Curve {
		case design.CurveArc:
			out[i] = geom.ArcByRise(a, b, n.Edge.Rise.MM())
		case design.CurveSpline:
			out[i] = geom.Cubic{P0: a, P1: vec(n.Edge.C1), P2: vec(n.Edge.C2), P3: b}
		default:
			out[i] = geom.Line{A: a, B: b}
		}
	}
	return out
}

// area is that of a closed chain by Green's theorem, with Simpson's rule in
// 200 steps an edge; positive when it runs counter-clockwise.
func area(nodes []design.Node) float64 {
	sum := 0.0
	for _, c := range curvesOf(nodes) {
		const steps = 200
		for i := 0; i <= steps; i++ {
			w := 2.0
			switch {
			case i == 0 || i == steps:
				w = 1
			case i%2 == 1:
				w = 4
			}
			t := float64(i) / steps
			sum += w / (3 * steps) * c.At(t).Cross(c.Deriv(t)) / 2
		}
	}
	return sum
}

func boxOf(nodes []design.Node) geom.Box {
	box := geom.EmptyBox()
	for _, c := range curvesOf(nodes) {
		box = box.Union(c.Bounds())
	}
	return box
}

// failing is what a test and a property test have in common.
type failing interface {
	Helper()
	Errorf(string, ...any)
	Fatalf(string, ...any)
}

// near reports a value that is off by more than tol.
func near(t failing, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s = %.9g, want %.9g within %g", what, got, want, tol)
	}
}

// apply gives the edited design and fails the test on an error.
func apply(t failing, d design.Design, edits ...edit.Edit) design.Design {
	t.Helper()
	for _, e := range edits {
		out, err := e.Apply(d)
		if err != nil {
			t.Fatalf("%s: %v", e.Name, err)
		}
		d = out
	}
	return d
}

// snapshot is a copy of v that shares nothing with it.
func snapshot[T any](v T) T {
	return copyOf(reflect.ValueOf(v)).Interface().(T)
}

func copyOf(v reflect.Value) reflect.Value {
	out := reflect.New(v.Type()).Elem()
	switch v.Kind() {
	case reflect.Struct:
		out.Set(v)
		for i := range v.NumField() {
			if out.Field(i).CanSet() {
				out.Field(i).Set(copyOf(v.Field(i)))
			}
		}
	case reflect.Slice:
		if v.IsNil() {
			return out
		}
		out.Set(reflect.MakeSlice(v.Type(), v.Len(), v.Len()))
		for i := range v.Len() {
			out.Index(i).Set(copyOf(v.Index(i)))
		}
	case reflect.Pointer:
		if v.IsNil() {
			return out
		}
		out.Set(reflect.New(v.Type().Elem()))
		out.Elem().Set(copyOf(v.Elem()))
	case reflect.Map:
		if v.IsNil() {
			return out
		}
		out.Set(reflect.MakeMap(v.Type()))
		for _, k := range v.MapKeys() {
			out.SetMapIndex(k, copyOf(v.MapIndex(k)))
		}
	default:
		out.Set(v)
	}
	return out
}

// a counter with a part of every kind.
func counter(t failing) design.Design {
	t.Helper()
	d := design.Design{Outline: edit.BowedFront(mm(1500), mm(560), mm(60)), Thickness: mm(40)}
	for _, e := range []edit.Edit{
		edit.SetFinish(design.Finish{Colour: design.Colour{R: 200, G: 190, B: 180}, Polish: 2}),
		edit.AddSink(design.Sink{At: at(500, 300), Shape: design.Shape{Kind: design.ShapeEllipse,
			Width: mm(430), Depth: mm(330)}}),
		edit.AddTaps(design.TapSet{Pattern: design.TapThree8, Diameter: mm(35), Sink: "sink-1",
			SetBack: mm(60)}),
		edit.AddHole(design.Hole{Kind: design.HoleCable, At: at(1300, 480), Diameter: mm(60)}),
		edit.AddChannel(design.Channel{Depth: mm(12), Rivers: []design.River{{
			Nodes: []design.RiverNode{{At: at(1000, 80), Width: mm(60)}, {At: at(1200, 250), Width: mm(80)},
				{At: at(1450, 300), Width: mm(50)}}, End: design.EndOpen}},
			Fill: design.Fill{Resin: true, Glass: &design.GlassFill{Grain: mm(5)}}}),
		edit.AddGlass(design.GlassBed{Grain: mm(8), Depth: mm(8), Region: design.Region{
			Outer:   edit.Rectangle(mm(300), mm(90)).Nodes,
			Islands: [][]design.Node{edit.Round(mm(40)).Nodes}}}),
		edit.AddSupport(design.Support{Kind: design.SupportGable, Line: []design.Point{at(20, 0), at(20, 500)},
			Width: mm(18)}),
		edit.AddSupport(design.Support{Kind: design.SupportLeg, Patch: true,
			Line: []design.Point{at(1400, 20), at(1460, 20), at(1460, 80)}}),
	} {
		d = apply(t, d, e)
	}
	return d
}
