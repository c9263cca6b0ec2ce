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
