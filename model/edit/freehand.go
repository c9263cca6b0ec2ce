package edit

import (
	"math"
	"slices"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/stroke"
	"example.org/castwright/model/units"
)

// BranchFromStroke fits a river to a freehand stroke, as [RiverFromStroke] does,
// that leaves a channel's river where the stroke starts in one, or runs into one
// where it ends in one, as water does: along that river's middle, no wider than
// it is there. Without a river of c at either end it is [RiverFromStroke].
func BranchFromStroke(c design.Channel, points []design.Point, width, tolerance units.Length) (r design.River, off units.Length, err error) {
	if err := firstOf(checkLength("the width", width, units.Nanometre),
		checkLength("the tolerance", tolerance, units.Micrometre)); err != nil {
		return r, 0, err
	}
	way := make([]geom.Vec, 0, len(points))
	for _, p := range points {
		if v := vec(p); len(way) == 0 || v != way[len(way)-1] {
			way = append(way, v)
		}
	}
	if len(way) < 2 {
		return r, 0, stroke.ErrShort
	}
	way, from := ledIn(c, way, width.MM()/2)
	slices.Reverse(way)
	way, to := ledIn(c, way, width.MM()/2)
	slices.Reverse(way)
	fit, err := stroke.Nodes(way, tolerance.MM())
	if err != nil {
		return r, 0, err
	}
	for _, p := range fit.Nodes {
		r.Nodes = append(r.Nodes, design.RiverNode{At: point(p), Width: width})
	}
	// The round end within the other river must not show beside it.
	if from > 0 {
		r.Nodes[0].Width = min(width, units.FromMM(from))
	}
	if n := len(r.Nodes) - 1; to > 0 {
		r.Nodes[n].Width = min(width, units.FromMM(to))
	}
	return r, units.FromMM(fit.Off), nil
}

// leadIn is how many widths of the river a branch runs along in it.
const leadIn = 1.5

// ledIn is a way that starts in one of a channel's rivers, or so near that its own
// bank meets it, begun a little way up that river along its middle; the river's
// width there, 0 when it starts in none.
func ledIn(c design.Channel, way []geom.Vec, half float64) ([]geom.Vec, float64) {
	line, width, at, ok := riverAt(c, way[0], half)
	if !ok {
		return way, 0
	}
	lengths := lengthsOf(line)
	total := lengths[len(lengths)-1]
	// Which way the stroke goes once it has left the river.
	out := way[len(way)-1]
	for _, p := range way {
		if p.Dist(way[0]) > width {
			out = p
			break
		}
	}
	along := placeOn(line, lengths, math.Min(total, at+width/8)).Sub(placeOn(line, lengths, math.Max(0, at-width/8)))
	up := -1.0
	if along.Dot(out.Sub(way[0])) < 0 {
		up = 1
	}
	lead := leadIn * width
	if up < 0 {
		lead = math.Min(lead, at)
	} else {
		lead = math.Min(lead, total-at)
	}
	if lead < width/4 {
		return way, 0 // at the river's very end there is no room for one
	}
	const steps = 12
	var led []geom.Vec
	for i := range steps {
		led = append(led, placeOn(line, lengths, at+up*lead*(1-0.6*float64(i)/steps)))
	}
	// The stroke itself is followed from where it is well out of the middle.
	for len(way) > 2 && way[0].Dist(out) > 0 && way[0].Dist(placeOn(line, lengths, at)) < 0.75*width {
		way = way[1:]
	}
	return append(led, way...), width
}

// riverAt is the flattened middle of the river of a channel that covers p best,
// or comes within reach of it, the river's width there, and how far along p lies.
func riverAt(c design.Channel, p geom.Vec, reach float64) (line []geom.Vec, width, at float64, ok bool) {
	best := math.Inf(1)
	for _, r := range c.Rivers {
		var points []geom.Vec
		var widths []float64
		for _, n := range r.Nodes {
			q := vec(n.At)
			if k := len(points); k > 0 && q.Dist(points[k-1]) < 1e-6 {
				continue
			}
			points, widths = append(points, q), append(widths, n.Width.MM())
		}
		band, fine := geom.NewBand(points, widths)
		if !fine {
			continue
		}
		middle := band.Flatten(brushTolerance / 4).Centreline()
		_, dist, along := geom.NearestOnLine(p, middle)
		here := widthOn(points, widths, p)
		if share := dist / here; dist <= here/2+reach && share < best {
			best, line, width, at, ok = share, middle, here, along, true
		}
	}
	return line, width, at, ok
}

// widthOn is a river's width beside the place on the line of its nodes that is
// nearest to p, between those of the nodes.
func widthOn(points []geom.Vec, widths []float64, p geom.Vec) float64 {
	best, out := math.Inf(1), widths[0]
	for i := 1; i < len(points); i++ {
		q := geom.NearestOnSegment(p, points[i-1], points[i])
		if d := q.Dist(p); d < best {
			t := ratio(q.Dist(points[i-1]), points[i].Dist(points[i-1]))
			best, out = d, widths[i-1]+(widths[i]-widths[i-1])*t
		}
	}
	return out
}

func lengthsOf(line []geom.Vec) []float64 {
	out := make([]float64, len(line))
	for i := 1; i < len(line); i++ {
		out[i] = out[i-1] + line[i].Dist(line[i-1])
	}
	return out
}

// placeOn is the place on a line at a length from its start.
func placeOn(line []geom.Vec, lengths []float64, s float64) geom.Vec {
	i, _ := slices.BinarySearch(lengths, s)
	if i == 0 {
		return line[0]
	}
	if i >= len(line) {
		return line[len(line)-1]
	}
	return line[i-1].Lerp(line[i], ratio(s-lengths[i-1], lengths[i]-lengths[i-1]))
}
