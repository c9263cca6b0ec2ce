package room

import (
	"image"
	"math"

	"example.org/castwright/export/picture"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/pose"
)

// Where the new top has a rounded edge or corner and the present one has none, a
// sliver of the present one would look out beside it. It is painted over with what
// lies beyond. What sticks out further stays, and the notes say so: nobody knows
// what is behind it.
const (
	sliverFull = 16.0 // mm from the new top up to which the present one is painted over
	sliverEnds = 24.0 // mm from which on it is left
	sliverRim  = 2.0  // pixels about the present top that its edge is smeared over
)

// The states of a pixel while slivers are painted over.
const (
	known  = iota // shows the room
	sliver        // shows the present top and is to be painted over
	taken         // shows it and is not, or lies below the new one
)

// slivers paints over what looks out of the present top beside the new one. old is
// the present top's thickness, mm the width of a pixel there.
func slivers(photo *image.NRGBA, m *picture.Matte, from image.Point, o Order, cam pose.Camera, old, mm, grain float64) {
	hull, ok := silhouette(o, cam, old)
	b := m.Top.Rect
	if !ok || b.Dx() < 3 || b.Dy() < 3 {
		return
	}
	far, gw, gh := distances(m)
	if far == nil {
		return
	}
	w, h := b.Dx(), b.Dy()
	state := make([]uint8, w*h)
	share := make([]float32, w*h) // of the new colour
	for y := range h {
		lo, hi, any := spanned(hull, float64(from.Y+y)+0.5, sliverRim)
		for x := range w {
			i := y*w + x
			alpha := m.Top.Pix[m.Top.PixOffset(x, y)+3]
			px := float64(from.X+x) + 0.5
			within := any && px >= lo-sliverRim && px <= hi+sliverRim
			d := float64(far[min(gh-1, y/fadeCell)*gw+min(gw-1, x/fadeCell)]) * fadeCell * mm
			switch k := 1 - smooth((d-sliverFull)/(sliverEnds-sliverFull)); {
			case within && alpha < 255 && k > 0:
				state[i], share[i] = sliver, float32(k)
			case within || alpha > 0:
				state[i] = taken
			}
		}
	}
	peel(photo, from, state, share, w, h, grain)
}

// peel paints slivers over from their outer rim inward, each pixel with the mean of
// those beside it that show the room or are painted over already.
func peel(photo *image.NRGBA, from image.Point, state []uint8, share []float32, w, h int, grain float64) {
	fresh := make([][3]float32, 0, 1024)
	now, next := make([]int, 0, 1024), make([]int, 0, 1024)
	colour := map[int][3]float32{} // of what is painted over, in linear light
	beside := func(i int, do func(j int)) {
		x, y := i%w, i/w
		for dy := -1; dy <= 1; dy++ {
			for dx := -1; dx <= 1; dx++ {
				if nx, ny := x+dx, y+dy; (dx != 0 || dy != 0) && nx >= 0 && ny >= 0 && nx < w && ny < h {
					do(ny*w + nx)
				}
			}
		}
	}
	at := func(i int) []uint8 { return photo.Pix[photo.PixOffset(from.X+i%w, from.Y+i/w):] }
	queued := make([]bool, w*h)
	for i, s := range state {
		if s == sliver {
			rim := false
			beside(i, func(j int) { rim = rim || state[j] == known })
			if rim {
				now, queued[i] = append(now, i), true
			}
		}
	}
	for len(now) > 0 {
		fresh = fresh[:0]
		for _, i := range now {
			var sum [3]float32
			n := float32(0)
			beside(i, func(j int) {
				c, painted := colour[j]
				switch {
				case painted:
				case state[j] == known:
					p := at(j)
					c = [3]float32{float32(linear[p[0]]), float32(linear[p[1]]), float32(linear[p[2]])}
				default:
					return
				}
				for k := range sum {
					sum[k] += c[k]
				}
				n++
			})
			for k := range sum {
				sum[k] /= max(1, n)
			}
			fresh = append(fresh, sum)
		}
		next = next[:0]
		for k, i := range now {
			colour[i] = fresh[k]
			beside(i, func(j int) {
				if state[j] == sliver && !queued[j] {
					next, queued[j] = append(next, j), true
				}
			})
		}
		now, next = next, now
	}
	for i, c := range colour {
		p := at(i)
		noise := grain * bell(from.X+i%w+7919, from.Y+i/w)
		for k := range 3 {
			v := linear[p[k]]*float64(1-share[i]) + float64(c[k]*share[i])
			p[k] = uint8(clamp(encoded(v)+noise*float64(share[i])+0.5, 0, 255))
		}
	}
}

// silhouette is the outline of the present top in the photograph, convex.
func silhouette(o Order, cam pose.Camera, old float64) ([]geom.Vec, bool) {
	var all []geom.Vec
	for i := range 8 {
		q := [3]float64{0, 0, 0}
		if i&1 > 0 {
			q[0] = o.W
		}
		if i&2 > 0 {
			q[1] = -o.D
		}
		if i&4 > 0 {
			q[2] = -old
		}
		p, ok := cam.Project(q)
		if !ok {
			return nil, false
		}
		all = append(all, p)
	}
	return hullOf(all), true
}

// hullOf is the convex hull of points (A. M. Andrew, Another efficient algorithm for
// convex hulls in two dimensions, 1979).
func hullOf(points []geom.Vec) []geom.Vec {
	less := func(a, b geom.Vec) bool { return a.X < b.X || a.X == b.X && a.Y < b.Y }
	for i := range points {
		for k := i; k > 0 && less(points[k], points[k-1]); k-- {
			points[k], points[k-1] = points[k-1], points[k]
		}
	}
	half := func(next func(int) geom.Vec) (out []geom.Vec) {
		for i := range points {
			p := next(i)
			for len(out) > 1 && out[len(out)-1].Sub(out[len(out)-2]).Cross(p.Sub(out[len(out)-1])) <= 0 {
				out = out[:len(out)-1]
			}
			out = append(out, p)
		}
		return out[:len(out)-1]
	}
	n := len(points)
	return append(half(func(i int) geom.Vec { return points[i] }), half(func(i int) geom.Vec { return points[n-1-i] })...)
}

// spanned is from where to where a convex outline lies within rim of a row.
func spanned(hull []geom.Vec, y, rim float64) (lo, hi float64, any bool) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for i, a := range hull {
		b := hull[(i+1)%len(hull)]
		if max(a.Y, b.Y) < y-rim || min(a.Y, b.Y) > y+rim {
			continue
		}
		for _, at := range [2]float64{y - rim, y + rim} {
			t := 0.0
			if a.Y != b.Y {
				t = clamp((at-a.Y)/(b.Y-a.Y), 0, 1)
			}
			x := a.X + t*(b.X-a.X)
			lo, hi, any = min(lo, x), max(hi, x), true
		}
		if a.Y == b.Y {
			lo, hi = min(lo, b.X), max(hi, b.X)
		}
	}
	return lo, hi, any
}
