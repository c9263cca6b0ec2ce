package picture

import (
	"fmt"
	"testing"

	"example.org/castwright/model/design"
)

// A face of exposed stone is as bright from afar, where stones are too small to see,
// as from near.
func TestStonesKeepTheirMean(t *testing.T) {
	for _, e := range []design.Exposure{design.ExposureFine, design.ExposureCoarse} {
		for _, grey := range []uint8{60, 160, 230} {
			c := newConcrete(design.Finish{Exposure: e, Polish: 1, Colour: design.Colour{R: grey, G: grey, B: grey}})
			at := func(footprint float64) (sum float64) {
				const places = 20000
				for i := range places {
					p := v3{1000 * fract(float64(i)*r2x), 1000 * fract(float64(i)*r2y), 40}
					sum += c.at(p, footprint, 0, 40).kd.luma() / places
				}
				return sum
			}
			want := at(0.3)
			for _, footprint := range []float64{1, 2, 3, 4.3, 6, 9, 14, 20} {
				near(t, fmt.Sprintf("exposure %d, grey %d, %g mm to a pixel", e, grey, footprint), at(footprint)/want, 1, 0.015)
			}
		}
	}
}
