package pose_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.org/castwright/model/geom"
	"example.org/castwright/model/pose"
)

func near(t testing.TB, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s is %.10g, want %.10g (within %g)", what, got, want, tol)
	}
}

// at scales a homography so that its last member is 1.
func unitLast(h pose.Homography) pose.Homography {
	k := h[2][2]
	for i := range h {
		for j := range h[i] {
			h[i][j] /= k
		}
	}
	return h
}

// P. Corke, Robotics, Vision and Control: Fundamental Algorithms in Python, third
// edition 2023, section 14.2.4: nine points of a grid seen by two cameras with
// f = 2 mm, pixels of 10 um and 1000 x 1000 of them. The matrix is the one that the
// documentation of the book's toolbox prints for it (CentralCamera.points2H), to
// four decimals; its own residual there is 5e-5.
func TestHomographOfTheBook(t *testing.T) {
	sin, cos := math.Sincos(0.1)
	rx := func(p [3]float64) [3]float64 { return [3]float64{p[0], cos*p[1] - sin*p[2], sin*p[1] + cos*p[2]} }
	ry := func(a float64, p [3]float64) [3]float64 {
		s, c := math.Sincos(a)
		return [3]float64{c*p[0] + s*p[2], p[1], -s*p[0] + c*p[2]}
	}
	seen := func(x, turn float64, p [3]float64) geom.Vec {
		p[0] -= x
		p = ry(-turn, p)
		return geom.Vec{X: 200*p[0]/p[2] + 500, Y: 200*p[1]/p[2] + 500}
	}
	var a, b []geom.Vec
	for _, x := range []float64{-0.5, 0, 0.5} {
		for _, y := range []float64{-0.5, 0, 0.5} {
			p := rx(ry(0.2, [3]float64{x, y, 0}))
			p[2]++
			a, b = append(a, seen(-0.1, 0.4, p)), append(b, seen(0.1, -0.4, p))
		}
	}
	h, err := pose.Homograph(a, b)
	if err != nil {
		t.Fatal(err)
	}
	h = unitLast(h)
	want := pose.Homography{{-0.4187, -0.0004, 397.7657}, {-0.6981, 0.3738, 309.4588}, {-0.0014, 0, 1}}
	for i := range 3 {
		for j := range 3 {
			near(t, "member", h[i][j], want[i][j], 1.1e-4)
		}
	}
}

// The perspective transform that OpenCV 4 gives for these corners, as it prints it
// (cv2.getPerspectiveTransform; run again with 4.6).
func TestHomographOfFour(t *testing.T) {
	h, err := pose.Homograph([]geom.Vec{{X: 33, Y: 582}, {X: 151, Y: 579}, {X: 145, Y: 702}, {X: 25, Y: 703}},
		[]geom.Vec{{X: 0, Y: 0}, {X: 300, Y: 0}, {X: 300, Y: 300}, {X: 0, Y: 300}})
	if err != nil {
		t.Fatal(err)
	}
	h = unitLast(h)
	want := pose.Homography{{2.86405074, 0.189358727, -204.720453}, {0.0710878995, 2.79612405, -1629.6901}, {1.60734029e-4, 1.73337133e-4, 1}}
	for i := range 3 {
		for j := range 3 {
			near(t, "member", h[i][j]/want[i][j], 1, 1e-6)
		}
	}
}

// The unit square to a quadrilateral: the values of the test of ZXing's
// PerspectiveTransform (Apache licence), which goes by Heckbert's closed form.
func TestSquareToQuadrilateral(t *testing.T) {
	h, err := pose.Homograph([]geom.Vec{{X: 0, Y: 0}, {X: 1, Y: 0}, {X: 1, Y: 1}, {X: 0, Y: 1}},
		[]geom.Vec{{X: 2, Y: 3}, {X: 10, Y: 4}, {X: 16, Y: 15}, {X: 4, Y: 9}})
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ x, y, u, v float64 }{{0.5, 0.5, 6.535211, 6.8873234}, {1.5, 1.5, 48, 42.42857}} {
		p, ok := h.At(geom.Vec{X: c.x, Y: c.y})
		if !ok {
			t.Fatal("not seen")
		}
		near(t, "u", p.X, c.u, 2e-5)
		near(t, "v", p.Y, c.v, 2e-5)
	}
}

// A homography is found again from the pictures that it makes, whatever units the
// places are in (Hartley and Zisserman, 4.4: normalising makes it independent of
// them); its inverse takes the pictures back.
func TestHomographProperties(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 1))
	for range 200 {
		truth := pose.Homography{{1 + r.Float64(), r.NormFloat64() / 3, 500 * r.Float64()},
			{r.NormFloat64() / 3, 1 + r.Float64(), 500 * r.Float64()}, {r.NormFloat64() * 1e-4, r.NormFloat64() * 1e-4, 1}}
		scale := math.Pow(10, float64(r.IntN(9)-4))
		n := 4 + r.IntN(8)
		var from, to []geom.Vec
		for i := range n {
			p := geom.Vec{X: 1000 * float64(i&1), Y: 700 * float64(i>>1&1)}
			if i > 3 {
				p = geom.Vec{X: 1000 * r.Float64(), Y: 700 * r.Float64()}
			}
			q, _ := truth.At(p)
			from, to = append(from, p.Mul(scale)), append(to, q)
		}
		h, err := pose.Homograph(from, to)
		if err != nil {
			t.Fatal(err)
		}
		back, ok := h.Inverse()
		if !ok {
			t.Fatal("no inverse")
		}
		for range 5 {
			p := geom.Vec{X: 1000 * r.Float64(), Y: 700 * r.Float64()}
			want, _ := truth.At(p)
			got, _ := h.At(p.Mul(scale))
			near(t, "picture", got.Dist(want), 0, 1e-6)
			home, _ := back.At(got)
			near(t, "way back", home.Mul(1/scale).Dist(p), 0, 1e-6)
		}
	}
}

func TestHomographRefuses(t *testing.T) {
	square := []geom.Vec{{X: 0, Y: 0}, {X: 1, Y: 0}, {X: 1, Y: 1}, {X: 0, Y: 1}}
	for name, to := range map[string][]geom.Vec{
		"three":            square[:3],
		"one place":        {{X: 5, Y: 5}, {X: 5, Y: 5}, {X: 5, Y: 5}, {X: 5, Y: 5}},
		"a line":           {{X: 0, Y: 0}, {X: 1, Y: 1}, {X: 2, Y: 2}, {X: 5, Y: 5}},
		"three on a line":  {{X: 0, Y: 0}, {X: 1, Y: 1}, {X: 2, Y: 2}, {X: 0, Y: 5}},
		"no number":        {{X: 0, Y: 0}, {X: math.NaN(), Y: 1}, {X: 2, Y: 2}, {X: 0, Y: 5}},
		"far beyond sense": {{X: 0, Y: 0}, {X: math.Inf(1), Y: 1}, {X: 2, Y: 2}, {X: 0, Y: 5}},
	} {
		if h, err := pose.Homograph(square, to); err == nil {
			t.Errorf("%s: %v", name, h)
		}
		if len(to) == 4 {
			if h, err := pose.Homograph(to, square); err == nil {
				t.Errorf("%s, the other way: %v", name, h)
			}
		}
	}
}
