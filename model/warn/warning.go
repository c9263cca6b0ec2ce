// Package warn compares a top with what the trade, published standards and
// handbooks allow. Limits stand in one table with their sources (limits.go);
// each rule is a file named for what it watches.
package warn

import (
	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
)

// Code is a warning's stable name, such as "rail-narrow".
type Code string

// Severity ranks warnings.
type Severity uint8

// The severities, worst last.
const (
	Note Severity = iota
	Caution
	Severe
)

func (s Severity) String() string {
	return [...]string{"note", "caution", "severe"}[s]
}

// Warning is one risk, with its place and what to do about it.
type Warning struct {
	Code     Code
	Severity Severity
	Part     design.ID // the part to select, "" for the top
	At       geom.Vec  // on the drawing, mm
	Value    float64   // in Unit
	Limit    float64   // in Unit
	Unit     string    // "mm", "kg", ...
	Title    string    // a few words: "Rail in front of the sink is narrow"
	Advice   string    // one sentence on what to do
	Source   string    // who sets the limit
}
