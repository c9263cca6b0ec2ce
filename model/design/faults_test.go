package design_test

import (
	"math"
	"strings"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/units"
)

const mm = units.Millimetre

func at(x, y units.Length) design.Point { return design.Point{X: x * mm, Y: y * mm} }

// sound is a design with one of everything and no fault.
func sound() design.Design {
	square := []design.Node{{At: at(0, 0)}, {At: at(100, 0)}, {At: at(100, 100)}, {At: at(0, 100)}}
	return design.Design{
		Outline:   design.Outline{Nodes: []design.Node{{At: at(0, 0)}, {At: at(1200, 0)}, {At: at(1200, 560)}, {At: at(0, 560)}}},
		Thickness: 38 * mm,
		Sinks: []design.Sink{{ID: "sink", At: at(600, 280), Shape: design.Shape{Width: 400 * mm, Depth: 300 * mm, CornerRadius: 40 * mm},
			Reveal: design.Reveal{Kind: design.RevealRimShows, Size: 3 * mm}}},
		Taps:  []design.TapSet{{ID: "taps", Pattern: design.TapOwn, Holes: []design.Point{{}}, Diameter: 35 * mm, Sink: "sink", SetBack: 60 * mm}},
		Holes: []design.Hole{{ID: "soap", At: at(900, 500), Diameter: 32 * mm}},
		Channels: []design.Channel{{ID: "river", Depth: 10 * mm,
			Rivers:  []design.River{{Nodes: []design.RiverNode{{At: at(50, 50), Width: 20 * mm}, {At: at(300, 90), Width: 20 * mm}}}},
			Regions: []design.Region{{Outer: square, Islands: [][]design.Node{{{At: at(20, 20)}, {At: at(60, 20)}, {At: at(40, 60)}}}}},
			Fill:    design.Fill{Resin: true, Opacity: units.Whole, Glass: &design.GlassFill{Grain: 4 * mm, Share: 20 * units.Percent}}}},
		Glass:    []design.GlassBed{{ID: "bed", Region: design.Region{Outer: square}, Grain: 6 * mm, Coverage: 50 * units.Percent, Depth: 6 * mm}},
		Finish:   design.Finish{Polish: 2, Grind: mm},
		Supports: []design.Support{{ID: "wall", Line: []design.Point{at(0, 550), at(1200, 550)}, Width: 40 * mm}},
	}
}

func TestSoundDesign(t *testing.T) {
	for _, f := range sound().Validate() {
		t.Errorf("%s: %v", f.Rule, f)
	}
}

