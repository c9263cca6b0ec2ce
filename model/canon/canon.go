// Package canon writes JSON in its canonical form by RFC 8785 (JSON
// Canonicalization Scheme): no white space, members in the order of their names'
// UTF-16 code units, numbers as ECMAScript prints them. Equal values give equal
// bytes, so that they can be hashed.
package canon

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"unicode/utf16"
	"unicode/utf8"
)

// maxDepth bounds the nesting.
const maxDepth = 1000

// JSON gives the canonical form of one JSON text. It refuses what RFC 8785 has
// no form for: numbers beyond float64, text that is not UTF-8.
func JSON(text []byte) ([]byte, error) {
	if !utf8.Valid(text) {
		return nil, errors.New("the text is not UTF-8")
	}
	d := json.NewDecoder(bytes.NewReader(text))
	d.UseNumber()
	var v any
	if err := d.Decode(&v); err != nil {
		return nil, fmt.Errorf("no JSON: %w", err)
	}
	if _, err := d.Token(); err != io.EOF {
		return nil, errors.New("there is more behind the JSON text")
	}
	return value(nil, v, 0)
}

func value(out []byte, v any, depth int) ([]byte, error) {
	if depth > maxDepth {
		return nil, errors.New("nested too deeply")
	}
	var err error
	switch v := v.(type) {
	case nil:
		return append(out, "null"...), nil
	case bool:
		return strconv.AppendBool(out, v), nil
	case string:
		return text(out, v), nil
	case json.Number:
		x, err := strconv.ParseFloat(string(v), 64)
		if err != nil {
			return nil, fmt.Errorf("the number %s has no canonical form", v)
		}
		return number(out, x)
	case []any:
		out = append(out, '[')
		for i, item := range v {
			if i > 0 {
				out = append(out, ',')
			}
			if out, err = value(out, item, depth+1); err != nil {
				return nil, err
			}
		}
		return append(out, ']'), nil
	case map[string]any:
		return members(out, v, depth)
	}
	return nil, fmt.Errorf("%T is no JSON value", v)
}

// members writes an object, its members sorted by UTF-16 code units (RFC 8785,
// 3.2.3).
func members(out []byte, v map[string]any, depth int) ([]byte, error) {
	type member struct {
		name  string
		units []uint16
	}
	list := make([]member, 0, len(v))
	for name := range v {
		list = append(list, member{name, utf16.Encode([]rune(name))})
	}
	slices.SortFunc(list, func(a, b member) int { return slices.Compare(a.units, b.units) })
	out = append(out, '{')
	for i, m := range list {
		if i > 0 {
			out = append(out, ',')
		}
		out = append(text(out, m.name), ':')
		var err error
		if out, err = value(out, v[m.name], depth+1); err != nil {
			return nil, err
		}
	}
	return append(out, '}'), nil
}

// text writes a string with the few escapes of RFC 8785, 3.2.2.2.
func text(out []byte, s string) []byte {
	out = append(out, '"')
	for i := range len(s) {
		switch c := s[i]; c {
		case '"', '\\':
			out = append(out, '\\', c)
		case '\b':
			out = append(out, `\b`...)
		case '\t':
			out = append(out, `\t`...)
		case '\n':
			out = append(out, `\n`...)
		case '\f':
			out = append(out, `\f`...)
		case '\r':
			out = append(out, `\r`...)
		default:
			if c < ' ' {
				out = fmt.Appendf(out, `\u%04x`, c)
			} else {
				out = append(out, c)
			}
		}
	}
	return append(out, '"')
}

// number writes a float64 as ECMAScript's Number.prototype.toString does (RFC
// 8785, 3.2.2.3): plain from 1e-6 to below 1e21, else with an exponent.
func number(out []byte, x float64) ([]byte, error) {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return nil, errors.New("a number that is not finite has no canonical form")
	}
	if x == 0 {
		return append(out, '0'), nil // also for -0
	}
	if size := math.Abs(x); size >= 1e-6 && size < 1e21 {
		return strconv.AppendFloat(out, x, 'f', -1, 64), nil
	}
	s := strconv.AppendFloat(nil, x, 'e', -1, 64)
	// Go writes at least two digits of exponent, ECMAScript as few as it needs.
	if n := len(s); s[n-2] == '0' && (s[n-3] == '+' || s[n-3] == '-') {
		s = append(s[:n-2], s[n-1])
	}
	return append(out, s...), nil
}
