package store

import (
	"bytes"
	"encoding/json"
	"fmt"
	"strconv"
	"strings"
	"unicode/utf8"
)

// Bounds on what a file may ask of us besides its size.
const (
	maxDepth  = 64
	maxValues = 2_000_000
	maxDigits = 400 // characters of one number
	maxPower  = 308 // of ten, in a number's exponent
	minPower  = -350
)

// kind is a kind of JSON value.
type kind uint8

const (
	isNull kind = iota
	isBool
	isNumber
	isString
	isArray
	isObject
)

func (k kind) String() string {
	return [...]string{"null", "true or false", "a number", "text", "a list", "an object"}[k]
}

// value is a JSON value and where it stands in the file.
type value struct {
	kind       kind
	start, end int32   // bytes of the file
	text       string  // of a string, decoded; of a number or bool, as written
	keys       []field // of an object, as they come
	kids       []value // of an array or an object
}

// field is a member's key, decoded, and where it stands.
type field struct {
	name  string
	start int32
}

// find is the member with this key, nil when there is none.
func (v *value) find(name string) *value {
	for i := range v.keys {
		if v.keys[i].name == name {
			return &v.kids[i]
		}
	}
	return nil
}

// parser reads JSON text as RFC 8259 has it: no comments, no trailing commas,
// keys once only. It keeps the path to where it is, for messages.
type parser struct {
	data   []byte
	at     int
	values int
	path   []step
}

// step is one step of a path: into a member, or an item of a list when key is
// empty and index is not negative.
type step struct {
	key   string
	index int
}

// parse reads the whole text of a file.
func parse(data []byte) (value, *SyntaxError) {
	p := parser{data: data}
	if len(p.data) > MaxBytes {
		return value{}, p.fail(0, fmt.Sprintf("the file is larger than the %d MiB that a job may have: "+
			"it is not a job, or not one that was made here", MaxBytes>>20))
	}
	if !utf8.Valid(p.data) {
		i := 0
		for r, n := utf8.DecodeRune(p.data); r != utf8.RuneError || n > 1; {
			i += n
			r, n = utf8.DecodeRune(p.data[i:])
		}
		return value{}, p.fail(i, "this is not UTF-8 text: save the file as UTF-8")
	}
	p.space()
	if p.at == len(p.data) {
		return value{}, p.fail(p.at, "the file is empty: open another, or an older copy")
	}
	v, err := p.value()
	if err != nil {
		return value{}, err
	}
	p.space()
	if p.at != len(p.data) {
		return value{}, p.fail(p.at, "the job ends here but the file goes on: take the rest out")
	}
	return v, nil
}

func (p *parser) value() (value, *SyntaxError) {
	if p.values++; p.values > maxValues {
		return value{}, p.fail(p.at, fmt.Sprintf("the file has more than %d values: "+
			"it is not a job that was made here", maxValues))
	}
	if p.at == len(p.data) {
		return value{}, p.cut()
	}
	start := p.at
	var v value
	var err *SyntaxError
	switch c := p.data[p.at]; {
	case c == '{':
		v, err = p.object()
	case c == '[':
		v, err = p.array()
	case c == '"':
		v.kind = isString
		v.text, err = p.string()
	case c == '-' || c >= '0' && c <= '9':
		v.kind = isNumber
		v.text, err = p.number()
	default:
		v, err = p.literal()
	}
	v.start, v.end = int32(start), int32(p.at)
	return v, err
}

func (p *parser) object() (value, *SyntaxError) {
	v := value{kind: isObject}
	if len(p.path) >= maxDepth {
		return v, p.fail(p.at, fmt.Sprintf("the file is nested more than %d deep: "+
			"it is not a job that was made here", maxDepth))
	}
	seen := map[string]int{}
	p.at++
	p.space()
	if p.take('}') {
		return v, nil
	}
	for {
		start := p.at
		if p.at == len(p.data) {
			return v, p.cut()
		}
		if p.data[p.at] != '"' {
			return v, p.fail(p.at, "a key in double quotes must stand here"+p.found())
		}
		name, err := p.string()
		if err != nil {
			return v, err
		}
		p.path = append(p.path, step{key: name, index: -1})
		if first, twice := seen[name]; twice {
			line, _ := place(p.data, first)
			return v, p.fail(start, fmt.Sprintf("this key stands twice, first in line %d: keep one", line))
		}
		seen[name] = start
		p.space()
		if !p.take(':') {
			return v, p.fail(p.at, "a colon must stand between key and value"+p.found())
		}
		p.space()
		kid, err := p.value()
		if err != nil {
			return v, err
		}
		p.path = p.path[:len(p.path)-1]
		v.keys = append(v.keys, field{name, int32(start)})
		v.kids = append(v.kids, kid)
		end := p.at
		p.space()
		if p.take('}') {
			return v, nil
		}
		if !p.take(',') {
			return v, p.fail(end, "a comma or a closing brace must stand here"+p.found())
		}
		p.space()
	}
}