func TestEveryFault(t *testing.T) {
	far := units.Length(math.MaxInt64)
	for _, c := range []struct {
		name  string
		rule  design.Rule
		part  design.ID
		field string
		edit  func(d *design.Design)
	}{
		{"no thickness", design.RuleRange, "", "thickness_mm", func(d *design.Design) { d.Thickness, d.Finish.Grind, d.Channels, d.Glass = 0, 0, nil, nil }},
		{"thin", design.RuleRange, "", "thickness_mm", func(d *design.Design) { d.Thickness, d.Channels, d.Glass = 9*mm, nil, nil }},
		{"thick", design.RuleRange, "", "thickness_mm", func(d *design.Design) { d.Thickness = 151 * mm }},
		{"no outline", design.RuleMissing, "", "outline.nodes", func(d *design.Design) { d.Outline.Nodes = nil }},
		{"two straight nodes", design.RuleMissing, "", "outline.nodes", func(d *design.Design) { d.Outline.Nodes = d.Outline.Nodes[:2] }},
		{"far node", design.RuleRange, "", "outline.nodes[1].at_mm", func(d *design.Design) { d.Outline.Nodes[1].At.X = -far }},
		{"farthest node", design.RuleRange, "", "outline.nodes[1].at_mm", func(d *design.Design) { d.Outline.Nodes[1].At.X = math.MinInt64 }},
		{"doubled node", design.RuleZeroEdge, "", "outline.nodes[0].edge", func(d *design.Design) { d.Outline.Nodes[1].At = d.Outline.Nodes[0].At }},
		{"touching node", design.RuleCrossing, "", "outline.nodes[4].at_mm", func(d *design.Design) {
			d.Outline.Nodes = append(d.Outline.Nodes, design.Node{At: at(1200, 0)}, design.Node{At: at(0, 300)})
		}},
		{"unknown curve", design.RuleKind, "", "outline.nodes[2].edge.curve", func(d *design.Design) { d.Outline.Nodes[2].Edge.Curve = 9 }},
		{"unknown side", design.RuleKind, "", "outline.nodes[2].edge.side", func(d *design.Design) { d.Outline.Nodes[2].Edge.Side = 9 }},
		{"great rise", design.RuleRise, "", "outline.nodes[1].edge.rise_mm", func(d *design.Design) {
			d.Outline.Nodes[1].Edge = design.Edge{Curve: design.CurveArc, Rise: 6000 * mm}
		}},
		{"rise out of range", design.RuleRange, "", "outline.nodes[0].edge.rise_mm", func(d *design.Design) {
			d.Outline.Nodes[0].Edge = design.Edge{Curve: design.CurveArc, Rise: -10001 * mm}
		}},
		{"far control point", design.RuleRange, "", "outline.nodes[0].edge.c2_mm", func(d *design.Design) {
			d.Outline.Nodes[0].Edge = design.Edge{Curve: design.CurveSpline, C1: at(300, 0), C2: design.Point{Y: far}}
		}},
		{"rounded without size", design.RuleMissing, "", "outline.nodes[3].corner.size_mm", func(d *design.Design) { d.Outline.Nodes[3].Corner.Kind = design.CornerRounded }},
		{"negative chamfer", design.RuleRange, "", "outline.nodes[3].corner.size_mm", func(d *design.Design) {
			d.Outline.Nodes[3].Corner = design.Corner{Kind: design.CornerChamfered, Size: -mm}
		}},
		{"unknown corner", design.RuleKind, "", "outline.nodes[3].corner.kind", func(d *design.Design) { d.Outline.Nodes[3].Corner.Kind = 7 }},
		{"profile without size", design.RuleMissing, "", "outline.nodes[0].edge.profile.size_mm", func(d *design.Design) { d.Outline.Nodes[0].Edge.Profile.Kind = design.ProfileEased }},
		{"profile larger than the slab", design.RuleProfile, "", "outline.nodes[0].edge.profile.size_mm", func(d *design.Design) {
			d.Outline.Nodes[0].Edge.Profile = design.Profile{Kind: design.ProfileRounded, Size: 39 * mm}
		}},
		{"unknown profile", design.RuleKind, "", "outline.nodes[0].edge.profile.kind", func(d *design.Design) { d.Outline.Nodes[0].Edge.Profile.Kind = 200 }},
		{"sink without ID", design.RuleMissing, "", "sinks[0].id", func(d *design.Design) { d.Sinks[0].ID, d.Taps = "", nil }},
		{"shared ID", design.RuleDuplicate, "sink", "holes[0].id", func(d *design.Design) { d.Holes[0].ID = "sink" }},
		{"far sink", design.RuleRange, "sink", "sinks[0].at_mm", func(d *design.Design) { d.Sinks[0].At.Y = 21 * units.Metre }},
		{"sink without width", design.RuleMissing, "sink", "sinks[0].shape.width_mm", func(d *design.Design) { d.Sinks[0].Shape.Width = 0 }},
		{"sink of negative depth", design.RuleRange, "sink", "sinks[0].shape.depth_mm", func(d *design.Design) { d.Sinks[0].Shape.Depth = -mm }},
		{"corner radius too large", design.RuleShape, "sink", "sinks[0].shape.corner_radius_mm", func(d *design.Design) { d.Sinks[0].Shape.CornerRadius = 151 * mm }},
		{"bow too large", design.RuleShape, "sink", "sinks[0].shape.bow_mm", func(d *design.Design) {
			d.Sinks[0].Shape.Kind, d.Sinks[0].Shape.Bow = design.ShapeD, 201*mm
		}},
		{"empty path", design.RuleMissing, "sink", "sinks[0].shape.path", func(d *design.Design) { d.Sinks[0].Shape.Kind = design.ShapePath }},
		{"unknown shape", design.RuleKind, "sink", "sinks[0].shape.kind", func(d *design.Design) { d.Sinks[0].Shape.Kind = 77 }},
		{"unknown mount", design.RuleKind, "sink", "sinks[0].mount", func(d *design.Design) { d.Sinks[0].Mount = 77 }},
		{"negative reveal", design.RuleRange, "sink", "sinks[0].reveal.size_mm", func(d *design.Design) { d.Sinks[0].Reveal.Size = -mm }},
		{"vessel without drain", design.RuleMissing, "sink", "sinks[0].drain_mm", func(d *design.Design) { d.Sinks[0].Mount = design.MountVessel }},
		{"negative rim", design.RuleRange, "sink", "sinks[0].rim_mm", func(d *design.Design) { d.Sinks[0].Mount, d.Sinks[0].Rim = design.MountOver, -mm }},
		{"endless bowl", design.RuleRange, "sink", "sinks[0].bowl_mass_kg", func(d *design.Design) { d.Sinks[0].BowlMass = math.Inf(1) }},
		{"bowl of no number", design.RuleRange, "sink", "sinks[0].bowl_mass_kg", func(d *design.Design) { d.Sinks[0].BowlMass = math.NaN() }},
		{"deep bowl", design.RuleRange, "sink", "sinks[0].bowl_depth_mm", func(d *design.Design) { d.Sinks[0].BowlDepth = far }},
		{"taps without holes", design.RuleMissing, "taps", "taps[0].holes_mm", func(d *design.Design) { d.Taps[0].Holes = nil }},
		{"taps without diameter", design.RuleMissing, "taps", "taps[0].diameter_mm", func(d *design.Design) { d.Taps[0].Diameter = 0 }},
		{"far set-back", design.RuleRange, "taps", "taps[0].set_back_mm", func(d *design.Design) { d.Taps[0].SetBack = far }},
		{"unknown pattern", design.RuleKind, "taps", "taps[0].pattern", func(d *design.Design) { d.Taps[0].Pattern = 8 }},
		{"hole without diameter", design.RuleMissing, "soap", "holes[0].diameter_mm", func(d *design.Design) { d.Holes[0].Diameter = 0 }},
		{"channel as deep as the slab", design.RuleDepth, "river", "channels[0].depth_mm", func(d *design.Design) { d.Channels[0].Depth = 38 * mm }},
		{"empty channel", design.RuleMissing, "river", "channels[0]", func(d *design.Design) { d.Channels[0].Rivers, d.Channels[0].Regions = nil, nil }},
		{"river of one node", design.RuleMissing, "river", "channels[0].rivers[0].nodes", func(d *design.Design) { d.Channels[0].Rivers[0].Nodes = d.Channels[0].Rivers[0].Nodes[:1] }},
		{"river without width", design.RuleMissing, "river", "channels[0].rivers[0].nodes[1].width_mm", func(d *design.Design) { d.Channels[0].Rivers[0].Nodes[1].Width = 0 }},
		{"doubled river node", design.RuleZeroEdge, "river", "channels[0].rivers[0].nodes[1].at_mm", func(d *design.Design) {
			d.Channels[0].Rivers[0].Nodes[1].At = d.Channels[0].Rivers[0].Nodes[0].At
		}},
		{"unknown river end", design.RuleKind, "river", "channels[0].rivers[0].end", func(d *design.Design) { d.Channels[0].Rivers[0].End = 5 }},
		{"bad island", design.RuleMissing, "river", "channels[0].regions[0].islands[0]", func(d *design.Design) {
			d.Channels[0].Regions[0].Islands[0] = d.Channels[0].Regions[0].Islands[0][:1]
		}},
		{"opaque beyond whole", design.RuleRange, "river", "channels[0].fill.opacity_percent", func(d *design.Design) { d.Channels[0].Fill.Opacity = units.Whole + 1 }},
		{"thick top coat", design.RuleRange, "river", "channels[0].fill.top_coat_mm", func(d *design.Design) { d.Channels[0].Fill.TopCoat = 51 * mm }},
		{"glass without size", design.RuleMissing, "river", "channels[0].fill.glass.grain_mm", func(d *design.Design) { d.Channels[0].Fill.Glass.Grain = 0 }},
		{"negative glass", design.RuleRange, "river", "channels[0].fill.glass.share_percent", func(d *design.Design) { d.Channels[0].Fill.Glass.Share = -1 }},
		{"bed without grain", design.RuleMissing, "bed", "glass_beds[0].grain_mm", func(d *design.Design) { d.Glass[0].Grain = 0 }},
		{"bed more than full", design.RuleRange, "bed", "glass_beds[0].coverage_percent", func(d *design.Design) { d.Glass[0].Coverage = 2 * units.Whole }},
		{"bed through the slab", design.RuleDepth, "bed", "glass_beds[0].depth_mm", func(d *design.Design) { d.Glass[0].Depth = 40 * mm }},
		{"unpolished", design.RuleRange, "", "finish.polish", func(d *design.Design) { d.Finish.Polish = 0 }},
		{"ground away", design.RuleRange, "", "finish.grind_mm", func(d *design.Design) { d.Finish.Grind = 20 * mm }},
		{"unknown exposure", design.RuleKind, "", "finish.exposure", func(d *design.Design) { d.Finish.Exposure = 4 }},
		{"support of one point", design.RuleMissing, "wall", "supports[0].line_mm", func(d *design.Design) { d.Supports[0].Line = d.Supports[0].Line[:1] }},
		{"patch of two points", design.RuleMissing, "wall", "supports[0].line_mm", func(d *design.Design) { d.Supports[0].Patch = true }},
		{"support without width", design.RuleMissing, "wall", "supports[0].width_mm", func(d *design.Design) { d.Supports[0].Width = 0 }},
		{"many channels", design.RuleCount, "", "channels", func(d *design.Design) {
			for i := range design.MaxInlays {
				c := d.Channels[0]
				c.ID = design.ID(strings.Repeat("x", i+1))
				d.Channels = append(d.Channels, c)
			}
		}},
	} {
		d := sound()
		c.edit(&d)
		faults := d.Validate()
		if len(faults) != 1 {
			t.Errorf("%s: %d faults, want one: %v", c.name, len(faults), faults)
		}
		for _, f := range faults {
			if f.Rule != c.rule || f.Part != c.part || f.Field != c.field {
				t.Errorf("%s: %s on %q at %s, want %s on %q at %s", c.name, f.Rule, f.Part, f.Field, c.rule, c.part, c.field)
			}
			if !strings.Contains(f.Detail, ": ") || strings.Contains(f.Detail, "%!") {
				t.Errorf("%s: it does not say what to do: %q", c.name, f.Detail)
			}
		}
	}
}

// Validating never writes into the design.
func TestValidateLeavesTheDesign(t *testing.T) {
	a, b := sound(), sound()
	a.Outline.Nodes[1].At.X, b.Outline.Nodes[1].At.X = -1, -1
	a.Validate()
	for i := range a.Outline.Nodes {
		if a.Outline.Nodes[i] != b.Outline.Nodes[i] {
			t.Errorf("node %d was changed", i)
		}
	}
}
