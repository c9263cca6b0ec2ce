package scene

import (
	"slices"
	"testing"

	"golang.org/x/image/font/sfnt"
	"golang.org/x/text/unicode/norm"
)

// The shapes of Arabic letters, as code points of the Unicode charts "Arabic
// Presentation Forms-A" and "-B" and by the joining rules R1 to R7 and the ligature
// rules of The Unicode Standard, chapter 9.2.
func TestJoined(t *testing.T) {
	for _, tt := range []struct {
		name     string
		in, want []rune
	}{
		// meem within a word after a start, hah within, meem within, dal at the end
		{"muhammad", []rune{0x645, 0x62d, 0x645, 0x62f}, []rune{0xfee3, 0xfea4, 0xfee4, 0xfeaa}},
		// alef joins nothing after it: beh stands alone
		{"bab", []rune{0x628, 0x627, 0x628}, []rune{0xfe91, 0xfe8e, 0xfe8f}},
		// lam and alef are one shape, alone and joined to a letter before
		{"la", []rune{0x644, 0x627}, []rune{0xfefb}},
		{"bla", []rune{0x628, 0x644, 0x627}, []rune{0xfe91, 0xfefc}},
		{"lam alef with hamza above", []rune{0x644, 0x623}, []rune{0xfef7}},
		// a decomposed alef with hamza is composed first
		{"lam alef and hamza", []rune{0x644, 0x627, 0x654}, []rune{0xfef7}},
		// hamza joins nothing
		{"maa", []rune{0x645, 0x627, 0x621}, []rune{0xfee3, 0xfe8e, 0xfe80}},
		// marks are passed over
		{"kataba", []rune{0x643, 0x64e, 0x62a, 0x64e, 0x628}, []rune{0xfedb, 0x64e, 0xfe98, 0x64e, 0xfe90}},
		// tatweel joins
		{"with tatweel", []rune{0x628, 0x640, 0x628}, []rune{0xfe91, 0x640, 0xfe90}},
		// a non-joiner parts, as in Persian
		{"non-joiner", []rune{0x628, 0x200c, 0x628}, []rune{0xfe8f, 0x200c, 0xfe8f}},
		// Persian: peh, and farsi yeh at start and end
		{"peh yeh", []rune{0x67e, 0x6cc}, []rune{0xfb58, 0xfbfd}},
		{"yeh start", []rune{0x6cc, 0x6a9}, []rune{0xfbfe, 0xfb8f}},
		{"two words", []rune{0x628, ' ', 0x628}, []rune{0xfe8f, ' ', 0xfe8f}},
		{"latin", []rune("Kiln ½"), []rune("Kiln ½")},
	} {
		if got := []rune(joined(string(tt.in))); !slices.Equal(got, tt.want) {
			t.Errorf("%s: %x, want %x", tt.name, got, tt.want)
		}
	}
}

// Every shape of a letter that the fonts have says the same as the letter, and the
// fonts have those of the letters of Arabic and Persian.
func TestShapes(t *testing.T) {
	letters, ligatures := shapes()
	if len(letters) < 50 || len(ligatures) != 4 {
		t.Errorf("%d letters, %d with lam", len(letters), len(ligatures))
	}
	var buf sfnt.Buffer
	for base, f := range letters {
		for _, r := range f {
			if r == 0 {
				continue
			}
			if got := norm.NFKC.String(string(r)); got != string(base) {
				t.Errorf("%x says %q, not %q", r, got, string(base))
			}
			main := base >= 0x621 && base <= 0x64a || slices.Contains([]rune{0x67e, 0x686, 0x698, 0x6a9, 0x6af, 0x6cc}, base)
			if i, err := FaceOtherPlain.Font().GlyphIndex(&buf, r); main && (err != nil || i == 0) {
				t.Errorf("the font lacks %x, a shape of %x", r, base)
			}
		}
	}
}

// An emoji of several characters is one box, and the names of what has no shape.
func TestUnseen(t *testing.T) {
	for in, want := range map[string]string{
		"\U0001f469\u200d\U0001f3a8": "□", "\U0001f44d\U0001f3fd": "□", "\U0001f1e9\U0001f1ea!": "□!", "\u2764\ufe0f": "\u2764",
		"a\U0001f600\U0001f600": "a□□",
	} {
		if got := Seen(in); got != want {
			t.Errorf("%+q is seen as %q, want %q", in, got, want)
		}
	}
	if got := Unseen("Anna 田中 Ελένη שלום محمد 田 \U0001f3a8 ½\u200d"); !slices.Equal(got, []string{"田", "中", "\U0001f3a8"}) {
		t.Errorf("unseen are %q", got)
	}
	if got := Unseen("Kiln Lane □ 7 ½ in – Žofie"); got != nil {
		t.Errorf("unseen are %q", got)
	}
}

// The order in which mixed lines are seen, by rules P2 to L2 of Unicode Standard Annex
// 9 with a base direction from left to right; worked out by hand. Hebrew stands for
// right-to-left, since its letters have one shape.
func TestOrdered(t *testing.T) {
	for in, want := range map[string]string{
		"אבג · Option A":  "גבא · Option A",
		"Option A · אבג":  "Option A · גבא",
		"אבג 25 דהו":      "והד 25 גבא",
		"אב, x, גד":       "בא, x, דג",
		"אבג 12":          "12 גבא",
		"Kiln 7 אב":       "Kiln 7 בא",
		"plain":           "plain",
		"אב 12.5 mm":      "12.5 בא mm",
		"Tel. 0761-12 אב": "Tel. 0761-12 בא",
		"אב (Haifa) · 7":  "בא (Haifa) · 7",
		// A mark of direction keeps the number behind the name, and is not seen.
		"אב · 26 May": "26 · בא May", "אב\u200e · 26 May": "בא · 26 May", "\u200e\u061c": "",
	} {
		if got := Seen(in); got != want {
			t.Errorf("%q is seen as %q, want %q", in, got, want)
		}
	}
}
