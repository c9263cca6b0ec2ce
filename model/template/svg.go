package template

import (
	"math"
	"strings"

	"example.org/castwright/model/geom"
)

// svg is a file being read.
type svg struct {
	raw  rawDrawing
	ids  map[string]*element
	uses int
	seen int
}

// place is where an element is drawn and what it inherits.
type place struct {
	m      affine
	w, h   float64 // of the nearest viewport, in user units: what percentages are of
	filled bool    // what is filled is closed, as a browser shows it
	odd    bool    // its fill rule is even-odd
	hidden bool
	stack  []*element // the uses around it
}

// maxSVGSeen bounds how many elements <use> may repeat.
const maxSVGSeen = 2 * maxElements

// readSVG reads path, rect, circle, ellipse, line, polyline, polygon, g, use,
// symbol and nested svg with their transforms and styles. Of a root that has a
// size the runs come in pixels of the page, else in the user units of the root;
// y is turned up.
func readSVG(data []byte) (rawDrawing, error) {
	root, ids, err := parseSVG(data)
	if err != nil {
		return rawDrawing{}, err
	}
	s := svg{raw: rawDrawing{source: "svg"}, ids: ids}
	at := place{m: affine{a: 1, d: -1}, filled: true}
	page := s.root(root)
	at.m, at.w, at.h = page.m.then(at.m), page.w, page.h
	err = s.children(root, at)
	return s.raw, err
}

// root is where the root's content lies. It notes the unit: a size in pixels
// or in a unit of length says what a user unit is, a bare number may mean
// anything.
func (s *svg) root(root *element) place {
	w, wu, okW := length(root.style("width"))
	h, hu, okH := length(root.style("height"))
	okW, okH = okW && w > 0, okH && h > 0
	box, okBox := viewBox(root)
	says := func(ok bool, unit string) bool { return ok && unit != "" }
	out := place{m: identity, w: w, h: h}
	if okBox {
		out.w, out.h = box[2], box[3]
	}
	if !says(okW, wu) && !says(okH, hu) {
		return out
	}
	s.raw.mm = 25.4 / 96
	s.raw.sized = says(okW, wu) && wu != "px" || says(okH, hu) && hu != "px"
	if !okBox {
		return out
	}
	// A side that has no length of its own follows from the other one.
	if !okW {
		w = h * box[2] / box[3]
	}
	if !okH {
		h = w * box[3] / box[2]
	}
	out.m = fitted(box, w, h, root.attrs["preserveAspectRatio"])
	return out
}

