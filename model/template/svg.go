package template

import (
	"math"
	"strconv"
	"strings"

	"example.org/castwright/model/geom"
)

// svgUnits is user units in one of a CSS unit (CSS Values and Units: 1 in is
// 96 px, 1 pt is 1/72 in, 1 pc is 12 pt, 1 Q is a quarter millimetre).
var svgUnits = map[string]float64{
	"": 1, "px": 1, "in": 96, "cm": 96 / 2.54, "mm": 96 / 25.4, "q": 96 / 101.6, "pt": 96.0 / 72, "pc": 16,
}

// svg is a file being read.
type svg struct {
	raw  rawDrawing
	ids  map[string]*element
	uses int
	seen int
}

// readSVG reads path, rect, circle, ellipse, line, polyline, polygon, g, use,
// symbol and nested svg with their transforms. Spans come in the user units of
// the root, with y turned up.
func readSVG(data []byte) (rawDrawing, error) {
	root, ids, err := parseSVG(data)
	if err != nil {
		return rawDrawing{}, err
	}
	s := svg{raw: rawDrawing{source: "svg", perUnit: 1}, ids: ids}
	s.raw.mm = rootUnit(root)
	err = s.children(root, affine{a: 1, d: -1}, true, nil)
	return s.raw, err
}

// rootUnit is millimetres in a user unit of the root, 0 when its size does not
// say so: a bare number may mean anything.
func rootUnit(root *element) float64 {
	w, wu, okW := length(root.attrs["width"])
	h, hu, okH := length(root.attrs["height"])
	box, okBox := viewBox(root)
	px := 25.4 / 96
	switch {
	case okW && wu != "" && !okBox, okH && hu != "" && !okBox:
		return px
	case okW && wu != "" && okH && hu != "" && box[2] > 0 && box[3] > 0:
		return px * math.Min(w/box[2], h/box[3])
	case okW && wu != "" && box[2] > 0:
		return px * w / box[2]
	case okH && hu != "" && box[3] > 0:
		return px * h / box[3]
	}
	return 0
}

// length reads a CSS length in user units. A percentage is not one.
func length(text string) (v float64, unit string, ok bool) {
	text = strings.TrimSpace(text)
	i := len(text)
	for i > 0 && (text[i-1] >= 'a' && text[i-1] <= 'z' || text[i-1] >= 'A' && text[i-1] <= 'Z') {
		i--
	}
	unit = strings.ToLower(text[i:])
	f, known := svgUnits[unit]
	v, err := strconv.ParseFloat(strings.TrimSpace(text[:i]), 64)
	if err != nil || !known || math.IsNaN(v) || math.IsInf(v, 0) {
		return 0, "", false
	}
	return v * f, unit, true
}

func viewBox(e *element) (box [4]float64, ok bool) {
	v, err := numbers(e.attrs["viewBox"])
	if err != nil || len(v) != 4 || v[2] <= 0 || v[3] <= 0 {
		return box, false
	}
	copy(box[:], v)
	return box, true
}

// children draws the elements inside e.
func (s *svg) children(e *element, m affine, filled bool, stack []*element) error {
	for _, c := range e.children {
		if err := s.draw(c, m, filled, stack); err != nil {
			return err
		}
	}
	return nil
}

// draw adds an element under m. Filled says whether it inherits a fill: what
// is filled is closed, as a browser shows it. Stack holds the uses around it.
func (s *svg) draw(e *element, m affine, filled bool, stack []*element) error {
	if s.seen++; s.seen > 2*maxElements {
		return fail(e.line, "<use> repeats more than %d elements: save only the outline", 2*maxElements)
	}
	if e.style("display") == "none" || e.style("visibility") == "hidden" {
		s.raw.notes.count("left out %d hidden piece(s)")
		return nil
	}
	if f := e.style("fill"); f != "" && f != "inherit" {
		filled = f != "none" && f != "transparent"
	}
	own, err := transforms(e.attrs["transform"])
	if err != nil {
		return fail(e.line, "transform: %v", err)
	}
	m = own.then(m)
	switch e.name {
	case "g", "a", "switch":
		return s.children(e, m, filled, stack)
	case "svg":
		return s.children(e, viewport(e, e).then(m), filled, stack)
	case "use":
		return s.use(e, m, filled, stack)
	case "path", "rect", "circle", "ellipse", "line", "polyline", "polygon":
		return s.shape(e, m, filled)
	case "defs", "symbol", "clipPath", "mask", "pattern", "marker", "linearGradient", "radialGradient",
		"style", "title", "desc", "metadata", "namedview", "script", "filter":
		return nil
	case "text", "image", "foreignObject":
		s.raw.notes.count("left out %d piece(s) of other kinds (text, pictures)")
	}
	return nil
}

// viewport is the map of what a nested svg or symbol holds into the place that
// frame gives it: itself, or the use of a symbol.
func viewport(held, frame *element) affine {
	x, _, _ := length(frame.attrs["x"])
	y, _, _ := length(frame.attrs["y"])
	m := affine{a: 1, d: 1, e: x, f: y}
	w, _, okW := length(frame.attrs["width"])
	h, _, okH := length(frame.attrs["height"])
	box, ok := viewBox(held)
	if !ok {
		return m
	}
	k := 1.0
	switch {
	case okW && okH:
		k = math.Min(w/box[2], h/box[3])
	case okW:
		k = w / box[2]
	case okH:
		k = h / box[3]
	}
	// xMidYMid: what is left over is shared by both sides.
	if okW {
		m.e += (w - k*box[2]) / 2
	}
	if okH {
		m.f += (h - k*box[3]) / 2
	}
	return affine{a: k, d: k, e: -k * box[0], f: -k * box[1]}.then(m)
}

