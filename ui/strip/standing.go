package strip

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"example.org/castwright/model/approve"
	"example.org/castwright/model/design"
	"example.org/castwright/ui/icon"
)

// standing asks how each option stands to what was approved, off the main goroutine:
// a fingerprint costs more than a step of a drag may.
func (p *Strip) standing() {
	j := p.s.Job()
	p.asked++
	asked := p.asked
	any := false
	for _, a := range j.Approvals {
		any = any || a.Withdrawn == ""
	}
	if !any { // nothing to find out
		for _, c := range p.cards {
			c.stands(p, approve.Status{})
		}
		return
	}
	names := make([]string, len(p.cards))
	for i, c := range p.cards {
		names[i] = c.name
	}
	p.frame.Background(func() func() {
		list := standings(j, names)
		return func() {
			if asked != p.asked {
				return
			}
			for _, c := range p.cards {
				if s, ok := list[c.name]; ok {
					c.stands(p, s)
				}
			}
		}
	})
}

func standings(j design.Job, names []string) map[string]approve.Status {
	out := map[string]approve.Status{}
	for _, name := range names {
		out[name] = approve.Of(j, name)
	}
	return out
}

// stands shows how an option stands: a mark of a shape of its own, and words.
func (c *card) stands(p *Strip, s approve.Status) {
	if was := c.status; was.State == s.State && was.Priced == s.Priced && was.Approval.Revision == s.Approval.Revision {
		return
	}
	c.status = s
	res, tone := fyne.Resource(nil), theme.ColorNamePrimary
	switch s.State {
	case approve.Agreed:
		res = icon.Approved
		if s.Priced { // another price than the client was told
			res, tone = icon.Changed, theme.ColorNameForeground
		}
	case approve.Changed:
		res, tone = icon.Changed, theme.ColorNameForeground
	case approve.Tampered:
		res, tone = icon.Severe, theme.ColorNameError
	}
	if res == nil {
		c.mark.Hide()
	} else {
		c.mark.SetResource(theme.NewColoredResource(res, tone))
		c.mark.Show()
	}
	p.say(c)
}

// say says on a card which option it is, what a click does, and how the option
// stands.
func (p *Strip) say(c *card) {
	words := "A click takes option " + c.name + " in hand (Ctrl+Page up and Page down go through them)."
	if c.name == p.s.Option().Name {
		words = "Option " + c.name + " is in hand."
	}
	if c.status.State != approve.Never {
		words = c.status.Words() + ". " + words
	}
	c.tile.SetHint(words)
}
