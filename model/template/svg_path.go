package template

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"example.org/castwright/model/geom"
)

// scanner reads numbers and letters of SVG's attribute grammars.
type scanner struct {
	text string
	pos  int
}

func (s *scanner) space() {
	for s.pos < len(s.text) && strings.IndexByte(" \t\r\n\f,", s.text[s.pos]) >= 0 {
		s.pos++
	}
}

func (s *scanner) done() bool {
	s.space()
	return s.pos >= len(s.text)
}

// number reads one number; numbers may touch where a sign or a second point
// begins the next.
func (s *scanner) number() (float64, error) {
	s.space()
	start, point, digits := s.pos, false, 0
	if s.pos < len(s.text) && (s.text[s.pos] == '+' || s.text[s.pos] == '-') {
		s.pos++
	}
	for s.pos < len(s.text) {
		c := s.text[s.pos]
		switch {
		case c >= '0' && c <= '9':
			digits++
		case c == '.' && !point:
			point = true
		default:
			goto mantissa
		}
		s.pos++
	}
mantissa:
	if digits == 0 {
		return 0, fmt.Errorf("a number is missing at character %d", start+1)
	}
	if s.pos < len(s.text) && (s.text[s.pos] == 'e' || s.text[s.pos] == 'E') {
		p := s.pos + 1
		if p < len(s.text) && (s.text[p] == '+' || s.text[p] == '-') {
			p++
		}
		if p < len(s.text) && s.text[p] >= '0' && s.text[p] <= '9' {
			for p < len(s.text) && s.text[p] >= '0' && s.text[p] <= '9' {
				p++
			}
			s.pos = p
		}
	}
	v, err := strconv.ParseFloat(s.text[start:s.pos], 64)
	if err != nil || math.IsInf(v, 0) {
		return 0, fmt.Errorf("the number at character %d is too large", start+1)
	}
	return v, nil
}

// flag reads one digit, 0 or 1, as an arc's flags are written.
func (s *scanner) flag() (bool, error) {
	s.space()
	if s.pos < len(s.text) && (s.text[s.pos] == '0' || s.text[s.pos] == '1') {
		s.pos++
		return s.text[s.pos-1] == '1', nil
	}
	return false, fmt.Errorf("an arc's flag at character %d is not 0 or 1", s.pos+1)
}

func (s *scanner) vec() (geom.Vec, error) {
	x, err := s.number()
	if err != nil {
		return geom.Vec{}, err
	}
	y, err := s.number()
	return geom.Vec{X: x, Y: y}, err
}

// numbers reads a list of numbers.
func numbers(text string) ([]float64, error) {
	s := scanner{text: text}
	var out []float64
	for !s.done() {
		v, err := s.number()
		if err != nil {
			return nil, err
		}
		if len(out) >= 2*maxSpans {
			return nil, fmt.Errorf("the list has more than %d numbers", 2*maxSpans)
		}
		out = append(out, v)
	}
	return out, nil
}

func polyRun(points string, closed bool) (run, error) {
	v, err := numbers(points)
	if err != nil {
		return run{}, err
	}
	vs := make([]vertex, len(v)/2)
	for i := range vs {
		vs[i].at = geom.Vec{X: v[2*i], Y: v[2*i+1]}
	}
	return polyline(vs, closed), nil
}

// transforms reads a transform list; the last one written is done first.
func transforms(text string) (affine, error) {
	m := identity
	for rest := strings.TrimSpace(text); rest != ""; rest = strings.TrimLeft(rest, " \t\r\n,") {
		name, after, ok := strings.Cut(rest, "(")
		list, tail, closed := strings.Cut(after, ")")
		if !ok || !closed {
			return m, fmt.Errorf("%q is not a transform", clip(rest))
		}
		v, err := numbers(strings.NewReplacer("deg", "", "px", "").Replace(list))
		if err != nil {
			return m, err
		}
		t, err := transform(strings.TrimSpace(name), v)
		if err != nil {
			return m, err
		}
		m, rest = t.then(m), tail
	}
	return m, nil
}

