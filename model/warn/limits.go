package warn

import "example.org/castwright/model/lift"

// The codes of the warnings.
const (
	OverhangLong       Code = "overhang-long"
	SpanLong           Code = "span-long"
	OffBalance         Code = "off-balance"
	SupportsMissing    Code = "supports-missing"
	RailNarrow         Code = "rail-narrow"
	BridgeNarrow       Code = "bridge-narrow"
	HoleNearEdge       Code = "hole-near-edge"
	HoleNearCutout     Code = "hole-near-cutout"
	HoleNearHole       Code = "hole-near-hole"
	HoleOverBowl       Code = "hole-over-bowl"
	TapSetback         Code = "tap-setback"
	CoverThin          Code = "cover-thin"
	ChannelNearCutout  Code = "channel-near-cutout"
	ChannelNearEdge    Code = "channel-near-edge"
	InsideCornerSharp  Code = "inside-corner-sharp"
	CutoutCornerSharp  Code = "cutout-corner-sharp"
	GlassThin          Code = "glass-thin"
	GlassThick         Code = "glass-thick"
	LiftHeavy          Code = "lift-heavy"
	CarryFlat          Code = "carry-flat"
	CutoutLeaves       Code = "cutout-leaves"
	CutoutOutside      Code = "cutout-outside"
	CutoutsOverlap     Code = "cutouts-overlap"
	HoleInCutout       Code = "hole-in-cutout"
	ChannelLeaves      Code = "channel-leaves"
	ChannelMeetsCutout Code = "channel-meets-cutout"
	OpenEndDam         Code = "open-end-dam"
	PourDeep           Code = "pour-deep"
	SlabThin           Code = "slab-thin"
	SteelCover         Code = "steel-cover"
	DoorTight          Code = "door-tight"
	StairTight         Code = "stair-tight"
	TurnTight          Code = "turn-tight"
	MixMissing         Code = "mix-missing"
)

// Sense says on which side of its figure a limit is kept.
type Sense uint8

// The senses.
const (
	AtLeast Sense = iota // the value must not fall below the figure
	AtMost               // the value must not exceed the figure
	Never                // the thing itself is the warning; there is no figure
)

func (s Sense) String() string {
	return [...]string{"at least", "at most", "never"}[s]
}

// Status says how far a limit can be trusted.
type Status uint8

// The ranks of a source.
const (
	Published Status = iota // a standard, handbook or agency document
	Memory                  // such a document, quoted from memory
	Practice                // what makers do; no source
	Given                   // what the job itself states, or what follows from geometry
)

func (s Status) String() string {
	return [...]string{"published", "published, figure from memory",
		"common practice, no source", "stated for this job"}[s]
}

// Step is a figure and how serious it is to be on the wrong side of it.
type Step struct {
	Severity Severity
	Value    float64 // in the limit's Unit
}

// Limit is one row of the table of limits.
type Limit struct {
	Code   Code
	What   string // what is compared with the figures, in words
	Sense  Sense
	Unit   string // "mm", "MPa", "kg"; "" for a plain ratio
	Steps  []Step // mildest first
	Source string
	Status Status
}

// String names who sets the limit, as a warning's Source.
func (l Limit) String() string {
	switch {
	case l.Source == "":
		return l.Status.String()
	case l.Status == Published, l.Status == Given:
		return l.Source
	case l.Status == Memory:
		return l.Source + " (from memory)"
	}
	return l.Source + "; " + l.Status.String()
}

// near is how far in millimetres a length may pass a figure unnoticed: five
// times the flattening of curves, far below what a tape reads.
const near = 0.05

// judge gives the most serious step that value breaks by more than slack, the
// figures taken times scale.
func (l Limit) judge(value, scale, slack float64) (Step, bool) {
	for i := len(l.Steps) - 1; i >= 0; i-- {
		f := l.Steps[i].Value * scale
		if l.Sense == AtLeast && value < f-slack || l.Sense == AtMost && value > f+slack {
			return Step{l.Steps[i].Severity, f}, true
		}
	}
	return Step{}, false
}

const inch = 25.4 // mm, NIST SP 811 App. B.8

