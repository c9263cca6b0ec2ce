package pose_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"example.org/castwright/model/geom"
	"example.org/castwright/model/pose"
	"example.org/castwright/model/units"
)

var good = pose.Corners{{X: 300, Y: 200}, {X: 800, Y: 220}, {X: 900, Y: 420}, {X: 220, Y: 400}}

func TestGoodCorners(t *testing.T) {
	if err := good.Check(1280, 800); err != nil {
		t.Error(err)
	}
	// In the very corners of the photograph.
	if err := (pose.Corners{{X: 0, Y: 0}, {X: 1280, Y: 0}, {X: 1280, Y: 800}, {X: 0, Y: 800}}).Check(1280, 800); err != nil {
		t.Error(err)
	}
}

// Every kind of corners that no rectangle has is refused, and the corner to blame
// is named.
func TestDegenerateCorners(t *testing.T) {
	set := func(i int, x, y float64) pose.Corners {
		c := good
		c[i] = geom.Vec{X: x, Y: y}
		return c
	}
	for _, c := range []struct {
		name    string
		corners pose.Corners
		corner  pose.Corner
		words   string
	}{
		{"no number", set(2, math.NaN(), 4), pose.FrontRight, "is no place"},
		{"infinite", set(1, 4, math.Inf(-1)), pose.BackRight, "is no place"},
		{"left of it", set(3, -3, 400), pose.FrontLeft, "outside the photograph"},
		{"below it", set(2, 900, 900), pose.FrontRight, "outside the photograph"},
		{"repeated", set(2, 222, 402), pose.FrontLeft, "lies on the front right one"},
		{"all in one", pose.Corners{{X: 5, Y: 5}, {X: 5, Y: 5}, {X: 5, Y: 5}, {X: 5, Y: 5}}, pose.BackRight, "lies on the back left one"},
		{"on a line", set(1, 600, 310), pose.BackRight, "on one line"},
		{"all on a line", pose.Corners{{X: 100, Y: 100}, {X: 200, Y: 200}, {X: 300, Y: 300}, {X: 400, Y: 400}}, pose.BackLeft, "on one line"},
		{"dented", set(2, 420, 300), pose.FrontRight, "pull it outward"},
		{"front swapped", pose.Corners{good[0], good[1], good[3], good[2]}, pose.FrontRight, "swap the two"},
		{"right swapped", pose.Corners{good[0], good[2], good[1], good[3]}, pose.BackRight, "swap the two"},
		{"mirrored", pose.Corners{good[0], good[3], good[2], good[1]}, pose.BackRight, "clockwise"},
		{"tiny", pose.Corners{{X: 100, Y: 100}, {X: 125, Y: 100}, {X: 125, Y: 125}, {X: 100, Y: 125}}, pose.BackLeft, "too few"},
	} {
		err := c.corners.Check(1280, 800)
		var f *pose.Fault
		if !errors.As(err, &f) {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if f.Corner != c.corner || !strings.Contains(err.Error(), c.words) || !strings.Contains(err.Error(), c.corner.String()) {
			t.Errorf("%s: %v (the %s corner), want the %s one and %q", c.name, err, f.Corner, c.corner, c.words)
		}
		if _, err := pose.Find(c.corners, 1250, 560, pose.Photo{W: 1280, H: 800}); !errors.As(err, &f) {
			t.Errorf("%s: a camera was found: %v", c.name, err)
		}
	}
}

// With the back left corner first, the others may come in any of their six orders.
func TestOrdered(t *testing.T) {
	for _, p := range [][3]int{{1, 2, 3}, {1, 3, 2}, {2, 1, 3}, {2, 3, 1}, {3, 1, 2}, {3, 2, 1}} {
		if got := pose.Ordered([4]geom.Vec{good[0], good[p[0]], good[p[1]], good[p[2]]}); got != good {
			t.Errorf("order %v: %v", p, got)
		}
	}
}

func TestParse(t *testing.T) {
	c, err := pose.Parse(" 300,200, 800,220 ,220,400, 9e2,420")
	if err != nil || c != good {
		t.Errorf("%v, %v", c, err)
	}
	for text, words := range map[string]string{
		"":                      "eight numbers",
		"1,2,3,4,5,6,7":         "has 7",
		"1,2,3,4,5,6,7,8,9":     "has 9",
		"1,2,3,x,5,6,7,8":       "y of the back right",
		"1,2,3,4,NaN,6,7,8":     "x of the front right",
		"1,2,3,4,5,6,7,1e300":   "y of the front left",
		"Inf,2,3,4,5,6,7,8":     "x of the back left",
		"1;2;3;4;5;6;7;8":       "eight numbers",
		"1,2,3,4,,6,7,8":        "x of the front right",
		strings.Repeat("9", 99): "…",
	} {
		if _, err := pose.Parse(text); err == nil || !strings.Contains(err.Error(), words) {
			t.Errorf("%q: %v, want %q", text, err, words)
		}
	}
}

// Sheets by ISO 216 (A4 210 x 297 mm) and ANSI (Letter 8 1/2 x 11 in).
func TestParseSize(t *testing.T) {
	mm, in := units.Millimetre, units.Inch
	for _, c := range []struct {
		text string
		sys  units.System
		w, d units.Length
	}{
		{"1250x560", units.Metric, 1250 * mm, 560 * mm},
		{"1250 x 560 mm", units.Imperial, 1250 * mm, 560 * mm},
		{"49x22", units.Imperial, 49 * in, 22 * in},
		{`49 1/4" × 22 1/2"`, units.Metric, 49*in + in/4, 22*in + in/2},
		{"49 1/4 x 22 in", units.Metric, 49*in + in/4, 22 * in},
		{"125cm x 56cm", units.Imperial, 1250 * mm, 560 * mm},
		{"A4", units.Imperial, 297 * mm, 210 * mm},
		{"a4 upright", units.Metric, 210 * mm, 297 * mm},
		{"Letter", units.Metric, 11 * in, 8*in + in/2},
	} {
		w, d, err := pose.ParseSize(c.text, c.sys)
		if err != nil || w != c.w || d != c.d {
			t.Errorf("%q: %s x %s mm, %v", c.text, units.DecimalMM(w), units.DecimalMM(d), err)
		}
	}
	for _, text := range []string{"", "x", "1250", "1250x", "0x560", "1250x-3", "1250x560x30", "1250x1e9", "NaNxNaN", "A9", "12 furlongs x 3"} {
		if w, d, err := pose.ParseSize(text, units.Metric); err == nil {
			t.Errorf("%q is taken as %s x %s mm", text, units.DecimalMM(w), units.DecimalMM(d))
		}
	}
}

// Whatever is typed: no panic; what is taken can be ordered and checked, and what
// passes the check has a camera or a plain refusal.
func FuzzParse(f *testing.F) {
	for _, s := range []string{"300,200,800,220,900,420,220,400", "1,2,3,4,5,6,7,8", "NaN,1,1,1,1,1,1,1", ",,,,,,,", "-0,1e6,3,4,5,6,7,8", "0,0,1280,0,1280,800,0,800"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		c, err := pose.Parse(text)
		if err != nil {
			return
		}
		if err := c.Check(1280, 800); err != nil {
			return
		}
		cam, err := pose.Find(c, 1250, 560, pose.Photo{W: 1280, H: 800})
		if err != nil {
			return
		}
		for i, p := range [][3]float64{{}, {1250, 0, 0}, {1250, -560, 0}, {0, -560, 0}} {
			if q, ok := cam.Project(p); !ok || q.Dist(c[i]) > 0.05 {
				t.Errorf("%q: the %s corner is seen at %v, %v", text, pose.Corner(i), q, ok)
			}
		}
	})
}

