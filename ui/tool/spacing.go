package tool

import (
	"cmp"
	"math"
	"slices"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/slab"
)

// body is how far a part that is moved reaches from its anchor.
type body struct {
	id    design.ID
	reach geom.Box
	below bool // it lies below the top: its neighbours are the other supports
}

func bodyOf(s slab.Solid, id design.ID, anchor geom.Vec) *body {
	b := geom.EmptyBox()
	for _, l := range loopsOf(s, id) {
		b = b.Union(l.Bounds())
	}
	if b.Empty() {
		b = b.Include(anchor)
	}
	return &body{id: id, reach: geom.Box{Min: b.Min.Sub(anchor), Max: b.Max.Sub(anchor)}}
}

// span is a neighbour along an axis.
type span struct {
	lo, hi float64
	name   string
}

// gaps are the places along the axis u at which the gaps between the moving part
// and its neighbours are equal to each other or to another gap in the row.
func (s snapper) gaps(p, u geom.Vec) []track {
	if s.still == nil || s.body == nil || !s.s.Outline.Contains(p) {
		return nil
	}
	across := u.Left()
	lo, hi := extent(s.body.reach, u)
	clo, chi := extent(s.body.reach, across)
	row := s.row(p, u, clo, chi)
	if len(row) < 2 {
		return nil
	}
	at := p.Dot(u)
	after := slices.IndexFunc(row, func(n span) bool { return (n.lo+n.hi)/2 > at })
	if after <= 0 {
		return nil
	}
	before := row[after-1]
	next := row[after]
	// Where the part would have to lie for its place along u to be x.
	place := func(x float64) geom.Vec { return p.Add(u.Mul(x - at)) }
	bar := func(q geom.Vec, from, to float64) Line {
		base := q.Sub(u.Mul(q.Dot(u)))
		return Line{Points: []geom.Vec{base.Add(u.Mul(from)), base.Add(u.Mul(to))}}
	}
	var out []track
	add := func(x float64, words string, bars func(q geom.Vec) []Line) {
		if x+lo < before.hi-1e-9 || x+hi > next.lo+1e-9 {
			return
		}
		out = append(out, track{kind: holdsGap, at: place(x), dir: across, words: words, rung: bars})
	}
	sides := "left and right"
	if u.X == 0 {
		sides = "in front and behind"
	}
	if mid := (before.hi + next.lo - lo - hi) / 2; true {
		gap := mid + lo - before.hi
		add(mid, "Equal gaps "+sides+", "+s.length(gap), func(q geom.Vec) []Line {
			return []Line{bar(q, before.hi, mid+lo), bar(q, mid+hi, next.lo)}
		})
	}
	for i := 0; i+1 < len(row); i++ {
		a, b := row[i], row[i+1]
		gap := b.lo - a.hi
		if i == after-1 || gap < 1 {
			continue
		}
		words := "Gap equal to that between " + a.name + " and " + b.name + ", " + s.length(gap)
		for _, x := range [...]float64{before.hi + gap - lo, next.lo - gap - hi} {
			from, to := before.hi, x+lo
			if x == next.lo-gap-hi {
				from, to = x+hi, next.lo
			}
			add(x, words, func(q geom.Vec) []Line { return []Line{bar(q, a.hi, b.lo), bar(q, from, to)} })
		}
	}
	return out
}

// extent is how far a box reaches along an axis.
func extent(b geom.Box, u geom.Vec) (lo, hi float64) {
	lo, hi = b.Min.Dot(u), b.Max.Dot(u)
	return math.Min(lo, hi), math.Max(lo, hi)
}

// row is what lies beside p along u, in order: the edges of the top and, between
// them, the neighbours that overlap the moving part across u.
func (s snapper) row(p, u geom.Vec, clo, chi float64) []span {
	at := p.Dot(u)
	lo, hi := at-cast(p, u.Mul(-1), s.s.Outline), at+cast(p, u, s.s.Outline)
	if math.IsInf(lo, 0) || math.IsInf(hi, 0) {
		return nil
	}
	across := u.Left()
	mine := p.Dot(across)
	var row []span
	for _, n := range s.neighbours() {
		alo, ahi := extent(n.box, across)
		nlo, nhi := extent(n.box, u)
		if ahi < mine+clo || alo > mine+chi || nhi <= lo || nlo >= hi {
			continue
		}
		row = append(row, span{nlo, nhi, n.name})
	}
	names := [2]string{"the left edge", "the right edge"}
	if u.X == 0 {
		names = [2]string{"the front edge", "the back edge"}
	}
	row = append(row, span{lo, lo, names[0]}, span{hi, hi, names[1]})
	slices.SortStableFunc(row, func(a, b span) int { return cmp.Compare(a.lo+a.hi, b.lo+b.hi) })
	return row
}

type neighbour struct {
	id   design.ID
	name string
	box  geom.Box
}

// neighbours are the parts that gaps are measured to: openings, or for a support
// the other supports.
func (s snapper) neighbours() []neighbour {
	var out []neighbour
	add := func(id design.ID, box geom.Box) {
		if id == s.body.id || box.Empty() {
			return
		}
		for i := range out {
			if out[i].id == id {
				out[i].box = out[i].box.Union(box)
				return
			}
		}
		out = append(out, neighbour{id, "the " + partName(s.d, id), box})
	}
	if s.body.below {
		for _, b := range s.s.Bearings {
			for _, l := range b.Loops {
				add(b.Part, l.Bounds())
			}
		}
		return out
	}
	for _, o := range s.s.Openings {
		if t, ok := find(s.d, o.Part); ok && t.taps != nil && t.taps.Sink == s.body.id && s.body.id != "" {
			continue // goes along
		}
		add(o.Part, o.Loop.Bounds())
	}
	return out
}
