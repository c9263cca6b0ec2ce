package units

import (
	"fmt"
	"math/big"
	"strings"
)

// Parse reads a length as a person writes it. A number without a unit is in
// the system's own: millimetres or inches. It takes
//
//	25 1/2"   25-1/2   25½ in   2' 1 1/2"   2'-1 1/2"   2ft 3in   1/16
//	650   650 mm   64.8 cm   64,8 cm   0.65 m   1 m 20 cm
//	60 - 2*3/4   (60 - 1/2)/2   31 1/2" - 10mm   -3/8
//
// with straight, curled and prime marks, fractions in one character and the
// true minus sign. It reckons exactly and rounds once, at the end, half-even
// to a nanometre.
//
// Rules where a text could be read in two ways:
//   - A whole number, a hyphen and a proper fraction with no space between are
//     a mixed number when the reading is imperial: inches or feet follow, or no
//     unit follows and the system is imperial or a foot mark came before. So
//     60-1/2 is sixty and a half inches; 60 - 1/2 takes away. In a metric
//     reading, and with the true minus sign, it always takes away.
//   - After feet a number is inches, in either system, and a hyphen without
//     spaces joins the two: 2'-3 is 27 in; 2' - 3" is 21 in.
//   - Two whole numbers with a slash and no space are one fraction, to which a
//     unit may belong: 3/4" is fine, 3 / 4" divides a number by a length.
//   - A comma is a decimal comma; 1,250 could be either and is refused.
//   - In a sum, a number without a unit takes the system's: 60 - 10mm is
//     60 in less 10 mm for an imperial maker.
//   - In a product one side is a plain number. A length times a length, and
//     anything divided by a length, is refused.
//
// The result is within ±[MaxLength]. An error is a [*ParseError].
func Parse(s string, sys System) (Length, error) {
	n, err := lengthKind(sys).parse(s)
	return Length(n), err
}

// ParseError says what could not be read, where, and what would be right.
type ParseError struct {
	Input   string // as typed
	At      int    // character, counted from 1
	What    string // what is wrong
	Example string // what would be right
}

func (e *ParseError) Error() string {
	if strings.TrimSpace(e.Input) == "" {
		return fmt.Sprintf("%s: type for example %s", e.What, e.Example)
	}
	shown := []rune(e.Input)
	text := string(shown)
	if len(shown) > 40 {
		text = string(shown[:40]) + "…"
	}
	return fmt.Sprintf("%q: at character %d: %s; for example %s", text, e.At, e.What, e.Example)
}

// value is a number, or a quantity of the kind that is read, in its steps.
type value struct {
	rat   *big.Rat
	sized bool // it is a quantity, not a plain number
}

// parser reads one text by recursive descent.
type parser struct {
	*kind
	input  string
	tokens []token
	i      int
	depth  int
}

// parse reads a quantity of the kind in whole steps.
func (k *kind) parse(s string) (int64, error) {
	p := parser{kind: k, input: s}
	v, err := p.run(s)
	if err != nil {
		return 0, err
	}
	n, ok := roundRat(p.quantity(v).rat)
	if !ok || n < -k.bound || n > k.bound {
		return 0, p.fail(1, "this is more than %s", k.most)
	}
	return n, nil
}

func (p *parser) fail(at int, what string, args ...any) error {
	return &ParseError{Input: p.input, At: at, What: fmt.Sprintf(what, args...), Example: p.example}
}

func (p *parser) run(s string) (value, error) {
	if err := p.scan(s); err != nil {
		return value{}, err
	}
	if p.peek().kind == tokEnd {
		return value{}, p.fail(1, "nothing is written")
	}
	v, err := p.sum()
	if err != nil {
		return value{}, err
	}
	if t := p.peek(); t.kind != tokEnd {
		return value{}, p.fail(t.at, "%s", stray(t))
	}
	return v, nil
}

// stray says what is wrong with a token that nothing expects.
func stray(t token) string {
	switch t.kind {
	case tokEnd:
		return "a number is missing at the end"
	case tokClose:
		return "this bracket was never opened"
	case tokUnit:
		return fmt.Sprintf("%s stands without a number before it", t.text)
	case tokNumber, tokFraction, tokOpen:
		return fmt.Sprintf("a sign is missing before %s: put +, -, * or / between", t.text)
	}
	return fmt.Sprintf("a number is missing before %s", t.text)
}

