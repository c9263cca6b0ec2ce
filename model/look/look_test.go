package look

import (
	"bytes"
	"math"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/scene"
	"example.org/castwright/model/units"
)

// TestTransfer holds the tables to the transfer functions of sRGB (IEC 61966-2-1;
// decode as quoted in ITU and W3C texts, encode from memory) at a few points, and
// to each other at all.
func TestTransfer(t *testing.T) {
	for _, c := range []struct {
		code   uint8
		linear float64 // to 5 digits
	}{{0, 0}, {1, 0.00030353}, {10, 0.0030353}, {11, 0.0033465}, {128, 0.21586}, {188, 0.50289}, {255, 1}} {
		if got := float64(linear[c.code]); math.Abs(got-c.linear) > 1e-5*math.Max(c.linear, 0.1) {
			t.Errorf("code %d is %.7f in linear light, want %.7f", c.code, got, c.linear)
		}
	}
	for i := range 256 {
		if got := encode(linear[i]); near(got, uint8(i)) > 1 {
			t.Errorf("code %d comes back as %d", i, got)
		}
	}
	if encode(-1) != 0 || encode(2) != 255 || encode(float32(math.NaN())) != 0 {
		t.Error("what is no light from 0 to 1 is not cut off")
	}
}

func near(a, b uint8) int { return max(int(a)-int(b), int(b)-int(a)) }

func finishes() []design.Finish {
	var out []design.Finish
	for e := design.ExposureCream; e <= design.ExposureCoarse; e++ {
		for i, c := range []design.Colour{{R: 168, G: 165, B: 158}, {R: 60, G: 62, B: 66}, {R: 235, G: 228, B: 214}} {
			out = append(out, design.Finish{Colour: c, Exposure: e, Polish: 1 + i})
		}
	}
	return out
}

// sampled collects the luma of a finish over an area, for pixels step wide.
func sampled(r scene.Rows, x0, y0, size, step float64) (mean, deviation float64, first scene.Colour) {
	n := int(size / step)
	row := make([]uint8, 4*n)
	var sum, square float64
	for j := range n {
		r.Row(row, x0, y0+float64(j)*step, step)
		for i := 0; i < len(row); i += 4 {
			l := float64(rgb{linear[row[i]], linear[row[i+1]], linear[row[i+2]]}.luma())
			sum += l
			square += l * l
		}
	}
	mean = sum / float64(n*n)
	return mean, math.Sqrt(math.Max(0, square/float64(n*n)-mean*mean)), first
}

// TestConcreteColour holds the mean of cream to its colour, and the other
// exposures, whose stones are of other colours, near it.
func TestConcreteColour(t *testing.T) {
	for _, f := range finishes() {
		f.Polish = 1
		want := float64(fromDesign(f.Colour).luma())
		mean, _, _ := sampled(NewConcrete(f, geom.EmptyBox()), 0, 0, 1600, 4)
		low, high := 0.95*want, 1.05*want
		if f.Exposure != design.ExposureCream { // somewhere between cement and stones
			low, high = min(want, 0.17), max(want, 0.28)
		}
		if mean < low || mean > high {
			t.Errorf("%+v: mean luminance %.4f, want %.4f", f, mean, want)
		}
	}
}

// TestConcreteCalm holds that a texture seen from far is calm: speckles of a few
// millimetres are gone where a pixel is larger than they are.
func TestConcreteCalm(t *testing.T) {
	for e := design.ExposureCream; e <= design.ExposureCoarse; e++ {
		c := NewConcrete(design.Finish{Colour: design.Colour{R: 168, G: 165, B: 158}, Exposure: e}, geom.EmptyBox())
		_, close, _ := sampled(c, 0, 0, 200, 0.5)
		_, far, _ := sampled(c, 0, 0, 6000, 40)
		if e == design.ExposureCream {
			if far > 0.03 {
				t.Errorf("cream varies by %.4f from far", far)
			}
			continue
		}
		if far > 0.45*close {
			t.Errorf("exposure %d varies by %.4f from far, %.4f close by", e, far, close)
		}
	}
}

