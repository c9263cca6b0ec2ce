package change_test

import (
	"testing"

	"example.org/castwright/model/change"
	"example.org/castwright/model/design"
	"example.org/castwright/model/units"
	"github.com/google/go-cmp/cmp"
)

// outline is a top of straight edges through corners in millimetres,
// counter-clockwise.
func outline(finish func(i int) (design.ProfileKind, design.Side), at ...[2]int) design.Design {
	var d design.Design
	d.Thickness = 40 * mm
	for i, p := range at {
		n := design.Node{At: design.Point{X: units.Length(p[0]) * mm, Y: units.Length(p[1]) * mm}}
		n.Edge.Profile.Kind, n.Edge.Side = finish(i)
		d.Outline.Nodes = append(d.Outline.Nodes, n)
	}
	return d
}

var (
	oblong = [][2]int{{0, 0}, {1500, 0}, {1500, 550}, {0, 550}}
	// Edges 1 and 3 face the front, 2 and 4 the right.
	angle = [][2]int{{0, 0}, {500, 0}, {500, 500}, {1500, 500}, {1500, 1000}, {0, 1000}}
)

// all is edges of one kind but for some; those named walls are at a wall.
func all(kind design.ProfileKind, but map[int]design.ProfileKind, walls ...int) func(int) (design.ProfileKind, design.Side) {
	return func(i int) (design.ProfileKind, design.Side) {
		side := design.SideSeen
		for _, w := range walls {
			if w == i {
				side = design.SideWall
			}
		}
		if k, ok := but[i]; ok {
			return k, side
		}
		return kind, side
	}
}

// Which edges are finished otherwise is said by the side that they face, or by their
// number where that is not enough; the words are ours, so there is no outside source.
func TestEdges(t *testing.T) {
	const square, half, rough = design.ProfileSquare, design.ProfileHalfRound, design.ProfileRough
	saw := func(n int) (out [][2]int) { // n teeth at the front
		for i := range n {
			out = append(out, [2]int{i * 100, 0}, [2]int{i*100 + 50, 5})
		}
		return append(out, [2]int{n * 100, 0}, [2]int{n * 100, 500}, [2]int{0, 500})
	}
	thick := outline(all(rough, nil), oblong...)
	thin := outline(all(rough, nil), oblong...)
	for i := range thick.Outline.Nodes {
		thick.Outline.Nodes[i].Edge.Profile.Size, thin.Outline.Nodes[i].Edge.Profile.Size = 20*mm, 12*mm
	}
	for _, c := range []struct {
		name string
		a, b design.Design
		want []string
	}{
		{"one", outline(all(square, nil), oblong...), outline(all(square, map[int]design.ProfileKind{1: half}), oblong...),
			[]string{"Right edge: half round, was square"}},
		{"alike together", outline(all(square, nil, 2), oblong...), outline(all(half, nil, 2), oblong...),
			[]string{"Front, left and right edges: half round, were square"}},
		{"each its own", outline(all(square, nil, 2, 3), oblong...), outline(all(half, map[int]design.ProfileKind{1: rough}, 2, 3), oblong...),
			[]string{"Front edge: half round, was square", "Right edge: broken stone, was square"}},
		{"a wall taken away", outline(all(square, nil, 2, 3), oblong...), outline(all(square, nil, 2), oblong...),
			[]string{"Left edge: square, was at the wall, not finished"}},
		{"by number", outline(all(square, nil), angle...), outline(all(square, map[int]design.ProfileKind{2: half}), angle...),
			[]string{"Edge 3 (front): half round, was square"}},
		{"by the numbers of what was", outline(all(square, map[int]design.ProfileKind{0: rough, 3: rough}), angle...), outline(all(square, nil), angle...),
			[]string{"Edges 1 (front) and 4 (right): square, were broken stone"}},
		{"two at a side, both", outline(all(square, nil, 4, 5), angle...), outline(all(half, nil, 4, 5), angle...),
			[]string{"Front (2) and right (2) edges: half round, were square"}},
		{"too many to be numbered", outline(all(square, nil), saw(13)...), outline(all(square, map[int]design.ProfileKind{0: half, 1: half}), saw(13)...),
			[]string{"2 of 26 front edges: half round, were square"}},
		{"one of too many", outline(all(square, nil), saw(13)...), outline(all(square, map[int]design.ProfileKind{0: half}), saw(13)...),
			[]string{"1 of 26 front edges: half round, was square"}},
		{"other edges", outline(all(square, nil, 2), oblong...), outline(all(square, map[int]design.ProfileKind{0: half}, 4), angle...),
			[]string{"Outline", "Front edges: half round and square, was square"}},
		{"the liner alone", thin, thick, []string{"All edges: broken stone 20 mm, were broken stone 12 mm"}},
		{"not seen", outline(all(square, nil, 0, 1, 2, 3), oblong...), outline(all(half, nil, 0, 1, 2, 3), oblong...),
			[]string{"An edge at the wall, which is not seen, has another profile"}},
		{"the same", outline(all(half, nil, 2), angle...), outline(all(half, nil, 2), angle...), nil},
	} {
		var got []string
		for _, x := range change.Between(c.a, c.b, units.Metric) {
			if x.EdgesIs == nil && c.name == "other edges" {
				x.Words = "Outline"
			}
			got = append(got, x.Words)
		}
		if diff := cmp.Diff(c.want, got); diff != "" {
			t.Errorf("%s (-want +got):\n%s", c.name, diff)
		}
	}
}

// A change of edges lies where these are in each of the two.
func TestWhereEdges(t *testing.T) {
	a := outline(all(design.ProfileSquare, nil), oblong...)
	b := outline(all(design.ProfileSquare, map[int]design.ProfileKind{1: design.ProfileHalfRound}), oblong...)
	b.Outline.Nodes[1].At.X, b.Outline.Nodes[2].At.X = 1600*mm, 1600*mm
	list := change.Between(a, b, units.Metric)
	c := list[len(list)-1]
	if c.Was.Min.X != 1500 || c.Was.Max.X != 1500 || c.Is.Min.X != 1600 || c.Is.Max.Y != 550 || len(c.EdgesWas) != 1 || c.EdgesIs[0] != 1 {
		t.Errorf("%+v", c)
	}
}
