package warn

import (
	"math"
	"slices"

	"example.org/castwright/model/geom"
)

// leafSize is how many segments share a box at the foot of a chain's tree.
// Measured on loops of 100 to 2,000 points, 4 is within a tenth of the best of
// 2 to 16 for clearances and for sight lines alike.
const leafSize = 4

// box is a rectangle as four plain numbers, for the inner loops.
type box struct{ x0, y0, x1, y1 float64 }

func noBox() box {
	inf := math.Inf(1)
	return box{inf, inf, -inf, -inf}
}

func (b box) with(p geom.Vec) box {
	return box{min(b.x0, p.X), min(b.y0, p.Y), max(b.x1, p.X), max(b.y1, p.Y)}
}

func (b box) union(c box) box {
	return box{min(b.x0, c.x0), min(b.y0, c.y0), max(b.x1, c.x1), max(b.y1, c.y1)}
}

// gap2 is the square of the distance between two boxes.
func (b box) gap2(c box) float64 {
	dx := max(b.x0-c.x1, c.x0-b.x1, 0)
	dy := max(b.y0-c.y1, c.y0-b.y1, 0)
	return dx*dx + dy*dy
}

// apart is the distance between two points. Places of a top are near enough to
// the origin for a plain root, which is several times as fast as a hypotenuse
// that guards against overflow.
func apart(a, b geom.Vec) float64 {
	v := b.Sub(a)
	return math.Sqrt(v.Dot(v))
}

func spot(p geom.Vec) box { return box{p.X, p.Y, p.X, p.Y} }

// chain is a closed loop with a tree of boxes over runs of its segments, so
// that distances, crossings and sight lines need not look at every segment.
// Segment i runs from point i to the next one.
type chain struct {
	pts    geom.Loop
	boxes  []box // a heap: the children of k are 2k and 2k+1, the root is 1
	leaves int   // a power of two; leaf j holds segments from j*leafSize
}

// newChain gives nil for a loop that bounds nothing or holds a bad number. A
// point that repeats the one before is left out.
func newChain(l geom.Loop) *chain {
	repeats := false
	for i, p := range l {
		if !p.Finite() {
			return nil
		}
		repeats = repeats || p == l[(i+1)%len(l)]
	}
	if repeats {
		l = slices.Compact(slices.Clone(l))
		for len(l) > 1 && l[0] == l[len(l)-1] {
			l = l[:len(l)-1]
		}
	}
	if len(l) < 3 {
		return nil
	}
	leaves := 1
	for leaves*leafSize < len(l) {
		leaves *= 2
	}
	c := &chain{pts: l, boxes: make([]box, 2*leaves), leaves: leaves}
	for j := range leaves {
		b := noBox()
		for i := j * leafSize; i < min((j+1)*leafSize, len(l)); i++ {
			p, q := c.seg(i)
			b = b.with(p).with(q)
		}
		c.boxes[leaves+j] = b
	}
	for k := leaves - 1; k > 0; k-- {
		c.boxes[k] = c.boxes[2*k].union(c.boxes[2*k+1])
	}
	return c
}

func (c *chain) seg(i int) (p, q geom.Vec) {
	if i+1 == len(c.pts) {
		return c.pts[i], c.pts[0]
	}
	return c.pts[i], c.pts[i+1]
}

// span gives the segments of leaf node k as a half-open range.
func (c *chain) span(k int) (from, to int) {
	from = (k - c.leaves) * leafSize
	return from, min(from+leafSize, len(c.pts))
}

func (c *chain) bounds() box { return c.boxes[1] }

// pair is a shortest connection: from At on one chain to To on the other.
type pair struct {
	d       float64
	at, to  geom.Vec
	stretch float64 // how far the two run side by side there
}

// none is a connection that only one shorter than reach can beat.
func none(reach float64) pair { return pair{d: reach, stretch: math.Inf(1)} }

// bound is the square of the distance beyond which nothing can beat p.
func (p pair) bound() float64 { return p.d * p.d * (1 + tie) }

// tie is how much two squared distances may differ, as a share, and still count
// as equal, so that rounding does not choose among places of an even rail.
const tie = 1e-12

// middle is where a warning about the connection belongs.
func (p pair) middle() geom.Vec { return p.at.Lerp(p.to, 0.5) }

// foot is the point of segment ab nearest to p.
func foot(p, a, b geom.Vec) geom.Vec {
	v := b.Sub(a)
	n := v.Dot(v)
	if n == 0 {
		return a
	}
	t := p.Sub(a).Dot(v) / n
	switch {
	case t <= 0:
		return a
	case t >= 1:
		return b
	}
	return a.Add(v.Mul(t))
}

