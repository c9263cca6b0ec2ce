package tool

import (
	"math"
	"strings"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
)

// partName is a part in the trade's words: "sink", or "sink 2" where its ID
// tells several apart.
func partName(d design.Design, id design.ID) string {
	kind, count := "", 0
	for _, s := range d.Sinks {
		if s.ID == id {
			kind, count = "sink", len(d.Sinks)
		}
	}
	for _, s := range d.Taps {
		if s.ID == id {
			kind, count = "tap set", len(d.Taps)
		}
	}
	for _, s := range d.Holes {
		if s.ID == id {
			kind, count = holeName(s.Kind), len(d.Holes)
		}
	}
	for _, s := range d.Channels {
		if s.ID == id {
			kind, count = "channel", len(d.Channels)
		}
	}
	for _, s := range d.Glass {
		if s.ID == id {
			kind, count = "glass bed", len(d.Glass)
		}
	}
	for _, s := range d.Supports {
		if s.ID == id {
			kind, count = supportName(s.Kind), len(d.Supports)
		}
	}
	if kind == "" {
		return "top"
	}
	if _, n, ok := strings.Cut(string(id), "-"); ok && count > 1 {
		return kind + " " + n
	}
	return kind
}

func holeName(k design.HoleKind) string {
	switch k {
	case design.HoleDrain:
		return "drain hole"
	case design.HoleSoap:
		return "soap hole"
	case design.HoleCable:
		return "cable hole"
	}
	return "hole"
}

func supportName(k design.SupportKind) string {
	switch k {
	case design.SupportWall:
		return "wall bearing"
	case design.SupportGable:
		return "gable"
	case design.SupportRail:
		return "rail"
	case design.SupportBracket:
		return "bracket"
	case design.SupportLeg:
		return "leg"
	}
	return "support"
}

// sideName says which way a side of the top looks, from its outward normal.
func sideName(outward geom.Vec) string {
	if math.Abs(outward.X) > math.Abs(outward.Y) {
		if outward.X > 0 {
			return "right"
		}
		return "left"
	}
	if outward.Y > 0 {
		return "back"
	}
	return "front"
}

// edgeName is an edge of a chain in words, "front edge".
func edgeName(nodes []design.Node, i int) string {
	a, b := edgeEnds(nodes, i)
	return sideName(outward(a, b)) + " edge"
}

// list joins words as people do: "a, b and c".
func list(words []string) string {
	switch n := len(words); n {
	case 0:
		return ""
	case 1:
		return words[0]
	default:
		return strings.Join(words[:n-1], ", ") + " and " + words[n-1]
	}
}

// capital is s with its first letter in upper case.
func capital(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}
