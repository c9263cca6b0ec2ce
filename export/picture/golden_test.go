package picture

import (
	"flag"
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"example.org/castwright/model/design"
)

var write = flag.Bool("write", false, "write the golden pictures anew; look at each one afterwards")

// Pictures that a person has looked at. Fused multiply-adds of other processors
// may move a value by a few steps and, rarely, a pixel on an edge by more.
func TestGolden(t *testing.T) {
	for _, c := range []struct {
		name string
		d    design.Design
		v    View
	}{
		{"poured-quarter", poured(), View{Kind: Quarter}},
		{"corner-top", demo(t, 0, 0), View{Kind: Top}},
		{"glassy-close", glassy(), View{Kind: Close}},
		{"rough-edge", edges()[6], View{Kind: Close, At: edgeSpot, Span: 200, Turn: -35, Rise: 22}},
		{"island-orbit", island(), View{Kind: Orbit, Turn: 30, Rise: 40}},
		{"terrazzo-quarter", terrazzo(), View{Kind: Quarter}},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := shotOf(t, built(c.d, SetOptions{Draft: true}), c.v, Quick, 192, 108, 2)
			path := filepath.Join("testdata", c.name+".png")
			if *write {
				f, err := os.Create(path)
				if err != nil {
					t.Fatal(err)
				}
				if err := png.Encode(f, got); err != nil {
					t.Fatal(err)
				}
				if err := f.Close(); err != nil {
					t.Fatal(err)
				}
				return
			}
			f, err := os.Open(path)
			if err != nil {
				t.Fatal(err)
			}
			defer f.Close()
			img, err := png.Decode(f)
			if err != nil {
				t.Fatal(err)
			}
			off := 0
			for y := range 108 {
				for x := range 192 {
					r, g, b, _ := img.At(x, y).RGBA()
					k := got.NRGBAAt(x, y)
					for _, d := range [3]int{int(r>>8) - int(k.R), int(g>>8) - int(k.G), int(b>>8) - int(k.B)} {
						if d > 4 || d < -4 {
							off++
							break
						}
					}
				}
			}
			if off > 192*108/500 {
				t.Errorf("%d pixels differ by more than 4 of 255 from %s; look at both", off, path)
			}
		})
	}
}
