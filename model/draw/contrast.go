package draw

import (
	"example.org/castwright/model/amount"
	"example.org/castwright/model/change"
	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/report"
	"example.org/castwright/model/units"
	"github.com/shopspring/decimal"
)

// Contrast is one thing that two sides are compared by, as it is read.
type Contrast struct {
	Key, Label string
	A, B       string
	Change     string // "+12.4 kg" from A to B, "" where it is no number
	Same       bool
	Words      bool // the values are words and may be long
	// Was and Is are where it lies in the two designs, mm; empty where it has no
	// place.
	Was, Is geom.Box
}

// Contrasts lists all that two sides are compared by, in the order in which a client
// asks: numbers, then parts in words. The price is told where one of them has one;
// cost says that what the materials cost the maker is told too.
func Contrasts(job design.Job, a, b Side, cost bool) []Contrast {
	var out []Contrast
	for _, d := range report.Compare(a.Report, b.Report) {
		c := Contrast{Key: d.Key, Label: d.Label, Same: d.Same(), Was: geom.EmptyBox(), Is: geom.EmptyBox()}
		switch {
		case d.Unit == "":
			c.A, c.B, c.Words = d.WordsA, d.WordsB, true
			c.Was, c.Is = warnedAt(a.Report, b.Report), warnedAt(b.Report, a.Report)
		case d.Key == "cost" && !cost:
			out = append(out, priceContrast(job.Materials.Currency, a, b)...)
			continue
		default:
			if d.Key == "cost" {
				out = append(out, priceContrast(job.Materials.Currency, a, b)...)
			}
			c.A, c.B = d.Text(d.A, job.Units, job.Materials.Currency), d.Text(d.B, job.Units, job.Materials.Currency)
			if c.Same = c.A == c.B; !c.Same { // as they read in the job's units
				c.Change = d.Change(job.Units, job.Materials.Currency)
			}
			switch d.Key {
			case "width_mm", "depth_mm", "thickness_mm", "plan_area_mm2", "net_area_mm2", "seen_length_mm":
				c.Was, c.Is = a.Report.Solid.Outline.Bounds(), b.Report.Solid.Outline.Bounds()
			}
		}
		out = append(out, c)
	}
	return append(out, worded(a, b, job.Units)...)
}

// Priced reports whether one of two sides has a price.
func Priced(a, b Side) bool {
	return !a.Option.Price.Amount.IsZero() || !b.Option.Price.Amount.IsZero()
}

// priceContrast is what the client pays, nothing where no price is set.
func priceContrast(currency string, one, other Side) []Contrast {
	if !Priced(one, other) {
		return nil
	}
	a, b := one.Option.Price.Amount, other.Option.Price.Amount
	money := func(p decimal.Decimal) string {
		if p.IsZero() {
			return "not set"
		}
		return amount.Money(currency, p)
	}
	c := Contrast{Key: "price", Label: "Price", A: money(a), B: money(b), Same: a.Equal(b), Was: geom.EmptyBox(), Is: geom.EmptyBox()}
	if !c.Same && !a.IsZero() && !b.IsZero() {
		sign := "+"
		if b.LessThan(a) {
			sign = "−"
		}
		c.Change = sign + money(b.Sub(a).Abs())
	}
	return []Contrast{c}
}

// worded is what is compared in the designs alone: face, edges, what is laid in.
func worded(a, b Side, sys units.System) []Contrast {
	var out []Contrast
	da, db := a.Option.Design, b.Option.Design
	say := func(key, label, x, y string, was, is geom.Box) {
		for _, s := range [...]*string{&x, &y} {
			if *s == "" {
				*s = "none"
			}
		}
		out = append(out, Contrast{Key: key, Label: label, A: x, B: y, Same: x == y, Words: true, Was: was, Is: is})
	}
	top := func(key, label, x, y string) {
		say(key, label, x, y, a.Report.Solid.Outline.Bounds(), b.Report.Solid.Outline.Bounds())
	}
	parts := func(key, label string, words func(design.Design, units.System) string, ids func(design.Design) []design.ID) {
		say(key, label, words(da, sys), words(db, sys), around(da, ids(da)), around(db, ids(db)))
	}
	top("finish", "Face", faceWords(da.Finish), faceWords(db.Finish))
	top("edges", "Edges", edgesWords(a.Report, sys), edgesWords(b.Report, sys))
	top("corners", "Corners", cornersWords(da, a.Report.Solid, sys), cornersWords(db, b.Report.Solid, sys))
	parts("channels", "Channels", channelsWords, func(d design.Design) []design.ID {
		return list(d.Channels, func(c design.Channel) design.ID { return c.ID })
	})
	parts("glass", "Glass beds", bedsWords, func(d design.Design) []design.ID {
		return list(d.Glass, func(g design.GlassBed) design.ID { return g.ID })
	})
	parts("sinks", "Sinks", sinksWords, func(d design.Design) []design.ID {
		return list(d.Sinks, func(k design.Sink) design.ID { return k.ID })
	})
	parts("taps", "Taps", tapsWords, func(d design.Design) []design.ID {
		return list(d.Taps, func(t design.TapSet) design.ID { return t.ID })
	})
	parts("holes", "Holes", holesWords, func(d design.Design) []design.ID {
		return list(d.Holes, func(h design.Hole) design.ID { return h.ID })
	})
	parts("supports", "Rests on", func(d design.Design, _ units.System) string { return supportsWords(d) },
		func(d design.Design) []design.ID {
			return list(d.Supports, func(s design.Support) design.ID { return s.ID })
		})
	return out
}

// around is the box of several parts, mm.
func around(d design.Design, ids []design.ID) geom.Box {
	box := geom.EmptyBox()
	for _, id := range ids {
		if b := change.Extent(d, id); !b.Empty() {
			box = box.Include(b.Min).Include(b.Max)
		}
	}
	return box
}

// warnedAt is where r is warned of what other is not.
func warnedAt(r, other report.Report) geom.Box {
	box := geom.EmptyBox()
	for _, w := range report.Only(r, other) {
		if w.At.Finite() {
			box = box.Include(w.At)
		}
	}
	return box
}

// differing is what a table of differences tells, words and numbers apart.
func differing(job design.Job, a, b Side, cost bool) (words, numbers []Contrast) {
	for _, c := range Contrasts(job, a, b, cost) {
		switch {
		case c.Same:
		case c.Words:
			words = append(words, c)
		default:
			numbers = append(numbers, c)
		}
	}
	return words, numbers
}
