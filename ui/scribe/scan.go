package scribe

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strconv"

	"example.org/castwright/model/geom"
	"example.org/castwright/model/template"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/files"
)

// askForScan takes the offsets from a drawing of the wall: the longest open line
// of an SVG or DXF.
func (t *table) askForScan() {
	start := ""
	if t.s.Folder != nil {
		start = t.s.Folder()
	}
	files.Choose(t.s.Frame, files.Wish{Title: "Take the wall from a scan", Accept: "Take it", Ext: ".svg .dxf", Start: start}, t.scan)
}

// scan reads a drawing of the wall; one that does not say its unit is asked about,
// with the length that each answer gives.
func (t *table) scan(path string) {
	data, err := readScan(path)
	if err != nil {
		t.say(err)
		return
	}
	lines, err := template.Walls(data, template.UnitUnknown)
	if !errors.Is(err, template.ErrUnits) {
		t.takeScan(path, lines, err)
		return
	}
	sys := t.s.Session.Job().Units
	answer := func(u template.Unit, word string) control.Answer {
		text := word
		lines, err := template.Walls(data, u)
		if err == nil {
			l := lines[0]
			text = word + ": " + units.Format(units.FromMM(l[len(l)-1].Dist(l[0])), sys) + " long"
		}
		return control.Answer{Text: text, Then: func() { t.takeScan(path, lines, err) }}
	}
	control.Ask(t.s.Frame, "In which unit?", filepath.Base(path)+" does not say its unit. The edge is "+
		units.Format(t.length, sys)+" long.", control.Cancel(), answer(template.UnitMM, "mm"), answer(template.UnitInch, "inches"))
}

func (t *table) takeScan(path string, lines [][]geom.Vec, err error) {
	if err != nil {
		t.say(fmt.Errorf("the drawing %s: %w", filepath.Base(path), err))
		return
	}
	t.fill(wallRows(lines[0], t.length, t.flip, t.s.Session.Job().Units))
}

// mostScan is how much of a scan is read.
const mostScan = 32 << 20

func readScan(path string) ([]byte, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	data, err := io.ReadAll(io.LimitReader(f, mostScan+1))
	if err == nil && len(data) > mostScan {
		err = fmt.Errorf("%s: the file is larger than %d MB: save only the wall", filepath.Base(path), mostScan>>20)
	}
	return data, err
}

// scanned is how near in millimetres the rows keep to a scan at first.
const scanned = 0.5

// wallRows are the rows of a scanned wall, measured from its left or lower end,
// as many as keep near to the scan. A drawing is seen from above, with the top
// below the wall: an edge that runs against the wall's own direction, as the back
// one does, has it at its outside to the left.
func wallRows(line []geom.Vec, length units.Length, flip bool, sys units.System) []row {
	first, last := line[0], line[len(line)-1]
	way := last.Sub(first).Unit()
	out := way.Left()
	if !flip {
		out = out.Mul(-1)
	}
	for tol := scanned; ; tol *= 1.5 {
		var rows []row
		for _, p := range geom.Thinned(line, tol) {
			along, gap := p.Sub(first).Dot(way), p.Sub(first).Dot(out)
			if p == first || p == last || along <= 0 || along >= length.MM() {
				continue
			}
			rows = append(rows, row{lengthText(along, sys), lengthText(gap, sys)})
		}
		if len(rows) < mostRows {
			return rows
		}
	}
}

// lengthText writes a measured length to a tenth of a millimetre or three decimals
// of an inch.
func lengthText(mm float64, sys units.System) string {
	if sys == units.Imperial {
		return strconv.FormatFloat(mm/25.4, 'f', 3, 64)
	}
	return strconv.FormatFloat(mm, 'f', 1, 64)
}
