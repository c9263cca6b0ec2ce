package picture

import (
	"bytes"
	"context"
	"errors"
	"image"
	"math"
	"testing"

	"example.org/castwright/model/design"
)

// shotOf takes a picture with a number of threads.
func shotOf(t testing.TB, s *Set, v View, q Quality, w, h, threads int) *image.NRGBA {
	t.Helper()
	img, err := render(context.Background(), s, v, q, w, h, threads, func(string, float64, *image.NRGBA) {})
	if err != nil {
		t.Fatal(err)
	}
	return img
}

// The same bytes for one, two, four and five threads.
func TestThreadsGiveTheSameBytes(t *testing.T) {
	s := built(glassy(), SetOptions{Draft: true})
	one := shotOf(t, s, View{Kind: Quarter}, Quick, 200, 113, 1)
	for _, n := range []int{2, 4, 5} {
		if !bytes.Equal(one.Pix, shotOf(t, s, View{Kind: Quarter}, Quick, 200, 113, n).Pix) {
			t.Errorf("%d threads give another picture than one", n)
		}
	}
	if other := shotOf(t, s, View{Kind: Quarter, Seed: 1}, Quick, 200, 113, 2); bytes.Equal(one.Pix, other.Pix) {
		t.Error("the seed changes nothing")
	}
}

// Straight down, the outline lies where the scale says, to a pixel.
func TestPlanIsToScale(t *testing.T) {
	d := design.Design{Thickness: mm(40), Finish: design.Finish{Colour: design.Colour{R: 90, G: 86, B: 80}, Polish: 1}}
	for _, p := range [][2]float64{{100, 50}, {1100, 50}, {1100, 550}, {100, 550}} {
		d.Outline.Nodes = append(d.Outline.Nodes, design.Node{At: at(p[0], p[1])})
	}
	s := built(d, SetOptions{})
	const w, h = 530, 400
	k, mid := s.PlanScale(w, h)
	img := shotOf(t, s, View{Kind: Top}, Quick, w, h, 2)
	dark := func(x, y int) bool { return img.NRGBAAt(x, y).G < 140 }
	// Along the middle row and column, the first and last dark pixels.
	x0, x1 := 0, w-1
	for !dark(x0, h/2) {
		x0++
	}
	for !dark(x1, h/2) {
		x1--
	}
	near(t, "left side", mid.X+(float64(x0)-w/2.0)*k, 100, k)
	near(t, "right side", mid.X+(float64(x1+1)-w/2.0)*k, 1100, k)
	near(t, "width in pixels", float64(x1+1-x0), 1000/k, 1)
	y0 := 0
	for !dark(w/2, y0) {
		y0++
	}
	near(t, "back", mid.Y+(h/2.0-float64(y0))*k, 550, k)
}

// A cancelled picture ends with the context's error and says so before it is
// done.
func TestCancel(t *testing.T) {
	s := built(poured(), SetOptions{Draft: true})
	ctx, stop := context.WithCancel(context.Background())
	stages := map[string]bool{}
	_, err := Render(ctx, s, View{Kind: Quarter}, Good, 400, 225, func(stage string, done float64, img *image.NRGBA) {
		stages[stage] = true
		if done < 0 || done > 1 || math.IsNaN(done) {
			t.Errorf("%s is done to %g", stage, done)
		}
		if img != nil {
			t.Error("a cancelled picture is shown")
		}
		stop()
	})
	if !errors.Is(err, context.Canceled) || len(stages) == 0 {
		t.Errorf("cancelled picture ended with %v after %v", err, stages)
	}
}

func TestRefusals(t *testing.T) {
	s := built(design.Design{}, SetOptions{})
	for _, c := range []struct {
		v    View
		w, h int
	}{
		{View{}, 0, 100}, {View{}, 100, 9000}, {View{Kind: 9}, 100, 100},
		{View{Kind: Close, Span: math.NaN()}, 100, 100}, {View{Kind: Orbit, Rise: math.Inf(1)}, 100, 100},
	} {
		if _, err := Render(context.Background(), s, c.v, Quick, c.w, c.h, nil); err == nil {
			t.Errorf("view %+v at %d x %d was taken", c.v, c.w, c.h)
		}
	}
	// A design without a top, and views from odd places, give a picture still.
	for _, v := range []View{{}, {Kind: Quarter}, {Kind: Close}, {Kind: Orbit, Turn: 200, Rise: 90, Away: 1e5}} {
		shotOf(t, s, v, Quick, 40, 30, 1)
	}
}

// rmse is the difference of two pictures in steps of 255, and of their means.
func rmse(a, b *image.NRGBA) (root, mean float64) {
	n := 0
	for i := range a.Pix {
		if i&3 == 3 {
			continue
		}
		d := float64(a.Pix[i]) - float64(b.Pix[i])
		root, mean, n = root+d*d, mean+d, n+1
	}
	return math.Sqrt(root / float64(n)), mean / float64(n)
}

// The quick method against the path tracer, on a small picture.
func TestAgainstReference(t *testing.T) {
	if testing.Short() {
		t.Skip("traces some million paths")
	}
	s := built(poured(), SetOptions{})
	const w, h = 128, 72
	c := s.camera(View{Kind: Quarter}, w, h)
	ref, err := s.room().reference(context.Background(), c, 0, 256, 0, nil)
	if err != nil {
		t.Fatal(err)
	}
	good := shotOf(t, s, View{Kind: Quarter}, Good, w, h, 2)
	root, mean := rmse(good, developed(ref, w, h))
	t.Logf("RMSE %.2f, mean %+.2f of 255", root, mean)
	if root > 5.5 || math.Abs(mean) > 1.5 {
		t.Errorf("the quick picture differs by %.2f of 255, on the mean by %.2f", root, mean)
	}
}
