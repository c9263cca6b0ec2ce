package units

import "strings"

// unit is a unit that a person may write, in whole steps of its kind.
type unit struct {
	name   string
	size   int64
	system System
}

// kind is what a text may say: which units there are, and which one a bare
// number has.
type kind struct {
	units   map[string]unit // by name, in small letters
	marks   map[rune]string // characters that stand for a name
	bare    unit
	bound   int64  // largest value, of either sign, in steps
	most    string // the same in words
	noun    string // "length"
	choice  string // the units, in words
	example string
}

// The units of length by their names, in nanometres. Sizes are exact: NIST SP 811
// (2008), App. B.8.
var lengthUnits = nameUnits(map[string]unit{
	"mm millimetre millimetres millimeter millimeters": {"mm", int64(Millimetre), Metric},
	"cm centimetre centimetres centimeter centimeters": {"cm", int64(Centimetre), Metric},
	"m metre metres meter meters":                      {"m", int64(Metre), Metric},
	"in inch inches":                                   {"in", int64(Inch), Imperial},
	"ft foot feet":                                     {"ft", int64(Foot), Imperial},
})

// The foot and inch marks, straight, curled and prime.
var lengthMarks = map[rune]string{
	'\'': "ft", '′': "ft", '’': "ft", '‘': "ft", '´': "ft",
	'"': "in", '″': "in", '”': "in", '“': "in", '„': "in", '〃': "in",
}

func lengthKind(sys System) *kind {
	k := &kind{units: lengthUnits, marks: lengthMarks, bare: lengthUnits["mm"],
		bound: int64(MaxLength), most: "100 m", noun: "length", choice: "mm, cm, m, in or ft",
		example: `647.7 or 25 1/2"`}
	if sys == Imperial {
		k.bare, k.example = lengthUnits["in"], `25 1/2" or 647.7 mm`
	}
	return k
}

// nameUnits gives each name of a list, split at spaces, its unit.
func nameUnits(lists map[string]unit) map[string]unit {
	m := map[string]unit{}
	for list, u := range lists {
		for _, name := range strings.Fields(list) {
			m[name] = u
		}
	}
	return m
}
