// Package terms is what a client's sheet says beside the design: what is included
// and what is not, and how to live with concrete.
package terms

import (
	"strings"

	"example.org/castwright/model/design"
)

// Default is what a sheet says where the job does not: what is made, what is left
// to others, and care and cautions (common practice, no source).
func Default(d design.Design) design.Terms {
	included := []string{"Form, casting, curing, grinding and sealing of the top as drawn"}
	if len(d.Sinks) > 0 || len(d.Taps) > 0 || len(d.Holes) > 0 {
		included = append(included, "Basin cut-outs, tap holes and other holes as drawn")
	}
	switch {
	case len(d.Channels) > 0 && len(d.Glass) > 0:
		included = append(included, "Resin and glass as described")
	case len(d.Channels) > 0:
		included = append(included, "Resin as described")
	case len(d.Glass) > 0:
		included = append(included, "Glass as described")
	}
	included = append(included, "One visit to measure and to take templates")
	not := []string{
		"Basin, taps and waste, and their connection by a licensed trade",
		"Cabinet, brackets, and whatever else carries the top",
		"Taking out what is there, work on walls and tiles, bead to the wall",
		"Delivery and fitting, unless stated with the price",
	}
	care := []string{
		"Cast by hand: " + vary(d) + " vary with every casting and are never exactly as pictured.",
		"Hairlines may show with time. They lie in the face and do not weaken it.",
		"The seal is what keeps stains out: wipe up oil, wine, dye and acids (lemon, vinegar, descaler) at once; no scouring, bleach or strong cleaners; renew the seal as its maker says.",
	}
	hot := "No hot pans or hair tools straight on the top: heat marks the seal."
	if len(d.Channels) > 0 {
		hot = "No hot pans or hair tools straight on the top: heat marks the seal, and resin softens and yellows."
	}
	care = append(care, hot,
		"Don't let water stand, least of all around taps and basin.",
		"Don't stand or sit on the top, and keep weight off overhangs and off the narrow rails beside a basin.",
		"Food is not to be prepared on the bare top unless the sealer's own sheet allows it.",
		"At delivery: heavy and brittle, so it is carried by enough people, on edge, never flat, and nobody stands below it. Fixing to walls, overhead work and plumbing: local code and a licensed person decide.")
	return design.Terms{Included: text(included), NotIncluded: text(not), Care: text(care)}
}

// vary is what no two castings have alike.
func vary(d design.Design) string {
	var of []string
	for _, m := range [...]struct {
		there bool
		word  string
	}{{d.Finish.Exposure != design.ExposureCream, "stone"}, {len(d.Glass) > 0, "glass"}, {len(d.Channels) > 0, "resin"}} {
		if m.there {
			of = append(of, m.word)
		}
	}
	switch n := len(of); n {
	case 0:
		return "colour, cloudiness and pinholes"
	case 1:
		return "colour, cloudiness, pinholes and the pattern of the " + of[0]
	default:
		return "colour, cloudiness, pinholes and the pattern of " + strings.Join(of[:n-1], ", ") + " and " + of[n-1]
	}
}

// Filled is terms with the program's own words wherever they say nothing.
func Filled(t design.Terms, d design.Design) design.Terms {
	own := Default(d)
	for _, w := range [...]struct{ at, own *string }{
		{&t.Included, &own.Included}, {&t.NotIncluded, &own.NotIncluded}, {&t.Care, &own.Care},
	} {
		if *w.at = text(Lines(*w.at)); *w.at == "" {
			*w.at = *w.own
		}
	}
	return t
}

// Kept is terms as a job keeps them: what is the program's own is left out, so
// that it follows the design.
func Kept(t design.Terms, d design.Design) design.Terms {
	own := Default(d)
	for _, w := range [...]struct{ at, own *string }{
		{&t.Included, &own.Included}, {&t.NotIncluded, &own.NotIncluded}, {&t.Care, &own.Care},
	} {
		if *w.at = text(Lines(*w.at)); *w.at == *w.own {
			*w.at = ""
		}
	}
	return t
}

// Lines is the lines of a text that say something.
func Lines(s string) []string {
	var out []string
	for _, line := range strings.Split(s, "\n") {
		if line = strings.TrimSpace(line); line != "" {
			out = append(out, line)
		}
	}
	return out
}

func text(lines []string) string { return strings.Join(lines, "\n") }
