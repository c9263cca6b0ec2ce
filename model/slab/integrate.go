package slab

import (
	"math"
	"slices"
	"sync"
	"sync/atomic"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"gonum.org/v1/gonum/integrate/quad"
)

// Orders of the Gauss-Legendre rule in a part of the height. A part takes the
// least order at which the nearest square root outside it leaves less than rest.
// Measured on the whole of a quarter circle, the worst case, which takes five
// points: 1.1e-5 of what does not grow evenly with the inset, and that is a small
// share of what the profile takes off (TestQuadrature).
const (
	fewest = 3
	most   = 6
	rest   = 1e-5
)

// kink is the share of the solid's volume that the last term of a part's Legendre
// series may hold before the part is halved. Smooth sections stay far below; two
// profiles that meet in a straight ridge are caught.
const kink = 2e-6

// maxHalvings bounds how often a part is halved, fewHalvings where sections are
// dear, and maxSpans into how many parts the heights at which profiles start
// divide a solid. A pill of half the width that its profiles draw in is right to
// 1e-5 after 4 halvings, to 2e-6 after 6.
const (
	maxHalvings = 10
	fewHalvings = 6
	maxSpans    = 32
)

// rule is a Gauss-Legendre rule on [0, 1], and the factors that turn its values
// into the Legendre coefficient of the highest degree that it can tell.
type rule struct{ x, w, high []float64 }

var rules = func() (r [most + 1]rule) {
	for n := fewest; n <= most; n++ {
		g := rule{make([]float64, n), make([]float64, n), make([]float64, n)}
		quad.Legendre{}.FixedLocations(g.x, g.w, 0, 1)
		for i, x := range g.x {
			a, b := 1.0, 2*x-1
			for k := 1; k < n-1; k++ {
				a, b = b, (float64(2*k+1)*(2*x-1)*b-float64(k)*a)/float64(k+1)
			}
			g.high[i] = float64(2*n-1) * g.w[i] * b
		}
		r[n] = g
	}
	return r
}()

// span is a part of the height within which every profile is smooth and no
// channel starts.
type span struct {
	lo, hi float64 // heights
	ends   end
	order  int
	level  int // how often it was halved
	flat   bool
}

// end says from which face the points are set by the square root of the
// distance: at the face a quarter circle's tangent is vertical.
type end uint8

const (
	fromFace end = iota
	fromUnderside
)

// roots gives the span's ends as square roots of the distance from its face.
func (p span) roots(thickness float64) (u0, u1 float64) {
	if p.ends == fromUnderside {
		return math.Sqrt(p.lo), math.Sqrt(p.hi)
	}
	return math.Sqrt(thickness - p.hi), math.Sqrt(thickness - p.lo)
}

// height is where the square root of the distance from the span's face is u.
func (p span) height(u, thickness float64) float64 {
	if p.ends == fromUnderside {
		return u * u
	}
	return thickness - u*u
}

// node gives the height and weight of the span's point i.
func (p span) node(i int, thickness float64) (z, weight float64) {
	u0, u1 := p.roots(thickness)
	g := rules[p.order]
	u := u0 + (u1-u0)*g.x[i]
	return p.height(u, thickness), g.w[i] * (u1 - u0) * 2 * u
}

// setOrder chooses the rule for a span in which the least radius is r. The inset
// of a quarter circle is u sqrt(2 r - u²), analytic up to u = sqrt(2 r); the error
// of n points falls as rho^(-2n), where rho belongs to the ellipse through that
// place (Trefethen, "Is Gauss quadrature better than Clenshaw-Curtis?", SIAM
// Review 50, 2008).
func (p *span) setOrder(thickness, r float64) {
	u0, u1 := p.roots(thickness)
	p.order = fewest
	if math.IsInf(r, 1) {
		return
	}
	x := (2*math.Sqrt(2*r) - u0 - u1) / (u1 - u0)
	rho := x + math.Sqrt(math.Max(0, x*x-1))
	for p.order < most && math.Pow(rho, -2*float64(p.order)) > rest {
		p.order++
	}
}

// halves divides a span in the middle of its roots.
func (p span) halves(thickness float64) (a, b span) {
	u0, u1 := p.roots(thickness)
	mid := p.height((u0+u1)/2, thickness)
	a, b = p, p
	a.hi, b.lo = mid, mid
	a.level, b.level = p.level+1, p.level+1
	a.order, b.order = most, most
	return a, b
}