// meet gives where two segments cross or touch.
func meet(a, b, c, d geom.Vec) (geom.Vec, bool) {
	u, v := b.Sub(a), d.Sub(c)
	den := u.Cross(v)
	if den == 0 {
		return geom.Vec{}, false // parallel: their ends give the distance
	}
	w := c.Sub(a)
	s, t := w.Cross(v)/den, w.Cross(u)/den
	if s < 0 || s > 1 || t < 0 || t > 1 {
		return geom.Vec{}, false
	}
	return a.Add(u.Mul(s)), true
}

// segPair improves best by the connection of segments ab and cd. Between
// parallel segments it is the one in the middle of where they face each other;
// of equal connections the one of the longest such stretch is the best.
func segPair(a, b, c, d geom.Vec, best *pair) {
	if x, ok := meet(a, b, c, d); ok {
		*best = pair{0, x, x, math.Inf(1)}
		return
	}
	try := [...]pair{
		{at: a, to: foot(a, c, d)}, {at: b, to: foot(b, c, d)},
		{at: foot(c, a, b), to: c}, {at: foot(d, a, b), to: d},
	}
	least, first := best.bound(), -1
	for i, p := range try {
		v := p.to.Sub(p.at)
		try[i].d = v.Dot(v)
		if try[i].d < least {
			least, first = try[i].d, i
		}
	}
	if first < 0 {
		return
	}
	got := pair{d: math.Sqrt(least), at: try[first].at, to: try[first].to}
	// The other end of the stretch that is equally near, if there is one.
	v := got.to.Sub(got.at)
	for _, p := range try {
		w := p.to.Sub(p.at).Sub(v)
		if w.Dot(w) > tie*least {
			continue
		}
		if e := apart(p.at, try[first].at); e > got.stretch {
			got.stretch = e
			got.at, got.to = try[first].at.Lerp(p.at, 0.5), try[first].to.Lerp(p.to, 0.5)
		}
	}
	if least < best.d*best.d*(1-tie) || got.stretch > best.stretch {
		*best = got
	}
}

// closest is the shortest connection from c to o that is shorter than reach.
// Chains that cross or touch have distance 0.
func (c *chain) closest(o *chain, reach float64) (pair, bool) {
	best := none(reach)
	c.closestBelow(o, 1, 1, &best)
	return best, best.d < reach
}

func (c *chain) closestBelow(o *chain, k, j int, best *pair) {
	if best.d == 0 || c.boxes[k].gap2(o.boxes[j]) > best.bound() {
		return
	}
	kLeaf, jLeaf := k >= c.leaves, j >= o.leaves
	switch {
	case kLeaf && jLeaf:
		from, to := c.span(k)
		oFrom, oTo := o.span(j)
		for i := from; i < to; i++ {
			a, b := c.seg(i)
			ab := spot(a).with(b)
			for m := oFrom; m < oTo; m++ {
				p, q := o.seg(m)
				if ab.gap2(spot(p).with(q)) <= best.bound() {
					segPair(a, b, p, q, best)
				}
			}
		}
	case jLeaf || !kLeaf && k <= j:
		l, r := 2*k, 2*k+1
		if c.boxes[r].gap2(o.boxes[j]) < c.boxes[l].gap2(o.boxes[j]) {
			l, r = r, l
		}
		c.closestBelow(o, l, j, best)
		c.closestBelow(o, r, j, best)
	default:
		l, r := 2*j, 2*j+1
		if o.boxes[r].gap2(c.boxes[k]) < o.boxes[l].gap2(c.boxes[k]) {
			l, r = r, l
		}
		c.closestBelow(o, k, l, best)
		c.closestBelow(o, k, r, best)
	}
}

// fromSegment is the shortest connection from segment ab to the chain.
func (c *chain) fromSegment(a, b geom.Vec, reach float64) (pair, bool) {
	best := none(reach)
	c.segmentBelow(1, a, b, spot(a).with(b), &best)
	return best, best.d < reach
}

func (c *chain) segmentBelow(k int, a, b geom.Vec, ab box, best *pair) {
	if best.d == 0 || c.boxes[k].gap2(ab) > best.bound() {
		return
	}
	if k >= c.leaves {
		from, to := c.span(k)
		for i := from; i < to; i++ {
			p, q := c.seg(i)
			segPair(a, b, p, q, best)
		}
		return
	}
	l, r := 2*k, 2*k+1
	if c.boxes[r].gap2(ab) < c.boxes[l].gap2(ab) {
		l, r = r, l
	}
	c.segmentBelow(l, a, b, ab, best)
	c.segmentBelow(r, a, b, ab, best)
}

