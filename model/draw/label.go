package draw

import (
	"fmt"
	"math"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/scene"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/units"
)

// sinkSizes writes each basin's size into it.
func (k *sketch) sinkSizes(d design.Design, s slab.Solid) {
	for _, n := range d.Sinks {
		bowl, ok := bowlOf(s, n.ID)
		if !ok || len(bowl.Loop) < 3 {
			continue
		}
		w, h := n.Shape.Width.MM(), n.Shape.Depth.MM()
		text := k.length(w) + " × " + k.length(h)
		switch n.Shape.Kind {
		case design.ShapeCircle:
			text = "Ø " + k.length(w)
		case design.ShapePath:
			box := bowl.Loop.Bounds()
			text = k.length(box.W()) + " × " + k.length(box.H())
		}
		box := bowl.Loop.Bounds()
		at := geom.Vec{X: box.Centre().X, Y: box.Min.Y + 0.24*box.H()}
		t := scene.Text{At: k.ToPage(at), Size: k.pt(smallSize), Text: text, Colour: scene.Colour{R: 0x2a, G: 0x2d, B: 0x30, A: 0xff}}
		if t.Width() > 0.78*box.W()*k.Scale || box.H()*k.Scale < k.pt(56) {
			continue
		}
		k.plate(t, scene.Colour{R: 0xf4, G: 0xf3, B: 0xf0, A: 0xb0})
	}
}

// corners names the sizes of the outline's rounded and cut corners, one label
// for each size.
func (k *sketch) corners(s slab.Solid, d design.Design) {
	type treatment struct {
		kind design.CornerKind
		size units.Length
	}
	count := map[treatment]int{}
	first := map[treatment]int{}
	var order []treatment
	drawn := map[int]bool{}
	for _, side := range s.Sides {
		if side.Corner >= 0 && side.Corner < len(d.Outline.Nodes) && !drawn[side.Corner] {
			drawn[side.Corner] = true
			c := d.Outline.Nodes[side.Corner].Corner
			t := treatment{c.Kind, c.Size}
			if count[t]++; count[t] == 1 {
				first[t] = side.Corner
				order = append(order, t)
			}
		}
	}
	if len(order) > maxStations {
		return
	}
	for _, t := range order {
		at, in, ok := cornerPlace(s, first[t])
		if !ok {
			continue
		}
		text := "R " + units.Format(t.size, k.Units)
		if t.kind == design.CornerChamfered {
			text = units.Format(t.size, k.Units) + " cut"
		}
		if count[t] > 1 {
			text = fmt.Sprintf("%d × %s", count[t], text)
		}
		// Within the concrete, or in the free space before an inside corner; on
		// the other side or aslant where something would be covered.
		if insideCorner(d, first[t]) {
			in = in.Mul(-1)
		}
		for _, dir := range [...]geom.Vec{in, in.Mul(-1), {X: in.X, Y: -in.Y}, {X: -in.X, Y: in.Y}} {
			label, line := k.cornerLabel(at, dir, text)
			if k.covers(s, label) {
				continue
			}
			k.items = append(k.items, line)
			ground := k.Theme.Halo
			ground.A = 0xc8
			k.plate(label, ground)
			break
		}
	}
}

// cornerLabel is a text that stands off from a corner toward dir, and the line
// that leads to it.
func (k *sketch) cornerLabel(at, dir geom.Vec, text string) (scene.Text, scene.Stroke) {
	page := k.ToPage(at)
	dir.Y = -dir.Y
	end := page.Add(dir.Mul(k.pt(15)))
	label := scene.Text{Size: k.pt(smallSize), Text: text, Colour: k.Theme.Ink}
	label.At = end.Add(geom.Vec{X: math.Copysign(label.Width()/2+k.pt(4), dir.X), Y: dir.Y * k.pt(3)})
	return label, scene.Stroke{Lines: [][]geom.Vec{{page, end}}, Width: k.pt(0.8), Colour: k.Theme.Ink}
}

// covers reports whether a text would cover part of a basin, opening, channel, of a
// dimension line or of another text.
func (k *sketch) covers(s slab.Solid, t scene.Text) bool {
	for _, other := range k.texts {
		if meets(k.extent(t), k.extent(other)) {
			return true
		}
	}
	for _, line := range k.lines {
		c := geom.EmptyBox()
		for _, p := range line {
			c = c.Include(p)
		}
		if meets(k.extent(t), c) {
			return true
		}
	}
	half := geom.Vec{X: t.Width()/2 + k.pt(4), Y: 0.7 * t.Size}
	box := geom.EmptyBox().Include(k.ToDesign(t.At.Sub(half))).Include(k.ToDesign(t.At.Add(half)))
	for _, b := range s.Bowls {
		if c := b.Loop.Bounds(); !c.Empty() && meets(box, c) {
			return true
		}
	}
	for _, o := range s.Openings {
		if c := o.Loop.Bounds(); !c.Empty() && meets(box, c) {
			return true
		}
	}
	for _, r := range s.Recesses {
		for _, l := range r.Loops {
			for _, p := range l {
				if box.Contains(p) {
					return true
				}
			}
		}
	}
	return false
}

// meets reports whether two boxes overlap.
func meets(a, b geom.Box) bool {
	return a.Min.X < b.Max.X && a.Max.X > b.Min.X && a.Min.Y < b.Max.Y && a.Max.Y > b.Min.Y
}

// insideCorner reports whether the outline turns to the right at a corner.
func insideCorner(d design.Design, i int) bool {
	nodes := d.Outline.Nodes
	n := len(nodes)
	at := func(i int) geom.Vec { p := nodes[(i+n)%n].At; return geom.Vec{X: p.X.MM(), Y: p.Y.MM()} }
	return at(i).Sub(at(i-1)).Cross(at(i+1).Sub(at(i))) < 0
}

// cornerPlace is the middle of a corner's cut and the unit vector from it into
// the concrete.
func cornerPlace(s slab.Solid, corner int) (at, in geom.Vec, ok bool) {
	var pts []geom.Vec
	n := len(s.Sides)
	for i, side := range s.Sides {
		// The half that arrives comes before the half that leaves, round the
		// end of the list too.
		if side.Corner == corner && s.Sides[(i+n-1)%n].Corner != corner {
			pts = append(pts, side.Points...)
			if next := s.Sides[(i+1)%n]; n > 1 && next.Corner == corner {
				pts = append(pts, next.Points...)
				at = side.Points[len(side.Points)-1]
			} else {
				at = side.Points[len(side.Points)/2]
			}
		}
	}
	if len(pts) < 2 {
		return at, in, false
	}
	in = pts[len(pts)-1].Sub(pts[0]).Unit().Left()
	return at, in, in != geom.Vec{}
}
