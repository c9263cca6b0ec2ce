package report

import (
	"bufio"
	"io"
	"strings"
	"unicode"
	"unicode/utf8"
)

// width is the characters of a line: those that A4 and Letter hold at ten to the
// inch between ordinary margins.
const width = 78

// page writes lines of monospaced text that are no longer than width, except for
// words that are longer themselves.
type page struct{ w *bufio.Writer }

func newPage(w io.Writer) page { return page{bufio.NewWriter(w)} }

func (p page) line(s string) { p.w.WriteString(strings.TrimRight(s, " ") + "\n") }

// heading starts a section.
func (p page) heading(s string) {
	p.line("")
	p.line(strings.ToUpper(s))
	p.line(strings.Repeat("-", width))
}

// noBreak is a space at which words does not break a line.
const noBreak = "\u00a0"

// unbroken keeps words from breaking s over two lines.
func unbroken(s string) string { return strings.ReplaceAll(s, " ", noBreak) }

// words writes text broken at spaces, its first line after first and the others
// after rest.
func (p page) words(first, rest, text string) {
	line, count, empty := first, utf8.RuneCountInString(first), true
	for _, word := range strings.FieldsFunc(plain(text), func(r rune) bool { return r == ' ' }) {
		word = strings.ReplaceAll(word, noBreak, " ")
		n := utf8.RuneCountInString(word)
		if !empty && count+1+n > width {
			p.line(line)
			line, count, empty = rest, utf8.RuneCountInString(rest), true
		}
		if !empty {
			line += " "
			count++
		}
		line += word
		count += n
		empty = false
	}
	p.line(line)
}

// Columns of a row: where values start at the latest, and where they end.
const (
	labelWidth = 30
	valueWidth = 14
)

// row writes a label, a value that ends in the same column for all rows, and a
// remark, on a line of its own where it does not fit.
func (p page) row(label, value, remark string) {
	space := labelWidth + valueWidth - utf8.RuneCountInString(label) - utf8.RuneCountInString(value)
	s := label + strings.Repeat(" ", max(1, space)) + value
	if remark == "" {
		p.line(s)
		return
	}
	if utf8.RuneCountInString(s)+2+utf8.RuneCountInString(remark) > width {
		p.line(s)
		s = pad("", labelWidth)
	}
	p.line(s + "  " + remark)
}

// pad fills s with spaces to n characters.
func pad(s string, n int) string {
	return s + strings.Repeat(" ", max(0, n-utf8.RuneCountInString(s)))
}

// plain makes spaces of control characters, so that no name can move the cursor
// or break a line, and marks of bytes that are not text.
func plain(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case unicode.IsControl(r) || r == '\u2028' || r == '\u2029':
			return ' '
		case '\u202a' <= r && r <= '\u202e' || '\u2066' <= r && r <= '\u2069':
			return -1 // turns the direction of what follows
		}
		return r
	}, strings.ToValidUTF8(s, "\uFFFD"))
}
