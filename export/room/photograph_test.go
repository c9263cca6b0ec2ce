package room_test

import (
	"image"
	"math"
	"math/rand/v2"
	"testing"

	"example.org/castwright/export/picture"
	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/pose"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/units"
)

// A synthetic photograph: a plain pale top in an invented room, by our own
// renderer through a camera whose truth is known.

const (
	oldW, oldD, oldT = 1250.0, 560.0, 30.0
)

func mm(x float64) units.Length { return units.FromMM(x) }

// plain is a top of one colour with square edges and a wall behind it.
func plain(w, d, t float64, c design.Colour) design.Design {
	out := design.Design{Outline: edit.Rectangle(mm(w), mm(d)), Thickness: mm(t), Finish: design.Finish{Colour: c, Polish: 1}}
	for i := range out.Outline.Nodes {
		out.Outline.Nodes[i].Edge.Side = design.SideSeen
		out.Outline.Nodes[i].Edge.Profile = design.Profile{Kind: design.ProfileSquare}
	}
	out.Outline.Nodes[2].Edge.Side = design.SideWall // the back
	return out
}

func laminate() design.Design {
	return plain(oldW, oldD, oldT, design.Colour{R: 176, G: 168, B: 150})
}

// camera is a pinhole camera at eye that looks at target, with its truth.
type camera struct {
	eye, target [3]float64
	f           float64
	w, h        int
}

var standing = camera{eye: [3]float64{250, -1500, 980}, target: [3]float64{620, 260, 0}, f: 900, w: 1200, h: 900}

func (c camera) projection() picture.Projection {
	sub := func(a, b [3]float64) [3]float64 { return [3]float64{a[0] - b[0], a[1] - b[1], a[2] - b[2]} }
	unit := func(a [3]float64) [3]float64 {
		n := math.Sqrt(a[0]*a[0] + a[1]*a[1] + a[2]*a[2])
		return [3]float64{a[0] / n, a[1] / n, a[2] / n}
	}
	cross := func(a, b [3]float64) [3]float64 {
		return [3]float64{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
	}
	fwd := unit(sub(c.target, c.eye))
	right := unit(cross(fwd, [3]float64{0, 0, 1}))
	return picture.Pinhole(c.eye, [3][3]float64{right, cross(fwd, right), fwd}, c.f, float64(c.w)/2, float64(c.h)/2)
}

// see is the pixel of a place in the axes of the old design.
func (c camera) see(x, y, z float64) geom.Vec {
	p := c.projection()
	var q [3]float64
	for i := range 3 {
		q[i] = p[i][0]*x + p[i][1]*y + p[i][2]*z + p[i][3]
	}
	return geom.Vec{X: q[0] / q[2], Y: q[1] / q[2]}
}

func (c camera) corners() pose.Corners {
	return pose.Corners{c.see(0, oldD, oldT), c.see(oldW, oldD, oldT), c.see(oldW, 0, oldT), c.see(0, 0, oldT)}
}

// take photographs a design.
func (c camera) take(t testing.TB, d design.Design) *image.RGBA {
	t.Helper()
	set := picture.Build(d, slab.Resolve(d), picture.SetOptions{Bare: false, NoTaps: true})
	img, err := picture.Render(t.Context(), set, picture.View{Kind: picture.Through, Camera: c.projection()}, picture.Quick, c.w, c.h, nil)
	if err != nil {
		t.Fatal(err)
	}
	return &image.RGBA{Pix: img.Pix, Stride: img.Stride, Rect: img.Rect}
}

// developed changes a photograph: gain by channel of linear light, and noise of a
// standard deviation in 8-bit steps.
func developed(in *image.RGBA, gain [3]float64, noise float64) *image.RGBA {
	out := image.NewRGBA(in.Rect)
	r := rand.New(rand.NewPCG(3, 3))
	for i := range in.Pix {
		if i%4 == 3 {
			out.Pix[i] = 255
			continue
		}
		x := float64(in.Pix[i]) / 255
		if x <= 0.04045 {
			x /= 12.92
		} else {
			x = math.Pow((x+0.055)/1.055, 2.4)
		}
		if x *= gain[i%4]; x <= 0.0031308 {
			x *= 12.92
		} else {
			x = 1.055*math.Pow(x, 1/2.4) - 0.055
		}
		out.Pix[i] = uint8(max(0, min(255, 255*x+noise*r.NormFloat64()+0.5)))
	}
	return out
}
