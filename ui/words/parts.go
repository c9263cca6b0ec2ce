package words

import (
	"strconv"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/units"
)

// PartSize is a part's size in short: of holes their diameter, of all else the room
// that it takes up from left to right and from front to back.
func PartSize(d design.Design, id design.ID, sys units.System) string {
	for _, t := range d.Taps {
		if t.ID != id {
			continue
		}
		n := [...]int{design.TapSingle: 1, design.TapThree4: 3, design.TapThree8: 3, design.TapOwn: len(t.Holes)}
		if int(t.Pattern) < len(n) && n[t.Pattern] != 1 {
			return strconv.Itoa(n[t.Pattern]) + " × Ø " + units.Format(t.Diameter, sys)
		}
		return "Ø " + units.Format(t.Diameter, sys)
	}
	for _, h := range d.Holes {
		if h.ID == id {
			return "Ø " + units.Format(h.Diameter, sys)
		}
	}
	min, max, ok := edit.Extent(d, id)
	if !ok {
		return ""
	}
	return Size((max.X - min.X).MM(), (max.Y - min.Y).MM(), sys)
}
