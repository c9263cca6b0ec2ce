package template

import (
	"cmp"
	"slices"

	"example.org/castwright/model/geom"
)

// wallSteps is into how many lines a curve of a wall is cut.
const wallSteps = 32

// Walls reads the open lines of a drawing, such as the scan of a wall: each as a
// polyline in millimetres, from its left end to its right one, or from its lower
// end to its upper one where it is steep; the longest first. Pieces whose ends lie
// within 0.1 mm are joined. Unit is as for [Read].
func Walls(data []byte, unit Unit) ([][]geom.Vec, error) {
	if len(data) > maxBytes {
		return nil, fail(0, "the file has %d MB; at most %d MB are read", len(data)>>20, maxBytes>>20)
	}
	raw, err := readAny(data)
	if err != nil {
		return nil, err
	}
	mm := raw.mm
	if unit != UnitUnknown && !raw.sized {
		mm = unit.mm()
	}
	if mm == 0 {
		return nil, ErrUnits
	}
	var loose []run
	for _, r := range raw.runs {
		r = r.transform(affine{a: mm, d: mm})
		if c := r.clean(&raw.notes); len(c) > 0 && !r.closed && !c.meets() {
			loose = append(loose, run{spans: c})
		}
	}
	out := openLines(loose)
	if len(out) == 0 {
		return nil, fail(0, "no open line was found: draw the wall as one line from end to end")
	}
	return out, nil
}

// openLines joins runs end to end where no more than two meet.
func openLines(runs []run) [][]geom.Vec {
	g := newGraph(runs)
	var out [][]geom.Vec
	for p, n := range g.degree {
		if n != 1 {
			continue
		}
		h := g.half(p)
		if h < 0 {
			continue // the other end has been walked from
		}
		var line []geom.Vec
		for h >= 0 {
			line = append(line, g.along(h).points()...)
			end := g.start(h ^ 1)
			g.remove(h / 2)
			if h = -1; g.degree[end] == 1 {
				h = g.half(end)
			}
		}
		out = append(out, leftToRight(line))
	}
	length := func(l []geom.Vec) (sum float64) {
		for i := 1; i < len(l); i++ {
			sum += l[i].Dist(l[i-1])
		}
		return sum
	}
	slices.SortStableFunc(out, func(a, b []geom.Vec) int { return cmp.Compare(length(b), length(a)) })
	return out
}

// points is a chain as a polyline, both ends included.
func (c chain) points() []geom.Vec {
	return append(c.flat(wallSteps), c.end())
}

func leftToRight(l []geom.Vec) []geom.Vec {
	way := l[len(l)-1].Sub(l[0])
	along := way.X
	if way.Y*way.Y > way.X*way.X {
		along = way.Y
	}
	if along < 0 {
		slices.Reverse(l)
	}
	return l
}
