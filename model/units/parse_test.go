package units_test

import (
	"testing"

	"example.org/castwright/model/units"
)

func TestParse(t *testing.T) {
	const in, mm = units.Inch, units.Millimetre
	half := 25*in + in/2
	tests := []struct {
		text string
		sys  units.System
		want units.Length
	}{
		{`25 1/2"`, units.Metric, half},
		{`25-1/2`, units.Imperial, half},
		{`25-1/2`, units.Metric, 24*mm + mm/2},
		{`25 1/2 in`, units.Metric, half},
		{`25-1/2 in.`, units.Metric, half},
		{`25-1/2"`, units.Metric, half},
		{`25 - 1/2`, units.Imperial, 24*in + in/2},
		{`25−1/2`, units.Imperial, 24*in + in/2},
		{`2' 1-1/2`, units.Metric, half},
		{`2' 1-1/2`, units.Imperial, half},
		{`2' 1 1/2"`, units.Metric, half},
		{`2'-1 1/2"`, units.Metric, half},
		{`2'-1-1/2"`, units.Metric, half},
		{`2' - 3"`, units.Metric, 21 * in},
		{`2'-3`, units.Metric, 27 * in},
		{`2′ 1½″`, units.Metric, half},
		{`2’ 1 1⁄2”`, units.Metric, half},
		{`2ft 3in`, units.Metric, 27 * in},
		{`2FT3`, units.Metric, 27 * in},
		{`64.8 cm`, units.Imperial, 648 * mm},
		{`64,8 cm`, units.Imperial, 648 * mm},
		{`650`, units.Metric, 650 * mm},
		{`650mm`, units.Imperial, 650 * mm},
		{`0.65 m`, units.Imperial, 650 * mm},
		{`1 m 20 cm`, units.Imperial, 1200 * mm},
		{`1/16`, units.Imperial, in / 16},
		{`⅜`, units.Imperial, in / 8 * 3},
		{`25⅜`, units.Imperial, 25*in + in/8*3},
		{`25 ⅜`, units.Imperial, 25*in + in/8*3},
		{`25-⅜`, units.Imperial, 25*in + in/8*3},
		{`60 - 2*3/4`, units.Imperial, 58*in + in/2},
		{`60 - 2*3/4"`, units.Imperial, 58*in + in/2},
		{`(60 - 1/2)/2`, units.Imperial, 29*in + in/4*3},
		{`(60 - 1/2) in / 2`, units.Metric, 29*in + in/4*3},
		{`31 1/2" - 10mm`, units.Metric, 31*in + in/2 - 10*mm},
		{`31 1/2 - 10mm`, units.Imperial, 31*in + in/2 - 10*mm},
		{`-3/8`, units.Imperial, -in / 8 * 3},
		{`--1`, units.Metric, mm},
		{`−1`, units.Metric, -mm},
		{`10'-1/2"`, units.Metric, 120*in + in/2},
		{`.5`, units.Metric, mm / 2},
		{`1/3`, units.Imperial, 8_466_667},
		{`0.0000005`, units.Metric, 0},
		{`0.0000015`, units.Metric, 2},
		{`0,125`, units.Imperial, in / 8},
		{`100 m`, units.Metric, units.MaxLength},
		{`3 × 25.4`, units.Metric, 3 * in},
	}
	for _, tt := range tests {
		got, err := units.Parse(tt.text, tt.sys)
		if err != nil || got != tt.want {
			t.Errorf("Parse(%q, %v) = %d, %v; want %d", tt.text, tt.sys, got, err, tt.want)
		}
	}
}
