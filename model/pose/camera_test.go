package pose_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.org/castwright/model/geom"
	"example.org/castwright/model/pose"
)

// pinhole is a camera whose truth is known.
type pinhole struct {
	eye, right, down, fwd [3]float64
	f, cx, cy             float64
}

func dot(a, b [3]float64) float64 { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }

func cross(a, b [3]float64) [3]float64 {
	return [3]float64{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
}

func sub(a, b [3]float64) [3]float64 { return [3]float64{a[0] - b[0], a[1] - b[1], a[2] - b[2]} }

func unit(a [3]float64) [3]float64 {
	n := math.Sqrt(dot(a, a))
	return [3]float64{a[0] / n, a[1] / n, a[2] / n}
}

// looking is a camera at eye that looks at target, rolled about its view.
func looking(eye, target [3]float64, roll, f float64, w, h int) pinhole {
	fwd := unit(sub(target, eye))
	right := unit(cross(fwd, [3]float64{0, 0, 1}))
	down := cross(fwd, right)
	s, c := math.Sincos(roll)
	var r, d [3]float64
	for i := range 3 {
		r[i], d[i] = c*right[i]+s*down[i], c*down[i]-s*right[i]
	}
	return pinhole{eye, r, d, fwd, f, float64(w) / 2, float64(h) / 2}
}

func (c pinhole) see(p [3]float64) geom.Vec {
	q := sub(p, c.eye)
	z := dot(q, c.fwd)
	return geom.Vec{X: c.f*dot(q, c.right)/z + c.cx, Y: c.f*dot(q, c.down)/z + c.cy}
}

func (c pinhole) corners(w, d float64) pose.Corners {
	return pose.Corners{c.see([3]float64{}), c.see([3]float64{w, 0, 0}), c.see([3]float64{w, -d, 0}), c.see([3]float64{0, -d, 0})}
}

// Corners, eye, the way the camera looks, and the pixels of three places off the
// plane, by OpenCV 4.6: cv2.projectPoints of the rectangle, then cv2.solvePnP
// (SOLVEPNP_ITERATIVE) with the true focal length and cv2.projectPoints of (0, 0, 40),
// (w, 0, 40) and (w, -d, -300). The focal length is not told to Find.
func TestFindAgainstOpenCV(t *testing.T) {
	for _, c := range []struct {
		name    string
		photo   pose.Photo
		f       float64
		corners pose.Corners
		eye     [3]float64
		seen    [3]geom.Vec
	}{
		{"three-quarter", pose.Photo{W: 4000, H: 3000}, 2900,
			pose.Corners{{X: 860.8295386615373, Y: 1656.5895245390793}, {X: 2372.304130177047, Y: 1126.3358859472503},
				{X: 2965.1202991172463, Y: 1364.2711276768298}, {X: 1336.5961365916537, Y: 2176.0017279952963}},
			[3]float64{-400, -1500, 900},
			[3]geom.Vec{{X: 847.213955419074, Y: 1597.2175755998276}, {X: 2375.4305469175556, Y: 1080.1689997577728}, {X: 2898.471754157724, Y: 1727.49643121307}}},
		{"low", pose.Photo{W: 1920, H: 1080}, 1500,
			pose.Corners{{X: 605.4469681950968, Y: 494.99827758889415}, {X: 1432.0672063191553, Y: 518.5846000302694},
				{X: 1510.9350713319702, Y: 618.0866243051186}, {X: 428.51284950379636, Y: 577.1944289603709}},
			[3]float64{900, -2200, 420},
			[3]geom.Vec{{X: 604.1848928788813, Y: 469.7561920350736}, {X: 1433.8926285000578, Y: 491.25497319364894}, {X: 1490.4904052753548, Y: 876.6673423184193}}},
	} {
		cam, err := pose.Find(c.corners, 1250, 560, c.photo)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		near(t, c.name+": focal length", cam.Focal/c.f, 1, 0.01)
		for i := range 3 {
			near(t, c.name+": eye", cam.Eye[i], c.eye[i], 15)
		}
		for i, p := range [][3]float64{{0, 0, 40}, {1250, 0, 40}, {1250, -560, -300}} {
			q, ok := cam.Project(p)
			if !ok {
				t.Errorf("%s: %v is not seen", c.name, p)
			}
			near(t, c.name+": pixel of a place off the plane", q.Dist(c.seen[i]), 0, 1.5)
		}
	}
}

// Known cameras of many kinds: the corners come back, lengths on the plane are true,
// a place above it is seen where it should, and the focal length is near the truth
// where the corners say it.
func TestFindKnownCameras(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 1))
	for n := range 300 {
		photo := pose.Photo{W: 4000, H: 3000}
		if n%2 == 1 {
			photo.W, photo.H = 3000, 4000
		}
		w, d := 300+2200*r.Float64(), 200+600*r.Float64()
		turn, rise := (r.Float64()-0.5)*2, 0.35+0.75*r.Float64()
		f := (0.55 + 0.6*r.Float64()) * math.Hypot(float64(photo.W), float64(photo.H))
		far := 1.3 * math.Hypot(w, d) * f / float64(min(photo.W, photo.H))
		mid := [3]float64{w / 2, -d / 2, 0}
		eye := [3]float64{mid[0] + far*math.Cos(rise)*math.Sin(turn), mid[1] - far*math.Cos(rise)*math.Cos(turn), far * math.Sin(rise)}
		truth := looking(eye, mid, (r.Float64()-0.5)*0.3, f, photo.W, photo.H)
		corners := truth.corners(w, d)
		cam, err := pose.Find(corners, w, d, photo)
		if err != nil {
			t.Errorf("%d: %v (%v)", n, err, corners)
			continue
		}
		for i, p := range [][3]float64{{}, {w, 0, 0}, {w, -d, 0}, {0, -d, 0}} {
			q, ok := cam.Project(p)
			if !ok || q.Dist(corners[i]) > 0.01 {
				t.Errorf("%d: the %s corner is seen %.2f pixels off", n, pose.Corner(i), q.Dist(corners[i]))
			}
		}
		// Scale: what lies 100 mm apart on the plane.
		a, b := [3]float64{w * r.Float64(), -d * r.Float64(), 0}, [3]float64{w * r.Float64(), -d * r.Float64(), 0}
		pa, _ := cam.OnPlane(truth.see(a), 0)
		pb, _ := cam.OnPlane(truth.see(b), 0)
		want := math.Hypot(a[0]-b[0], a[1]-b[1])
		near(t, "length on the plane", pa.Dist(pb)/want, 1, 0.002)
		// Height: the size in the photograph of 40 mm upright, anywhere on the plane.
		up, _ := cam.Project([3]float64{a[0], a[1], 40})
		foot, _ := cam.Project(a)
		true40 := truth.see([3]float64{a[0], a[1], 40}).Dist(truth.see(a))
		if got := up.Dist(foot) / true40; math.Abs(got-1) > 3*cam.Doubt+0.02 {
			t.Errorf("%d: 40 mm upright are seen as %.3f of their size (focal %.3f of the truth, doubt %.3f)", n, got, cam.Focal/f, cam.Doubt)
		}
		if got := math.Log(cam.Focal / f); math.Abs(got) > 3*cam.Doubt {
			t.Errorf("%d: focal length %.3f of the truth, said to be sure to %.3f", n, cam.Focal/f, cam.Doubt)
		}
		// The file's word on the focal length makes it surer.
		photo.Focal35 = f / math.Hypot(float64(photo.W), float64(photo.H)) * math.Hypot(24, 36)
		told, err := pose.Find(corners, w, d, photo)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "focal length that the file tells", told.Focal/f, 1, 0.005)
		if told.Doubt > cam.Doubt+1e-9 {
			t.Errorf("%d: being told the focal length makes it less sure: %.3f, %.3f before", n, told.Doubt, cam.Doubt)
		}
	}
}

