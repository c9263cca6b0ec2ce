package design

import (
	"fmt"
	"math"

	"example.org/castwright/model/units"
)

// The ranges of a design's values. What is cast in a workshop lies well inside.
const (
	MinThickness = 10 * units.Millimetre
	MaxThickness = 150 * units.Millimetre
	MaxPlace     = 20 * units.Metre // of any coordinate, from the origin
	MaxSize      = 10 * units.Metre // of any width, depth, radius or distance
	MaxInlays    = 60               // channels of one design, and glass beds
	MaxParts     = 200              // parts of any other kind
	MaxPattern   = 50               // holes of an own tap pattern
)

// Validate lists every value of the design that is out of its range, with its
// place in the file. What the geometry makes of the values is looked at by
// package slab, whose Validate gives both.
func (d Design) Validate() []Fault {
	c := &checker{ids: map[ID]string{}}
	c.length("thickness_mm", "the thickness", d.Thickness, MinThickness, MaxThickness)
	c.outline(d.Outline, d.Thickness)
	c.parts(d)
	for i, s := range d.Sinks {
		c.sink(fmt.Sprintf("sinks[%d]", i), s, d.Thickness)
	}
	for i, t := range d.Taps {
		c.taps(fmt.Sprintf("taps[%d]", i), t)
	}
	for i, h := range d.Holes {
		c.hole(fmt.Sprintf("holes[%d]", i), h)
	}
	for i, h := range d.Channels {
		c.channel(fmt.Sprintf("channels[%d]", i), h, d.Thickness)
	}
	for i, b := range d.Glass {
		c.bed(fmt.Sprintf("glass_beds[%d]", i), b, d.Thickness)
	}
	c.finish(d.Finish, d.Thickness)
	for i, s := range d.Supports {
		c.support(fmt.Sprintf("supports[%d]", i), s)
	}
	return append(c.faults, d.relationFaults()...)
}

// checker gathers faults; part and at are the part under examination.
type checker struct {
	faults []Fault
	part   ID
	at     Point
	ids    map[ID]string // where each was met
}

func (c *checker) add(rule Rule, field string, detail string, args ...any) {
	c.faults = append(c.faults, Fault{rule, c.part, field, c.at, fmt.Sprintf(detail, args...)})
}

// mm writes a length as the file does.
func mm(l units.Length) string { return units.DecimalMM(l) + " mm" }

// length checks that a length lies from lo to hi.
func (c *checker) length(field, name string, v, lo, hi units.Length) {
	if v < lo || v > hi {
		c.add(RuleRange, field, "%s is %s: give from %s to %s", name, mm(v), mm(lo), mm(hi))
	}
}

// size checks that a length is there and at most MaxSize.
func (c *checker) size(field, name string, v units.Length) {
	switch {
	case v == 0:
		c.add(RuleMissing, field, "%s is missing: give more than 0 mm", name)
	case v < 0 || v > MaxSize:
		c.add(RuleRange, field, "%s is %s: give more than 0 mm and at most %s", name, mm(v), mm(MaxSize))
	}
}

// place checks a point of the plan.
func (c *checker) place(field string, p Point) {
	if p.X.Abs() > MaxPlace || p.Y.Abs() > MaxPlace || p.X.Abs() < 0 || p.Y.Abs() < 0 {
		c.add(RuleRange, field, "the point (%s, %s) lies more than %s from the origin: move it nearer",
			mm(p.X), mm(p.Y), mm(MaxPlace))
	}
}

// share checks a share of a whole.
func (c *checker) share(field, name string, s units.Share) {
	if s < 0 || s > units.Whole {
		c.add(RuleRange, field, "%s is %g %%: give from 0 %% to 100 %%", name, s.Fraction()*100)
	}
}

// kind checks that a kind is one of the first n.
func (c *checker) kind(field, name string, k uint8, n int) {
	if int(k) >= n {
		c.add(RuleKind, field, "%s has the number %d, which is not known: choose one of the %d kinds", name, k, n)
	}
}

// identity starts a part: its ID must be there and its own.
func (c *checker) identity(field string, id ID, at Point) {
	c.part, c.at = id, at
	switch before, met := c.ids[id]; {
	case id == "":
		c.add(RuleMissing, field+".id", "the part has no ID: give it one that no other part has")
	case met:
		c.add(RuleDuplicate, field+".id", "the ID %q is that of %s too: give one of them another", id, before)
	default:
		c.ids[id] = field
	}
}

// parts checks how many parts and points there are.
func (c *checker) parts(d Design) {
	for _, k := range []struct {
		field string
		n     int
		most  int
	}{
		{"sinks", len(d.Sinks), MaxParts}, {"taps", len(d.Taps), MaxParts}, {"holes", len(d.Holes), MaxParts},
		{"channels", len(d.Channels), MaxInlays}, {"glass_beds", len(d.Glass), MaxInlays},
		{"supports", len(d.Supports), MaxParts},
	} {
		if k.n > k.most {
			c.add(RuleCount, k.field, "there are %d: at most %d can be reckoned with, remove some", k.n, k.most)
		}
	}
	if n := d.points(); n > MaxPoints {
		c.add(RuleCount, "outline.nodes",
			"the design has %d points: use at most %d, or splines in place of many short edges", n, MaxPoints)
	}
}

// points counts the points of all chains, rivers, lines and patterns.
func (d Design) points() int {
	n := len(d.Outline.Nodes)
	region := func(r Region) {
		n += len(r.Outer)
		for _, l := range r.Islands {
			n += len(l)
		}
	}
	for _, s := range d.Sinks {
		n += len(s.Shape.Path)
	}
	for _, t := range d.Taps {
		n += len(t.Holes)
	}
	for _, h := range d.Channels {
		for _, v := range h.Rivers {
			n += len(v.Nodes)
		}
		for _, r := range h.Regions {
			region(r)
		}
	}
	for _, b := range d.Glass {
		region(b.Region)
	}
	for _, s := range d.Supports {
		n += len(s.Line)
	}
	return n
}

func (c *checker) finish(f Finish, thickness units.Length) {
	c.part, c.at = "", Point{}
	c.kind("finish.exposure", "the exposure", uint8(f.Exposure), int(ExposureCoarse)+1)
	if f.Polish < 1 || f.Polish > 4 {
		c.add(RuleRange, "finish.polish",
			"the polish is %d: give 1 (flat), 2 (satin), 3 (polished) or 4 (highly polished)", f.Polish)
	}
	if f.Grind < 0 || f.Grind > thickness/2 {
		c.add(RuleRange, "finish.grind_mm", "the grind is %s: give from 0 mm to half the thickness, %s",
			mm(f.Grind), mm(thickness/2))
	}
}

// mass checks a mass in kilograms.
func (c *checker) mass(field, name string, kg float64) {
	if math.IsNaN(kg) || kg < 0 || kg > MaxQuantity {
		c.add(RuleRange, field, "%s is %g kg: give 0 kg or more", name, kg)
	}
}
