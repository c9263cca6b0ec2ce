package draw

import (
	"math"
	"slices"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/slab"
)

// outlineRow is the chain of the outline's corners, if there are any between
// those of its bounds.
func (k *sketch) outlineRow(d design.Design, s slab.Solid, e edge) row {
	b := k.bounds
	lo, hi := b.Min.X, b.Max.X
	if e == left || e == right {
		lo, hi = b.Min.Y, b.Max.Y
	}
	at := []float64{lo, hi}
	foot := map[float64]float64{}
	// First the corners that end a straight side square to the line, then
	// others with room for a text. Where two curves meet smoothly is no place
	// to measure from.
	smooth := smoothNodes(s)
	for _, straight := range [...]bool{true, false} {
		for i, n := range d.Outline.Nodes {
			p := geom.Vec{X: n.At.X.MM(), Y: n.At.Y.MM()}
			x, across := p.X, p.Y
			if e == left || e == right {
				x, across = p.Y, p.X
			}
			apart := k.pt(40) / k.Scale
			if straight {
				apart = 0.5
			}
			if smooth[i] || endsStraight(d.Outline.Nodes, i, e) != straight || !farFrom(at, x, apart) {
				if f, ok := foot[x]; ok && across < f {
					foot[x] = across
				}
				continue
			}
			at = append(at, x)
			foot[x] = across
		}
	}
	slices.Sort(at)
	if len(at) < 3 || len(at) > maxStations || at[0] < lo || at[len(at)-1] > hi {
		return nil
	}
	edgeFoot := b.Min.Y
	if e == left {
		edgeFoot = b.Min.X
	}
	return k.chain(at, func(x float64) float64 {
		f, ok := foot[x]
		between := geom.Vec{X: x, Y: (f + edgeFoot) / 2}
		if e == left {
			between = geom.Vec{X: between.Y, Y: x}
		}
		if !ok || s.Outline.Contains(between) { // no line across the concrete
			return edgeFoot
		}
		return f
	})
}

// smoothNodes is the nodes at which the outline hardly turns.
func smoothNodes(s slab.Solid) map[int]bool {
	out := map[int]bool{}
	n := len(s.Sides)
	for i, next := range s.Sides {
		prev := s.Sides[(i+n-1)%n]
		if prev.Corner >= 0 || next.Corner >= 0 || len(prev.Points) < 2 || len(next.Points) < 2 {
			continue
		}
		u := prev.Points[len(prev.Points)-1].Sub(prev.Points[len(prev.Points)-2])
		w := next.Points[1].Sub(next.Points[0])
		if math.Abs(math.Atan2(u.Cross(w), u.Dot(w))) < 0.15 {
			out[next.Node] = true
		}
	}
	return out
}

// endsStraight reports whether one of the edges that meet at a corner is straight
// and square to dimension lines along e.
func endsStraight(nodes []design.Node, i int, e edge) bool {
	n := len(nodes)
	for _, j := range [...]int{(i + n - 1) % n, i} {
		p, q := nodes[j].At, nodes[(j+1)%n].At
		d := p.X - q.X
		if e == left || e == right {
			d = p.Y - q.Y
		}
		if nodes[j].Edge.Curve == design.CurveStraight && d == 0 {
			return true
		}
	}
	return false
}

// farFrom reports whether x is more than apart from all values.
func farFrom(values []float64, x, apart float64) bool {
	for _, v := range values {
		if math.Abs(v-x) <= apart {
			return false
		}
	}
	return true
}

// across is the chain of sink and hole centres from side to side, of sinks alone where
// both are too many.
func (k *sketch) across(d design.Design, s slab.Solid) row {
	b := k.bounds
	at := []float64{b.Min.X, b.Max.X}
	foot := map[float64]float64{}
	mark := func(p geom.Vec) {
		if p.X > b.Min.X+0.5 && p.X < b.Max.X-0.5 {
			at = append(at, p.X)
			foot[p.X] = math.Max(p.Y, foot[p.X])
		}
	}
	for _, n := range d.Sinks {
		mark(geom.Vec{X: n.At.X.MM(), Y: n.At.Y.MM()})
	}
	sinks := stations(at)
	for _, o := range s.Openings {
		if o.Kind == slab.OpeningHole {
			mark(o.Centre)
		}
	}
	if at = stations(at); len(at) > maxStations {
		at = sinks // what is asked for first
	}
	if len(at) < 3 || len(at) > maxStations {
		return nil
	}
	return k.chain(at, func(x float64) float64 {
		if f, ok := foot[x]; ok {
			return f
		}
		return b.Max.Y
	})
}

