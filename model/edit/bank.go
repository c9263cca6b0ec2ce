package edit

import (
	"fmt"
	"math"
	"slices"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
)

// BankSide says along which banks of a channel a bed runs.
type BankSide = design.BankSide

// The sides.
const (
	BothBanks = design.BothBanks
	LeftBank  = design.LeftBank
	RightBank = design.RightBank
)

// BankGlass adds a glass bed along a channel: a strip so wide that follows the
// bank at an offset, to [BrushTolerance]. All else of the bed is as given. One
// bed is added for each piece of the strip, under fresh IDs. The beds keep to the
// bank by a relation: they are laid anew when the channel changes.
func BankGlass(channel design.ID, side BankSide, offset, width units.Length, g design.GlassBed) Edit {
	g = cloneGlass(g)
	return newEdit("Line bank with glass", func(d design.Design) (design.Design, error) {
		err := firstOf(
			checkLength("the offset", offset, 0),
			checkLength("the width", width, units.Millimetre),
			checkGlass(d, g),
		)
		if err != nil {
			return d, err
		}
		c := channelOf(d, channel)
		if c == nil {
			return d, fmt.Errorf("there is no channel %q in this design: pick one that is there", channel)
		}
		if side > RightBank || side != BothBanks && len(c.Rivers) == 0 {
			return d, fmt.Errorf("%s has no river and so no left and right: line it all round", channel)
		}
		regions := bankRegions(*c, side, offset.MM(), (offset + width).MM())
		if len(regions) == 0 {
			return d, fmt.Errorf("%s has no bank yet: draw its river first", channel)
		}
		if len(d.Relations)+len(regions) > design.MaxRelations {
			return d, fmt.Errorf("a design keeps %d relations: cut one first", design.MaxRelations)
		}
		d.Glass, d.Relations = slices.Clone(d.Glass), slices.Clone(d.Relations)
		for _, r := range regions {
			bed := g
			bed.ID, bed.Region = NextID(d, glass.prefix), r
			d.Glass = append(d.Glass, bed)
			d.Relations = append(d.Relations, design.Relation{Kind: design.RelationBank, Part: bed.ID, Other: channel,
				Bank: side, Distance: offset, Width: width})
		}
		return d, nil
	})
}

func channelOf(d design.Design, id design.ID) *design.Channel {
	for i := range d.Channels {
		if d.Channels[i].ID == id {
			return &d.Channels[i]
		}
	}
	return nil
}

// bankRegions are the regions from one distance to another of a channel.
func bankRegions(c design.Channel, side BankSide, from, to float64) []design.Region {
	var sweep geom.Sweep
	// The bank of an open end is off the top, and the strip need not go round
	// the end: within the channel counts what it covers when it runs on.
	channel := onGrid(sweep.Union(onGrid(channelLoops(c, 0))...))
	on := onGrid(sweep.Union(onGrid(channelLoops(c, 2*to))...))
	if len(channel) == 0 {
		return nil
	}
	box := geom.EmptyBox()
	for _, l := range channel {
		box = box.Union(l.Bounds())
	}
	inner, outer := onGrid(grownLoops(on, from)), onGrid(grownLoops(channel, to))
	const (
		within = 1 << iota
		strip
		half
	)
	sweep.Reset(box.Centre())
	for _, l := range inner {
		sweep.Add(0, l)
	}
	for _, l := range outer {
		sweep.Add(1, l)
	}
	want := uint64(strip)
	if side != BothBanks {
		want |= half
		for _, l := range onGrid(besideRiver(c.Rivers[0], side, to)) {
			sweep.Add(2, l)
		}
	}
	return regionsOf(sweep.Loops(func(layers uint64) bool { return layers&within == 0 && layers&want == want }))
}

