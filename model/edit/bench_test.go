package edit_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
)

// One step of a drag of a corner, with relations that follow the outline.
func BenchmarkDragWithRelations(b *testing.B) {
	for _, n := range []int{200, 2000, 20_000 - 100} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			d := vanity(b)
			nodes := make([]design.Node, n)
			for i := range nodes {
				s, c := math.Sincos(2 * math.Pi * float64(i) / float64(n))
				nodes[i].At = at(750+750*c, 280+280*s)
			}
			for _, e := range []edit.Edit{
				edit.SetOutline(design.Outline{Nodes: nodes}),
				edit.AddRelation(onTop("sink-1", design.AxisX)),
				edit.KeepDistance("hole-1", design.SideRight),
				edit.TieRiver("channel-1", 0, design.RiverStart),
			} {
				d = apply(b, d, e)
			}
			move := edit.MoveNode(0, at(1600, 280))
			for b.Loop() {
				if _, err := move.Apply(d); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// A bank lined with glass while its width is dragged.
func BenchmarkBankGlass(b *testing.B) {
	d := vanity(b)
	line := edit.BankGlass("channel-1", edit.BothBanks, mm(3), mm(40), design.GlassBed{})
	for b.Loop() {
		if _, err := line.Apply(d); err != nil {
			b.Fatal(err)
		}
	}
}

// A pool fitted to a stroke round a lobed area, as the hand lets go of the button.
func BenchmarkLoopFromStroke(b *testing.B) {
	for _, n := range []int{200, 2000, 20_000} {
		for _, lobes := range []float64{2, 5} {
			b.Run(fmt.Sprintf("n=%d/lobes=%g", n, lobes), func(b *testing.B) {
				r := rand.New(rand.NewPCG(1, 1))
				way := make([]design.Point, n)
				for i := range way {
					t := 2 * math.Pi * float64(i) / float64(n)
					s, c := math.Sincos(t)
					rad := 300 + 60*math.Sin(lobes*t) + 0.3*r.NormFloat64()
					way[i] = at(700+rad*c, 400+0.8*rad*s)
				}
				for b.Loop() {
					if _, _, err := edit.LoopFromStroke(way, mm(3)); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}
