package edit

import (
	"errors"
	"fmt"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/stroke"
	"example.org/castwright/model/units"
)

// RiverFromStroke fits a river of one width to a freehand stroke, with as few
// nodes as keep its centreline within tolerance of the stroke; off is how far
// the two are apart at most. The ends are round. It goes into a design by
// [AddChannel], or by [AddRiver] as a branch, whose banks join those of the
// channel's other rivers, because a channel is the union of its rivers.
func RiverFromStroke(points []design.Point, width, tolerance units.Length) (r design.River, off units.Length, err error) {
	err = firstOf(
		checkLength("the width", width, units.Nanometre),
		checkLength("the tolerance", tolerance, units.Micrometre),
	)
	if err != nil {
		return r, 0, err
	}
	way := make([]geom.Vec, len(points))
	for i, p := range points {
		way[i] = vec(p)
	}
	fit, err := stroke.Nodes(way, tolerance.MM())
	if err != nil {
		return r, 0, err
	}
	for _, p := range fit.Nodes {
		r.Nodes = append(r.Nodes, design.RiverNode{At: point(p), Width: width})
	}
	return r, units.FromMM(fit.Off), nil
}

// BrushTolerance is how far the outline of a region that was made by a brush
// or along a bank may stray from what was swept.
const BrushTolerance = units.Millimetre / 2

// brushTolerance is the same in millimetres: a half for flattening and for
// leaving points out each.
const brushTolerance = 0.25

// maxBrush bounds the pieces of a brush stroke.
const maxBrush = 2000

// GlassFromBrush is the region that a round brush of a width sweeps over along
// a stroke, to [BrushTolerance]; where the stroke comes back on itself it
// leaves islands.
func GlassFromBrush(points []design.Point, width units.Length) (design.Region, error) {
	loops, err := brushed(points, width)
	if err != nil {
		return design.Region{}, err
	}
	var sweep geom.Sweep
	regions := regionsOf(sweep.Union(loops...))
	if len(regions) != 1 {
		return design.Region{}, errNoArea
	}
	return regions[0], nil
}

var errNoArea = errors.New("the brush covers nothing: drag it over the top")

// PaintGlass adds what a brush sweeps over to the region of a glass bed, which
// it must touch. The whole region is then drawn by straight edges, to
// [BrushTolerance].
func PaintGlass(id design.ID, points []design.Point, width units.Length) Edit {
	return brushEdit("Paint glass", id, points, width, func(layers uint64) bool {
		return layers&paintedLayer != 0 || layers == bedLayer
	})
}

// EraseGlass takes what a brush sweeps over out of the region of a glass bed;
// what is left must hang together.
func EraseGlass(id design.ID, points []design.Point, width units.Length) Edit {
	return brushEdit("Erase glass", id, points, width, func(layers uint64) bool { return layers == bedLayer })
}

// The layers of a bed under a brush: its outer chain, its islands, the stroke.
const (
	bedLayer = 1 << iota
	islandLayer
	paintedLayer
)

func brushEdit(name string, id design.ID, points []design.Point, width units.Length, keep func(uint64) bool) Edit {
	loops, err := brushed(points, width)
	return glass.change(name, id, func(_ design.Design, g *design.GlassBed) error {
		if err != nil {
			return err
		}
		var sweep geom.Sweep
		sweep.Reset(vec(middleOf(g.Region.Outer)))
		sweep.Add(0, flatChain(g.Region.Outer))
		for _, island := range g.Region.Islands {
			sweep.Add(1, flatChain(island))
		}
		for _, l := range loops {
			sweep.Add(2, l)
		}
		switch regions := regionsOf(sweep.Loops(keep)); len(regions) {
		case 0:
			return fmt.Errorf("nothing would be left: remove the glass bed")
		case 1:
			g.Region = regions[0]
			return nil
		default:
			return fmt.Errorf("the bed would be in %d pieces, and a bed is one: "+
				"paint so that it hangs together, or start another", len(regions))
		}
	})
}

// brushed are loops whose union a brush sweeps over.
func brushed(points []design.Point, width units.Length) ([]geom.Loop, error) {
	if err := checkLength("the brush's width", width, units.Millimetre); err != nil {
		return nil, err
	}
	var way []geom.Vec
	for _, p := range points {
		if err := firstOf(checkBound("a point's x", p.X), checkBound("a point's y", p.Y)); err != nil {
			return nil, err
		}
		if v := vec(p); len(way) == 0 || v != way[len(way)-1] {
			way = append(way, v)
		}
	}
	if len(way) == 0 {
		return nil, errNoArea
	}
	way = geom.Thinned(way, brushTolerance/2)
	if len(way) > maxBrush {
		return nil, fmt.Errorf("the stroke turns too often: paint it in parts")
	}
	r := width.MM() / 2
	loops := []geom.Loop{disc(way[0], r)}
	for i := 1; i < len(way); i++ {
		out := way[i].Sub(way[i-1]).Unit().Left().Mul(r)
		loops = append(loops, geom.Loop{way[i-1].Sub(out), way[i].Sub(out), way[i].Add(out), way[i-1].Add(out)},
			disc(way[i], r))
	}
	return onGrid(loops), nil
}
