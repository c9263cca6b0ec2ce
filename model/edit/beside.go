package edit

import (
	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
)

// Beside is the way by which copies of parts come to lie next to them, a gap
// apart: to the right, else the left, the front or the back, whichever first
// keeps the copies within the bounds of the top and clear of the boxes of all
// other parts but supports, which lie below. Where there is no such place the
// copies lie a gap to the right and the front, over what is there.
func Beside(d design.Design, ids []design.ID, gap units.Length) design.Point {
	aside := design.Point{X: gap, Y: -gap}
	picked, box := map[design.ID]bool{}, geom.EmptyBox()
	for _, id := range ids {
		picked[id] = true
		box = box.Union(extent(d, id))
	}
	if box.Empty() || len(d.Outline.Nodes) == 0 {
		return aside
	}
	for _, t := range d.Taps { // they go along with their sink
		if t.Sink != "" && picked[t.Sink] && !picked[t.ID] {
			picked[t.ID] = true
			box = box.Union(extent(d, t.ID))
		}
	}
	below := true
	for id := range picked {
		below = below && supports.find(&d, id) != nil
	}
	top := boundsOf(d.Outline.Nodes)
	w, h := units.FromMM(box.W())+gap, units.FromMM(box.H())+gap
	for _, by := range []design.Point{{X: w}, {X: -w}, {Y: -h}, {Y: h}} {
		there := geom.Box{Min: box.Min.Add(vec(by)), Max: box.Max.Add(vec(by))}
		if !top.Contains(there.Min) || !top.Contains(there.Max) {
			continue
		}
		clear := true
		for _, id := range partIDs(d) {
			if supports.find(&d, id) != nil == below && overlap(there, extent(d, id)) {
				clear = false
				break
			}
		}
		if clear {
			return by
		}
	}
	return aside
}

func overlap(a, b geom.Box) bool {
	return !b.Empty() && a.Min.X < b.Max.X && b.Min.X < a.Max.X && a.Min.Y < b.Max.Y && b.Min.Y < a.Max.Y
}
