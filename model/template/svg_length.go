package template

import (
	"math"
	"strconv"
	"strings"
)

// svgUnits is user units in one of a CSS unit (CSS Values and Units: 1 in is
// 96 px, 1 pt is 1/72 in, 1 pc is 12 pt, 1 Q is a quarter millimetre).
var svgUnits = map[string]float64{
	"": 1, "px": 1, "in": 96, "cm": 96 / 2.54, "mm": 96 / 25.4, "q": 96 / 101.6, "pt": 96.0 / 72, "pc": 16,
}

// length reads a CSS length in user units. A percentage is not one.
func length(text string) (v float64, unit string, ok bool) {
	text = strings.TrimSpace(text)
	i := len(text)
	for i > 0 && (text[i-1] >= 'a' && text[i-1] <= 'z' || text[i-1] >= 'A' && text[i-1] <= 'Z') {
		i--
	}
	unit = strings.ToLower(text[i:])
	f, known := svgUnits[unit]
	v, err := strconv.ParseFloat(strings.TrimSpace(text[:i]), 64)
	if err != nil || !known || math.IsNaN(v) || math.IsInf(v, 0) {
		return 0, "", false
	}
	return v * f, unit, true
}

// measured reads a CSS length, or a percentage of a whole, in user units.
func measured(text string, whole float64) (float64, bool) {
	if share, is := strings.CutSuffix(strings.TrimSpace(text), "%"); is {
		v, err := strconv.ParseFloat(strings.TrimSpace(share), 64)
		if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
			return 0, false
		}
		return v / 100 * whole, true
	}
	v, _, ok := length(text)
	return v, ok
}

// lengths reads the geometry of a basic shape.
func (e *element) lengths(at place) (map[string]float64, bool) {
	// Percentages are of the viewport's width, height, or what its diagonal is
	// to that of a square of side 1 (SVG 1.1, 7.10).
	both := math.Hypot(at.w, at.h) / math.Sqrt2
	wholes := map[string]float64{
		"x": at.w, "width": at.w, "rx": at.w, "cx": at.w, "x1": at.w, "x2": at.w,
		"y": at.h, "height": at.h, "ry": at.h, "cy": at.h, "y1": at.h, "y2": at.h, "r": both,
	}
	out := map[string]float64{}
	for k, whole := range wholes {
		text := e.style(k)
		if text == "" || text == "auto" {
			continue
		}
		v, ok := measured(text, whole)
		if !ok {
			return nil, false
		}
		out[k] = v
	}
	return out, true
}
