package tool

import (
	"math"

	"example.org/castwright/model/geom"
)

// holdKind says how the snap holds a place to something.
type holdKind uint8

const (
	holdsLine   holdKind = iota // in line with a place or an edge
	holdsCentre                 // on a centreline
	holdsEdge                   // on an edge
	holdsGap                    // between neighbours
	holdsLength                 // as long as another
	holdsSmooth                 // going on smoothly
)

// handicap is by how many points of the picture a kind must be nearer than
// another to hold before it. What the maker is likeliest to mean comes first:
// an edge for what can end on one, a centreline, equal gaps, then lengths, and
// what is merely in line last.
var handicap = [...]float64{holdsEdge: 0, holdsSmooth: 0, holdsCentre: 0.5, holdsGap: 1, holdsLength: 1.5, holdsLine: 2}

// track is a line, a circle or a polyline that the snap can hold a place on.
type track struct {
	kind  holdKind
	at    geom.Vec // a place on the line; the circle's centre
	dir   geom.Vec // of the line, a unit vector
	r     float64  // of the circle, 0 for a line
	pts   []geom.Vec
	name  string // what it is: "the front edge"
	words string // the whole sentence instead, such as "Equal gaps left and right, 4 1/2″"
	of    *mark  // of a centreline through it
	guide []Line
	rung  func(q geom.Vec) []Line // guides that depend on where it holds
}

// line is the line through at along dir.
func line(at, dir geom.Vec, kind holdKind, name string) track {
	return track{kind: kind, at: at, dir: dir, name: name}
}

// upright reports whether the track is a line along an axis.
func (t track) upright() bool {
	return t.r == 0 && (math.Abs(t.dir.X) > 1-1e-12 || math.Abs(t.dir.Y) > 1-1e-12)
}

// straight reports whether the track is a line, as far as it goes.
func (t track) straight() bool { return t.r == 0 && t.dir != geom.Vec{} }

// nearest is the place on the track that is nearest to p.
func (t track) nearest(p geom.Vec) geom.Vec {
	switch {
	case t.r > 0:
		u := p.Sub(t.at).Unit()
		if u == (geom.Vec{}) {
			u = geom.Vec{X: 1}
		}
		return t.at.Add(u.Mul(t.r))
	case t.straight():
		return t.at.Add(t.dir.Mul(p.Sub(t.at).Dot(t.dir)))
	}
	_, q := distance(p, t.pts, false)
	return q
}

// cross is the crossing of two tracks that is nearest to p.
func (t track) cross(u track, p geom.Vec) (geom.Vec, bool) {
	switch {
	case t.straight() && u.straight():
		w := t.dir.Cross(u.dir)
		if math.Abs(w) < 1e-6 {
			return geom.Vec{}, false
		}
		return t.at.Add(t.dir.Mul(u.at.Sub(t.at).Cross(u.dir) / w)), true
	case u.straight():
		return u.cross(t, p)
	case !t.straight():
		return geom.Vec{}, false
	case u.r > 0:
		foot := t.nearest(u.at)
		h := u.at.Dist(foot)
		if h > u.r {
			return geom.Vec{}, false
		}
		half := t.dir.Mul(math.Sqrt(u.r*u.r - h*h))
		return nearer(p, foot.Add(half), foot.Sub(half)), true
	}
	found, best := geom.Vec{}, math.Inf(1)
	for i := 0; i+1 < len(u.pts); i++ {
		for _, dir := range [...]geom.Vec{t.dir, t.dir.Mul(-1)} {
			along, ok := meets(t.at, dir, u.pts[i], u.pts[i+1])
			if q := t.at.Add(dir.Mul(along)); ok && q.Dist(p) < best {
				found, best = q, q.Dist(p)
			}
		}
	}
	return found, !math.IsInf(best, 1)
}

func nearer(p, a, b geom.Vec) geom.Vec {
	if p.Dist(b) < p.Dist(a) {
		return b
	}
	return a
}

// sentence says what a place on the track is held by.
func (t track) sentence() string {
	switch {
	case t.words != "":
		return t.words
	case t.kind == holdsLine:
		return "In line with " + t.name
	case t.kind == holdsSmooth:
		return "Smooth with " + t.name
	}
	return "On " + t.name
}

// both says what a place on two tracks is held by.
func both(t, u track) string {
	plain := func(t track) bool { return t.words == "" && t.kind != holdsSmooth }
	switch {
	case !plain(t) && plain(u):
		return t.sentence() + ", " + small(u.sentence())
	case !plain(t) || !plain(u):
		return u.sentence() + ", " + small(t.sentence())
	case t.kind == holdsLine && u.kind == holdsLine:
		return "In line with " + t.name + " and " + u.name
	case t.kind == holdsLine:
		return u.sentence() + ", in line with " + t.name
	case u.kind == holdsLine:
		return t.sentence() + ", in line with " + u.name
	}
	return "Where " + t.name + " meets " + u.name
}
