package scene

import (
	"strings"
	"sync"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// forms are the shapes of an Arabic letter: alone, at the end of a word, at its
// start and within it; 0 where a letter has none. A letter with the first two joins
// the letter before it alone.
type forms [4]rune

const (
	alone = iota
	atEnd
	atStart
	within
)

func (f forms) joinsBefore() bool { return f[atEnd] != 0 }
func (f forms) joinsAfter() bool  { return f[atStart] != 0 }

// The characters of Arabic that shaping asks for by name.
const (
	lam     = 0x0644
	tatweel = 0x0640 // joins on both sides and has one shape
	joiner  = 0x200d
)

// shapes are the letters that have presentation forms, and those of lam with an
// alef. Unicode (chapter 9.2, blocks FB50 to FDFF and FE70 to FEFF) keeps the forms
// of a letter next to each other, alone, end, start, within, each with the letter as
// its compatibility decomposition; so the table is read from there.
var shapes = sync.OnceValues(func() (letters map[rune]forms, ligatures map[rune]forms) {
	letters, ligatures = map[rune]forms{}, map[rune]forms{}
	for _, block := range [...][2]rune{{0xfb50, 0xfbb1}, {0xfbd3, 0xfbe7}, {0xfbfc, 0xfbff}, {0xfe80, 0xfefc}} {
		for first := block[0]; first <= block[1]; {
			of := norm.NFKC.String(string(first))
			last := first
			for last < block[1] && last-first < within && norm.NFKC.String(string(last+1)) == of {
				last++
			}
			var f forms
			for r := first; r <= last; r++ {
				f[r-first] = r
			}
			switch base := []rune(of); {
			case len(base) == 1:
				if _, ok := letters[base[0]]; !ok {
					letters[base[0]] = f
				}
			case len(base) == 2 && base[0] == lam:
				ligatures[base[1]] = f
			}
			first = last + 1
		}
	}
	return letters, ligatures
})

// joined gives Arabic letters the shapes that they have beside each other, in the
// order of reading: a font without a shaper then shows them joined. Text without
// Arabic is as it was.
func joined(text string) string {
	if !strings.ContainsFunc(text, func(r rune) bool { return r >= 0x0600 && r <= 0x06ff }) {
		return text
	}
	letters, ligatures := shapes()
	in := []rune(norm.NFC.String(text))
	out := make([]rune, 0, len(in))
	// beside is the next character from i on, going by d, that is no mark.
	beside := func(i, d int) (rune, int) {
		for i += d; i >= 0 && i < len(in); i += d {
			if !unicode.Is(unicode.Mn, in[i]) {
				return in[i], i
			}
		}
		return 0, -1
	}
	reaches := func(r rune) bool { return r == tatweel || r == joiner || letters[r].joinsAfter() }
	takes := func(r rune) bool { return r == tatweel || r == joiner || letters[r].joinsBefore() }
	for i := 0; i < len(in); i++ {
		r := in[i]
		f, ok := letters[r]
		if !ok {
			out = append(out, r)
			continue
		}
		before, _ := beside(i, -1)
		after, at := beside(i, 1)
		shape := alone
		if reaches(before) && f.joinsBefore() {
			shape = atEnd
		}
		if r == lam && at == i+1 {
			if l, ok := ligatures[after]; ok {
				out = append(out, l[shape])
				i = at
				continue
			}
		}
		if takes(after) && f.joinsAfter() {
			shape += atStart // alone to start, end to within
		}
		out = append(out, f[shape])
	}
	return string(out)
}
