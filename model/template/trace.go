package template

import (
	"cmp"
	"math"
	"slices"

	"example.org/castwright/model/geom"
)

// maxRounds bounds how often the outer boundary of what is left is traced.
const maxRounds = 12

// samePlace is how near, in millimetres, ends lie that were meant to be one.
const samePlace = 1e-4

// graph is open runs as edges between the places where their ends meet. A half
// edge 2e runs along edge e, 2e+1 against it.
type graph struct {
	edges  []graphEdge
	at     []geom.Vec
	leaves [][]int // half edges of each place, those of removed edges too
	degree []int   // how many of them are left
}

type graphEdge struct {
	chain    chain
	from, to int // places of its start and end
	filled   bool
	gone     bool
}

// traceLoose joins open runs and traces what closes.
func traceLoose(runs []run, n *notes) []chain {
	if len(runs) == 0 {
		return nil
	}
	g := newGraph(runs)
	g.bridge()
	var out []chain
	for _, e := range g.prune() {
		c := g.edges[e].chain
		switch {
		case g.edges[e].filled && (len(c) > 1 || c[0].kind != line):
			out = append(out, append(c, span{a: c.end(), b: c.start()}))
			n.count("closed %d filled outline with a straight line",
				"closed %d filled outlines with a straight line")
		case e < len(runs):
			n.count("dropped %d open line that bounds no area", "dropped %d open lines that bound no area")
		}
	}
	bridges := 0
	for _, e := range g.edges[len(runs):] {
		if !e.gone {
			bridges++
		}
	}
	n.add(bridges, "closed %d gap of up to 2 mm", "closed %d gaps of up to 2 mm")
	for range maxRounds {
		loops, across := g.outer()
		n.add(across, "left out %d line that leads from one outline to another",
			"left out %d lines that lead from one outline to another")
		for _, c := range loops {
			out = append(out, c.weld(n))
		}
		if len(loops)+across == 0 {
			break
		}
		n.add(len(g.prune()), "left out %d line across an outline", "left out %d lines across an outline")
	}
	left := 0
	for _, e := range g.edges {
		if !e.gone {
			left++
		}
	}
	n.add(left, "left out %d line within an outline", "left out %d lines within an outline")
	return out
}

// newGraph gathers ends into places: those that were meant to be one, then loose
// ones with whatever lies within [joinGap].
func newGraph(runs []run) *graph {
	g := &graph{}
	cells := cells{}
	place := func(p geom.Vec) int {
		best, found := samePlace, -1
		cells.visit(p, samePlace, func(i int) {
			if d := g.at[i].Dist(p); d <= best {
				best, found = d, i
			}
		})
		if found >= 0 {
			return found
		}
		i := len(g.at)
		g.at = append(g.at, p)
		cells.add(p, samePlace, i)
		return i
	}
	for _, r := range runs {
		c := chain(r.spans)
		g.edges = append(g.edges, graphEdge{chain: c, from: place(c.start()), to: place(c.end()), filled: r.filled})
	}
	g.gather()
	g.merge()
	return g
}

// gather lists the half edges of each place.
func (g *graph) gather() {
	g.leaves, g.degree = make([][]int, len(g.at)), make([]int, len(g.at))
	for i := range g.edges {
		g.attach(i)
	}
}

func (g *graph) attach(e int) {
	for h, p := range [...]int{g.edges[e].from, g.edges[e].to} {
		g.leaves[p] = append(g.leaves[p], 2*e+h)
		g.degree[p]++
	}
}

// merge makes loose places one with others within [joinGap], nearest first.
func (g *graph) merge() {
	into := make([]int, len(g.at))
	for i := range into {
		into[i] = i
	}
	root := func(i int) int {
		for into[i] != i {
			into[i] = into[into[i]]
			i = into[i]
		}
		return i
	}
	loose := func(i int) bool { return g.degree[i] == 1 }
	degree := slices.Clone(g.degree)
	for _, k := range g.pairs(joinGap, loose, func(int) bool { return true }) {
		p, q := root(k.p), root(k.q)
		if p == q || degree[root(k.p)] > 1 && degree[root(k.q)] > 1 {
			continue
		}
		into[p] = q
		degree[q] += degree[p]
	}
	for i := range g.edges {
		g.edges[i].from, g.edges[i].to = root(g.edges[i].from), root(g.edges[i].to)
	}
	g.gather()
}

