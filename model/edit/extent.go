package edit

import (
	"math"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
)

// bankTolerance is how near, in millimetres, a river's banks are followed where
// only their reach counts.
const bankTolerance = 0.05

// Extent is the box that a part takes up in plan, by its left front and right
// back corners: of a sink its shape, corners uncut; of tap holes all of the
// set; of a channel its rivers without what open ends add, and its regions.
// False when the part is not there or has no points.
func Extent(d design.Design, id design.ID) (min, max design.Point, ok bool) {
	box := extent(d, id)
	if box.Empty() {
		return design.Point{}, design.Point{}, false
	}
	return point(box.Min), point(box.Max), true
}

func extent(d design.Design, id design.ID) geom.Box {
	switch kind, i := d.Find(id); kind {
	case design.PartSink:
		return sinkExtent(d.Sinks[i])
	case design.PartTaps:
		return tapsExtent(d, d.Taps[i])
	case design.PartHole:
		return around(vec(d.Holes[i].At), d.Holes[i].Diameter.MM()/2)
	case design.PartChannel:
		return channelExtent(d.Channels[i])
	case design.PartGlass:
		return boundsOf(d.Glass[i].Region.Outer)
	case design.PartSupport:
		return supportExtent(d.Supports[i])
	}
	return geom.EmptyBox()
}

func around(p geom.Vec, r float64) geom.Box { return geom.Box{Min: p, Max: p}.Grow(math.Abs(r)) }

func sinkExtent(s design.Sink) geom.Box {
	at, turn := vec(s.At), s.Rotation.Radians()
	sin, cos := math.Sincos(turn)
	w, d := math.Abs(s.Shape.Width.MM())/2, math.Abs(s.Shape.Depth.MM())/2
	switch s.Shape.Kind {
	case design.ShapeCircle:
		return around(at, w)
	case design.ShapeEllipse:
		half := geom.Vec{X: math.Hypot(w*cos, d*sin), Y: math.Hypot(w*sin, d*cos)}
		return geom.Box{Min: at.Sub(half), Max: at.Add(half)}
	case design.ShapePath:
		return boundsOf(turned(s.Shape.Path, design.Point{}, s.Rotation, s.At))
	case design.ShapeD:
		front := s.Shape.Bow.MM() - d
		left := design.Node{At: point(geom.Vec{X: -w, Y: front})}
		left.Edge.Curve, left.Edge.Rise = design.CurveArc, s.Shape.Bow
		path := []design.Node{left, {At: point(geom.Vec{X: w, Y: front})},
			{At: point(geom.Vec{X: w, Y: d})}, {At: point(geom.Vec{X: -w, Y: d})}}
		return boundsOf(turned(path, design.Point{}, s.Rotation, s.At))
	}
	half := geom.Vec{X: math.Abs(w*cos) + math.Abs(d*sin), Y: math.Abs(w*sin) + math.Abs(d*cos)}
	return geom.Box{Min: at.Sub(half), Max: at.Add(half)}
}

// outerHole is how far the outer holes of a pattern stand from its place.
func outerHole(p design.TapPattern) units.Length {
	switch p {
	case design.TapThree4:
		return 2 * units.Inch
	case design.TapThree8:
		return 4 * units.Inch
	}
	return 0
}

func tapsExtent(d design.Design, t design.TapSet) geom.Box {
	holes := []design.Point{{X: -outerHole(t.Pattern)}, {X: outerHole(t.Pattern)}}
	if t.Pattern == design.TapOwn {
		holes = t.Holes
	}
	at, turn := tapsPlace(d, t)
	box := geom.EmptyBox()
	for _, h := range holes {
		box = box.Union(around(vec(at).Add(vec(h).Turn(turn.Radians())), t.Diameter.MM()/2))
	}
	return box
}

func channelExtent(c design.Channel) geom.Box {
	box := geom.EmptyBox()
	for _, r := range c.Rivers {
		for _, n := range r.Nodes {
			box = box.Include(vec(n.At))
		}
		for _, l := range riverLoops(r, bankTolerance, 0) {
			box = box.Union(l.Bounds())
		}
	}
	for _, r := range c.Regions {
		box = box.Union(boundsOf(r.Outer))
	}
	return box
}

// riverLoops are the loops whose union is a river, flattened. An open end runs
// on by so many millimetres.
func riverLoops(r design.River, tolerance, open float64) []geom.Loop {
	var points []geom.Vec
	var widths []float64
	for _, n := range r.Nodes {
		p := vec(n.At)
		if k := len(points); k > 0 && p.Dist(points[k-1]) < 1e-6 {
			continue
		}
		points, widths = append(points, p), append(widths, math.Max(0, n.Width.MM()))
	}
	band, ok := geom.NewBand(points, widths)
	if !ok {
		return nil
	}
	end := func(e design.RiverEnd) geom.BandEnd {
		if e == design.EndOpen {
			return geom.BandEnd{Extend: open}
		}
		return geom.BandEnd{Round: e == design.EndRound}
	}
	return band.Flatten(tolerance).Loops(end(r.Start), end(r.End))
}

func supportExtent(s design.Support) geom.Box {
	box := geom.EmptyBox()
	half := math.Abs(s.Width.MM()) / 2
	if s.Patch || len(s.Line) == 1 {
		for _, p := range s.Line {
			box = box.Include(vec(p))
		}
		return box
	}
	for i := 1; i < len(s.Line); i++ {
		a, b := vec(s.Line[i-1]), vec(s.Line[i])
		out := b.Sub(a).Unit().Left().Mul(half)
		for _, p := range [...]geom.Vec{a.Add(out), a.Sub(out), b.Add(out), b.Sub(out)} {
			box = box.Include(p)
		}
	}
	return box
}

// turned is a closed chain turned about a point that is then moved to another.
func turned(nodes []design.Node, about design.Point, by units.Angle, to design.Point) []design.Node {
	out := make([]design.Node, len(nodes))
	for i, n := range nodes {
		n.At = turnedPoint(n.At, about, by, to)
		if n.Edge.Curve == design.CurveSpline {
			n.Edge.C1 = turnedPoint(n.Edge.C1, about, by, to)
			n.Edge.C2 = turnedPoint(n.Edge.C2, about, by, to)
		}
		out[i] = n
	}
	return out
}

func turnedPoint(p, about design.Point, by units.Angle, to design.Point) design.Point {
	return point(vec(p.Sub(about)).Turn(by.Radians())).Add(to)
}
