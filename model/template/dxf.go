package template

import (
	"math"
	"strings"

	"example.org/castwright/model/geom"
)

// dxfUnits is millimetres by $INSUNITS (DXF reference, header variables, from
// memory): 1 inches, 2 feet, 4 millimetres, 5 centimetres, 6 metres,
// 8 micro-inches, 10 yards, 14 decimetres.
var dxfUnits = map[int]float64{1: 25.4, 2: 304.8, 4: 1, 5: 10, 6: 1000, 10: 914.4, 14: 100}

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
	hidden  map[string]bool // layers that are off or frozen
	inserts int
	drawn   int
}

type block struct {
	base     geom.Vec
	entities []entity
}

// readDXF reads LINE, ARC, CIRCLE, LWPOLYLINE, POLYLINE, ELLIPSE, SPLINE and
// INSERT of an ASCII DXF, R12 to 2018.
func readDXF(data []byte) (rawDrawing, error) {
	d := dxf{
		raw:    rawDrawing{source: "dxf", perUnit: 1},
		blocks: map[string]block{},
		hidden: map[string]bool{},
	}
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
				if err := d.draw(e, identity, nil); err != nil {
					return d.raw, err
				}
			}
			return d.raw, nil
		case p.code == 0 && word == "SECTION":
			name, err := r.next()
			if err != nil {
				return d.raw, err
			}
			switch strings.TrimSpace(name.value) {
			case "HEADER":
				err = d.header(r)
			case "TABLES":
				err = d.tables(r)
			case "BLOCKS":
				err = d.readBlocks(r)
			case "ENTITIES":
				top, err = d.entities(r, "ENDSEC")
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
	name := ""
	for {
		p, err := r.next()
		if err != nil {
			return err
		}
		switch {
		case p.code == 0:
			return nil
		case p.code == 9:
			name = strings.TrimSpace(p.value)
		case p.code == 70 && name == "$INSUNITS":
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
			if e.flag(62) < 0 || e.flag(70)&1 != 0 {
				d.hidden[e.text(2)] = true
			}
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
			d.blocks[head.text(2)] = block{geom.Vec{X: v[0], Y: v[1]}, es}
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

// draw adds an entity under m. Stack holds the names of the blocks around it.
func (d *dxf) draw(e entity, m affine, stack []string) error {
	if d.drawn++; d.drawn > maxDrawn {
		return fail(e.line, "the blocks place more than %d entities: save only the outline", maxDrawn)
	}
	switch {
	case d.hidden[e.text(8)]:
		d.raw.notes.count("left out %d piece(s) on layers that are off")
		return nil
	case e.flag(67) == 1:
		d.raw.notes.count("left out %d piece(s) of the paper layout")
		return nil
	case e.flag(60) == 1:
		d.raw.notes.count("left out %d hidden piece(s)")
		return nil
	}
	spans, err := d.spans(e, m, stack)
	if err != nil {
		return err
	}
	var moved []span
	for _, s := range spans {
		moved = s.transform(m, moved)
	}
	return d.raw.add(moved...)
}

// spans is an entity's curves in its own place.
func (d *dxf) spans(e entity, m affine, stack []string) ([]span, error) {
	switch e.name {
	case "LINE":
		v, err := e.nums(10, 20, 11, 21)
		if err != nil {
			return nil, err
		}
		return []span{{a: geom.Vec{X: v[0], Y: v[1]}, b: geom.Vec{X: v[2], Y: v[3]}}}, nil
	case "ARC", "CIRCLE":
		return e.round()
	case "LWPOLYLINE":
		return e.lightPolyline()
	case "POLYLINE":
		return d.oldPolyline(e)
	case "ELLIPSE":
		return e.ellipse()
	case "SPLINE":
		return e.spline()
	case "INSERT":
		return nil, d.insert(e, m, stack)
	}
	d.raw.notes.count("left out %d piece(s) of other kinds (text, hatching, dimensions)")
	return nil, nil
}

// ocs is the map from an entity's own plane to the drawing: an extrusion of
// 0,0,-1 looks at the plane from behind and so mirrors it.
func (e entity) ocs() affine {
	if z, err := e.num(230, 1); err == nil && z < 0 {
		return affine{a: -1, d: 1}
	}
	return identity
}

func mapped(spans []span, m affine) []span {
	if m == identity {
		return spans
	}
	var out []span
	for _, s := range spans {
		out = s.transform(m, out)
	}
	return out
}

func (e entity) round() ([]span, error) {
	v, err := e.nums(10, 20, 40, 50, 51)
	if err != nil {
		return nil, err
	}
	c, r := geom.Vec{X: v[0], Y: v[1]}, v[2]
	if r <= 0 {
		return nil, fail(e.line, "%s has radius %g: it must be above 0", e.name, r)
	}
	if e.name == "CIRCLE" {
		return mapped(fullCircle(c, r), e.ocs()), nil
	}
	start := v[3] * math.Pi / 180
	sweep := math.Mod((v[4]-v[3])*math.Pi/180, 2*math.Pi)
	if sweep <= 1e-12 {
		sweep += 2 * math.Pi
	}
	return mapped(arcSpans(c, r, start, sweep), e.ocs()), nil
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

func polyline(vs []vertex, closed bool) []span {
	n := len(vs)
	if n < 2 {
		return nil
	}
	last := n - 1
	if closed {
		last = n
	}
	var out []span
	for i := range last {
		s := span{a: vs[i].at, b: vs[(i+1)%n].at}
		if math.Abs(vs[i].bulge) > 1e-9 {
			s.kind, s.bulge = arc, vs[i].bulge
		}
		if s.a != s.b {
			out = append(out, s)
		}
	}
	return out
}

func (e entity) lightPolyline() ([]span, error) {
	var vs []vertex
	for _, p := range e.groups {
		if p.code != 10 && p.code != 20 && p.code != 42 {
			continue
		}
		v, err := p.float()
		if err != nil {
			return nil, err
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
	return mapped(polyline(vs, e.flag(70)&1 != 0), e.ocs()), nil
}

// oldPolyline reads a POLYLINE; meshes are left out, and so are the control
// points of a curve whose fitted points are there too.
func (d *dxf) oldPolyline(e entity) ([]span, error) {
	flags, head := 0, true
	var vs []vertex
	var kinds []int
	for _, p := range e.groups {
		switch p.code {
		case 0:
			vs, kinds, head = append(vs, vertex{}), append(kinds, 0), false
		case 70:
			n, err := p.int()
			if err != nil {
				return nil, err
			}
			if head {
				flags = n
			} else {
				kinds[len(kinds)-1] = n
			}
		case 10, 20, 42:
			if head {
				continue
			}
			v, err := p.float()
			if err != nil {
				return nil, err
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
	if flags&(16|64) != 0 {
		d.raw.notes.count("left out %d mesh(es)")
		return nil, nil
	}
	var kept []vertex
	for i, v := range vs {
		if kinds[i]&16 == 0 { // a control point of the curve's frame
			kept = append(kept, v)
		}
	}
	m := e.ocs()
	if flags&8 != 0 { // three-dimensional polylines have no plane of their own
		m = identity
	}
	return mapped(polyline(kept, flags&1 != 0), m), nil
}

func (e entity) ellipse() ([]span, error) {
	v, err := e.nums(10, 20, 11, 21, 40, 41)
	if err != nil {
		return nil, err
	}
	end, err := e.num(42, 2*math.Pi)
	if err != nil {
		return nil, err
	}
	c, u, ratio, start := geom.Vec{X: v[0], Y: v[1]}, geom.Vec{X: v[2], Y: v[3]}, v[4], v[5]
	if u.Norm() == 0 || ratio <= 0 || ratio > 1e6 {
		return nil, fail(e.line, "ELLIPSE has an axis without length")
	}
	w := u.Left().Mul(ratio)
	if e.ocs() != identity {
		w = w.Mul(-1)
	}
	sweep := math.Mod(end-start, 2*math.Pi)
	if sweep <= 1e-9 {
		sweep += 2 * math.Pi
	}
	n := max(1, int(math.Ceil(sweep/(math.Pi/8)-1e-9)))
	return ellipseCubics(c, u, w, start, sweep, n), nil
}

// insert draws a block, or a table of copies of it.
func (d *dxf) insert(e entity, m affine, stack []string) error {
	name := e.text(2)
	b, ok := d.blocks[name]
	if !ok {
		d.raw.notes.count("left out %d block(s) that the file does not hold")
		return nil
	}
	if len(stack) >= maxDepth {
		return fail(e.line, "blocks lie in blocks more than %d deep", maxDepth)
	}
	for _, s := range stack {
		if s == name {
			return fail(e.line, "block %q holds itself", clip(name))
		}
	}
	v, err := e.nums(10, 20, 50, 44, 45)
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
	sin, cos := math.Sincos(v[2] * math.Pi / 180)
	cols, rows := max(1, e.flag(70)), max(1, e.flag(71))
	stack = append(stack[:len(stack):len(stack)], name)
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
				then(e.ocs()).then(m)
			for _, inner := range b.entities {
				if err := d.draw(inner, own, stack); err != nil {
					return err
				}
			}
		}
	}
	return nil
}
