package template

import (
	"bytes"
	"compress/gzip"
	"encoding/binary"
	"fmt"
	"io"
	"maps"
	"slices"
	"strings"
	"unicode/utf16"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
)

// Bounds on what a file may ask of us. A template has some hundred spans; a
// scanned wall some thousand.
const (
	maxBytes      = 32 << 20
	maxSpans      = 200_000
	maxLoops      = 5_000
	maxDepth      = 32        // nested blocks, groups and uses
	maxCoordinate = 1e9       // in the file's unit, before scaling
	maxMM         = 100_000.0 // width and depth of an outline: 100 m
	maxAway       = 1e8       // of an outline from the drawing's origin: 100 km
)

// Unit is what a length of 1 in the file means.
type Unit uint8

// The units. UnitUnknown asks the file; a file that does not say is refused
// with [ErrUnits].
const (
	UnitUnknown Unit = iota
	UnitMM
	UnitInch
)

// mm is the number of millimetres in one of the unit.
func (u Unit) mm() float64 {
	if u == UnitInch {
		return units.Inch.MM()
	}
	return 1
}

// Error says why a file can't be used: where, what is wrong, what to do.
type Error struct {
	Line   int // 0 when it is not one line's fault
	Detail string
}

func (e *Error) Error() string {
	if e.Line > 0 {
		return fmt.Sprintf("line %d: %s", e.Line, e.Detail)
	}
	return e.Detail
}

// ErrUnits is returned for a file that does not say its unit.
var ErrUnits = &Error{Detail: "the file does not say its unit: say whether it is in millimetres or inches"}

func fail(line int, format string, args ...any) error {
	return &Error{line, fmt.Sprintf(format, args...)}
}

// Drawing is what a file holds that can be used: closed loops, and in words
// what was joined, closed or dropped on the way.
type Drawing struct {
	Loops  []Loop
	Notes  []string
	MM     float64 // millimetres in one unit of the file
	Source string  // "svg" or "dxf"
}

// Loop is a closed outline with its holes. Areas are square millimetres,
// exact for lines, arcs and cubics.
type Loop struct {
	Nodes     []design.Node   // counter-clockwise
	Holes     [][]design.Node // clockwise
	Area      float64         // less the holes
	Perimeter float64         // of the outer chain
	Centroid  geom.Vec        // of the outer chain less the holes
}

// Read reads a drawing. The kind of file is told by its content. Unit says
// what the file's numbers mean where the file does not say it, or says it
// wrongly: it goes before a DXF's $INSUNITS and before the pixels of an SVG. An
// SVG whose size stands in it in millimetres or the like has that size, whatever
// unit says.
func Read(data []byte, unit Unit) (Drawing, error) {
	if len(data) > maxBytes {
		return Drawing{}, fail(0, "the file has %d MB; at most %d MB are read", len(data)>>20, maxBytes>>20)
	}
	raw, err := readAny(data)
	if err != nil {
		return Drawing{}, err
	}
	mm := raw.mm
	if unit != UnitUnknown && !raw.sized {
		mm = unit.mm()
	}
	if mm == 0 {
		return Drawing{}, ErrUnits
	}
	return assemble(raw, mm)
}

func readAny(data []byte) (rawDrawing, error) {
	data, err := unpacked(data)
	if err != nil {
		return rawDrawing{}, err
	}
	data = utf8Of(data)
	head := bytes.TrimSpace(data[:min(len(data), 4096)])
	switch {
	case len(head) == 0:
		return rawDrawing{}, fail(0, "the file is empty")
	case bytes.HasPrefix(data, []byte("AutoCAD Binary DXF")):
		return rawDrawing{}, fail(0, "this is a binary DXF: save it as ASCII DXF")
	case bytes.HasPrefix(data, []byte("AC10")) || bytes.HasPrefix(data, []byte(gzipped)):
		return rawDrawing{}, fail(0, "this is a packed drawing: save it as plain SVG or ASCII DXF")
	case head[0] == '<':
		return readSVG(data)
	}
	return readDXF(data)
}

// gzipped begins a file that gzip packed (RFC 1952, 2.3.1), as an .svgz is.
const gzipped = "\x1f\x8b"

// unpacked is what gzip packed, up to [maxBytes]; other data as it is.
func unpacked(data []byte) ([]byte, error) {
	if !bytes.HasPrefix(data, []byte(gzipped)) {
		return data, nil
	}
	z, err := gzip.NewReader(bytes.NewReader(data))
	if err == nil {
		data, err = io.ReadAll(io.LimitReader(z, maxBytes+1))
	}
	switch {
	case err != nil:
		return nil, fail(0, "this packed drawing can't be unpacked (%s): save it as plain SVG", clip(err.Error()))
	case len(data) > maxBytes:
		return nil, fail(0, "the drawing has more than %d MB when unpacked: save only the outline", maxBytes>>20)
	}
	return data, nil
}

