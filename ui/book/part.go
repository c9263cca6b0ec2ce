package book

import (
	"fmt"

	"example.org/castwright/model/book"
	"example.org/castwright/model/design"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/session"
	"example.org/castwright/ui/words"
)

// Selected is what of a selection can be kept, with a title to start from: a sink
// with its taps, a set of tap holes, the profile of an edge; with the top or
// nothing selected its finish.
func Selected(d design.Design, sel []session.Pick, sys units.System) (book.Entry, error) {
	switch {
	case len(sel) > 1:
		return book.Entry{}, fmt.Errorf("several parts are selected: select the one to keep")
	case len(sel) == 0 || sel[0].Part == "" && sel[0].Node < 0:
		f := d.Finish
		return book.Entry{Kind: book.KindFinish, Finish: f,
			Title: words.Of(words.Exposures, int(f.Exposure)) + ", " + lower(words.Of(words.Polishes, f.Polish-1))}, nil
	case sel[0].Part == "" && sel[0].Edge && sel[0].Node < len(d.Outline.Nodes):
		p := d.Outline.Nodes[sel[0].Node].Edge.Profile
		return book.Entry{Kind: book.KindProfile, Profile: p,
			Title: words.Profile(p, func() string { return units.Format(p.Size, sys) })}, nil
	}
	for _, k := range d.Sinks {
		if k.ID != sel[0].Part {
			continue
		}
		e := book.Entry{Kind: book.KindSink, Sink: k, Title: sinkTitle(k, sys)}
		for _, t := range d.Taps {
			if t.Sink == k.ID {
				e.Taps = append(e.Taps, t)
			}
		}
		return e, nil
	}
	for _, t := range d.Taps {
		if t.ID == sel[0].Part {
			return book.Entry{Kind: book.KindTaps, Taps: []design.TapSet{t},
				Title: words.Of(words.Patterns, int(t.Pattern)) + ", " + units.Format(t.Diameter, sys)}, nil
		}
	}
	return book.Entry{}, fmt.Errorf("this can't be kept in the book: select a sink, tap holes, an edge, or the top for its finish")
}

func sinkTitle(k design.Sink, sys units.System) string {
	title := words.Of(words.Mounts, int(k.Mount)) + ", " + lower(words.Of(words.Shapes, int(k.Shape.Kind)))
	if k.Shape.Kind == design.ShapePath {
		return title
	}
	depth := k.Shape.Depth
	if k.Shape.Kind == design.ShapeCircle {
		depth = k.Shape.Width
	}
	return title + ", " + words.Size(k.Shape.Width.MM(), depth.MM(), sys)
}

// Kind is a kind of part in words.
func Kind(k book.Kind) string {
	return [...]string{"Sink", "Tap holes", "Edge", "Finish"}[k]
}
