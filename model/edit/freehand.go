package edit

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/stroke"
	"example.org/castwright/model/units"
)

// BranchFromStroke fits a river to a freehand stroke, as [RiverFromStroke] does,
// that leaves a channel's river where the stroke starts in one, or runs into one
// where it ends in one, as water does: along that river's middle, no wider than
// it is there. Without a river of c at either end it is [RiverFromStroke].
func BranchFromStroke(c design.Channel, points []design.Point, width, tolerance units.Length) (r design.River, off units.Length, err error) {
	if err := firstOf(checkLength("the width", width, units.Nanometre),
		checkLength("the tolerance", tolerance, units.Micrometre)); err != nil {
		return r, 0, err
	}
	way := make([]geom.Vec, 0, len(points))
	for _, p := range points {
		if v := vec(p); len(way) == 0 || v != way[len(way)-1] {
			way = append(way, v)
		}
	}
	if len(way) < 2 {
		return r, 0, stroke.ErrShort
	}
	way, from := ledIn(c, way, width.MM()/2)
	slices.Reverse(way)
	way, to := ledIn(c, way, width.MM()/2)
	slices.Reverse(way)
	fit, err := stroke.Nodes(way, tolerance.MM())
	if err != nil {
		return r, 0, err
	}
	for _, p := range fit.Nodes {
		r.Nodes = append(r.Nodes, design.RiverNode{At: point(p), Width: width})
	}
	// The round end within the other river must not show beside it.
	if from > 0 {
		r.Nodes[0].Width = min(width, units.FromMM(from))
	}
	if n := len(r.Nodes) - 1; to > 0 {
		r.Nodes[n].Width = min(width, units.FromMM(to))
	}
	return r, units.FromMM(fit.Off), nil
}

// leadIn is how many widths of the river a branch runs along in it.
const leadIn = 1.5

// ledIn is a way that starts in one of a channel's rivers, or so near that its own
// bank meets it, begun a little way up that river along its middle; the river's
// width there, 0 when it starts in none.
func ledIn(c design.Channel, way []geom.Vec, half float64) ([]geom.Vec, float64) {
	line, width, at, ok := riverAt(c, way[0], half)
	if !ok {
		return way, 0
	}
	lengths := lengthsOf(line)
	total := lengths[len(lengths)-1]
	// Which way the stroke goes once it has left the river.
	out := way[len(way)-1]
	for _, p := range way {
		if p.Dist(way[0]) > width {
			out = p
			break
		}
	}
	along := placeOn(line, lengths, math.Min(total, at+width/8)).Sub(placeOn(line, lengths, math.Max(0, at-width/8)))
	up := -1.0
	if along.Dot(out.Sub(way[0])) < 0 {
		up = 1
	}
	lead := leadIn * width
	if up < 0 {
		lead = math.Min(lead, at)
	} else {
		lead = math.Min(lead, total-at)
	}
	if lead < width/4 {
		return way, 0 // at the river's very end there is no room for one
	}
	const steps = 12
	var led []geom.Vec
	for i := range steps {
		led = append(led, placeOn(line, lengths, at+up*lead*(1-0.6*float64(i)/steps)))
	}
	// The stroke itself is followed from where it is well out of the middle.
	for len(way) > 2 && way[0].Dist(out) > 0 && way[0].Dist(placeOn(line, lengths, at)) < 0.75*width {
		way = way[1:]
	}
	return append(led, way...), width
}

// riverAt is the flattened middle of the river of a channel that covers p best,
// or comes within reach of it, the river's width there, and how far along p lies.
func riverAt(c design.Channel, p geom.Vec, reach float64) (line []geom.Vec, width, at float64, ok bool) {
	best := math.Inf(1)
	for _, r := range c.Rivers {
		var points []geom.Vec
		var widths []float64
		for _, n := range r.Nodes {
			q := vec(n.At)
			if k := len(points); k > 0 && q.Dist(points[k-1]) < 1e-6 {
				continue
			}
			points, widths = append(points, q), append(widths, n.Width.MM())
		}
		band, fine := geom.NewBand(points, widths)
		if !fine {
			continue
		}
		middle := band.Flatten(brushTolerance / 4).Centreline()
		_, dist, along := geom.NearestOnLine(p, middle)
		here := widthOn(points, widths, p)
		if share := dist / here; dist <= here/2+reach && share < best {
			best, line, width, at, ok = share, middle, here, along, true
		}
	}
	return line, width, at, ok
}

// widthOn is a river's width beside the place on the line of its nodes that is
// nearest to p, between those of the nodes.
func widthOn(points []geom.Vec, widths []float64, p geom.Vec) float64 {
	best, out := math.Inf(1), widths[0]
	for i := 1; i < len(points); i++ {
		q := geom.NearestOnSegment(p, points[i-1], points[i])
		if d := q.Dist(p); d < best {
			t := ratio(q.Dist(points[i-1]), points[i].Dist(points[i-1]))
			best, out = d, widths[i-1]+(widths[i]-widths[i-1])*t
		}
	}
	return out
}

