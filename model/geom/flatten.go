package geom

import "math"

// MaxTurn is the largest change of direction from one step of a flattened curve
// to the next, 6 degrees: it keeps small radii round on a magnified drawing
// where the tolerance alone would let them look like polygons.
const MaxTurn = 6 * math.Pi / 180

// MaxSteps bounds the steps of one curve.
const MaxSteps = 4096

// Vertex is a point of a flattened curve. The point P + d Off lies on the
// flattened parallel curve at the distance d to the left.
type Vertex struct{ P, Off Vec }

// Flatten appends c as a polyline, both ends included, to dst.
//
// The ends lie on the curve. The inner vertices stand off it to the outside of
// the bend by about two thirds of the step's sagitta, so that the polyline has
// the same area on its side as the curve: areas of flattened regions carry no
// bias. On circular arcs that is exact; on other curves it leaves the square of
// what neighbours stand off times the turn between them, a millionth of a square
// millimetre. Neither vertices nor chords stray from the curve by more than
// tol. The same holds for the parallel polyline that [Vertex] defines: on a
// circular arc its area is exactly that of the parallel arc.
func Flatten(dst []Vertex, c Curve, tol float64) []Vertex {
	return FlattenCoarsely(dst, c, tol, MaxSteps)
}

// FlattenCoarsely is [Flatten] with a bound on the number of steps, which goes
// before the tolerance. The area is kept all the same.
func FlattenCoarsely(dst []Vertex, c Curve, tol float64, most int) []Vertex {
	most = max(2, min(most, MaxSteps))
	switch c := c.(type) {
	case Line:
		n := Normal(c, 0)
		return append(dst, Vertex{c.A, n}, Vertex{c.B, n})
	case Arc:
		return flattenArc(dst, c, tol, most)
	}
	return flattenAny(dst, c, tol, most)
}

// ArcStep is the longest step, as an angle, of a flattened circle of radius r: an
// inner vertex stands off by r step²/12, two thirds of the sagitta.
func ArcStep(r, tol float64) float64 {
	return math.Min(MaxTurn, math.Sqrt(12*tol/r))
}

// ArcFactor is how far, as a multiple of the radius, the inner vertices of an arc
// of n steps of the angle x stand from its centre so that it keeps its area. Two
// ends at radius R and n-1 inner vertices at R k enclose, with the centre, the
// area R² sin(x) ((n-2) k² + 2 k)/2, which shall be R² n x/2.
func ArcFactor(n, x float64) float64 {
	s := math.Sin(x)
	if n < 2 || s == 0 {
		return 1
	}
	return n * x / s / (1 + math.Sqrt(1+(n-2)*n*x/s))
}

func flattenArc(dst []Vertex, a Arc, tol float64, most int) []Vertex {
	n := math.Ceil(math.Abs(a.Sweep)/ArcStep(a.Radius, tol) - 1e-9)
	if !(n >= 2) {
		n = 2
	}
	n = math.Min(n, float64(most))
	x := a.Sweep / n
	k := ArcFactor(n, x)
	side := -1.0 // the left normal points to the centre of a left turn
	if a.Sweep < 0 {
		side = 1
	}
	for i := 0.0; i <= n; i++ {
		sin, cos := math.Sincos(a.Start + i*x)
		out := Vec{cos, sin}
		if i > 0 && i < n {
			out = out.Mul(k)
		}
		dst = append(dst, Vertex{a.Centre.Add(out.Mul(a.Radius)), out.Mul(side)})
	}
	return dst
}

func flattenAny(dst []Vertex, c Curve, tol float64, most int) []Vertex {
	ts := steps(c, tol, most)
	n := len(ts) - 1
	ends := make([]Vec, n+1)
	areas := make([]float64, n) // between each step and its chord
	for i, t := range ts {
		ends[i] = c.At(t)
		if i > 0 {
			areas[i-1] = c.bulge(ts[i-1], t)
		}
	}
	for i, t := range ts {
		normal := Normal(c, t)
		if i == 0 || i == n {
			dst = append(dst, Vertex{ends[i], normal})
			continue
		}
		e := standOff(ends[i-1], ends[i+1], normal, share(areas, i), tol)
		dst = append(dst, Vertex{
			P:   ends[i].Add(normal.Mul(e)),
			Off: normal.Mul(1 - e*c.Curvature(t)),
		})
	}
	return dst
}

// share is the part of the areas between steps and chords that the vertex i makes
// up for: half of either step's, and all of a step whose other end can't move.
func share(areas []float64, i int) float64 {
	need := (areas[i-1] + areas[i]) / 2
	if i == 1 {
		need += areas[0] / 2
	}
	if i == len(areas)-1 {
		need += areas[i] / 2
	}
	return need
}

// standOff is how far along its normal, to the left of travel, a vertex between
// two neighbours must move to add the area need to the right of its chords.
func standOff(before, after, normal Vec, need, tol float64) float64 {
	w := normal.Cross(after.Sub(before)) / 2
	if !(w < 0) {
		return 0
	}
	if e := need / w; math.Abs(e) <= 4*tol {
		return e
	}
	return 0 // a cusp: better a bias than a spike
}

// steps gives the parameters of the vertices: as many as tolerance and turn ask
// for, spread evenly by the square root of the sagitta, then halved where a
// tight bend lay between the samples.
func steps(c Curve, tol float64, most int) []float64 {
	ts := spread(32, 2, most, func(t float64) float64 {
		k, v := math.Abs(c.Curvature(t)), c.Deriv(t).Norm()
		return v * math.Max(math.Sqrt(k/(12*tol)), k/MaxTurn)
	})
	out := ts[:1:1]
	for _, t := range ts[1:] {
		out = refine(out, c, t, tol, 6, most)
	}
	return out
}

// spread divides [0, 1] into steps, no fewer than least and no more than most, so
// that each holds an equal share, at most 1, of the integral of density. It is
// sampled at the middles of equal parts.
func spread(samples, least, most int, density func(t float64) float64) []float64 {
	sum := make([]float64, samples+1)
	for i := range samples {
		d := density((float64(i)+0.5)/float64(samples)) / float64(samples)
		sum[i+1] = sum[i] + math.Min(d, MaxSteps)
	}
	total := sum[samples]
	n := min(max(int(math.Ceil(total)), least), most)
	ts := make([]float64, 1, n+1)
	for i, k := 1, 0; i < n; i++ {
		want := total * float64(i) / float64(n)
		for k < samples-1 && sum[k+1] < want {
			k++
		}
		t := float64(i) / float64(n)
		if d := sum[k+1] - sum[k]; d > 0 {
			t = (float64(k) + (want-sum[k])/d) / float64(samples)
		}
		ts = append(ts, t)
	}
	return append(ts, 1)
}

// refine appends t to ts, and before it the points that its step still needs.
func refine(ts []float64, c Curve, t, tol float64, depth, most int) []float64 {
	from := ts[len(ts)-1]
	a, b := c.At(from), c.At(t)
	// A shallow segment's area is two thirds of chord times sagitta.
	if depth > 0 && len(ts) < most && math.Abs(c.bulge(from, t)) > 2.5*tol*a.Dist(b) {
		ts = refine(ts, c, (from+t)/2, tol, depth-1, most)
		return refine(ts, c, t, tol, depth-1, most)
	}
	return append(ts, t)
}