// TestTileSeam holds that the tile goes on over its own rim: texels on both sides
// differ no more than neighbours do elsewhere.
func TestTileSeam(t *testing.T) {
	for e := design.ExposureCream; e <= design.ExposureCoarse; e++ {
		p := bakeConcrete(fromDesign(design.Colour{R: 168, G: 165, B: 158}), e)
		l := p.levels[0]
		step := func(ax, ay, bx, by int) float64 {
			a, b := l.pix[ay*l.w+ax], l.pix[by*l.w+bx]
			return math.Abs(float64(a&0xff) - float64(b&0xff))
		}
		var seam, inner float64
		for i := range l.w {
			seam += step(l.w-1, i, 0, i) + step(i, l.h-1, i, 0)
			inner += step(500, i, 501, i) + step(i, 300, i, 301)
		}
		if seam > 1.35*inner {
			t.Errorf("exposure %d: the seam differs by %.0f, neighbours elsewhere by %.0f", e, seam, inner)
		}
	}
}

// TestBakeTwice holds that a bake is the same whenever it is made.
func TestBakeTwice(t *testing.T) {
	for e := design.ExposureCream; e <= design.ExposureCoarse; e++ {
		base := fromDesign(design.Colour{R: 120, G: 130, B: 140})
		a, b := bakeConcrete(base, e), bakeConcrete(base, e)
		for k := range a.levels {
			for i, p := range a.levels[k].pix {
				if p != b.levels[k].pix[i] {
					t.Fatalf("exposure %d, level %d, texel %d: %08x and %08x", e, k, i, p, b.levels[k].pix[i])
				}
			}
		}
	}
}

// river is a plain band along x.
func river(width float64) []geom.Loop {
	return []geom.Loop{{{X: 0, Y: 0}, {X: 400, Y: 0}, {X: 400, Y: width}, {X: 0, Y: width}}}
}

func fill(c design.Colour, opacity float64) design.Fill {
	return design.Fill{Resin: true, Colour: c, Opacity: units.FromFraction(opacity)}
}

// all is one of each kind of texture.
func all() map[string]scene.Rows {
	loops := river(80)
	teal := design.Colour{R: 31, G: 122, B: 114}
	rim := Rim{Points: []geom.Vec{{X: 0, Y: 0}, {X: 300, Y: 0}, {X: 300, Y: 200}}, Profile: design.Profile{Kind: design.ProfileHalfRound, Size: units.FromMM(20)}}
	rough := rim
	rough.Profile = design.Profile{Kind: design.ProfileRough, Size: units.FromMM(12)}
	glassy := fill(teal, 0.3)
	glassy.Glass = &design.GlassFill{Grain: units.FromMM(5), Share: 20 * units.Percent, Colour: design.Colour{R: 200, G: 230, B: 220}}
	return map[string]scene.Rows{
		"concrete": NewConcrete(design.Finish{Colour: teal, Exposure: design.ExposureCoarse, Polish: 4}, geom.Box{Max: geom.Vec{X: 900, Y: 500}}),
		"resin":    Resin(loops, 12, glassy, teal, 1),
		"glass":    GlassBed(loops, 6, 0.4, teal, 2),
		"shadow":   Shadow(loops, 10, 14, 0.4),
		"hollow":   Hollow(loops, 20, 0.5),
		"bowl":     Bowl(loops, 120, scene.Colour{R: 240, G: 240, B: 240, A: 255}),
		"relief":   Relief([]Rim{rim, rough}, 40, 3, 1),
		"scaled":   Scaled{Of: GlassBed(loops, 6, 0.4, teal, 2), Origin: geom.Vec{X: 30, Y: 40}, Factor: 2.5},
	}
}

