package scene

import (
	"slices"
	"strings"
	"sync"

	"codeberg.org/go-fonts/dejavu/dejavusanscondensed"
	"codeberg.org/go-fonts/dejavu/dejavusanscondensedbold"
	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	"golang.org/x/text/unicode/bidi"
)

// Middle is how far below the middle of a line its baseline lies, in ems: half
// the cap height of the Go fonts.
const Middle = 0.36

// Face is one of the fonts that texts are set in: the Go fonts, and DejaVu Sans
// Condensed for characters that they lack.
type Face uint8

// The faces.
const (
	FacePlain Face = iota
	FaceBold
	FaceOtherPlain
	FaceOtherBold
	faces
)

// lettering is the parsed fonts and the glyphs met so far.
type lettering struct {
	fonts  [faces]*sfnt.Font
	perEm  [faces]float64
	mu     sync.Mutex
	buf    sfnt.Buffer
	glyphs map[glyphKey]glyphValue
}

type glyphKey struct {
	r    rune
	bold bool
}

type glyphValue struct {
	face    Face
	index   sfnt.GlyphIndex
	advance float64 // ems
}

var letters = sync.OnceValue(func() *lettering {
	l := &lettering{glyphs: map[glyphKey]glyphValue{}}
	for i, ttf := range [][]byte{goregular.TTF, gobold.TTF, dejavusanscondensed.TTF, dejavusanscondensedbold.TTF} {
		f, err := sfnt.Parse(ttf)
		if err != nil {
			panic("scene: embedded font: " + err.Error())
		}
		l.fonts[i], l.perEm[i] = f, float64(f.UnitsPerEm())
	}
	return l
})

// Font is the parsed font of a face. It may be read from several goroutines,
// each with its own buffer.
func (f Face) Font() *sfnt.Font { return letters().fonts[f] }

// maxGlyphs bounds the glyphs that are remembered.
const maxGlyphs = 8192

// glyph finds the glyph of a character; what no face has becomes a box.
func (l *lettering) glyph(r rune, bold bool) glyphValue {
	key := glyphKey{r, bold}
	l.mu.Lock()
	defer l.mu.Unlock()
	if g, ok := l.glyphs[key]; ok {
		return g
	}
	first, second := FacePlain, FaceOtherPlain
	if bold {
		first, second = FaceBold, FaceOtherBold
	}
	g := l.find(r, first)
	if g.index == 0 {
		g = l.find(r, second)
	}
	if g.index == 0 {
		g = l.find('□', second)
	}
	if len(l.glyphs) < maxGlyphs {
		l.glyphs[key] = g
	}
	return g
}

func (l *lettering) find(r rune, f Face) glyphValue {
	i, err := l.fonts[f].GlyphIndex(&l.buf, r)
	if err != nil || i == 0 {
		return glyphValue{face: f}
	}
	a, err := l.fonts[f].GlyphAdvance(&l.buf, i, fixed.Int26_6(l.fonts[f].UnitsPerEm())<<6, font.HintingNone)
	if err != nil {
		return glyphValue{face: f}
	}
	return glyphValue{f, i, float64(a) / 64 / l.perEm[f]}
}

// Glyph is one glyph of a set line.
type Glyph struct {
	Face  Face
	Index sfnt.GlyphIndex
	X     float64 // of its origin from the start of the line, ems
}

// maxText bounds the characters of one line that are set.
const maxText = 2000

// Set sets a line of text: its glyphs from left to right as they are seen, and
// its width in ems. There is no kerning, so every writer gets the same widths.
// Control characters become blanks; right-to-left stretches are put into the
// order in which they are seen.
func Set(text string, bold bool) ([]Glyph, float64) {
	l := letters()
	var out []Glyph
	x, n := 0.0, 0
	for _, r := range Seen(text) {
		if n++; n > maxText {
			break
		}
		g := l.glyph(r, bold)
		out = append(out, Glyph{g.face, g.index, x})
		x += g.advance
	}
	return out, x
}

// Width is the width of a line of text in page units.
func (t Text) Width() float64 {
	_, w := Set(t.Text, t.Bold)
	return w * t.Size
}