// spans divides the height of the solid.
func (b *body) spans() []span {
	t := b.thickness
	var starts, floors []float64
	lowest, full := t, false // below lowest nothing is drawn in, save by a full round
	for _, s := range b.profiles {
		_, start := profileSpan(s.profile, t)
		if s.profile.Kind == design.ProfileFullRound {
			full, start = true, t/2
		}
		lowest = math.Min(lowest, start)
		starts = append(starts, start)
	}
	for _, c := range b.recesses {
		floors = append(floors, t-c.depth)
	}
	cuts := append(thin(starts, t), thin(floors, t)...)
	cuts = append(cuts, 0, t)
	slices.Sort(cuts)
	cuts = slices.Compact(cuts)
	var out []span
	for i := 1; i < len(cuts); i++ {
		p := span{lo: cuts[i-1], hi: cuts[i]}
		if full && p.hi <= t/2 {
			p.ends = fromUnderside
		}
		p.flat = p.hi <= lowest && !full
		least := math.Inf(1)
		for _, s := range b.profiles {
			if size, start := profileSpan(s.profile, t); start < p.hi && s.profile.Kind != design.ProfileBevelled {
				least = math.Min(least, size)
			}
		}
		p.setOrder(t, least)
		out = append(out, p)
	}
	return out
}

// thin gives the heights inside the slab, sorted; of too many, an even choice.
func thin(heights []float64, thickness float64) []float64 {
	slices.Sort(heights)
	heights = slices.Compact(heights)
	heights = slices.DeleteFunc(heights, func(z float64) bool { return !(z > 0 && z < thickness) })
	if n := len(heights); n > maxSpans {
		for i := range maxSpans {
			heights[i] = heights[i*n/maxSpans]
		}
		heights = heights[:maxSpans]
	}
	return heights
}

// cutting is what one section amounts to, by use.
type cutting struct {
	concrete geom.Part
	channels []geom.Part
}

// sort out the parts of a sweep: concrete, and each channel's own.
func (c *cutting) take(parts []geom.Part, channels int, open uint64) {
	c.channels = make([]geom.Part, channels)
	for _, p := range parts {
		if p.Layers&(setConcrete|setGone) != setConcrete {
			continue
		}
		to := &c.concrete
		if k := firstChannel(p.Layers & open); k >= 0 {
			to = &c.channels[k]
		}
		to.Area += p.Area
		to.Moment = to.Moment.Add(p.Moment)
	}
}

// integrate sums the sections over the height. Where one is too involved to be
// cut, no profile is: such an outline has faults enough.
func (b *body) integrate(plan []geom.Part, channels int) volume {
	v := volume{channels: make([]channelVolume, channels)}
	tolerance := kink * b.thickness * planArea(plan)
	spans := b.affordable(b.spans())
	halvings := maxHalvings
	for len(spans) > 0 {
		cuts, visits, ok := b.cutAll(spans, plan, channels)
		if !ok {
			bare := &body{thickness: b.thickness, recesses: b.recesses}
			v := bare.integrate(plan, channels)
			v.uncut = true
			return v
		}
		switch {
		case visits > maxVisits:
			halvings = 0
		case visits > maxVisits/20:
			halvings = min(halvings, fewHalvings)
		}
		var again []span
		for _, p := range spans {
			c := cuts[:p.sections()]
			cuts = cuts[p.sections():]
			if p.flat {
				v.addFlat(p, &c[0])
				continue
			}
			uneven := b.unevenness(p, c)
			if p.level < halvings && p.lastTerm(uneven) > tolerance {
				lower, upper := p.halves(b.thickness)
				again = append(again, lower, upper)
				continue
			}
			v.add(b, p, c, uneven)
		}
		spans = again
	}
	return v
}

// maxVisits is how many looks at edges all sections of a solid may take together,
// and manyVertices from how many vertices on it is worth asking.
const (
	maxVisits    = 100_000_000
	manyVertices = 4000
)

// affordable joins the spans in which profiles are cut, where all their sections
// would take too long.
func (b *body) affordable(spans []span) []span {
	n, sections := 0, 0
	for _, r := range b.rings() {
		n += len(r.bends)
	}
	for _, p := range spans {
		sections += p.sections()
	}
	if n < manyVertices || len(b.profiles) == 0 {
		return spans
	}
	w := drawers.Get().(*drawer)
	defer drawers.Put(w)
	b.add(w, b.thickness, b.thickness)
	w.sweep.Parts()
	if w.sweep.Visits()*sections <= maxVisits {
		return spans
	}
	var out []span
	for _, p := range spans {
		if k := len(out) - 1; k >= 0 && !p.flat && !out[k].flat && p.ends == out[k].ends {
			out[k].hi = p.hi
			out[k].order = most
		} else {
			out = append(out, p)
		}
	}
	return out
}

