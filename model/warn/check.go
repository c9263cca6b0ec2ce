package warn

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/takeoff"
)

// Check compares a top with the limits and gives its warnings, worst first,
// then by code, place and part. s, ms and t are the solid, measures and
// take-off of d; lengths in s and ms are millimetres. It never fails: a design
// that is too broken for a rule gets no warning from it, because its faults
// say what is wrong.
func Check(d design.Design, m design.Materials, site design.Site,
	s slab.Solid, ms slab.Measures, t takeoff.Takeoff) []Warning {
	c := &check{d: &d, m: &m, site: site, s: &s, ms: &ms, t: &t}
	c.outline = newChain(s.Outline)
	if c.outline == nil || !(s.Outline.Area() > 0) || !(s.Thickness > 0) || math.IsInf(s.Thickness, 1) {
		return nil
	}
	c.sortOpenings()
	for _, r := range s.Recesses {
		c.channels = append(c.channels, newChannel(r))
	}
	for _, rule := range rules {
		rule(c)
	}
	slices.SortStableFunc(c.found, order)
	return few(c.found)
}

// mostOfACode is how many warnings of one code are told. More than this are of no
// use to anybody, and a scribbled river has a hundred thousand.
const mostOfACode = 50

// few leaves out what is beyond the most of each code; the last one told of a code
// says how many more there are.
func few(found []Warning) []Warning {
	all, told := map[Code]int{}, map[Code]int{}
	for _, w := range found {
		all[w.Code]++
	}
	out := found[:0]
	for _, w := range found {
		told[w.Code]++
		if told[w.Code] > mostOfACode {
			continue
		}
		if more := all[w.Code] - mostOfACode; more > 0 && told[w.Code] == mostOfACode {
			w.Advice += fmt.Sprintf(" It is so at %d more places.", more)
		}
		out = append(out, w)
	}
	return out
}

// rules is every rule, one to a file.
var rules = []func(*check){
	(*check).leaves,
	(*check).rails,
	(*check).holes,
	(*check).setback,
	(*check).insideCorners,
	(*check).cover,
	(*check).banks,
	(*check).openEnds,
	(*check).pours,
	(*check).glass,
	(*check).thickness,
	(*check).stated,
	(*check).supports,
	(*check).lifting,
	(*check).carryFlat,
	(*check).passage,
}

// check is a top under examination and what has been found so far.
type check struct {
	d    *design.Design
	m    *design.Materials
	site design.Site
	s    *slab.Solid
	ms   *slab.Measures
	t    *takeoff.Takeoff

	outline  *chain
	openings []opening
	sinks    []*chain // the sink cut-outs among the openings that meet the top
	channels []channel
	found    []Warning
}

// opening is a hole through the top and how it lies to the outline.
type opening struct {
	*slab.Opening
	*chain
	side side
	edge pair // to the outline, if nearer than a slab thickness
	thin bool // whether it is
}

// round reports whether the opening is a hole rather than a sink's cut-out.
func (o opening) round() bool { return o.Kind != slab.OpeningSink }

// side is how one loop lies to another.
type side uint8

const (
	within  side = iota // wholly inside
	across              // they cross or touch
	without             // wholly outside
)

// touching is the distance in mm below which two loops count as touching.
const touching = near / 10

// sideOf says how o lies to c, d apart.
func (c *chain) sideOf(o *chain, d float64) side {
	if d < touching {
		return across
	}
	if c.contains(o.pts[0]) {
		return within
	}
	return without
}

func (c *check) sortOpenings() {
	for i := range c.s.Openings {
		o := &c.s.Openings[i]
		ch := newChain(o.Loop)
		if ch == nil {
			continue
		}
		it := opening{Opening: o, chain: ch}
		it.edge, it.thin = c.outline.closest(ch, max(c.s.Thickness, near))
		it.side = c.outline.sideOf(ch, it.edge.d)
		c.openings = append(c.openings, it)
		if !it.round() && it.side != without {
			c.sinks = append(c.sinks, ch)
		}
	}
}

// channel is a recess with its loops as chains.
type channel struct {
	*slab.Recess
	rims []*chain // outer loops and islands
}

func newChannel(r slab.Recess) channel {
	ch := channel{Recess: &r}
	for _, l := range r.Loops {
		if c := newChain(l); c != nil {
			ch.rims = append(ch.rims, c)
		}
	}
	return ch
}

// contains reports whether p lies in the channel, islands left out.
func (ch channel) contains(p geom.Vec) bool {
	w := 0
	for _, r := range ch.rims {
		if r.contains(p) {
			w += r.windingBelow(1, p)
		}
	}
	return w != 0
}

// add keeps a warning unless a number in it is not finite, which only a design
// with faults can bring about.
func (c *check) add(w Warning) {
	if w.At.Finite() && !math.IsNaN(w.Value-w.Value) && !math.IsNaN(w.Limit-w.Limit) {
		c.found = append(c.found, w)
	}
}

// say compares a value with a limit, its figures taken times scale, and keeps w
// when the limit is broken. Values are lengths in mm unless w says otherwise.
func (c *check) say(l Limit, value, scale float64, w Warning) bool {
	slack := 0.0
	if w.Unit == "" {
		slack = near
	}
	step, broken := l.judge(value, scale, slack)
	if broken {
		c.warn(l, step, value, w)
	}
	return broken
}

// warn keeps w with a step of a limit and a value.
func (c *check) warn(l Limit, step Step, value float64, w Warning) {
	w.Code, w.Severity, w.Limit, w.Value, w.Source = l.Code, step.Severity, step.Value, value, l.String()
	if w.Unit == "" {
		w.Unit = "mm"
	}
	c.add(w)
}

// state keeps w with a limit that has no figure: the thing itself is wrong.
func (c *check) state(l Limit, w Warning) {
	c.warn(l, Step{Severity: l.Steps[0].Severity}, 0, w)
}

// order puts the worst first, then goes by code, place and part.
func order(a, b Warning) int {
	sign := func(x, y float64) int {
		switch {
		case x < y:
			return -1
		case x > y:
			return 1
		}
		return 0
	}
	for _, r := range [...]int{
		int(b.Severity) - int(a.Severity),
		strings.Compare(string(a.Code), string(b.Code)),
		sign(a.At.X, b.At.X),
		sign(a.At.Y, b.At.Y),
		strings.Compare(string(a.Part), string(b.Part)),
	} {
		if r != 0 {
			return r
		}
	}
	return 0
}
