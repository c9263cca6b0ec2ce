package look

import (
	"math"

	"example.org/castwright/model/design"
)

// Name names a colour in plain words, such as "pale green" or "dark grey".
func Name(c design.Colour) string {
	r, g, b := float64(c.R)/255, float64(c.G)/255, float64(c.B)/255
	top, low := math.Max(r, math.Max(g, b)), math.Min(r, math.Min(g, b))
	light, spread := (top+low)/2, top-low
	shade := ""
	switch {
	case light < 0.28:
		shade = "dark "
	case light > 0.74:
		shade = "pale "
	}
	warm := r > b+0.025
	if spread < 0.10 {
		switch {
		case light > 0.90:
			return "white"
		case light < 0.13:
			return "black"
		case warm && light > 0.45:
			return shade + "warm grey"
		}
		return shade + "grey"
	}
	var hue float64
	switch top {
	case r:
		hue = math.Mod((g-b)/spread+6, 6)
	case g:
		hue = (b-r)/spread + 2
	default:
		hue = (r-g)/spread + 4
	}
	hue *= 60
	if spread < 0.30 && hue > 15 && hue < 65 {
		if light > 0.70 {
			return "sand"
		}
		return shade + "tan"
	}
	for _, n := range [...]struct {
		to   float64
		name string
	}{
		{16, "red"}, {42, "orange"}, {66, "yellow"}, {84, "yellow-green"}, {154, "green"},
		{186, "blue-green"}, {250, "blue"}, {290, "violet"}, {335, "pink"}, {361, "red"},
	} {
		if hue < n.to {
			switch {
			case n.name == "orange" && spread > 0.5 && hue > 26 || n.name == "yellow" && light < 0.55:
				return shade + "amber"
			case n.name == "orange" && light < 0.45:
				return shade + "brown"
			}
			return shade + n.name
		}
	}
	return shade + "grey"
}
