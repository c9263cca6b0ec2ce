package units

import "strings"

// unit is a unit of length that a person may write.
type unit struct {
	name   string
	size   Length
	system System
}

// The units by their names, in small letters. Sizes are exact: NIST SP 811
// (2008), App. B.8.
var unitNames = nameUnits([]struct {
	unit
	names string
}{
	{unit{"mm", Millimetre, Metric}, "mm millimetre millimetres millimeter millimeters"},
	{unit{"cm", Centimetre, Metric}, "cm centimetre centimetres centimeter centimeters"},
	{unit{"m", Metre, Metric}, "m metre metres meter meters"},
	{unit{"in", Inch, Imperial}, "in inch inches"},
	{unit{"ft", Foot, Imperial}, "ft foot feet"},
})

func nameUnits(rows []struct {
	unit
	names string
}) map[string]unit {
	m := map[string]unit{}
	for _, r := range rows {
		for _, name := range strings.Fields(r.names) {
			m[name] = r.unit
		}
	}
	return m
}

func unitByName(name string) (unit, bool) {
	u, ok := unitNames[strings.ToLower(name)]
	return u, ok
}

// bareUnit is the unit of a number that has none.
func (s System) bareUnit() unit {
	if s == Imperial {
		return unitNames["in"]
	}
	return unitNames["mm"]
}