// TestRowsAgree holds that a row gives the colours of its single places, that
// opaque textures are opaque and the others premultiplied.
func TestRowsAgree(t *testing.T) {
	for name, r := range all() {
		for _, step := range []float64{0.2, 1, 1.37, 6} {
			row := make([]uint8, 4*300)
			r.Row(row, -40, 31, step)
			for i := range 300 {
				got := row[4*i : 4*i+4]
				if x := -40 + float64(i)*step; r.Opaque() && got[3] != 0xff && x > 0 && x < 400 {
					t.Fatalf("%s: alpha %d in an opaque texture at %g", name, got[3], x)
				}
				if max(got[0], got[1], got[2]) > got[3] {
					t.Fatalf("%s: %v is not multiplied by its alpha", name, got)
				}
				want := r.At(-40+float64(i)*step, 31, step)
				// The position is kept in 1/65536 texels; alpha is divided out.
				a := uint32(got[3])
				if near(got[3], want.A) > 3 {
					t.Fatalf("%s, step %g, pixel %d: alpha %d, alone %d", name, step, i, got[3], want.A)
				}
				if back := uint8((uint32(want.R)*a + 127) / 255); near(got[0], back) > 6 {
					t.Fatalf("%s, step %g, pixel %d: red %d, alone %d", name, step, i, got[0], back)
				}
			}
		}
	}
}

// TestHostilePlaces asks textures for places that are none.
func TestHostilePlaces(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	row := make([]uint8, 4*50)
	for name, r := range all() {
		for _, x := range []float64{nan, inf, -inf, 1e300, -1e12, 0} {
			for _, step := range []float64{nan, inf, 0, -1, 1e-300, 1e300, 1} {
				r.Row(row, x, x, step)
				r.Row(row, 0, x, step)
				r.Row(row[:0], x, 0, step)
				_ = r.At(x, 0, step)
			}
		}
		if t.Failed() {
			t.Log(name)
		}
	}
}

// TestHostileShapes bakes what is no shape.
func TestHostileShapes(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	grey := design.Colour{R: 128, G: 128, B: 128}
	for _, loops := range [][]geom.Loop{
		nil, {nil}, {{{X: 1, Y: 1}}}, {{{X: nan, Y: 0}, {X: 1, Y: inf}, {X: 5, Y: 5}}},
		{{{X: -1e9, Y: -1e9}, {X: 1e9, Y: -1e9}, {X: 1e9, Y: 1e9}}},
		{{{X: 0, Y: 0}, {X: 5000, Y: 0}, {X: 5000, Y: 5000}}},
		{{{X: 0, Y: 0}, {X: 0, Y: 0}, {X: 0, Y: 0}, {X: 0, Y: 0}}},
	} {
		for _, size := range []float64{-5, nan, 1e9, 12} {
			row := make([]uint8, 40)
			for _, r := range []scene.Rows{
				Resin(loops, size, fill(grey, 0.5), grey, 1), GlassBed(loops, size, size, grey, 1),
				Relief([]Rim{{Points: loop0(loops), Profile: design.Profile{Kind: design.ProfileRounded, Size: units.FromMM(size)}, Closed: true}}, size, 3, 1),
				Shadow(loops, clampTo(size), clampTo(size), 0.5), Hollow(loops, size, 0.5),
				Bowl(loops, size, scene.Colour{R: 9, A: 255}),
			} {
				r.Row(row, 1, 1, 1)
			}
		}
	}
}

func loop0(loops []geom.Loop) []geom.Vec {
	if len(loops) == 0 {
		return nil
	}
	return loops[0]
}

func clampTo(x float64) float64 {
	if !(x > 0) {
		return 0
	}
	return min(x, 500)
}

// TestGlassCoverage holds pieces to the share of the area that was asked for.
func TestGlassCoverage(t *testing.T) {
	loops := []geom.Loop{{{X: 0, Y: 0}, {X: 300, Y: 0}, {X: 300, Y: 300}, {X: 0, Y: 300}}}
	for _, share := range []float64{0.1, 0.25, 0.4, 0.5, 0.6, 0.75} {
		for _, grain := range []float64{4.0, 9} {
			g, _ := gridOver(bounds(loops), 0.25)
			s := g.sheet()
			chips(loops, g.box(), grain, share, 71, func(c chip) { s.lay(c.pts, rgb{1, 1, 1}, 1) })
			sum, n := 0.0, 0
			for y := 20.0; y < 280; y++ {
				for x := 20.0; x < 280; x++ {
					in, _ := g.sloped(s.a, x, y)
					sum += float64(in)
					n++
				}
			}
			if got := sum / float64(n); math.Abs(got-share) > 0.035 {
				t.Errorf("pieces of %g mm at %.0f %% cover %.1f %%", grain, 100*share, 100*got)
			}
		}
	}
}

