package geom

import "math"

// Box is an axis-parallel rectangle. Use [EmptyBox] to start a union; the zero
// value is the point at the origin.
type Box struct{ Min, Max Vec }

// EmptyBox holds no point.
func EmptyBox() Box {
	inf := math.Inf(1)
	return Box{Vec{inf, inf}, Vec{-inf, -inf}}
}

// Empty reports whether the box holds no point.
func (b Box) Empty() bool { return b.Min.X > b.Max.X || b.Min.Y > b.Max.Y }

// Include is the box grown to hold p. A part of p that is NaN is left out.
func (b Box) Include(p Vec) Box {
	if p.X < b.Min.X {
		b.Min.X = p.X
	}
	if p.Y < b.Min.Y {
		b.Min.Y = p.Y
	}
	if p.X > b.Max.X {
		b.Max.X = p.X
	}
	if p.Y > b.Max.Y {
		b.Max.Y = p.Y
	}
	return b
}

// Union is the smallest box that holds both.
func (b Box) Union(c Box) Box {
	if c.Empty() {
		return b
	}
	return b.Include(c.Min).Include(c.Max)
}

// Grow is the box with each side moved out by d.
func (b Box) Grow(d float64) Box {
	return Box{Vec{b.Min.X - d, b.Min.Y - d}, Vec{b.Max.X + d, b.Max.Y + d}}
}

// W is the width, 0 for an empty box.
func (b Box) W() float64 { return math.Max(0, b.Max.X-b.Min.X) }

// H is the height, 0 for an empty box.
func (b Box) H() float64 { return math.Max(0, b.Max.Y-b.Min.Y) }

// Centre is the middle of the box.
func (b Box) Centre() Vec { return b.Min.Lerp(b.Max, 0.5) }

// Contains reports whether p lies in the box or on its rim.
func (b Box) Contains(p Vec) bool {
	return p.X >= b.Min.X && p.X <= b.Max.X && p.Y >= b.Min.Y && p.Y <= b.Max.Y
}
