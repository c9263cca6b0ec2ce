package template

import (
	"math"

	"example.org/castwright/model/geom"
)

// curve is what an entity draws.
func (d *dxf) curve(e entity) (run, error) {
	var spans []span
	var err error
	switch e.name {
	case "LINE":
		var v []float64
		v, err = e.nums(10, 20, 11, 21)
		if err == nil {
			spans = []span{{a: geom.Vec{X: v[0], Y: v[1]}, b: geom.Vec{X: v[2], Y: v[3]}}}
		}
	case "ARC", "CIRCLE":
		return e.round()
	case "LWPOLYLINE":
		return e.lightPolyline()
	case "POLYLINE":
		return d.oldPolyline(e)
	case "ELLIPSE":
		spans, err = e.ellipse()
	case "SPLINE":
		spans, err = e.spline()
	default:
		d.raw.notes.count("left out %d piece of another kind (text, hatching, dimensions)",
			"left out %d pieces of other kinds (text, hatching, dimensions)")
	}
	return run{spans: spans}, err
}

// ocs is the map from an entity's own plane, at a height in it, to the drawing,
// seen from above (DXF reference, "arbitrary axis algorithm"). An extrusion of
// 0,0,-1 looks at the plane from behind and so mirrors it.
func (e entity) ocs(height float64) (affine, error) {
	n, err := e.axis()
	if err != nil || n == [3]float64{0, 0, 1} {
		return identity, err
	}
	x := [3]float64{-n[1], n[0], 0}
	if math.Abs(n[0]) < 1.0/64 && math.Abs(n[1]) < 1.0/64 {
		x = [3]float64{n[2], 0, -n[0]}
	}
	l := math.Hypot(math.Hypot(x[0], x[1]), x[2])
	x[0], x[1], x[2] = x[0]/l, x[1]/l, x[2]/l
	y := cross(n, x)
	return affine{x[0], x[1], y[0], y[1], n[0] * height, n[1] * height}, nil
}

// axis is the unit vector of an entity's extrusion.
func (e entity) axis() ([3]float64, error) {
	var n [3]float64
	for i, fallback := range [...]float64{0, 0, 1} {
		v, err := e.num(210+10*i, fallback)
		if err != nil {
			return n, err
		}
		n[i] = v
	}
	l := math.Hypot(math.Hypot(n[0], n[1]), n[2])
	if !(l > 1e-9) || math.IsInf(l, 0) {
		return [3]float64{0, 0, 1}, nil
	}
	return [3]float64{n[0] / l, n[1] / l, n[2] / l}, nil
}