// The limits. A step from caution to severe that the source does not make is
// the program's own: half of the figure, unless the row says otherwise.
var (
	// Overhang and span: how the rows work together stands at strip.go.
	stoneOverhangThin = Limit{OverhangLong,
		"overhang past the bearing, 3/4 in (2 cm) thick; between the two thicknesses in " +
			"proportion, below in proportion to nothing, above as at 1-1/4 in",
		AtMost, "mm", []Step{{Caution, 6 * inch}}, stoneManual, Published}
	stoneOverhangThick = Limit{OverhangLong,
		"overhang past the bearing, 1-1/4 in (3 cm) thick or more",
		AtMost, "mm", []Step{{Caution, 10 * inch}}, stoneManual, Published}
	stoneOverhangShare = Limit{OverhangLong,
		"overhang as a share of the top's width in the same direction",
		AtMost, "", []Step{{Caution, 1.0 / 3}}, stoneManual, Published}
	stoneSpanThin = Limit{SpanLong,
		"unsupported span, 3/4 in (2 cm) thick; other thicknesses as for overhangs",
		AtMost, "mm", []Step{{Caution, 24 * inch}}, stoneManual, Published}
	stoneSpanThick = Limit{SpanLong,
		"unsupported span, 1-1/4 in (3 cm) thick or more",
		AtMost, "mm", []Step{{Caution, 36 * inch}}, stoneManual, Published}
	stripUsable = Limit{SpanLong,
		"bending stress, as a multiple of the root of the cylinder strength in psi, of a 12 in " +
			"strip under its weight and a 300 lb person: 0.60 x 5",
		AtMost, "", []Step{{Note, phiPlain * plainFlexure}},
		"ACI 318-19 14.5.2.1 and Table 21.2.1, plain concrete; 4000 psi assumed", Memory}
	stripRupture = Limit{SpanLong,
		"the same stress against the modulus of rupture",
		AtMost, "", []Step{{Caution, ruptureFlexure}},
		"ACI 318-19 19.2.3.1, modulus of rupture; 4000 psi assumed", Published}
	limitBalance = Limit{OffBalance,
		"distance of the centre of gravity beyond the outermost bearings",
		AtMost, "mm", []Step{{Severe, 0}}, "statics: a body tips when its weight falls outside its base", Given}
	limitSupports = Limit{SupportsMissing,
		"a top without bearings", Never, "", []Step{{Note, 0}}, "", Practice}

	limitRail = Limit{RailNarrow,
		"concrete between a sink cut-out and the edge of the top: 3 in wanted, 2 in least",
		AtLeast, "mm", []Step{{Caution, 3 * inch}, {Severe, 2 * inch}}, "", Practice}
	limitBridge = Limit{BridgeNarrow,
		"concrete between two cut-outs: as a rail",
		AtLeast, "mm", []Step{{Caution, 3 * inch}, {Severe, 2 * inch}}, "", Practice}
	limitHoleEdge = Limit{HoleNearEdge,
		"concrete between a hole and the edge of the top, in slab thicknesses",
		AtLeast, "", []Step{{Caution, 1}, {Severe, 0.5}}, "", Practice}
	limitHoleCutout = Limit{HoleNearCutout,
		"concrete between a hole and a cut-out, in slab thicknesses",
		AtLeast, "", []Step{{Caution, 1}, {Severe, 0.5}}, "", Practice}
	limitHoleHole = Limit{HoleNearHole,
		"concrete between two holes, in slab thicknesses",
		AtLeast, "", []Step{{Caution, 1}, {Severe, 0.5}}, "", Practice}
	limitHoleBowl = Limit{HoleOverBowl,
		"clear space between a hole and the bowl or its rim, for the nut below",
		AtLeast, "mm", []Step{{Caution, 0.5 * inch}, {Severe, 0}}, "", Practice}
	limitSetback = Limit{TapSetback,
		"set-back of the tap line from the back edge: 2 in (50 mm) least",
		AtLeast, "mm", []Step{{Note, 50}}, "", Practice}
	limitSetbackFar = Limit{TapSetback,
		"set-back of the tap line from the back edge: 2-1/2 in (64 mm) most",
		AtMost, "mm", []Step{{Note, 64}}, "", Practice}

	limitCover = Limit{CoverThin,
		"concrete under a channel: 3/4 in wanted",
		AtLeast, "mm", []Step{{Caution, 0.75 * inch}}, "", Practice}
	limitCoverShare = Limit{CoverThin,
		"concrete under a channel as a share of the slab: never less than half",
		AtLeast, "", []Step{{Severe, 0.5}}, "", Practice}
	limitChannelCutout = Limit{ChannelNearCutout,
		"concrete between a channel's bank and a cut-out or hole, in slab thicknesses",
		AtLeast, "", []Step{{Caution, 1}}, "", Practice}
	limitChannelEdge = Limit{ChannelNearEdge,
		"concrete between a channel's bank and the edge of the top, in slab thicknesses",
		AtLeast, "", []Step{{Caution, 1}}, "", Practice}
	limitInsideCorner = Limit{InsideCornerSharp,
		"radius of an inside corner of the outline that turns by more than 10 degrees",
		AtLeast, "mm", []Step{{Caution, 0.5 * inch}}, "", Practice}
	limitCutoutCorner = Limit{CutoutCornerSharp,
		"radius of a corner of a sink cut-out",
		AtLeast, "mm", []Step{{Caution, 0.375 * inch}}, "", Practice}

	limitGlass = Limit{GlassThin,
		"size of the glass, or depth of its layer, as a multiple of the grind: at 1 nothing is " +
			"left, below 2 less than half a piece holds",
		AtLeast, "", []Step{{Caution, 2}, {Severe, 1}}, "", Practice}
	limitGlassThick = Limit{GlassThick,
		"size of the glass in a channel's resin against the channel's depth",
		AtMost, "", []Step{{Caution, 1}}, "", Practice}

	limitLift = Limit{LiftHeavy,
		"each person's share of the weight as a multiple of the recommended weight limit of one " +
			"person at a slab (posture: common practice, no source): above 3 most workers are at risk",
		AtMost, "", []Step{{Caution, 1}, {Severe, 3}}, lift.Source, Published}
	limitTeam = Limit{LiftHeavy,
		"weight against what a team can lift: two people 2/3, three or more 1/2 of their sum",
		AtMost, "", []Step{{Note, 1}}, "UK HSE L23, team handling", Memory}
	limitCarry = Limit{CarryFlat,
		"bending stress, as a multiple of the root of the cylinder strength in psi, of the top " +
			"held flat by its two ends, across its weakest section",
		AtMost, "", []Step{{Note, phiPlain * plainFlexure}, {Caution, ruptureFlexure}},
		"ACI 318-19 14.5.2.1 and 19.2.3.1, plain concrete; 4000 psi assumed", Memory}

	limitCutoutLeaves = Limit{CutoutLeaves,
		"a cut-out or hole across the edge of the top", Never, "", []Step{{Severe, 0}}, "", Practice}
	limitCutoutOutside = Limit{CutoutOutside,
		"a cut-out or hole outside the top", Never, "", []Step{{Severe, 0}}, "", Practice}
	limitOverlap = Limit{CutoutsOverlap,
		"two cut-outs that run into each other", Never, "", []Step{{Severe, 0}}, "", Practice}
	limitHoleIn = Limit{HoleInCutout,
		"a hole that lies in a cut-out or runs into it", Never, "", []Step{{Severe, 0}}, "", Practice}
	limitChannelLeaves = Limit{ChannelLeaves,
		"a channel with a closed end, or none open, that leaves the top", Never, "",
		[]Step{{Caution, 0}}, "", Practice}
	limitChannelMeets = Limit{ChannelMeetsCutout,
		"a channel that runs into a cut-out or hole", Never, "", []Step{{Caution, 0}}, "", Practice}
	limitOpenEnd = Limit{OpenEndDam,
		"an open channel end needs a dam", Never, "mm", []Step{{Note, 0}}, "", Practice}
	limitPour = Limit{PourDeep,
		"depth of the fill against the resin's largest depth of one pour",
		AtMost, "", []Step{{Note, 1}}, "the resin's own data sheet", Given}

	limitThin = Limit{SlabThin,
		"thickness: 1-1/2 in usual, 1 in and less only with fibre, 3/4 in least",
		AtLeast, "mm", []Step{{Note, 38}, {Caution, 1 * inch}, {Severe, 0.75 * inch}}, "", Practice}
	limitSteel = Limit{SteelCover,
		"thickness that holds one layer of No. 3 bars with 5/8 in of cover both ways",
		AtLeast, "mm", []Step{{Note, (2*0.625 + 0.375) * inch}},
		"ACI 318-19 Table 20.5.1.3.3, precast, indoors; ASTM A615 Table 1, No. 3 bar", Memory}

	limitStated = Limit{MixMissing,
		"a mix without its yield or densities", Never, "", []Step{{Caution, 0}}, "the mix's own data sheet", Given}

	limitDoor = Limit{DoorTight,
		"the piece's width on edge, or flat, against the door",
		AtMost, "", []Step{{Severe, 1}}, "the site as stated for this job", Given}
	limitStair = Limit{StairTight,
		"the piece's width against the stair or passage: wider goes only on edge",
		AtMost, "", []Step{{Note, 1}}, "the site as stated for this job", Given}
	limitTurn = Limit{TurnTight,
		"the piece's length against the turn, and against the longest that swings round a right " +
			"angle between the passage and the landing",
		AtMost, "", []Step{{Note, 1}, {Caution, 1}, {Severe, 1}},
		"the site as stated for this job; the ladder problem of plane geometry", Given}
)

const stoneManual = "Dimension Stone Design Manual, stone tops (guidance; none is written for concrete)"

// Limits is the table of limits, for showing how the warnings are reckoned.
// The caller may change what it gets.
func Limits() []Limit {
	rows := []Limit{
		stoneOverhangThin, stoneOverhangThick, stoneOverhangShare,
		stoneSpanThin, stoneSpanThick, stripUsable, stripRupture,
		limitBalance, limitSupports,
		limitRail, limitBridge, limitHoleEdge, limitHoleCutout, limitHoleHole, limitHoleBowl,
		limitSetback, limitSetbackFar,
		limitCover, limitCoverShare, limitChannelCutout, limitChannelEdge,
		limitInsideCorner, limitCutoutCorner, limitGlass, limitGlassThick,
		limitLift, limitTeam, limitCarry,
		limitCutoutLeaves, limitCutoutOutside, limitOverlap, limitHoleIn,
		limitChannelLeaves, limitChannelMeets, limitOpenEnd, limitPour,
		limitThin, limitSteel, limitStated, limitDoor, limitStair, limitTurn,
	}
	for i := range rows {
		rows[i].Steps = append([]Step(nil), rows[i].Steps...)
	}
	return rows
}
