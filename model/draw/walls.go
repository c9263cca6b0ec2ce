package draw

import "example.org/castwright/model/slab"

// wallRuns joins the sides that lie along walls into runs.
func wallRuns(sides []slab.Side) []wallRun {
	n := len(sides)
	start := 0
	for start < n && sides[start].Wall == sides[(start+n-1)%n].Wall {
		start++
	}
	if start == n { // all alike
		if n == 0 || !sides[0].Wall {
			return nil
		}
		var run wallRun
		for _, s := range sides {
			run.points = append(run.points, s.Points[:len(s.Points)-1]...)
		}
		run.closed = true
		return []wallRun{run}
	}
	var out []wallRun
	for k := 0; k < n; k++ {
		s := sides[(start+k)%n]
		if !s.Wall || len(s.Points) < 2 {
			continue
		}
		if prev := sides[(start+k+n-1)%n]; prev.Wall && k > 0 && len(out) > 0 {
			last := &out[len(out)-1]
			last.points = append(last.points, s.Points[1:]...)
			continue
		}
		out = append(out, wallRun{points: append(s.Points[:0:0], s.Points...)})
	}
	return out
}