func cross(a, b [3]float64) [3]float64 {
	return [3]float64{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
}

func (e entity) round() (run, error) {
	v, err := e.nums(10, 20, 40, 50, 51, 30)
	if err != nil {
		return run{}, err
	}
	m, err := e.ocs(v[5])
	if err != nil {
		return run{}, err
	}
	c, r := geom.Vec{X: v[0], Y: v[1]}, v[2]
	if r <= 0 {
		return run{}, fail(e.line, "%s has radius %g: it must be above 0", e.name, r)
	}
	if e.name == "CIRCLE" {
		return run{spans: fullCircle(c, r), closed: true}.transform(m), nil
	}
	start := v[3] * math.Pi / 180
	sweep := math.Mod((v[4]-v[3])*math.Pi/180, 2*math.Pi)
	if sweep <= 1e-12 {
		sweep += 2 * math.Pi
	}
	return run{spans: arcSpans(c, r, start, sweep)}.transform(m), nil
}

// arcSpans is an arc in spans of at most a half turn.
func arcSpans(c geom.Vec, r, start, sweep float64) []span {
	n := 1
	if math.Abs(sweep) > math.Pi+1e-9 {
		n = 2
	}
	at := func(t float64) geom.Vec { return c.Add(geom.Vec{X: r}.Turn(t)) }
	step := sweep / float64(n)
	var out []span
	for i := range n {
		t := start + step*float64(i)
		out = append(out, span{kind: arc, a: at(t), b: at(t + step), bulge: math.Tan(step / 4)})
	}
	return out
}

// vertex is one point of a polyline.
type vertex struct {
	at    geom.Vec
	bulge float64
}

func polyline(vs []vertex, closed bool) run {
	n := len(vs)
	if n < 2 {
		return run{}
	}
	last := n - 1
	if closed {
		last = n
	}
	var out []span
	for i := range last {
		s := span{a: vs[i].at, b: vs[(i+1)%n].at}
		if math.Abs(vs[i].bulge) > 1e-7 {
			s.kind, s.bulge = arc, vs[i].bulge
		}
		if s.a != s.b {
			out = append(out, s)
		}
	}
	return run{spans: out, closed: closed}
}

func (e entity) lightPolyline() (run, error) {
	var vs []vertex
	for _, p := range e.groups {
		if p.code != 10 && p.code != 20 && p.code != 42 {
			continue
		}
		v, err := p.float()
		if err != nil {
			return run{}, err
		}
		switch n := len(vs); {
		case p.code == 10:
			vs = append(vs, vertex{at: geom.Vec{X: v}})
		case n == 0:
		case p.code == 20:
			vs[n-1].at.Y = v
		case p.code == 42:
			vs[n-1].bulge = v
		}
	}
	height, err := e.num(38, 0)
	if err != nil {
		return run{}, err
	}
	m, err := e.ocs(height)
	return polyline(vs, e.flag(70)&1 != 0).transform(m), err
}

// oldPolyline reads a POLYLINE; meshes are left out, and so are the control
// points of a curve whose fitted points are there too.
func (d *dxf) oldPolyline(e entity) (run, error) {
	var vs []vertex
	head := true
	skip := false
	for _, p := range e.groups {
		switch p.code {
		case 0:
			if skip {
				vs = vs[:len(vs)-1]
			}
			vs, head, skip = append(vs, vertex{}), false, false
		case 70:
			n, err := p.int()
			if err != nil {
				return run{}, err
			}
			skip = !head && n&16 != 0 // a control point of the curve's frame
		case 10, 20, 42:
			if head {
				continue
			}
			v, err := p.float()
			if err != nil {
				return run{}, err
			}
			last := &vs[len(vs)-1]
			switch p.code {
			case 10:
				last.at.X = v
			case 20:
				last.at.Y = v
			default:
				last.bulge = v
			}
		}
	}
	if skip {
		vs = vs[:len(vs)-1]
	}
	flags := e.flag(70)
	if flags&(16|64) != 0 {
		d.raw.notes.count("left out %d mesh", "left out %d meshes")
		return run{}, nil
	}
	out := polyline(vs, flags&1 != 0)
	if flags&8 != 0 { // three-dimensional polylines have no plane of their own
		return out, nil
	}
	height, err := e.num(30, 0)
	if err != nil {
		return run{}, err
	}
	m, err := e.ocs(height)
	return out.transform(m), err
}

func (e entity) ellipse() ([]span, error) {
	v, err := e.nums(10, 20, 11, 21, 31, 40, 41)
	if err != nil {
		return nil, err
	}
	end, err := e.num(42, 2*math.Pi)
	if err != nil {
		return nil, err
	}
	axis, err := e.axis()
	if err != nil {
		return nil, err
	}
	ratio, start := v[5], v[6]
	major := [3]float64{v[2], v[3], v[4]}
	if major == [3]float64{} || ratio == 0 || math.Abs(ratio) > 1e6 {
		return nil, fail(e.line, "ELLIPSE has an axis without length")
	}
	minor := cross(axis, major)
	c, u, w := geom.Vec{X: v[0], Y: v[1]}, geom.Vec{X: major[0], Y: major[1]}, geom.Vec{X: minor[0] * ratio, Y: minor[1] * ratio}
	sweep := math.Mod(end-start, 2*math.Pi)
	if sweep <= 1e-9 {
		sweep += 2 * math.Pi
	}
	n := max(1, int(math.Ceil(sweep/(math.Pi/8)-1e-9)))
	return ellipseCubics(c, u, w, start, sweep, n), nil
}
