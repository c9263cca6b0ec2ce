package approval

import (
	"context"
	"fmt"

	"example.org/castwright/export/comparison"
	"example.org/castwright/model/approve"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/files"
	look "example.org/castwright/ui/theme"
)

// comparisonWidth is the width of a comparison as PNG, in pixels.
const comparisonWidth = 2400

// ExportComparison asks which two options to write side by side, starting with a and
// b ("" for the option in hand and its neighbour), and writes them.
func (d *Desk) ExportComparison(a, b string) {
	j := d.s.Job()
	var names, words []string
	for _, o := range j.Options {
		names = append(names, o.Name)
		words = append(words, "Option "+nameOf(o))
	}
	second := append([]string{}, names...)
	secondWords := append([]string{}, words...)
	if a == "" {
		a = d.s.Option().Name
	}
	latest, approved := approve.Latest(j, a)
	if approved {
		second = append(second, comparison.Approved)
		secondWords = append(secondWords, fmt.Sprintf("The left one as approved, revision %d", latest.Revision))
	}
	if b == "" {
		b = comparison.Approved
		if !approved || approve.Of(j, a).State != approve.Changed {
			b = ""
			for i, name := range names {
				if name == a {
					b = names[(i+1)%len(names)]
				}
			}
		}
	}
	order := comparison.Order{A: a, B: b, Quality: d.quality, Date: d.today()}
	left := control.NewChoice(d.frame, "The option at the left.", words, func(i int) { order.A = names[i] })
	right := control.NewChoice(d.frame, "The option at the right.", secondWords, func(i int) { order.B = second[i] })
	left.SetPicked(at(names, a))
	right.SetPicked(at(second, b))
	var as *control.Segments
	as = control.NewSegments(d.frame, []control.Face{
		{Text: "Drawings", Hint: "To scale, with what differs marked where it lies."},
		{Text: "Pictures", Hint: "Photo-like, both from the same distance."},
	}, func(i int) { order.Pictures = i == 1; as.SetPicked(i) })
	as.SetPicked(0)
	var kind fileKind
	bad := fault()
	body := control.Column(look.Space,
		control.Sized(520, 0, control.SmallLines("One page with both at one scale, and what differs in words and numbers.")),
		label("Left", control.Rimmed(left)), label("Right", control.Rimmed(right)), label("Shown as", as.Container),
		label("Paper", d.paperChoice(&order.Paper).Container), label("File", d.kindChoice(&kind).Container),
		control.Narrow(520, bad))
	take := func() bool {
		if order.A == order.B {
			bad.SetText("These are the same one: pick another at one side.")
			return false
		}
		d.setPaper(order.Paper)
		return true
	}
	control.NewDialog(d.frame, "Export comparison", body, control.Cancel(),
		control.Answer{Text: "Export…", Kind: control.Primary, Enter: true, Hint: "Asks for the file's name.", Do: take,
			Then: func() {
				order.Job = d.s.Job()
				d.writeComparison(order, kind)
			}}).Show()
}

func (d *Desk) writeComparison(order comparison.Order, kind fileKind) {
	files.Choose(d.frame, files.Wish{Title: "Write the comparison", Accept: "Write", Ext: kind.ext(), Write: true,
		Start: d.files.ExportName("-and-"+files.FileName(order.B, "other"), kind.ext())}, func(path string) {
		d.make("Making the comparison", "comparison", path, kind, comparisonWidth, func(ctx context.Context, show func(string, float64)) (paper, error) {
			return comparison.Make(ctx, order, show)
		})
	})
}

func at(list []string, name string) int {
	for i, s := range list {
		if s == name {
			return i
		}
	}
	return -1
}
