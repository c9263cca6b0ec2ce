package takeoff

import (
	"math"
	"strconv"
	"strings"
)

// span is a number with its range: low <= value <= high.
type span struct{ value, low, high float64 }

func exact(x float64) span { return span{x, x, x} }

func (a span) plus(b span) span { return span{a.value + b.value, a.low + b.low, a.high + b.high} }

// minus takes b away; nothing goes below zero.
func (a span) minus(b span) span {
	return span{math.Max(0, a.value-b.value), math.Max(0, a.low-b.high), math.Max(0, a.high-b.low)}
}

// times multiplies two spans that are not negative.
func (a span) times(b span) span { return span{a.value * b.value, a.low * b.low, a.high * b.high} }

func (a span) scaled(k float64) span { return span{a.value * k, a.low * k, a.high * k} }

// off widens a number by a doubt given as factors.
func (d Doubt) off(x float64) span { return span{x, x * d.low, x * d.high} }

// around widens a number, not below zero, by a doubt given as amounts.
func (d Doubt) around(x float64) span {
	return span{x, math.Max(0, x+d.low), math.Max(0, x+d.high)}
}

// figure makes a figure of a span in its unit.
func figure(key, label, unit string, s span, how, source string) Figure {
	return Figure{Key: key, Label: label, Value: finite(s.value), Unit: unit,
		Low: finite(s.low), High: finite(s.high), How: how, Source: source}
}

// finite is x, or 0 for what is no number: a report never holds one.
func finite(x float64) float64 {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return 0
	}
	return x
}

// positive is x, or 0 for what can't be an amount.
func positive(x float64) float64 { return math.Max(0, finite(x)) }

// num writes a number with at most so many decimals.
func num(x float64, decimals int) string {
	s := strconv.FormatFloat(finite(x), 'f', decimals, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}

// litres writes a volume in mm3 as litres to the millilitre.
func litres(mm3 float64) string { return num(mm3/mm3PerLitre, 3) }

// percent writes a share.
func percent(x float64) string { return num(x*100, 2) + " %" }

const (
	mm3PerLitre = 1e6
	mm3PerM3    = 1e9
)
