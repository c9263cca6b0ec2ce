package warn

import (
	"math"

	"example.org/castwright/model/geom"
)

// sectors is into how many parts the directions round a spot are divided,
// counted from the direction of the nearest bearing so that it does not matter
// how the drawing is turned. What lies in opposite sectors makes an angle of 165
// degrees or more.
const sectors = 24

// rays parts the sectors: sector k runs from ray k to ray k+1.
var rays = func() (r [sectors]geom.Vec) {
	for k := range r {
		r[k] = geom.Vec{X: 1}.Turn(2 * math.Pi * float64(k) / sectors)
	}
	return r
}()

// glance is a spot of a bearing as seen from a place.
type glance struct {
	to     geom.Vec
	d      float64
	sector int
	hidden bool // known not to be reached straight over concrete
	open   bool // known to be
}

// fan is what is seen of the bearings round a place.
type fan struct {
	at      geom.Vec
	ahead   geom.Vec // unit vector of ray 0
	seen    []glance
	nearest [sectors]int // index of the nearest glance in each sector, -1 for none
	used    []int        // what best rests on
}

// span is the length of the span that carries the place, +Inf for none, and
// whether bearings all round it set that length. Ahead points to the nearest
// bearing.
func (b *bearings) span(p place, ahead geom.Vec) (length float64, round bool) {
	f := &b.fan
	f.at, f.ahead, f.seen = p.at, ahead.Unit(), f.seen[:0]
	for k := range f.nearest {
		f.nearest[k] = -1
	}
	for i := range b.edges {
		if e := &b.edges[i]; e.normal.Dot(p.at.Sub(e.a)) >= 0 { // not the far side of a bearing
			f.look(e)
		}
	}
	for {
		length, used, round := f.best()
		// Only what this length rests on need be looked at closely.
		again := false
		for _, i := range used {
			g := &f.seen[i]
			if g.open {
				continue
			}
			if b.top.clear(p.inner, g.to) {
				g.open = true
				continue
			}
			g.hidden, again = true, true
			f.renew(g.sector)
		}
		if !again {
			return length, round
		}
	}
}

// best is the shortest span that the nearest glances make, and those that it
// rests on.
func (f *fan) best() (length float64, used []int, round bool) {
	length = math.Inf(1)
	f.used = f.used[:0]
	first, pair := -1, [2]int{}
	for k, i := range f.nearest {
		if i < 0 {
			continue
		}
		if first < 0 || f.seen[i].d < f.seen[first].d {
			first = i
		}
		if j := f.nearest[(k+sectors/2)%sectors]; k < sectors/2 && j >= 0 {
			if d := apart(f.seen[i].to, f.seen[j].to); d < length {
				length, pair = d, [2]int{i, j}
			}
		}
	}
	if first >= 0 && 2*f.seen[first].d < length {
		if f.surround(length) {
			return 2 * f.seen[first].d, f.used, true
		}
	}
	if !math.IsInf(length, 1) {
		f.used = append(f.used, pair[0], pair[1])
	}
	return length, f.used, false
}

// surround reports whether no gap between the directions of the glances nearer
// than reach can be as wide as a half turn, and notes them as used. What is seen
// right on a ray counts in both its sectors, so that two empty sectors are kept
// in hand.
func (f *fan) surround(reach float64) bool {
	run := 0
	for k := range sectors + sectors/2 {
		i := f.nearest[k%sectors]
		if i >= 0 && f.seen[i].d < reach {
			run = 0
			continue
		}
		if run++; run >= sectors/2-2 {
			return false
		}
	}
	for _, i := range f.nearest {
		if i >= 0 && f.seen[i].d < reach {
			f.used = append(f.used, i)
		}
	}
	return true
}

// renew looks for the nearest glance in a sector that is not hidden.
func (f *fan) renew(sector int) {
	f.nearest[sector] = -1
	for i, g := range f.seen {
		if n := f.nearest[sector]; g.sector == sector && !g.hidden && (n < 0 || g.d < f.seen[n].d) {
			f.nearest[sector] = i
		}
	}
}

// look adds, for each sector that the edge passes, its nearest spot in it: the
// foot, an end, or where it leaves the sector.
func (f *fan) look(e *edge) {
	w, x := f.turned(e.a.Sub(f.at)), f.turned(e.b.Sub(f.at))
	from, to := f.add(e.a, w), f.add(e.b, x)
	if g := foot(f.at, e.a, e.b); g != e.a && g != e.b {
		f.add(g, f.turned(g.Sub(f.at)))
	}
	v := x.Sub(w)
	turn := w.Cross(v)
	if turn < 0 { // seen from here it runs clockwise
		from, to = to, from
	}
	for k := from; k != to; {
		next := (k + 1) % sectors
		if t := turn / rays[next].Cross(v); t > 0 && !math.IsInf(t, 1) {
			r := rays[next].Mul(t)
			q := f.at.Add(f.ahead.Mul(r.X)).Add(f.ahead.Left().Mul(r.Y))
			f.put(glance{to: q, d: t, sector: k})
			f.put(glance{to: q, d: t, sector: next})
		}
		k = next
	}
}

// turned is a vector in the fan's own axes.
func (f *fan) turned(v geom.Vec) geom.Vec { return geom.Vec{X: f.ahead.Dot(v), Y: f.ahead.Cross(v)} }

// add adds a spot, given in both axes, and gives its sector; a spot right on a
// ray is seen in both sectors beside it.
func (f *fan) add(q, v geom.Vec) int {
	d := math.Sqrt(v.Dot(v))
	// Turn v by quarters into the first one, then count the rays that it has
	// passed there.
	quarter := 0
	switch {
	case v.X <= 0 && v.Y > 0:
		quarter, v = 1, geom.Vec{X: v.Y, Y: -v.X}
	case v.X < 0 && v.Y <= 0:
		quarter, v = 2, v.Mul(-1)
	case v.Y < 0:
		quarter, v = 3, geom.Vec{X: -v.Y, Y: v.X}
	}
	in := 0
	for in+1 < sectors/4 && rays[in+1].Cross(v) >= 0 {
		in++
	}
	sector := quarter*sectors/4 + in
	f.put(glance{to: q, d: d, sector: sector})
	switch {
	case rays[in].Cross(v) < onRay*d:
		f.put(glance{to: q, d: d, sector: (sector + sectors - 1) % sectors})
	case rays[in+1].Cross(v) > -onRay*d:
		f.put(glance{to: q, d: d, sector: (sector + 1) % sectors})
	}
	return sector
}

// onRay is how near a direction must be to a ray, in radians, to count as on it:
// far above rounding, far below what matters.
const onRay = 1e-7

func (f *fan) put(g glance) {
	if n := f.nearest[g.sector]; n < 0 || g.d < f.seen[n].d {
		f.nearest[g.sector] = len(f.seen)
	}
	f.seen = append(f.seen, g)
}
