package design

import (
	"fmt"
	"strings"
	"unicode"

	"example.org/castwright/model/units"
)

// Room is the client's room in a photograph: which one, where in it the present
// top or a sheet of paper is seen, how large that is, and where the new top comes
// to lie. It is the same for every option of a job and no part of any design, so
// it changes no number and no fingerprint of an approval. The zero value is no
// room.
type Room struct {
	// Photo is the photograph's file, a plain name in the folder of the job's own
	// file, "" for no room.
	Photo string
	// SHA256 of the photograph's bytes (FIPS 180-4) in small hexadecimal digits: a
	// picture that was changed since has other corners.
	SHA256 string
	// Corners of what is marked: clockwise as seen from above, from the back left one.
	Corners [4]Spot
	Marks   Marked
	// Width and Depth of what is marked: along its back, and from back to front.
	Width, Depth units.Length
	// Old is how thick the present top is, 0 as thick as the new one. Where the new
	// one is thicker, its face comes to lie higher.
	Old units.Length
	// At is where the new top's back left corner lies from the marked one, X to the
	// right and Y toward the back, and Turn by how much it is turned about that
	// corner, counter-clockwise.
	At   Point
	Turn units.Angle
	Lit  RoomLight
}

// Spot is a place in a picture as it is seen upright: shares of its width from the
// left edge and of its height from the upper one, exact to a millionth.
type Spot struct{ X, Y units.Share }

// Marked says what the four corners are those of.
type Marked uint8

// What can be marked.
const (
	MarkedTop   Marked = iota // the face of the present top
	MarkedSheet               // a sheet of white paper that lies on it
)

// RoomLight is what the maker sets of the light by hand. The zero value leaves it
// as the photograph says.
type RoomLight struct {
	Brighter units.Share // 100 % is one stop brighter, twice the light
	Warmer   units.Share // 100 % is the warmest, -100 % the coolest
	From     LightFrom
}

// LightFrom is where most of the light comes from.
type LightFrom uint8

// The sides.
const (
	LightAsSeen LightFrom = iota // as the photograph says, if it does
	LightFromLeft
	LightFromRight
	LightFromFront
	LightFromAbove
)

// The ranges of a room's values.
const (
	MinMarked    = 50 * units.Millimetre // of the width and depth of what is marked
	MaxMarked    = 20 * units.Metre
	MaxBrighter  = 3 * units.Whole
	MaxPhotoName = 200 // bytes
)

// Corner names of a room, in their order.
var cornerNames = [4]string{"back left", "back right", "front right", "front left"}

// None reports whether there is no room.
func (r Room) None() bool { return r.Photo == "" }

// Faults lists every value of the room that is out of its range, with its place in
// the file. What the corners make of a camera is looked at by package pose.
func (r Room) Faults() []Fault {
	if r == (Room{}) {
		return nil
	}
	c := &checker{}
	if why := badPhotoName(r.Photo); why != "" {
		c.add(RuleRange, "room.photo", "the photograph's name %q %s: choose the photograph again", cut(r.Photo), why)
	}
	if !isHex(r.SHA256) {
		c.add(RuleRange, "room.sha256", "%q is no SHA-256 of a file: choose the photograph again", cut(r.SHA256))
	}
	for i, s := range r.Corners {
		field := "room.corners." + strings.ReplaceAll(cornerNames[i], " ", "_")
		for _, v := range []struct {
			axis string
			s    units.Share
		}{{"x", s.X}, {"y", s.Y}} {
			c.share(field+"."+v.axis+"_percent", fmt.Sprintf("%s of the %s corner", v.axis, cornerNames[i]), v.s)
		}
	}
	c.kind("room.marks", "what is marked", uint8(r.Marks), int(MarkedSheet)+1)
	c.length("room.width_mm", "the width of what is marked", r.Width, MinMarked, MaxMarked)
	c.length("room.depth_mm", "the depth of what is marked", r.Depth, MinMarked, MaxMarked)
	if r.Old != 0 {
		c.length("room.old_thickness_mm", "the thickness of the present top", r.Old, 5*units.Millimetre, MaxThickness)
	}
	c.place("room.at_mm", r.At)
	if r.Turn > 360*units.Degree || r.Turn < -360*units.Degree {
		c.add(RuleRange, "room.turn_deg", "the turn is %g°: give from -360° to 360°", r.Turn.Degrees())
	}
	c.between("room.light.brighter_percent", "the light by hand", r.Lit.Brighter, MaxBrighter)
	c.between("room.light.warmer_percent", "the light's warmth by hand", r.Lit.Warmer, units.Whole)
	c.kind("room.light.from", "the side of the light", uint8(r.Lit.From), int(LightFromAbove)+1)
	return c.faults
}

// between checks that a share lies from -most to most.
func (c *checker) between(field, name string, s, most units.Share) {
	if s < -most || s > most {
		c.add(RuleRange, field, "%s is %g %%: give from -%g %% to %g %%", name, s.Fraction()*100, most.Fraction()*100, most.Fraction()*100)
	}
}

// badPhotoName says what keeps a name from being that of a file beside the job: a
// job's file may come from anybody, and must not make the program read elsewhere.
func badPhotoName(s string) string {
	switch {
	case s == "":
		return "is empty"
	case len(s) > MaxPhotoName:
		return "is too long"
	case strings.HasPrefix(s, "."), strings.HasSuffix(s, "."), strings.TrimSpace(s) != s:
		return "is not plain"
	case strings.ContainsAny(s, `/\:*?"<>|`), strings.ContainsFunc(s, unicode.IsControl), !valid(s):
		return "has characters that a plain name has not"
	}
	return ""
}

func valid(s string) bool { return strings.ToValidUTF8(s, "") == s }

// isHex reports whether s is a SHA-256 in small hexadecimal digits.
func isHex(s string) bool {
	return len(s) == 64 && strings.Trim(s, "0123456789abcdef") == ""
}

// cut is a text short enough to be shown in a sentence.
func cut(s string) string {
	if r := []rune(s); len(r) > 40 {
		return string(r[:40]) + "…"
	}
	return s
}
