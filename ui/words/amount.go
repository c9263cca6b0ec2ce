package words

import (
	"strings"

	"example.org/castwright/model/amount"
	"example.org/castwright/model/units"
)

// Size is a width and a depth in one: "1500 × 550 mm", `61" × 22"`.
func Size(width, depth float64, sys units.System) string {
	w, d := amount.Of(width, "mm", sys), amount.Of(depth, "mm", sys)
	if sys == units.Metric {
		w = strings.TrimSuffix(w, " mm")
	}
	return w + " × " + d
}
