package design

import (
	"fmt"
	"math"

	"example.org/castwright/model/units"
)

func (c *checker) outline(o Outline, thickness units.Length) {
	c.chain("outline.nodes", "the outline", o.Nodes)
	for i, n := range o.Nodes {
		c.at = n.At
		edge := fmt.Sprintf("outline.nodes[%d].edge", i)
		c.kind(edge+".side", "the side", uint8(n.Edge.Side), int(SideWall)+1)
		c.profile(edge+".profile", n.Edge.Profile, thickness)
	}
	c.at = Point{}
}

// chain checks the nodes of a closed chain. Sides and profiles are the outline's.
func (c *checker) chain(field, name string, nodes []Node) {
	before := c.at
	defer func() { c.at = before }()
	if len(nodes) > MaxPoints {
		nodes = nodes[:MaxPoints] // parts says so
	}
	curved := false
	for _, n := range nodes {
		curved = curved || n.Edge.Curve == CurveSpline || n.Edge.Curve == CurveArc && n.Edge.Rise != 0
	}
	switch {
	case len(nodes) < 2:
		c.add(RuleMissing, field, "%s has %d nodes: give three, or two with a curved edge", name, len(nodes))
		return
	case len(nodes) == 2 && !curved:
		c.add(RuleMissing, field, "%s has two nodes and straight edges, and so no area: add a node or curve an edge", name)
	}
	places := make(map[Point]int, len(nodes))
	for i, n := range nodes {
		at := fmt.Sprintf("%s[%d]", field, i)
		next := nodes[(i+1)%len(nodes)]
		c.at = n.At
		c.place(at+".at_mm", n.At)
		c.corner(at+".corner", n.Corner)
		c.curve(at+".edge", n, next)
		if k, met := places[n.At]; met && k != i-1 && !(k == 0 && i == len(nodes)-1) {
			c.add(RuleCrossing, at+".at_mm", "node %d lies on node %d, so that %s touches itself: move one of them", i+1, k+1, name)
		}
		places[n.At] = i
	}
}

func (c *checker) corner(field string, k Corner) {
	c.kind(field+".kind", "the corner", uint8(k.Kind), int(CornerChamfered)+1)
	switch k.Kind {
	case CornerRounded:
		c.size(field+".size_mm", "the corner's radius", k.Size)
	case CornerChamfered:
		c.size(field+".size_mm", "the chamfer", k.Size)
	}
}

// maxRise is how many chords the rise of an arc may be; ten leave a gap of eleven
// degrees in the circle.
const maxRise = 10

func (c *checker) curve(field string, n, next Node) {
	e := n.Edge
	c.kind(field+".curve", "the edge", uint8(e.Curve), int(CurveSpline)+1)
	switch e.Curve {
	case CurveArc:
		if e.Rise.Abs() > MaxSize || e.Rise.Abs() < 0 {
			c.add(RuleRange, field+".rise_mm", "the arc's rise is %s: give at most %s either way", mm(e.Rise), mm(MaxSize))
		}
		chord := math.Hypot((next.At.X - n.At.X).MM(), (next.At.Y - n.At.Y).MM())
		if rise := math.Abs(e.Rise.MM()); chord > 0 && rise > maxRise*chord {
			c.add(RuleRise, field+".rise_mm",
				"the arc rises %s over a chord of %.2f mm, all but a full circle: give at most %.0f chords, or use two arcs",
				mm(e.Rise), chord, float64(maxRise))
		}
	case CurveSpline:
		c.place(field+".c1_mm", e.C1)
		c.place(field+".c2_mm", e.C2)
	}
	if n.At == next.At && (e.Curve != CurveSpline || e.C1 == n.At && e.C2 == n.At) {
		c.add(RuleZeroEdge, field, "the edge has no length, because its two nodes lie on each other: remove one of them")
	}
}

// profile checks an edge's profile.
func (c *checker) profile(field string, p Profile, thickness units.Length) {
	c.kind(field+".kind", "the profile", uint8(p.Kind), int(ProfileRough)+1)
	sized := field + ".size_mm"
	switch p.Kind {
	case ProfileEased, ProfileRounded, ProfileBevelled, ProfileRough:
		c.size(sized, "the profile's size", p.Size)
	case ProfileHalfRound:
		if p.Size < 0 || p.Size > MaxSize {
			c.add(RuleRange, sized, "the profile's size is %s: give 0 mm for half the thickness, or at most %s", mm(p.Size), mm(thickness))
		}
	default:
		return
	}
	if p.Kind != ProfileRough && p.Size > thickness && p.Size <= MaxSize {
		c.add(RuleProfile, sized, "the profile's size, %s, is more than the slab is thick, %s: make it smaller; until then it is cut off at the underside",
			mm(p.Size), mm(thickness))
	}
}