// Fitted is text cut, with an ellipsis, so that it is at most width page units
// wide at this size.
func Fitted(text string, size float64, bold bool, width float64) string {
	if _, w := Set(text, bold); w*size <= width {
		return text
	}
	runes := []rune(text)
	if len(runes) > maxText {
		runes = runes[:maxText]
	}
	lo, hi := 0, len(runes) // the longest start that fits
	for lo < hi {
		mid := (lo + hi + 1) / 2
		if _, w := Set(strings.TrimRight(string(runes[:mid]), " ")+"…", bold); w*size <= width {
			lo = mid
		} else {
			hi = mid - 1
		}
	}
	if lo == 0 {
		return ""
	}
	return strings.TrimRight(string(runes[:lo]), " ") + "…"
}

// Seen makes text safe to set, in the order in which it is seen: Arabic letters
// joined, characters that no face has as boxes, one for an emoji of several
// characters, control characters as blanks, and without what joins characters or
// turns the direction of text.
func Seen(text string) string {
	if simple(text) {
		return text
	}
	return inOrder(clean(joined(strings.ToValidUTF8(text, "□"))))
}

// Read makes text safe to be read by a program that orders and joins it itself: as
// [Seen], but in the order of reading and with the letters as they were typed.
func Read(text string) string {
	if simple(text) {
		return text
	}
	return clean(strings.ToValidUTF8(text, "□"))
}

func simple(text string) bool {
	return strings.IndexFunc(text, func(r rune) bool { return r < ' ' || r >= 0x7f }) < 0
}

func clean(text string) string {
	after := rune(0) // the character before
	return strings.Map(func(r rune) rune {
		before := after
		after = r
		switch {
		case r > 0xffff && before == joiner, 0x1f3fb <= r && r <= 0x1f3ff:
			return -1 // the second part of an emoji, or the tone of its skin
		case 0x1f1e6 <= r && r <= 0x1f1ff && 0x1f1e6 <= before && before <= 0x1f1ff:
			after = 0
			return -1 // the second letter of a flag
		case r > 0xffff:
			return '□'
		case r == 0x200c || r == joiner || 0xfe00 <= r && r <= 0xfe0f:
			return -1 // they shape what stands beside them, and are seen by nobody
		case 0x202a <= r && r <= 0x202e || 0x2066 <= r && r <= 0x2069 || r == 0xfeff:
			return -1 // they order text that is none of ours, and are seen by nobody
		case r < ' ' || r >= 0x7f && r < 0xa0 || r == 0x2028 || r == 0x2029 || r >= 0xfffe:
			return ' '
		}
		return r
	}, text)
}

// maxOrdered bounds the characters of a line that are put into order.
const maxOrdered = 4 * maxText

// inOrder is text in the order in which it is seen in a line that runs from left to
// right, without the marks that helped to find it.
func inOrder(text string) string {
	line := []rune(text)
	line = line[:min(len(line), maxOrdered)]
	if slices.ContainsFunc(line, func(r rune) bool {
		if r < 0x590 { // the first of Hebrew
			return false
		}
		c := classOf(r)
		return c == bidi.R || c == bidi.AL || c == bidi.AN
	}) {
		line = ordered(line, 0)
		text = string(line)
	}
	return strings.Map(func(r rune) rune {
		if isDirection(r) {
			return -1
		}
		return r
	}, text)
}

// isDirection reports whether a character is a mark that has a direction alone and is
// seen by nobody.
func isDirection(r rune) bool { return r == 0x200e || r == 0x200f || r == 0x061c }

// Unseen is the characters of a text that no face has, each once, in their order:
// they are set as boxes.
func Unseen(text string) []string {
	l := letters()
	l.mu.Lock()
	defer l.mu.Unlock()
	var out []string
	met := map[rune]bool{}
	for _, r := range strings.ToValidUTF8(text, "□") {
		if met[r] || r == '□' || r < ' ' || Seen(string(r)) == "" {
			continue
		}
		met[r] = true
		if r > 0xffff || l.find(r, FacePlain).index == 0 && l.find(r, FaceOtherPlain).index == 0 {
			out = append(out, string(r))
		}
	}
	return out
}
