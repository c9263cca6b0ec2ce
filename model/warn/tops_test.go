package warn_test

import (
	"fmt"
	"math"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/takeoff"
	"example.org/castwright/model/units"
	"example.org/castwright/model/warn"
)

const inch = 25.4

// top is what Check looks at, built by hand in millimetres.
type top struct {
	design    design.Design
	materials design.Materials
	site      design.Site
	solid     slab.Solid
	measures  slab.Measures
	takeoff   takeoff.Takeoff
}

func newTop(thickness float64, outline geom.Loop) *top {
	return &top{solid: slab.Solid{Thickness: thickness, Outline: outline}}
}

func (t *top) check() []warn.Warning {
	return warn.Check(t.design, t.materials, t.site, t.solid, t.measures, t.takeoff)
}

// weigh gives the top a weight with its centre of gravity at a place.
func (t *top) weigh(kg float64, at geom.Vec) {
	t.takeoff.WeightDry.Value = kg
	t.takeoff.CentreX.Value, t.takeoff.CentreY.Value = at.X, at.Y
}

func (t *top) sink(id design.ID, l geom.Loop) {
	t.solid.Openings = append(t.solid.Openings, slab.Opening{
		Part: id, Kind: slab.OpeningSink, Loop: l, Centre: l.Centroid()})
	t.solid.Bowls = append(t.solid.Bowls, slab.Bowl{Part: id, Loop: l, Back: geom.Vec{Y: 1}})
}

func (t *top) hole(id design.ID, kind slab.OpeningKind, at geom.Vec, diameter float64) {
	t.solid.Openings = append(t.solid.Openings, slab.Opening{Part: id, Kind: kind,
		Loop: ring(at, diameter/2), Centre: at, Diameter: diameter})
}

func (t *top) channel(id design.ID, depth float64, loops ...geom.Loop) *slab.Recess {
	t.solid.Recesses = append(t.solid.Recesses, slab.Recess{Part: id, Depth: depth, Loops: loops})
	return &t.solid.Recesses[len(t.solid.Recesses)-1]
}

func (t *top) bearing(l geom.Loop) {
	t.solid.Bearings = append(t.solid.Bearings, slab.Bearing{Loops: []geom.Loop{l}})
}

func rect(x0, y0, x1, y1 float64) geom.Loop {
	return geom.Loop{{X: x0, Y: y0}, {X: x1, Y: y0}, {X: x1, Y: y1}, {X: x0, Y: y1}}
}

// ring is a circle in 360 chords, whose corners lie on it.
func ring(at geom.Vec, r float64) geom.Loop {
	l := make(geom.Loop, 360)
	for i := range l {
		l[i] = at.Add(geom.Vec{X: r}.Turn(float64(i) * math.Pi / 180))
	}
	return l
}

// want is a warning to find: zero Title, Advice and Source are not compared.
type want struct {
	code         warn.Code
	severity     warn.Severity
	part         design.ID
	at           geom.Vec
	value, limit float64
}

// only keeps the warnings of some codes.
func only(ws []warn.Warning, codes ...warn.Code) []warn.Warning {
	var kept []warn.Warning
	for _, w := range ws {
		for _, c := range codes {
			if w.Code == c {
				kept = append(kept, w)
			}
		}
	}
	return kept
}

// compare checks warnings against what is wanted, in order, lengths to tol mm.
func compare(t *testing.T, got []warn.Warning, wanted []want, tol float64) {
	t.Helper()
	if len(got) != len(wanted) {
		t.Errorf("got %d warnings, want %d:%s", len(got), len(wanted), list(got))
		return
	}
	for i, w := range wanted {
		g := got[i]
		if g.Code != w.code || g.Severity != w.severity || g.Part != w.part ||
			g.At.Dist(w.at) > tol || math.Abs(g.Value-w.value) > tol || math.Abs(g.Limit-w.limit) > tol {
			t.Errorf("warning %d:%s\nwant %s %s %q at %v: %.3f, limit %.3f", i, list(got[i:i+1]),
				w.severity, w.code, w.part, w.at, w.value, w.limit)
		}
		if g.Title == "" || g.Advice == "" || g.Source == "" || g.Unit == "" {
			t.Errorf("warning %d lacks words: %+v", i, g)
		}
	}
}

func list(ws []warn.Warning) string {
	s := ""
	for _, w := range ws {
		s += fmt.Sprintf("\n\t%s %s %q at (%.3f, %.3f): %.3f, limit %.3f %s", w.Severity, w.Code, w.Part,
			w.At.X, w.At.Y, w.Value, w.Limit, w.Unit)
	}
	return s
}

func mm(x float64) units.Length { return units.FromMM(x) }
