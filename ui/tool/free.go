package tool

import (
	"fmt"
	"math"
	"strings"
	"unicode/utf8"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
)

// free is a tool that draws by strokes: press, drag, let go. What a stroke makes
// is up to its craft.
type free struct {
	craft   craft
	points  []geom.Vec // of the stroke under way
	pressed bool
	at      Pointer
	shown   bool
	typed   *typed
	field   string // the measure that a number goes to
	fault   string // why something could not be done
	told    string // what the last stroke has made
}

// craft is what a tool makes of strokes.
type craft interface {
	// aim follows the mouse while no button is down.
	aim(h *Hand, f *free)
	// trail follows a stroke under way, its first point too.
	trail(h *Hand, f *free)
	// finish makes the stroke part of the design; told says what it has made.
	finish(h *Hand, f *free) (told string, err error)
	// measures are the sizes that a number can be typed for.
	measures(h *Hand, f *free) []measure
	// show adds what belongs over the top.
	show(h *Hand, f *free, o *Overlay)
	// hint is what a stroke does, in words.
	hint(h *Hand, f *free) string
}

// measure is a size of a craft.
type measure struct {
	name  string
	value units.Length
	least units.Length
	set   func(units.Length)
}

func craftOf(t Tool) craft {
	switch t {
	case Freehand:
		return &riverCraft{}
	case Brush:
		return &brushCraft{}
	case Eraser:
		return &brushCraft{wipes: true}
	case Bank:
		return &bankCraft{}
	}
	return &floodCraft{}
}

// maxTrail bounds the points of a stroke.
const maxTrail = 20_000

// busy reports whether a stroke or a number is under way.
func (f *free) busy() bool { return f != nil && (f.pressed || f.typed != nil) }

// drop forgets what is under way.
func (f *free) drop() { f.points, f.pressed, f.typed, f.fault = nil, false, nil, "" }

// back takes one thing back; it reports whether there was one.
func (f *free) back() bool {
	switch {
	case f.typed != nil:
		f.typed, f.fault = nil, ""
	case f.pressed:
		f.drop()
	case f.fault != "":
		f.fault = ""
	default:
		return false
	}
	return true
}

func (f *free) press(h *Hand, p Pointer) {
	if f.typed != nil && !f.commit(h) {
		return
	}
	f.points, f.pressed, f.fault, f.told = []geom.Vec{p.At}, true, "", ""
	f.at, f.shown = p, true
	f.craft.trail(h, f)
}

func (f *free) move(h *Hand, p Pointer) {
	f.at, f.shown = p, true
	if !f.pressed {
		f.craft.aim(h, f)
		return
	}
	// Nearer points than half a point of the picture tell nothing.
	if f.points[len(f.points)-1].Dist(p.At) >= p.reach(0.5) && len(f.points) < maxTrail {
		f.points = append(f.points, p.At)
		f.craft.trail(h, f)
	}
}

func (f *free) release(h *Hand, p Pointer) {
	if !f.pressed {
		return
	}
	f.at, f.pressed = p, false
	if f.points[len(f.points)-1] != p.At {
		f.points = append(f.points, p.At)
	}
	told, err := f.craft.finish(h, f)
	f.points, f.told, f.fault = nil, told, ""
	if err != nil {
		f.fault = capital(err.Error())
	}
	f.craft.aim(h, f)
}

// enter sets a typed number, or ends the work with the tool.
func (f *free) enter(h *Hand) {
	switch {
	case f.typed != nil && f.typed.text == "":
		f.typed = nil
	case f.typed != nil:
		f.commit(h)
	case !f.pressed:
		h.SetTool(Select)
	}
}

// rune takes a character of a number, and the brackets that make a size smaller
// or larger.
func (f *free) rune(h *Hand, r rune) bool {
	if f.typed == nil {
		if r == '[' || r == ']' {
			return f.step(h, r == ']')
		}
		if !begins(r) && r != '=' {
			return false
		}
		if !f.open(h) {
			return false
		}
	}
	if utf8.RuneCountInString(f.typed.text) < maxTyped {
		f.typed.text, f.typed.bad, f.fault = f.typed.text+string(r), false, ""
	}
	return true
}

// open starts a number for the active measure.
func (f *free) open(h *Hand) bool {
	m, ok := f.active(h)
	if ok {
		f.field, f.typed, f.fault = m.name, &typed{field: field{name: m.name}}, ""
	}
	return ok
}

func (f *free) active(h *Hand) (measure, bool) {
	ms := f.craft.measures(h, f)
	for _, m := range ms {
		if m.name == f.field {
			return m, true
		}
	}
	if len(ms) == 0 {
		return measure{}, false
	}
	return ms[0], true
}

func (f *free) backspace() bool {
	if f.typed == nil {
		return false
	}
	if f.typed.text == "" {
		return f.back()
	}
	f.typed.text, f.typed.bad, f.fault = dropLast(f.typed.text), false, ""
	return true
}

// tab opens the measure that is up, or sets what is typed and opens the next one.
func (f *free) tab(h *Hand) bool {
	if f.typed == nil {
		return f.open(h)
	}
	if f.typed.text != "" && !f.commit(h) {
		return true
	}
	ms := f.craft.measures(h, f)
	for i, m := range ms {
		if m.name == f.field {
			f.field = ms[(i+1)%len(ms)].name
			break
		}
	}
	return f.open(h)
}

