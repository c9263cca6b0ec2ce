package slab

import (
	"math"
	"slices"
	"sync"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"gonum.org/v1/gonum/integrate/quad"
)

// gaussPoints is the order of the Gauss-Legendre rule in each part of the height. On
// the whole of a quarter circle, the worst case, six points leave 5e-7 of what
// the profile takes off (measured: see TestQuadrature), and of that only the
// part which does not grow evenly with the inset.
const gaussPoints = 6

// kink is the share of the solid's volume that the last terms of a part's
// Legendre series may hold before the part is halved. Smooth sections stay far
// below; two profiles that meet in a straight ridge are caught.
const kink = 2e-6

// maxHalvings bounds how often a part is halved.
const maxHalvings = 4

// gauss is the rule on [0, 1] and the transform of its values to Legendre
// coefficients of the two highest degrees.
var gauss = func() (g struct{ x, w, high, next [gaussPoints]float64 }) {
	quad.Legendre{}.FixedLocations(g.x[:], g.w[:], 0, 1)
	legendre := func(n int, x float64) float64 {
		a, b := 1.0, x
		for k := 1; k < n; k++ {
			a, b = b, (float64(2*k+1)*x*b-float64(k)*a)/float64(k+1)
		}
		return b
	}
	for i, x := range g.x {
		g.high[i] = float64(2*gaussPoints-1) * g.w[i] * legendre(gaussPoints-1, 2*x-1)
		g.next[i] = float64(2*gaussPoints-3) * g.w[i] * legendre(gaussPoints-2, 2*x-1)
	}
	return g
}()

