package warn

import (
	"math"
	"testing"
)

// The table of a 12 in strip, 1.5 in thick, f'c 4000 psi, 145 lb/ft3, section
// modulus 4.5 in3: stresses from M = w L^2/8, P L/4, w c^2/2 and P c (AISC
// Manual Table 3-23) by hand, in psi.
func TestStripTable(t *testing.T) {
	s := strip{1.5 * inch, usualDensity}
	if got := s.section() / (inch * inch * inch); math.Abs(got-4.5) > 1e-9 {
		t.Errorf("section modulus %.6f in3, want 4.5", got)
	}
	usable, rupture := usableStress(4000)/psi, ruptureStress(4000)/psi
	for _, c := range []struct {
		name           string
		got, want, tol float64
	}{
		{"ACI 318-19 14.5.2.1 and 21.2.1: 0.60 x 5 root 4000 (clause and phi from memory)", usable, 189.7, 0.05},
		{"ACI 318-19 19.2.3.1: 7.5 root 4000", rupture, 474.3, 0.05},
		{"moment that may be counted on, in lb", usable * 4.5, 853.8, 0.05},
		{"simple span 24 in, own weight", s.span(24*inch, 0) / psi, 24.2, 0.05},
		{"simple span 24 in, 300 lb", s.span(24*inch, person) / psi, 424.2, 0.05},
		{"simple span 36 in, 300 lb", s.span(36*inch, person) / psi, 654.4, 0.05},
		{"cantilever 6 in, own weight", s.cantilever(6*inch, 0) / psi, 6.04, 0.005},
		{"cantilever 6 in, 300 lb", s.cantilever(6*inch, person) / psi, 406.0, 0.05},
		{"cantilever 10 in, 300 lb", s.cantilever(10*inch, person) / psi, 683.4, 0.05},
		{"cantilever 12 in, 300 lb", s.cantilever(12*inch, person) / psi, 824.2, 0.05},
	} {
		if math.Abs(c.got-c.want) > c.tol {
			t.Errorf("%s: %.3f psi, want %.3f", c.name, c.got, c.want)
		}
	}
}

// The verdicts that the same table gives, and what the rule of strip.go makes
// of them.
func TestStripVerdicts(t *testing.T) {
	s := strip{1.5 * inch, usualDensity}
	wide := s.allowedOverhang(40 * inch)
	for _, c := range []struct {
		name   string
		reach  allowed
		length float64
		want   int // severity, -1 for none
	}{
		{"span 11 in: 188 psi, below 189.7", s.allowedSpan(), 11 * inch, -1},
		{"span 24 in: exceeds 189.7, below 474.3", s.allowedSpan(), 24 * inch, int(Note)},
		{"span 36 in: exceeds 474.3, stone allows it", s.allowedSpan(), 36 * inch, int(Caution)},
		{"span 37 in: beyond both", s.allowedSpan(), 37 * inch, int(Severe)},
		{"overhang 2.5 in", wide, 2.5 * inch, -1},
		{"overhang 6 in: exceeds 189.7, below 474.3", wide, 6 * inch, int(Note)},
		{"overhang 10 in: exceeds 474.3, stone allows it", wide, 10 * inch, int(Caution)},
		{"overhang 12 in: beyond both", wide, 12 * inch, int(Severe)},
		// Dimension Stone Design Manual, a third of the width: 25.5 in deep,
		// 10 in is too far, 8 in passes that rule (but not strength: 7.0 in).
		{"overhang 10 in of 25.5 in", s.allowedOverhang(25.5 * inch), 10 * inch, int(Severe)},
		{"overhang 8 in of 25.5 in", s.allowedOverhang(25.5 * inch), 8 * inch, int(Caution)},
		// Cracking: 300 c + 0.755 c^2 = 474.3 x 4.5 gives c = 6.99 in.
		{"overhang 6.95 in", wide, 6.95 * inch, int(Note)},
		{"overhang 7.03 in", wide, 7.03 * inch, int(Caution)},
	} {
		got := -1
		if step, _, broken := c.reach.judge(c.length); broken {
			got = int(step.Severity)
		}
		if got != c.want {
			t.Errorf("%s: severity %d, want %d", c.name, got, c.want)
		}
	}
}

// A length is the inverse of its stress, and the stone manual's own rows come
// back at their own thickness.
func TestReach(t *testing.T) {
	for _, thick := range []float64{0.5, 0.75, 1, 1.25, 1.5, 2, 4} {
		s := strip{thick * inch, usualDensity}
		for _, stress := range []float64{usableStress(4000), ruptureStress(4000)} {
			if got := s.span(s.spanFor(stress, person), person); math.Abs(got/stress-1) > 1e-12 {
				t.Errorf("%g in: span for %g MPa has %g MPa", thick, stress, got)
			}
			if got := s.cantilever(s.cantileverFor(stress, person), person); math.Abs(got/stress-1) > 1e-12 {
				t.Errorf("%g in: cantilever for %g MPa has %g MPa", thick, stress, got)
			}
		}
		for _, r := range []allowed{s.allowedSpan(), s.allowedOverhang(1000), s.allowedOverhang(100)} {
			if !(0 < r.note && r.note <= r.caution && r.caution <= r.severe) {
				t.Errorf("%g in: the steps are out of order: %+v", thick, r)
			}
		}
	}
	// Dimension Stone Design Manual: 3/4 in and 1-1/4 in; the rows between and
	// below are proportions of ours.
	for _, c := range []struct{ thick, overhang, span float64 }{
		{0.75, 6, 24}, {1.25, 10, 36}, {1, 8, 30}, {0.375, 3, 12}, {2, 10, 36},
	} {
		over := stone(stoneOverhangThin, stoneOverhangThick, c.thick*inch) / inch
		span := stone(stoneSpanThin, stoneSpanThick, c.thick*inch) / inch
		if math.Abs(over-c.overhang) > 1e-9 || math.Abs(span-c.span) > 1e-9 {
			t.Errorf("%g in thick: overhang %g, span %g in, want %g, %g", c.thick, over, span, c.overhang, c.span)
		}
	}
}