// channelLoops are the loops whose union is a channel. An open end runs on by
// its width, to be past an edge that it meets aslant, and so much more.
func channelLoops(c design.Channel, more float64) []geom.Loop {
	var out []geom.Loop
	for _, r := range c.Rivers {
		if n := len(r.Nodes); n > 0 {
			open := math.Max(r.Nodes[0].Width.MM(), r.Nodes[n-1].Width.MM())
			out = append(out, riverLoops(r, brushTolerance/4, open+more)...)
		}
	}
	var sweep geom.Sweep
	for _, r := range c.Regions {
		outer := flatChain(r.Outer)
		if len(outer) < 3 {
			continue
		}
		sweep.Reset(outer.Bounds().Centre())
		sweep.Add(0, outer)
		for _, island := range r.Islands {
			sweep.Add(1, flatChain(island))
		}
		out = append(out, sweep.Loops(func(layers uint64) bool { return layers == 1 })...)
	}
	return out
}

// grownLoops are loops whose union is a region grown by a distance, round at
// its corners; the region is bounded by loops, holes clockwise.
func grownLoops(region []geom.Loop, by float64) []geom.Loop {
	out := slices.Clone(region)
	if by <= 0 {
		return out
	}
	for _, l := range region {
		n := len(l)
		for i, p := range l {
			q, before := l[(i+1)%n], l[(i+n-1)%n]
			out = append(out, strip(p, q, -by))
			out = append(out, fan(p, p.Sub(before), q.Sub(p), -by)...)
		}
	}
	return out
}

// strip is the rectangle between p and q and their parallel at a distance to
// the left, or to the right when that is negative, run counter-clockwise.
func strip(p, q geom.Vec, left float64) geom.Loop {
	out := q.Sub(p).Unit().Left().Mul(left)
	if left < 0 {
		return geom.Loop{p, p.Add(out), q.Add(out), q}
	}
	return geom.Loop{p, q, q.Add(out), p.Add(out)}
}

// fan is the sector about p between the strips of the ways that come in and go
// out, where they gape; nil where they overlap.
func fan(p, in, out geom.Vec, left float64) []geom.Loop {
	turn := math.Atan2(in.Cross(out), in.Dot(out))
	if turn*left >= 0 {
		return nil
	}
	steps := max(1, int(math.Ceil(math.Abs(turn)/(2*math.Acos(math.Max(0, 1-brushTolerance/2/math.Abs(left)))))))
	l := geom.Loop{p}
	arm := in.Unit().Left().Mul(left)
	for k := range steps + 1 {
		l = append(l, p.Add(arm.Turn(turn*float64(k)/float64(steps))))
	}
	if l.Area() < 0 {
		l = l.Reversed()
	}
	return []geom.Loop{l}
}

// besideRiver are loops whose union is what lies to one side of a river's
// centreline, as far as its widest place and a distance beyond; the line runs
// straight on at both ends.
func besideRiver(r design.River, side BankSide, beyond float64) []geom.Loop {
	var points []geom.Vec
	var widths []float64
	reach := beyond
	for _, n := range r.Nodes {
		p := vec(n.At)
		if k := len(points); k > 0 && p.Dist(points[k-1]) < 1e-6 {
			continue
		}
		points, widths = append(points, p), append(widths, 0)
		reach = math.Max(reach, n.Width.MM()/2+beyond)
	}
	band, ok := geom.NewBand(points, widths)
	if !ok {
		return nil
	}
	reach *= 2 // open ends run on by a width
	line := geom.Thinned(band.Flatten(brushTolerance/4).Centreline(), brushTolerance/8)
	n := len(line)
	line = append([]geom.Vec{line[0].Sub(line[1].Sub(line[0]).Unit().Mul(reach))}, line...)
	line = append(line, line[n].Add(line[n].Sub(line[n-1]).Unit().Mul(reach)))
	left := reach
	if side == RightBank {
		left = -reach
	}
	var out []geom.Loop
	for i := 1; i < len(line); i++ {
		out = append(out, strip(line[i-1], line[i], left))
		if i+1 < len(line) {
			out = append(out, fan(line[i], line[i].Sub(line[i-1]), line[i+1].Sub(line[i]), left)...)
		}
	}
	return out
}
