package stroke

import (
	"math"

	"example.org/castwright/model/geom"
)

// maxPoints bounds a stroke; a pointer gives some hundred points a second.
const maxPoints = 20_000

// samples is how many points, evenly spaced along the stroke, the fit looks at.
const samples = 160

// clean drops points that can't be drawn and points that repeat the one before.
func clean(points []geom.Vec) []geom.Vec {
	if len(points) > maxPoints {
		points = points[:maxPoints]
	}
	var out []geom.Vec
	for _, p := range points {
		if !p.Finite() || math.Abs(p.X) > 1e6 || math.Abs(p.Y) > 1e6 {
			continue
		}
		if n := len(out); n > 0 && out[n-1].Dist(p) < 1e-6 {
			continue
		}
		out = append(out, p)
	}
	return out
}

// polyline is a stroke with its cumulative length.
type polyline struct {
	p []geom.Vec
	s []float64
}

func newPolyline(p []geom.Vec) polyline {
	l := polyline{p, make([]float64, len(p))}
	for i := 1; i < len(p); i++ {
		l.s[i] = l.s[i-1] + p[i].Dist(p[i-1])
	}
	return l
}

func (l polyline) length() float64 { return l.s[len(l.s)-1] }

// resample gives n points evenly along the line, ends included.
func (l polyline) resample(n int) []geom.Vec {
	out := make([]geom.Vec, n)
	j := 1
	for i := range out {
		s := l.length() * float64(i) / float64(n-1)
		for j+1 < len(l.s) && l.s[j] < s {
			j++
		}
		t := (s - l.s[j-1]) / (l.s[j] - l.s[j-1])
		out[i] = l.p[j-1].Lerp(l.p[j], math.Max(0, math.Min(1, t)))
	}
	return out
}

// apart is how far a point of l lies from m at most, each looked for within
// reach of its own share of the way, so that a stroke which comes back on
// itself is not mistaken. Once it is beyond enough, how far no longer matters.
func (l polyline) apart(m polyline, enough float64) float64 {
	const reach = 0.15
	worst, first := 0.0, 1
	for i, p := range l.p {
		s := l.s[i] / l.length() * m.length()
		for first+1 < len(m.p) && m.s[first] < s-reach*m.length() {
			first++
		}
		best := math.Inf(1)
		for j := first; j < len(m.p) && m.s[j-1] <= s+reach*m.length(); j++ {
			if d := toSegment(p, m.p[j-1], m.p[j]); d < best {
				if best = d; best <= worst {
					break // it is not the worst
				}
			}
		}
		if best > worst {
			if worst = best; worst > enough*enough {
				break
			}
		}
	}
	return math.Sqrt(worst)
}

// toSegment is the square of the distance of p from the segment from a to b.
func toSegment(p, a, b geom.Vec) float64 {
	dx, dy := b.X-a.X, b.Y-a.Y
	px, py := p.X-a.X, p.Y-a.Y
	if n := dx*dx + dy*dy; n > 0 {
		t := (px*dx + py*dy) / n
		switch {
		case t >= 1:
			px, py = px-dx, py-dy
		case t > 0:
			px, py = px-t*dx, py-t*dy
		}
	}
	return px*px + py*py
}
