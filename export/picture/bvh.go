package picture

import "math"

// triangle is one facet of a mesh, with a normal at each corner.
type triangle struct {
	a, b, c    v3
	na, nb, nc v3
	material   materialID
}

// bvh is a tree of boxes over triangles (surface area heuristic, 16 bins).
type bvh struct {
	nodes  []bvhNode // while it is built
	boxes  []bvhBox
	tris   []triangle
	shapes []shape // of the triangles, in their order
}

// shape is the corners of a triangle as rays meet it, in a third of a
// triangle's space: most of the time that a ray takes is spent on fetching.
type shape struct{ a, b, c c3 }

// bvhBox is a node in half the space, so that the tree stays in the processor's
// cache; its sides are moved out by more than the rounding.
type bvhBox struct {
	x, y, z      [2]float32
	first, count int32
}

func (n *bvhNode) small() bvhBox {
	side := func(lo, hi float64) [2]float32 {
		const out = 2e-3
		return [2]float32{float32(lo - out - 2e-7*math.Abs(lo)), float32(hi + out + 2e-7*math.Abs(hi))}
	}
	return bvhBox{side(n.lo.X, n.hi.X), side(n.lo.Y, n.hi.Y), side(n.lo.Z, n.hi.Z), n.first, n.count}
}

// bvhNode is a leaf with count triangles from first, or an inner node whose
// children are first and first+1.
type bvhNode struct {
	lo, hi v3
	first  int32
	count  int32
}

const (
	bvhBins = 16
	bvhLeaf = 4
)

func (b *bvhNode) include(p v3) {
	b.lo = v3{min(b.lo.X, p.X), min(b.lo.Y, p.Y), min(b.lo.Z, p.Z)}
	b.hi = v3{max(b.hi.X, p.X), max(b.hi.Y, p.Y), max(b.hi.Z, p.Z)}
}

func emptyNode() bvhNode {
	inf := math.Inf(1)
	return bvhNode{lo: v3{inf, inf, inf}, hi: v3{-inf, -inf, -inf}}
}

func (b *bvhNode) area() float64 {
	d := b.hi.sub(b.lo)
	if d.X < 0 {
		return 0
	}
	return d.X*d.Y + d.Y*d.Z + d.Z*d.X
}

func (t *triangle) centre() v3 { return t.a.add(t.b).add(t.c).mul(1.0 / 3) }

// newBVH builds the tree; it reorders tris.
func newBVH(tris []triangle) *bvh {
	b := &bvh{tris: tris}
	if len(tris) == 0 {
		return b
	}
	// Children start at even places, so that a pair lies in one cache line.
	b.nodes = append(make([]bvhNode, 0, 2*len(tris)), emptyNode(), emptyNode())
	b.build(0, 0, len(tris))
	b.boxes = make([]bvhBox, len(b.nodes))
	for i := range b.nodes {
		b.boxes[i] = b.nodes[i].small()
	}
	b.nodes = nil
	b.shapes = make([]shape, len(tris))
	for i := range tris {
		t := &tris[i]
		b.shapes[i] = shape{t.a.small(), t.b.small(), t.c.small()}
	}
	return b
}

func (b *bvh) build(node, from, to int) {
	n := emptyNode()
	centres := emptyNode()
	for i := from; i < to; i++ {
		t := &b.tris[i]
		n.include(t.a)
		n.include(t.b)
		n.include(t.c)
		centres.include(t.centre())
	}
	n.first, n.count = int32(from), int32(to-from)
	b.nodes[node] = n
	if to-from <= bvhLeaf {
		return
	}
	mid, ok := b.split(from, to, n, centres)
	if !ok {
		return
	}
	left := len(b.nodes)
	b.nodes = append(b.nodes, emptyNode(), emptyNode())
	b.nodes[node].first, b.nodes[node].count = int32(left), 0
	b.build(left, from, mid)
	b.build(left+1, mid, to)
}

func axis(p v3, k int) float64 {
	switch k {
	case 0:
		return p.X
	case 1:
		return p.Y
	}
	return p.Z
}

// split sorts triangles from..to about the best of the planes between bins.
func (b *bvh) split(from, to int, n, centres bvhNode) (mid int, ok bool) {
	best, bestAxis, bestBin := float64(to-from)*n.area(), -1, 0
	for k := range 3 {
		lo, hi := axis(centres.lo, k), axis(centres.hi, k)
		if hi-lo < 1e-9 {
			continue
		}
		var box [bvhBins]bvhNode
		for i := range box {
			box[i] = emptyNode()
		}
		for i := from; i < to; i++ {
			t := &b.tris[i]
			bin := &box[min(bvhBins-1, int(bvhBins*(axis(t.centre(), k)-lo)/(hi-lo)))]
			bin.include(t.a)
			bin.include(t.b)
			bin.include(t.c)
			bin.count++
		}
		var rightArea [bvhBins]float64
		acc := emptyNode()
		for i := bvhBins - 1; i > 0; i-- {
			if box[i].count > 0 {
				acc.include(box[i].lo)
				acc.include(box[i].hi)
				acc.count += box[i].count
			}
			rightArea[i] = acc.area() * float64(acc.count)
		}
		acc = emptyNode()
		for i := range bvhBins - 1 {
			if box[i].count > 0 {
				acc.include(box[i].lo)
				acc.include(box[i].hi)
				acc.count += box[i].count
			}
			if cost := 0.25*n.area() + acc.area()*float64(acc.count) + rightArea[i+1]; cost < best {
				best, bestAxis, bestBin = cost, k, i
			}
		}
	}
	if bestAxis < 0 {
		return 0, false
	}
	lo, hi := axis(centres.lo, bestAxis), axis(centres.hi, bestAxis)
	i := from
	for j := from; j < to; j++ {
		bin := min(bvhBins-1, int(bvhBins*(axis(b.tris[j].centre(), bestAxis)-lo)/(hi-lo)))
		if bin <= bestBin {
			b.tris[i], b.tris[j] = b.tris[j], b.tris[i]
			i++
		}
	}
	return i, i > from && i < to
}

