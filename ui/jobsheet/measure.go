package jobsheet

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"example.org/castwright/model/amount"
	"example.org/castwright/model/design"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/panel"
	"fyne.io/fyne/v2"
	"github.com/shopspring/decimal"
)

// measure is what a product's data sheet gives a quantity in: metric, as the job
// keeps it, and as a maker reads it who works in inches.
type measure struct {
	metric, customary string
	size              float64 // of the customary unit in the metric one
}

var (
	mass    = measure{"kg", "lb", units.PoundKG}
	bulk    = measure{"L", "ft³", units.CubicFootL}
	liquid  = measure{"L", "qt", units.QuartL}
	density = measure{"kg/m³", "lb/ft³", units.PoundPerCubicFt}
	parts   = measure{"parts", "parts", 1}
)

// in is the unit and its size for a maker's system.
func (m measure) in(sys units.System) (unit string, size float64) {
	if sys == units.Imperial {
		return m.customary, m.size
	}
	return m.metric, 1
}

// A number that was typed in another unit is shown again with its own digits, up to
// ownDigits; one that was not, with roundDigits.
const (
	ownDigits   = 9
	roundDigits = 4
)

// shown writes a quantity in a unit of a size.
func shown(x, size float64) string {
	if size == 1 {
		return strconv.FormatFloat(x, 'f', -1, 64)
	}
	to := func(digits int) float64 {
		short, _ := strconv.ParseFloat(strconv.FormatFloat(x/size, 'g', digits, 64), 64)
		return short
	}
	for n := 1; n <= ownDigits; n++ {
		if math.Abs(to(n)*size-x) <= 1e-12*x {
			return strconv.FormatFloat(to(n), 'f', -1, 64)
		}
	}
	return strconv.FormatFloat(to(roundDigits), 'f', -1, 64)
}

// number is a line for a quantity that is not below zero.
func (h *sheet) number(label, hint string, m measure, at *float64) fyne.CanvasObject {
	unit, size := m.in(h.job.Units)
	return h.line(label, hint, shown(*at, size), unit, func(t string) error {
		x, err := panel.ReadNumber(t, strings.ToLower(label))
		if err == nil && (x < 0 || x*size > design.MaxQuantity) {
			err = fmt.Errorf("%s: %g is out of range: type a number from the product's data sheet",
				label, x)
		}
		if err == nil {
			*at = x * size
		}
		return err
	})
}

// depth is a line for a length that the job keeps in millimetres.
func (h *sheet) depth(label, hint string, at *float64) fyne.CanvasObject {
	l := units.FromMM(*at)
	return h.ofLength(label, hint, l, "", func(to units.Length) { *at = to.MM() })
}

// price is a line for a price of one of a unit, which the job keeps for the metric
// one.
func (h *sheet) price(label, of string, m measure, at *decimal.Decimal) fyne.CanvasObject {
	unit, size := m.in(h.job.Units)
	per := decimal.NewFromFloat(size)
	value := *at
	if size != 1 {
		value = panel.PriceOf(*at, size)
	}
	return h.line(label, "Of one "+unit+of+".", amount.Money("", value), "a "+unit, func(t string) error {
		d, err := panel.ReadPrice(t, label)
		if err != nil {
			return err
		}
		if size != 1 {
			d = d.DivRound(per, 4)
		}
		*at = d
		return nil
	})
}
