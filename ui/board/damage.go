package board

import (
	"image"
	"math"
	"reflect"
	"slices"

	"example.org/castwright/export/raster"
	"example.org/castwright/model/design"
	"example.org/castwright/model/draw"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/report"
	"example.org/castwright/model/scene"
	"example.org/castwright/model/slab"
)

// still is what the base was drawn from, to find out what has changed of it.
type still struct {
	solid  slab.Solid
	design design.Design
	report report.Report
	dims   []scene.Item
	view   draw.View
}

// How far from a changed shape its looks may change: the shade of the top on the
// ground, the light on its edges and in its hollows, and the hatching of walls;
// and how far a tap reaches from its holes.
const (
	looksMM     = 70
	looksPoints = 44
	tapReach    = 200
)

// damage is the part of the page, in pixels, in which two pictures of the same
// view can differ. whole is true when that can't be told or is not worth while.
func damage(old, now still) (box geom.Box, whole bool) {
	a, b := old.view, now.view
	a.Draft, b.Draft = false, false // a coarse part beside fine ones is gone in a moment
	if a != b || !alike(old, now) {
		return geom.Box{}, true
	}
	c := changes{box: geom.EmptyBox()}
	c.sides(old.solid.Sides, now.solid.Sides)
	if c.any() && now.view.Show.Textures && now.design.Finish.Polish >= 3 &&
		old.solid.Outline.Bounds() != now.solid.Outline.Bounds() {
		return geom.Box{}, true // the sheen on the face goes with its bounds
	}
	c.openings(old.solid.Openings, now.solid.Openings)
	c.bowls(old.solid, now.solid)
	c.inlays(old.solid, now.solid)
	c.bearings(old.solid.Bearings, now.solid.Bearings)
	box = geom.EmptyBox()
	if c.any() {
		mm := c.box.Grow(looksMM + looksPoints*now.view.Point/now.view.Scale)
		box = box.Include(now.view.ToPage(mm.Min)).Include(now.view.ToPage(mm.Max))
	}
	return box.Union(itemsDamage(old.dims, now.dims)), false
}

// alike reports whether two designs differ in nothing but where things lie.
func alike(old, now still) bool {
	a, b := old.design, now.design
	if a.Finish != b.Finish || a.Thickness != b.Thickness || old.solid.Thickness != now.solid.Thickness ||
		len(a.Sinks) != len(b.Sinks) || len(a.Taps) != len(b.Taps) ||
		len(a.Channels) != len(b.Channels) || len(a.Glass) != len(b.Glass) {
		return false
	}
	for i, k := range a.Sinks {
		m := b.Sinks[i]
		k.At, m.At = design.Point{}, design.Point{}
		if !reflect.DeepEqual(k, m) {
			return false
		}
	}
	for i, k := range a.Channels {
		if m := b.Channels[i]; k.ID != m.ID || k.Depth != m.Depth || !reflect.DeepEqual(k.Fill, m.Fill) {
			return false
		}
	}
	for i, k := range a.Glass {
		m := b.Glass[i]
		k.Region, m.Region = design.Region{}, design.Region{}
		if !reflect.DeepEqual(k, m) {
			return false
		}
	}
	return true
}

// changes gathers where two solids differ, in mm.
type changes struct{ box geom.Box }

func (c *changes) any() bool { return !c.box.Empty() }

func (c *changes) add(loops ...[]geom.Vec) {
	for _, l := range loops {
		for _, p := range l {
			c.box = c.box.Include(p)
		}
	}
}

func (c *changes) sides(old, now []slab.Side) {
	same := func(a, b slab.Side) bool {
		return a.Node == b.Node && a.Corner == b.Corner && a.Wall == b.Wall && a.Profile == b.Profile &&
			slices.Equal(a.Points, b.Points)
	}
	differ(old, now, same, func(s slab.Side) { c.add(s.Points) })
}

func (c *changes) openings(old, now []slab.Opening) {
	same := func(a, b slab.Opening) bool {
		return a.Part == b.Part && a.Kind == b.Kind && a.Index == b.Index && a.Profile == b.Profile &&
			slices.Equal(a.Loop, b.Loop)
	}
	differ(old, now, same, func(o slab.Opening) { c.add(o.Loop) })
	// A tap reaches from its holes toward its sink: with either it changes.
	if differ(old, now, same, func(slab.Opening) {}) {
		for _, all := range [...][]slab.Opening{old, now} {
			for _, o := range all {
				if o.Kind == slab.OpeningTap {
					c.box = c.box.Union(o.Loop.Bounds().Grow(tapReach))
				}
			}
		}
	}
}

func (c *changes) bowls(old, now slab.Solid) {
	same := func(a, b slab.Bowl) bool {
		return a.Part == b.Part && a.Mount == b.Mount && a.Back == b.Back && slices.Equal(a.Loop, b.Loop)
	}
	differ(old.Bowls, now.Bowls, same, func(b slab.Bowl) { c.add(b.Loop) })
}

func (c *changes) inlays(old, now slab.Solid) {
	add := func(loops []geom.Loop) {
		for _, l := range loops {
			c.add(l)
		}
	}
	differ(old.Recesses, now.Recesses, func(a, b slab.Recess) bool {
		return a.Part == b.Part && a.Depth == b.Depth && sameLoops(a.Loops, b.Loops)
	}, func(r slab.Recess) { add(r.Loops) })
	differ(old.Beds, now.Beds, func(a, b slab.Bed) bool {
		return a.Part == b.Part && sameLoops(a.Loops, b.Loops)
	}, func(b slab.Bed) { add(b.Loops) })
}

