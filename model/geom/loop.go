package geom

// Loop is a closed polyline; the first point is not repeated. Counter-clockwise
// loops bound what lies inside them, clockwise loops bound holes.
type Loop []Vec

// Area is the signed area (shoelace), positive counter-clockwise, taken about
// the first point so that distant loops lose no digits.
func (l Loop) Area() float64 {
	if len(l) < 3 {
		return 0
	}
	o, sum := l[0], 0.0
	for i := 1; i+1 < len(l); i++ {
		sum += l[i].Sub(o).Cross(l[i+1].Sub(o))
	}
	return sum / 2
}

// Centroid is the centre of the area; for a loop without area, the mean point.
func (l Loop) Centroid() Vec {
	if len(l) == 0 {
		return Vec{}
	}
	o := l[0]
	var m Vec
	a2 := 0.0
	for i := 1; i+1 < len(l); i++ {
		p, q := l[i].Sub(o), l[i+1].Sub(o)
		c := p.Cross(q)
		a2 += c
		m = m.Add(p.Add(q).Mul(c))
	}
	if a2 == 0 {
		for _, p := range l {
			m = m.Add(p.Sub(o))
		}
		return o.Add(m.Mul(1 / float64(len(l))))
	}
	return o.Add(m.Mul(1 / (3 * a2)))
}

// Perimeter is the length of the closed polyline.
func (l Loop) Perimeter() float64 {
	sum := 0.0
	for i, p := range l {
		sum += p.Dist(l[(i+1)%len(l)])
	}
	return sum
}

// Bounds is the smallest box that holds the loop.
func (l Loop) Bounds() Box {
	b := EmptyBox()
	for _, p := range l {
		b = b.Include(p)
	}
	return b
}

// Winding is how often the loop turns counter-clockwise about p.
func (l Loop) Winding(p Vec) int {
	w := 0
	for i, a := range l {
		b := l[(i+1)%len(l)]
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

// Contains reports whether p is inside by the non-zero rule.
func (l Loop) Contains(p Vec) bool { return l.Winding(p) != 0 }

// Reversed is the loop run the other way.
func (l Loop) Reversed() Loop {
	r := make(Loop, len(l))
	for i, p := range l {
		r[len(l)-1-i] = p
	}
	return r
}
