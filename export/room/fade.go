package room

import (
	"math"

	"example.org/castwright/export/picture"
)

// The top's shadow is taken on a wall, a cabinet and a floor of our own, which
// stand where those of the room do near the top, but not far from it. And of the
// shadow further off the photograph has one already, that of the present top. So
// the shadow fades with the distance from the top.
const (
	shadowFull = 25.0  // mm from the top to which it is kept
	shadowEnds = 150.0 // mm from which on there is none
	fadeCell   = 4     // pixels of the grid that distances are found on
)

// faded makes the shade of a matte fade away from its top; mm is how many of them
// a pixel is wide there.
func faded(m *picture.Matte, mm float64) {
	b := m.Top.Rect
	gw, gh := (b.Dx()+fadeCell-1)/fadeCell, (b.Dy()+fadeCell-1)/fadeCell
	if gw < 1 || gh < 1 {
		return
	}
	far := make([]float32, gw*gh)
	for i := range far {
		far[i] = math.MaxFloat32
	}
	for y := range b.Dy() {
		for x := range b.Dx() {
			if m.Top.Pix[m.Top.PixOffset(x, y)+3] >= 128 {
				far[y/fadeCell*gw+x/fadeCell] = 0
			}
		}
	}
	chamfer(far, gw, gh)
	at := func(x, y int) float64 {
		return float64(far[min(gh-1, max(0, y))*gw+min(gw-1, max(0, x))])
	}
	for y := range b.Dy() {
		for x := range b.Dx() {
			p := &m.Shade.Pix[m.Shade.PixOffset(x, y)]
			if *p == 255 {
				continue
			}
			fx, fy := (float64(x)+0.5)/fadeCell-0.5, (float64(y)+0.5)/fadeCell-0.5
			ix, iy := int(math.Floor(fx)), int(math.Floor(fy))
			u, v := fx-float64(ix), fy-float64(iy)
			d := (at(ix, iy)*(1-u)+at(ix+1, iy)*u)*(1-v) + (at(ix, iy+1)*(1-u)+at(ix+1, iy+1)*u)*v
			k := clamp((shadowEnds-d*fadeCell*mm)/(shadowEnds-shadowFull), 0, 1)
			k = k * k * (3 - 2*k)
			*p = 255 - uint8(k*float64(255-*p)+0.5)
		}
	}
}

// chamfer makes distances in cells of what is 0 already (G. Borgefors, Distance
// transformations in digital images, 1986: steps of 1 and 4/3, within 8 %).
func chamfer(d []float32, w, h int) {
	take := func(i, j int, step float32) {
		if v := d[j] + step; v < d[i] {
			d[i] = v
		}
	}
	const side, slant = 1, 4.0 / 3
	for y := range h {
		for x := range w {
			i := y*w + x
			if x > 0 {
				take(i, i-1, side)
			}
			if y > 0 {
				take(i, i-w, side)
				if x > 0 {
					take(i, i-w-1, slant)
				}
				if x < w-1 {
					take(i, i-w+1, slant)
				}
			}
		}
	}
	for y := h - 1; y >= 0; y-- {
		for x := w - 1; x >= 0; x-- {
			i := y*w + x
			if x < w-1 {
				take(i, i+1, side)
			}
			if y < h-1 {
				take(i, i+w, side)
				if x > 0 {
					take(i, i+w-1, slant)
				}
				if x < w-1 {
					take(i, i+w+1, slant)
				}
			}
		}
	}
}

// perPixel is how many millimetres a pixel is wide in the middle of a box seen
// through a projection.
func perPixel(p [3][4]float64, x, y, z float64) float64 {
	see := func(x, y float64) (u, v float64) {
		w := p[2][0]*x + p[2][1]*y + p[2][2]*z + p[2][3]
		return (p[0][0]*x + p[0][1]*y + p[0][2]*z + p[0][3]) / w, (p[1][0]*x + p[1][1]*y + p[1][2]*z + p[1][3]) / w
	}
	u, v := see(x, y)
	ux, vx := see(x+10, y)
	uy, vy := see(x, y+10)
	mm := 10 / max(math.Hypot(ux-u, vx-v), math.Hypot(uy-u, vy-v))
	return clamp(mm, 1e-3, 1e3)
}