// utf8Of takes a byte-order mark away, and turns UTF-16 that has one to UTF-8.
func utf8Of(data []byte) []byte {
	var order binary.ByteOrder
	switch {
	case bytes.HasPrefix(data, []byte("\xef\xbb\xbf")):
		return data[3:]
	case bytes.HasPrefix(data, []byte("\xff\xfe")):
		order = binary.LittleEndian
	case bytes.HasPrefix(data, []byte("\xfe\xff")):
		order = binary.BigEndian
	default:
		return data
	}
	wide := make([]uint16, 0, len(data)/2)
	for i := 2; i+1 < len(data); i += 2 {
		wide = append(wide, order.Uint16(data[i:]))
	}
	return []byte(string(utf16.Decode(wide)))
}

// run is what one entity draws without lifting the pen.
type run struct {
	spans  []span
	closed bool // on itself; else its ends look for others
	filled bool // when nothing else joins it, it is closed by a straight line
	odd    bool // it is filled where it winds an odd number of times round
}

// rawDrawing is a file's runs before they are joined.
type rawDrawing struct {
	source string
	runs   []run
	spans  int // in all runs
	notes  notes
	// mm is what one unit of the runs is, 0 when the file does not say. With
	// sized it does so beyond doubt.
	mm    float64
	sized bool
}

// add takes a run in, less what can't be drawn.
func (r *rawDrawing) add(n run) error {
	if r.spans += len(n.spans); r.spans > maxSpans {
		return fail(0, "the drawing has more than %d lines and curves: save only the outline", maxSpans)
	}
	for _, s := range n.spans {
		if !s.finite() {
			r.notes.count("dropped %d piece with a number that can't be drawn",
				"dropped %d pieces with a number that can't be drawn")
			return nil
		}
	}
	if len(n.spans) > 0 {
		r.runs = append(r.runs, n)
	}
	return nil
}

// notes counts what happened, in the order of first happening.
type notes struct {
	order  []note
	counts map[note]int
}

// note is a sentence for one, and one for several.
type note struct{ one, many string }

func (n *notes) count(one, many string) { n.add(1, one, many) }

func (n *notes) add(by int, one, many string) {
	if by == 0 {
		return
	}
	if n.counts == nil {
		n.counts = map[note]int{}
	}
	k := note{one, many}
	if n.counts[k] == 0 {
		n.order = append(n.order, k)
	}
	n.counts[k] += by
}

func (n *notes) clone() notes {
	return notes{slices.Clone(n.order), maps.Clone(n.counts)}
}

func (n *notes) list() []string {
	out := make([]string, len(n.order))
	for i, k := range n.order {
		form := k.many
		if n.counts[k] == 1 {
			form = k.one
		}
		out[i] = fmt.Sprintf(form, n.counts[k])
	}
	return out
}

// assemble scales, joins, closes and nests.
func assemble(raw rawDrawing, mm float64) (Drawing, error) {
	scale := affine{a: mm, d: mm}
	runs := make([]run, len(raw.runs))
	for i, r := range raw.runs {
		runs[i] = r.transform(scale)
	}
	before := raw.notes.clone()
	loops, err := nest(join(slices.Clone(runs), &raw.notes), &raw.notes)
	if err != nil {
		return Drawing{}, err
	}
	if len(loops) == 0 {
		// Lines may run on past the corners.
		if parts, any := cut(runs, &before); any {
			more, err := nest(join(parts, &before), &before)
			if err == nil && len(more) > 0 {
				loops, raw.notes = more, before
			}
		}
	}
	if len(loops) == 0 {
		return Drawing{}, fail(0, "no closed outline was found%s", because(raw.notes.list()))
	}
	return Drawing{Loops: loops, Notes: raw.notes.list(), MM: mm, Source: raw.source}, nil
}

// transform is the run under m.
func (r run) transform(m affine) run {
	out := run{make([]span, 0, len(r.spans)), r.closed, r.filled, r.odd}
	for _, s := range r.spans {
		out.spans = s.transform(m, out.spans)
	}
	return out
}

func because(notes []string) string {
	if len(notes) == 0 {
		return ""
	}
	return " (" + strings.Join(notes, "; ") + ")"
}
