package edit

import (
	"math"
	"slices"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
)

// disc is a circle flattened to half the brush's tolerance, to points on it.
func disc(p geom.Vec, r float64) geom.Loop {
	var out geom.Loop
	n := max(12, int(math.Ceil(math.Pi/math.Acos(math.Max(0, 1-brushTolerance/2/r)))))
	for i := range n {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		out = append(out, p.Add(geom.Vec{X: r * cos, Y: r * sin}))
	}
	return out
}

// onGrid is loops with their points on whole nanometres, where a design's are.
// It takes away edges that are level or upright but for rounding, which a sweep
// may trace wrongly.
func onGrid(loops []geom.Loop) []geom.Loop {
	const grid = 1e6 // nanometres in a millimetre
	for _, l := range loops {
		for i, p := range l {
			l[i] = geom.Vec{X: math.Round(p.X*grid) / grid, Y: math.Round(p.Y*grid) / grid}
		}
	}
	return loops
}

// FlatChain is a closed chain as a polygon, corners untreated, run
// counter-clockwise: good for looking at and for bounds.
func FlatChain(nodes []design.Node) geom.Loop { return flatChain(nodes) }

// flatChain is a closed chain flattened, corners untreated, and run
// counter-clockwise.
func flatChain(nodes []design.Node) geom.Loop {
	var out geom.Loop
	for i := range nodes {
		s := spanOf(nodes, i)
		if s.kind == design.CurveStraight {
			out = append(out, s.a)
			continue
		}
		vs := geom.Flatten(nil, s.curve(), brushTolerance/4)
		for _, v := range vs[:len(vs)-1] {
			out = append(out, v.P)
		}
	}
	onGrid([]geom.Loop{out})
	if out.Area() < 0 {
		return out.Reversed()
	}
	return out
}

// speck is the area, in square millimetres, below which a piece or an island
// of a region is left out.
const speck = 1.0

// regionsOf sorts the boundary loops of a region, outer ones counter-clockwise
// and holes clockwise, into regions with straight edges.
func regionsOf(loops []geom.Loop) []design.Region {
	var outers, holes []geom.Loop
	for _, l := range loops {
		switch area := l.Area(); {
		case area > speck:
			outers = append(outers, l)
		case area < -speck:
			holes = append(holes, l)
		}
	}
	regions := make([]design.Region, len(outers))
	for i, l := range outers {
		regions[i].Outer = straightChain(l)
	}
	for _, h := range holes {
		for i, l := range outers {
			if l.Contains(h[0].Lerp(h[1], 0.5)) {
				regions[i].Islands = append(regions[i].Islands, straightChain(h.Reversed()))
				break
			}
		}
	}
	return regions
}

// straightChain is a loop as a chain of straight edges, with points left out
// that lie within half the brush's tolerance of what is left.
func straightChain(l geom.Loop) []design.Node {
	// Start at the farthest left point, which no thinning takes away.
	first := 0
	for i, p := range l {
		if p.X < l[first].X || p.X == l[first].X && p.Y < l[first].Y {
			first = i
		}
	}
	way := append(append(slices.Clone(l[first:]), l[:first]...), l[first])
	// Part it at the point farthest from there, so that neither half closes.
	far := 0
	for i, p := range way {
		if p.Dist(way[0]) > way[far].Dist(way[0]) {
			far = i
		}
	}
	kept := geom.Thinned(way[:far+1], brushTolerance/2)
	kept = append(kept, geom.Thinned(way[far:], brushTolerance/2)[1:]...)
	out := make([]design.Node, 0, len(kept))
	for _, p := range kept[:len(kept)-1] {
		n := design.Node{At: point(p)}
		if len(out) == 0 || out[len(out)-1].At != n.At {
			out = append(out, n)
		}
	}
	return out
}