// near is two places and how far they are apart.
type near struct {
	p, q int
	d    float64
}

// pairs are places of a first and a second kind within reach of each other, the
// nearest first; not the two ends of one short or straight run.
func (g *graph) pairs(reach float64, first, second func(int) bool) []near {
	cells := cells{}
	for i, p := range g.at {
		if g.degree[i] > 0 && second(i) {
			cells.add(p, reach, i)
		}
	}
	var out []near
	for p := range g.at {
		if g.degree[p] == 0 || !first(p) {
			continue
		}
		cells.visit(g.at[p], reach, func(q int) {
			d := g.at[p].Dist(g.at[q])
			if p != q && d <= reach && !(first(q) && second(p) && q < p) && !g.oneLine(p, q, reach) {
				out = append(out, near{p, q, d})
			}
		})
	}
	slices.SortFunc(out, func(a, b near) int {
		return cmp.Or(cmp.Compare(a.d, b.d), cmp.Compare(a.p, b.p), cmp.Compare(a.q, b.q))
	})
	return out
}

// oneLine reports whether two loose places are the ends of one straight line, or
// of a run too short to bound anything.
func (g *graph) oneLine(p, q int, reach float64) bool {
	if g.degree[p] != 1 || g.degree[q] != 1 {
		return false
	}
	e := g.half(p) / 2
	if g.half(q)/2 != e {
		return false
	}
	c := g.edges[e].chain
	return len(c) == 1 && c[0].kind == line || c.length() < 4*reach
}

// half is the half edge that leaves a loose place.
func (g *graph) half(p int) int {
	for _, h := range g.leaves[p] {
		if !g.edges[h/2].gone {
			return h
		}
	}
	return -1
}

// bridge lays straight lines between loose ends up to [closeGap] apart, the
// nearest ones first.
func (g *graph) bridge() {
	loose := func(i int) bool { return g.degree[i] == 1 }
	for _, k := range g.pairs(closeGap, loose, loose) {
		if !loose(k.p) || !loose(k.q) {
			continue
		}
		a, b := g.along(g.half(k.p)).start(), g.along(g.half(k.q)).start()
		g.edges = append(g.edges, graphEdge{chain: chain{{a: a, b: b}}, from: k.p, to: k.q})
		g.attach(len(g.edges) - 1)
	}
}

// prune takes edges with a loose end away, again and again, and tells which.
func (g *graph) prune() (gone []int) {
	var loose []int
	for p, n := range g.degree {
		if n == 1 {
			loose = append(loose, p)
		}
	}
	for len(loose) > 0 {
		p := loose[len(loose)-1]
		loose = loose[:len(loose)-1]
		if g.degree[p] != 1 {
			continue
		}
		e := g.half(p) / 2
		g.remove(e)
		gone = append(gone, e)
		for _, q := range [...]int{g.edges[e].from, g.edges[e].to} {
			if g.degree[q] == 1 {
				loose = append(loose, q)
			}
		}
	}
	slices.Sort(gone)
	return gone
}

func (g *graph) remove(e int) {
	g.edges[e].gone = true
	g.degree[g.edges[e].from]--
	g.degree[g.edges[e].to]--
}

// start is the place where a half edge starts.
func (g *graph) start(h int) int {
	if h%2 == 0 {
		return g.edges[h/2].from
	}
	return g.edges[h/2].to
}

func (g *graph) along(h int) chain {
	if h%2 == 0 {
		return g.edges[h/2].chain
	}
	return g.edges[h/2].chain.reversed()
}

// outer traces the outer boundary of each piece that hangs together, parts it
// where it comes by a place again, and takes its edges away. Edges that have
// the outside on both sides lead from one loop to another: across counts them.
func (g *graph) outer() (loops []chain, across int) {
	next := g.turns()
	done := make([]bool, 2*len(g.edges))
	sides := make([]int, len(g.edges))
	for _, piece := range g.pieces() {
		walk := g.outside(piece, next, done)
		for _, h := range walk {
			sides[h/2]++
		}
		for _, h := range walk {
			if sides[h/2] == 2 && h%2 == 0 {
				across++
			}
		}
		for _, hs := range g.parts(walk) {
			var c chain
			for _, h := range hs {
				if sides[h/2] == 1 {
					c = append(c, g.along(h)...)
				}
			}
			if len(c) > 0 {
				loops = append(loops, c)
			}
		}
	}
	for e, n := range sides {
		if n > 0 {
			g.remove(e)
		}
	}
	return loops, across
}

