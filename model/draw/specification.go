package draw

import (
	"strconv"
	"strings"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edging"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/report"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/units"
)

// Row is one thing said of a top: a label, "" where it is that of the row before,
// and words.
type Row struct{ Label, Words string }

// Specification says in words all that the client agrees to.
func Specification(d design.Design, r report.Report, sys units.System) []Row {
	var out []Row
	say := func(label string, words ...string) {
		for _, w := range words {
			if w == "" {
				continue
			}
			if len(out) > 0 && label != "" && lastLabel(out) == label {
				out = append(out, Row{"", w})
			} else {
				out = append(out, Row{label, w})
			}
		}
	}
	size := units.Format(units.FromMM(r.Measures.Bounds.W()), sys) + " × " + units.Format(units.FromMM(r.Measures.Bounds.H()), sys)
	say("Size", size+", "+units.Format(d.Thickness, sys)+" thick")
	weight := "About " + whole(r.Takeoff.WeightDry.Value, sys)
	if full := r.Takeoff.WeightFull.Value; full > r.Takeoff.WeightDry.Value+1 {
		weight += "; about " + whole(full, sys) + " with sink and water"
	}
	say("Weight", weight)
	say("Face", faceWords(d.Finish))
	say("Edges", edgeRows(r.Solid, sys)...)
	say("Corners", cornersWords(d, r.Solid, sys))
	for _, k := range d.Sinks {
		say("Sink", sinkRow(k, sys))
	}
	for _, t := range d.Taps {
		say("Taps", tapRow(t, sys))
	}
	say("Holes", holesWords(d, sys))
	for _, c := range d.Channels {
		say("Channel", channelRow(c, r.Solid, sys))
	}
	say("Glass", list(d.Glass, func(g design.GlassBed) string {
		_, more := bedWords(g, sys)
		return sentence(more)
	})...)
	say("Rests on", supportsWords(d))
	say("Notes", strings.Join(strings.Fields(d.Notes), " "))
	return out
}

func lastLabel(rows []Row) string {
	for i := len(rows) - 1; i >= 0; i-- {
		if rows[i].Label != "" {
			return rows[i].Label
		}
	}
	return ""
}

func list[T, S any](of []T, words func(T) S) []S {
	out := make([]S, len(of))
	for i, x := range of {
		out[i] = words(x)
	}
	return out
}

// whole is a weight as people say it: to the kilogram or the pound.
func whole(kg float64, sys units.System) string {
	if sys == units.Imperial {
		return strconv.FormatFloat(kg/units.PoundKG, 'f', 0, 64) + " lb"
	}
	return strconv.FormatFloat(kg, 'f', 0, 64) + " kg"
}

// maxEdgeRows is the most kinds of edge that are told one by one.
const maxEdgeRows = 30

// edgeRows says of every edge what it is: "front (2) and right: half round". Edges
// that are alike stand together. Where the sides do not tell edges apart they go by
// the numbers that the drawing bears.
func edgeRows(s slab.Solid, sys units.System) []string {
	numbers := edging.Numbers(s.Sides)
	var order []edging.Finish
	sides := map[edging.Finish][]string{}
	for _, side := range edging.Edges(s.Sides) {
		g := edging.Of(side)
		if sides[g] == nil {
			order = append(order, g)
		}
		name := edging.Facing(side.Points)
		if n, ok := numbers[side.Node]; ok {
			name = strconv.Itoa(n) + " (" + name + ")"
		}
		sides[g] = append(sides[g], name)
	}
	var out, walls []string
	for i, g := range order {
		if i == maxEdgeRows {
			out = append(out, "And "+strconv.Itoa(len(order)-i)+" more kinds of edge, as drawn")
			break
		}
		names := sides[g]
		start := ""
		switch {
		case len(order) == 1:
			names = []string{"all round"}
		case numbers == nil:
			names = edging.BySide(names)
		case len(names) == 1:
			start = "edge "
		default:
			start = "edges "
		}
		words := sentence(start+edging.And(names)+": ") + g.Words(sys)
		if g.Wall {
			walls = append(walls, words)
			continue
		}
		out = append(out, words)
	}
	return append(out, walls...)
}

