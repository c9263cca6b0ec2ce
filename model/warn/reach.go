package warn

import "math"

// reach is the three lengths, mm, that one way of carrying is judged by, and
// who set the two that can come from either view.
type reach struct {
	note, caution, severe float64
	cautionBy, severeBy   Limit
}

func newReach(usable, rupture, stone float64, byStone Limit) reach {
	r := reach{min(usable, rupture, stone), rupture, stone, stripRupture, byStone}
	if stone < rupture {
		r.caution, r.severe = stone, rupture
		r.cautionBy, r.severeBy = byStone, stripRupture
	}
	return r
}

// judge gives the step that length breaks and who set it.
func (r reach) judge(length float64) (Step, Limit, bool) {
	switch {
	case length > r.severe+near:
		return Step{Severe, r.severe}, r.severeBy, true
	case length > r.caution+near:
		return Step{Caution, r.caution}, r.cautionBy, true
	case length > r.note+near:
		return Step{Note, r.note}, stripUsable, true
	}
	return Step{}, Limit{}, false
}

// spanReach is how far the strip may span.
func (s strip) spanReach() reach {
	return newReach(s.spanFor(usableStress(assumedFc), person),
		s.spanFor(ruptureStress(assumedFc), person),
		stone(stoneSpanThin, stoneSpanThick, s.thickness), stoneSpanThick)
}

// overhangReach is how far the strip may overhang a top that is width mm wide
// in the same direction.
func (s strip) overhangReach(width float64) reach {
	long, by := stone(stoneOverhangThin, stoneOverhangThick, s.thickness), stoneOverhangThick
	if third := width * stoneOverhangShare.Steps[0].Value; third < long {
		long, by = third, stoneOverhangShare
	}
	return newReach(s.cantileverFor(usableStress(assumedFc), person),
		s.cantileverFor(ruptureStress(assumedFc), person), long, by)
}

// carrying finds the worst overhang and the worst span of the top: see carry.go
// for what they are and strip.go for how long they may be.
func (c *check) carrying(b *bearings) {
	density := c.m.Mix.CuredDensity
	if !(density > 0) || math.IsInf(density, 1) {
		density = usualDensity
	}
	s := strip{c.s.Thickness, density}
	spans := s.spanReach()
	least := min(s.overhangReach(math.Inf(1)).note, spans.note/2)
	var overhang, span worst
	for _, h := range b.hangs(least) {
		over := s.overhangReach(h.width)
		asOverhang, asSpan := h.overhang/over.caution, h.span/spans.caution
		if asOverhang <= asSpan {
			overhang.take(asOverhang, h.overhang, over, h)
		} else {
			span.take(asSpan, h.span, spans, h)
		}
	}
	c.overhang(overhang)
	c.span(span)
}

// worst is the worst carried spot of its kind.
type worst struct {
	share, length float64
	reach         reach
	at            hang
}

func (w *worst) take(share, length float64, r reach, h hang) {
	// A hair's lead is needed, so that rounding can't choose among spots that
	// are equally far out.
	if share > w.share*(1+1e-9) {
		*w = worst{share, length, r, h}
	}
}

func (w *worst) judge() (Step, Limit, bool) {
	if w.share == 0 || math.IsInf(w.length, 1) {
		return Step{}, Limit{}, false
	}
	return w.reach.judge(w.length)
}
