// Package lift says what a person or a team may lift: the revised lifting
// equation of NIOSH, with its tables, in both of its unit systems.
//
// The equation is for two hands, standing, without slipping, hurry or heat. It
// does not itself cover teams, carrying or narrow places; those are judged with
// [TeamLimit] and by the people who do it.
package lift

import "math"

// Source is where the equation and its tables stand.
const Source = "NIOSH 94-110 (rev. 9/2021), revised lifting equation"

// Grip is how well the hands hold the load (the manual's coupling).
type Grip uint8

// The grips.
const (
	GripGood Grip = iota // handles, or a box that the hands close round
	GripFair
	GripPoor // bulky, smooth or with sharp edges: a slab
)

// Task is one lift. Lengths are inches in the US form, centimetres in the
// metric form; mind that the two forms are not conversions of each other.
type Task struct {
	Horizontal float64 // from between the ankles to the hands
	Vertical   float64 // from the floor to the hands
	Distance   float64 // that the hands travel up or down
	Asymmetry  float64 // degrees that the body twists
	PerMinute  float64 // lifts a minute, averaged over a quarter of an hour
	Hours      float64 // that the work lasts
	Grip       Grip
}

// Form is the equation in one unit system.
type Form struct {
	constant float64 // the load of the best lift, lb or kg
	reach    float64 // the least horizontal distance
	far      float64 // the largest
	knuckle  float64 // the best height
	rise     float64 // share lost for each unit away from it
	high     float64 // the largest height
	travel   float64 // numerator of the distance multiplier
	short    float64 // the least distance
	waist    float64 // height at which grip and frequency tables change
	low      float64 // height below which the estimated reach is longer
	body     float64 // estimated reach to the near side of a load
	bodyLow  float64 // the same for a load below low
}

// The two forms: US in inches and pounds, Metric in centimetres and kilograms.
// Constants as printed in NIOSH 94-110, pages 13 to 29.
var (
	US = Form{constant: 51, reach: 10, far: 25, knuckle: 30, rise: 0.0075, high: 70,
		travel: 1.8, short: 10, waist: 30, low: 10, body: 8, bodyLow: 10}
	Metric = Form{constant: 23, reach: 25, far: 63, knuckle: 75, rise: 0.003, high: 175,
		travel: 4.5, short: 25, waist: 75, low: 25, body: 20, bodyLow: 25}
)

// Multipliers is the six factors of the equation, each 0 to 1; 0 means that the
// lift lies outside what the equation allows.
type Multipliers struct {
	Horizontal, Vertical, Distance, Asymmetry, Frequency, Grip float64
}

// Multipliers reckons the factors:
//
//	HM = 10/H  VM = 1 - 0.0075|V - 30|  DM = 0.82 + 1.8/D  AM = 1 - 0.0032 A
//
// in the US form, with the frequency and coupling multipliers of Tables 5 and 7.
func (f Form) Multipliers(t Task) Multipliers {
	m := Multipliers{
		Horizontal: f.reach / math.Max(f.reach, t.Horizontal),
		Vertical:   1 - f.rise*math.Abs(t.Vertical-f.knuckle),
		Distance:   0.82 + f.travel/math.Max(f.short, t.Distance),
		Asymmetry:  1 - 0.0032*math.Abs(t.Asymmetry),
		Frequency:  frequency(t.PerMinute, t.Hours, t.Vertical >= f.waist),
		Grip:       grip(t.Grip, t.Vertical >= f.waist),
	}
	if !(t.Horizontal <= f.far) {
		m.Horizontal = 0
	}
	if !(0 <= t.Vertical && t.Vertical <= f.high) {
		m.Vertical = 0
	}
	if !(t.Distance <= f.high) {
		m.Distance = 0
	}
	if !(math.Abs(t.Asymmetry) <= 135) {
		m.Asymmetry = 0
	}
	return m
}

// Limit is the recommended weight limit of one person, RWL = LC x HM x VM x DM x
// AM x FM x CM, in pounds or kilograms; 0 when the lift lies outside of what the
// equation allows.
func (f Form) Limit(t Task) float64 {
	m := f.Multipliers(t)
	return f.constant * m.Horizontal * m.Vertical * m.Distance * m.Asymmetry * m.Frequency * m.Grip
}

// Reach estimates the horizontal distance for a load that is width deep, held
// at height v, when it can't be measured.
func (f Form) Reach(width, v float64) float64 {
	if v < f.low {
		return f.bodyLow + width/2
	}
	return f.body + width/2
}

// Index is the lifting index: the load over its limit. Up to 1 most people lift
// it without harm; above 3 most are at risk (pages 19 and 20). Without a limit
// it is infinite.
func Index(load, limit float64) float64 {
	switch {
	case load <= 0:
		return 0
	case limit <= 0:
		return math.Inf(1)
	}
	return load / limit
}

// AveragePerMinute is the lifts a minute to reckon with when there are n a
// minute for only some minutes of each quarter of an hour (page 16).
func AveragePerMinute(n, minutes float64) float64 {
	return n * math.Max(0, math.Min(15, minutes)) / 15
}

func grip(g Grip, high bool) float64 {
	switch {
	case g == GripGood, g == GripFair && high:
		return 1
	case g == GripFair:
		return 0.95
	}
	return 0.90
}

// frequencies is Table 5 of NIOSH 94-110. The columns are work of up to 1, 2 and
// 8 hours, each below and from 30 in (75 cm).
var frequencies = []struct {
	perMinute float64
	factor    [6]float64
}{
	{0.2, [6]float64{1.00, 1.00, .95, .95, .85, .85}},
	{0.5, [6]float64{.97, .97, .92, .92, .81, .81}},
	{1, [6]float64{.94, .94, .88, .88, .75, .75}},
	{2, [6]float64{.91, .91, .84, .84, .65, .65}},
	{3, [6]float64{.88, .88, .79, .79, .55, .55}},
	{4, [6]float64{.84, .84, .72, .72, .45, .45}},
	{5, [6]float64{.80, .80, .60, .60, .35, .35}},
	{6, [6]float64{.75, .75, .50, .50, .27, .27}},
	{7, [6]float64{.70, .70, .42, .42, .22, .22}},
	{8, [6]float64{.60, .60, .35, .35, .18, .18}},
	{9, [6]float64{.52, .52, .30, .30, 0, .15}},
	{10, [6]float64{.45, .45, .26, .26, 0, .13}},
	{11, [6]float64{.41, .41, 0, .23, 0, 0}},
	{12, [6]float64{.37, .37, 0, .21, 0, 0}},
	{13, [6]float64{0, .34, 0, 0, 0, 0}},
	{14, [6]float64{0, .31, 0, 0, 0, 0}},
	{15, [6]float64{0, .28, 0, 0, 0, 0}},
}

// frequency is the frequency multiplier, linear between the rows of Table 5.
func frequency(perMinute, hours float64, high bool) float64 {
	column := 0
	switch {
	case !(hours <= 8):
		return 0
	case hours > 2:
		column = 4
	case hours > 1:
		column = 2
	}
	if high {
		column++
	}
	last := frequencies[0]
	if perMinute <= last.perMinute {
		return last.factor[column]
	}
	for _, row := range frequencies[1:] {
		if perMinute <= row.perMinute {
			share := (perMinute - last.perMinute) / (row.perMinute - last.perMinute)
			return last.factor[column] + share*(row.factor[column]-last.factor[column])
		}
		last = row
	}
	return 0
}