func FuzzParseSize(f *testing.F) {
	for _, s := range []string{"1250x560", "A4 upright", "49 1/4 x 22 in", "x", "××"} {
		f.Add(s, false)
		f.Add(s, true)
	}
	f.Fuzz(func(t *testing.T, text string, inches bool) {
		sys := units.Metric
		if inches {
			sys = units.Imperial
		}
		w, d, err := pose.ParseSize(text, sys)
		if err == nil && pose.CheckSize(w, d, units.Metric) != nil {
			t.Errorf("%q: %s x %s mm were let through", text, units.DecimalMM(w), units.DecimalMM(d))
		}
	})
}

// Corners that are moved a little from true ones never make the search fail.
func TestFindWithMarkingErrors(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 2))
	truth := looking([3]float64{-400, -1500, 900}, [3]float64{620, -280, 0}, 0, 2900, 4000, 3000)
	worst := 0.0
	for range 100 {
		c := truth.corners(1250, 560)
		for i := range c {
			c[i] = c[i].Add(geom.Vec{X: 2 * r.NormFloat64(), Y: 2 * r.NormFloat64()})
		}
		cam, err := pose.Find(c, 1250, 560, pose.Photo{W: 4000, H: 3000})
		if err != nil {
			t.Fatal(err)
		}
		worst = max(worst, math.Abs(math.Log(cam.Focal/2900)))
	}
	// Two pixels of 5000 leave the focal length right to some per cent.
	if worst > 0.15 {
		t.Errorf("the focal length is off by as much as %.0f %%", 100*worst)
	}
}
