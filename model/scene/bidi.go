package scene

import (
	"slices"

	"golang.org/x/text/unicode/bidi"
)

// ordered puts a line into the order in which it is seen, by the Unicode Bidirectional
// Algorithm (Unicode Standard Annex 9) at the base level 0 of lines that run from left
// to right, as all lines of a sheet do, or 1. Marks stay behind their letters (rule L3),
// and what opens to one side opens to the other in what runs from right to left (rule L4).
//
// Embeddings, overrides and isolates are not known: their characters are taken out
// before. The marks U+200E, U+200F and U+061C are. golang.org/x/text knows the classes
// of characters, but its paragraphs are runs without levels: a number in a phrase from
// right to left would stand on the wrong side of it.
func ordered(line []rune, base uint8) []rune {
	level := levels(line, base)
	out := make([]rune, len(line))
	for i, r := range line {
		if level[i]&1 == 1 {
			r = mirrored(r)
		}
		out[i] = r
	}
	// Rule L2: from the highest level down, what is at it or above is turned round.
	highest := base
	for _, l := range level {
		highest = max(highest, l)
	}
	at := make([]int, len(line))
	for i := range at {
		at[i] = i
	}
	for l := highest; l > 0; l-- {
		stretches(len(at), func(i int) bool { return level[at[i]] >= l }, func(from, to int) { slices.Reverse(at[from:to]) })
	}
	seen := make([]rune, len(line))
	for i, k := range at {
		seen[i] = out[k]
	}
	// Rule L3.
	for i := 0; i < len(at); i++ {
		from := i
		for i < len(at)-1 && level[at[i]]&1 == 1 && isMark(line[at[i]]) && at[i+1] == at[i]-1 {
			i++
		}
		slices.Reverse(seen[from : i+1])
	}
	return seen
}

// stretches calls do for each stretch of places, of n, for which in holds.
func stretches(n int, in func(int) bool, do func(from, to int)) {
	for i := 0; i < n; i++ {
		if !in(i) {
			continue
		}
		from := i
		for i < n && in(i) {
			i++
		}
		do(from, i)
	}
}

func classOf(r rune) bidi.Class {
	p, _ := bidi.LookupRune(r)
	return p.Class()
}

func isMark(r rune) bool { return classOf(r) == bidi.NSM }

// directed is how the levels of a line are resolved: one run of one level, since it
// has no embeddings.
type directed struct {
	line  []rune
	first []bidi.Class // of the characters
	class []bidi.Class // as far as they are resolved
	base  bidi.Class   // L or R: of the line, and of what is before and behind it
}

// levels is the level of each character of a line.
func levels(line []rune, base uint8) []uint8 {
	d := directed{line: line, first: make([]bidi.Class, len(line)), base: bidi.L}
	if base&1 == 1 {
		d.base = bidi.R
	}
	for i, r := range line {
		d.first[i] = classOf(r)
	}
	d.class = slices.Clone(d.first)
	d.weak()
	d.brackets()
	d.neutral()
	out := make([]uint8, len(line))
	for i, c := range d.class { // rules I1 and I2
		switch {
		case d.base == bidi.L && c == bidi.R, d.base == bidi.R && c != bidi.R:
			out[i] = base + 1
		case d.base == bidi.L && c != bidi.L:
			out[i] = base + 2
		default:
			out[i] = base
		}
	}
	// Rule L1: separators, and blanks before them and at the end, are of the line.
	blank := true
	for i := len(line) - 1; i >= 0; i-- {
		switch d.first[i] {
		case bidi.S, bidi.B:
			blank = true
		case bidi.WS, bidi.BN:
		default:
			blank = false
		}
		if blank {
			out[i] = base
		}
	}
	return out
}