// fromBack is the chain of tap lines and sink centres from the back edge to the
// front edge, as they lie behind and before the last sink to the right. A top without
// either has its holes measured so.
func (k *sketch) fromBack(d design.Design, s slab.Solid) row {
	b := k.bounds
	ends := [2]geom.Vec{{X: b.Max.X, Y: b.Min.Y}, {X: b.Max.X, Y: b.Max.Y}}
	var at []float64
	foot := map[float64]float64{}
	mark := func(p geom.Vec) {
		for _, y := range at {
			if math.Abs(y-p.Y) <= 0.5 {
				foot[y] = math.Max(foot[y], p.X)
				return
			}
		}
		at = append(at, p.Y)
		foot[p.Y] = p.X
	}
	last := math.Inf(-1)
	for _, n := range d.Sinks {
		c := geom.Vec{X: n.At.X.MM(), Y: n.At.Y.MM()}
		if !b.Contains(c) {
			continue
		}
		mark(c)
		if c.X > last {
			last = c.X
			ends = [2]geom.Vec{{X: c.X, Y: crossingBelow(s.Outline, c, b.Min.Y)}, {X: b.Max.X, Y: b.Max.Y}}
		}
	}
	for _, t := range d.Taps {
		c, count := geom.Vec{X: math.Inf(-1)}, 0
		for _, o := range s.Openings {
			if o.Kind == slab.OpeningTap && o.Part == t.ID {
				c = geom.Vec{X: math.Max(c.X, o.Centre.X), Y: c.Y + o.Centre.Y}
				count++
			}
		}
		if c.Y /= float64(max(1, count)); count > 0 && b.Contains(c) {
			mark(c)
		}
	}
	if len(at) == 0 { // a top with holes alone
		for _, o := range s.Openings {
			if o.Kind == slab.OpeningHole && b.Contains(o.Centre) {
				mark(o.Centre)
				ends[0] = geom.Vec{X: o.Centre.X, Y: crossingBelow(s.Outline, o.Centre, b.Min.Y)}
			}
		}
	}
	if len(at) == 0 {
		return nil
	}
	mark(ends[0])
	mark(ends[1])
	at = stations(at)
	if len(at) < 3 || len(at) > maxStations {
		return nil
	}
	return k.chain(at, func(y float64) float64 { return foot[y] })
}

// crossingBelow is the y of the nearest crossing of the loop before p, or y0.
func crossingBelow(l geom.Loop, p geom.Vec, y0 float64) float64 {
	best := math.Inf(-1)
	for i, a := range l {
		c := l[(i+1)%len(l)]
		if (a.X <= p.X) == (c.X <= p.X) {
			continue
		}
		if y := a.Y + (c.Y-a.Y)*(p.X-a.X)/(c.X-a.X); y < p.Y {
			best = math.Max(best, y)
		}
	}
	if math.IsInf(best, 0) {
		return y0
	}
	return best
}

// overhang is how far the front stands out beyond the cabinet.
func (k *sketch) overhang(s slab.Solid) row {
	if !k.Show.Supports {
		return nil
	}
	cabinet := geom.EmptyBox()
	for _, b := range s.Bearings {
		if b.Kind == design.SupportGable || b.Kind == design.SupportRail {
			for _, l := range b.Loops {
				cabinet = cabinet.Union(l.Bounds())
			}
		}
	}
	if over := cabinet.Min.Y - k.bounds.Min.Y; cabinet.Empty() || !(over > 1 && over < 0.5*k.bounds.H()) {
		return nil
	}
	x := k.bounds.Min.X
	return row{{k.bounds.Min.Y, cabinet.Min.Y, x, math.Max(x, cabinet.Min.X), k.length(cabinet.Min.Y - k.bounds.Min.Y)}}
}

// spreads is the distances of the outer holes of tap sets that lie level.
func (k *sketch) spreads(d design.Design, s slab.Solid) row {
	var r row
	for _, t := range d.Taps {
		box := geom.EmptyBox()
		count := 0
		for _, o := range s.Openings {
			if o.Kind == slab.OpeningTap && o.Part == t.ID {
				box = box.Include(o.Centre)
				count++
			}
		}
		if count > 1 && box.H() < 0.5 && box.W() > 1 {
			r = append(r, span{box.Min.X, box.Max.X, box.Max.Y, box.Max.Y, k.length(box.W())})
		}
	}
	slices.SortFunc(r, func(a, b span) int {
		switch {
		case a.from < b.from:
			return -1
		case a.from > b.from:
			return 1
		}
		return 0
	})
	for i := 1; i < len(r); i++ { // those that overlap can't share a line
		if r[i].from < r[i-1].to {
			r = slices.Delete(r, i, i+1)
			i--
		}
	}
	return r
}