// fitted is the map of a view box into w x h (SVG 1.1, 7.8).
func fitted(box [4]float64, w, h float64, how string) affine {
	kx, ky := w/box[2], h/box[3]
	words := strings.Fields(how)
	if len(words) > 0 && words[0] == "defer" {
		words = words[1:]
	}
	align := "xMidYMid"
	if len(words) > 0 {
		align = words[0]
	}
	if align != "none" {
		k := math.Min(kx, ky)
		if len(words) > 1 && words[1] == "slice" {
			k = math.Max(kx, ky)
		}
		kx, ky = k, k
	}
	m := affine{a: kx, d: ky, e: -kx * box[0], f: -ky * box[1]}
	if align == "none" {
		return m
	}
	// What is left over lies on both sides, or on one.
	share := func(axis string) float64 {
		switch {
		case strings.Contains(align, axis+"Min"):
			return 0
		case strings.Contains(align, axis+"Max"):
			return 1
		}
		return 0.5
	}
	m.e += (w - kx*box[2]) * share("x")
	m.f += (h - ky*box[3]) * share("Y")
	return m
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
func (s *svg) children(e *element, at place) error {
	for _, c := range e.children {
		if err := s.draw(c, at); err != nil {
			return err
		}
	}
	return nil
}

// draw adds an element at a place.
func (s *svg) draw(e *element, at place) error {
	if s.seen++; s.seen > maxSVGSeen {
		return fail(e.line, "<use> repeats more than %d elements: save only the outline", maxSVGSeen)
	}
	if e.style("display") == "none" {
		s.raw.notes.count("left out %d hidden piece", "left out %d hidden pieces")
		return nil
	}
	switch e.style("visibility") {
	case "hidden", "collapse":
		at.hidden = true
	case "visible":
		at.hidden = false
	}
	if f := e.style("fill"); f != "" && f != "inherit" {
		at.filled = f != "none" && f != "transparent"
	}
	if r := e.style("fill-rule"); r != "" && r != "inherit" {
		at.odd = r == "evenodd"
	}
	for _, name := range [...]string{"clip-path", "mask"} {
		if v := e.style(name); v != "" && v != "none" {
			s.raw.notes.count("took %d piece whole that the drawing shows clipped", "took %d pieces whole that the drawing shows clipped")
		}
	}
	own, err := transforms(e.transform())
	if err != nil {
		return fail(e.line, "transform: %v", err)
	}
	at.m = own.then(at.m)
	switch e.name {
	case "g", "a":
		return s.children(e, at)
	case "switch":
		for _, c := range e.children {
			if c.attrs["requiredExtensions"] == "" && c.name != "foreignObject" && speaks(c.attrs["systemLanguage"]) {
				return s.draw(c, at)
			}
		}
		return nil
	case "svg":
		return s.children(e, s.viewport(e, e, at))
	case "use":
		return s.use(e, at)
	case "path", "rect", "circle", "ellipse", "line", "polyline", "polygon":
		if at.hidden {
			s.raw.notes.count("left out %d hidden piece", "left out %d hidden pieces")
			return nil
		}
		return s.shape(e, at)
	case "text", "image", "foreignObject":
		s.raw.notes.count("left out %d piece of another kind (text, pictures)",
			"left out %d pieces of other kinds (text, pictures)")
	}
	return nil
}

// speaks reports whether one of the languages that an element is for is English,
// or it is for any.
func speaks(languages string) bool {
	for tag := range strings.SplitSeq(languages, ",") {
		tag, _, _ = strings.Cut(strings.ToLower(strings.TrimSpace(tag)), "-")
		if tag == "en" {
			return true
		}
	}
	return languages == ""
}

// viewport is the place within a nested svg or symbol, whose own attributes or
// those of the use that shows it give its frame. A side that has none is the
// whole viewport around.
func (s *svg) viewport(held, frame *element, at place) place {
	side := func(name string, whole, fallback float64) float64 {
		for _, e := range [...]*element{frame, held} {
			if text, has := e.attrs[name]; has && text != "auto" {
				if v, ok := measured(text, whole); ok {
					return v
				}
			}
		}
		return fallback
	}
	x, _ := measured(frame.attrs["x"], at.w)
	y, _ := measured(frame.attrs["y"], at.h)
	w, h := side("width", at.w, at.w), side("height", at.h, at.h)
	m := affine{a: 1, d: 1, e: x, f: y}
	box, ok := viewBox(held)
	if !ok {
		at.m, at.w, at.h = m.then(at.m), w, h
		return at
	}
	if w <= 0 || h <= 0 { // nothing around says how large it is
		w, h = box[2], box[3]
	}
	m = fitted(box, w, h, held.attrs["preserveAspectRatio"]).then(m)
	at.m, at.w, at.h = m.then(at.m), box[2], box[3]
	return at
}

func (s *svg) use(e *element, at place) error {
	name, isLocal := strings.CutPrefix(strings.TrimSpace(e.attrs["href"]), "#")
	target := s.ids[name]
	if !isLocal || target == nil {
		s.raw.notes.count("left out %d use of something that the file does not hold",
			"left out %d uses of something that the file does not hold")
		return nil
	}
	for _, t := range at.stack {
		if t == target {
			return fail(e.line, "<use> of %q lies inside itself", clip(name))
		}
	}
	if s.uses++; s.uses > maxUses || len(at.stack) >= maxDepth {
		return fail(e.line, "<use> is nested too deep or used more than %d times: save only the outline", maxUses)
	}
	at.stack = append(at.stack[:len(at.stack):len(at.stack)], target)
	x, _ := measured(e.attrs["x"], at.w)
	y, _ := measured(e.attrs["y"], at.h)
	moved := at
	moved.m = affine{a: 1, d: 1, e: x, f: y}.then(at.m)
	switch target.name {
	case "symbol":
		if target.style("display") == "none" {
			return nil
		}
		own, err := transforms(target.transform())
		if err != nil {
			return fail(target.line, "transform: %v", err)
		}
		in := s.viewport(target, e, at)
		in.m = own.then(in.m)
		return s.children(target, in)
	case "svg":
		// The use's sides go before those of the svg that it shows.
		shown := *target
		shown.attrs = make(map[string]string, len(target.attrs))
		for k, v := range target.attrs {
			shown.attrs[k] = v
		}
		for _, k := range [...]string{"width", "height"} {
			if v, has := e.attrs[k]; has {
				shown.attrs[k] = v
			}
		}
		return s.draw(&shown, moved)
	}
	return s.draw(target, moved)
}

// shape adds a basic shape or path, each of its strokes as a run.
func (s *svg) shape(e *element, at place) error {
	var runs []run
	var err error
	switch e.name {
	case "path":
		runs, err = pathRuns(e.attrs["d"], at.filled)
	case "polyline", "polygon":
		var r run
		r, err = polyRun(e.attrs["points"], e.name == "polygon")
		r.filled = at.filled
		runs = []run{r}
	default:
		v, ok := e.lengths(at)
		if !ok {
			s.raw.notes.count("dropped %d piece with a size that is not a plain length",
				"dropped %d pieces with a size that is not a plain length")
			return nil
		}
		runs = []run{basic(e.name, v)}
	}
	if err != nil {
		return fail(e.line, "<%s>: %v", e.name, err)
	}
	if at.filled && !at.odd {
		s.raw.notes.add(solid(runs), "took %d outline for a hole that the drawing's fill rule shows filled",
			"took %d outlines for holes that the drawing's fill rule shows filled")
	}
	for _, r := range runs {
		r.odd = at.odd && at.filled
		if err := s.raw.add(r.transform(at.m)); err != nil {
			return err
		}
	}
	return nil
}

// maxSolid is how many strokes of one path are held against each other.
const maxSolid = 200

// solid counts the closed strokes of a path that run round the same way as the
// stroke around them: by the non-zero rule they cut no hole, but what a maker draws
// within an outline mostly is one.
func solid(runs []run) int {
	if len(runs) < 2 || len(runs) > maxSolid {
		return 0
	}
	flat := make([]geom.Loop, len(runs))
	for i, r := range runs {
		flat[i] = chain(r.spans).flat(8)
	}
	count := 0
	for i, l := range flat {
		winding := 0
		for j, m := range flat {
			if i != j && len(l) > 2 && m.Bounds().Contains(l[0]) && m.Contains(l[0]) {
				winding += way(m)
			}
		}
		if winding != 0 && winding+way(l) != 0 {
			count++
		}
	}
	return count
}

// way is 1 for a loop that runs counter-clockwise, -1 for one that runs clockwise.
func way(l geom.Loop) int {
	if l.Area() < 0 {
		return -1
	}
	return 1
}

// basic is a shape that has only lengths.
func basic(name string, v map[string]float64) run {
	switch name {
	case "line":
		return run{spans: []span{{a: geom.Vec{X: v["x1"], Y: v["y1"]}, b: geom.Vec{X: v["x2"], Y: v["y2"]}}}}
	case "circle":
		if v["r"] > 0 {
			return run{spans: fullCircle(geom.Vec{X: v["cx"], Y: v["cy"]}, v["r"]), closed: true}
		}
	case "ellipse":
		rx, ry := bothRadii(v)
		if rx > 0 && ry > 0 {
			c := geom.Vec{X: v["cx"], Y: v["cy"]}
			return run{spans: ellipseCubics(c, geom.Vec{X: rx}, geom.Vec{Y: ry}, 0, 2*math.Pi, 16), closed: true}
		}
	case "rect":
		rx, ry := bothRadii(v)
		return run{spans: rectangle(v["x"], v["y"], v["width"], v["height"], rx, ry), closed: true}
	}
	return run{}
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
		if p != from {
			out = append(out, span{a: from, b: p})
		}
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
