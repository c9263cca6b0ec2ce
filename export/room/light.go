package room

import (
	"image"
	"math"
	"slices"

	"example.org/castwright/model/geom"
	"example.org/castwright/model/pose"
)

// light is how a room is lit, in terms of the light under which a matt face has
// the brightness of its own colour.
type light struct {
	gain [3]float64 // by channel of linear light
	// slope is by how much the logarithm of the light grows for each millimetre to
	// the right and toward the back, about middle.
	slope, middle geom.Vec
	// turn is the direction that most light comes from, degrees to the right of
	// straight in front; sure says that the photograph tells it.
	turn float64
	sure bool
	// grain is the photograph's noise, the standard deviation in 8-bit steps.
	grain float64
}

// What is taken of things of unknown colour. A light wall or cupboard stands in
// most rooms and reflects about three quarters of the light, a room as a whole
// about 30 % (common practice of lighting design, no source for a single room).
// White office paper reflects about 85 % (common practice, no source).
const (
	brightReflects = 0.72
	roomReflects   = 0.30
	paperReflects  = 0.85
)

// The bounds of what is believed of a photograph, and by how much the colour of
// its light is followed: cameras have balanced most of it already.
const (
	leastGain   = 0.05
	mostGain    = 1.7
	followed    = 0.8
	mostCast    = 0.55 // of the logarithm, a channel against green
	mostSlope   = 0.7  // of the logarithm, across the marked rectangle, either way
	steepSlope  = 0.12 // from which on light has a side
	shadesPower = 6    // Minkowski norm of Finlayson and Trezzi, Shades of gray and colour constancy, 2004
)

// sample is a place of the photograph in linear light.
type sample struct {
	at geom.Vec // on the rectangle's plane, mm
	c  [3]float64
}

func (s sample) luma() float64 { return luma(s.c) }

// luma is the luminance of linear sRGB (IEC 61966-2-1, Rec. 709 primaries).
func luma(c [3]float64) float64 { return 0.2126*c[0] + 0.7152*c[1] + 0.0722*c[2] }

// clipped reports whether a place says nothing, for it is burnt out or black.
func (s sample) clipped() bool { return max(s.c[0], s.c[1], s.c[2]) > 0.97 || s.luma() < 0.002 }

// judge finds out how the room is lit.
func judge(photo *image.RGBA, o Order, cam pose.Camera) light {
	inside := samples(photo, cam, o.W, o.D, 0.06, 0.94, false)
	around := samples(photo, cam, o.W, o.D, -0.6, 1.6, true)
	out := light{gain: [3]float64{1, 1, 1}, grain: grain(photo, o.Corners), middle: geom.Vec{X: o.W / 2, Y: -o.D / 2}}
	if o.Paper {
		if c, ok := paper(inside); ok {
			for i := range 3 {
				out.gain[i] = clamp(c[i]/paperReflects, leastGain, mostGain)
			}
		}
	} else {
		all := append(slices.Clone(around), inside...)
		level, cast := level(all, photo), cast(all)
		for i := range 3 {
			out.gain[i] = level * cast[i]
		}
		out.slope = slope(inside, o.W, o.D)
		g := geom.Vec{X: out.slope.X * o.W, Y: out.slope.Y * o.D}
		if g.Norm() > steepSlope {
			out.turn, out.sure = math.Atan2(g.X, -g.Y)*180/math.Pi, true
		}
	}
	return out
}

// samples takes means over a lattice of places of the rectangle's plane, from the
// share lo to hi of its width and depth; ring leaves out the rectangle itself.
func samples(photo *image.RGBA, cam pose.Camera, w, d, lo, hi float64, ring bool) []sample {
	const n = 36
	var out []sample
	for j := range n {
		for i := range n {
			u, v := lo+(hi-lo)*(float64(i)+0.5)/n, lo+(hi-lo)*(float64(j)+0.5)/n
			if ring && u > -0.02 && u < 1.02 && v > -0.02 && v < 1.02 {
				continue
			}
			at := geom.Vec{X: u * w, Y: -v * d}
			p, ok := cam.Project([3]float64{at.X, at.Y, 0})
			if !ok || p.X < 2 || p.Y < 2 || p.X > float64(photo.Rect.Dx()-3) || p.Y > float64(photo.Rect.Dy()-3) {
				continue
			}
			if s := (sample{at, mean(photo, int(p.X), int(p.Y), 1)}); !s.clipped() {
				out = append(out, s)
			}
		}
	}
	return out
}

