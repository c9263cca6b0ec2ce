package draw_test

import (
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/draw"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/units"
	"github.com/google/go-cmp/cmp"
)

// Everything that a client agrees to is said, by hand from the design of counter:
// the words are ours, so there is no outside source for them.
func TestSpecification(t *testing.T) {
	d := counter()
	d.Outline.Nodes[2].Edge.Side, d.Outline.Nodes[4].Edge.Side, d.Outline.Nodes[5].Edge.Side = design.SideWall, design.SideWall, design.SideWall
	d.Sinks = append(d.Sinks, design.Sink{ID: "sink-2", At: pt(200, 900), Mount: design.MountVessel, Drain: mm(45),
		Shape: design.Shape{Kind: design.ShapeCircle, Width: mm(300)}})
	d.Supports = append(d.Supports, d.Supports[0], design.Support{ID: "support-2", Kind: design.SupportBracket})
	r := derive(d)
	got := map[string][]string{}
	label := ""
	for _, row := range draw.Specification(d, r, units.Metric) {
		if row.Label != "" {
			label = row.Label
		}
		got[label] = append(got[label], row.Words)
	}
	delete(got, "Weight") // reckoned elsewhere
	want := map[string][]string{
		"Size": {"1600 mm × 1100 mm, 40 mm thick"},
		"Face": {"Coarse aggregate exposed, polished, warm grey"},
		"Edges": {"Edge 1 (front): half round", "Edge 2 (right): square", "Edge 4 (right): broken stone",
			"Edges 3 (front), 5 (back) and 6 (left): at the wall, not finished"},
		"Corners": {"Rounded 70 mm front left; rounded 80 mm inside corner"},
		"Sink": {"Under-mount, D-shaped bowl 460 mm × 350 mm; the concrete overhangs the bowl by 3 mm",
			"Vessel, stands on the top, round, Ø 300 mm; drain hole Ø 45 mm"},
		"Taps":     {"Three tap holes 35 mm, spread 203.2 mm; on the sink's centreline, 60 mm from the back edge"},
		"Holes":    {"Drain hole Ø 60 mm"},
		"Channel":  {"Resin river, blue-green, translucent, 12 mm deep; runs out at the front edge"},
		"Glass":    {"Blue-green, pieces about 8 mm, 45 % covered"},
		"Rests on": {"2 cabinet gables and a bracket"},
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

// Where the sides tell edges apart, they are named by them.
func TestEdgesBySide(t *testing.T) {
	d := counter()
	for i := range d.Outline.Nodes {
		d.Outline.Nodes[i].Edge.Profile = design.Profile{Kind: design.ProfileRounded, Size: mm(10)}
		d.Outline.Nodes[i].Edge.Side = design.SideSeen
	}
	d.Outline.Nodes[4].Edge.Side = design.SideWall
	for _, row := range draw.Specification(d, derive(d), units.Metric) {
		if row.Label == "Edges" && row.Words != "Front (2), left and right (2): rounded 10 mm" {
			t.Errorf("%q", row.Words)
		}
	}
}

// An inside corner is known for one wherever the outline starts, and so is a
// clipped one.
func TestInsideCorner(t *testing.T) {
	for _, kind := range []design.CornerKind{design.CornerRounded, design.CornerChamfered} {
		nodes := edit.LShape(mm(1600), mm(560), mm(520), mm(1100), mm(80)).Nodes
		for start := range nodes {
			d := design.Design{Thickness: mm(40), Finish: design.Finish{Polish: 1}}
			for i := range nodes {
				n := nodes[(start+i)%len(nodes)]
				if n.Corner.Kind != design.CornerSquare {
					n.Corner.Kind = kind
				}
				d.Outline.Nodes = append(d.Outline.Nodes, n)
			}
			want := map[design.CornerKind]string{design.CornerRounded: "Rounded 80 mm inside corner", design.CornerChamfered: "Clipped 80 mm inside corner"}[kind]
			for _, row := range draw.Specification(d, derive(d), units.Metric) {
				if row.Label == "Corners" && row.Words != want {
					t.Errorf("started at %d: %q, want %q", start, row.Words, want)
				}
			}
		}
	}
}

// What there is several times is told with its number, and what goes all round so.
func TestSeveral(t *testing.T) {
	d := counter()
	for i := range d.Outline.Nodes {
		d.Outline.Nodes[i].Edge.Profile, d.Outline.Nodes[i].Edge.Side = design.Profile{Kind: design.ProfileHalfRound}, design.SideSeen
		d.Outline.Nodes[i].Corner = design.Corner{Kind: design.CornerRounded, Size: mm(20)}
	}
	got := map[string]string{}
	for _, row := range draw.Specification(d, derive(d), units.Metric) {
		got[row.Label] = row.Words
	}
	if w := got["Edges"]; w != "All round: half round" {
		t.Errorf("edges %q", w)
	}
	if w := got["Corners"]; w != "Rounded 20 mm front left (2), inside corner, front right, back right and back left" {
		t.Errorf("corners %q", w)
	}
}
