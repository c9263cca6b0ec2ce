// Package edging names the edges of a top and says how they are finished: by the
// side that they face, and by number where that does not tell them apart.
package edging

import (
	"math"
	"strconv"
	"strings"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/units"
)

// Facing names the side that a run of the outline, counter-clockwise, looks to:
// "front", "back", "left" or "right".
func Facing(pts []geom.Vec) string {
	out := pts[len(pts)-1].Sub(pts[0]).Left().Mul(-1)
	switch {
	case math.Abs(out.Y) >= math.Abs(out.X) && out.Y < 0:
		return "front"
	case math.Abs(out.Y) >= math.Abs(out.X):
		return "back"
	case out.X < 0:
		return "left"
	}
	return "right"
}

// Edges are the sides that are edges themselves, not cut corners, in their order.
func Edges(sides []slab.Side) []slab.Side {
	var out []slab.Side
	for _, s := range sides {
		if s.Corner < 0 && len(s.Points) > 1 {
			out = append(out, s)
		}
	}
	return out
}

// Finish is what edges that are alike have in common.
type Finish struct {
	Wall    bool
	Profile design.Profile // of one that is seen
}

// Of is how an edge is finished.
func Of(s slab.Side) Finish {
	if s.Wall {
		return Finish{Wall: true}
	}
	return Finish{Profile: s.Profile}
}

// Words says a finish within a sentence: "half round 20 mm".
func (f Finish) Words(sys units.System) string {
	if f.Wall {
		return "at the wall, not finished"
	}
	w := ProfileWords(f.Profile, sys)
	return strings.ToLower(w[:1]) + w[1:]
}

// ProfileWords names an edge's profile, with its size where it has one.
func ProfileWords(p design.Profile, sys units.System) string {
	size := func(name string) string {
		if p.Size > 0 {
			return name + " " + units.Format(p.Size, sys)
		}
		return name
	}
	switch p.Kind {
	case design.ProfileEased:
		return size("Eased")
	case design.ProfileRounded:
		return size("Rounded")
	case design.ProfileBevelled:
		return size("Bevelled")
	case design.ProfileHalfRound:
		return size("Half round")
	case design.ProfileFullRound:
		return "Full round"
	case design.ProfileRough:
		return "Broken stone"
	}
	return "Square"
}

// Most is the most edges that are numbered.
const Most = 24

// Numbers numbers the edges of a top, by their nodes, where two of different
// finishes face the same side. It is nil where the side is name enough, and where
// there are too many to be numbered.
func Numbers(sides []slab.Side) map[int]int {
	met := map[string]Finish{}
	numbers := map[int]int{}
	alike := true
	for _, s := range Edges(sides) {
		if _, ok := numbers[s.Node]; !ok {
			numbers[s.Node] = len(numbers) + 1
		}
		name := Facing(s.Points)
		if f, ok := met[name]; ok && f != Of(s) {
			alike = false
		}
		met[name] = Of(s)
	}
	if alike || len(numbers) > Most {
		return nil
	}
	return numbers
}

// Same reports whether two tops have the same edges, facing the same sides in the
// same order, however they are finished.
func Same(a, b []slab.Side) bool {
	p, q := Edges(a), Edges(b)
	if len(p) != len(q) {
		return false
	}
	for i := range p {
		if p[i].Node != q[i].Node || Facing(p[i].Points) != Facing(q[i].Points) {
			return false
		}
	}
	return true
}

// Common numbers the edges of two tops that have the same ones, where either of them
// is numbered; nil else.
func Common(a, b []slab.Side) map[int]int {
	if !Same(a, b) {
		return nil
	}
	if n := Numbers(b); n != nil {
		return n
	}
	return Numbers(a)
}

// BySide is names of sides in a fixed order, each once with its number: "front (2)".
func BySide(names []string) []string {
	var out []string
	for _, n := range [...]string{"front", "left", "right", "back"} {
		k := 0
		for _, name := range names {
			if name == n {
				k++
			}
		}
		switch {
		case k > 1:
			out = append(out, n+" ("+strconv.Itoa(k)+")")
		case k == 1:
			out = append(out, n)
		}
	}
	return out
}

// And joins words: "front, left and right".
func And(words []string) string {
	if n := len(words); n > 1 {
		return strings.Join(words[:n-1], ", ") + " and " + words[n-1]
	}
	return strings.Join(words, "")
}
