package panel

import (
	"fyne.io/fyne/v2/container"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/icon"
	look "example.org/castwright/ui/theme"
	"example.org/castwright/ui/words"
)

// tied is a relation as the panel shows it: of the design's relations the one with
// the number at, or tap holes that keep to their sink.
type tied struct {
	words string
	at    int // -1 for tap holes
	taps  design.ID
}

// ties are the relations that hold what is selected, then those that hold others to
// it.
func (p *Panel) ties() []tied {
	d, sys := p.s.Design(), p.s.Job().Units
	length := func(l units.Length) string { return units.Format(l, sys) }
	var out []tied
	seen := map[tied]bool{}
	add := func(t tied) {
		if !seen[t] {
			seen[t] = true
			out = append(out, t)
		}
	}
	ids := p.s.SelectedParts()
	for _, others := range []bool{false, true} {
		for _, id := range ids {
			for _, t := range d.Taps {
				if t.Sink != "" && (!others && t.ID == id || others && t.Sink == id) {
					add(tied{words.TapsKept(d, t), -1, t.ID})
				}
			}
			list := d.RelationsOf(id)
			if others {
				list = d.RelationsTo(id)
			}
			for _, i := range list {
				add(tied{words.Relation(d, d.Relations[i], length), i, ""})
			}
		}
	}
	return out
}

// cut is the edit that ends it.
func (t tied) cut() edit.Edit {
	if t.at < 0 {
		return edit.FreeTaps(t.taps)
	}
	return edit.CutRelation(t.at)
}

// addTies shows what holds the selected parts, with a button to cut each, and offers
// more to keep to.
func (p *Panel) addTies() {
	p.tied, p.keep = p.ties(), nil
	if !p.hasPart() {
		return
	}
	title := "Keeps to nothing"
	if len(p.tied) > 0 {
		title = "Keeps when the top changes"
	}
	p.keep = control.NewButton(p.frame, control.Face{Text: "Keep to…", Kind: control.Raised,
		Hint: "Offers what the part can keep to when the top changes: a middle, a line, a distance, an edge (Ctrl+Alt+K)."},
		p.ShowOffers)
	if why := p.NoOffers(); why != "" {
		face := p.keep.Face()
		face.Hint = control.Sentence(why)
		p.keep.SetFace(face)
		p.keep.Disable()
	}
	p.fields.Add(container.NewBorder(nil, nil, control.Middle(control.NewText(title).Muted()),
		control.Pad(0, look.Gap, p.keep)))
	for _, t := range p.tied {
		cut := control.NewButton(p.frame, control.Face{Text: "Cut", Kind: control.Raised,
			Hint: "Cuts this: " + words.Lower(t.words) + ". All stays where it is; Ctrl+Z brings it back."},
			func() { p.report(p.s.Do(t.cut())) })
		p.fields.Add(signed(icon.Link, control.SmallLines(t.words+"."), cut))
	}
	p.fields.Add(control.Pad(look.Gap/2, 0, control.Rule()))
}

// NoOffers is why nothing can be offered to keep to, in the middle of a sentence; ""
// when something can.
func (p *Panel) NoOffers() string {
	ids := p.s.SelectedParts()
	switch {
	case len(ids) == 0:
		return "no part is selected: pick one first"
	case len(ids) > 1:
		return "several parts are selected: pick one alone to say what it keeps to"
	case len(edit.Offers(p.s.Design(), ids[0])) > 0:
		return ""
	}
	for _, t := range p.s.Design().Taps {
		if t.ID == ids[0] && t.Sink != "" {
			return "they keep to their sink already: cut that first to keep to something else"
		}
	}
	return "there is nothing more that it could keep to"
}

// ShowOffers shows what the selected part can keep to.
func (p *Panel) ShowOffers() {
	if p.keep == nil || p.NoOffers() != "" {
		return
	}
	d, sys := p.s.Design(), p.s.Job().Units
	id := p.s.SelectedParts()[0]
	length := func(l units.Length) string { return units.Format(l, sys) }
	list := control.Column(0, control.Pad(0, look.Gap, control.NewText(words.Part(d, id)+" keeps…").Bold()))
	var card *control.Popover
	var lines []*control.Tile
	for _, o := range edit.Offers(d, id) {
		text := "with the centreline of the " + words.Lower(words.Part(d, o.Sink))
		if o.Sink == "" {
			text = words.Offer(d, o.Relation, length)
		}
		moves := "stays in place"
		if o.Moves > units.Micrometre {
			moves = "moves " + length(o.Moves)
		}
		what := "The part "
		if o.Sink == "" && o.Relation.Kind == design.RelationEdge {
			what = "That end "
		}
		t := control.NewTile(p.frame, "From now on: "+text+". "+what+moves+".",
			control.Sized(360, look.Target, control.Pad(0, look.Gap, container.NewBorder(nil, nil, nil,
				control.Pad(0, look.Space, control.Middle(control.NewText(moves).Muted())), control.Middle(control.NewText(text))))),
			func() {
				card.Close()
				p.report(p.s.Do(o.Edit))
			})
		lines = append(lines, t)
		list.Add(t)
	}
	walkable(p.frame, lines)
	card = control.ShowPopover(p.frame, p.keep, list, lines[0], nil)
}
