package room

import (
	"fyne.io/fyne/v2"
)

// State is what a test of the real window reads.
type State struct {
	Names   []string
	Corners []fyne.Position // in the window
	Work    string          // the stage that is being worked at, "" for none
	Result  string          // the stage that is seen, "" while the corners are
	Wrong   string          // what is wrong with the corners
	Photo   string          // "reading", "lost" or its name, "" for none
	Held    bool            // a corner is held
	Wipe    float64
}

// State is the page as it stands.
func (p *Page) State() State {
	out := State{Wipe: p.wipe, Held: p.stage.pressed}
	switch {
	case p.photo != nil:
		out.Photo = p.room().Photo
	case p.lost != nil:
		out.Photo = "lost"
	case !p.room().None():
		out.Photo = "reading"
	}
	if p.photo == nil {
		return out
	}
	from := fyne.CurrentApp().Driver().AbsolutePositionForObject(p.stage)
	for i, h := range p.stage.handles() {
		out.Names = append(out.Names, cornerName(i))
		out.Corners = append(out.Corners, from.AddXY(float32(h.X/p.stage.px), float32(h.Y/p.stage.px)))
	}
	if p.work != nil {
		out.Work = p.work.words
	}
	if f := p.shown(); p.result && f != nil {
		out.Result = stages[f.stage].words
	}
	_, out.Wrong, _ = p.faultAt()
	return out
}