func transform(name string, v []float64) (affine, error) {
	arg := func(i int, fallback float64) float64 {
		if i < len(v) {
			return v[i]
		}
		return fallback
	}
	tan := func() float64 { return math.Tan(arg(0, 0) * math.Pi / 180) }
	switch {
	case name == "matrix" && len(v) == 6:
		return affine{v[0], v[1], v[2], v[3], v[4], v[5]}, nil
	case name == "translate" && len(v) >= 1:
		return affine{a: 1, d: 1, e: v[0], f: arg(1, 0)}, nil
	case name == "scale" && len(v) >= 1:
		return affine{a: v[0], d: arg(1, v[0])}, nil
	case name == "rotate" && (len(v) == 1 || len(v) == 3):
		sin, cos := math.Sincos(v[0] * math.Pi / 180)
		x, y := arg(1, 0), arg(2, 0)
		return affine{a: 1, d: 1, e: -x, f: -y}.
			then(affine{a: cos, b: sin, c: -sin, d: cos}).
			then(affine{a: 1, d: 1, e: x, f: y}), nil
	case name == "skewX" && len(v) == 1:
		return affine{a: 1, c: tan(), d: 1}, nil
	case name == "skewY" && len(v) == 1:
		return affine{a: 1, b: tan(), d: 1}, nil
	}
	return identity, fmt.Errorf("%q with %d numbers is not a transform", clip(name), len(v))
}

// path is a path being read.
type path struct {
	scanner
	runs      []run
	out       []span // of the sub-path
	count     int    // spans of all sub-paths
	at, start geom.Vec
	control   geom.Vec // last control point, for smooth curves
	smooth    byte     // 'C' or 'Q' when control is of that kind
	filled    bool
}

// pathRuns reads path data (SVG 1.1, 8.3), a run for each sub-path.
func pathRuns(data string, filled bool) ([]run, error) {
	p := path{scanner: scanner{text: data}, filled: filled}
	var command byte
	for !p.done() {
		if c := p.text[p.pos]; c >= 'A' && c <= 'Z' || c >= 'a' && c <= 'z' {
			command = c
			p.pos++
			if c == 'Z' || c == 'z' {
				p.finish(true)
				continue
			}
		} else if command == 0 || command == 'Z' || command == 'z' {
			return nil, fmt.Errorf("a number stands where a command should, at character %d", p.pos+1)
		}
		if p.count > maxSpans || len(p.runs) > maxSpans {
			return nil, fmt.Errorf("the path has more than %d pieces", maxSpans)
		}
		if err := p.step(command); err != nil {
			return nil, err
		}
		switch command { // further pairs after a move are lines
		case 'M':
			command = 'L'
		case 'm':
			command = 'l'
		}
	}
	p.finish(false)
	return p.runs, nil
}

// finish ends a sub-path.
func (p *path) finish(closed bool) {
	if closed && len(p.out) > 0 {
		p.line(p.start)
	}
	if len(p.out) > 0 {
		p.runs = append(p.runs, run{spans: p.out, closed: closed, filled: p.filled})
	}
	p.out, p.at, p.smooth = nil, p.start, 0
}

func (p *path) add(s ...span) {
	p.out = append(p.out, s...)
	p.count += len(s)
}

func (p *path) line(to geom.Vec) {
	if to != p.at {
		p.add(span{a: p.at, b: to})
	}
	p.at, p.smooth = to, 0
}

func (p *path) cubic(c1, c2, to geom.Vec) {
	p.add(span{kind: cubic, a: p.at, b: to, c1: c1, c2: c2})
	p.at = to
}

