package warn

import "slices"

// meeting is two openings that lie nearer than any limit between them.
type meeting struct {
	a, b opening
	pair
	overlap bool // they cross, touch, or one lies in the other
}

// meetings lists the openings that lie nearer to each other than reach, those
// outside the top left out, in the order of the solid.
func (c *check) meetings(reach float64) []meeting {
	byLeft := make([]int, 0, len(c.openings))
	for i, o := range c.openings {
		if o.side != without {
			byLeft = append(byLeft, i)
		}
	}
	slices.SortStableFunc(byLeft, func(i, j int) int {
		x, y := c.openings[i].bounds().x0, c.openings[j].bounds().x0
		switch {
		case x < y:
			return -1
		case x > y:
			return 1
		}
		return 0
	})
	type found struct {
		i, j int
		meeting
	}
	var all []found
	for n, i := range byLeft {
		for _, j := range byLeft[n+1:] {
			a, b := c.openings[i], c.openings[j]
			if b.bounds().x0 > a.bounds().x1+reach {
				break
			}
			if i > j {
				a, b = b, a
			}
			m := meeting{a: a, b: b}
			var ok bool
			m.pair, ok = a.closest(b.chain, reach)
			switch {
			case ok && m.d < touching:
				m.overlap = true
			case a.contains(b.pts[0]):
				m.overlap, m.at, m.to = true, b.Centre, b.Centre
			case b.contains(a.pts[0]):
				m.overlap, m.at, m.to = true, a.Centre, a.Centre
			case !ok:
				continue
			}
			all = append(all, found{min(i, j), max(i, j), m})
		}
	}
	slices.SortFunc(all, func(x, y found) int {
		if x.i != y.i {
			return x.i - y.i
		}
		return x.j - y.j
	})
	out := make([]meeting, len(all))
	for k, f := range all {
		out[k] = f.meeting
	}
	return out
}