func sentence(s string) string {
	if s == "" {
		return ""
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

func lower(s string) string {
	if s == "" {
		return ""
	}
	return strings.ToLower(s[:1]) + s[1:]
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

// tallied is words, equal ones once with their number behind: "front left (2)".
func tallied(list []string) []string {
	var order []string
	n := map[string]int{}
	for _, w := range list {
		if n[w]++; n[w] == 1 {
			order = append(order, w)
		}
	}
	for i, w := range order {
		if n[w] > 1 {
			order[i] = w + " (" + strconv.Itoa(n[w]) + ")"
		}
	}
	return order
}

// cornersWords says which corners are cut and how: "rounded 70 mm front left".
func cornersWords(d design.Design, s slab.Solid, sys units.System) string {
	var order []string
	where := map[string][]string{}
	for i, n := range d.Outline.Nodes {
		words := ""
		switch n.Corner.Kind {
		case design.CornerRounded:
			words = "rounded " + units.Format(n.Corner.Size, sys)
		case design.CornerChamfered:
			words = "clipped " + units.Format(n.Corner.Size, sys)
		default:
			continue
		}
		if where[words] == nil {
			order = append(order, words)
		}
		where[words] = append(where[words], cornerName(i, n, s))
	}
	for i, words := range order {
		order[i] = words + " " + edging.And(tallied(where[words]))
	}
	return sentence(strings.Join(order, "; "))
}

// cornerName says where a corner is: "front left", "inside".
func cornerName(i int, n design.Node, s slab.Solid) string {
	if turnsRight(i, s) {
		return "inside corner"
	}
	c := s.Outline.Bounds().Centre()
	at := geom.Vec{X: n.At.X.MM(), Y: n.At.Y.MM()}
	side, end := "front", "left"
	if at.Y > c.Y {
		side = "back"
	}
	if at.X > c.X {
		end = "right"
	}
	return side + " " + end
}

// turnsRight reports whether the outline, which runs counter-clockwise, turns right
// at a cut corner: from the run before its cut to the run after it.
func turnsRight(corner int, s slab.Solid) bool {
	n := len(s.Sides)
	for k, side := range s.Sides {
		if side.Corner != corner || s.Sides[(k+n-1)%n].Corner == corner {
			continue
		}
		after := k + 1
		if s.Sides[after%n].Corner == corner {
			after++
		}
		a, b := s.Sides[(k+n-1)%n].Points, s.Sides[after%n].Points
		return len(a) > 1 && len(b) > 1 && a[len(a)-1].Sub(a[len(a)-2]).Cross(b[1].Sub(b[0])) < 0
	}
	return false
}

// sinkRow says how a basin sits in the top.
func sinkRow(k design.Sink, sys units.System) string {
	size := units.Format(k.Shape.Width, sys)
	if k.Shape.Kind != design.ShapeCircle && k.Shape.Depth > 0 {
		size += " × " + units.Format(k.Shape.Depth, sys)
	} else {
		size = "Ø " + size
	}
	if k.Shape.Kind == design.ShapePath {
		size = "by its template"
	}
	shape := shapeWords[k.Shape.Kind]
	switch k.Mount {
	case design.MountOver:
		words := "Drop-in, " + shape + " cut-out " + size
		if k.Rim > 0 {
			words += "; its rim covers " + units.Format(k.Rim, sys) + " of the face all round"
		}
		return words
	case design.MountVessel:
		words := "Vessel, stands on the top, " + shape + ", " + size
		if k.Drain > 0 {
			words += "; drain hole Ø " + units.Format(k.Drain, sys)
		}
		return words
	}
	words := "Under-mount, " + shape + " bowl " + size + "; "
	switch {
	case k.Reveal.Kind == design.RevealRimShows && k.Reveal.Size > 0:
		words += "the bowl's rim shows " + units.Format(k.Reveal.Size, sys)
	case k.Reveal.Kind == design.RevealOverhang && k.Reveal.Size > 0:
		words += "the concrete overhangs the bowl by " + units.Format(k.Reveal.Size, sys)
	default:
		words += "concrete and bowl are flush"
	}
	if k.Profile.Kind != design.ProfileSquare {
		words += "; edge " + lower(edging.ProfileWords(k.Profile, sys))
	}
	return words
}

// tapRow says what tap holes there are and where their line lies.
func tapRow(t design.TapSet, sys units.System) string {
	words := TapWords(t, sys)
	if t.Sink == "" {
		return words
	}
	switch {
	case t.Offset == 0:
		words += "; on the sink's centreline"
	case t.Offset > 0:
		words += "; " + units.Format(t.Offset, sys) + " to the right of the sink's centreline"
	default:
		words += "; " + units.Format(-t.Offset, sys) + " to the left of the sink's centreline"
	}
	return words + ", " + units.Format(t.SetBack, sys) + " from the back edge"
}

func holesWords(d design.Design, sys units.System) string {
	names := [...]string{"drain hole", "soap hole", "cable hole", "hole"}
	return sentence(counted(list(d.Holes, func(h design.Hole) string {
		name := names[len(names)-1]
		if int(h.Kind) < len(names) {
			name = names[h.Kind]
		}
		return name + " Ø " + units.Format(h.Diameter, sys)
	})))
}

// channelRow says what a channel is filled with and where it leaves the top.
func channelRow(c design.Channel, s slab.Solid, sys units.System) string {
	title, more := fillWords(c, sys)
	words := title + ", " + more
	if c.Fill.Resin && c.Fill.TopCoat > 0 {
		words += ", top coat " + units.Format(c.Fill.TopCoat, sys)
	}
	var ends []string
	for _, r := range s.Recesses {
		if r.Part != c.ID {
			continue
		}
		for _, open := range r.Open {
			for _, side := range s.Sides {
				if side.Node == open.Node && side.Corner < 0 && len(side.Points) > 1 {
					ends = append(ends, edging.Facing(side.Points))
					break
				}
			}
		}
	}
	if len(ends) > 0 {
		edge := " edge"
		if len(ends) > 1 {
			edge = " edges"
		}
		words += "; runs out at the " + edging.And(tallied(ends)) + edge
	}
	return words
}

func supportsWords(d design.Design) string {
	names := [...]string{"wall bearing", "cabinet gable", "rail", "bracket", "leg"}
	var order []string
	n := map[string]int{}
	for _, s := range d.Supports {
		if int(s.Kind) < len(names) {
			if n[names[s.Kind]]++; n[names[s.Kind]] == 1 {
				order = append(order, names[s.Kind])
			}
		}
	}
	for i, name := range order {
		if k := n[name]; k > 1 {
			order[i] = strconv.Itoa(k) + " " + name + "s"
		} else {
			order[i] = "a " + name
		}
	}
	return sentence(edging.And(order))
}

// shapeWords names the shapes of a basin.
var shapeWords = map[design.ShapeKind]string{
	design.ShapeRectangle: "rectangular", design.ShapeEllipse: "oval", design.ShapeCircle: "round",
	design.ShapeD: "D-shaped", design.ShapePath: "own shape",
}
