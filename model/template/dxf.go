package template

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"example.org/castwright/model/geom"
)

// dxfUnits is millimetres by $INSUNITS (DXF reference, header variables, from
// memory; the US survey foot is 1200/3937 m, Mendenhall Order of 1893).
var dxfUnits = map[int]float64{
	1: 25.4, 2: 304.8, 4: 1, 5: 10, 6: 1000, 8: 25.4e-6, 9: 25.4e-3, 10: 914.4, 13: 1e-3, 14: 100, 15: 1e4,
	21: surveyFoot, 22: surveyFoot / 12, 23: 3 * surveyFoot,
}

const surveyFoot = 1200.0 / 3937 * 1000

// maxInserts bounds how often blocks are placed, so that blocks in blocks
// can't grow without end.
const (
	maxInserts = 100_000
	maxDrawn   = 1_000_000 // entities, counting each placing of a block
)

// dxf is a file being read.
type dxf struct {
	raw     rawDrawing
	blocks  map[string]block
	layers  map[string]layer
	inserts int
	drawn   int
}

type block struct {
	base     geom.Vec
	entities []entity
}

// layer is what hides a layer. What a block holds on layer 0 is on the layer of
// its INSERT; a layer that is off hides only what is on it, a frozen one hides
// all that is placed from it.
type layer struct{ off, frozen bool }

// folded is a name as names are told apart: without regard to capitals.
func folded(s string) string {
	b := []byte(s)
	for i, c := range b {
		if c >= 'A' && c <= 'Z' {
			b[i] = c + 'a' - 'A'
		}
	}
	return string(b)
}

// readDXF reads LINE, ARC, CIRCLE, LWPOLYLINE, POLYLINE, ELLIPSE, SPLINE and
// INSERT of an ASCII DXF, R12 to 2018.
func readDXF(data []byte) (rawDrawing, error) {
	d := dxf{raw: rawDrawing{source: "dxf"}, blocks: map[string]block{}, layers: map[string]layer{}}
	r := &pairs{rest: data}
	var top []entity
	for {
		p, err := r.next()
		if err != nil {
			return d.raw, err
		}
		word := strings.TrimSpace(p.value)
		switch {
		case p.code == 0 && word == "EOF":
			for _, e := range top {
				if err := d.draw(e, identity, "", nil); err != nil {
					return d.raw, err
				}
			}
			return d.raw, nil
		case p.code == 0 && word == "SECTION":
			title, err := r.next()
			if err != nil {
				return d.raw, err
			}
			switch strings.TrimSpace(title.value) {
			case "HEADER":
				err = d.header(r)
			case "TABLES":
				err = d.tables(r)
			case "BLOCKS":
				err = d.readBlocks(r)
			case "ENTITIES":
				var more []entity
				more, err = d.entities(r, "ENDSEC")
				top = append(top, more...)
			default:
				err = skipSection(r)
			}
			if err != nil {
				return d.raw, err
			}
		case p.code == 0:
			return d.raw, fail(p.line, "%q stands where a section should begin", clip(word))
		}
	}
}

func skipSection(r *pairs) error {
	for {
		p, err := r.next()
		if err != nil || (p.code == 0 && strings.TrimSpace(p.value) == "ENDSEC") {
			return err
		}
	}
}

func (d *dxf) header(r *pairs) error {
	variable := ""
	for {
		p, err := r.next()
		if err != nil {
			return err
		}
		switch {
		case p.code == 0:
			return nil
		case p.code == 9:
			variable = strings.TrimSpace(p.value)
		case p.code == 70 && variable == "$INSUNITS":
			if n, err := p.int(); err == nil {
				d.raw.mm = dxfUnits[n]
			}
		}
	}
}

// tables notes the layers that are off (colour below 0) or frozen (flag 1).
func (d *dxf) tables(r *pairs) error {
	for {
		p, err := r.next()
		if err != nil {
			return err
		}
		switch word := strings.TrimSpace(p.value); {
		case p.code == 0 && word == "ENDSEC":
			return nil
		case p.code == 0 && word == "LAYER":
			e, err := r.entity(p)
			if err != nil {
				return err
			}
			d.layers[folded(e.text(2))] = layer{off: e.flag(62) < 0, frozen: e.flag(70)&1 != 0}
		}
	}
}

