package room

import (
	"context"
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
	// Away from where it touches the top a shadow is soft, so that it does not end
	// where one of those faces does and the room's does not.
	softFrom   = 6.0  // mm from the top from which on it is softened
	softFull   = 45.0 // mm from which on it is so wholly
	softRadius = 30.0 // mm over which it is
)

// faded makes the shade of a matte fade away from its top; mm is how many of them
// a pixel is wide there. It ends at once when the work is given up.
func faded(ctx context.Context, m *picture.Matte, mm float64) {
	b := m.Top.Rect
	far, gw, gh := distances(m)
	if far == nil || ctx.Err() != nil {
		return
	}
	soft := softened(m, softRadius/mm/fadeCell, gw, gh)
	at := func(x, y int) float64 {
		return float64(far[min(gh-1, max(0, y))*gw+min(gw-1, max(0, x))])
	}
	for y := range b.Dy() {
		if ctx.Err() != nil {
			return
		}
		for x := range b.Dx() {
			p := &m.Shade.Pix[m.Shade.PixOffset(x, y)]
			if *p == 255 && soft(x/fadeCell, y/fadeCell) == 0 {
				continue
			}
			fx, fy := (float64(x)+0.5)/fadeCell-0.5, (float64(y)+0.5)/fadeCell-0.5
			ix, iy := int(math.Floor(fx)), int(math.Floor(fy))
			u, v := fx-float64(ix), fy-float64(iy)
			between := func(at func(x, y int) float64) float64 {
				return (at(ix, iy)*(1-u)+at(ix+1, iy)*u)*(1-v) + (at(ix, iy+1)*(1-u)+at(ix+1, iy+1)*u)*v
			}
			d := between(at) * fadeCell * mm
			dark := 255 - float64(*p)
			if s := smooth((d - softFrom) / (softFull - softFrom)); s > 0 {
				dark += s * (between(soft) - dark)
			}
			*p = 255 - uint8(smooth((shadowEnds-d)/(shadowEnds-shadowFull))*dark+0.5)
		}
	}
}

// distances is how far the cells of the grid lie from a matte's top, in cells; nil
// where there is no grid.
func distances(m *picture.Matte) (far []float32, gw, gh int) {
	b := m.Top.Rect
	gw, gh = (b.Dx()+fadeCell-1)/fadeCell, (b.Dy()+fadeCell-1)/fadeCell
	if gw < 1 || gh < 1 {
		return nil, gw, gh
	}
	far = make([]float32, gw*gh)
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
	return far, gw, gh
}

// smooth is the usual step from 0 to 1.
func smooth(x float64) float64 {
	x = clamp(x, 0, 1)
	return x * x * (3 - 2*x)
}

// softened is how dark a matte's shade is (0 to 255) on the grid, each cell the mean
// of those about it within a radius of cells that the top does not cover. It is
// three box means, which are near a Gaussian one (P. Kovesi, Fast Almost-Gaussian
// Filtering, 2010).
func softened(m *picture.Matte, radius float64, gw, gh int) func(x, y int) float64 {
	dark, seen := make([]float64, gw*gh), make([]float64, gw*gh)
	b := m.Top.Rect
	for y := range b.Dy() {
		for x := range b.Dx() {
			if m.Top.Pix[m.Top.PixOffset(x, y)+3] > 0 {
				continue
			}
			i := y/fadeCell*gw + x/fadeCell
			dark[i] += 255 - float64(m.Shade.Pix[m.Shade.PixOffset(x, y)])
			seen[i]++
		}
	}
	// Three boxes of 2r+1 cells have the deviation of sqrt(r(r+1)).
	r := min(max(1, int(radius/2+0.5)), max(gw, gh))
	for range 3 {
		for _, v := range [][]float64{dark, seen} {
			boxed(v, gw, gh, 1, gw, r)
			boxed(v, gh, gw, gw, 1, r)
		}
	}
	return func(x, y int) float64 {
		i := min(gh-1, max(0, y))*gw + min(gw-1, max(0, x))
		if seen[i] < 1e-6 {
			return 0
		}
		return dark[i] / seen[i]
	}
}

// boxed puts the mean of 2r+1 cells in the place of each, along lines of n cells
// that lie step apart; lines lie next apart.
func boxed(v []float64, n, lines, step, next, r int) {
	old := make([]float64, n)
	for l := range lines {
		for i := range n {
			old[i] = v[l*next+i*step]
		}
		sum := 0.0
		for i := range min(r, n) {
			sum += old[i]
		}
		for i := range n {
			if i+r < n {
				sum += old[i+r]
			}
			if i-r-1 >= 0 {
				sum -= old[i-r-1]
			}
			v[l*next+i*step] = sum / float64(2*r+1)
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
