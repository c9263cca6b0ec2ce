package tool

import (
	"math"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
)

// round is a circle or a part of one that a line may touch.
type round struct {
	c    geom.Vec
	r    float64
	name string
}

// touching holds p where the line from the still end of an arm touches a round:
// a rounded corner, a bowed edge or a hole.
func (s snapper) touching(p geom.Vec) (snap, bool) {
	if s.still == nil || len(s.arms) == 0 || !s.edges {
		return snap{}, false
	}
	for _, o := range s.rounds(p) {
		for _, a := range s.arms {
			for _, q := range tangents(a.fixed, o) {
				if q.Dist(p) <= s.reach {
					return snap{at: q, words: "Tangent to " + o.name,
						guides: []Line{{Points: []geom.Vec{a.fixed, q}}}}, true
				}
			}
		}
	}
	return snap{}, false
}

// rounds are the rounds within reach of p.
func (s snapper) rounds(p geom.Vec) []round {
	var out []round
	add := func(o round) {
		if math.Abs(o.c.Dist(p)-o.r) <= s.reach {
			out = append(out, o)
		}
	}
	if t, ok := s.edgeNear(p, s.reach); ok && t.r > 0 {
		add(round{t.at, t.r, t.name})
	}
	for i, n := range s.d.Outline.Nodes {
		if n.Corner.Kind != design.CornerRounded || vec(n.At).Dist(p) > 4*n.Corner.Size.MM()+s.reach {
			continue
		}
		if dir, sin, ok := bisector(s.d.Outline.Nodes, i); ok && sin > 0 {
			r := n.Corner.Size.MM()
			add(round{vec(n.At).Add(dir.Mul(r / sin)), r, "the " + cornerName(s.d.Outline.Nodes, i)})
		}
	}
	for _, o := range s.s.Openings {
		if o.Diameter > 0 {
			add(round{o.Centre, o.Diameter / 2, "the " + partName(s.d, o.Part)})
		}
	}
	return out
}

// tangents are the two places at which a line from p touches a round: on the
// circle of Thales over p and the centre.
func tangents(p geom.Vec, o round) []geom.Vec {
	d := p.Dist(o.c)
	if d <= o.r*(1+1e-9) {
		return nil
	}
	u := p.Sub(o.c).Unit()
	along, off := o.r*o.r/d, o.r*math.Sqrt(d*d-o.r*o.r)/d
	base := o.c.Add(u.Mul(along))
	return []geom.Vec{base.Add(u.Left().Mul(off)), base.Sub(u.Left().Mul(off))}
}

// smooth adds the line on which a control point lets its edge go on smoothly
// from the one beside it.
func (st *still) smooth(nodes []design.Node, g grip) {
	n := len(nodes)
	if g.side == 0 {
		before := wrap(g.node-1, n)
		_, in := heading(nodes, before)
		st.lines = append(st.lines, line(vec(nodes[g.node].At), in, holdsSmooth, "the "+edgeName(nodes, before)))
		return
	}
	after := wrap(g.node+1, n)
	out, _ := heading(nodes, after)
	st.lines = append(st.lines, line(vec(nodes[after].At), out, holdsSmooth, "the "+edgeName(nodes, after)))
}