// mean is the mean of the pixels about (x, y), in linear light.
func mean(photo *image.RGBA, x, y, r int) (c [3]float64) {
	n := 0.0
	for py := max(0, y-r); py <= min(photo.Rect.Dy()-1, y+r); py++ {
		for px := max(0, x-r); px <= min(photo.Rect.Dx()-1, x+r); px++ {
			p := photo.Pix[photo.PixOffset(px, py):]
			for i := range 3 {
				c[i] += linear[p[i]]
			}
			n++
		}
	}
	for i := range c {
		c[i] /= n
	}
	return c
}

// paper is the colour of a sheet: the mean about the median of its brighter half,
// so that print and shadows on it do not count.
func paper(inside []sample) ([3]float64, bool) {
	if len(inside) < 20 {
		return [3]float64{}, false
	}
	slices.SortFunc(inside, byLuma)
	from, to := len(inside)*6/10, len(inside)*9/10
	return meanOf(inside[from:to]), true
}

func byLuma(a, b sample) int {
	switch x, y := a.luma(), b.luma(); {
	case x < y:
		return -1
	case x > y:
		return 1
	}
	return 0
}

func meanOf(list []sample) (c [3]float64) {
	for _, s := range list {
		for i := range 3 {
			c[i] += s.c[i] / float64(len(list))
		}
	}
	return c
}

// level is how bright the light is: between what its bright places and what its
// mean say, near the top rather than far from it.
func level(near []sample, photo *image.RGBA) float64 {
	say := func(list []sample) float64 {
		if len(list) < 20 {
			return 0
		}
		slices.SortFunc(list, byLuma)
		bright := list[len(list)*88/100].luma() / brightReflects
		sum := 0.0
		for _, s := range list {
			sum += s.luma()
		}
		return math.Sqrt(bright * sum / float64(len(list)) / roomReflects)
	}
	a, b := say(near), say(spread(photo))
	switch {
	case a == 0 && b == 0:
		return 1
	case a == 0:
		a = b
	case b == 0:
		b = a
	}
	return clamp(math.Pow(a, 0.7)*math.Pow(b, 0.3), leastGain, mostGain)
}

// spread is places all over the photograph.
func spread(photo *image.RGBA) []sample {
	const n = 40
	var out []sample
	for j := range n {
		for i := range n {
			s := sample{c: mean(photo, (2*i+1)*photo.Rect.Dx()/(2*n), (2*j+1)*photo.Rect.Dy()/(2*n), 1)}
			if !s.clipped() {
				out = append(out, s)
			}
		}
	}
	return out
}

// cast is the colour of the light with a mean of 1: the Minkowski norm of each
// channel, which lies between the mean (gray world) and the brightest place.
func cast(list []sample) [3]float64 {
	if len(list) < 20 {
		return [3]float64{1, 1, 1}
	}
	var sum [3]float64
	for _, s := range list {
		for i := range 3 {
			sum[i] += math.Pow(s.c[i], shadesPower)
		}
	}
	var out [3]float64
	for i := range 3 {
		out[i] = math.Log(sum[i]) / shadesPower
	}
	green := out[1]
	for i := range 3 {
		out[i] = math.Exp(followed * clamp(out[i]-green, -mostCast, mostCast))
	}
	y := luma(out)
	for i := range 3 {
		out[i] /= y
	}
	return out
}