func lengthsOf(line []geom.Vec) []float64 {
	out := make([]float64, len(line))
	for i := 1; i < len(line); i++ {
		out[i] = out[i-1] + line[i].Dist(line[i-1])
	}
	return out
}

// placeOn is the place on a line at a length from its start.
func placeOn(line []geom.Vec, lengths []float64, s float64) geom.Vec {
	i, _ := slices.BinarySearch(lengths, s)
	if i == 0 {
		return line[0]
	}
	if i >= len(line) {
		return line[len(line)-1]
	}
	return line[i-1].Lerp(line[i], ratio(s-lengths[i-1], lengths[i]-lengths[i-1]))
}

// LoopFromStroke fits a closed smooth chain of splines to a freehand stroke whose
// ends meet, or nearly so, with as few corners as keep it within tolerance; off
// is how far the two are apart at most. The chain runs counter-clockwise. It is
// the rim of a pool, an island or a glass bed.
func LoopFromStroke(points []design.Point, tolerance units.Length) (chain []design.Node, off units.Length, err error) {
	if err := checkLength("the tolerance", tolerance, units.Micrometre); err != nil {
		return nil, 0, err
	}
	var way []geom.Vec
	for _, p := range points {
		if v := vec(p); len(way) == 0 || v != way[len(way)-1] {
			way = append(way, v)
		}
	}
	if len(way) < 3 {
		return nil, 0, stroke.ErrShort
	}
	if way[0] != way[len(way)-1] {
		way = append(way, way[0])
	}
	if area := geom.Loop(way[:len(way)-1]).Area(); math.Abs(area) < speck {
		return nil, 0, errors.New("the stroke goes round nothing: draw it round an area")
	} else if area < 0 {
		slices.Reverse(way)
	}
	// The fit of the open stroke knows nothing of the seam; when the closed one
	// strays because of it, a closer fit is asked for.
	ask := tolerance.MM()
	for range 6 {
		fit, err := stroke.Nodes(way, ask)
		if err != nil {
			return nil, 0, err
		}
		nodes := fit.Nodes[:len(fit.Nodes)-1]
		if len(nodes) >= 3 {
			spans := closedSpans(nodes)
			if off := loopOff(spans, way); off <= tolerance.MM() {
				chain = make([]design.Node, len(spans))
				for i, s := range spans {
					chain[i] = design.Node{At: point(s.a), Edge: s.edge(design.Edge{})}
				}
				return chain, units.FromMM(off), nil
			}
		}
		ask *= 0.6
	}
	return nil, 0, stroke.ErrWild
}

// seam is how many points a closed spline is run on at both ends so that the
// ends of the natural spline don't tell: what an end does fades by about 0.27
// from point to point.
const seam = 24

// closedSpans are the cubics of the closed spline through points, over the
// lengths of the chords.
func closedSpans(points []geom.Vec) []span {
	n := len(points)
	var way []geom.Vec
	for i := -seam; i <= n+seam; i++ {
		way = append(way, points[((i%n)+n)%n])
	}
	at := lengthsOf(way)
	natural := geom.NewNatural(at, way)
	out := make([]span, n)
	for i := range out {
		from, to := seam+i, seam+i+1
		_, leave, _ := natural.At(at[from])
		_, arrive, _ := natural.At(at[to])
		h := at[to] - at[from]
		out[i] = span{kind: design.CurveSpline, a: way[from], b: way[to],
			c1: way[from].Add(leave.Mul(h / 3)), c2: way[to].Sub(arrive.Mul(h / 3))}
	}
	return out
}

// loopOff is how far a closed chain and a closed way are apart at most, looked
// for from points of each.
func loopOff(spans []span, way []geom.Vec) float64 {
	const steps = 32
	var line []geom.Vec
	for _, s := range spans {
		for k := range steps {
			line = append(line, s.curve().At(float64(k)/steps))
		}
	}
	line = append(line, line[0])
	worst := 0.0
	for _, pair := range [...][2][]geom.Vec{{line, way}, {way, line}} {
		for _, p := range pair[0] {
			_, d, _ := geom.NearestOnLine(p, pair[1])
			worst = math.Max(worst, d)
		}
	}
	return worst
}

// AddPool adds a closed chain to a channel: a pool, which is united with the
// channel's rivers.
func AddPool(id design.ID, chain []design.Node) Edit {
	chain = slices.Clone(chain)
	return channels.change("Add pool", id, func(_ design.Design, c *design.Channel) error {
		if len(chain) < 2 {
			return fmt.Errorf("a pool needs a closed rim: draw it round an area")
		}
		c.Regions = append(c.Regions, design.Region{Outer: slices.Clone(chain)})
		return nil
	})
}