// Straight down nothing is said of the focal length: the usual one is taken, and
// said to be doubtful; the plane is as true as ever.
func TestFindStraightDown(t *testing.T) {
	photo := pose.Photo{W: 4000, H: 3000}
	corners := pose.Corners{{X: 1000, Y: 900}, {X: 3000, Y: 900}, {X: 3000, Y: 1900}, {X: 1000, Y: 1900}}
	if f, ok := pose.FocalOf(mustHomograph(t, corners, 1200, 600), geom.Vec{X: 2000, Y: 1500}); ok && f < 1e5 {
		t.Errorf("straight down the corners say a focal length of %g", f)
	}
	cam, err := pose.Find(corners, 1200, 600, photo)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "focal length", cam.Focal, 26/math.Hypot(24, 36)*5000, 1)
	near(t, "doubt", cam.Doubt, 0.3, 0.01)
	near(t, "miss", cam.Miss, 0, 0.01)
	// 2000 pixels for 1200 mm at this focal length.
	near(t, "height of the eye", cam.Eye[2], cam.Focal*1200/2000, 1)
	p, _ := cam.OnPlane(geom.Vec{X: 2000, Y: 900}, 0)
	near(t, "middle of the back", p.Dist(geom.Vec{X: 600}), 0, 1e-6)
}