// TestSpeckleCoverage holds small pieces, drawn as specks, to the same shares.
func TestSpeckleCoverage(t *testing.T) {
	g := grid{origin: geom.Vec{X: -77, Y: 31}, cell: 1, w: 300, h: 300}
	for _, share := range []float64{0.05, 0.2, 0.4, 0.6} {
		for _, grain := range []float64{1, 2, 2.9} {
			sum := 0.0
			for j := range g.h {
				for i := range g.w {
					_, cover := g.speckle(i, j, grain, share, rgb{1, 1, 1})
					sum += float64(cover)
				}
			}
			// A piece no larger than a texel is not round.
			if got := sum / float64(g.w*g.h); math.Abs(got-share) > 0.09 {
				t.Errorf("pieces of %g mm at %.0f %% cover %.1f %%", grain, 100*share, 100*got)
			}
		}
	}
}

// TestResinDepth holds that clear resin takes more light the deeper it is, as
// Beer's law has it: twice the way, the square of the share.
func TestResinDepth(t *testing.T) {
	c := design.Colour{R: 150, G: 205, B: 215}
	white := design.Colour{R: 255, G: 255, B: 255}
	last := math.Inf(1)
	for _, depth := range []float64{2, 4, 8, 16, 32} {
		k := newCast(depth, fill(c, 0), fromDesign(white))
		got := float64(k.at(0, 0, 60, 40, geom.Vec{}, rgb{}, 0, 1).r)
		if got >= last {
			t.Errorf("%g mm deep: red %.4f, not less than %.4f", depth, got, last)
		}
		last = got
	}
	k := newCast(10, fill(c, 0), rgb{})
	one, two := k.through(reference), k.through(2*reference)
	if math.Abs(float64(one.r-linear[150])) > 1e-4 || math.Abs(float64(two.r-one.r*one.r)) > 1e-4 {
		t.Errorf("%g mm let %.5f through and twice the way %.5f; want %.5f and its square", float64(reference), one.r, two.r, linear[150])
	}
}

// TestReliefLight holds that a rounded edge is dark where it looks away from the
// light and lighter where it looks toward it.
func TestReliefLight(t *testing.T) {
	p := design.Profile{Kind: design.ProfileRounded, Size: units.FromMM(20)}
	rect := []geom.Vec{{X: 0, Y: 0}, {X: 400, Y: 0}, {X: 400, Y: 300}, {X: 0, Y: 300}}
	r := Relief([]Rim{{Points: rect, Profile: p, Closed: true}}, 40, 1, 1)
	front, back := r.At(200, 2, 1), r.At(200, 298, 1)
	right, left := r.At(398, 150, 1), r.At(2, 150, 1)
	if !(front.A > back.A && front.R < 128) {
		t.Errorf("front %v, back %v", front, back)
	}
	if !(right.A > left.A && right.R < 128) {
		t.Errorf("right %v, left %v", right, left)
	}
	if in := r.At(200, 150, 1); in.A != 0 {
		t.Errorf("the face itself is shaded: %v", in)
	}
}

// TestBrokenKeepsEnds holds that a broken line starts and ends where the edge
// does and never strays further than its liner is thick.
func TestBrokenKeepsEnds(t *testing.T) {
	line := []geom.Vec{{X: 10, Y: 5}, {X: 300, Y: 5}, {X: 300, Y: 200}}
	got := Broken(line, 12, 3)
	if got[0] != line[0] || got[len(got)-1] != line[2] {
		t.Errorf("ends %v and %v", got[0], got[len(got)-1])
	}
	if len(got) < 50 {
		t.Errorf("only %d points", len(got))
	}
	for _, p := range got {
		d := math.Min(math.Abs(p.Y-5), math.Abs(p.X-300))
		if d > 12 {
			t.Errorf("%v strays %.1f mm", p, d)
		}
	}
}