// turns gives for each half edge the one that a walk with the same face at its
// left goes on with.
func (g *graph) turns() []int {
	next := make([]int, 2*len(g.edges))
	angle := map[int]float64{}
	for p := range g.leaves {
		var out []int // half edges that leave the place, by their direction
		for _, h := range g.leaves[p] {
			if !g.edges[h/2].gone {
				out = append(out, h)
			}
		}
		if len(out) > 2 {
			for _, h := range out {
				angle[h] = g.direction(h)
			}
			slices.SortFunc(out, func(a, b int) int {
				return cmp.Or(cmp.Compare(angle[a], angle[b]), cmp.Compare(a, b))
			})
		}
		for i, h := range out {
			// Whoever arrives against h goes on clockwise from there.
			next[h^1] = out[(i+len(out)-1)%len(out)]
		}
	}
	return next
}

// direction is the angle in which a half edge leaves, looked at a little way on
// so that curves which touch are told apart.
func (g *graph) direction(h int) float64 {
	c := g.along(h)
	t := 1.0
	if l := c[0].length(); l > 1 {
		t = 1 / l
	} else if len(c) == 1 {
		t = 0.25
	}
	way := c[0].at(t).Sub(c.start())
	return math.Atan2(way.Y, way.X)
}

// pieces are the edges that hang together, a list for each piece.
func (g *graph) pieces() [][]int {
	seen := make([]bool, len(g.edges))
	met := make([]bool, len(g.at))
	var out [][]int
	for e := range g.edges {
		if seen[e] || g.edges[e].gone {
			continue
		}
		seen[e] = true
		piece := []int{e}
		for i := 0; i < len(piece); i++ {
			for _, p := range [...]int{g.edges[piece[i]].from, g.edges[piece[i]].to} {
				if met[p] {
					continue
				}
				met[p] = true
				for _, h := range g.leaves[p] {
					if !seen[h/2] && !g.edges[h/2].gone {
						seen[h/2] = true
						piece = append(piece, h/2)
					}
				}
			}
		}
		out = append(out, piece)
	}
	return out
}

// outside is the walk about a piece that has the outside at its left: that with
// the least area. Lines that lie on each other have no order about a place; where
// they leave a walk that only goes to and fro, the next one is taken.
func (g *graph) outside(piece, next []int, done []bool) []int {
	var best []int
	least := math.Inf(1)
	origin := g.at[g.edges[piece[0]].from]
	for _, e := range piece {
		for h := 2 * e; h <= 2*e+1; h++ {
			var walk []int
			area := 0.0
			for k := h; !done[k]; k = next[k] {
				done[k] = true
				walk = append(walk, k)
				for _, s := range g.along(k) {
					area += s.area(origin)
				}
			}
			if len(walk) > 0 && area < least && (best == nil || !toAndFro(walk)) {
				least, best = area, walk
			}
		}
	}
	return best
}

// toAndFro reports whether a walk takes every edge both ways.
func toAndFro(walk []int) bool {
	edges := map[int]int{}
	for _, h := range walk {
		edges[h/2]++
	}
	return len(walk) == 2*len(edges)
}

// parts splits a closed walk into loops where it comes by a place again.
func (g *graph) parts(walk []int) [][]int {
	var out [][]int
	var stack []int
	at := map[int]int{} // place -> where in the stack a half edge leaves it
	for _, h := range walk {
		p := g.start(h)
		if i, ok := at[p]; ok {
			out = append(out, slices.Clone(stack[i:]))
			for _, k := range stack[i:] {
				delete(at, g.start(k))
			}
			stack = stack[:i]
		}
		at[p] = len(stack)
		stack = append(stack, h)
	}
	if len(stack) > 0 {
		out = append(out, stack)
	}
	return out
}