func mustHomograph(t *testing.T, c pose.Corners, w, d float64) pose.Homography {
	t.Helper()
	h, err := pose.Homograph([]geom.Vec{{X: 0, Y: 0}, {X: w, Y: 0}, {X: w, Y: -d}, {X: 0, Y: -d}}, c[:])
	if err != nil {
		t.Fatal(err)
	}
	return h
}

// The focal length by vanishing points alone, for cameras with two of them.
func TestFocalOf(t *testing.T) {
	for _, f := range []float64{1200, 2900, 6000} {
		truth := looking([3]float64{-400, -1500, 900}, [3]float64{620, -280, 0}, 0.1, f, 4000, 3000)
		got, ok := pose.FocalOf(mustHomograph(t, truth.corners(1250, 560), 1250, 560), geom.Vec{X: 2000, Y: 1500})
		if !ok {
			t.Errorf("no focal length for %g", f)
		}
		near(t, "focal length", got/f, 1, 1e-6)
	}
}

// A size that the corners can't have is found out.
func TestStrainTellsAWrongSize(t *testing.T) {
	photo := pose.Photo{W: 4000, H: 3000}
	truth := looking([3]float64{-400, -1500, 900}, [3]float64{620, -280, 0}, 0, 2900, 4000, 3000)
	corners := truth.corners(1250, 560)
	right, err := pose.Find(corners, 1250, 560, photo)
	if err != nil {
		t.Fatal(err)
	}
	if right.Miss > 0.3 || right.Strain > 1 {
		t.Errorf("the right size misses by %.2f pixels, strain %.2f", right.Miss, right.Strain)
	}
	wrong, err := pose.Find(corners, 560, 1250, photo)
	if err == nil && wrong.Strain < 5 {
		t.Errorf("width and depth swapped miss by %.2f pixels, strain %.2f", wrong.Miss, wrong.Strain)
	}
	// Even so the marked corners are met.
	if err == nil {
		q, _ := wrong.Project([3]float64{560, 0, 0})
		near(t, "corner", q.Dist(corners[1]), 0, 0.01)
	}
}

// A design's places land where its own place and turn say.
func TestPlaced(t *testing.T) {
	truth := looking([3]float64{-400, -1500, 900}, [3]float64{620, -280, 0}, 0, 2900, 4000, 3000)
	cam, err := pose.Find(truth.corners(1250, 560), 1250, 560, pose.Photo{W: 4000, H: 3000})
	if err != nil {
		t.Fatal(err)
	}
	box := geom.Box{Min: geom.Vec{X: -100, Y: 20}, Max: geom.Vec{X: 1100, Y: 580}}
	at := pose.Place{X: 30, Y: -15, Turn: 0.2, Rise: 7}
	p := cam.Placed(at, box, 45)
	for _, c := range []struct{ design, there [3]float64 }{
		{[3]float64{-100, 580, 45}, [3]float64{30, -15, 7}},
		{[3]float64{1100, 580, 45}, [3]float64{30 + 1200*math.Cos(0.2), -15 + 1200*math.Sin(0.2), 7}},
		{[3]float64{-100, 20, 0}, [3]float64{30 + 560*math.Sin(0.2), -15 - 560*math.Cos(0.2), -38}},
	} {
		want, _ := cam.Project(c.there)
		var q [3]float64
		for i := range 3 {
			q[i] = p[i][0]*c.design[0] + p[i][1]*c.design[1] + p[i][2]*c.design[2] + p[i][3]
		}
		near(t, "pixel", geom.Vec{X: q[0] / q[2], Y: q[1] / q[2]}.Dist(want), 0, 1e-6)
	}
	// And back from the pixel, at its height.
	q, _ := cam.Project([3]float64{300, -200, 7})
	back, ok := cam.OnPlane(q, 7)
	if !ok || back.Dist(geom.Vec{X: 300, Y: -200}) > 1e-6 {
		t.Errorf("back at %v", back)
	}
}
