package panel

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/words"
)

// kind is what a field is worked with.
type kind uint8

const (
	kindText    kind = iota // a line to type in
	kindReading             // a number to read
	kindChoice              // a list of words
	kindColour              // a colour of some material
	kindTick                // yes or no
	kindNotes               // text of several lines
	kindHeading             // starts a group
)

// field is one line of what is selected. The functions make the edit for a new
// value; they are made anew whenever the design changes.
type field struct {
	kind  kind
	label string
	hint  string

	text    string   // shown, or ticked when "yes"
	empty   string   // shown in the place of a text that there is not
	words   []string // of a choice
	at      int      // the word that is picked, -1 for none
	colour  design.Colour
	palette palette

	parse  func(text string) (edit.Edit, error)
	nudge  func(steps int) edit.Edit
	pick   func(i int) edit.Edit
	tick   func(on bool) edit.Edit
	dye    func(c design.Colour) edit.Edit
	picked []string // further hints, one for each word
}

// same reports whether the fields can be shown by the same controls.
func (f field) same(o field) bool {
	return f.kind == o.kind && f.label == o.label && f.palette == o.palette &&
		slices.Equal(f.words, o.words) && (f.nudge == nil) == (o.nudge == nil)
}

// sheet collects the fields of a selection.
type sheet struct {
	sys    units.System
	d      design.Design
	fields []field
}

func (s *sheet) add(f field) { s.fields = append(s.fields, f) }

func (s *sheet) heading(label string) { s.add(field{kind: kindHeading, label: label}) }

// freeze makes every field one to read.
func (s *sheet) freeze() {
	for i, f := range s.fields {
		if f.kind == kindHeading || f.kind == kindReading {
			continue
		}
		text := f.text
		switch {
		case f.kind == kindChoice:
			text = words.Of(f.words, f.at)
		case f.kind == kindColour:
			if text = ColourName(f.palette.swatches(), f.colour); text == "" {
				text = Hex(f.colour)
			}
		case f.kind == kindTick && text != "yes":
			text = "no"
		case text == "":
			text = f.empty
		}
		s.fields[i] = field{kind: kindReading, label: f.label, hint: f.hint, text: text}
	}
}

func (s *sheet) reading(label, hint, text string) {
	s.add(field{kind: kindReading, label: label, hint: hint, text: text})
}

// length is a field for a length; e is the edit that sets it.
func (s *sheet) length(label, hint string, v units.Length, e func(units.Length) edit.Edit) {
	step := NudgeStep(s.sys)
	text, exact := lengthText(v, s.sys)
	if exact != "" {
		hint += " Exactly " + exact + "."
	}
	s.add(field{
		kind: kindText, label: label, hint: hint + " " + lengthHint(s.sys), text: text,
		parse: func(text string) (edit.Edit, error) {
			l, err := units.Parse(text, s.sys)
			if err != nil {
				return edit.Edit{}, err
			}
			return e(l), nil
		},
		nudge: func(steps int) edit.Edit { return e(v + units.Length(steps)*step) },
	})
}

// lengthText is a length as an entry shows it, in the maker's system: exactly where
// somebody typed it, to the maker's rounding where it was given in the other system
// or follows from something else, such as a place on a curve; exact then says what it
// is. (An entry hands nothing over that was not edited, so showing less than all
// never changes a value.)
func lengthText(l units.Length, sys units.System) (text, exact string) {
	text = units.FormatExact(l, sys)
	switch {
	case l%(units.Inch/64) == 0:
		return text, ""
	case sys == units.Metric && l%units.Micrometre != 0:
		return units.Format(l, sys), text // finer than anybody types
	case sys == units.Metric || typedInches(text):
		return text, ""
	}
	for _, step := range []units.Length{units.ImperialStep, units.Inch / 64, units.Inch / 1000} {
		near := (l.Abs() + step/2) / step * step
		if l < 0 {
			near = -near
		}
		if (near-l).Abs() <= l.Abs()/100 || step == units.Inch/1000 && near != 0 {
			return units.FormatExact(near, sys), text
		}
	}
	return text, ""
}

// typedInches reports whether an exact length reads as decimal inches that somebody
// may have typed: to a thousandth.
func typedInches(text string) bool {
	number, inches := strings.CutSuffix(text, `"`)
	_, decimals, _ := strings.Cut(number, ".")
	return inches && len(decimals) <= 3
}