// meshHit is where a ray meets a mesh.
type meshHit struct {
	t    float64
	tri  *triangle
	u, v float64
}

// walk looks for triangles nearer than h.t, the nearest one or any.
func (b *bvh) walk(r *ray, q *slope, h *meshHit, any bool) bool {
	if len(b.boxes) == 0 {
		return false
	}
	limit := float32(h.t)
	if _, ok := b.boxes[0].enter(q, limit); !ok {
		return false
	}
	var stack [64]int32
	top := 0
	found := false
	for node := int32(0); ; {
		n := &b.boxes[node]
		if n.count > 0 {
			for i := n.first; i < n.first+n.count; i++ {
				if t, u, v, ok := b.shapes[i].hit(r); ok && t < h.t {
					*h, found, limit = meshHit{t, &b.tris[i], u, v}, true, float32(t*(1+2e-7))
					if any {
						return true
					}
				}
			}
		} else {
			l, rr := n.first, n.first+1
			tl, okl := b.boxes[l].enter(q, limit)
			tr, okr := b.boxes[rr].enter(q, limit)
			if okl && okr {
				if tr < tl {
					l, rr = rr, l
				}
				stack[top] = rr
				top++
				node = l
				continue
			}
			if okl {
				node = l
				continue
			}
			if okr {
				node = rr
				continue
			}
		}
		if top == 0 {
			return found
		}
		top--
		node = stack[top]
	}
}

// slope is a ray as boxes meet it: its origin, the inverse of its direction, and
// which end of each side it meets first.
type slope struct {
	x, y, z    float32
	ix, iy, iz float32
	sx, sy, sz uint32
}

func slopeOf(r *ray) (s slope) {
	s.x, s.y, s.z = float32(r.o.X), float32(r.o.Y), float32(r.o.Z)
	s.ix, s.sx = inverse(r.d.X)
	s.iy, s.sy = inverse(r.d.Y)
	s.iz, s.sz = inverse(r.d.Z)
	return s
}

// inverse is 1 / d, never infinite, and 1 where it is negative.
func inverse(d float64) (float32, uint32) {
	v := float32(1e30)
	if d > 1e-30 || d < -1e-30 {
		v = float32(1 / d)
	}
	return v, math.Float32bits(v) >> 31
}

// enter is where a ray enters the box; ok is false when it does not before
// limit. No branches: no processor could foresee them.
func (b *bvhBox) enter(r *slope, limit float32) (float32, bool) {
	x0, x1 := (b.x[r.sx&1]-r.x)*r.ix, (b.x[r.sx&1^1]-r.x)*r.ix
	y0, y1 := (b.y[r.sy&1]-r.y)*r.iy, (b.y[r.sy&1^1]-r.y)*r.iy
	z0, z1 := (b.z[r.sz&1]-r.z)*r.iz, (b.z[r.sz&1^1]-r.z)*r.iz
	in := max(max(x0, y0), max(z0, 0))
	out := min(min(x1, y1), min(z1, limit))
	return in, in <= out
}

// hit is the ray's meeting with the triangle (Möller and Trumbore, 1997).
func (s *shape) hit(r *ray) (dist, u, v float64, ok bool) {
	ax, ay, az := float64(s.a.X), float64(s.a.Y), float64(s.a.Z)
	e1 := v3{float64(s.b.X) - ax, float64(s.b.Y) - ay, float64(s.b.Z) - az}
	e2 := v3{float64(s.c.X) - ax, float64(s.c.Y) - ay, float64(s.c.Z) - az}
	px := r.d.Y*e2.Z - r.d.Z*e2.Y
	py := r.d.Z*e2.X - r.d.X*e2.Z
	pz := r.d.X*e2.Y - r.d.Y*e2.X
	det := e1.X*px + e1.Y*py + e1.Z*pz
	if det < 1e-12 && det > -1e-12 {
		return 0, 0, 0, false
	}
	inv := 1 / det
	ox, oy, oz := r.o.X-ax, r.o.Y-ay, r.o.Z-az
	u = (ox*px + oy*py + oz*pz) * inv
	if u < 0 || u > 1 {
		return 0, 0, 0, false
	}
	qx := oy*e1.Z - oz*e1.Y
	qy := oz*e1.X - ox*e1.Z
	qz := ox*e1.Y - oy*e1.X
	v = (r.d.X*qx + r.d.Y*qy + r.d.Z*qz) * inv
	if v < 0 || u+v > 1 {
		return 0, 0, 0, false
	}
	dist = (e2.X*qx + e2.Y*qy + e2.Z*qz) * inv
	return dist, u, v, dist > 1e-6
}

// normal is the smooth normal at a hit.
func (h *meshHit) normal() v3 {
	t := h.tri
	return t.na.mul(1 - h.u - h.v).add(t.nb.mul(h.u)).add(t.nc.mul(h.v)).unit()
}

// face is the normal of the triangle itself, of any length.
func (t *triangle) face() v3 { return t.b.sub(t.a).cross(t.c.sub(t.a)) }
