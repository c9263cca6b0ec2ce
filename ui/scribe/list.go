package scribe

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"example.org/castwright/model/edit"
	"example.org/castwright/model/units"
)

// mostRows bounds the table; a tape is not read more often along one wall.
const mostRows = 100

// row is a measurement as it was typed: how far along the wall, and the gap there.
type row struct{ along, gap string }

func (r row) empty() bool { return strings.TrimSpace(r.along) == "" && strings.TrimSpace(r.gap) == "" }

// read reads a row; an empty gap is none.
func (r row) read(sys units.System) (o edit.Offset, err error) {
	if strings.TrimSpace(r.along) == "" {
		return o, errors.New("a gap has no place: type how far along the wall it was measured")
	}
	if o.Along, err = units.Parse(r.along, sys); err != nil {
		return o, err
	}
	if o.Along < 0 {
		return o, fmt.Errorf("%q lies before the end of the edge: measure from the end on", r.along)
	}
	if strings.TrimSpace(r.gap) != "" {
		o.Gap, err = units.Parse(r.gap, sys)
	}
	return o, err
}

// offsets reads all rows that are not empty, in order along an edge of a length.
// With a fault it still gives those that can be used.
func offsets(rows []row, length units.Length, sys units.System) (list []edit.Offset, fault error) {
	for i, r := range rows {
		if r.empty() {
			continue
		}
		o, err := r.read(sys)
		if err == nil && o.Along > length {
			err = fmt.Errorf("%s lies beyond the edge, which is %s long", units.Format(o.Along, sys), units.Format(length, sys))
		}
		if err != nil {
			if fault == nil {
				fault = fmt.Errorf("row %d: %w", i+1, err)
			}
			continue
		}
		list = append(list, o)
	}
	slices.SortStableFunc(list, func(a, b edit.Offset) int { return int(max(-1, min(1, a.Along-b.Along))) })
	for i := 1; i < len(list); i++ {
		if list[i].Along == list[i-1].Along {
			return slices.Delete(list, i, i+1), fmt.Errorf("two rows stand at %s: leave one out",
				units.Format(list[i].Along, sys))
		}
	}
	return list, fault
}

// turned is a list measured from the other end of an edge of a length.
func turned(list []edit.Offset, length units.Length) []edit.Offset {
	out := make([]edit.Offset, len(list))
	for i, o := range list {
		out[len(list)-1-i] = edit.Offset{Along: length - o.Along, Gap: o.Gap}
	}
	return out
}

// pasted reads a list of a line for each measurement: how far along, and the gap,
// parted by a tab, a semicolon, blanks or a comma.
func pasted(text string, sys units.System) ([]row, error) {
	var out []row
	for i, line := range strings.Split(strings.ReplaceAll(text, "\r", "\n"), "\n") {
		line = strings.TrimSpace(line)
		if line == "" {
			continue
		}
		r, ok := parted(line, sys)
		if !ok {
			if len(out) == 0 && !strings.ContainsAny(line, "0123456789") {
				continue // a heading
			}
			return nil, fmt.Errorf("line %d, %q, is not two lengths: give how far along and the gap there", i+1, line)
		}
		if out = append(out, r); len(out) > mostRows {
			return nil, fmt.Errorf("the list has more than %d lines: leave some out", mostRows)
		}
	}
	if len(out) == 0 {
		return nil, errors.New("there is no list to paste: copy one of a line for each measurement, how far along and the gap")
	}
	return out, nil
}

// parted splits a line in two lengths. Lengths may hold blanks and commas
// themselves ("25 1/2", "12,5"): the shortest second one that can be read counts.
func parted(line string, sys units.System) (row, bool) {
	reads := func(r row) bool {
		_, err := r.read(sys)
		return err == nil && strings.TrimSpace(r.gap) != ""
	}
	for _, by := range [...]string{"\t", ";", " ", ","} {
		for i := len(line) - 1; i > 0; i-- {
			if line[i] != by[0] {
				continue
			}
			if r := (row{strings.TrimSpace(line[:i]), strings.TrimSpace(line[i+1:])}); reads(r) {
				return r, true
			}
		}
	}
	r := row{along: line}
	_, err := r.read(sys)
	return r, err == nil && !strings.ContainsAny(line, "\t;")
}
