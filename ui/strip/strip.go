package strip

import (
	"image"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"example.org/castwright/export/raster"
	"example.org/castwright/model/amount"
	"example.org/castwright/model/approve"
	"example.org/castwright/model/design"
	"example.org/castwright/model/draw"
	"example.org/castwright/model/report"
	"example.org/castwright/model/warn"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/icon"
	"example.org/castwright/ui/keys"
	"example.org/castwright/ui/panel"
	"example.org/castwright/ui/session"
	look "example.org/castwright/ui/theme"
)

// Strip shows the options of a session. It belongs to the main goroutine.
type Strip struct {
	Object fyne.CanvasObject

	s     *session.Session
	frame *control.Frame
	run   func(keys.ID)
	later func(time.Duration, func())

	cards   []*card
	row     *fyne.Container
	scroll  *container.Scroll
	buttons map[keys.ID]*control.Button
	waiting bool // pictures are to be painted anew soon
	asked   int  // how often it was asked how the options stand
}

// card is one option.
type card struct {
	name    string
	tile    *control.Tile
	picture *control.Picture
	letter  *control.Text
	title   *control.Text
	heading *fyne.Container // of both
	weight  *control.Text
	price   *control.Text
	sign    *widget.Icon
	mark    *widget.Icon // how it stands to what was approved
	status  approve.Status
	risks   *control.Text
	tone    fyne.ThemeColorName
	stale   bool
	option  design.Option // as shown
	report  report.Report
}

const (
	pictureW, pictureH = 108, 72
	cardW              = 296
	// calm is how long a design must rest, or a drag go on, before pictures
	// are painted anew: a picture costs more than a step of a drag may.
	calm = 150 * time.Millisecond
)

// New is the strip on a session. run does an action of the table; later runs
// something on the main goroutine after a while.
func New(s *session.Session, f *control.Frame, run func(keys.ID),
	later func(time.Duration, func())) *Strip {
	p := &Strip{s: s, frame: f, run: run, later: later, row: control.Row(look.Space),
		buttons: map[keys.ID]*control.Button{}}
	p.scroll = container.NewHScroll(p.row)
	grid := container.NewGridWithColumns(4)
	for _, b := range []struct {
		id  keys.ID
		res fyne.Resource
	}{
		{keys.OptionNew, icon.Add}, {keys.OptionDuplicate, icon.Copy}, {keys.OptionRename,
			icon.Rename}, {keys.Compare, icon.Compare},
		{keys.OptionLeft, icon.Left}, {keys.OptionRight, icon.Right}, {keys.OptionRemove, icon.Remove},
		{keys.Showing, icon.Show},
	} {
		p.buttons[b.id] = control.NewButton(f, control.Face{Icon: b.res, Hint: keys.Hint(b.id)},
			func() { run(b.id) })
		grid.Add(control.Sized(32, 32, p.buttons[b.id]))
	}
	side := control.Column(0, control.Row(0, control.NewText("Options").Bold()), grid)
	p.Object = control.Ground(theme.ColorNameBackground, control.Pad(look.Space, look.Space+look.Gap,
		container.NewBorder(nil, nil, nil, control.Pad(0, look.Space, side), p.scroll)))
	s.OnChange(p.changed)
	p.rebuild()
	return p
}

// Button is the button of an action, nil for one that has none here.
func (p *Strip) Button(id keys.ID) fyne.CanvasObject {
	if b, ok := p.buttons[id]; ok {
		return b
	}
	return nil
}

func (p *Strip) changed(c session.Change) {
	if c.Job || c.Option || c.Design {
		p.refresh(c.Job || c.Option)
	}
}

// refresh shows the options as they are; it makes the cards anew when there are
// others. Without all, only the option in hand has changed.
func (p *Strip) refresh(all bool) {
	options := p.s.Job().Options
	if len(options) != len(p.cards) {
		p.rebuild()
		return
	}
	for i, o := range options {
		if p.cards[i].name != o.Name {
			p.rebuild()
			return
		}
	}
	for i, o := range options {
		if all || o.Name == p.s.Option().Name {
			p.show(p.cards[i], o)
		}
	}
	if all {
		p.reveal()
	}
	p.enable()
	p.soon()
}

func (p *Strip) rebuild() {
	p.cards = nil
	p.row.RemoveAll()
	for _, o := range p.s.Job().Options {
		c := p.newCard(o)
		p.cards = append(p.cards, c)
		p.row.Add(c.tile)
		p.show(c, o)
		c.stale = false
	}
	p.enable()
	p.reveal()
	p.standing()
}