func (c *changes) bearings(old, now []slab.Bearing) {
	differ(old, now, func(a, b slab.Bearing) bool {
		return a.Part == b.Part && a.Kind == b.Kind && sameLoops(a.Loops, b.Loops)
	}, func(b slab.Bearing) {
		for _, l := range b.Loops {
			c.add(l)
		}
	})
}

func sameLoops(a, b []geom.Loop) bool {
	return slices.EqualFunc(a, b, func(x, y geom.Loop) bool { return slices.Equal(x, y) })
}

// differ calls visit with what two lists do not share at their beginnings and
// ends, and reports whether there was any.
func differ[T any](old, now []T, same func(a, b T) bool, visit func(T)) bool {
	n := min(len(old), len(now))
	if len(old) == len(now) {
		any := false
		for i := range n {
			if !same(old[i], now[i]) {
				visit(old[i])
				visit(now[i])
				any = true
			}
		}
		return any
	}
	lo, hi := 0, 0
	for lo < n && same(old[lo], now[lo]) {
		lo++
	}
	for hi < n-lo && same(old[len(old)-1-hi], now[len(now)-1-hi]) {
		hi++
	}
	for _, x := range old[lo : len(old)-hi] {
		visit(x)
	}
	for _, x := range now[lo : len(now)-hi] {
		visit(x)
	}
	return true
}

// itemsDamage is the part of the page in which two lists of dimensions differ.
func itemsDamage(old, now []scene.Item) geom.Box {
	box := geom.EmptyBox()
	differ(old, now, reflectEqual, func(i scene.Item) { box = box.Union(itemBox(i)) })
	return box
}

func reflectEqual(a, b scene.Item) bool { return reflect.DeepEqual(a, b) }

// itemBox is where an item lies on the page.
func itemBox(item scene.Item) geom.Box {
	box := geom.EmptyBox()
	switch item := item.(type) {
	case scene.Fill:
		for _, l := range item.Loops {
			box = box.Union(l.Bounds())
		}
	case scene.Stroke:
		for _, l := range item.Lines {
			box = box.Union(geom.Loop(l).Bounds())
		}
		if !box.Empty() {
			box = box.Grow(2 * item.Width)
		}
	case scene.Text:
		// Whichever way it runs; an em is wider than any letter.
		box = box.Include(item.At).Grow(item.Size * float64(len(item.Text)+1))
	}
	return box
}

// patch draws the part of a page that lies within a box, in pixels, on the
// picture of the whole page.
func patch(img *image.RGBA, p scene.Page, box geom.Box) {
	size := img.Rect.Size()
	page := geom.Box{Max: geom.Vec{X: float64(size.X), Y: float64(size.Y)}}
	if !meet(box, page) {
		return
	}
	// A little more, in steps, so that the painter can keep its buffers.
	const step = 64
	box = box.Grow(3)
	box.Min = geom.Vec{X: math.Max(box.Min.X, 0), Y: math.Max(box.Min.Y, 0)}
	box.Max = geom.Vec{X: math.Min(box.Max.X, page.Max.X), Y: math.Min(box.Max.Y, page.Max.Y)}
	down := func(x float64) int { return int(math.Floor(x/step)) * step }
	rect := image.Rect(down(box.Min.X), down(box.Min.Y), down(box.Max.X)+step, down(box.Max.Y)+step).Intersect(img.Rect)
	if rect.Empty() {
		return
	}
	part := &image.RGBA{
		Pix:    img.Pix[img.PixOffset(rect.Min.X, rect.Min.Y):],
		Stride: img.Stride,
		Rect:   image.Rect(0, 0, rect.Dx(), rect.Dy()),
	}
	by := geom.Vec{X: -float64(rect.Min.X), Y: -float64(rect.Min.Y)}
	raster.Draw(part, moved(p, by, float64(rect.Dx()), float64(rect.Dy())))
}

// moved is a page of another size on which all that can be seen of it is moved.
func moved(p scene.Page, by geom.Vec, w, h float64) scene.Page {
	out := p
	out.W, out.H, out.Origin, out.Items = w, h, p.Origin.Add(by), nil
	sight := geom.Box{Min: by.Mul(-1), Max: by.Mul(-1).Add(geom.Vec{X: w, Y: h})}.Grow(8)
	for _, item := range p.Items {
		if !meet(itemBox(item), sight) {
			continue
		}
		switch item := item.(type) {
		case scene.Fill:
			item.Loops, item.Clip = movedLoops(item.Loops, by), movedLoops(item.Clip, by)
			out.Items = append(out.Items, item)
		case scene.Stroke:
			lines := make([][]geom.Vec, len(item.Lines))
			for i, l := range item.Lines {
				lines[i] = movedLine(l, by)
			}
			item.Lines = lines
			out.Items = append(out.Items, item)
		case scene.Text:
			item.At = item.At.Add(by)
			out.Items = append(out.Items, item)
		}
	}
	return out
}

func movedLoops(loops []geom.Loop, by geom.Vec) []geom.Loop {
	if loops == nil {
		return nil
	}
	out := make([]geom.Loop, len(loops))
	for i, l := range loops {
		out[i] = movedLine(l, by)
	}
	return out
}

func movedLine(l []geom.Vec, by geom.Vec) []geom.Vec {
	out := make([]geom.Vec, len(l))
	for i, p := range l {
		out[i] = p.Add(by)
	}
	return out
}
