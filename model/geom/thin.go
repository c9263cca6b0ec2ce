package geom

import "slices"

// Thinned is a line with points left out so that none lies farther than the
// tolerance from what is left (D. H. Douglas and T. K. Peucker, "Algorithms
// for the reduction of the number of points required to represent a digitized
// line or its caricature", Cartographica 10 (1973)).
func Thinned(line []Vec, tolerance float64) []Vec {
	if len(line) < 3 {
		return slices.Clone(line)
	}
	keep := make([]bool, len(line))
	keep[0], keep[len(line)-1] = true, true
	type part struct{ from, to int }
	todo := []part{{0, len(line) - 1}}
	for len(todo) > 0 {
		p := todo[len(todo)-1]
		todo = todo[:len(todo)-1]
		worst, at := tolerance, 0
		for i := p.from + 1; i < p.to; i++ {
			if d := line[i].Dist(NearestOnSegment(line[i], line[p.from], line[p.to])); d > worst {
				worst, at = d, i
			}
		}
		if at > 0 {
			keep[at] = true
			todo = append(todo, part{p.from, at}, part{at, p.to})
		}
	}
	var out []Vec
	for i, p := range line {
		if keep[i] {
			out = append(out, p)
		}
	}
	return out
}
