//go:build window

package main_test

import (
	"fmt"
	"math"
	"slices"

	"example.org/castwright/model/design"
	"example.org/castwright/model/units"
	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/shopspring/decimal"
)

// sameJob compares two jobs by what they mean and gives the differences, "" for
// none: lengths are equal within 0.01 mm, other numbers to a part in a thousand
// million; IDs are only names, and parts of a kind, and relations, may stand in
// any order.
func sameJob(want, got design.Job) string {
	return cmp.Diff(plainJob(want), plainJob(got), cmpopts.EquateEmpty(),
		cmp.Comparer(func(a, b units.Length) bool { return (a - b).Abs() <= 10*units.Micrometre }),
		cmp.Comparer(func(a, b float64) bool { return math.Abs(a-b) <= 1e-9*math.Max(1, math.Abs(a)) }),
		cmp.Comparer(func(a, b decimal.Decimal) bool { return a.Equal(b) }))
}

// plainJob is a job with its parts in order of their places and named after their
// kind and place in that order.
func plainJob(j design.Job) design.Job {
	j.Options = slices.Clone(j.Options)
	for i := range j.Options {
		j.Options[i].Design = plainDesign(j.Options[i].Design)
	}
	return j
}

func plainDesign(d design.Design) design.Design {
	names := map[design.ID]design.ID{"": ""}
	d.Sinks = inOrder(d.Sinks, func(k design.Sink) string { return place(k.At) })
	d.Taps = inOrder(d.Taps, func(k design.TapSet) string { return fmt.Sprint(place(k.At), k.Sink, k.SetBack) })
	d.Holes = inOrder(d.Holes, func(k design.Hole) string { return place(k.At) })
	d.Channels = inOrder(d.Channels, func(k design.Channel) string {
		for _, r := range k.Rivers {
			return place(r.Nodes[0].At)
		}
		return place(k.Regions[0].Outer[0].At)
	})
	d.Glass = inOrder(d.Glass, func(k design.GlassBed) string { return place(k.Region.Outer[0].At) })
	d.Supports = inOrder(d.Supports, func(k design.Support) string { return fmt.Sprint(k.Kind, place(k.Line[0])) })
	rename := func(kind string, i int, id *design.ID) {
		names[*id] = design.ID(fmt.Sprintf("%s-%d", kind, i+1))
		*id = names[*id]
	}
	for i := range d.Sinks {
		rename("sink", i, &d.Sinks[i].ID)
	}
	for i := range d.Taps {
		rename("taps", i, &d.Taps[i].ID)
		d.Taps[i].Sink = names[d.Taps[i].Sink]
	}
	for i := range d.Holes {
		rename("hole", i, &d.Holes[i].ID)
	}
	for i := range d.Channels {
		rename("channel", i, &d.Channels[i].ID)
	}
	for i := range d.Glass {
		rename("glass", i, &d.Glass[i].ID)
	}
	for i := range d.Supports {
		rename("support", i, &d.Supports[i].ID)
	}
	d.Relations = slices.Clone(d.Relations)
	for i := range d.Relations {
		r := &d.Relations[i]
		r.Part, r.Other, r.Second = names[r.Part], names[r.Other], names[r.Second]
	}
	d.Relations = inOrder(d.Relations, func(r design.Relation) string { return fmt.Sprint(r.Kind, r.Part, r.Axis, r.End) })
	return d
}

// place writes a place so that the order of the words is that of the places.
func place(p design.Point) string {
	const far = 1000 * units.Metre
	return fmt.Sprintf("%020d %020d", p.X+far, p.Y+far)
}

func inOrder[T any](parts []T, by func(T) string) []T {
	out := slices.Clone(parts)
	slices.SortStableFunc(out, func(a, b T) int {
		switch x, y := by(a), by(b); {
		case x < y:
			return -1
		case x > y:
			return 1
		}
		return 0
	})
	return out
}