func planArea(plan []geom.Part) float64 {
	a := 0.0
	for _, p := range plan {
		if p.Layers&setConcrete != 0 {
			a += p.Area
		}
	}
	return a
}

// sections is how many sections a span needs.
func (p span) sections() int {
	if p.flat {
		return 1
	}
	return p.order
}

// cutAll cuts every section that the spans need, on two goroutines; each writes
// its own places, so that the result does not depend on their order. It gives the
// looks at edges that they took, and false when one can't be cut.
func (b *body) cutAll(spans []span, plan []geom.Part, channels int) ([]cutting, int, bool) {
	type job struct {
		p  span
		i  int
		to *cutting
	}
	n := 0
	for _, p := range spans {
		n += p.sections()
	}
	cuts := make([]cutting, n)
	rest := cuts
	var odd, even []job
	for _, p := range spans {
		if p.flat {
			rest[0].take(plan, channels, b.openAt((p.lo+p.hi)/2))
			rest = rest[1:]
			continue
		}
		for i := range p.order {
			odd, even = even, append(odd, job{p, i, &rest[i]})
		}
		rest = rest[p.order:]
	}
	var spent atomic.Bool
	var visits atomic.Int64
	work := func(jobs []job) {
		w := drawers.Get().(*drawer)
		defer drawers.Put(w)
		for _, j := range jobs {
			if spent.Load() {
				return
			}
			z, _ := j.p.node(j.i, b.thickness)
			// Every channel that is open somewhere in the span is open in all of it.
			b.add(w, z, b.thickness-(j.p.lo+j.p.hi)/2)
			parts := w.sweep.Parts()
			visits.Add(int64(w.sweep.Visits()))
			if w.sweep.Spent() {
				spent.Store(true)
				return
			}
			j.to.take(parts, channels, ^uint64(0))
		}
	}
	var other sync.WaitGroup
	if len(odd) > 0 {
		other.Go(func() { work(odd) })
	}
	work(even)
	other.Wait()
	return cuts, int(visits.Load()), !spent.Load()
}

// drawers lends drawers with their memory.
var drawers = sync.Pool{New: func() any { return new(drawer) }}

// openAt is the set of channels that are open at the height z.
func (b *body) openAt(z float64) uint64 {
	var open uint64
	for i, c := range b.recesses {
		if c.depth > b.thickness-z {
			open |= 1 << (layerChannel + i)
		}
	}
	return open
}

// unevenness is, at each point of a span, what the concrete's area would be if it
// did not fall evenly with the insets: small coefficients, and no square root.
func (b *body) unevenness(p span, c []cutting) []float64 {
	out := make([]float64, len(c))
	for i := range out {
		z, _ := p.node(i, b.thickness)
		out[i] = c[i].concrete.Area
		for _, s := range b.profiles {
			out[i] += s.length * Inset(s.profile, b.thickness, z)
		}
	}
	return out
}

// lastTerm is the volume in the highest term of the Legendre series of the values
// over the span.
func (p span) lastTerm(values []float64) float64 {
	sum := 0.0
	for i, f := range values {
		sum += rules[p.order].high[i] * f
	}
	return math.Abs(sum) * (p.hi - p.lo)
}

func (v *volume) addFlat(p span, c *cutting) {
	h, mid := p.hi-p.lo, (p.lo+p.hi)/2
	v.concrete += c.concrete.Area * h
	addMoment(&v.moment, c.concrete, h, mid)
	for k := range c.channels {
		v.channels[k].v += c.channels[k].Area * h
		addMoment(&v.channels[k].moment, c.channels[k], h, mid)
	}
}

func (v *volume) add(b *body, p span, c []cutting, uneven []float64) {
	for i := range c {
		z, weight := p.node(i, b.thickness)
		v.concrete += weight * uneven[i]
		addMoment(&v.moment, c[i].concrete, weight, z)
		for k := range c[i].channels {
			v.channels[k].v += weight * c[i].channels[k].Area
			addMoment(&v.channels[k].moment, c[i].channels[k], weight, z)
		}
	}
	for _, s := range b.profiles {
		v.concrete -= s.length * (insetIntegral(s.profile, b.thickness, p.hi) -
			insetIntegral(s.profile, b.thickness, p.lo))
	}
}

func addMoment(to *[3]float64, part geom.Part, weight, z float64) {
	to[0] += weight * part.Moment.X
	to[1] += weight * part.Moment.Y
	to[2] += weight * part.Area * z
}
