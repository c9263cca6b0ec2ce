package picture

import (
	"math"

	"example.org/castwright/model/geom"
)

// things is what stands about a top, in two trees: light that leaves the face
// upward meets nothing of what lies lower.
type things struct {
	low, high *bvh
	lid       float64 // no triangle of low reaches above it
	bottom    float64 // the lowest place of all, 0 if there is none
}

// newThings sorts triangles by the height of the face.
func newThings(face float64, parts ...[]triangle) *things {
	t := &things{lid: face + 1}
	var low, high []triangle
	for _, tris := range parts {
		for i := range tris {
			k := &tris[i]
			t.bottom = min(t.bottom, k.a.Z, k.b.Z, k.c.Z)
			if max(k.a.Z, k.b.Z, k.c.Z) <= t.lid {
				low = append(low, *k)
			} else {
				high = append(high, *k)
			}
		}
	}
	t.low, t.high = newBVH(low), newBVH(high)
	return t
}

// hit finds the nearest triangle before limit.
func (t *things) hit(r *ray, limit float64) (h meshHit, ok bool) {
	h.t = limit
	q := slopeOf(r)
	ok = t.high.walk(r, &q, &h, false)
	if r.d.Z < 0 || r.o.Z <= t.lid {
		ok = t.low.walk(r, &q, &h, false) || ok
	}
	return h, ok
}

// obstacle finds whether anything lies on the ray before limit, and how far away
// it does: not always the nearest of it.
func (t *things) obstacle(r *ray, limit float64) (float64, bool) {
	h := meshHit{t: limit}
	q := slopeOf(r)
	ok := t.high.walk(r, &q, &h, true) || (r.d.Z < 0 || r.o.Z <= t.lid) && t.low.walk(r, &q, &h, true)
	return h.t, ok
}

// gridMesh makes a smooth mesh over rows of points; each row has the same number of
// points, and closed joins a row's last point to its first. Normals follow the
// surface; they point to the left of the rows as they rise.
func gridMesh(rows [][]v3, closed bool, m materialID) []triangle {
	if len(rows) < 2 || len(rows[0]) < 2 {
		return nil
	}
	n := len(rows[0])
	wrap := func(j int) int {
		if closed {
			return (j + n) % n
		}
		return max(0, min(n-1, j))
	}
	normals := make([][]v3, len(rows))
	for i, row := range rows {
		normals[i] = make([]v3, n)
		for j := range row {
			du := row[wrap(j+1)].sub(row[wrap(j-1)])
			dv := rows[min(len(rows)-1, i+1)][j].sub(rows[max(0, i-1)][j])
			normals[i][j] = du.cross(dv).unit()
		}
	}
	last := n - 1
	if closed {
		last = n
	}
	var out []triangle
	for i := 0; i+1 < len(rows); i++ {
		for j := range last {
			k := wrap(j + 1)
			a, b, c, d := rows[i][j], rows[i][k], rows[i+1][k], rows[i+1][j]
			na, nb, nc, nd := normals[i][j], normals[i][k], normals[i+1][k], normals[i+1][j]
			out = append(out, triangle{a, b, c, na, nb, nc, m}, triangle{a, c, d, na, nc, nd, m})
		}
	}
	return out
}

// lathe turns a profile, points of (radius, height), about the vertical
// through c.
func lathe(c v3, profile []geom.Vec, around int, m materialID) []triangle {
	rows := make([][]v3, len(profile))
	for i, p := range profile {
		rows[i] = make([]v3, around)
		for j := range rows[i] {
			s, k := math.Sincos(2 * math.Pi * float64(j) / float64(around))
			rows[i][j] = c.add(v3{p.X * k, p.X * s, p.Y})
		}
	}
	return gridMesh(rows, true, m)
}

// sweep draws a round tube along a path with a radius at each point.
func sweep(path []v3, radius []float64, around int, m materialID) []triangle {
	rows := make([][]v3, len(path))
	var u v3
	for i, p := range path {
		t := path[min(len(path)-1, i+1)].sub(path[max(0, i-1)]).unit()
		if i == 0 {
			u, _ = frame(t)
		}
		u = u.sub(t.mul(u.dot(t))).unit()
		w := t.cross(u)
		rows[i] = make([]v3, around)
		for j := range rows[i] {
			s, c := math.Sincos(2 * math.Pi * float64(j) / float64(around))
			rows[i][j] = p.add(u.mul(c * radius[i])).add(w.mul(s * radius[i]))
		}
	}
	return gridMesh(rows, true, m)
}

// box is a block with flat faces.
func box(lo, hi v3, m materialID) []triangle {
	var out []triangle
	quad := func(a, b, c, d, n v3) {
		out = append(out, triangle{a, b, c, n, n, n, m}, triangle{a, c, d, n, n, n, m})
	}
	p := func(x, y, z int) v3 {
		pick := func(k int, lo, hi float64) float64 {
			if k == 0 {
				return lo
			}
			return hi
		}
		return v3{pick(x, lo.X, hi.X), pick(y, lo.Y, hi.Y), pick(z, lo.Z, hi.Z)}
	}
	quad(p(0, 0, 0), p(0, 1, 0), p(1, 1, 0), p(1, 0, 0), v3{Z: -1})
	quad(p(0, 0, 1), p(1, 0, 1), p(1, 1, 1), p(0, 1, 1), v3{Z: 1})
	quad(p(0, 0, 0), p(1, 0, 0), p(1, 0, 1), p(0, 0, 1), v3{Y: -1})
	quad(p(0, 1, 0), p(0, 1, 1), p(1, 1, 1), p(1, 1, 0), v3{Y: 1})
	quad(p(0, 0, 0), p(0, 0, 1), p(0, 1, 1), p(0, 1, 0), v3{X: -1})
	quad(p(1, 0, 0), p(1, 1, 0), p(1, 1, 1), p(1, 0, 1), v3{X: 1})
	return out
}