// TestCacheBounded holds that bakes do not pile up, that the one used last stays,
// and that one that is still there is not baked again.
func TestCacheBounded(t *testing.T) {
	c := newCache()
	baked := 0
	get := func(i int) {
		c.get(newKey("test").number(float64(i)), func() *Patch {
			baked++
			l := level{w: 1024, h: 1024, pix: make([]uint32, 1<<20)}
			return newPatchOf(1, geom.Vec{}, 1, l, false, true)
		})
	}
	for i := range 40 {
		get(0)
		get(i)
	}
	if baked != 40 {
		t.Errorf("%d bakes for 40 keys", baked)
	}
	sum := 0
	for e := c.order.Front(); e != nil; e = e.Next() {
		sum += e.Value.(kept).bytes
	}
	if c.bytes > maxBytes || sum != c.bytes || len(c.met) != c.order.Len() {
		t.Errorf("%d bytes counted, %d there, at most %d; %d keys, %d bakes", c.bytes, sum, maxBytes, len(c.met), c.order.Len())
	}
	get(1) // long gone
	if baked != 41 {
		t.Errorf("%d bakes, want one more", baked)
	}
}

// TestDistance holds the grid's distances to those from a circle.
func TestDistance(t *testing.T) {
	var l geom.Loop
	for i := range 400 {
		s, c := math.Sincos(2 * math.Pi * float64(i) / 400)
		l = append(l, geom.Vec{X: 50 * c, Y: 50 * s})
	}
	g, _ := gridOver(bounds([]geom.Loop{l}).Grow(5), 1)
	d := g.distance([]geom.Loop{l}, 20)
	for j := range g.h {
		for i := range g.w {
			want := math.Max(-20, math.Min(20, 50-math.Hypot(g.x(i), g.y(j))))
			if got := float64(d[j*g.w+i]); math.Abs(got-want) > 0.12 {
				t.Fatalf("(%g, %g): %.3f mm, want %.3f", g.x(i), g.y(j), got, want)
			}
		}
	}
}

// TestName names colours in plain words.
func TestName(t *testing.T) {
	for _, c := range []struct {
		c    design.Colour
		want string
	}{
		{design.Colour{R: 255, G: 255, B: 255}, "white"}, {design.Colour{}, "black"},
		{design.Colour{R: 128, G: 128, B: 128}, "grey"}, {design.Colour{R: 60, G: 60, B: 62}, "dark grey"},
		{design.Colour{R: 28, G: 66, B: 140}, "blue"}, {design.Colour{R: 31, G: 122, B: 114}, "blue-green"},
		{design.Colour{R: 196, G: 120, B: 32}, "amber"}, {design.Colour{R: 190, G: 230, B: 200}, "pale green"},
	} {
		if got := Name(c.c); got != c.want {
			t.Errorf("%v is %q, want %q", c.c, got, c.want)
		}
	}
	for r := 0; r < 256; r += 15 {
		for g := 0; g < 256; g += 15 {
			for b := 0; b < 256; b += 15 {
				if Name(design.Colour{R: uint8(r), G: uint8(g), B: uint8(b)}) == "" {
					t.Fatalf("%d %d %d has no name", r, g, b)
				}
			}
		}
	}
}

// TestPatchSparse holds that skipping empty blocks changes nothing.
func TestPatchSparse(t *testing.T) {
	g, _ := gridOver(geom.Box{Max: geom.Vec{X: 300, Y: 40}}, 1)
	l := level{w: g.w, h: g.h, pix: make([]uint32, g.w*g.h)}
	for i := range l.pix {
		if x := i % l.w; x > 70 && x < 75 || x == 160 || x == l.w-1 {
			l.pix[i] = 0xff8040ff
		}
	}
	sparse := newPatch(g.origin, g.cell, l, false, false)
	full := newPatch(g.origin, g.cell, l, false, false)
	for i := range full.levels {
		full.levels[i].used = nil
	}
	a, b := make([]uint8, 4*700), make([]uint8, 4*700)
	for _, step := range []float64{0.31, 0.5, 1, 1.9, 7} {
		for _, x := range []float64{-20, 0, 3.3, 64.1} {
			sparse.Row(a, x, 12.4, step)
			full.Row(b, x, 12.4, step)
			if !bytes.Equal(a, b) {
				t.Fatalf("step %g from %g: skipping changes the row", step, x)
			}
		}
	}
}
