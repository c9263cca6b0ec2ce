package store

import (
	"bytes"
	"strings"
	"unicode/utf8"
)

// tree is a JSON value to be laid out: a scalar's text, or an object or array.
type tree struct {
	text string
	open byte // '{' or '[', 0 for a scalar
	keys []string
	kids []*tree
}

func (t *tree) add(key string, kid *tree) {
	t.keys = append(t.keys, key)
	t.kids = append(t.kids, kid)
}

// rawTree is the tree of a parsed text, its scalars as they are written.
func rawTree(raw []byte, v value) *tree {
	switch v.kind {
	case isObject, isArray:
		t := &tree{open: raw[v.start]}
		for i, kid := range v.kids {
			name := ""
			if v.kind == isObject {
				name = v.keys[i].name
			}
			t.add(name, rawTree(raw, kid))
		}
		return t
	}
	return &tree{text: string(raw[v.start:v.end])}
}

// compact is the tree without idle space.
func (t *tree) compact() string {
	if t.open == 0 {
		return t.text
	}
	parts := make([]string, len(t.kids))
	for i, kid := range t.kids {
		parts[i] = kid.compact()
		if t.open == '{' {
			parts[i] = quote(t.keys[i]) + ":" + parts[i]
		}
	}
	return string(t.open) + strings.Join(parts, ",") + string(t.close())
}

// lineWidth is how long a line of the file may be before an object or a list
// is broken over several. A corner with its edge mostly fits.
const lineWidth = 100

// layout writes a tree as text: an object or list stands on one line where it
// fits and holds no list of objects, else with one member or item a line.
func layout(t *tree) []byte {
	var b bytes.Buffer
	t.write(&b, "", 0)
	b.WriteByte('\n')
	return b.Bytes()
}

func (t *tree) write(b *bytes.Buffer, indent string, used int) {
	if t.open == 0 {
		b.WriteString(t.text)
		return
	}
	if line, ok := t.inline(lineWidth - used); ok && indent != "" {
		b.WriteString(line)
		return
	}
	b.WriteByte(t.open)
	inner := indent + "  "
	for i, kid := range t.kids {
		if i > 0 {
			b.WriteByte(',')
		}
		b.WriteString("\n" + inner)
		lead := len(inner) + 1 // and a comma
		if t.open == '{' {
			name := quote(t.keys[i]) + ": "
			b.WriteString(name)
			lead += utf8.RuneCountInString(name)
		}
		kid.write(b, inner, lead)
	}
	if len(t.kids) > 0 {
		b.WriteString("\n" + indent)
	}
	b.WriteByte(t.close())
}

func (t *tree) close() byte {
	if t.open == '{' {
		return '}'
	}
	return ']'
}

// inline is the tree on one line, if it may stand on one and fits into room.
func (t *tree) inline(room int) (string, bool) {
	if t.open == 0 {
		return t.text, utf8.RuneCountInString(t.text) <= room
	}
	var b strings.Builder
	b.WriteByte(t.open)
	for i, kid := range t.kids {
		if t.open == '[' && kid.open == '{' {
			return "", false
		}
		if i > 0 {
			b.WriteString(", ")
		}
		if t.open == '{' {
			b.WriteString(quote(t.keys[i]) + ": ")
		}
		line, ok := kid.inline(room - b.Len()) // bytes for characters: a little strict
		if !ok {
			return "", false
		}
		b.WriteString(line)
	}
	b.WriteByte(t.close())
	return b.String(), utf8.RuneCountInString(b.String()) <= room
}

// quote writes a text as JSON. Only what must be is escaped, so that names in
// any script stay readable; bytes that are not UTF-8 become U+FFFD.
func quote(s string) string {
	const hex = "0123456789abcdef"
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range s {
		switch {
		case r == '"' || r == '\\':
			b.WriteByte('\\')
			b.WriteRune(r)
		case r == '\n':
			b.WriteString(`\n`)
		case r == '\t':
			b.WriteString(`\t`)
		case r == '\r':
			b.WriteString(`\r`)
		case r < ' ' || r == 0x7f:
			b.WriteString(`\u00`)
			b.WriteByte(hex[r>>4])
			b.WriteByte(hex[r&15])
		default:
			b.WriteRune(r)
		}
	}
	b.WriteByte('"')
	return b.String()
}
