package store_test

import (
	"reflect"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/store"
	"example.org/castwright/model/units"
)

// The largest job that edits let grow can be saved and read again.
func TestTheLargestJob(t *testing.T) {
	if testing.Short() {
		t.Skip("it takes a second")
	}
	nodes := make([]design.Node, design.MaxPoints)
	for i := range nodes {
		x := units.Length(i)*4_123_457 - 40*units.Metre
		nodes[i] = design.Node{At: design.Point{X: x, Y: -x / 3},
			Corner: design.Corner{Kind: design.CornerChamfered, Size: 12_345_678},
			Edge: design.Edge{Curve: design.CurveArc, Rise: -1_234_567, Side: design.SideWall,
				Profile: design.Profile{Kind: design.ProfileHalfRound, Size: 12_345_678}}}
	}
	var job design.Job
	for range design.MaxJobPoints / design.MaxPoints {
		job.Options = append(job.Options, design.Option{Name: "A", Design: design.Design{
			Outline: design.Outline{Nodes: nodes}}})
	}
	got, err := store.Decode(store.Encode(job))
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(got, job) {
		t.Error("it is read as another job")
	}
}
