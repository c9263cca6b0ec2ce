package picture

import (
	"math"
	"sync"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
)

// The broken face lies within brokenReach of the outline, which is its mean:
// brokenMean is the mean of brokenInset.
const (
	brokenReach = 16.0 // mm
	brokenMean  = 6.0  // mm
)

// strip is the broken face baked along the outline: how far it lies behind or
// before its mean, by the way along the outline and the height.
type strip struct {
	cell  float64
	nz    int
	v     []float32
	start []float32 // way at each segment's start, in cells; negative: not broken
	segs  []segment
}

// newStrip bakes the broken runs of a closed chain whose segments have edges.
func newStrip(loop geom.Loop, edges []edgeShape, t, cell float64) *strip {
	long := 0.0
	for i, p := range loop {
		if edges[i].kind == design.ProfileRough {
			long += p.Dist(loop[(i+1)%len(loop)])
		}
	}
	cell = max(cell, math.Sqrt(long*(t+4)/2e6), t/2000) // bounded memory
	s := &strip{cell: cell, nz: int(math.Ceil((t+4)/cell)) + 2}
	n := 0
	type column struct{ x, y float64 }
	var columns []column
	for i, p := range loop {
		q := loop[(i+1)%len(loop)]
		s.segs = append(s.segs, segment{p, q})
		if edges[i].kind != design.ProfileRough {
			s.start = append(s.start, -1)
			continue
		}
		s.start = append(s.start, float32(n))
		// Whole columns to each segment, at least one, and one beyond it.
		m := max(1, int(math.Ceil(p.Dist(q)/cell)))
		for k := range m + 1 {
			c := p.Lerp(q, float64(k)/float64(m))
			columns = append(columns, column{c.X, c.Y})
		}
		n += m + 1
	}
	s.v = make([]float32, n*s.nz)
	var wg sync.WaitGroup
	for part := range workers() {
		wg.Go(func() {
			for i := part; i < n; i += workers() {
				for k := range s.nz {
					z := (float64(k) - 1) * cell
					s.v[i*s.nz+k] = float32(brokenInset(v3{columns[i].x, columns[i].y, z}, t) - brokenMean)
				}
			}
		})
	}
	wg.Wait()
	return s
}

// at is the inset at p, whose nearest segment is k.
func (s *strip) at(p v3, k int32) float64 {
	g := &s.segs[k]
	ex, ey := g.b.X-g.a.X, g.b.Y-g.a.Y
	l := ex*ex + ey*ey
	if s.start[k] < 0 || l == 0 {
		return 0
	}
	u := max(0, min(1, ((p.X-g.a.X)*ex+(p.Y-g.a.Y)*ey)/l))
	m := max(1, math.Ceil(math.Sqrt(l)/s.cell))
	x := u * m
	i := min(int(x), int(m)-1)
	x -= float64(i)
	z := max(0, min(float64(s.nz)-1.001, p.Z/s.cell+1))
	j := int(z)
	z -= float64(j)
	c := s.v[(int(s.start[k])+i)*s.nz+j:]
	d := c[s.nz:]
	a, b := float64(c[0])+(float64(c[1])-float64(c[0]))*z, float64(d[0])+(float64(d[1])-float64(d[0]))*z
	return a + (b-a)*x
}

// brokenInset is how far a broken edge lies behind its furthest points, in
// millimetres: hollows of conchoidal breaks, larger ones with smaller ones in
// them, cut off here and there by a plane, and grain. Breaks are larger where
// the stone came away in one piece, so that no stretch repeats another.
func brokenInset(p v3, t float64) float64 {
	calm := noise3(p.mul(1.0 / 140).add(v3{3.1, 7.7, 1.3}))
	patch := noise3(p.mul(1.0 / 26).add(v3{1.7, 2.1, 9.3}))
	a := hollows(p, 31, 0) * (8 + 4*calm)
	b := hollows(p, 11, 1) * (3.2 - 1.6*calm)
	// Grain comes and goes: a clean break beside a crumbled one.
	grain := (noise3(p.mul(1.0/2.3))*0.55 + noise3(p.mul(1.0/0.8))*0.22) * (0.55 + 0.75*patch)
	lip := max(0, p.Z-t+9) / 9 // the upper arris spalls
	spall := noise3(p.mul(1.0 / 15))
	return a + b + grain + 3.2*lip*lip*max(0, spall+0.2)
}

// hollows is 0 on the ridges and up to 1 in the hollows of a break whose
// hollows are about size wide: the lower envelope of tilted bowls.
func hollows(p v3, size float64, seed uint32) float64 {
	q := p.mul(1 / size)
	q.Z *= 0.8
	ci, cj, ck := int(math.Floor(q.X)), int(math.Floor(q.Y)), int(math.Floor(q.Z))
	best := 2.0
	for k := ck - 1; k <= ck+1; k++ {
		for j := cj - 1; j <= cj+1; j++ {
			for i := ci - 1; i <= ci+1; i++ {
				h := hash4(uint32(i), uint32(j), uint32(k), seed)
				c := v3{float64(i) + unit01(h), float64(j) + unit01(h*0x9e3779b1+7), float64(k) + unit01(h*0x85ebca6b+3)}
				d := q.sub(c)
				tilt := v3{unit01(h*0xc2b2ae35+1) - 0.5, unit01(h*0x27d4eb2f+9) - 0.5, unit01(h*0x165667b1+5) - 0.5}
				bowl := d.dot(d)*(0.7+0.6*unit01(h*0x2545f491+2)) + 0.9*d.dot(tilt) + 0.35*unit01(h+11)
				best = min(best, bowl)
			}
		}
	}
	return 1 - max(0, min(1, best+0.15))
}