func (p *parser) array() (value, *SyntaxError) {
	v := value{kind: isArray}
	if len(p.path) >= maxDepth {
		return v, p.fail(p.at, fmt.Sprintf("the file is nested more than %d deep: "+
			"it is not a job that was made here", maxDepth))
	}
	p.at++
	p.space()
	if p.take(']') {
		return v, nil
	}
	for {
		p.path = append(p.path, step{index: len(v.kids)})
		kid, err := p.value()
		if err != nil {
			return v, err
		}
		p.path = p.path[:len(p.path)-1]
		v.kids = append(v.kids, kid)
		end := p.at
		p.space()
		if p.take(']') {
			return v, nil
		}
		if !p.take(',') {
			return v, p.fail(end, "a comma or a closing bracket must stand here"+p.found())
		}
		p.space()
	}
}

// string reads text in quotes and decodes it. Halves of surrogate pairs that
// stand alone become U+FFFD.
func (p *parser) string() (string, *SyntaxError) {
	start := p.at
	for p.at++; ; p.at++ {
		if p.at >= len(p.data) {
			return "", p.fail(start, "this text has no closing quote: the file is cut short, "+
				"or a quote within the text lacks its backslash")
		}
		c := p.data[p.at]
		if c == '\\' {
			p.at++
		} else if c < ' ' {
			return "", p.fail(p.at, "text can't run over the end of a line or hold control "+
				"characters: write \\n or close the quote")
		} else if c == '"' {
			break
		}
	}
	p.at++
	raw := p.data[start:p.at]
	if bytes.IndexByte(raw, '\\') < 0 {
		return string(raw[1 : len(raw)-1]), nil
	}
	var s string
	if err := json.Unmarshal(raw, &s); err != nil {
		return "", p.fail(start, "this text has a backslash that JSON does not know: write \\\\ for one")
	}
	return s, nil
}

func (p *parser) number() (string, *SyntaxError) {
	start := p.at
	for p.at < len(p.data) && strings.IndexByte("+-.0123456789eE", p.data[p.at]) >= 0 {
		p.at++
	}
	if p.at-start > maxDigits {
		return "", p.fail(start, fmt.Sprintf("this number has more than %d characters: shorten it", maxDigits))
	}
	text := string(p.data[start:p.at])
	if !json.Valid([]byte(text)) {
		return "", p.fail(start, fmt.Sprintf("%s is not a number as JSON writes it: write it like 38.1", text))
	}
	if i := strings.IndexAny(text, "eE"); i >= 0 {
		power, err := strconv.Atoi(text[i+1:])
		if err != nil || power > maxPower || power < minPower {
			return "", p.fail(start, fmt.Sprintf("%s is beyond what a number can be: write it in plain digits", text))
		}
	}
	return text, nil
}

func (p *parser) literal() (value, *SyntaxError) {
	for word, k := range map[string]kind{"true": isBool, "false": isBool, "null": isNull} {
		if bytes.HasPrefix(p.data[p.at:], []byte(word)) {
			p.at += len(word)
			return value{kind: k, text: word}, nil
		}
	}
	return value{}, p.fail(p.at, "a value must stand here: text in double quotes, a number, "+
		"true or false, a list or an object"+p.found())
}

func (p *parser) space() {
	for p.at < len(p.data) && strings.IndexByte(" \t\r\n", p.data[p.at]) >= 0 {
		p.at++
	}
}

func (p *parser) take(c byte) bool {
	if p.at < len(p.data) && p.data[p.at] == c {
		p.at++
		return true
	}
	return false
}

// found says what stands where something else was due.
func (p *parser) found() string {
	if p.at >= len(p.data) {
		return ", but the file ends: it may have been cut short"
	}
	r, _ := utf8.DecodeRune(p.data[p.at:])
	return fmt.Sprintf(", not %q", r)
}

func (p *parser) cut() *SyntaxError {
	return p.fail(p.at, "the file ends in the middle: it may have been cut short")
}

func (p *parser) fail(at int, detail string) *SyntaxError {
	line, col := place(p.data, at)
	return &SyntaxError{Line: line, Col: col, Key: pathText(p.path), Detail: detail}
}

func pathText(steps []step) string {
	var b strings.Builder
	for _, s := range steps {
		switch {
		case s.index >= 0:
			fmt.Fprintf(&b, "[%d]", s.index)
		case b.Len() > 0:
			b.WriteString("." + s.key)
		default:
			b.WriteString(s.key)
		}
	}
	return clip(b.String())
}

// clip keeps a text from a file short enough for a message.
func clip(s string) string {
	const most = 120
	if utf8.RuneCountInString(s) <= most {
		return s
	}
	return string([]rune(s)[:most]) + "..."
}

// place is the line and column of a byte of the file, both from 1.
func place(data []byte, at int) (line, col int) {
	before := data[:min(at, len(data))]
	line = 1 + bytes.Count(before, []byte("\n"))
	start := bytes.LastIndexByte(before, '\n') + 1
	return line, 1 + utf8.RuneCount(before[start:])
}
