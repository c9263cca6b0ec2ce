package pose

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
)

// Parse reads four corners, "x,y,x,y,x,y,x,y" in pixels: the back left one first,
// the others in any order.
func Parse(text string) (Corners, error) {
	var c [4]geom.Vec
	parts := strings.Split(text, ",")
	if len(parts) != 8 {
		return Corners{}, fmt.Errorf("four corners are eight numbers, x,y,x,y,x,y,x,y; %q has %d", clip(text), len(parts))
	}
	for i, part := range parts {
		x, err := strconv.ParseFloat(strings.TrimSpace(part), 64)
		if err != nil || math.IsNaN(x) || math.Abs(x) > 1e6 {
			axis := "x"
			if i%2 == 1 {
				axis = "y"
			}
			return Corners{}, fmt.Errorf("%q is no %s of the %s corner: give a number of pixels", clip(strings.TrimSpace(part)), axis, Corner(i/2))
		}
		if i%2 == 0 {
			c[i/2].X = x
		} else {
			c[i/2].Y = x
		}
	}
	return Ordered(c), nil
}

// papers are sheets by name, mm as they lie across: ISO 216 and ANSI/ASME Y14.1.
var papers = []struct {
	name string
	w, d units.Length
}{
	{"a4", 297 * units.Millimetre, 210 * units.Millimetre},
	{"a3", 420 * units.Millimetre, 297 * units.Millimetre},
	{"letter", 11 * units.Inch, 17 * units.Inch / 2},
	{"legal", 14 * units.Inch, 17 * units.Inch / 2},
}

// ParseSize reads the size of what was marked, "1250x560", "49 1/4 x 22 in" or the
// name of a sheet that lies across before the camera: A4, A3, Letter, Legal.
// Upright sheets are named "A4 upright".
func ParseSize(text string, sys units.System) (w, d units.Length, err error) {
	name := strings.ToLower(strings.TrimSpace(text))
	name, upright := strings.CutSuffix(name, "upright")
	for _, p := range papers {
		if strings.TrimSpace(name) == p.name {
			if upright {
				return p.d, p.w, nil
			}
			return p.w, p.d, nil
		}
	}
	a, b, ok := strings.Cut(strings.ReplaceAll(strings.ToLower(text), "×", "x"), "x")
	if !ok {
		return 0, 0, fmt.Errorf("%q is no size: give width x depth, such as 1250x560mm, or the name of a sheet, such as A4", clip(text))
	}
	// A unit behind the depth alone is meant for both.
	if unit := strings.TrimLeft(strings.TrimSpace(b), "0123456789 ./,½¼¾⅛⅜⅝⅞-'"); unit != "" && strings.TrimLeft(strings.TrimSpace(a), "0123456789 ./,½¼¾⅛⅜⅝⅞-") == "" {
		a = strings.TrimSpace(a) + unit
	}
	if w, err = units.Parse(strings.TrimSpace(a), sys); err != nil {
		return 0, 0, fmt.Errorf("the width: %w", err)
	}
	if d, err = units.Parse(strings.TrimSpace(b), sys); err != nil {
		return 0, 0, fmt.Errorf("the depth: %w", err)
	}
	return w, d, CheckSize(w, d, sys)
}

// The sizes that can be marked.
const (
	LeastSize = 50 * units.Millimetre
	MostSize  = 20 * units.Metre
)

// CheckSize refuses a size that nothing to mark has.
func CheckSize(w, d units.Length, sys units.System) error {
	for _, l := range []units.Length{w, d} {
		if l < LeastSize || l > MostSize {
			return fmt.Errorf("what is marked can't be %s: give %s to %s", units.Format(l, sys), units.Format(LeastSize, sys), units.Format(MostSize, sys))
		}
	}
	return nil
}

func clip(s string) string {
	if r := []rune(s); len(r) > 60 {
		return string(r[:60]) + "…"
	}
	return s
}
