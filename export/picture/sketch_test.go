package picture

import (
	"math"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/look"
)

// average is the mean of sRGB colours in linear light, as sRGB of 255.
func average(n int, at func(i int) v3) (c v3) {
	for i := range n {
		c = c.add(at(i).mul(1 / float64(n)))
	}
	return v3{255 * encoded(c.X), 255 * encoded(c.Y), 255 * encoded(c.Z)}
}

// Sketch and picture have the same colours: a matt face of every exposure, and
// the middle of a channel of resin, as seen from above under the light of the
// picture's level, 1.
func TestSketchAndPictureAgree(t *testing.T) {
	for _, e := range []design.Exposure{design.ExposureCream, design.ExposureFine, design.ExposureCoarse} {
		for _, c := range []design.Colour{{R: 168, G: 165, B: 158}, {R: 216, G: 207, B: 189}, {R: 80, G: 78, B: 77}} {
			f := design.Finish{Colour: c, Exposure: e, Polish: 1}
			sketch, mine := look.NewConcrete(f, geom.Box{}), newConcrete(f)
			const n = 4000
			place := func(i int) (x, y float64) {
				return 500 * fract(float64(i)*r2x), 500 * fract(float64(i)*r2y)
			}
			a := average(n, func(i int) v3 {
				x, y := place(i)
				k := sketch.At(x, y, 1)
				return v3{decoded(k.R), decoded(k.G), decoded(k.B)}
			})
			b := average(n, func(i int) v3 {
				x, y := place(i)
				return mine.at(v3{x, y, 40}, 1, 0, 40).kd
			})
			for k, d := range [3]float64{a.X - b.X, a.Y - b.Y, a.Z - b.Z} {
				if math.Abs(d) > 8 {
					t.Errorf("exposure %d of %v, channel %d: the sketch's mean is %.0f, the picture's %.0f", e, c, k, [3]float64{a.X, a.Y, a.Z}[k], [3]float64{b.X, b.Y, b.Z}[k])
				}
			}
		}
	}
}

func TestSketchAndPictureAgreeOnResin(t *testing.T) {
	for _, c := range []design.Colour{{R: 60, G: 150, B: 200}, {R: 230, G: 190, B: 120}, {R: 29, G: 106, B: 104}} {
		for _, opacity := range []float64{0, 35, 100} {
			fill := design.Fill{Resin: true, Colour: c, Opacity: share(opacity)}
			s := filled(13, c)
			s.body.channels[0].resin = newResin(fill, 13)
			box := geom.Loop{{X: 50, Y: 50}, {X: 550, Y: 50}, {X: 550, Y: 550}, {X: 50, Y: 550}}
			rows := look.Resin([]geom.Loop{box}, 13, fill, design.Colour{R: 180, G: 180, B: 180}, 1)
			const n = 600
			var px [4]uint8
			a := average(n, func(i int) v3 {
				rows.Row(px[:], 200+200*fract(float64(i)*r2x), 200+200*fract(float64(i)*r2y), 1)
				return v3{decoded(px[0]), decoded(px[1]), decoded(px[2])}
			})
			b := average(n, func(i int) v3 {
				p := v3{200 + 200*fract(float64(i)*r2x), 200 + 200*fract(float64(i)*r2y), 60}
				l := s.body.channels[0].look(s.table(), p, v3{Z: -1}, v3{Z: 1}, 1)
				return l.albedo.add(s.table().rig.studio(v3{Z: 1}).mul(l.f))
			})
			for _, d := range [3]float64{a.X - b.X, a.Y - b.Y, a.Z - b.Z} {
				if math.Abs(d) > 26 {
					t.Errorf("%v at %.0f %%: the sketch shows %.0f, the picture %.0f", c, opacity, a, b)
					break
				}
			}
		}
	}
}
