package tool

import (
	"strings"

	"example.org/castwright/model/design"
	"example.org/castwright/ui/words"
)

// partName is a part in the middle of a sentence: "sink", "sink 2".
func partName(d design.Design, id design.ID) string { return small(words.Part(d, id)) }

// edgeName is an edge of a chain in the middle of a sentence: "front edge".
func edgeName(nodes []design.Node, i int) string {
	return small(words.Edge(design.Outline{Nodes: nodes}, i))
}

// cornerName is a corner of a chain in the middle of a sentence.
func cornerName(nodes []design.Node, i int) string {
	return small(words.Corner(design.Outline{Nodes: nodes}, i))
}

// capital is s with its first letter in upper case, small in lower case.
func capital(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

func small(s string) string {
	if s == "" {
		return s
	}
	return strings.ToLower(s[:1]) + s[1:]
}