// AddIsland leaves a closed chain standing in a channel. Where one of the
// channel's regions holds it, it is an island of that region. Where it stands in
// rivers, which have no islands, the channel is redrawn as regions with straight
// edges, to [BrushTolerance], its open ends run on beyond the top.
func AddIsland(id design.ID, chain []design.Node) Edit {
	chain = slices.Clone(chain)
	return newEdit("Add island", func(d design.Design) (design.Design, error) {
		add := channels.change("Add island", id, func(_ design.Design, c *design.Channel) error {
			if len(chain) < 2 {
				return fmt.Errorf("an island needs a closed rim: draw it round an area")
			}
			island := flatChain(chain)
			for i, r := range c.Regions {
				if len(c.Rivers) == 0 && holdsLoop(flatChain(r.Outer), island) {
					c.Regions[i].Islands = append(c.Regions[i].Islands, slices.Clone(chain))
					return nil
				}
			}
			return islandInRivers(c, island)
		})
		before := channelOf(d, id)
		out, err := add.change(d)
		if err != nil {
			return d, err
		}
		// Ends that are drawn no more can't stay on an edge.
		if after := channelOf(out, id); before != nil && len(after.Rivers) < len(before.Rivers) {
			for range before.Rivers {
				out.Relations = withoutRiver(out.Relations, id, 0)
			}
		}
		return out, nil
	})
}

func holdsLoop(outer, inner geom.Loop) bool {
	for _, p := range inner {
		if !outer.Contains(p) {
			return false
		}
	}
	return true
}

// islandInRivers redraws a channel as regions less an island.
func islandInRivers(c *design.Channel, island geom.Loop) error {
	var sweep geom.Sweep
	// Open ends run on beyond the top: by a width again, to be past an edge
	// that they meet aslant.
	whole := onGrid(sweep.Union(onGrid(channelLoops(*c, 0))...))
	sweep.Reset(island.Bounds().Centre())
	for _, l := range whole {
		sweep.Add(0, l)
	}
	sweep.Add(1, island)
	covered := false
	left := sweep.Loops(func(layers uint64) bool {
		covered = covered || layers == 3
		return layers == 1
	})
	if !covered {
		return fmt.Errorf("an island lies in a channel: draw it there")
	}
	regions := regionsOf(left)
	if len(regions) == 0 {
		return fmt.Errorf("nothing would be left of the channel: remove it")
	}
	c.Rivers, c.Regions = nil, regions
	return nil
}

// WipeGlass takes what a brush sweeps over out of every glass bed that it meets.
// A bed that it parts becomes several, the largest with the old ID; one that it
// wipes out goes.
func WipeGlass(points []design.Point, width units.Length) Edit {
	loops, err := brushed(points, width)
	return newEdit("Erase glass", func(d design.Design) (design.Design, error) {
		if err != nil {
			return d, err
		}
		met := false
		var beds, parted []design.GlassBed
		for _, g := range d.Glass {
			regions, touched := wiped(g.Region, loops)
			if !touched {
				beds = append(beds, g)
				continue
			}
			met = true
			slices.SortStableFunc(regions, func(a, b design.Region) int {
				return compareFloat(flatChain(b.Outer).Area(), flatChain(a.Outer).Area())
			})
			for i, r := range regions {
				bed := cloneGlass(g)
				bed.Region = r
				if i == 0 {
					beds = append(beds, bed)
				} else {
					parted = append(parted, bed)
				}
			}
			if len(regions) == 0 {
				d.Extra = d.Extra.WithoutPart(g.ID)
			}
		}
		if !met {
			return d, fmt.Errorf("there is no glass there: drag over a bed of glass")
		}
		// Fresh IDs are those that no part had before, whatever goes.
		names := d
		for _, bed := range parted {
			bed.ID = NextID(names, glass.prefix)
			names.Glass = append(slices.Clone(names.Glass), bed)
			beds = append(beds, bed)
		}
		d.Glass = beds
		return d, nil
	})
}

// wiped is what loops leave of a region, and whether they meet it at all.
func wiped(r design.Region, loops []geom.Loop) (left []design.Region, met bool) {
	var sweep geom.Sweep
	sweep.Reset(vec(middleOf(r.Outer)))
	sweep.Add(0, flatChain(r.Outer))
	for _, island := range r.Islands {
		sweep.Add(1, flatChain(island))
	}
	for _, l := range loops {
		sweep.Add(2, l)
	}
	bounds := sweep.Loops(func(layers uint64) bool {
		met = met || layers == bedLayer|paintedLayer
		return layers == bedLayer
	})
	return regionsOf(bounds), met
}

func compareFloat(a, b float64) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

// RegionAt is the region about a place among those that loops bound, outer ones
// counter-clockwise and holes clockwise, with straight edges to
// [BrushTolerance]; false when none holds it.
func RegionAt(loops []geom.Loop, at design.Point) (design.Region, bool) {
	for _, r := range regionsOf(onGrid(loops)) {
		if !flatChain(r.Outer).Contains(vec(at)) {
			continue
		}
		within := true
		for _, island := range r.Islands {
			within = within && !flatChain(island).Contains(vec(at))
		}
		if within {
			return r, true
		}
	}
	return design.Region{}, false
}
