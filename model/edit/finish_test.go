package edit_test

import (
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/units"
)

// TestSetExposure: depths by the exposure classes of the Concrete Polishing Council,
// first edition of the chart: cement cream less than 0.5 mm, fine aggregate about
// 1/16 in, coarse 1/4 in or more.
func TestSetExposure(t *testing.T) {
	const mm, in = units.Millimetre, units.Inch
	tests := []struct {
		name        string
		from        design.Exposure
		grind       units.Length
		to          design.Exposure
		sys         units.System
		thick, want units.Length
	}{
		{"cream to coarse", design.ExposureCream, mm / 2, design.ExposureCoarse, units.Metric, 40 * mm, 6 * mm},
		{"cream to coarse in inches", design.ExposureCream, in / 64, design.ExposureCoarse, units.Imperial, 3 * in / 2, in / 4},
		{"fine to coarse", design.ExposureFine, 3 * mm / 2, design.ExposureCoarse, units.Metric, 40 * mm, 6 * mm},
		{"coarse back to cream", design.ExposureCoarse, 6 * mm, design.ExposureCream, units.Metric, 40 * mm, mm / 2},
		{"cream to fine", design.ExposureCream, mm / 2, design.ExposureFine, units.Imperial, 40 * mm, in / 16},
		{"the system was changed between", design.ExposureCream, in / 64, design.ExposureFine, units.Metric, 40 * mm, 3 * mm / 2},
		{"a grind of one's own stays", design.ExposureCream, 2 * mm, design.ExposureCoarse, units.Metric, 40 * mm, 2 * mm},
		{"the same again changes nothing", design.ExposureCream, in / 64, design.ExposureCream, units.Metric, 40 * mm, in / 64},
		{"too thin for it", design.ExposureCream, mm / 2, design.ExposureCoarse, units.Metric, 10 * mm, mm / 2},
	}
	for _, c := range tests {
		t.Run(c.name, func(t *testing.T) {
			d := design.Design{Outline: edit.Rectangle(1000*mm, 500*mm), Thickness: c.thick,
				Finish: design.Finish{Exposure: c.from, Polish: 3, Grind: c.grind}}
			got, err := edit.SetExposure(c.to, c.sys).Apply(d)
			if err != nil {
				t.Fatal(err)
			}
			want := design.Finish{Exposure: c.to, Polish: 3, Grind: c.want}
			if got.Finish != want {
				t.Errorf("got %+v, want %+v", got.Finish, want)
			}
		})
	}
}
