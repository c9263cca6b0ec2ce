package tool

import (
	"errors"
	"math"
	"slices"

	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
)

// The measures of the next point of a drawing, besides those of a place.
const (
	penLength    = "Length"
	penDirection = "Direction"
	penWidth     = "Width"
)

// penFields are the measures of the next point: how far it lies from the last one
// and which way, its place on the top, and the river's width there.
func (h *Hand) penFields() []field {
	k := h.pen
	next, _ := h.penPlace(k.pins)
	var out []field
	if n := len(k.points); n > 0 && h.tool != Through {
		last := k.points[n-1]
		way := next.Sub(last)
		beside := way.Unit().Left()
		angle := math.Atan2(way.Y, way.X) * 180 / math.Pi
		out = append(out, field{name: penLength, value: way.Norm(), from: last, to: next, beside: beside, bare: true},
			field{name: penDirection, value: angle, angle: true, from: last, to: last, beside: geom.Vec{Y: -1}, hidden: h.tool == River})
	}
	if h.tool != Outline {
		for _, f := range placeFields(h.s.Design(), next) {
			f.hidden = len(k.points) > 0 && h.tool != Through
			out = append(out, f)
		}
	}
	if h.tool == River {
		out = append(out, field{name: penWidth, value: h.penRiverWidth().MM(), from: next, to: next,
			beside: geom.Vec{Y: -1}, hidden: true})
	}
	return out
}

// penRiverWidth is the width of a river at its next point.
func (h *Hand) penRiverWidth() units.Length {
	if h.pen.width > 0 {
		return h.pen.width
	}
	return h.stockNow().Width
}

// activeOf is the field with an id, else the first.
func activeOf(fs []field, id string) (field, bool) {
	for _, f := range fs {
		if f.id() == id {
			return f, true
		}
	}
	if len(fs) == 0 {
		return field{}, false
	}
	return fs[0], true
}

// penPlace is where the next point goes: at the mouse, but for what was typed.
func (h *Hand) penPlace(pins []pin) (geom.Vec, error) {
	k := h.pen
	at := k.at
	has := map[string]float64{}
	for _, p := range pins {
		has[p.id] = p.value
	}
	var last geom.Vec
	if n := len(k.points); n > 0 {
		last = k.points[n-1]
	}
	b := edit.Bounds(h.s.Design().Outline)
	x, okX := has[fromLeft]
	y, okY := has[fromFront]
	x, y = x+b.Min.X, y+b.Min.Y
	l, okL := has[penLength]
	turn, okD := has[penDirection]
	dir := at.Sub(last).Unit()
	if okD {
		sin, cos := math.Sincos(turn * math.Pi / 180)
		dir = geom.Vec{X: cos, Y: sin}
	}
	switch {
	case okX && okY:
		return geom.Vec{X: x, Y: y}, nil
	case okL && (okX || okY):
		return reach(last, l, at, x, y, okX)
	case okD && okX && math.Abs(dir.X) > 1e-6:
		return last.Add(dir.Mul((x - last.X) / dir.X)), nil
	case okD && okY && math.Abs(dir.Y) > 1e-6:
		return last.Add(dir.Mul((y - last.Y) / dir.Y)), nil
	case okD && (okX || okY):
		return at, errors.New("the line never gets there in this direction")
	case okL:
		if dir == (geom.Vec{}) {
			return at, errors.New("move the mouse to say which way, then press Enter")
		}
		return last.Add(dir.Mul(l)), nil
	case okD:
		return last.Add(dir.Mul(math.Max(0, at.Sub(last).Dot(dir)))), nil
	case okX:
		at.X = x
	case okY:
		at.Y = y
	}
	return at, nil
}

// reach is the place at the length l from last with the given x or y, on the side
// of the mouse.
func reach(last geom.Vec, l float64, mouse geom.Vec, x, y float64, alongX bool) (geom.Vec, error) {
	d := y - last.Y
	if alongX {
		d = x - last.X
	}
	if math.Abs(d) > l {
		return mouse, errors.New("the length does not get there: type a greater one")
	}
	off := math.Sqrt(l*l - d*d)
	if alongX {
		return geom.Vec{X: x, Y: last.Y + math.Copysign(off, mouse.Y-last.Y)}, nil
	}
	return geom.Vec{X: last.X + math.Copysign(off, mouse.X-last.X), Y: y}, nil
}

// penPin makes the number that is being typed hold for the next point.
func (h *Hand) penPin() bool {
	k := h.pen
	f := k.typed.field
	v, err := h.parseFor(f, k.typed.text)
	pins := k.pins
	value := units.Length(v).MM()
	switch {
	case err != nil:
	case f.name == penWidth && v <= 0:
		err = errors.New("the width must be more than nothing")
	case f.name == penLength && v <= 0:
		err = errors.New("a length must be more than nothing")
	case f.name == penWidth:
		k.width = units.Length(v)
	default:
		if f.angle {
			value = units.Angle(v).Degrees()
		}
		pins = slices.DeleteFunc(slices.Clone(pins), func(p pin) bool { return p.id == f.id() })
		if len(pins) > 1 {
			pins = pins[1:]
		}
		pins = append(pins, pin{f.id(), f.name, value})
		var at geom.Vec
		if at, err = h.penPlace(pins); err == nil && !(at.Finite() && at.Norm() < farthestPlace) {
			err = errors.New("this lies too far away")
		}
	}
	if err != nil {
		k.typed.bad, k.fault = true, capital(err.Error())
		return false
	}
	k.pins, k.typed, k.fault, k.field = pins, nil, "", f.id()
	return true
}

// penTab makes what is typed hold and goes to the next measure.
func (h *Hand) penTab() bool {
	k := h.pen
	if k.typed != nil && k.typed.text != "" && !h.penPin() {
		return true
	}
	fs := h.penFields()
	now, ok := activeOf(fs, k.field)
	if !ok {
		return false
	}
	k.field = nextField(fs, now.id(), nil, false)
	return h.penStart()
}

// penStart opens a number for the active measure of the next point.
func (h *Hand) penStart() bool {
	f, ok := activeOf(h.penFields(), h.pen.field)
	if !ok {
		return false
	}
	h.pen.field, h.pen.typed, h.pen.fault = f.id(), &typed{field: f}, ""
	return true
}

// penSet sets the next point down where it is, typed measures and all.
func (h *Hand) penSet() {
	k := h.pen
	if k.typed != nil && k.typed.text == "" {
		k.typed = nil
	}
	if k.typed != nil && !h.penPin() {
		return
	}
	at, err := h.penPlace(k.pins)
	if err != nil {
		k.fault = capital(err.Error())
		return
	}
	h.setPoint(at, h.at)
}
