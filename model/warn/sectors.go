package warn

import (
	"math"
	"slices"

	"example.org/castwright/model/geom"
)

// sectors is into how many parts the directions round a spot are divided, so
// that what lies in opposite ones makes an angle of 165 degrees or more.
const sectors = 24

// glance is a spot of a bearing as seen from a place.
type glance struct {
	to     geom.Vec
	d      float64
	sector int
}

var rays = func() (r [sectors]geom.Vec) {
	for k := range r {
		r[k] = geom.Vec{X: 1}.Turn(2 * math.Pi * float64(k) / sectors)
	}
	return r
}()

// span is the length of the span that carries the place, +Inf for none.
func (b *bearings) span(p place) float64 {
	var seen []glance
	for _, e := range b.edges {
		seen = e.glances(p.at, seen)
	}
	slices.SortFunc(seen, func(u, v glance) int {
		switch {
		case u.d < v.d:
			return -1
		case u.d > v.d:
			return 1
		}
		return u.sector - v.sector
	})
	// Walk outward and keep the nearest spot that can be seen in each sector. A
	// spot as far as the best span so far can end no shorter one.
	var nearest [sectors]float64
	for k := range nearest {
		nearest[k] = math.Inf(1)
	}
	best, first := math.Inf(1), 0.0
	for _, g := range seen {
		if g.d >= best {
			break
		}
		if nearest[g.sector] <= g.d || !b.top.clear(p.inner, g.to) {
			continue
		}
		if first == 0 {
			first = g.d
		}
		nearest[g.sector] = g.d
		best = min(best, g.d+nearest[(g.sector+sectors/2)%sectors])
		if surrounded(nearest) {
			return min(best, 2*first)
		}
	}
	return best
}

// surrounded reports whether no gap between the directions in which something
// is seen can be as wide as a half turn. What is seen right on a ray counts in
// both its sectors, so that two empty sectors are kept in hand.
func surrounded(nearest [sectors]float64) bool {
	run := 0
	for k := range sectors + sectors/2 {
		if math.IsInf(nearest[k%sectors], 1) {
			run++
		} else {
			run = 0
		}
		if run >= sectors/2-2 {
			return false
		}
	}
	return true
}

// glances appends, for each sector that the edge passes as seen from p, its
// nearest spot in it: the foot, an end, or where it leaves the sector.
func (e edge) glances(p geom.Vec, seen []glance) []glance {
	add := func(q geom.Vec, sector int) {
		seen = append(seen, glance{q, p.Dist(q), (sector + sectors) % sectors})
	}
	from, to := sectorOf(e.a.Sub(p)), sectorOf(e.b.Sub(p))
	add(e.a, from)
	add(e.b, to)
	if f := foot(p, e.a, e.b); f != e.a && f != e.b {
		add(f, sectorOf(f.Sub(p)))
	}
	v, w := e.b.Sub(e.a), e.a.Sub(p)
	turn := w.Cross(v)
	if turn < 0 { // seen from p it runs clockwise
		from, to = to, from
	}
	for k := from; k != to; k = (k + 1) % sectors {
		if t := turn / rays[(k+1)%sectors].Cross(v); t > 0 && !math.IsInf(t, 1) {
			q := p.Add(rays[(k+1)%sectors].Mul(t))
			add(q, k)
			add(q, k+1)
		}
	}
	return seen
}

// sectorOf gives the sector of a direction: sector k runs from ray k to ray k+1.
func sectorOf(v geom.Vec) int {
	a := math.Atan2(v.Y, v.X)
	if a < 0 {
		a += 2 * math.Pi
	}
	return int(a/(2*math.Pi)*sectors) % sectors
}
