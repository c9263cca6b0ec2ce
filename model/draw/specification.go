package draw

import (
	"strconv"
	"strings"

	"example.org/castwright/model/design"
	"example.org/castwright/model/report"
	"example.org/castwright/model/units"
)

// Row is one thing said of a top: a label and words.
type Row struct{ Label, Words string }

// Specification says in words all that the client agrees to.
func Specification(d design.Design, r report.Report, sys units.System) []Row {
	size := units.Format(units.FromMM(r.Measures.Bounds.W()), sys) + " × " + units.Format(units.FromMM(r.Measures.Bounds.H()), sys)
	rows := []Row{
		{"Size", size + ", " + units.Format(d.Thickness, sys) + " thick"},
		{"Face", faceWords(d.Finish)},
		{"Edges", edgesWords(r, sys)},
		{"Corners", cornersWords(d, sys)},
		{"Basin", sinksWords(d, sys)},
		{"Taps", tapsWords(d, sys)},
		{"Holes", holesWords(d, sys)},
		{"Resin", channelsWords(d, sys)},
		{"Glass", bedsWords(d, sys)},
		{"Weight", "about " + units.FormatMass(r.Takeoff.WeightDry.Value, sys)},
		{"Rests on", supportsWords(d)},
		{"Notes", strings.Join(strings.Fields(d.Notes), " ")},
	}
	out := rows[:0]
	for _, row := range rows {
		if row.Words != "" {
			out = append(out, row)
		}
	}
	return out
}

// counted joins words, equal ones once with their number.
func counted(list []string) string {
	var order []string
	n := map[string]int{}
	for _, w := range list {
		if n[w] == 0 {
			order = append(order, w)
		}
		n[w]++
	}
	for i, w := range order {
		if n[w] > 1 {
			order[i] = strconv.Itoa(n[w]) + " × " + w
		}
	}
	return strings.Join(order, "; ")
}

func cornersWords(d design.Design, sys units.System) string {
	var list []string
	for _, n := range d.Outline.Nodes {
		switch n.Corner.Kind {
		case design.CornerRounded:
			list = append(list, "rounded "+units.Format(n.Corner.Size, sys))
		case design.CornerChamfered:
			list = append(list, "clipped "+units.Format(n.Corner.Size, sys))
		}
	}
	return counted(list)
}

func holesWords(d design.Design, sys units.System) string {
	names := [...]string{"drain hole", "soap hole", "cable hole", "hole"}
	var list []string
	for _, h := range d.Holes {
		name := names[len(names)-1]
		if int(h.Kind) < len(names) {
			name = names[h.Kind]
		}
		list = append(list, name+" "+units.Format(h.Diameter, sys))
	}
	return counted(list)
}

func supportsWords(d design.Design) string {
	names := [...]string{"wall bearing", "cabinet gable", "rail", "bracket", "leg"}
	var list []string
	for _, s := range d.Supports {
		if int(s.Kind) < len(names) {
			list = append(list, names[s.Kind])
		}
	}
	return counted(list)
}
