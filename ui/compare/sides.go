package compare

import (
	"fmt"
	"math"
	"reflect"

	"example.org/castwright/export/comparison"
	"example.org/castwright/model/approve"
	"example.org/castwright/model/design"
	"example.org/castwright/model/draw"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/slab"
	"example.org/castwright/ui/session"
)

// choice is what may stand at a side: an option, or an option as it was approved.
type choice struct {
	name  string // as package comparison knows it
	words string
}

// choices are all that may be compared in a job.
func choices(j design.Job) []choice {
	var out []choice
	for _, o := range j.Options {
		words := "Option " + o.Name
		if o.Title != "" {
			words += ": " + o.Title
		}
		out = append(out, choice{o.Name, words})
	}
	for _, o := range j.Options {
		if a, ok := approve.Latest(j, o.Name); ok {
			name := comparison.AsApproved(o.Name)
			if _, taken := j.Option(name); !taken {
				out = append(out, choice{name, fmt.Sprintf("Option %s as approved %s, revision %d", o.Name, a.Date, a.Revision)})
			}
		}
	}
	return out
}

// first is what is compared when nobody has said what: what was approved beside what
// became of it, where the option in hand was changed since; else the option and the
// one next to it; else the same as it was approved. Both are "" where there is
// nothing to compare.
func first(j design.Job, option string) (a, b string) {
	_, approved := approve.Latest(j, option)
	if approved && approve.Of(j, option).State == approve.Changed {
		return comparison.AsApproved(option), option
	}
	for i, o := range j.Options {
		switch {
		case o.Name != option:
		case i+1 < len(j.Options):
			return option, j.Options[i+1].Name
		case i > 0:
			return j.Options[i-1].Name, option // in the order of the strip
		}
	}
	if approved {
		return comparison.AsApproved(option), option
	}
	return "", ""
}

// side is one of the two with what is kept of it.
type side struct {
	draw.Side
	name  string
	print string // of the design
	as    string // the option that it is the approved revision of, "" for one as it is now
	err   error  // why it can't be shown
}

// sides are found again only when what they come from has changed.
type sides struct {
	s    *session.Session
	last [2]side
	job  design.Job
}

// find is a side by its name beside another one.
func (c *sides) find(i int, name, other string) side {
	j := c.s.Job()
	was := c.last[i]
	out := side{name: name}
	if o, ok := j.Option(name); ok {
		r, _ := c.s.ReportOf(name)
		out.Side = draw.Side{Option: o, Report: r}
	} else if was.name == name && was.err == nil && reflect.DeepEqual(c.job.Approvals, j.Approvals) && c.job.Site == j.Site {
		return was
	} else {
		out.Side, out.err = comparison.Side(j, name, other)
		for _, o := range j.Options {
			if comparison.AsApproved(o.Name) == name {
				out.as = o.Name
			}
		}
	}
	if out.err == nil {
		if out.print = was.print; was.print == "" || !reflect.DeepEqual(was.Option.Design, out.Option.Design) {
			if out.print = approve.Fingerprint(out.Option.Design); out.print == "" {
				out.print = "of " + name // that JSON has no form for
			}
		}
	}
	c.last[i] = out
	return out
}

// called gives both sides a name in a few letters: "A" and "B", or "A as approved"
// and "A now".
func called(a, b side) (of [2]string) {
	for i, d := range [...]side{a, b} {
		switch of[i] = d.name; {
		case d.as != "":
			of[i] = d.as + " as approved"
		case a.as == d.name || b.as == d.name:
			of[i] += " now"
		}
	}
	return of
}

// onto is what is added to the places of b to lay it onto a, mm: walls that both have
// are the same walls; without, both are drawn from one origin. Tops that would lie
// apart are laid on each other's front left corner.
func onto(a, b slab.Solid) geom.Vec {
	p, q := a.Outline.Bounds(), b.Outline.Bounds()
	if p.Empty() || q.Empty() || !p.Min.Finite() || !q.Min.Finite() || !p.Max.Finite() || !q.Max.Finite() {
		return geom.Vec{}
	}
	u, v := walls(a), walls(b)
	var by geom.Vec
	switch {
	case u.left && v.left:
		by.X = p.Min.X - q.Min.X
	case u.right && v.right:
		by.X = p.Max.X - q.Max.X
	}
	if u.back && v.back {
		by.Y = p.Max.Y - q.Max.Y
	}
	if r := moved(q, by); p.Min.X > r.Max.X || r.Min.X > p.Max.X || p.Min.Y > r.Max.Y || r.Min.Y > p.Max.Y {
		return p.Min.Sub(q.Min)
	}
	return by
}

// against is at which sides a top stands at a wall.
type against struct{ left, right, back bool }

func walls(s slab.Solid) (out against) {
	for _, side := range s.Sides {
		if !side.Wall || len(side.Points) < 2 {
			continue
		}
		// Outward of a run that goes round counter-clockwise is to its right.
		o := side.Points[len(side.Points)-1].Sub(side.Points[0]).Left().Mul(-1)
		switch {
		case math.Abs(o.Y) >= math.Abs(o.X):
			out.back = out.back || o.Y > 0
		case o.X < 0:
			out.left = true
		default:
			out.right = true
		}
	}
	return out
}
