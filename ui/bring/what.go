package bring

import (
	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/template"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/board"
	"example.org/castwright/ui/panel"
	"example.org/castwright/ui/tool"
)

// As is what an outline becomes.
type As uint8

// What an outline can become.
const (
	Top As = iota
	Sink
	Channel
	Glass
)

// What each becomes, in words.
var asWords = [...]struct{ name, hint string }{
	{"Top", "The outline of the top; its holes become flush cut-outs."},
	{"Sink", "An under-mounted sink with a cut-out of this shape; holes in it are left out."},
	{"Channel", "A recess of this shape; holes in it are islands."},
	{"Glass", "A glass bed of this shape; holes in it stay free."},
}

// Hands is who takes the outline: the board.
type Hands interface{ Put(board.Put) }

// put is an outline as it is taken in hand.
func put(l template.Loop, as As, turn units.Angle, mirrored bool, d design.Design, sys units.System) board.Put {
	r := edit.BroughtRegion(l, turn, mirrored)
	stock := tool.StockOf(sys)
	out := board.Put{Brought: true}
	switch as {
	case Top:
		out.Outline = &r
	case Sink:
		s := design.Sink{Shape: design.Shape{Kind: design.ShapePath, Path: r.Outer}, BowlMass: 9,
			Profile: design.Profile{Kind: design.ProfileEased, Size: panel.StartSize(design.ProfileEased, sys)}}
		s.BowlDepth = 140 * units.Millimetre
		if sys == units.Imperial {
			s.BowlDepth = 11 * units.Inch / 2
		}
		out.Sink = &s
	case Channel:
		c := stock.Channel
		if n := len(d.Channels); n > 0 {
			c = d.Channels[n-1]
		}
		c.ID, c.Rivers, c.Regions = "", nil, []design.Region{r}
		out.Channel = &c
	case Glass:
		g := stock.Glass
		if n := len(d.Glass); n > 0 {
			g = d.Glass[n-1]
		}
		g.ID, g.Region = "", r
		out.Glass = &g
	}
	return out
}