// slope is how the light changes over the present top: a plane through the
// logarithm of its brightness by least squares that is repeated with less weight
// to places that lie far off (Huber's weights), believed by the share of the
// variation that it explains.
func slope(list []sample, w, d float64) geom.Vec {
	if len(list) < 60 {
		return geom.Vec{}
	}
	weight := make([]float64, len(list))
	for i := range weight {
		weight[i] = 1
	}
	var a, b, c float64
	for range 8 {
		var n [3][4]float64 // normal equations of a + b x + c y
		for i, s := range list {
			row := [4]float64{1, s.at.X/w - 0.5, s.at.Y/d + 0.5, math.Log(s.luma())}
			for r := range 3 {
				for k := range 4 {
					n[r][k] += weight[i] * row[r] * row[k]
				}
			}
		}
		var ok bool
		if a, b, c, ok = solved(n); !ok {
			return geom.Vec{}
		}
		far := make([]float64, len(list))
		for i, s := range list {
			far[i] = math.Abs(math.Log(s.luma()) - a - b*(s.at.X/w-0.5) - c*(s.at.Y/d+0.5))
		}
		limit := 1.5*median(far) + 1e-3
		for i := range weight {
			weight[i] = min(1, limit/max(far[i], 1e-9))
		}
	}
	// What is left over against what there was, without the places far off.
	var left, was, sum, n float64
	for i, s := range list {
		if weight[i] > 0.4 {
			sum += math.Log(s.luma())
			n++
		}
	}
	for i, s := range list {
		if weight[i] > 0.4 {
			y := math.Log(s.luma())
			e := y - a - b*(s.at.X/w-0.5) - c*(s.at.Y/d+0.5)
			left += e * e
			was += (y - sum/n) * (y - sum/n)
		}
	}
	if !(was > 0) {
		return geom.Vec{}
	}
	k := clamp(1-left/was, 0, 1)
	return geom.Vec{X: clamp(k*b, -mostSlope, mostSlope) / w, Y: clamp(k*c, -mostSlope, mostSlope) / d}
}

func median(list []float64) float64 {
	s := slices.Clone(list)
	slices.Sort(s)
	return s[len(s)/2]
}

// solved solves three equations by Cramer's rule.
func solved(n [3][4]float64) (a, b, c float64, ok bool) {
	det := func(i, j, k int) float64 {
		return n[0][i]*(n[1][j]*n[2][k]-n[1][k]*n[2][j]) - n[0][j]*(n[1][i]*n[2][k]-n[1][k]*n[2][i]) +
			n[0][k]*(n[1][i]*n[2][j]-n[1][j]*n[2][i])
	}
	d := det(0, 1, 2)
	return det(3, 1, 2) / d, det(0, 3, 2) / d, det(0, 1, 3) / d, math.Abs(d) > 1e-12
}

// grain is the noise of the photograph about the marks, from what a second
// difference leaves of it (J. Immerkær, Fast noise variance estimation, 1996), the
// median over blocks so that edges do not count.
func grain(photo *image.RGBA, c pose.Corners) float64 {
	box := geom.EmptyBox()
	for _, p := range c {
		box = box.Include(p)
	}
	const side, blocks = 12, 14
	var list []float64
	for j := range blocks {
		for i := range blocks {
			x0 := int(box.Min.X + box.W()*float64(i)/blocks)
			y0 := int(box.Min.Y + box.H()*float64(j)/blocks)
			if x0 < 1 || y0 < 1 || x0+side >= photo.Rect.Dx()-1 || y0+side >= photo.Rect.Dy()-1 {
				continue
			}
			sum := 0.0
			for y := y0; y < y0+side; y++ {
				for x := x0; x < x0+side; x++ {
					at := func(dx, dy int) float64 { return float64(photo.Pix[photo.PixOffset(x+dx, y+dy)+1]) }
					sum += math.Abs(at(-1, -1) + at(1, -1) + at(-1, 1) + at(1, 1) - 2*(at(0, -1)+at(0, 1)+at(-1, 0)+at(1, 0)) + 4*at(0, 0))
				}
			}
			list = append(list, math.Sqrt(math.Pi/2)*sum/(6*side*side))
		}
	}
	if len(list) == 0 {
		return 0
	}
	slices.Sort(list)
	return min(12, list[len(list)/3])
}

func clamp(x, lo, hi float64) float64 {
	if !(x >= lo) { // NaN as well
		return lo
	}
	return min(x, hi)
}

// linear is an 8-bit step of sRGB in linear light (IEC 61966-2-1).
var linear = func() (t [256]float64) {
	for i := range t {
		x := float64(i) / 255
		if x <= 0.04045 {
			t[i] = x / 12.92
		} else {
			t[i] = math.Pow((x+0.055)/1.055, 2.4)
		}
	}
	return t
}()

// encoded is linear light in 8-bit steps of sRGB.
func encoded(x float64) float64 {
	switch {
	case !(x > 0):
		return 0
	case x >= 1:
		return 255
	case x <= 0.0031308:
		return 255 * 12.92 * x
	}
	return 255 * (1.055*math.Pow(x, 1/2.4) - 0.055)
}