func (d *dxf) readBlocks(r *pairs) error {
	for {
		p, err := r.next()
		if err != nil {
			return err
		}
		if p.code != 0 {
			continue
		}
		switch strings.TrimSpace(p.value) {
		case "ENDSEC":
			return nil
		case "BLOCK":
			head, err := r.entity(p)
			if err != nil {
				return err
			}
			v, err := head.nums(10, 20)
			if err != nil {
				return err
			}
			es, err := d.entities(r, "ENDBLK")
			if err != nil {
				return err
			}
			d.blocks[folded(head.text(2))] = block{geom.Vec{X: v[0], Y: v[1]}, es}
		}
	}
}

// entities reads up to the end word. The vertices of a POLYLINE are gathered
// into its entity as groups 10, 20, 42 and 70 that follow a group 0.
func (d *dxf) entities(r *pairs, end string) ([]entity, error) {
	var out []entity
	for {
		p, err := r.next()
		if err != nil {
			return nil, err
		}
		if p.code != 0 {
			continue
		}
		word := strings.TrimSpace(p.value)
		if word == end {
			return out, nil
		}
		if word == "ENDSEC" || word == "EOF" {
			return nil, fail(p.line, "%s comes before %s: the file is damaged", word, end)
		}
		e, err := r.entity(p)
		if err != nil {
			return nil, err
		}
		switch word {
		case "VERTEX":
			if n := len(out); n > 0 && out[n-1].name == "POLYLINE" {
				out[n-1].groups = append(append(out[n-1].groups, p), e.groups...)
			}
			continue
		case "SEQEND", "ATTRIB":
			continue
		}
		if len(out) >= maxSpans {
			return nil, fail(p.line, "the drawing has more than %d entities: save only the outline", maxSpans)
		}
		out = append(out, e)
	}
}

// draw adds an entity under m. Within is the layer of the INSERT that it belongs
// to, and stack holds the names of the blocks around it.
func (d *dxf) draw(e entity, m affine, within string, stack []string) error {
	if d.drawn++; d.drawn > maxDrawn {
		return fail(e.line, "the blocks place more than %d entities: save only the outline", maxDrawn)
	}
	on := folded(e.text(8))
	if on == "" || on == "0" && within != "" {
		on = cmp.Or(within, "0")
	}
	switch hides := d.layers[on]; {
	case hides.frozen || hides.off && e.name != "INSERT":
		d.raw.notes.count("left out %d piece on a layer that is off", "left out %d pieces on layers that are off")
		return nil
	case e.flag(67) == 1:
		d.raw.notes.count("left out %d piece of the paper layout", "left out %d pieces of the paper layout")
		return nil
	case e.flag(60) == 1:
		d.raw.notes.count("left out %d hidden piece", "left out %d hidden pieces")
		return nil
	case e.name == "INSERT":
		return d.insert(e, m, on, stack)
	}
	r, err := d.curve(e)
	if err != nil {
		return err
	}
	return d.raw.add(r.transform(m))
}

// curve is what an entity draws.
func (d *dxf) curve(e entity) (run, error) {
	var spans []span
	var err error
	switch e.name {
	case "LINE":
		var v []float64
		v, err = e.nums(10, 20, 11, 21)
		if err == nil {
			spans = []span{{a: geom.Vec{X: v[0], Y: v[1]}, b: geom.Vec{X: v[2], Y: v[3]}}}
		}
	case "ARC", "CIRCLE":
		return e.round()
	case "LWPOLYLINE":
		return e.lightPolyline()
	case "POLYLINE":
		return d.oldPolyline(e)
	case "ELLIPSE":
		spans, err = e.ellipse()
	case "SPLINE":
		spans, err = e.spline()
	default:
		d.raw.notes.count("left out %d piece of another kind (text, hatching, dimensions)",
			"left out %d pieces of other kinds (text, hatching, dimensions)")
	}
	return run{spans: spans}, err
}

// ocs is the map from an entity's own plane, at a height in it, to the drawing,
// seen from above (DXF reference, "arbitrary axis algorithm"). An extrusion of
// 0,0,-1 looks at the plane from behind and so mirrors it.
func (e entity) ocs(height float64) (affine, error) {
	n, err := e.axis()
	if err != nil || n == [3]float64{0, 0, 1} {
		return identity, err
	}
	x := [3]float64{-n[1], n[0], 0}
	if math.Abs(n[0]) < 1.0/64 && math.Abs(n[1]) < 1.0/64 {
		x = [3]float64{n[2], 0, -n[0]}
	}
	l := math.Hypot(math.Hypot(x[0], x[1]), x[2])
	x[0], x[1], x[2] = x[0]/l, x[1]/l, x[2]/l
	y := cross(n, x)
	return affine{x[0], x[1], y[0], y[1], n[0] * height, n[1] * height}, nil
}