// step does one command with its numbers.
func (p *path) step(command byte) error {
	var origin geom.Vec
	if command >= 'a' {
		origin = p.at
	}
	next := func(v *geom.Vec) error {
		q, err := p.vec()
		*v = q.Add(origin)
		return err
	}
	points := func(vs ...*geom.Vec) error {
		for _, v := range vs {
			if err := next(v); err != nil {
				return err
			}
		}
		return nil
	}
	reflected := func(kind byte) geom.Vec {
		if p.smooth == kind {
			return p.at.Mul(2).Sub(p.control)
		}
		return p.at
	}
	var c1, c2, to geom.Vec
	switch command &^ 0x20 {
	case 'M':
		if err := points(&to); err != nil {
			return err
		}
		p.finish(false)
		p.at, p.start = to, to
	case 'L':
		if err := points(&to); err != nil {
			return err
		}
		p.line(to)
	case 'H', 'V':
		v, err := p.number()
		if err != nil {
			return err
		}
		to = geom.Vec{X: v + origin.X, Y: p.at.Y}
		if command&^0x20 == 'V' {
			to = geom.Vec{X: p.at.X, Y: v + origin.Y}
		}
		p.line(to)
	case 'C', 'S':
		c1 = reflected('C')
		if command&^0x20 == 'C' {
			if err := points(&c1); err != nil {
				return err
			}
		}
		if err := points(&c2, &to); err != nil {
			return err
		}
		p.cubic(c1, c2, to)
		p.control, p.smooth = c2, 'C'
	case 'Q', 'T':
		c1 = reflected('Q')
		if command&^0x20 == 'Q' {
			if err := points(&c1); err != nil {
				return err
			}
		}
		if err := points(&to); err != nil {
			return err
		}
		// A quadratic as a cubic: controls two thirds of the way.
		p.cubic(p.at.Lerp(c1, 2.0/3), to.Lerp(c1, 2.0/3), to)
		p.control, p.smooth = c1, 'Q'
	case 'A':
		return p.arc(origin)
	default:
		return fmt.Errorf("%q is not a path command, at character %d", string(rune(command)), p.pos)
	}
	return nil
}

// arc reads an elliptical arc and turns its end points into a centre (SVG 1.1,
// appendix F.6).
func (p *path) arc(origin geom.Vec) error {
	r, err := p.vec()
	if err != nil {
		return err
	}
	turn, err := p.number()
	if err != nil {
		return err
	}
	large, err := p.flag()
	if err != nil {
		return err
	}
	sweepFlag, err := p.flag()
	if err != nil {
		return err
	}
	to, err := p.vec()
	if err != nil {
		return err
	}
	to = to.Add(origin)
	rx, ry := math.Abs(r.X), math.Abs(r.Y)
	if to == p.at {
		return nil
	}
	if rx == 0 || ry == 0 {
		p.line(to)
		return nil
	}
	phi := turn * math.Pi / 180
	h := p.at.Sub(to).Mul(0.5).Turn(-phi)
	if l := (h.X/rx)*(h.X/rx) + (h.Y/ry)*(h.Y/ry); l > 1 {
		rx, ry = rx*math.Sqrt(l), ry*math.Sqrt(l)
	}
	num := rx*rx*ry*ry - rx*rx*h.Y*h.Y - ry*ry*h.X*h.X
	k := math.Sqrt(math.Max(0, num) / (rx*rx*h.Y*h.Y + ry*ry*h.X*h.X))
	if large == sweepFlag {
		k = -k
	}
	mid := geom.Vec{X: k * rx * h.Y / ry, Y: -k * ry * h.X / rx}
	centre := mid.Turn(phi).Add(p.at.Lerp(to, 0.5))
	start := math.Atan2((h.Y-mid.Y)/ry, (h.X-mid.X)/rx)
	end := math.Atan2((-h.Y-mid.Y)/ry, (-h.X-mid.X)/rx)
	sweep := end - start
	switch {
	case sweepFlag && sweep < 0:
		sweep += 2 * math.Pi
	case !sweepFlag && sweep > 0:
		sweep -= 2 * math.Pi
	}
	var spans []span
	if math.Abs(rx-ry) <= 1e-12*rx {
		spans = arcSpans(centre, rx, start+phi, sweep)
	} else {
		n := max(1, int(math.Ceil(math.Abs(sweep)/(math.Pi/8)-1e-9)))
		spans = ellipseCubics(centre, geom.Vec{X: rx}.Turn(phi), geom.Vec{Y: ry}.Turn(phi), start, sweep, n)
	}
	if len(spans) > 0 {
		spans[0].a, spans[len(spans)-1].b = p.at, to
	}
	p.add(spans...)
	p.at, p.smooth = to, 0
	return nil
}
