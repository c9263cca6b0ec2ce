package picture

import (
	"math"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/units"
)

// Two tops of different sizes, one in a corner at the left: the same millimetres by
// the middle of each are the same pixels. By the law of perspective a length square
// to the view is seen at focal length over distance.
func TestSameScale(t *testing.T) {
	var sets []*Set
	for _, size := range [][2]float64{{900, 450}, {2400, 700}} {
		d := design.Design{Outline: edit.Rectangle(units.FromMM(size[0]), units.FromMM(size[1])), Thickness: 40 * units.Millimetre,
			Finish: design.Finish{Polish: 2}}
		sets = append(sets, Build(d, slab.Resolve(d), SetOptions{}))
	}
	const w, h = 800, 600
	views := SameScale(w, h, sets...)
	var px [2]float64
	for i, s := range sets {
		c := s.camera(views[i], w, h)
		m := s.bounds.Centre()
		p := v3{m.X, m.Y, s.body.t - 30}
		right := c.dx.unit()
		x0, y0, _ := c.project(p.along(right, -50))
		x1, y1, _ := c.project(p.along(right, 50))
		px[i] = math.Hypot(x1-x0, y1-y0)
	}
	if math.Abs(px[0]/px[1]-1) > 1e-9 || px[0] < 10 {
		t.Errorf("100 mm are %g and %g pixels", px[0], px[1])
	}
	if views[1].Away != 1 || views[0].Away <= 1 {
		t.Errorf("the larger one stands at %g, the smaller at %g", views[1].Away, views[0].Away)
	}
}