// NudgeStep is how far an arrow key moves a length.
func NudgeStep(sys units.System) units.Length {
	if sys == units.Imperial {
		return units.Inch / 16
	}
	return units.Millimetre
}

func lengthHint(sys units.System) string {
	if sys == units.Imperial {
		return `Type 25 1/2", 5' 2 or 648 mm; arrows move it by 1/16", with Shift by ten times that.`
	}
	return `Type 648, 64.8 cm or 25 1/2"; arrows move it by 1 mm, with Shift by ten.`
}

// number is a field for a number v that read makes of what is typed; arrows move
// it by step.
func (s *sheet) number(label, hint, text string, read func(string) (float64, error), step, v float64,
	e func(float64) edit.Edit) {
	s.add(field{
		kind: kindText, label: label, hint: hint, text: text,
		parse: func(text string) (edit.Edit, error) {
			x, err := read(text)
			if err != nil {
				return edit.Edit{}, err
			}
			return e(x), nil
		},
		nudge: func(steps int) edit.Edit { return e(v + float64(steps)*step) },
	})
}

func (s *sheet) angle(label, hint string, v units.Angle, e func(units.Angle) edit.Edit) {
	s.number(label, hint+" Arrows turn it by 1°, with Shift by ten.", units.FormatAngle(v), ReadDegrees,
		1, v.Degrees(),
		func(x float64) edit.Edit { return e(units.FromDegrees(x)) })
}

func (s *sheet) share(label, hint string, v units.Share, e func(units.Share) edit.Edit) {
	s.number(label, hint+" In per cent.", units.FormatShare(v), ReadPercent, 1, v.Fraction()*100,
		func(x float64) edit.Edit { return e(units.FromFraction(math.Max(0, math.Min(100, x)) / 100)) })
}

func (s *sheet) mass(label, hint string, kg float64, e func(float64) edit.Edit) {
	step := 0.5
	if s.sys == units.Imperial {
		step = units.PoundKG
	}
	s.number(label, hint, units.FormatMass(kg, s.sys),
		func(t string) (float64, error) { return ReadMass(t, s.sys) },
		step, kg, func(x float64) edit.Edit { return e(math.Max(0, x)) })
}

func (s *sheet) choice(label, hint string, list []string, at int, e func(int) edit.Edit) {
	s.add(field{kind: kindChoice, label: label, hint: hint, words: list, at: at, pick: e})
}

func (s *sheet) tick(label, hint string, on bool, e func(bool) edit.Edit) {
	f := field{kind: kindTick, label: label, hint: hint, tick: e}
	if on {
		f.text = "yes"
	}
	s.add(f)
}

func (s *sheet) colour(label, hint string, c design.Colour, p palette,
	e func(design.Colour) edit.Edit) {
	s.add(field{kind: kindColour, label: label, hint: hint, colour: c, text: Hex(c), palette: p,
		dye: e})
}

func (s *sheet) notes(label, hint, text string, e func(string) edit.Edit) {
	s.add(field{kind: kindNotes, label: label, hint: hint, text: text,
		parse: func(text string) (edit.Edit, error) { return e(text), nil }})
}

// profile is the fields for the profile of an arris.
func (s *sheet) profile(label, hint string, p design.Profile, list []string,
	e func(design.Profile) edit.Edit) {
	s.choice(label, hint, list, int(p.Kind), func(i int) edit.Edit {
		q := design.Profile{Kind: design.ProfileKind(i), Size: p.Size}
		if q.Size == 0 || !words.ProfileSized(p.Kind) {
			q.Size = StartSize(q.Kind, s.sys)
		}
		if !words.ProfileSized(q.Kind) {
			q.Size = 0
		}
		return e(q)
	})
	if !words.ProfileSized(p.Kind) {
		return
	}
	size, why := "Size", "How far the profile reaches."
	switch p.Kind {
	case design.ProfileEased, design.ProfileRounded:
		size, why = "Radius", "Radius of the arris."
	case design.ProfileBevelled:
		size, why = "Bevel", "Width and height of the bevel."
	case design.ProfileHalfRound:
		size, why = "Radius", "Radius of the half round; 0 is half the thickness."
	case design.ProfileRough:
		size, why = "Liner", "Thickness of the liner in the form that makes the broken edge."
	}
	s.length(size, why, p.Size, func(l units.Length) edit.Edit {
		return e(design.Profile{Kind: p.Kind, Size: l})
	})
	if p.Kind == design.ProfileHalfRound && p.Size == 0 {
		f := &s.fields[len(s.fields)-1]
		f.text, f.empty = "", "half the thickness"
	}
}

