package look

import (
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
)

func BenchmarkBakeConcrete(b *testing.B) {
	for e, name := range []string{"cream", "fine", "coarse"} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				bakeConcrete(rgb{0.4, 0.4, 0.38}, design.Exposure(e))
			}
		})
	}
}

func BenchmarkConcreteRow(b *testing.B) {
	c := NewConcrete(design.Finish{Colour: design.Colour{R: 168, G: 165, B: 158}, Polish: 3}, geom.Box{Max: geom.Vec{X: 1400, Y: 600}})
	row := make([]uint8, 4*1400)
	b.SetBytes(1400)
	for b.Loop() {
		c.Row(row, 0, 300, 1)
	}
}

func BenchmarkResinTile(b *testing.B) {
	loops := river(80)
	g := grid{cell: 1, w: 256 + 2*border, h: 256 + 2*border}
	f := fill(design.Colour{R: 31, G: 122, B: 114}, 0.35)
	for b.Loop() {
		g.resin(loops, 12, f, rgb{0.4, 0.4, 0.4})
	}
}
