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
	// strays because of it, a closer fit is asked for. That is looked for with
	// quick fits, and a fit with few corners is made at the end alone.
	for ask := tolerance.MM(); ask > tolerance.MM()/16; ask *= 0.6 {
		spans, off, err := closedFit(way, ask, tolerance.MM(), 0)
		if err != nil {
			return nil, 0, err
		}
		if spans == nil {
			continue
		}
		if len(spans) <= fewCorners {
			if few, near, err := closedFit(way, ask, tolerance.MM(), loopTrials); err == nil && few != nil {
				spans, off = few, near
			}
		}
		for _, s := range spans {
			chain = append(chain, design.Node{At: point(s.a), Edge: s.edge(design.Edge{})})
		}
		return chain, units.FromMM(off), nil
	}
	return nil, 0, stroke.ErrWild
}

// The hand waits for a loop: fewer corners are looked for with so many trials,
// some 30 ms, and not where there are many corners, since a trial takes the longer
// and gains the less.
const (
	loopTrials = 80
	fewCorners = 20
)

// closedFit is the closed spline of a fit of the open stroke, nil where it strays
// by more than the tolerance.
func closedFit(way []geom.Vec, ask, tolerance float64, trials int) ([]span, float64, error) {
	fit, err := stroke.NodesWith(trials, sparse(way), ask)
	if err != nil {
		return nil, 0, err
	}
	nodes := fit.Nodes[:len(fit.Nodes)-1]
	if len(nodes) < 3 {
		return nil, 0, nil
	}
	spans := closedSpans(nodes)
	off := loopOff(spans, way[:len(way)-1], tolerance)
	if off > tolerance {
		return nil, 0, nil
	}
	return spans, off, nil
}

// mostFitted is how many points of a stroke the fit looks at; how far it is off
// is measured at all of them.
const mostFitted = 1500

// sparse is a way with only each second point, third, and so on where it has many.
func sparse(way []geom.Vec) []geom.Vec {
	step := len(way)/mostFitted + 1
	if step == 1 {
		return way
	}
	var out []geom.Vec
	for i := 0; i < len(way)-1; i += step {
		out = append(out, way[i])
	}
	return append(out, way[len(way)-1])
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
// for from points of each. Once it is beyond enough, how far no longer matters.
func loopOff(spans []span, way []geom.Vec, enough float64) float64 {
	const steps = 32
	var line geom.Loop
	for _, s := range spans {
		for k := range steps {
			line = append(line, s.curve().At(float64(k)/steps))
		}
	}
	worst := 0.0
	for _, pair := range [...][2]geom.Loop{{line, way}, {way, line}} {
		fence := geom.NewFence(pair[1])
		near, _ := fence.Nearest(pair[0][0])
		for _, p := range pair[0] {
			var d float64
			near, d = fence.NearestFrom(near, p)
			if worst = math.Max(worst, d); worst > enough {
				return worst
			}
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
