package scene

import (
	"sync"

	"golang.org/x/text/unicode/bidi"
)

// mirrorPairs are the characters that stand for each other in text that runs from right
// to left, in pairs: those of BidiMirroring.txt of Unicode 14.0, as Perl's Unicode::UCD
// gives them, of which the fonts have both.
const mirrorPairs = "()<>[]{}«»᚛᚜‹›⁅⁆⁽⁾₍₎∈∋∉∌∊∍∼∽≃⋍≅≌≒≓≔≕≤≥≦≧≨≩≪≫≮≯≰≱≲≳≴≵≶≷≸≹≺≻≼≽≾≿⊀⊁⊂⊃⊄⊅⊆⊇⊈⊉⊊⊋⊏⊐⊑⊒⊢⊣⊰⊱⊲⊳⊴⊵⊶⊷⋉⋊⋋⋌⋐⋑⋖⋗⋘⋙⋚⋛⋜⋝⋞⋟⋠⋡" +
	"⋢⋣⋤⋥⋦⋧⋨⋩⋪⋫⋬⋭⋰⋱⋲⋺⋳⋻⋴⋼⋶⋽⋷⋾⌈⌉⌊⌋❨❩❪❫❬❭❮❯❰❱❲❳❴❵⟅⟆⟦⟧⟨⟩⟪⟫⦃⦄⧏⧐⧑⧒⧔⧕⩽⩾⩿⪀⪁⪂⪃⪄⪅⪆⪇⪈⪉⪊⪋⪌⪍⪎⪏⪐⪑⪒⪓⪔⪕⪖⪗⪘⪙⪚⪛⪜⪝⪞⪟⪠⪯⪰⪱⪲⪳⪴⪵⪶⪷⪸⪹⪺⫹⫺⸢⸣⸤⸥"

var mirrors = sync.OnceValue(func() map[rune]rune {
	out := map[rune]rune{}
	pairs := []rune(mirrorPairs)
	for i := 0; i+1 < len(pairs); i += 2 {
		out[pairs[i]], out[pairs[i+1]] = pairs[i+1], pairs[i]
	}
	return out
})

// mirrored is what stands for a character where text runs from right to left.
func mirrored(r rune) rune {
	if m, ok := mirrors()[r]; ok {
		return m
	}
	if p, _ := bidi.LookupRune(r); p.IsBracket() { // also those that no font has
		return []rune(bidi.ReverseString(string(r)))[0]
	}
	return r
}