func (p *parser) peek() token { return p.ahead(0) }

// ahead is the token n places on; beyond the end it is the end.
func (p *parser) ahead(n int) token { return p.tokens[min(p.i+n, len(p.tokens)-1)] }

// quantity gives a plain number the unit of bare numbers.
func (p *parser) quantity(v value) value {
	if v.sized {
		return v
	}
	return value{p.bare.of(v.rat), true}
}

func (p *parser) sum() (value, error) {
	v, err := p.product()
	for err == nil {
		t := p.peek()
		if t.kind != tokPlus && t.kind != tokHyphen && t.kind != tokMinus {
			return v, nil
		}
		p.i++
		var w value
		if w, err = p.product(); err != nil {
			break
		}
		if v.sized || w.sized {
			v, w = p.quantity(v), p.quantity(w)
		}
		if t.kind == tokPlus {
			v.rat = new(big.Rat).Add(v.rat, w.rat)
		} else {
			v.rat = new(big.Rat).Sub(v.rat, w.rat)
		}
	}
	return value{}, err
}

func (p *parser) product() (value, error) {
	v, err := p.signed()
	for err == nil {
		t := p.peek()
		if t.kind != tokTimes && t.kind != tokOver {
			return v, nil
		}
		p.i++
		var w value
		if w, err = p.signed(); err != nil {
			break
		}
		switch {
		case t.kind == tokTimes && v.sized && w.sized:
			return value{}, p.fail(t.at, "a %[1]s times a %[1]s is no %[1]s", p.noun)
		case t.kind == tokTimes:
			v = value{new(big.Rat).Mul(v.rat, w.rat), v.sized || w.sized}
		case w.sized:
			return value{}, p.fail(t.at, "this divides by a %s; divide by a plain number, "+
				`and write a fraction without spaces, as in 3/4"`, p.noun)
		case w.rat.Sign() == 0:
			return value{}, p.fail(t.at, "this divides by zero")
		default:
			v.rat = new(big.Rat).Quo(v.rat, w.rat)
		}
	}
	return value{}, err
}

func (p *parser) signed() (value, error) {
	p.depth++
	defer func() { p.depth-- }()
	t := p.peek()
	if p.depth > maxDepth {
		return value{}, p.fail(t.at, "brackets and signs are nested more than %d deep", maxDepth)
	}
	switch t.kind {
	case tokHyphen, tokMinus:
		p.i++
		v, err := p.signed()
		if err != nil {
			return v, err
		}
		return value{new(big.Rat).Neg(v.rat), v.sized}, nil
	case tokPlus:
		p.i++
		return p.signed()
	case tokOpen:
		return p.bracket()
	case tokNumber, tokFraction:
		return p.literal()
	}
	return value{}, p.fail(t.at, "%s", stray(t))
}

// bracket reads a sum in brackets, and a unit after it when the sum has none.
func (p *parser) bracket() (value, error) {
	open := p.peek()
	p.i++
	v, err := p.sum()
	if err != nil {
		return v, err
	}
	t := p.peek()
	if t.kind != tokClose {
		if t.kind == tokEnd {
			return value{}, p.fail(open.at, "this bracket is never closed")
		}
		return value{}, p.fail(t.at, "%s", stray(t))
	}
	p.i++
	if t = p.peek(); t.kind != tokUnit {
		return v, nil
	}
	if v.sized {
		return value{}, p.fail(t.at, "%s follows what has a unit already", t.text)
	}
	p.i++
	return value{t.unit.of(v.rat), true}, nil
}

// of is so many of the unit, in steps.
func (u unit) of(n *big.Rat) *big.Rat {
	return new(big.Rat).Mul(n, new(big.Rat).SetInt64(u.size))
}

