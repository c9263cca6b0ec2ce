package geom

import "math"

// MaxTurn is the largest change of direction from one step of a flattened curve
// to the next, 6 degrees: it keeps small radii round on a magnified drawing
// where the tolerance alone would let them look like polygons.
const MaxTurn = 6 * math.Pi / 180

// maxSteps bounds the steps of one curve.
const maxSteps = 4096

// Vertex is a point of a flattened curve. The point P + d Off lies on the
// flattened parallel curve at the distance d to the left.
type Vertex struct{ P, Off Vec }

// Flatten appends c as a polyline, both ends included, to dst.
//
// The ends lie on the curve. The inner vertices stand off it to the outside of
// the bend by about two thirds of the step's sagitta, so that the polyline has
// exactly the same area on its side as the curve: areas of flattened regions
// carry no bias. Neither vertices nor chords stray from the curve by more than
// tol. The same holds for the parallel polyline that [Vertex] defines: on a
// circular arc its area is exactly that of the parallel arc.
func Flatten(dst []Vertex, c Curve, tol float64) []Vertex {
	switch c := c.(type) {
	case Line:
		n := Normal(c, 0)
		return append(dst, Vertex{c.A, n}, Vertex{c.B, n})
	case Arc:
		return flattenArc(dst, c, tol)
	}
	return flattenAny(dst, c, tol)
}

// step is the longest step, as an angle, on a circle of radius r: an inner
// vertex stands off by e = r step²/12, two thirds of the sagitta.
func step(r, tol float64) float64 {
	return math.Min(MaxTurn, math.Sqrt(12*tol/r))
}

func flattenArc(dst []Vertex, a Arc, tol float64) []Vertex {
	n := math.Ceil(math.Abs(a.Sweep)/step(a.Radius, tol) - 1e-9)
	if !(n >= 2) {
		n = 2
	}
	n = math.Min(n, maxSteps)
	// Two ends at radius R and n-1 inner vertices at R k enclose, with the
	// centre, the area R² sin(x) ((n-2) k² + 2 k)/2, which shall be R² n x/2.
	x := a.Sweep / n
	k := 1.0
	if s := math.Sin(x); s != 0 {
		k = n * x / s / (1 + math.Sqrt(1+(n-2)*n*x/s))
	}
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

func flattenAny(dst []Vertex, c Curve, tol float64) []Vertex {
	ts := steps(c, tol)
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
		// Moving the vertex by e along the normal adds e times half the
		// distance between its neighbours. It makes up for half the area of
		// either step, and for all of a step that ends where nothing moves.
		need := areas[i-1] + areas[i]
		if i == 1 {
			need += areas[0]
		}
		if i == n-1 {
			need += areas[n-1]
		}
		e := 0.0
		if w := normal.Cross(ends[i+1].Sub(ends[i-1])); w < 0 {
			e = need / w
		}
		if math.Abs(e) > 4*tol { // a cusp: better a bias than a spike
			e = 0
		}
		dst = append(dst, Vertex{
			P:   ends[i].Add(normal.Mul(e)),
			Off: normal.Mul(1 - e*c.Curvature(t)),
		})
	}
	return dst
}

// steps gives the parameters of the vertices: as many as tolerance and turn ask
// for, spread evenly by the square root of the sagitta, then halved where a
// tight bend lay between the samples.
func steps(c Curve, tol float64) []float64 {
	const samples = 32
	var sum [samples + 1]float64
	density := func(t float64) float64 {
		k, v := math.Abs(c.Curvature(t)), c.Deriv(t).Norm()
		return v * math.Max(math.Sqrt(k/(12*tol)), k/MaxTurn)
	}
	for i := range samples {
		sum[i+1] = sum[i] + math.Min(density((float64(i)+0.5)/samples)/samples, maxSteps)
	}
	n := math.Ceil(sum[samples])
	if !(n >= 2) {
		n = 2
	}
	n = math.Min(n, maxSteps)
	ts := []float64{0}
	for i, k := 1.0, 0; i < n; i++ {
		want := sum[samples] * i / n
		for k < samples-1 && sum[k+1] < want {
			k++
		}
		t := i / n
		if d := sum[k+1] - sum[k]; d > 0 {
			t = (float64(k) + (want-sum[k])/d) / samples
		}
		ts = refine(ts, c, t, tol, 6)
	}
	return refine(ts, c, 1, tol, 6)
}

// refine appends t to ts, and before it the points that its step still needs.
func refine(ts []float64, c Curve, t, tol float64, depth int) []float64 {
	from := ts[len(ts)-1]
	a, b := c.At(from), c.At(t)
	// A shallow segment's area is two thirds of chord times sagitta.
	if depth > 0 && len(ts) < maxSteps && math.Abs(c.bulge(from, t)) > 2.5*tol*a.Dist(b) {
		ts = refine(ts, c, (from+t)/2, tol, depth-1)
		return refine(ts, c, t, tol, depth-1)
	}
	return append(ts, t)
}