// span is a part of the height within which every profile is smooth and no
// channel starts.
type span struct {
	lo, hi float64 // heights
	ends   end
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

// nodes gives the heights and weights of a span's points.
func (p span) nodes(thickness float64) (z, weight [gaussPoints]float64) {
	u0, u1 := math.Sqrt(thickness-p.hi), math.Sqrt(thickness-p.lo)
	if p.ends == fromUnderside {
		u0, u1 = math.Sqrt(p.lo), math.Sqrt(p.hi)
	}
	for i, x := range gauss.x {
		u := u0 + (u1-u0)*x
		z[i] = u * u
		if p.ends == fromFace {
			z[i] = thickness - u*u
		}
		weight[i] = gauss.w[i] * (u1 - u0) * 2 * u
	}
	return z, weight
}

// halves divides a span in the middle of its points.
func (p span) halves(thickness float64) (a, b span) {
	var mid float64
	if p.ends == fromUnderside {
		u := (math.Sqrt(p.lo) + math.Sqrt(p.hi)) / 2
		mid = u * u
	} else {
		u := (math.Sqrt(thickness-p.lo) + math.Sqrt(thickness-p.hi)) / 2
		mid = thickness - u*u
	}
	a, b = p, p
	a.hi, b.lo = mid, mid
	a.level, b.level = p.level+1, p.level+1
	return a, b
}

// spans divides the height of the solid.
func (b *body) spans() []span {
	t := b.thickness
	cuts := []float64{0, t}
	add := func(z float64) {
		if z > 0 && z < t {
			cuts = append(cuts, z)
		}
	}
	lowest, full := t, false // below lowest nothing is drawn in, save by a full round
	for _, r := range b.rings() {
		for _, s := range r.stretches {
			size, start := profileSpan(s.profile, t)
			if !(size > 0) {
				continue
			}
			if s.profile.Kind == design.ProfileFullRound {
				full = true
				start = t / 2
			}
			lowest = math.Min(lowest, start)
			add(start)
		}
	}
	for _, c := range b.recesses {
		add(t - c.depth)
	}
	slices.Sort(cuts)
	cuts = slices.Compact(cuts)
	var out []span
	for i := 1; i < len(cuts); i++ {
		p := span{lo: cuts[i-1], hi: cuts[i]}
		if full && p.hi <= t/2 {
			p.ends = fromUnderside
		}
		p.flat = p.hi <= lowest && !full
		out = append(out, p)
	}
	return out
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

// integrate sums the sections over the height.
func (b *body) integrate(plan []geom.Part, channels int) volume {
	v := volume{channels: make([]channelVolume, channels)}
	tolerance := kink * b.thickness * planArea(plan)
	spans := b.spans()
	for len(spans) > 0 {
		cuts := b.cutAll(spans, plan, channels)
		var again []span
		for i, p := range spans {
			c := cuts[i*gaussPoints : (i+1)*gaussPoints]
			if p.flat {
				v.addFlat(p, &c[0])
				continue
			}
			z, weight := p.nodes(b.thickness)
			rest := b.unevenness(p, z, c)
			if p.level < maxHalvings && lastTerms(p, weight, rest) > tolerance {
				lower, upper := p.halves(b.thickness)
				again = append(again, lower, upper)
				continue
			}
			v.add(b, p, z, weight, c, rest)
		}
		spans = again
	}
	return v
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

// cutAll cuts every section that the spans need, on two goroutines; each writes
// its own places, so that the result does not depend on their order.
func (b *body) cutAll(spans []span, plan []geom.Part, channels int) []cutting {
	cuts := make([]cutting, len(spans)*gaussPoints)
	var jobs []int
	for i, p := range spans {
		if p.flat {
			cuts[i*gaussPoints].take(plan, channels, b.openAt((p.lo+p.hi)/2))
			continue
		}
		for k := range gaussPoints {
			jobs = append(jobs, i*gaussPoints+k)
		}
	}
	work := func(w *drawer, jobs []int) {
		for _, j := range jobs {
			p := spans[j/gaussPoints]
			z, _ := p.nodes(b.thickness)
			// Every channel that is open somewhere in the span is open in all of it.
			b.add(w, z[j%gaussPoints], b.thickness-(p.lo+p.hi)/2)
			cuts[j].take(w.sweep.Parts(), channels, ^uint64(0))
		}
	}
	var other sync.WaitGroup
	var odd, even []int
	for i, j := range jobs {
		if i%2 == 0 {
			even = append(even, j)
		} else {
			odd = append(odd, j)
		}
	}
	if len(odd) > 0 {
		other.Go(func() { work(new(drawer), odd) })
	}
	work(new(drawer), even)
	other.Wait()
	return cuts
}

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

// unevenness is, at each point, how far the concrete's area is from falling
// evenly with the insets: what is left has no square root in it, and small
// coefficients.
func (b *body) unevenness(p span, z [gaussPoints]float64, c []cutting) (rest [gaussPoints]float64) {
	for i := range rest {
		rest[i] = c[i].concrete.Area
		for _, r := range b.rings() {
			for _, s := range r.stretches {
				rest[i] += s.length * Inset(s.profile, b.thickness, z[i])
			}
		}
	}
	return rest
}

// lastTerms is the volume in the two highest terms of the Legendre series of the
// values over the span.
func lastTerms(p span, weight, values [gaussPoints]float64) float64 {
	var high, next float64
	for i, f := range values {
		high += gauss.high[i] * f
		next += gauss.next[i] * f
	}
	return (math.Abs(high) + math.Abs(next)) * (p.hi - p.lo)
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

func (v *volume) add(b *body, p span, z, weight [gaussPoints]float64, c []cutting, rest [gaussPoints]float64) {
	for i := range rest {
		v.concrete += weight[i] * rest[i]
		addMoment(&v.moment, c[i].concrete, weight[i], z[i])
		for k := range c[i].channels {
			v.channels[k].v += weight[i] * c[i].channels[k].Area
			addMoment(&v.channels[k].moment, c[i].channels[k], weight[i], z[i])
		}
	}
	for _, r := range b.rings() {
		for _, s := range r.stretches {
			v.concrete -= s.length * (insetIntegral(s.profile, b.thickness, p.hi) -
				insetIntegral(s.profile, b.thickness, p.lo))
		}
	}
}

func addMoment(to *[3]float64, part geom.Part, weight, z float64) {
	to[0] += weight * part.Moment.X
	to[1] += weight * part.Moment.Y
	to[2] += weight * part.Area * z
}
