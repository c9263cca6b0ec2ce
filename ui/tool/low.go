package tool

import (
	"sync"

	"example.org/castwright/model/design"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/units"
	"example.org/castwright/model/warn"
)

// low says that a measure is smaller than it should be. The zero value is fine.
type low struct {
	severe bool
	limit  float64 // mm, 0 for a measure that is large enough
	over   bool    // it runs over the edge of the top
}

// lowSlack is how far in millimetres a measure may pass a limit unnoticed: as in
// package warn, far below what a tape reads.
const lowSlack = 0.05

var limits = sync.OnceValue(func() map[warn.Code]warn.Limit {
	out := map[warn.Code]warn.Limit{}
	for _, l := range warn.Limits() {
		if _, ok := out[l.Code]; !ok && l.Sense == warn.AtLeast {
			out[l.Code] = l
		}
	}
	return out
})

// lowOf compares the concrete left with the least that the warnings' table has
// for it. Limits without a unit are in slab thicknesses.
func lowOf(code warn.Code, value, thickness float64) low {
	l, ok := limits()[code]
	if !ok {
		return low{}
	}
	out := low{}
	for _, step := range l.Steps {
		figure := step.Value
		if l.Unit == "" {
			figure *= thickness
		}
		if value < figure-lowSlack {
			out = low{severe: step.Severity == warn.Severe, limit: figure}
		}
	}
	return out
}

// words says what is wrong, "" for nothing.
func (l low) words(sys units.System) string {
	switch {
	case l.over:
		return "over the edge"
	case l.limit == 0:
		return ""
	}
	return "under " + units.Format(units.FromMM(l.limit), sys)
}

// nearness are the warnings about the concrete between two things.
var nearness = map[warn.Code]bool{warn.RailNarrow: true, warn.BridgeNarrow: true, warn.HoleNearEdge: true,
	warn.HoleNearCutout: true, warn.HoleNearHole: true}

// matter is what something on the top is, as far as limits go.
type matter uint8

const (
	matterOther matter = iota
	matterSink
	matterRound // a hole, tap hole or drain
	matterChannel
	matterEdge
)

func matterOf(k slab.OpeningKind) matter {
	if k == slab.OpeningSink {
		return matterSink
	}
	return matterRound
}

// matterOfPart is what a part of the solid, or one in hand, is.
func matterOfPart(s slab.Solid, id design.ID) matter {
	for _, o := range s.Openings {
		if o.Part == id {
			return matterOf(o.Kind)
		}
	}
	for _, r := range s.Recesses {
		if r.Part == id {
			return matterChannel
		}
	}
	return matterOther
}

// between is the limit for the concrete between two things.
func between(a, b matter) (warn.Code, bool) {
	if a > b {
		a, b = b, a
	}
	switch {
	case a == matterSink && b == matterEdge:
		return warn.RailNarrow, true
	case a == matterSink && b == matterSink:
		return warn.BridgeNarrow, true
	case a == matterSink && b == matterRound:
		return warn.HoleNearCutout, true
	case a == matterRound && b == matterRound:
		return warn.HoleNearHole, true
	case a == matterRound && b == matterEdge:
		return warn.HoleNearEdge, true
	case (a == matterSink || a == matterRound) && b == matterChannel:
		return warn.ChannelNearCutout, true
	case a == matterChannel && b == matterEdge:
		return warn.ChannelNearEdge, true
	}
	return "", false
}
