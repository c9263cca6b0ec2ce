package units

import (
	"math/big"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Bounds of what a person types, so that reading it takes bounded time and
// memory.
const (
	maxInput  = 200 // characters
	maxDigits = 30  // of one number
	maxDepth  = 24  // of brackets and signs
)

// tokenKind says what a token is.
type tokenKind uint8

const (
	tokEnd      tokenKind = iota
	tokNumber             // digits, perhaps with a decimal point or comma
	tokFraction           // a fraction in one character, such as ½
	tokPlus
	tokHyphen // "-" or a dash: joins a mixed number, or takes away
	tokMinus  // U+2212: only ever takes away
	tokTimes
	tokOver
	tokOpen
	tokClose
	tokUnit
)

// token is one word of what was typed.
type token struct {
	kind  tokenKind
	at    int  // character it starts at, counted from 1
	tight bool // nothing stands between it and the token before
	text  string
	value *big.Rat // of a number or fraction
	whole bool     // the number has no decimal point
	unit  unit
}

// vulgar is the fractions that have a character of their own.
var vulgar = map[rune][2]int64{
	'¼': {1, 4}, '½': {1, 2}, '¾': {3, 4}, '⅐': {1, 7}, '⅑': {1, 9}, '⅒': {1, 10},
	'⅓': {1, 3}, '⅔': {2, 3}, '⅕': {1, 5}, '⅖': {2, 5}, '⅗': {3, 5}, '⅘': {4, 5},
	'⅙': {1, 6}, '⅚': {5, 6}, '⅛': {1, 8}, '⅜': {3, 8}, '⅝': {5, 8}, '⅞': {7, 8},
}

// signs is the characters that are a token by themselves.
var signs = map[rune]tokenKind{
	'+': tokPlus, '-': tokHyphen, '‐': tokHyphen, '‑': tokHyphen, '‒': tokHyphen, '–': tokHyphen,
	'−': tokMinus, '*': tokTimes, '×': tokTimes, '·': tokTimes, '⋅': tokTimes,
	'/': tokOver, '⁄': tokOver, '∕': tokOver, '÷': tokOver, '(': tokOpen, ')': tokClose,
}

// scan cuts the text into tokens; the last one is tokEnd.
func (p *parser) scan(s string) error {
	if !utf8.ValidString(s) {
		return p.fail(1, "this is not readable text")
	}
	r := []rune(s)
	if len(r) > maxInput {
		return p.fail(maxInput+1, "this is longer than %d characters", maxInput)
	}
	tight := false
	for i := 0; i < len(r); {
		c := r[i]
		if unicode.IsSpace(c) {
			tight = false
			i++
			continue
		}
		t := token{at: i + 1, tight: tight}
		n, err := p.next(&t, r[i:])
		if err != nil {
			return err
		}
		t.text = string(r[i : i+n])
		p.tokens = append(p.tokens, t)
		i += n
		tight = true
	}
	p.tokens = append(p.tokens, token{at: len(r) + 1})
	return nil
}

// next reads one token off the front of r and says how many characters it took.
func (p *parser) next(t *token, r []rune) (int, error) {
	c := r[0]
	if kind, ok := signs[c]; ok {
		t.kind = kind
		return 1, nil
	}
	if f, ok := vulgar[c]; ok {
		t.kind, t.value = tokFraction, big.NewRat(f[0], f[1])
		return 1, nil
	}
	if name, ok := p.marks[c]; ok {
		t.kind, t.unit = tokUnit, p.units[name]
		if name == "ft" && len(r) > 1 && p.marks[r[1]] == "ft" { // two foot marks are an inch mark
			t.unit = p.units["in"]
			return 2, nil
		}
		return 1, nil
	}
	if digit(c) || (c == '.' || c == ',') && len(r) > 1 && digit(r[1]) {
		return p.number(t, r)
	}
	if unicode.IsLetter(c) {
		return p.word(t, r)
	}
	return 0, p.fail(t.at, "%q can't be read here", c)
}

func digit(c rune) bool { return '0' <= c && c <= '9' }

// number reads digits with at most one decimal point or comma. The characters
// are looked at one by one, because big.Rat's own reader would take exponents
// of any size, other bases and underscores.
func (p *parser) number(t *token, r []rune) (int, error) {
	value, scale := new(big.Int), new(big.Int).SetInt64(1)
	ten := big.NewInt(10)
	var point rune
	n, before, after := 0, 0, 0
	for ; n < len(r); n++ {
		c := r[n]
		switch {
		case digit(c):
			value.Add(value.Mul(value, ten), big.NewInt(int64(c-'0')))
			if point != 0 {
				scale.Mul(scale, ten)
				after++
			} else {
				before++
			}
			if before+after > maxDigits {
				return 0, p.fail(t.at, "this number has more than %d digits", maxDigits)
			}
			continue
		case c == '.' || c == ',':
			if point != 0 {
				return 0, p.fail(t.at+n, "this number has two decimal points; leave out marks between thousands")
			}
			point = c
			continue
		}
		break
	}
	if point == ',' && after == 3 && before <= 3 && r[0] != '0' && r[0] != ',' {
		return 0, p.fail(t.at, "%[1]s could be %[2]s or %[3]s; write one of them",
			string(r[:n]), string(r[:before])+"."+string(r[before+1:n]),
			string(r[:before])+string(r[before+1:n]))
	}
	t.kind, t.whole = tokNumber, point == 0
	t.value = new(big.Rat).SetFrac(value, scale)
	return n, nil
}

// word reads a unit's name, with the full stop of an abbreviation.
func (p *parser) word(t *token, r []rune) (int, error) {
	n := 0
	for n < len(r) && unicode.IsLetter(r[n]) {
		n++
	}
	u, ok := p.units[strings.ToLower(string(r[:n]))]
	if !ok {
		switch name := string(r[:n]); name {
		case "x", "X":
			return 0, p.fail(t.at, "write * for times, not %s", name)
		default:
			return 0, p.fail(t.at, "%q is not a unit; use %s", name, p.choice)
		}
	}
	t.kind, t.unit = tokUnit, u
	if n < len(r) && r[n] == '.' && (n+1 == len(r) || !digit(r[n+1])) {
		n++
	}
	return n, nil
}
