package template

import (
	"bytes"
	"math"
	"strconv"
	"strings"
)

// pair is one group of a DXF file: its code and value (DXF reference: every
// datum is a code line followed by a value line).
type pair struct {
	code  int
	value string
	line  int // of the value
}

func (p pair) float() (float64, error) {
	v, err := strconv.ParseFloat(strings.TrimSpace(p.value), 64)
	if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
		return 0, fail(p.line, "%q is not a number that can be used", clip(p.value))
	}
	return v, nil
}

func (p pair) int() (int, error) {
	v, err := strconv.Atoi(strings.TrimSpace(p.value))
	if err != nil {
		return 0, fail(p.line, "%q is not a whole number", clip(p.value))
	}
	return v, nil
}

// clip shortens text from a file for a message.
func clip(s string) string {
	if r := []rune(s); len(r) > 40 {
		return string(r[:40]) + "…"
	}
	return s
}

// pairs reads groups one after the other, with one step of looking back.
type pairs struct {
	rest   []byte
	ending byte // of a line: a line feed, where there is one
	line   int
	back   *pair
}

func newPairs(data []byte) *pairs {
	if bytes.IndexByte(data, '\n') < 0 {
		return &pairs{rest: data, ending: '\r'}
	}
	return &pairs{rest: data, ending: '\n'}
}

func (r *pairs) unread(p pair) { r.back = &p }

// next gives the next group; comments (999) are passed over. At the end of the
// data it fails: a DXF ends with its EOF group, or it was saved only in part.
func (r *pairs) next() (pair, error) {
	if r.back != nil {
		p := *r.back
		r.back = nil
		return p, nil
	}
	for {
		code, ok := r.textLine()
		if !ok {
			return pair{}, fail(r.line, "the file ends before its end mark: it was saved or copied only in part")
		}
		n, err := strconv.Atoi(strings.TrimSpace(code))
		if err != nil || n < -5 || n > 1071 {
			return pair{}, fail(r.line, "%q stands where a DXF group code should: this is not an ASCII DXF", clip(code))
		}
		value, ok := r.textLine()
		if !ok {
			return pair{}, fail(r.line, "the file ends in the middle of a group: it was saved or copied only in part")
		}
		if n != 999 {
			return pair{n, value, r.line}, nil
		}
	}
}

func (r *pairs) textLine() (string, bool) {
	if len(r.rest) == 0 {
		return "", false
	}
	r.line++
	i := bytes.IndexByte(r.rest, r.ending)
	var l []byte
	if i < 0 {
		l, r.rest = r.rest, nil
	} else {
		l, r.rest = r.rest[:i], r.rest[i+1:]
	}
	return string(bytes.TrimSuffix(l, []byte("\r"))), true
}

// entity is the groups of one entity after its name.
type entity struct {
	name   string
	line   int
	groups []pair
}

// entity reads up to the next group 0.
func (r *pairs) entity(name pair) (entity, error) {
	e := entity{name: strings.TrimSpace(name.value), line: name.line}
	for {
		p, err := r.next()
		if err != nil {
			return e, err
		}
		if p.code == 0 {
			r.unread(p)
			return e, nil
		}
		if len(e.groups) >= 4*maxSpans {
			return e, fail(e.line, "%s has too many values", clip(e.name))
		}
		e.groups = append(e.groups, p)
	}
}

// own is the groups of the entity itself, without those of its vertices.
func (e entity) own() []pair {
	for i, p := range e.groups {
		if p.code == 0 {
			return e.groups[:i]
		}
	}
	return e.groups
}

// num is the first value of a code, or fallback.
func (e entity) num(code int, fallback float64) (float64, error) {
	for _, p := range e.own() {
		if p.code == code {
			return p.float()
		}
	}
	return fallback, nil
}

// nums reads several codes at once; absent ones are 0.
func (e entity) nums(codes ...int) ([]float64, error) {
	out := make([]float64, len(codes))
	for i, c := range codes {
		v, err := e.num(c, 0)
		if err != nil {
			return nil, err
		}
		out[i] = v
	}
	return out, nil
}

func (e entity) flag(code int) int {
	for _, p := range e.own() {
		if p.code == code {
			if n, err := p.int(); err == nil {
				return n
			}
		}
	}
	return 0
}

func (e entity) text(code int) string {
	for _, p := range e.own() {
		if p.code == code {
			return strings.TrimSpace(p.value)
		}
	}
	return ""
}
