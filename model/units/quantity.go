package units

// ParseAngle reads an angle in degrees, with arithmetic: "22.5", "22.5°", "90/4".
// It rounds once, half-even to a micro-degree. An error is a [*ParseError].
func ParseAngle(s string) (Angle, error) {
	n, err := angleKind.parse(s)
	return Angle(n), err
}

var angleKind = &kind{
	units: angleUnits, marks: map[rune]string{'°': "deg", 'º': "deg"}, bare: angleUnits["deg"],
	bound: 360_000 * int64(Degree), most: "360000°", noun: "angle", choice: "degrees",
	example: "22.5 or 90/4",
}

var angleUnits = nameUnits(map[string]unit{"deg degree degrees": {"°", int64(Degree), Metric}})

// ParseShare reads a share in per cent, with arithmetic: "55", "55 %", "100/3 %".
// It rounds once, half-even to a millionth. An error is a [*ParseError].
func ParseShare(s string) (Share, error) {
	n, err := shareKind.parse(s)
	return Share(n), err
}

var shareKind = &kind{
	units: shareUnits, marks: map[rune]string{'%': "percent", '％': "percent"},
	bare: shareUnits["percent"], bound: 1000 * int64(Whole), most: "100000 %", noun: "share",
	choice: "%", example: "55 or 55 %",
}

var shareUnits = nameUnits(map[string]unit{"percent pct": {"%", int64(Percent), Metric}})

// ParseMass reads a mass and gives it in kilograms: "7", "7.5 kg", "15 1/2 lb", "5 lb
// 3 oz". A bare number is in kilograms or, for an imperial maker, in pounds. An
// error is a [*ParseError].
func ParseMass(s string, sys System) (kg float64, err error) {
	k := *massKind
	if sys == Imperial {
		k.bare, k.example = massUnits["lb"], "15 1/2 or 7 kg"
	}
	n, err := k.parse(s)
	return float64(n) / float64(massUnits["kg"].size), err
}

var massKind = &kind{
	units: massUnits, bare: massUnits["kg"], bound: 100_000 * massUnits["kg"].size, most: "100000 kg",
	noun: "mass", choice: "kg, g, lb or oz", example: "7 or 15 1/2 lb",
}

// The units of mass by their names, in nanograms. Sizes are exact: NIST SP 811
// (2008), App. B.8.
var massUnits = nameUnits(map[string]unit{
	"kg kilogram kilograms kilogramme kilogrammes": {"kg", 1_000_000_000_000, Metric},
	"g gram grams gramme grammes":                  {"g", 1_000_000_000, Metric},
	"lb lbs pound pounds":                          {"lb", 453_592_370_000, Imperial},
	"oz ounce ounces":                              {"oz", 28_349_523_125, Imperial},
})
