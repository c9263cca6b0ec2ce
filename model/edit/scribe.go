package edit

import (
	"fmt"
	"slices"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
)

// Offset is one measurement of a wall that is never straight: Along the edge
// from its first corner, the wall stands Gap away from the straight line.
// Positive is away from the top, so the edge reaches out to it.
type Offset struct {
	Along, Gap units.Length
}

// ScribeEdge draws straight edge i through a wall's measured offsets: it
// becomes a chain of straight edges with the same side and profile. Offsets at
// 0 and at the edge's length move its corners; others add one each. They must
// stand in order along the edge.
func ScribeEdge(i int, offsets []Offset) Edit {
	offsets = slices.Clone(offsets)
	return chainEdit("Scribe edge", func(nodes []design.Node) ([]design.Node, edgeMap, error) {
		if err := atEdge(nodes, i); err != nil {
			return nil, nil, err
		}
		a, b := vec(nodes[i].At), vec(nodes[(i+1)%len(nodes)].At)
		length := units.FromMM(a.Dist(b))
		if nodes[i].Edge.Curve != design.CurveStraight || length == 0 {
			return nil, nil, fmt.Errorf("edge %d is not straight: straighten it, then scribe it", i+1)
		}
		along := b.Sub(a).Unit()
		out := along.Left().Mul(-1)
		edge := nodes[i].Edge
		var added []design.Node
		var shares []float64
		var first, last *design.Point
		before := units.Length(-1)
		for k, o := range offsets {
			switch {
			case o.Along <= before:
				return nil, nil, fmt.Errorf("offset %d lies at %s mm, not beyond the one before it: "+
					"list them in order along the edge", k+1, mm(o.Along))
			case o.Along > length:
				return nil, nil, fmt.Errorf("offset %d lies at %s mm and edge %d is %s mm long: "+
					"measure from its first corner", k+1, mm(o.Along), i+1, mm(length))
			case o.Gap.Abs() > length:
				return nil, nil, fmt.Errorf("offset %d: a gap of %s mm is more than the edge is long: check it",
					k+1, mm(o.Gap))
			}
			before = o.Along
			at := point(scribed(a, along, out, o))
			switch o.Along {
			case 0:
				first = &at
			case length:
				last = &at
			default:
				added = append(added, design.Node{At: at, Edge: edge})
				shares = append(shares, o.Along.MM()/length.MM())
			}
		}
		next := (i + 1) % len(nodes)
		if last != nil {
			shiftNode(nodes, next, last.Sub(nodes[next].At))
		}
		if first != nil {
			shiftNode(nodes, i, first.Sub(nodes[i].At))
		}
		return slices.Insert(nodes, i+1, added...), parted(i, shares...), nil
	})
}

func scribed(a, along, out geom.Vec, o Offset) geom.Vec {
	return a.Add(along.Mul(o.Along.MM())).Add(out.Mul(o.Gap.MM()))
}
