package draw

import (
	"fmt"
	"slices"
	"strings"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edging"
	"example.org/castwright/model/look"
	"example.org/castwright/model/report"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/units"
)

// FinishWords names a finish for the client: exposure, then polish.
func FinishWords(f design.Finish) (face, polish string) {
	switch f.Exposure {
	case design.ExposureFine:
		face = "Fine aggregate exposed"
	case design.ExposureCoarse:
		face = "Coarse aggregate exposed"
	default:
		face = "Cream concrete"
	}
	switch {
	case f.Polish >= 4:
		polish = "highly polished"
	case f.Polish == 3:
		polish = "polished"
	case f.Polish == 2:
		polish = "satin"
	default:
		polish = "flat"
	}
	return face, polish + ", " + look.Name(f.Colour)
}

// edgeGroup is all seen edges of one profile.
type edgeGroup struct {
	profile design.Profile
	sides   string // "front, left"
	length  float64
}

// seenEdges groups the seen edges of a top by profile, the longest first met.
func seenEdges(s slab.Solid) []edgeGroup {
	var out []edgeGroup
	faces := map[design.Profile]map[string]bool{}
	for _, side := range s.Sides {
		if side.Wall || len(side.Points) < 2 {
			continue
		}
		if faces[side.Profile] == nil {
			faces[side.Profile] = map[string]bool{}
			out = append(out, edgeGroup{profile: side.Profile})
		}
		for i := range out {
			if out[i].profile == side.Profile {
				out[i].length += side.Length
			}
		}
		if side.Corner < 0 {
			faces[side.Profile][edging.Facing(side.Points)] = true
		}
	}
	for i := range out {
		var names []string
		for _, n := range [...]string{"front", "back", "left", "right"} {
			if faces[out[i].profile][n] {
				names = append(names, n)
			}
		}
		if len(names) == 4 || len(out) == 1 && !hasWall(s) {
			names = []string{"all round"}
		}
		out[i].sides = strings.Join(names, ", ")
	}
	return out
}

func hasWall(s slab.Solid) bool {
	return slices.ContainsFunc(s.Sides, func(side slab.Side) bool { return side.Wall })
}

// fillWords names what fills a channel.
func fillWords(c design.Channel, sys units.System) (title, more string) {
	deep := units.Format(c.Depth, sys) + " deep"
	if !c.Fill.Resin {
		return "Open channel", deep
	}
	name := look.Name(c.Fill.Colour)
	switch o := c.Fill.Opacity.Fraction(); {
	case o < 0.2:
		name += ", clear"
	case o < 0.75:
		name += ", translucent"
	default:
		name += ", opaque"
	}
	title = "Resin"
	if len(c.Rivers) > 0 {
		title = "Resin river"
	}
	more = name + ", " + deep
	if c.Fill.Glass != nil {
		more += ", with " + look.Name(c.Fill.Glass.Colour) + " glass"
	}
	return title, more
}

// bedWords names a glass bed.
func bedWords(g design.GlassBed, sys units.System) (title, more string) {
	return "Glass", fmt.Sprintf("%s, pieces about %s, %.0f %% covered",
		look.Name(g.Colour), units.Format(g.Grain, sys), g.Coverage.Fraction()*100)
}

// SinkWords names a sink: mount, shape and how its rim lies.
func SinkWords(k design.Sink, sys units.System) string {
	shape := shapeWords[k.Shape.Kind]
	switch k.Mount {
	case design.MountOver:
		return "Drop-in sink, " + shape
	case design.MountVessel:
		return "Vessel sink, " + shape
	}
	reveal := "flush"
	if k.Reveal.Size > 0 {
		switch k.Reveal.Kind {
		case design.RevealRimShows:
			reveal = "bowl rim shows " + units.Format(k.Reveal.Size, sys)
		case design.RevealOverhang:
			reveal = "concrete overhangs " + units.Format(k.Reveal.Size, sys)
		}
	}
	return "Under-mount sink, " + shape + ", " + reveal
}

// TapWords names a set of tap holes.
func TapWords(t design.TapSet, sys units.System) string {
	across := units.Format(t.Diameter, sys)
	switch t.Pattern {
	case design.TapThree4:
		return "Three tap holes " + across + ", spread " + units.Format(4*units.Inch, sys)
	case design.TapThree8:
		return "Three tap holes " + across + ", spread " + units.Format(8*units.Inch, sys)
	case design.TapOwn:
		return fmt.Sprintf("Tap holes %s, %d of own pattern", across, len(t.Holes))
	}
	return "One tap hole " + across
}

// joined puts the words of several things in one line.
func joined[T any](list []T, words func(T) string) string {
	var out []string
	for _, t := range list {
		out = append(out, words(t))
	}
	return strings.Join(out, "; ")
}

func faceWords(f design.Finish) string {
	face, polish := FinishWords(f)
	return face + ", " + polish
}

func edgesWords(r report.Report, sys units.System) string {
	return joined(seenEdges(r.Solid), func(e edgeGroup) string {
		words := edging.ProfileWords(e.profile, sys)
		if e.sides != "" {
			words += " (" + e.sides + ")"
		}
		return words
	})
}

func channelsWords(d design.Design, sys units.System) string {
	return joined(d.Channels, func(c design.Channel) string {
		title, more := fillWords(c, sys)
		return title + ", " + more
	})
}

func bedsWords(d design.Design, sys units.System) string {
	return sentence(joined(d.Glass, func(g design.GlassBed) string {
		_, more := bedWords(g, sys)
		return more
	}))
}

func sinksWords(d design.Design, sys units.System) string {
	return joined(d.Sinks, func(k design.Sink) string {
		words := SinkWords(k, sys)
		switch {
		case k.Shape.Kind == design.ShapePath || k.Shape.Width <= 0:
			return words
		case k.Shape.Kind == design.ShapeCircle || k.Shape.Depth <= 0:
			return words + ", Ø " + units.Format(k.Shape.Width, sys)
		}
		return words + ", " + units.Format(k.Shape.Width, sys) + " × " + units.Format(k.Shape.Depth, sys)
	})
}

func tapsWords(d design.Design, sys units.System) string {
	return joined(d.Taps, func(t design.TapSet) string { return TapWords(t, sys) })
}