func (s *svg) use(e *element, m affine, filled bool, stack []*element) error {
	name, isLocal := strings.CutPrefix(e.attrs["href"], "#")
	target := s.ids[name]
	if !isLocal || target == nil {
		s.raw.notes.count("left out %d use(s) of something that the file does not hold")
		return nil
	}
	for _, t := range stack {
		if t == target {
			return fail(e.line, "<use> of %q lies inside itself", clip(name))
		}
	}
	if s.uses++; s.uses > maxUses || len(stack) >= maxDepth {
		return fail(e.line, "<use> is nested too deep or used more than %d times: save only the outline", maxUses)
	}
	stack = append(stack[:len(stack):len(stack)], target)
	if target.name == "symbol" {
		return s.children(target, viewport(target, e).then(m), filled, stack)
	}
	x, _, _ := length(e.attrs["x"])
	y, _, _ := length(e.attrs["y"])
	return s.draw(target, affine{a: 1, d: 1, e: x, f: y}.then(m), filled, stack)
}

// shape adds a basic shape or path.
func (s *svg) shape(e *element, m affine, filled bool) error {
	var spans []span
	var err error
	switch e.name {
	case "path":
		spans, err = pathSpans(e.attrs["d"], filled)
	case "polyline", "polygon":
		spans, err = polySpans(e.attrs["points"], filled || e.name == "polygon")
	default:
		v, ok := e.lengths()
		if !ok {
			s.raw.notes.count("dropped %d piece(s) with a size that is not a plain length")
			return nil
		}
		spans = basic(e.name, v)
	}
	if err != nil {
		return fail(e.line, "<%s>: %v", e.name, err)
	}
	var moved []span
	for _, sp := range spans {
		if sp.a == sp.b && sp.kind == line {
			continue
		}
		moved = sp.transform(m, moved)
	}
	return s.raw.add(moved...)
}

// lengths reads the geometry attributes of a basic shape.
func (e *element) lengths() (map[string]float64, bool) {
	out := map[string]float64{}
	for _, k := range [...]string{"x", "y", "width", "height", "rx", "ry", "cx", "cy", "r", "x1", "y1", "x2", "y2"} {
		text, has := e.attrs[k]
		if !has || text == "auto" {
			continue
		}
		v, _, ok := length(text)
		if !ok {
			return nil, false
		}
		out[k] = v
	}
	return out, true
}

// basic is the spans of a shape that has only lengths.
func basic(name string, v map[string]float64) []span {
	switch name {
	case "line":
		return []span{{a: geom.Vec{X: v["x1"], Y: v["y1"]}, b: geom.Vec{X: v["x2"], Y: v["y2"]}}}
	case "circle":
		if v["r"] > 0 {
			return fullCircle(geom.Vec{X: v["cx"], Y: v["cy"]}, v["r"])
		}
	case "ellipse":
		rx, ry := bothRadii(v)
		if rx > 0 && ry > 0 {
			return ellipseCubics(geom.Vec{X: v["cx"], Y: v["cy"]}, geom.Vec{X: rx}, geom.Vec{Y: ry}, 0, 2*math.Pi, 16)
		}
	case "rect":
		rx, ry := bothRadii(v)
		return rectangle(v["x"], v["y"], v["width"], v["height"], rx, ry)
	}
	return nil
}

// bothRadii gives rx and ry; one that is missing takes the other's value.
func bothRadii(v map[string]float64) (rx, ry float64) {
	rx, okX := v["rx"]
	ry, okY := v["ry"]
	switch {
	case okX && !okY:
		ry = rx
	case okY && !okX:
		rx = ry
	}
	return math.Max(0, rx), math.Max(0, ry)
}

func rectangle(x, y, w, h, rx, ry float64) []span {
	if w <= 0 || h <= 0 {
		return nil
	}
	rx, ry = math.Min(rx, w/2), math.Min(ry, h/2)
	if rx == 0 || ry == 0 {
		rx, ry = 0, 0
	}
	var out []span
	from := geom.Vec{X: x + rx, Y: y}
	to := func(p geom.Vec) {
		out = append(out, span{a: from, b: p})
		from = p
	}
	corner := func(cx, cy, start float64) {
		if rx == 0 {
			return
		}
		if rx == ry {
			out = append(out, arcSpans(geom.Vec{X: cx, Y: cy}, rx, start, math.Pi/2)...)
		} else {
			out = append(out, ellipseCubics(geom.Vec{X: cx, Y: cy}, geom.Vec{X: rx}, geom.Vec{Y: ry}, start, math.Pi/2, 4)...)
		}
		from = out[len(out)-1].b
	}
	to(geom.Vec{X: x + w - rx, Y: y})
	corner(x+w-rx, y+ry, -math.Pi/2)
	to(geom.Vec{X: x + w, Y: y + h - ry})
	corner(x+w-rx, y+h-ry, 0)
	to(geom.Vec{X: x + rx, Y: y + h})
	corner(x+rx, y+h-ry, math.Pi/2)
	to(geom.Vec{X: x, Y: y + ry})
	corner(x+rx, y+ry, math.Pi)
	return out
}