// literal reads a number and its unit, and the smaller units that follow on:
// 2' 3", 1 m 20 cm.
func (p *parser) literal() (value, error) {
	n, err := p.mixed(false)
	if err != nil {
		return value{}, err
	}
	t := p.peek()
	if t.kind != tokUnit {
		return value{n, false}, nil
	}
	p.i++
	total, last := t.unit.of(n), t.unit
	for {
		feet := last.name == "ft"
		if feet && p.joined() {
			p.i++
		}
		next := p.peek()
		if next.kind != tokNumber && next.kind != tokFraction {
			return value{total, true}, nil
		}
		if n, err = p.mixed(feet); err != nil {
			return value{}, err
		}
		u := p.units["in"]
		if t = p.peek(); t.kind == tokUnit {
			u = t.unit
			p.i++
		} else if !feet {
			return value{}, p.fail(next.at, "%s", stray(next))
		}
		if u.system != last.system || u.size >= last.size {
			return value{}, p.fail(next.at, "%s can't follow %s: put + or - with spaces between",
				u.name, last.name)
		}
		total, last = total.Add(total, u.of(n)), u
	}
}

// joined reports whether a hyphen without spaces joins a number to what came
// before.
func (p *parser) joined() bool {
	h, n := p.peek(), p.ahead(1)
	return h.kind == tokHyphen && h.tight && n.tight &&
		(n.kind == tokNumber || n.kind == tokFraction)
}

// mixed reads a number: whole, decimal, a fraction, or a whole with a proper
// fraction after a space or hyphen.
func (p *parser) mixed(afterFeet bool) (*big.Rat, error) {
	if f, n, err := p.fraction(0); n > 0 || err != nil {
		p.i += n
		return f, err
	}
	t := p.peek()
	p.i++
	if !t.whole {
		return t.value, nil
	}
	f, n, err := p.fraction(0)
	if err != nil {
		return nil, err
	}
	if n > 0 {
		if f.Cmp(big.NewRat(1, 1)) >= 0 {
			return nil, p.fail(p.peek().at, "the fraction after a whole number must be less than one")
		}
		p.i += n
		return f.Add(f, t.value), nil
	}
	if !p.joined() {
		return t.value, nil
	}
	f, n, err = p.fraction(1)
	if err != nil {
		return nil, err
	}
	if n == 0 || f.Cmp(big.NewRat(1, 1)) >= 0 || !p.imperial(1+n, afterFeet) {
		return t.value, nil
	}
	p.i += 1 + n
	return f.Add(f, t.value), nil
}

// imperial reports whether the number that ends before the token n places on is
// read in feet or inches.
func (p *parser) imperial(n int, afterFeet bool) bool {
	if t := p.ahead(n); t.kind == tokUnit {
		return t.unit.system == Imperial
	}
	return afterFeet || p.bare.system == Imperial
}

// fraction looks n places on for a fraction, without taking it, and says how
// many tokens it has: none when there is no fraction.
func (p *parser) fraction(n int) (*big.Rat, int, error) {
	t, over, below := p.ahead(n), p.ahead(n+1), p.ahead(n+2)
	if t.kind == tokFraction {
		return new(big.Rat).Set(t.value), 1, nil
	}
	if t.kind != tokNumber || !t.whole || over.kind != tokOver || !over.tight {
		return nil, 0, nil
	}
	if below.kind == tokEnd {
		return nil, 0, p.fail(below.at, "the fraction lacks its lower number")
	}
	if below.kind != tokNumber || !below.tight || !below.whole {
		return nil, 0, nil
	}
	if below.value.Sign() == 0 {
		return nil, 0, p.fail(below.at, "the lower number of a fraction can't be zero")
	}
	return new(big.Rat).Quo(t.value, below.value), 3, nil
}

// roundRat is the whole number nearest to r, ties to even; not ok when it does not
// fit.
func roundRat(r *big.Rat) (int64, bool) {
	q, rest := new(big.Int).QuoRem(r.Num(), r.Denom(), new(big.Int))
	twice := rest.Abs(rest.Lsh(rest, 1))
	if c := twice.Cmp(r.Denom()); c > 0 || c == 0 && q.Bit(0) == 1 {
		q.Add(q, big.NewInt(int64(r.Sign())))
	}
	return q.Int64(), q.IsInt64()
}
