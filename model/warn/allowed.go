package warn

import (
	"cmp"
	"math"
	"slices"

	"example.org/castwright/model/geom"
)

// allowed is the three lengths, mm, that one way of carrying is judged by, and
// who set the two that can come from either view.
type allowed struct {
	note, caution, severe float64
	cautionBy, severeBy   Limit
}

func newAllowed(usable, rupture, stone float64, byStone Limit) allowed {
	a := allowed{min(usable, rupture, stone), rupture, stone, stripRupture, byStone}
	if stone < rupture {
		a.caution, a.severe = stone, rupture
		a.cautionBy, a.severeBy = byStone, stripRupture
	}
	return a
}

// judge gives the step that length breaks and who set it.
func (a allowed) judge(length float64) (Step, Limit, bool) {
	switch {
	case length > a.severe+near:
		return Step{Severe, a.severe}, a.severeBy, true
	case length > a.caution+near:
		return Step{Caution, a.caution}, a.cautionBy, true
	case length > a.note+near:
		return Step{Note, a.note}, stripUsable, true
	}
	return Step{}, Limit{}, false
}

// allowedSpan is how far the strip may span.
func (s strip) allowedSpan() allowed {
	return newAllowed(s.spanFor(usableStress(assumedFc), person),
		s.spanFor(ruptureStress(assumedFc), person),
		stone(stoneSpanThin, stoneSpanThick, s.thickness), stoneSpanThick)
}

// allowedOverhang is how far the strip may overhang a top that is width mm wide
// in the same direction.
func (s strip) allowedOverhang(width float64) allowed {
	long, by := stone(stoneOverhangThin, stoneOverhangThick, s.thickness), stoneOverhangThick
	if third := width * stoneOverhangShare.Steps[0].Value; third < long {
		long, by = third, stoneOverhangShare
	}
	return newAllowed(s.cantileverFor(usableStress(assumedFc), person),
		s.cantileverFor(ruptureStress(assumedFc), person), long, by)
}

// strip is a strip of this top.
func (c *check) strip() strip {
	density := c.m.Mix.CuredDensity
	if !(density > 0) || math.IsInf(density, 1) {
		density = usualDensity
	}
	return strip{c.s.Thickness, density}
}

// shortest is the length in mm up to which nothing is called an overhang, even
// where it is more than a third of a narrow top: 2 in.
const shortest = 2 * inch

// carrying finds the worst overhang and the worst span of the top: see carry.go
// for what they are and strip.go for how long they may be.
func (c *check) carrying(b *bearings) {
	s := c.strip()
	spans := s.allowedSpan()
	least := min(s.allowedOverhang(math.Inf(1)).note, spans.note/2, shortest)
	var hangs []spotted
	for _, p := range c.spots() {
		if h, ok := b.hang(p, least); ok {
			over := s.allowedOverhang(h.width)
			hangs = append(hangs, spotted{share: h.reach / over.caution, allowed: over, hang: h})
		}
	}
	// A spot's share as an overhang or a span is never more than its reach
	// makes of it, so that those with the least reach need no close look once
	// worse spots are known.
	slices.SortStableFunc(hangs, func(a, b spotted) int { return cmp.Compare(b.share, a.share) })
	var overhang, span worst
	for _, h := range hangs {
		byOverhang := h.overhang / h.allowed.caution
		if h.overhang > 0 && byOverhang <= 1 {
			overhang.take(h.as(byOverhang, h.overhang, h.allowed))
			continue
		}
		if !span.beaten(h.share) && (h.overhang == 0 || !overhang.beaten(byOverhang)) {
			continue
		}
		length, round := b.span(h.place, h.from.Sub(h.at))
		bySpan := length / spans.caution
		switch {
		case h.overhang > 0 && byOverhang <= bySpan:
			overhang.take(h.as(byOverhang, h.overhang, h.allowed))
		case bySpan <= h.share:
			h.round = round
			span.take(h.as(bySpan, length, spans))
		}
	}
	c.overhang(overhang)
	c.span(b, span)
}

// spotted is a spot and the length that it is judged by.
type spotted struct {
	share  float64 // of the length at which a caution is given
	length float64 // mm
	round  bool    // whether a span is set by bearings all round
	allowed
	hang
}

// as is the spot judged by another length.
func (s spotted) as(share, length float64, a allowed) spotted {
	s.share, s.length, s.allowed = share, length, a
	return s
}

// spans reports whether a spot is carried as a span of some length. In the
// middle of a span a bearing is half as far as the span is long; where one is
// nearer, as before a rail, that holds the spot.
func (s strip) spans(h hang, length float64) bool {
	return length/s.allowedSpan().caution <= h.reach/s.allowedOverhang(h.width).caution
}

// worst is the spots that are worst carried, equally badly.
type worst []spotted

// equal is by how little, as a share, two spots may differ and count as equal.
const equal = 1e-9

// beaten reports whether a spot of some share is as bad as the worst, or worse.
func (w worst) beaten(share float64) bool {
	return len(w) == 0 || share >= w[0].share*(1-equal)
}

func (w *worst) take(s spotted) {
	switch {
	case len(*w) == 0 || s.share > (*w)[0].share*(1+equal):
		*w = worst{s}
	case w.beaten(s.share):
		*w = append(*w, s)
	}
}

// judge gives the step that the worst spots break, who set it, and the spot in
// their midst.
func (w worst) judge() (s spotted, step Step, by Limit, broken bool) {
	if len(w) == 0 {
		return
	}
	var sum geom.Vec
	for _, o := range w {
		sum = sum.Add(o.at)
	}
	mid := sum.Mul(1 / float64(len(w)))
	s = w[0]
	for _, o := range w[1:] {
		if o.at.Dist(mid) < s.at.Dist(mid)-near {
			s = o
		}
	}
	step, by, broken = s.judge(s.length)
	return
}
