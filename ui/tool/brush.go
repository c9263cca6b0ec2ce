package tool

import (
	"errors"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
)

// brushCraft paints glass with a round brush, or wipes it away.
type brushCraft struct {
	wipes bool
	size  units.Length // 0 for the stock's
}

func (c *brushCraft) aim(*Hand, *free)   {}
func (c *brushCraft) trail(*Hand, *free) {}

func (c *brushCraft) sizeNow(h *Hand) units.Length {
	if c.size > 0 {
		return c.size
	}
	return h.stockNow().Width
}

func (c *brushCraft) measures(h *Hand, _ *free) []measure {
	return []measure{{"Brush", c.sizeNow(h), units.Millimetre, func(l units.Length) { c.size = l }}}
}

func (c *brushCraft) finish(h *Hand, f *free) (string, error) {
	way := f.way()
	if c.wipes {
		return "", h.doNew(edit.WipeGlass(way, c.sizeNow(h)), "")
	}
	r, err := edit.GlassFromBrush(way, c.sizeNow(h))
	if err != nil {
		return "", err
	}
	// The bed that is selected is painted on first, then any that the stroke
	// meets; else it is a bed of its own.
	d := h.s.Design()
	var beds []design.ID
	for _, p := range h.s.Selection() {
		if found, ok := find(d, p.Part); ok && found.bed != nil {
			beds = append(beds, p.Part)
		}
	}
	for _, g := range d.Glass {
		beds = append(beds, g.ID)
	}
	for _, id := range beds {
		paint := edit.PaintGlass(id, way, c.sizeNow(h))
		if _, err := paint.Apply(d); err == nil {
			return "", h.doNew(paint, id)
		}
	}
	bed := h.glassNow()
	bed.Region = r
	add := edit.AddGlass(bed)
	add.Name = "Paint glass"
	return "", h.doNew(add, "")
}

func (c *brushCraft) show(h *Hand, f *free, o *Overlay) {
	r := c.sizeNow(h).MM() / 2
	f.swath(o, 2*r)
	if !f.shown {
		return
	}
	o.Ghost = append(o.Ghost, ring(f.at.At, r))
	o.Dims = append(o.Dims, Dim{From: f.at.At.Sub(geom.Vec{X: r}), To: f.at.At.Add(geom.Vec{X: r}),
		Text: "brush " + h.length(2*r), Active: f.pressed, Beside: geom.Vec{Y: 1}, Bare: true})
}

func (c *brushCraft) hint(h *Hand, f *free) string {
	const sizes = "[ ] or a number change the brush; Esc ends."
	switch {
	case f.pressed:
		return "Let go to finish the stroke. Esc takes it back."
	case c.wipes && len(h.s.Design().Glass) == 0:
		return "There is no glass to wipe away. Esc ends."
	case c.wipes:
		return "Press and drag to wipe glass away; a bed that is cut through becomes two. " + sizes
	}
	return "Press and drag to paint glass; a stroke that touches a bed adds to it. " + sizes
}

// bankCraft lays glass along the bank of a channel, from the bank outward as far
// as the mouse is dragged.
type bankCraft struct {
	channel       design.ID
	side          edit.BankSide
	width, offset units.Length
	given         bool // the width was typed
	lines         []Line
	fault         string
}

// startBank is how wide a strip is before it is dragged or typed: common
// practice, no source.
func (c *bankCraft) widthNow(h *Hand) units.Length {
	if c.width > 0 {
		return c.width
	}
	if h.s.Job().Units == units.Imperial {
		return units.Inch
	}
	return 30 * units.Millimetre
}

func (c *bankCraft) measures(h *Hand, _ *free) []measure {
	return []measure{
		{"Width", c.widthNow(h), units.Millimetre, func(l units.Length) { c.width, c.given = l, true }},
		{"Away from the bank", c.offset, 0, func(l units.Length) { c.offset = l }},
	}
}

func (c *bankCraft) aim(h *Hand, f *free) {
	c.pick(h, f.at)
	c.lay(h)
}