// enable lets those actions be done that make sense.
func (p *Strip) enable() {
	n, at := len(p.cards), -1
	for i, c := range p.cards {
		if c.name == p.s.Option().Name {
			at = i
		}
	}
	p.buttons[keys.OptionRemove].SetEnabled(n > 1)
	p.buttons[keys.Compare].SetEnabled(n > 1)
	p.buttons[keys.OptionLeft].SetEnabled(at > 0)
	p.buttons[keys.OptionRight].SetEnabled(at >= 0 && at+1 < n)
}

// reveal scrolls to the option in hand.
func (p *Strip) reveal() {
	for i, c := range p.cards {
		if c.name == p.s.Option().Name && p.scroll.Size().Width > 0 {
			x, seen := float32(i)*(cardW+look.Space), p.scroll.Size().Width
			switch at := p.scroll.Offset.X; {
			case x < at || cardW > seen:
				p.scroll.ScrollToOffset(fyne.NewPos(x, 0))
			case x+cardW > at+seen:
				p.scroll.ScrollToOffset(fyne.NewPos(x+cardW-seen, 0))
			}
		}
	}
}

func (p *Strip) newCard(o design.Option) *card {
	c := &card{
		name: o.Name, letter: control.NewText(o.Name).Heading().Cut(), title: control.NewText("").Cut(),
		weight: control.NewText("").Cut(), price: control.NewText("").Muted().Cut(), sign: widget.NewIcon(nil), mark: widget.NewIcon(nil), risks: control.NewText("").Caption().Muted().Cut(),
	}
	c.picture = control.NewPicture(p.frame, pictureW, pictureH, func(w, h int) control.Paint {
		d, r := c.option.Design, c.report
		return func() *image.RGBA { return raster.Image(draw.Thumb(d, r, float64(w), float64(h))) }
	})
	c.mark.Hide()
	name := container.New(heading{c.letter, c.title}, c.letter, c.title,
		control.Middle(control.Sized(20, 20, c.mark)))
	c.heading = name
	risks := container.NewBorder(nil, nil, control.Sized(16, 16, control.Middle(c.sign)), nil,
		control.Pad(0, look.Gap, control.Middle(c.risks)))
	text := control.Column(1, name, c.weight, c.price, risks)
	frame := control.Ground(look.Ground, control.Pad(look.Gap, look.Gap, c.picture))
	body := container.NewBorder(nil, nil, frame, nil, control.Pad(0, look.Space, control.Middle(text)))
	c.tile = control.NewTile(p.frame, "", control.Sized(cardW, pictureH+2*look.Gap,
		control.Pad(look.Gap, look.Gap, body)), func() {
		p.frame.Settle()
		p.s.SetOption(c.name)
	}).OnGround(look.Surface)
	return c
}

// show shows an option on its card.
func (p *Strip) show(c *card, o design.Option) {
	r, _ := p.s.ReportOf(o.Name)
	j := p.s.Job()
	on := o.Name == p.s.Option().Name
	c.tile.SetOn(on)
	p.say(c)
	if o.Title != c.title.Text() {
		c.title.SetText(o.Title)
		c.heading.Refresh() // the room for the name is another
	}
	c.weight.SetText(amount.Figure(r.Takeoff.WeightDry, j.Units))
	c.price.SetText(panel.CostOf(r.Takeoff, j.Materials.Currency))
	c.showRisks(r)
	c.option, c.report, c.stale = o, r, true
}

// showRisks shows how many warnings there are and the worst one's sign.
func (c *card) showRisks(r report.Report) {
	worst, n := warn.Note, len(r.Warnings)+len(r.Faults)
	for _, w := range r.Warnings {
		worst = max(worst, w.Severity)
	}
	if len(r.Faults) > 0 {
		worst = warn.Severe
	}
	if n == 0 {
		c.sign.Hide()
		c.risks.SetText("no warnings")
		c.tone = ""
		return
	}
	sign, tone := panel.Tone(worst)
	if tone != c.tone {
		c.tone = tone
		c.sign.SetResource(theme.NewColoredResource(sign, tone))
	}
	c.sign.Show()
	c.risks.SetText(amount.Count(n, "warning"))
}

// soon paints the stale pictures after a while, once for many changes.
func (p *Strip) soon() {
	if p.waiting {
		return
	}
	p.waiting = true
	p.later(calm, func() {
		p.waiting = false
		p.standing()
		for _, c := range p.cards {
			if c.stale {
				c.stale = false
				c.picture.Renew()
			}
		}
	})
}