// contains reports whether p is inside by the non-zero rule.
func (c *chain) contains(p geom.Vec) bool {
	b := c.bounds()
	if p.X < b.x0 || p.X > b.x1 || p.Y < b.y0 || p.Y > b.y1 {
		return false
	}
	return c.windingBelow(1, p) != 0
}

// windingBelow counts the crossings of the ray from p to the right.
func (c *chain) windingBelow(k int, p geom.Vec) int {
	b := &c.boxes[k]
	if p.Y < b.y0 || p.Y > b.y1 || p.X > b.x1 {
		return 0
	}
	if k < c.leaves {
		return c.windingBelow(2*k, p) + c.windingBelow(2*k+1, p)
	}
	w := 0
	from, to := c.span(k)
	for i := from; i < to; i++ {
		a, b := c.seg(i)
		if (a.Y <= p.Y) == (b.Y <= p.Y) {
			continue
		}
		side := b.Sub(a).Cross(p.Sub(a))
		switch {
		case b.Y > a.Y && side > 0:
			w++
		case b.Y < a.Y && side < 0:
			w--
		}
	}
	return w
}

// line is a segment to cross loops with.
type line struct {
	a, v geom.Vec // start and extent
	box  box
}

func newLine(a, b geom.Vec) line { return line{a, b.Sub(a), spot(a).with(b)} }

// misses reports whether the line certainly has no part in the box: their boxes
// part them, or all of its corners lie on one side of the line.
func (l *line) misses(b *box) bool {
	if b.x0 > l.box.x1 || b.x1 < l.box.x0 || b.y0 > l.box.y1 || b.y1 < l.box.y0 {
		return true
	}
	mx, my := (b.x0+b.x1)/2-l.a.X, (b.y0+b.y1)/2-l.a.Y
	off := l.v.X*my - l.v.Y*mx
	room := math.Abs(l.v.X)*(b.y1-b.y0)/2 + math.Abs(l.v.Y)*(b.x1-b.x0)/2
	return math.Abs(off) > room*(1+1e-9)
}

// cross gives where the line crosses segment pq, as a share of the line. A point
// on the line belongs to one side only, so that a line through a corner of a
// loop crosses it once, and a line along a side not at all.
func (l *line) cross(p, q geom.Vec) (float64, bool) {
	op, oq := l.v.Cross(p.Sub(l.a)), l.v.Cross(q.Sub(l.a))
	if (op > 0) == (oq > 0) {
		return 0, false
	}
	t := p.Lerp(q, op/(op-oq)).Sub(l.a).Dot(l.v) / l.v.Dot(l.v)
	return t, t >= 0 && t <= 1
}

// crossings appends where segment ab crosses the chain, as shares of ab.
func (c *chain) crossings(a, b geom.Vec, ts []float64) []float64 {
	l := newLine(a, b)
	return c.crossingsBelow(1, &l, ts)
}

func (c *chain) crossingsBelow(k int, l *line, ts []float64) []float64 {
	if l.misses(&c.boxes[k]) {
		return ts
	}
	if k < c.leaves {
		ts = c.crossingsBelow(2*k, l, ts)
		return c.crossingsBelow(2*k+1, l, ts)
	}
	from, to := c.span(k)
	for i := from; i < to; i++ {
		if t, ok := l.cross(c.seg(i)); ok {
			ts = append(ts, t)
		}
	}
	return ts
}

// cut reports whether the chain crosses segment ab.
func (c *chain) cut(a, b geom.Vec) bool {
	l := newLine(a, b)
	return c.cutBelow(1, &l)
}

func (c *chain) cutBelow(k int, l *line) bool {
	if l.misses(&c.boxes[k]) {
		return false
	}
	if k < c.leaves {
		return c.cutBelow(2*k, l) || c.cutBelow(2*k+1, l)
	}
	from, to := c.span(k)
	for i := from; i < to; i++ {
		if _, ok := l.cross(c.seg(i)); ok {
			return true
		}
	}
	return false
}

// each calls f with every segment that may have a part in b, in order.
func (c *chain) each(k int, b box, f func(i int)) {
	if c.boxes[k].gap2(b) > 0 {
		return
	}
	if k < c.leaves {
		c.each(2*k, b, f)
		c.each(2*k+1, b, f)
		return
	}
	from, to := c.span(k)
	for i := from; i < to; i++ {
		p, q := c.seg(i)
		if spot(p).with(q).gap2(b) == 0 {
			f(i)
		}
	}
}
