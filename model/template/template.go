package template

import (
	"bytes"
	"fmt"
	"math"

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
	maxCoordinate = 1e7       // in the file's unit, before scaling
	maxMM         = 100_000.0 // after scaling: 100 m
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
// what the file's numbers mean; an SVG with a size, or a DXF with $INSUNITS,
// says so itself, and then unit is used only if it is given.
func Read(data []byte, unit Unit) (Drawing, error) {
	if len(data) > maxBytes {
		return Drawing{}, fail(0, "the file has %d MB; at most %d MB are read", len(data)>>20, maxBytes>>20)
	}
	head := bytes.TrimSpace(bytes.TrimPrefix(data[:min(len(data), 4096)], []byte("\xef\xbb\xbf")))
	var raw rawDrawing
	var err error
	switch {
	case len(head) == 0:
		return Drawing{}, fail(0, "the file is empty")
	case bytes.HasPrefix(data, []byte("AutoCAD Binary DXF")):
		return Drawing{}, fail(0, "this is a binary DXF: save it as ASCII DXF")
	case head[0] == '<':
		raw, err = readSVG(data)
	default:
		raw, err = readDXF(data)
	}
	if err != nil {
		return Drawing{}, err
	}
	mm := raw.mm
	if unit != UnitUnknown {
		mm = raw.perUnit * unit.mm()
	}
	if mm == 0 {
		return Drawing{}, ErrUnits
	}
	return assemble(raw, mm)
}

// rawDrawing is a file's spans before they are joined.
type rawDrawing struct {
	source string
	spans  []span
	notes  notes
	// mm is what one unit of the spans is, 0 when the file does not say.
	// perUnit turns a unit that the user states into that of the spans.
	mm, perUnit float64
}

func (r *rawDrawing) add(s ...span) error {
	for _, s := range s {
		if !s.finite() {
			r.notes.count("dropped %d with a number that can't be drawn")
			continue
		}
		if len(r.spans) >= maxSpans {
			return fail(0, "the drawing has more than %d lines and curves: save only the outline", maxSpans)
		}
		r.spans = append(r.spans, s)
	}
	return nil
}

// notes counts what happened, in the order of first happening.
type notes struct {
	order  []string
	counts map[string]int
}

func (n *notes) count(format string) {
	if n.counts == nil {
		n.counts = map[string]int{}
	}
	if n.counts[format] == 0 {
		n.order = append(n.order, format)
	}
	n.counts[format]++
}

func (n *notes) list() []string {
	out := make([]string, len(n.order))
	for i, f := range n.order {
		out[i] = fmt.Sprintf(f, n.counts[f])
	}
	return out
}

// assemble scales, joins, closes and nests.
func assemble(raw rawDrawing, mm float64) (Drawing, error) {
	scale := affine{a: mm, d: mm}
	var spans []span
	for _, s := range raw.spans {
		spans = s.transform(scale, spans)
	}
	for _, s := range spans {
		if math.Abs(s.a.X) > maxMM || math.Abs(s.a.Y) > maxMM {
			return Drawing{}, fail(0, "the drawing is larger than %g m: check its unit", maxMM/1000)
		}
	}
	chains := join(spans, &raw.notes)
	loops, err := nest(chains, &raw.notes)
	if err != nil {
		return Drawing{}, err
	}
	if len(loops) == 0 {
		return Drawing{}, fail(0, "no closed outline was found%s", because(raw.notes.list()))
	}
	return Drawing{Loops: loops, Notes: raw.notes.list(), MM: mm, Source: raw.source}, nil
}

func because(notes []string) string {
	if len(notes) == 0 {
		return ""
	}
	text := " ("
	for i, n := range notes {
		if i > 0 {
			text += "; "
		}
		text += n
	}
	return text + ")"
}
