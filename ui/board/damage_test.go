package board_test

import (
	"fmt"
	"image"
	"math/rand/v2"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/ui/board"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

// In a drag only a part of the base is drawn anew. It must be the picture that
// drawing all of it gives, but for a few pixels on the rims of shapes, whose
// corners are rounded to 1/64 pixel from another origin.
func TestPatchedBaseIsTheWholeBase(t *testing.T) {
	round := full()
	for i := range round.Outline.Nodes {
		round.Outline.Nodes[i].Edge.Profile = design.Profile{Kind: design.ProfileHalfRound}
	}
	round.Sinks[0].Profile = design.Profile{Kind: design.ProfileRounded, Size: 6 * mm}
	round.Finish.Polish = 2
	rough := full()
	rough.Finish.Polish = 1
	rough.Outline.Nodes[0].Edge.Profile = design.Profile{Kind: design.ProfileRough, Size: 12 * mm}
	starts := map[string]design.Design{"full": full(), "round": round, "rough": rough, "wavy": wavy(300)}
	for name, start := range starts {
		for i, grab := range [][2]float64{
			{1000, 1250}, {250, 800}, {1700, 1050}, {1400, 1200}, {600, 900}, {0, 700}, {1800, 1200}, {620, 1300}, {0, 0},
			{900, 450}, {1792, 450},
		} {
			t.Run(fmt.Sprintf("%s/%d", name, i), func(t *testing.T) {
				k := newDesk(t, start)
				if i%2 == 1 {
					k.b.SetShow(board.Show{Dimensions: true, Supports: true, Grid: true, Textures: i%4 == 1})
				}
				k.b.Fine()
				rnd := rand.New(rand.NewPCG(1, uint64(i)))
				from := k.pos(grab[0], grab[1])
				k.press(from, desktop.MouseButtonPrimary)
				k.b.Draw(1000, 700)
				patched := 0
				for range 3 {
					p := from.AddXY(float32(60*rnd.NormFloat64()), float32(60*rnd.NormFloat64()))
					k.b.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: p}})
					k.b.Draw(1000, 700)
					if !k.b.Busy() {
						return // nothing lies there on this top
					}
					if k.b.Patched() {
						patched++
					}
					part := clone(k.b.Base())
					k.b.Stale()
					k.b.Draw(1000, 700)
					if most, many, at := difference(part, k.b.Base()); most > 32 || many > 20 {
						t.Errorf("the patched base differs by %d of 255 at %v, noticeably in %d places", most, at, many)
					}
				}
				k.b.DragEnd()
				if start.Finish.Polish < 3 && patched == 0 && len(k.s.UndoName()) > 0 {
					t.Errorf("%s: the base was never patched", k.s.UndoName())
				}
			})
		}
	}
}

// After a gesture the whole base is drawn once more.
func TestBaseIsWholeAfterADrag(t *testing.T) {
	k := newDesk(t, plain())
	from := k.pos(400, 250)
	k.press(from, desktop.MouseButtonPrimary)
	k.pull(from, k.pos(500, 250), desktop.MouseButtonPrimary)
	k.b.Draw(1000, 700)
	if !k.b.Patched() {
		t.Error("the base was not patched in the drag")
	}
	k.b.DragEnd()
	k.b.Draw(1000, 700)
	if k.b.Patched() {
		t.Error("the base was not drawn whole after the drag")
	}
	draws := k.b.BaseDraws()
	k.b.Draw(1000, 700)
	if k.b.BaseDraws() != draws {
		t.Error("the base was drawn again without need")
	}
	// A change of looks in a gesture is drawn whole as well.
	k.press(k.pos(500, 250), desktop.MouseButtonPrimary)
	k.pull(k.pos(500, 250), k.pos(450, 250), desktop.MouseButtonPrimary)
	k.b.Draw(1000, 700)
	k.s.Do(edit.SetThickness(60 * mm))
	k.b.Draw(1000, 700)
	if k.b.Patched() {
		t.Error("another thickness was patched")
	}
}

func clone(img *image.RGBA) *image.RGBA {
	out := image.NewRGBA(img.Rect)
	copy(out.Pix, img.Pix)
	return out
}

// difference is the most that two pictures differ in any channel, and where, and
// in how many values by more than 4 of 255.
func difference(a, b *image.RGBA) (most, many int, at image.Point) {
	for i := range a.Pix {
		d := int(a.Pix[i]) - int(b.Pix[i])
		d = max(d, -d)
		if d > most {
			most, at = d, image.Pt(i%a.Stride/4, i/a.Stride)
		}
		if d > 4 {
			many++
		}
	}
	return most, many, at
}
