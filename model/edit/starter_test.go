package edit_test

import (
	"math"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/units"
)

// Areas in closed form. The bow is a circle's segment: with half chord h and
// sagitta s the radius is (h*h+s*s)/2s and the area r*r*(x - sin x)/2 for
// sin(x/2) = h/r (CRC Standard Mathematical Tables, mensuration of the circle).
func TestStarters(t *testing.T) {
	segment := func(chord, rise float64) float64 {
		h := chord / 2
		r := (h*h + rise*rise) / (2 * rise)
		x := 2 * math.Asin(h/r)
		return r * r * (x - math.Sin(x)) / 2
	}
	for _, c := range []struct {
		name        string
		outline     design.Outline
		w, d        float64
		area        float64
		tol         float64 // share of the area
		wall, round int     // edges against walls, rounded corners
	}{
		{"rectangle", edit.Rectangle(mm(1500), mm(560)), 1500, 560, 1500 * 560, 1e-12, 1, 0},
		{"L", edit.LShape(mm(1600), mm(520), mm(560), mm(1200), mm(80)), 1600, 1200,
			1600*520 + 560*680, 1e-12, 2, 1},
		{"U", edit.UShape(mm(2400), mm(600), mm(600), mm(500), mm(1500), mm(60)), 2400, 1500,
			2400*600 + 1100*900, 1e-12, 3, 2},
		{"bowed", edit.BowedFront(mm(1562.1), mm(565.15), mm(76.2)), 1562.1, 565.15,
			1562.1*(565.15-76.2) + segment(1562.1, 76.2), 1e-9, 1, 0},
		{"straight bow", edit.BowedFront(mm(900), mm(500), 0), 900, 500, 900 * 500, 1e-12, 1, 0},
		{"round", edit.Round(mm(900)), 900, 900, math.Pi * 450 * 450, 1e-8, 0, 0},
		// Check values, ellipse: A = pi a b; (8.5, 7) gives 186.924763.
		{"oval", edit.Oval(17*units.Inch, 14*units.Inch), 431.8, 355.6, 186.924763 * 645.16, 1e-8, 0, 0},
		{"long oval", edit.Oval(mm(2000), mm(500)), 2000, 500, math.Pi * 1000 * 250, 1e-8, 0, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			nodes := c.outline.Nodes
			near(t, "area", area(nodes), c.area, c.tol*c.area)
			box := boxOf(nodes)
			near(t, "left", box.Min.X, 0, 1e-6)
			near(t, "front", box.Min.Y, 0, 1e-6)
			near(t, "width", box.Max.X, c.w, 1e-6)
			near(t, "depth", box.Max.Y, c.d, 1e-6)
			wall, round := 0, 0
			for _, n := range nodes {
				if n.Edge.Side == design.SideWall {
					wall++
				}
				if n.Corner.Kind == design.CornerRounded {
					round++
				}
			}
			if wall != c.wall || round != c.round {
				t.Errorf("%d wall edges and %d rounded corners, want %d and %d", wall, round, c.wall, c.round)
			}
		})
	}
}

// No point of the oval strays from its ellipse by more than the docs say.
func TestOvalStraysLittle(t *testing.T) {
	const a, b = 1000.0, 250.0
	worst := 0.0
	for _, c := range curvesOf(edit.Oval(mm(2*a), mm(2*b)).Nodes) {
		for i := 0; i <= 100; i++ {
			p := c.At(float64(i) / 100)
			// On the unit circle that the ellipse is scaled from; the distance
			// on the ellipse is that times the longer half axis at most.
			worst = math.Max(worst, math.Abs(math.Hypot((p.X-a)/a, (p.Y-b)/b)-1))
		}
	}
	if worst > 5e-6 {
		t.Errorf("the oval strays by %g of its half axis, want 5e-6 at most", worst)
	}
}
