package picture

import (
	"cmp"
	"math"
	"slices"

	"example.org/castwright/model/geom"
	"example.org/castwright/model/slab"
)

// channel is the space of one channel, open upward, and over the edge where it
// runs out of the top.
type channel struct {
	plan   *field
	depth  float64
	filled bool
	coat   float64  // mm of resin that stand above the face
	falls  bool     // it leaves the top: the fill runs down the edge
	mouth  geom.Vec // a place in the middle of where it leaves
	runs   []run
	resin  resin
}

const (
	bankDraft  = 0.10 // how much a bank leans, so that the board comes out
	footFillet = 3.0  // mm, where the bank meets the floor
)

func newChannel(r slab.Recess, b *body, plan *field) channel {
	c := channel{plan: plan, depth: min(r.Depth, b.t-1), filled: r.Fill.Resin}
	if c.filled {
		c.coat = max(0, min(25, r.Fill.TopCoat.MM()))
	}
	for _, l := range r.Loops {
		for i, p := range l {
			q := l[(i+1)%len(l)]
			for k := range 4 {
				m := p.Lerp(q, float64(k)/4)
				if d := b.outline.at(m.X, m.Y); d > 0.5 {
					c.falls = true
				}
			}
		}
	}
	c.falls = c.falls && c.filled // an empty one is a notch in the edge
	if c.falls {
		c.mouth, c.falls = mouthOf(plan, b)
	}
	if c.falls {
		last := len(b.segs) - 1
		c.runs = runsOf(b.way[last]+b.segs[last].a.Dist(b.segs[last].b), b.t)
	}
	c.resin = newResin(r.Fill, c.depth+c.coat)
	return c
}

// mouthOf is the middle of where a channel leaves the top: of the foremost of its
// mouths that are at no wall, if there is one. ok is false when it leaves nowhere.
func mouthOf(plan *field, b *body) (mouth geom.Vec, ok bool) {
	f := b.outline
	type place struct {
		geom.Vec
		wall bool
	}
	var all []place
	for k, d := range f.d {
		if math.Abs(float64(d)) < f.step && plan.d[k] < 0 {
			all = append(all, place{f.node(k%f.nx, k/f.nx), b.edges[max(0, f.near[k])].wall})
		}
	}
	if len(all) == 0 {
		return geom.Vec{}, false
	}
	first := slices.MinFunc(all, func(p, q place) int {
		if p.wall != q.wall {
			return map[bool]int{true: 1, false: -1}[p.wall]
		}
		return cmp.Compare(p.Y, q.Y)
	})
	// From the first one on, all that are joined to it.
	mine := []geom.Vec{first.Vec}
	for k := 0; k < len(mine); k++ {
		all = slices.DeleteFunc(all, func(p place) bool {
			near := p.Dist(mine[k]) < 4*f.step
			if near {
				mine = append(mine, p.Vec)
			}
			return near
		})
	}
	for _, p := range mine[1:] { // the first one is among them
		mouth = mouth.Add(p.Mul(1 / float64(len(mine)-1)))
	}
	return mouth, true
}

// at is the distance to the channel's space, negative inside. It has banks that
// lean, a rounded foot, and a depth that is measured from the skin where it runs
// over the edge, less and less of it further down.
func (c *channel) at(b *body, p v3, g spot) float64 {
	plan := c.plan.in(g)
	if plan > 30 {
		return plan - 20
	}
	h := p.Z - b.t
	bank := plan + bankDraft*max(0, -h)
	floor := -h - c.depth
	if c.falls {
		d, _, node := b.about(g)
		d, e, _ := b.edge(p, d, node.near)
		// Over the edge the notch shallows to a skim.
		way := max(0, -h-c.depth)
		depth := c.depth * (0.22 + 0.78*math.Exp(-way/(0.7*c.depth)))
		floor = -e.bend(d, h, 1e4) - depth
		bank = plan
	}
	// A smooth maximum: an arc of the fillet's radius joins bank and floor.
	r := min(footFillet, 0.6*c.depth)
	if x, y := bank+r, floor+r; x > 0 && y > 0 {
		return (math.Sqrt(x*x+y*y) - r) * 0.95
	}
	return max(bank, floor) * 0.95
}
