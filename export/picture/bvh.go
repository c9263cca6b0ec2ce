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
	nodes []bvhNode // while it is built
	boxes []bvhBox
	tris  []triangle
}

// bvhBox is a node in half the space, so that the tree stays in the processor's
// cache; its sides are moved out by more than the rounding.
type bvhBox struct {
	lo, hi       [3]float32
	first, count int32
}

func (n *bvhNode) small() bvhBox {
	const out = 2e-3
	return bvhBox{
		[3]float32{float32(n.lo.X - out), float32(n.lo.Y - out), float32(n.lo.Z - out)},
		[3]float32{float32(n.hi.X + out), float32(n.hi.Y + out), float32(n.hi.Z + out)}, n.first, n.count}
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
	bvhLeaf = 3
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
	b.nodes = append(make([]bvhNode, 0, 2*len(tris)), emptyNode())
	b.build(0, 0, len(tris))
	b.boxes = make([]bvhBox, len(b.nodes))
	for i := range b.nodes {
		b.boxes[i] = b.nodes[i].small()
	}
	b.nodes = nil
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
	tri  int32
	u, v float64
}

// hit finds the nearest triangle before limit.
func (b *bvh) hit(r ray, limit float64) (h meshHit, ok bool) {
	h.t = limit
	ok = b.walk(r, &h, false)
	return h, ok
}

// blocked reports whether anything lies on the ray before limit.
func (b *bvh) blocked(r ray, limit float64) bool {
	h := meshHit{t: limit}
	return b.walk(r, &h, true)
}

// walk looks for triangles nearer than h.t, the nearest one or any.
func (b *bvh) walk(r ray, h *meshHit, any bool) bool {
	if len(b.boxes) == 0 {
		return false
	}
	inv := v3{1 / r.d.X, 1 / r.d.Y, 1 / r.d.Z}
	if _, ok := b.boxes[0].enter(&r.o, &inv, h.t); !ok {
		return false
	}
	var stack [64]int32
	top := 0
	found := false
	for node := int32(0); ; {
		n := &b.boxes[node]
		if n.count > 0 {
			for i := n.first; i < n.first+n.count; i++ {
				if t, u, v, ok := b.tris[i].hit(&r); ok && t < h.t {
					*h, found = meshHit{t, i, u, v}, true
					if any {
						return true
					}
				}
			}
		} else {
			l, rr := n.first, n.first+1
			tl, okl := b.boxes[l].enter(&r.o, &inv, h.t)
			tr, okr := b.boxes[rr].enter(&r.o, &inv, h.t)
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

// enter is where a ray enters the box; ok is false when it does not before
// limit.
func (b *bvhBox) enter(o, inv *v3, limit float64) (float64, bool) {
	in, out := 0.0, limit
	x0, x1 := (float64(b.lo[0])-o.X)*inv.X, (float64(b.hi[0])-o.X)*inv.X
	if x0 > x1 {
		x0, x1 = x1, x0
	}
	if x0 > in {
		in = x0
	}
	if x1 < out {
		out = x1
	}
	x0, x1 = (float64(b.lo[1])-o.Y)*inv.Y, (float64(b.hi[1])-o.Y)*inv.Y
	if x0 > x1 {
		x0, x1 = x1, x0
	}
	if x0 > in {
		in = x0
	}
	if x1 < out {
		out = x1
	}
	if in > out {
		return 0, false
	}
	x0, x1 = (float64(b.lo[2])-o.Z)*inv.Z, (float64(b.hi[2])-o.Z)*inv.Z
	if x0 > x1 {
		x0, x1 = x1, x0
	}
	if x0 > in {
		in = x0
	}
	if x1 < out {
		out = x1
	}
	return in, in <= out
}

// hit is the ray's meeting with the triangle (Möller and Trumbore, 1997).
func (t *triangle) hit(r *ray) (dist, u, v float64, ok bool) {
	e1, e2 := t.b.sub(t.a), t.c.sub(t.a)
	p := r.d.cross(e2)
	det := e1.dot(p)
	if math.Abs(det) < 1e-12 {
		return 0, 0, 0, false
	}
	s := r.o.sub(t.a)
	u = s.dot(p) / det
	if u < 0 || u > 1 {
		return 0, 0, 0, false
	}
	q := s.cross(e1)
	v = r.d.dot(q) / det
	if v < 0 || u+v > 1 {
		return 0, 0, 0, false
	}
	dist = e2.dot(q) / det
	return dist, u, v, dist > 1e-6
}

// normal is the smooth normal at a hit.
func (b *bvh) normal(h meshHit) v3 {
	t := &b.tris[h.tri]
	return t.na.mul(1 - h.u - h.v).add(t.nb.mul(h.u)).add(t.nc.mul(h.v)).unit()
}

// face is the normal of the triangle itself, of any length.
func (t *triangle) face() v3 { return t.b.sub(t.a).cross(t.c.sub(t.a)) }
