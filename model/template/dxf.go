package template

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"example.org/castwright/model/geom"
)

// dxfUnits is millimetres by $INSUNITS (DXF reference, header variables, from
// memory, and the table of ezdxf 0.18; the US survey foot is 1200/3937 m,
// Mendenhall Order of 1893). Astronomers' units are left out.
var dxfUnits = map[int]float64{
	1: 25.4, 2: 304.8, 3: 5280 * 304.8, 4: 1, 5: 10, 6: 1000, 7: 1e6, 8: 25.4e-6, 9: 25.4e-3, 10: 914.4,
	11: 1e-7, 12: 1e-6, 13: 1e-3, 14: 100, 15: 1e4, 16: 1e5,
	21: surveyFoot, 22: surveyFoot / 12, 23: 3 * surveyFoot, 24: 5280 * surveyFoot,
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
	r := newPairs(data)
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