// pick finds the channel whose bank is nearest to the mouse, and which side that
// is.
func (c *bankCraft) pick(h *Hand, p Pointer) {
	s := h.s.Report().Solid
	c.channel = ""
	best := p.reach(reachLine)
	for _, r := range s.Recesses {
		near := rim(p.At, r.Loops)
		if inside(p.At, r.Loops) {
			near = 0
		}
		if near <= best {
			best, c.channel = near, r.Part
		}
	}
	c.side = c.sideOf(h, p)
}

// sideOf is the side of a channel's first river on which the mouse is; both where
// there is no river, or with Shift.
func (c *bankCraft) sideOf(h *Hand, p Pointer) edit.BankSide {
	for _, r := range h.s.Report().Solid.Recesses {
		if r.Part != c.channel || len(r.Centrelines) == 0 || p.Mod&Shift != 0 {
			continue
		}
		line := r.Centrelines[0]
		q, _, along := geom.NearestOnLine(p.At, line)
		run := 0.0
		for i := 1; i < len(line); i++ {
			if run += line[i].Dist(line[i-1]); run >= along-1e-9 {
				if line[i].Sub(line[i-1]).Cross(p.At.Sub(q)) >= 0 {
					return edit.LeftBank
				}
				return edit.RightBank
			}
		}
	}
	return edit.BothBanks
}

func (c *bankCraft) trail(h *Hand, f *free) {
	if len(f.points) == 1 {
		c.pick(h, f.at)
	} else if c.channel != "" {
		c.side = c.sideOf(h, f.at)
	}
	// From a little way on the drag says how wide the strip is.
	if c.channel != "" && !c.given && f.at.At.Dist(f.points[0]) >= f.at.reach(dragStart) {
		for _, r := range h.s.Report().Solid.Recesses {
			if r.Part == c.channel && !inside(f.at.At, r.Loops) {
				wide := rim(f.at.At, r.Loops) - c.offset.MM()
				step := h.StepNow()
				c.width = max(step, units.FromMM(onGrid(wide, step)))
			}
		}
	}
	c.lay(h)
}

// lay shows the strip as it would be.
func (c *bankCraft) lay(h *Hand) {
	c.lines, c.fault = nil, ""
	if c.channel == "" {
		return
	}
	d := h.s.Design()
	out, err := c.edit(h).Apply(d)
	if err != nil {
		c.fault = err.Error()
		return
	}
	for _, g := range out.Glass[len(d.Glass):] {
		c.lines = append(c.lines, regionLines(g.Region)...)
	}
}

func (c *bankCraft) edit(h *Hand) edit.Edit {
	return edit.BankGlass(c.channel, c.side, c.offset, c.widthNow(h), h.glassNow())
}

func (c *bankCraft) finish(h *Hand, f *free) (string, error) {
	if c.channel == "" {
		if len(h.s.Design().Channels) == 0 {
			return "", errors.New("there is no channel yet: draw one first")
		}
		return "", errors.New("no bank is near: press on the bank of a channel")
	}
	told := "Laid " + h.length(c.widthNow(h).MM()) + " wide"
	return told, h.doNew(c.edit(h), "")
}

func (c *bankCraft) show(h *Hand, f *free, o *Overlay) {
	o.Ghost = append(o.Ghost, c.lines...)
	if len(c.lines) > 0 {
		o.Dims = append(o.Dims, Dim{From: f.at.At, To: f.at.At, Text: "width " + h.length(c.widthNow(h).MM()), Active: f.pressed,
			Beside: geom.Vec{Y: 1}, Bare: true})
	}
}

func (c *bankCraft) hint(h *Hand, f *free) string {
	const sizes = "A number sets its width, Tab Tab how far from the bank; "
	switch {
	case c.fault != "":
		return capital(c.fault) + "."
	case len(h.s.Design().Channels) == 0:
		return "There is no channel to lay glass along: draw one first. Esc ends."
	case f.pressed:
		return "Drag away from the bank to make the strip wider, across the river for the other bank; Shift takes both. Esc takes it back."
	case c.channel != "":
		return "A click lays glass along this bank, a drag away says how wide; Shift takes both banks. " + sizes + "Esc ends."
	}
	return "Move to the bank of a channel and click to lay glass along it. " + sizes + "Esc ends."
}