// axis is the unit vector of an entity's extrusion.
func (e entity) axis() ([3]float64, error) {
	var n [3]float64
	for i, fallback := range [...]float64{0, 0, 1} {
		v, err := e.num(210+10*i, fallback)
		if err != nil {
			return n, err
		}
		n[i] = v
	}
	l := math.Hypot(math.Hypot(n[0], n[1]), n[2])
	if !(l > 1e-9) || math.IsInf(l, 0) {
		return [3]float64{0, 0, 1}, nil
	}
	return [3]float64{n[0] / l, n[1] / l, n[2] / l}, nil
}

func cross(a, b [3]float64) [3]float64 {
	return [3]float64{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
}

func (e entity) round() (run, error) {
	v, err := e.nums(10, 20, 40, 50, 51, 30)
	if err != nil {
		return run{}, err
	}
	m, err := e.ocs(v[5])
	if err != nil {
		return run{}, err
	}
	c, r := geom.Vec{X: v[0], Y: v[1]}, v[2]
	if r <= 0 {
		return run{}, fail(e.line, "%s has radius %g: it must be above 0", e.name, r)
	}
	if e.name == "CIRCLE" {
		return run{spans: fullCircle(c, r), closed: true}.transform(m), nil
	}
	start := v[3] * math.Pi / 180
	sweep := math.Mod((v[4]-v[3])*math.Pi/180, 2*math.Pi)
	if sweep <= 1e-12 {
		sweep += 2 * math.Pi
	}
	return run{spans: arcSpans(c, r, start, sweep)}.transform(m), nil
}

// arcSpans is an arc in spans of at most a half turn.
func arcSpans(c geom.Vec, r, start, sweep float64) []span {
	n := 1
	if math.Abs(sweep) > math.Pi+1e-9 {
		n = 2
	}
	at := func(t float64) geom.Vec { return c.Add(geom.Vec{X: r}.Turn(t)) }
	step := sweep / float64(n)
	var out []span
	for i := range n {
		t := start + step*float64(i)
		out = append(out, span{kind: arc, a: at(t), b: at(t + step), bulge: math.Tan(step / 4)})
	}
	return out
}

// vertex is one point of a polyline.
type vertex struct {
	at    geom.Vec
	bulge float64
}

func polyline(vs []vertex, closed bool) run {
	n := len(vs)
	if n < 2 {
		return run{}
	}
	last := n - 1
	if closed {
		last = n
	}
	var out []span
	for i := range last {
		s := span{a: vs[i].at, b: vs[(i+1)%n].at}
		if math.Abs(vs[i].bulge) > 1e-7 {
			s.kind, s.bulge = arc, vs[i].bulge
		}
		if s.a != s.b {
			out = append(out, s)
		}
	}
	return run{spans: out, closed: closed}
}

func (e entity) lightPolyline() (run, error) {
	var vs []vertex
	for _, p := range e.groups {
		if p.code != 10 && p.code != 20 && p.code != 42 {
			continue
		}
		v, err := p.float()
		if err != nil {
			return run{}, err
		}
		switch n := len(vs); {
		case p.code == 10:
			vs = append(vs, vertex{at: geom.Vec{X: v}})
		case n == 0:
		case p.code == 20:
			vs[n-1].at.Y = v
		case p.code == 42:
			vs[n-1].bulge = v
		}
	}
	height, err := e.num(38, 0)
	if err != nil {
		return run{}, err
	}
	m, err := e.ocs(height)
	return polyline(vs, e.flag(70)&1 != 0).transform(m), err
}

// oldPolyline reads a POLYLINE; meshes are left out, and so are the control
// points of a curve whose fitted points are there too.
func (d *dxf) oldPolyline(e entity) (run, error) {
	var vs []vertex
	head := true
	skip := false
	for _, p := range e.groups {
		switch p.code {
		case 0:
			if skip {
				vs = vs[:len(vs)-1]
			}
			vs, head, skip = append(vs, vertex{}), false, false
		case 70:
			n, err := p.int()
			if err != nil {
				return run{}, err
			}
			skip = !head && n&16 != 0 // a control point of the curve's frame
		case 10, 20, 42:
			if head {
				continue
			}
			v, err := p.float()
			if err != nil {
				return run{}, err
			}
			last := &vs[len(vs)-1]
			switch p.code {
			case 10:
				last.at.X = v
			case 20:
				last.at.Y = v
			default:
				last.bulge = v
			}
		}
	}
	if skip {
		vs = vs[:len(vs)-1]
	}
	flags := e.flag(70)
	if flags&(16|64) != 0 {
		d.raw.notes.count("left out %d mesh", "left out %d meshes")
		return run{}, nil
	}
	out := polyline(vs, flags&1 != 0)
	if flags&8 != 0 { // three-dimensional polylines have no plane of their own
		return out, nil
	}
	height, err := e.num(30, 0)
	if err != nil {
		return run{}, err
	}
	m, err := e.ocs(height)
	return out.transform(m), err
}

func (e entity) ellipse() ([]span, error) {
	v, err := e.nums(10, 20, 11, 21, 31, 40, 41)
	if err != nil {
		return nil, err
	}
	end, err := e.num(42, 2*math.Pi)
	if err != nil {
		return nil, err
	}
	axis, err := e.axis()
	if err != nil {
		return nil, err
	}
	ratio, start := v[5], v[6]
	major := [3]float64{v[2], v[3], v[4]}
	if major == [3]float64{} || ratio == 0 || math.Abs(ratio) > 1e6 {
		return nil, fail(e.line, "ELLIPSE has an axis without length")
	}
	minor := cross(axis, major)
	c, u, w := geom.Vec{X: v[0], Y: v[1]}, geom.Vec{X: major[0], Y: major[1]}, geom.Vec{X: minor[0] * ratio, Y: minor[1] * ratio}
	sweep := math.Mod(end-start, 2*math.Pi)
	if sweep <= 1e-9 {
		sweep += 2 * math.Pi
	}
	n := max(1, int(math.Ceil(sweep/(math.Pi/8)-1e-9)))
	return ellipseCubics(c, u, w, start, sweep, n), nil
}

// insert draws a block, or a table of copies of it.
func (d *dxf) insert(e entity, m affine, on string, stack []string) error {
	title := folded(e.text(2))
	b, ok := d.blocks[title]
	if !ok {
		d.raw.notes.count("left out %d block that the file does not hold",
			"left out %d blocks that the file does not hold")
		return nil
	}
	if len(stack) >= maxDepth {
		return fail(e.line, "blocks lie in blocks more than %d deep", maxDepth)
	}
	if slices.Contains(stack, title) {
		return fail(e.line, "block %q holds itself", clip(e.text(2)))
	}
	v, err := e.nums(10, 20, 50, 44, 45, 30)
	if err != nil {
		return err
	}
	sx, err := e.num(41, 1)
	if err != nil {
		return err
	}
	sy, err := e.num(42, 1)
	if err != nil {
		return err
	}
	plane, err := e.ocs(v[5])
	if err != nil {
		return err
	}
	sin, cos := math.Sincos(v[2] * math.Pi / 180)
	// Copies without a way between them are one.
	cols, rows := 1, 1
	if v[3] != 0 {
		cols = max(1, e.flag(70))
	}
	if v[4] != 0 {
		rows = max(1, e.flag(71))
	}
	stack = append(stack[:len(stack):len(stack)], title)
	for row := range rows {
		for col := range cols {
			if d.inserts++; d.inserts > maxInserts {
				return fail(e.line, "blocks are placed more than %d times: save only the outline", maxInserts)
			}
			own := affine{a: 1, d: 1, e: -b.base.X, f: -b.base.Y}.
				then(affine{a: sx, d: sy}).
				then(affine{a: 1, d: 1, e: float64(col) * v[3], f: float64(row) * v[4]}).
				then(affine{a: cos, b: sin, c: -sin, d: cos}).
				then(affine{a: 1, d: 1, e: v[0], f: v[1]}).
				then(plane).then(m)
			for _, inner := range b.entities {
				if err := d.draw(inner, own, on, stack); err != nil {
					return err
				}
			}
		}
	}
	return nil
}
