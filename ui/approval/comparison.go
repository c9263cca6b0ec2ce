package approval

import (
	"context"
	"fmt"
	"slices"

	"example.org/castwright/export/comparison"
	"example.org/castwright/model/approve"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/files"
	look "example.org/castwright/ui/theme"
)

// comparisonWidth is the width of a comparison as PNG, in pixels.
const comparisonWidth = 2400

// ExportComparison asks which two to write side by side, starting with those that are
// shown (none for the option in hand and its neighbour) and as they are, and writes them.
func (d *Desk) ExportComparison(shown comparison.Order) {
	j, a, b := d.s.Job(), shown.A, shown.B
	var names, words []string
	for _, o := range j.Options {
		names = append(names, o.Name)
		words = append(words, "Option "+nameOf(o))
	}
	for _, o := range j.Options {
		if latest, ok := approve.Latest(j, o.Name); ok {
			names = append(names, comparison.AsApproved(o.Name))
			words = append(words, fmt.Sprintf("Option %s as approved, revision %d", o.Name, latest.Revision))
		}
	}
	if a == "" {
		a = d.s.Option().Name
	}
	if b == "" {
		approved := comparison.AsApproved(a)
		switch {
		case approve.Of(j, a).State == approve.Changed || len(j.Options) == 1 && slices.Contains(names, approved):
			a, b = approved, a
		default:
			b = j.Options[(slices.Index(names, a)+1)%len(j.Options)].Name
		}
	}
	order := comparison.Order{A: a, B: b, Pictures: shown.Pictures, Above: shown.Above, About: shown.About, Quality: d.quality, Date: d.today()}
	left := control.NewChoice(d.frame, "The option at the left.", words, func(i int) { order.A = names[i] })
	right := control.NewChoice(d.frame, "The option at the right.", words, func(i int) { order.B = names[i] })
	left.SetPicked(slices.Index(names, a))
	right.SetPicked(slices.Index(names, b))
	var as *control.Segments
	as = control.NewSegments(d.frame, []control.Face{
		{Text: "Drawings", Hint: "To scale, with what differs marked where it lies."},
		{Text: "Pictures", Hint: "Photo-like, both from the front and the same distance."},
		{Text: "From above", Hint: "Photo-like, both from straight above and to one scale."},
	}, func(i int) { order.Pictures, order.Above = i > 0, i > 1; as.SetPicked(i) })
	switch {
	case shown.Above:
		as.SetPicked(2)
	case shown.Pictures:
		as.SetPicked(1)
	default:
		as.SetPicked(0)
	}
	cost := control.NewCheck(d.frame, "Tell what the materials cost you",
		"For your own copy. Without it the page tells the price, where one is set.", func(on bool) { order.Cost = on })
	var kind fileKind
	bad := fault()
	body := control.Column(look.Space,
		control.Sized(520, 0, control.SmallLines("One page with both at one scale, and what differs in words and numbers.")),
		label("Left", control.Rimmed(left)), label("Right", control.Rimmed(right)), label("Shown as", as.Container),
		label("Paper", d.paperChoice(&order.Paper).Container), label("File", d.kindChoice(&kind).Container), cost,
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
	other := files.FileName(order.B, "other")
	for _, o := range order.Job.Options {
		if approved := comparison.AsApproved(o.Name); order.A == approved || order.B == approved {
			other = "as-approved"
		}
	}
	files.Choose(d.frame, files.Wish{Title: "Write the comparison", Accept: "Write", Ext: kind.ext(), Write: true,
		Start: d.files.ExportName("-and-"+other, kind.ext())}, func(path string) {
		d.make("Making the comparison", "comparison", path, kind, comparisonWidth, func(ctx context.Context, show func(string, float64)) (paper, error) {
			return comparison.Make(ctx, order, show)
		})
	})
}
