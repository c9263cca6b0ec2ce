package partsrow

import (
	"image"

	"example.org/castwright/model/book"
	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/board"
	own "example.org/castwright/ui/book"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/icon"
	look "example.org/castwright/ui/theme"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
)

// kept is a part of the maker's book as a starter. An edge goes to edge at, or
// with -1 to all that are seen.
func (k kit) kept(e book.Entry, at int) starter {
	out := starter{name: e.Title, hint: e.Title + ", from your book." + inHandHint}
	switch e.Kind {
	case book.KindSink:
		s := e.Sink
		out.sample = k.sinkSample(e)
		out.put = &board.Put{Sink: &s, With: e.Taps}
	case book.KindTaps:
		t := e.Taps[0]
		out.sample = k.swatch(k.size(320, 12.5), k.size(140, 5.5))
		u := t
		u.ID, u.Sink, u.At = "taps-1", "", design.Point{X: k.size(160, 6.25), Y: k.size(70, 2.75)}
		out.sample.Taps = []design.TapSet{u}
		out.put = &board.Put{Taps: &t}
	case book.KindProfile:
		p := e.Profile
		change := edit.SetSeenProfiles(p)
		if at >= 0 {
			change = edit.SetProfile(at, p)
		}
		out.profile, out.edit, out.hint = &p, &change, e.Title+", from your book. A click gives it."
	case book.KindFinish:
		change := edit.SetFinish(e.Finish)
		out.sample = k.swatch(k.size(150, 6), k.size(80, 3))
		out.sample.Finish = e.Finish
		out.edit, out.hint = &change, e.Title+", from your book. A click gives the top this finish."
	}
	return out
}

// sinkSample is a piece of the top about a sink, with room behind it for the tap
// holes that keep to it.
func (k kit) sinkSample(e book.Entry) design.Design {
	s, m := e.Sink, k.size(90, 3.5)
	w, d := s.Shape.Width, s.Shape.Depth
	switch s.Shape.Kind {
	case design.ShapeCircle:
		d = w
	case design.ShapePath:
		box := edit.FlatChain(s.Shape.Path).Bounds()
		w, d = units.FromMM(box.W()), units.FromMM(box.H())
	}
	behind := m
	for _, t := range e.Taps {
		behind = max(behind, t.SetBack+m)
	}
	out := k.swatch(w+2*m, d+m+behind)
	s.ID, s.At = "sink-1", design.Point{X: w/2 + m, Y: d/2 + m}
	s.Rotation = 0
	out.Sinks = []design.Sink{s}
	for i, t := range e.Taps {
		t.ID, t.Sink = design.ID("taps-"+string(rune('1'+i))), s.ID
		out.Taps = append(out.Taps, t)
	}
	return out
}

// withBook puts the parts of a kind that the maker has kept below starters.
func (r *Row) withBook(content fyne.CanvasObject, kind book.Kind, edge int) fyne.CanvasObject {
	if r.Book == nil {
		return content
	}
	_, err := r.Book.Entries()
	list := r.Book.Of(kind)
	if len(list) == 0 && err == nil {
		return content
	}
	manage := control.NewButton(r.frame, control.Face{Text: "Rename or remove…", Hint: "Opens your book of parts."}, func() {
		r.close()
		r.ShowBook()
	})
	head := container.NewBorder(nil, nil, control.Middle(control.NewText("From your book").Bold()), manage)
	col := control.Column(look.Space, content, control.Rule(), head)
	if err != nil {
		col.Add(control.SmallLines(control.Sentence(err.Error())))
		return col
	}
	var starters []starter
	for _, e := range list[:min(len(list), mostKept)] {
		starters = append(starters, r.kit().kept(e, edge))
	}
	col.Add(r.grid(starters, 4))
	return col
}

// mostKept bounds what a noun offers of the book; the book itself shows all.
const mostKept = 12

// ShowBook opens the maker's book of parts.
func (r *Row) ShowBook() {
	if r.Book == nil {
		return
	}
	list := control.Column(look.Gap)
	var d *control.Dialog
	var fill func()
	fill = func() {
		list.RemoveAll()
		all, err := r.Book.Entries()
		switch {
		case err != nil:
			list.Add(control.Lines(control.Sentence(err.Error())))
		case len(all) == 0:
			list.Add(control.Lines("Nothing is kept yet. Select a sink, tap holes or an edge on a drawing, " +
				"or the top for its finish, and keep it by Ctrl+Shift+P."))
		}
		for _, e := range all {
			list.Add(r.bookLine(e, func() { d.Close() }, fill))
		}
	}
	fill()
	d = control.NewDialog(r.frame, "Your book of parts", container.NewVScroll(list),
		control.Answer{Text: "Close", Kind: control.Primary, Enter: true, Esc: true})
	d.Sized(620, 520).Show()
}

// bookLine is a part of the book with what can be done with it.
func (r *Row) bookLine(e book.Entry, shut, again func()) fyne.CanvasObject {
	s := r.kit().kept(e, -1)
	use := control.NewButton(r.frame, control.Face{Text: "Use", Hint: s.hint, Kind: control.Raised}, func() {
		shut()
		r.pick(s)
	})
	rename := control.NewButton(r.frame, control.Face{Icon: icon.Rename, Hint: "Gives it another name."},
		func() { r.Book.AskToRename(e.Title, again) })
	remove := control.NewButton(r.frame, control.Face{Icon: icon.Remove, Hint: "Takes it out of your book."},
		func() { r.Book.AskToForget(e.Title, again) })
	words := control.Column(0, control.NewText(e.Title).Cut(), control.NewText(own.Kind(e.Kind)).Caption().Muted())
	return container.NewBorder(nil, nil, control.Sized(pictureW, pictureH, control.Ground(look.Ground, r.pictureOf(s))),
		control.Middle(control.Row(look.Gap, control.Sized(64, 28, use), rename, remove)),
		control.Pad(0, look.Space, control.Middle(words)))
}

// pictureOf is the live picture of a starter that has one.
func (r *Row) pictureOf(s starter) fyne.CanvasObject {
	if s.profile != nil {
		d := r.s.Design()
		return control.NewPicture(r.frame, pictureW, pictureH, func(w, h int) control.Paint {
			return func() *image.RGBA { return paintProfile(d, *s.profile, w, h) }
		})
	}
	return control.NewPicture(r.frame, pictureW, pictureH, func(w, h int) control.Paint {
		return func() *image.RGBA { return paintDesign(s.sample, s.below, w, h) }
	})
}