// weak resolves marks and numbers (rules W1 to W7).
func (d *directed) weak() {
	c := d.class
	before := d.base // the class before
	for i := range c {
		if c[i] == bidi.NSM || c[i] == bidi.BN { // W1
			c[i] = before
		}
		before = c[i]
	}
	strong := d.base // the last strong class
	for i := range c {
		switch c[i] {
		case bidi.L, bidi.R, bidi.AL:
			strong = c[i]
		case bidi.EN: // W2
			if strong == bidi.AL {
				c[i] = bidi.AN
			}
		}
	}
	for i := range c { // W3
		if c[i] == bidi.AL {
			c[i] = bidi.R
		}
	}
	for i := 1; i < len(c)-1; i++ { // W4
		a, b := c[i-1], c[i+1]
		if a == b && (a == bidi.EN && (c[i] == bidi.ES || c[i] == bidi.CS) || a == bidi.AN && c[i] == bidi.CS) {
			c[i] = a
		}
	}
	stretches(len(c), func(i int) bool { return c[i] == bidi.ET }, func(from, to int) { // W5
		if from > 0 && c[from-1] == bidi.EN || to < len(c) && c[to] == bidi.EN {
			for i := from; i < to; i++ {
				c[i] = bidi.EN
			}
		}
	})
	strong = d.base
	for i := range c {
		switch c[i] {
		case bidi.ES, bidi.ET, bidi.CS: // W6
			c[i] = bidi.ON
		case bidi.L, bidi.R:
			strong = c[i]
		case bidi.EN: // W7
			if strong == bidi.L {
				c[i] = bidi.L
			}
		}
	}
}

// way is the direction that a resolved class gives to what is beside it, ON for none;
// numbers count as from right to left.
func way(c bidi.Class) bidi.Class {
	switch c {
	case bidi.L:
		return bidi.L
	case bidi.R, bidi.EN, bidi.AN:
		return bidi.R
	}
	return bidi.ON
}

// mostOpen is how many brackets may be open at once before no more are paired (BD16).
const mostOpen = 63

// pairs are the places of brackets that belong together, by that of the opening one.
func (d *directed) pairs() [][2]int {
	var out [][2]int
	type open struct {
		closing rune
		at      int
	}
	var stack []open
	for i, r := range d.line {
		p, _ := bidi.LookupRune(r)
		if d.class[i] != bidi.ON || !p.IsBracket() {
			continue
		}
		if p.IsOpeningBracket() {
			if len(stack) == mostOpen {
				return nil // as the standard says since version 8
			}
			stack = append(stack, open{canonical(mirrored(r)), i})
			continue
		}
		for k := len(stack) - 1; k >= 0; k-- {
			if stack[k].closing == canonical(r) {
				out = append(out, [2]int{stack[k].at, i})
				stack = stack[:k]
				break
			}
		}
	}
	slices.SortFunc(out, func(a, b [2]int) int { return a[0] - b[0] })
	return out
}

// canonical is a bracket, angle brackets that are the same as one.
func canonical(r rune) rune {
	switch r {
	case 0x2329:
		return 0x3008
	case 0x232a:
		return 0x3009
	}
	return r
}

// brackets gives pairs of brackets the direction of what they hold, or of what is before
// them (rule N0).
func (d *directed) brackets() {
	other := bidi.R
	if d.base == bidi.R {
		other = bidi.L
	}
	for _, p := range d.pairs() {
		to := bidi.ON
		for i := p[0] + 1; i < p[1] && to != d.base; i++ {
			if w := way(d.class[i]); w != bidi.ON {
				to = w
			}
		}
		if to == bidi.ON {
			continue
		}
		if to == other {
			before := d.base
			for i := p[0] - 1; i >= 0; i-- {
				if w := way(d.class[i]); w != bidi.ON {
					before = w
					break
				}
			}
			to = before
		}
		for _, at := range p {
			d.class[at] = to
			for i := at + 1; i < len(d.line) && (d.first[i] == bidi.NSM || d.first[i] == bidi.BN); i++ {
				d.class[i] = to
			}
		}
	}
}

// neutral gives what has no direction that of what is on both its sides, or that of the
// line (rules N1 and N2).
func (d *directed) neutral() {
	at := func(i int) bidi.Class {
		if i < 0 || i >= len(d.class) {
			return d.base
		}
		return way(d.class[i])
	}
	stretches(len(d.class), func(i int) bool { return way(d.class[i]) == bidi.ON }, func(from, to int) {
		c := d.base
		if a := at(from - 1); a == at(to) {
			c = a
		}
		for i := from; i < to; i++ {
			d.class[i] = c
		}
	})
}