// commit makes the typed number the size.
func (f *free) commit(h *Hand) bool {
	l, err := h.parse(strings.TrimPrefix(f.typed.text, "="))
	m, ok := f.active(h)
	if err == nil && ok && l < m.least {
		err = fmt.Errorf("the %s must be at least %s", small(m.name), h.length(m.least.MM()))
	}
	if err == nil && l > mostSize {
		err = fmt.Errorf("the %s may be at most %s", small(m.name), h.length(mostSize.MM()))
	}
	if err != nil {
		f.typed.bad, f.fault = true, capital(err.Error())
		return false
	}
	if ok {
		m.set(l)
	}
	f.typed, f.fault = nil, ""
	f.again(h)
	return true
}

// mostSize bounds a size that is typed for a stroke.
const mostSize = 2 * units.Metre

// again shows a size that has changed.
func (f *free) again(h *Hand) {
	if f.pressed {
		f.craft.trail(h, f)
	} else {
		f.craft.aim(h, f)
	}
}

// The sizes that the brackets step through.
var (
	metricSizes = []float64{2, 3, 5, 8, 10, 15, 20, 25, 30, 40, 50, 60, 80, 100, 120, 150, 200, 250, 300, 400, 500}
	inchSizes   = []float64{0.125, 0.25, 0.375, 0.5, 0.75, 1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 16, 20}
)

// step makes the first measure the next size up or down.
func (f *free) step(h *Hand, up bool) bool {
	ms := f.craft.measures(h, f)
	if len(ms) == 0 {
		return false
	}
	sizes, unit := metricSizes, units.Millimetre
	if h.s.Job().Units == units.Imperial {
		sizes, unit = inchSizes, units.Inch
	}
	now, next := ms[0].value, ms[0].value
	for _, s := range sizes {
		l := units.Length(math.Round(s * float64(unit)))
		if up && l > now {
			next = l
			break
		}
		if !up && l < now && l >= ms[0].least {
			next = l
		}
	}
	ms[0].set(next)
	f.fault = ""
	f.again(h)
	return true
}

func (f *free) show(h *Hand, o *Overlay) {
	for _, p := range h.s.Selection() {
		if p.Part != "" {
			o.Selected = append(o.Selected, linesOf(h.s.Design(), h.s.Report().Solid, gripOf(p))...)
		}
	}
	f.craft.show(h, f, o)
	if f.typed != nil {
		at := f.at.At
		if !f.shown {
			at = h.s.Report().Solid.Outline.Bounds().Centre()
		}
		o.Value = &Value{At: at, Name: f.typed.field.name, Text: f.typed.text, Bad: f.typed.bad}
	}
}

func (f *free) hint(h *Hand) string {
	switch {
	case f.fault != "" && f.typed != nil:
		return f.fault + ". Mend the number and press Enter, or Esc takes it back."
	case f.fault != "":
		return f.fault + "."
	case f.typed != nil:
		return f.typed.field.name + ": Enter sets it, Tab goes to the next measure, Esc takes it back. " +
			"Fractions, units and sums may be mixed: " + h.sample(field{}) + "."
	}
	words := f.craft.hint(h, f)
	if f.told != "" && !f.pressed {
		words = f.told + ". " + words
	}
	return words
}

// ring is a circle to show.
func ring(c geom.Vec, r float64) Line {
	const n = 64
	l := Line{Closed: true}
	for i := range n {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / n)
		l.Points = append(l.Points, c.Add(geom.Vec{X: r * cos, Y: r * sin}))
	}
	return l
}

// swath is the stroke under way as wide as it is drawn, without points that no one
// would see.
func (f *free) swath(o *Overlay, width float64) {
	if f.pressed {
		o.Swaths = append(o.Swaths, Swath{geom.Thinned(f.points, f.at.reach(0.3)), width})
	}
}

// regionLines are the rims of a region with straight edges.
func regionLines(r design.Region) []Line {
	chain := func(nodes []design.Node) Line {
		l := Line{Closed: true}
		for _, n := range nodes {
			l.Points = append(l.Points, vec(n.At))
		}
		return l
	}
	out := []Line{chain(r.Outer)}
	for _, island := range r.Islands {
		out = append(out, chain(island))
	}
	return out
}

// way is the stroke as the model takes it.
func (f *free) way() []design.Point {
	out := make([]design.Point, len(f.points))
	for i, p := range f.points {
		out[i] = point(p)
	}
	return out
}

// glassNow is the glass that new beds are laid with: that of the last bed, else of
// the stock.
func (h *Hand) glassNow() design.GlassBed {
	bed := h.stockNow().Glass
	if have := h.s.Design().Glass; len(have) > 0 {
		bed = have[len(have)-1]
	}
	bed.ID, bed.Region = "", design.Region{}
	return bed
}

// doNew does an edit and selects what is new, or what was changed.
func (h *Hand) doNew(e edit.Edit, changed design.ID) error {
	before := h.s.Design()
	h.applying = true
	err := h.s.Do(e)
	h.applying = false
	if err != nil {
		return err
	}
	made := edit.NewParts(before, h.s.Design())
	if len(made) == 0 && changed != "" {
		made = []design.ID{changed}
	}
	for _, id := range made {
		h.choose(grip{kind: gripPart, part: id})
	}
	return nil
}
