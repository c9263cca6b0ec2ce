package approval

import (
	"time"

	"example.org/castwright/model/amount"
	"example.org/castwright/model/approve"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/icon"
	"example.org/castwright/ui/keys"
	"example.org/castwright/ui/session"
)

// calm is how long a design must rest before it is compared with what was approved:
// its fingerprint costs more than a step of a drag may.
const calm = 150 * time.Millisecond

func (d *Desk) changed(c session.Change) {
	if !c.Job && !c.Design && !c.Option {
		return
	}
	if c.Job || c.Option {
		d.look()
		return
	}
	if d.waiting {
		return
	}
	d.waiting = true
	d.later(calm, func() {
		d.waiting = false
		d.look()
	})
}

// look finds out how the option in hand stands, off the main goroutine.
func (d *Desk) look() {
	j, option := d.s.Job(), d.s.Option().Name
	d.asked++
	if _, ok := approve.Latest(j, option); !ok {
		d.say(approve.Status{}, 0)
		return
	}
	asked := d.asked
	d.frame.Background(func() func() {
		s := approve.Of(j, option)
		n := s.Since(j, option).Count()
		return func() {
			if asked == d.asked {
				d.say(s, n)
			}
		}
	})
}

// say shows the standing on the chip: a shape and words, so that no colour is needed.
func (d *Desk) say(s approve.Status, changes int) {
	face := control.Face{Icon: icon.Unapproved, Text: s.Words(), Hint: keys.Hint(keys.ShowApproved)}
	switch s.State {
	case approve.Agreed:
		face.Icon = icon.Approved
	case approve.Changed:
		face.Icon = icon.Changed
		face.Text += ": " + amount.Count(changes, "change")
	case approve.Tampered:
		face.Icon = icon.Severe
	}
	d.Chip.SetFace(face)
}