// StartSize is the size that a profile starts with: common practice, no source.
func StartSize(k design.ProfileKind, sys units.System) units.Length {
	metric, imperial := units.Length(0), units.Length(0)
	switch k {
	case design.ProfileEased:
		metric, imperial = 3*units.Millimetre, units.Inch/8
	case design.ProfileRounded:
		metric, imperial = 10*units.Millimetre, 3*units.Inch/8
	case design.ProfileBevelled:
		metric, imperial = 8*units.Millimetre, 5*units.Inch/16
	case design.ProfileRough:
		metric, imperial = 12*units.Millimetre, units.Inch/2
	}
	if sys == units.Imperial {
		return imperial
	}
	return metric
}

// Hex writes a colour as #rrggbb.
func Hex(c design.Colour) string { return fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B) }

// ReadHex reads #rrggbb, with or without the sign, or #rgb.
func ReadHex(s string) (design.Colour, error) {
	t := strings.TrimPrefix(strings.TrimSpace(s), "#")
	if len(t) == 3 {
		t = string([]byte{t[0], t[0], t[1], t[1], t[2], t[2]})
	}
	n, err := strconv.ParseUint(t, 16, 32)
	if err != nil || len(t) != 6 {
		return design.Colour{}, fmt.Errorf("%q is no colour: type six digits of red, green and blue, such as #a9a69f", s)
	}
	return design.Colour{R: uint8(n >> 16), G: uint8(n >> 8), B: uint8(n)}, nil
}

// ReadNumber reads a plain number with a decimal point or comma. what says what
// it is for, in an error.
func ReadNumber(s, what string) (float64, error) {
	t := strings.TrimSpace(s)
	if strings.Count(t, ",") == 1 && !strings.Contains(t, ".") {
		t = strings.Replace(t, ",", ".", 1)
	}
	x, err := strconv.ParseFloat(t, 64)
	if err != nil || math.IsNaN(x) || math.IsInf(x, 0) || strings.ContainsAny(t, "xXpP_") {
		return 0, fmt.Errorf("%q is not a number: type %s, such as 12 or 12.5", s, what)
	}
	return x, nil
}

// cutUnit takes a unit off the end of a number.
func cutUnit(s string, names ...string) (string, bool) {
	t := strings.ToLower(strings.TrimSpace(s))
	for _, n := range names {
		if rest, ok := strings.CutSuffix(t, n); ok {
			return strings.TrimSpace(rest), true
		}
	}
	return t, false
}

// ReadMass reads a mass in kilograms; a bare number is in the system's unit.
func ReadMass(s string, sys units.System) (float64, error) {
	t, pounds := cutUnit(s, "lbs", "lb", "pounds", "pound")
	kilos := false
	if !pounds {
		t, kilos = cutUnit(s, "kg", "kilograms", "kilogram")
	}
	x, err := ReadNumber(t, "a weight")
	if err != nil {
		return 0, fmt.Errorf("%q is not a weight: type 12 kg or 26 lb", s)
	}
	if x < 0 {
		return 0, fmt.Errorf("a weight is not below zero: type 0 or more")
	}
	if pounds || !kilos && sys == units.Imperial {
		x *= units.PoundKG
	}
	return x, nil
}

// ReadDegrees reads an angle in degrees.
func ReadDegrees(s string) (float64, error) {
	t, _ := cutUnit(s, "°", "degrees", "degree", "deg")
	x, err := ReadNumber(t, "an angle in degrees")
	if err != nil {
		return 0, fmt.Errorf("%q is not an angle: type degrees, such as 15 or -7.5", s)
	}
	if math.Abs(x) > 360 {
		return 0, fmt.Errorf("%g° is more than a turn: type -360 to 360", x)
	}
	return x, nil
}

// ReadPercent reads a share in per cent.
func ReadPercent(s string) (float64, error) {
	t, _ := cutUnit(s, "%", "per cent", "percent")
	x, err := ReadNumber(t, "a share in per cent")
	if err != nil {
		return 0, fmt.Errorf("%q is not a share: type per cent, such as 40", s)
	}
	if x < 0 || x > 100 {
		return 0, fmt.Errorf("%g %% is out of range: type 0 to 100", x)
	}
	return x, nil
}
