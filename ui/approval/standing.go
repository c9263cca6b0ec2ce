package approval

import (
	"errors"
	"fmt"

	"example.org/castwright/export/approval"
	"example.org/castwright/model/approve"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/icon"
	"example.org/castwright/ui/keys"
	look "example.org/castwright/ui/theme"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
)

// Show says what was approved of the option in hand, what has changed since in words
// and money, and offers the ways on.
func (d *Desk) Show() {
	j, o := d.s.Job(), d.s.Option()
	s := approve.Of(j, o.Name)
	made, numbers := s.Since(j, o.Name).Lines(j.Units, j.Materials.Currency)
	res := map[approve.State]fyne.Resource{approve.Never: icon.Unapproved, approve.Agreed: icon.Approved,
		approve.Changed: icon.Changed, approve.Tampered: icon.Severe}[s.State]
	list := control.Column(look.Space)
	list.Add(control.Row(look.Space, control.Sized(24, 24, control.Middle(control.Icon(res, theme.ColorNameForeground))),
		control.Middle(control.NewText("Option "+o.Name+": "+s.Words()).Bold())))
	for i := len(j.Approvals) - 1; i >= 0; i-- {
		if a := j.Approvals[i]; a.Option == o.Name {
			list.Add(control.Column(0, control.NewText(fmt.Sprintf("Revision %d, %s", a.Revision, a.When())),
				control.NewText("Fingerprint "+a.Fingerprint).Caption().Muted()))
		}
	}
	switch s.State {
	case approve.Never:
		list.Add(control.SmallLines("Make the approval sheet and have it signed. Then mark the option as approved: " +
			"it is frozen as it is, and the line at the foot of the window says from then on what has changed since."))
	case approve.Tampered:
		list.Add(control.SmallLines("The design that the file keeps for this revision is not the one that was approved: it was changed " +
			"outside this program. Go by the signed sheet."))
	}
	lines := func(heading string, of []string) {
		rows := control.Column(look.Gap)
		for _, line := range of {
			if len([]rune(line)) > 80 {
				rows.Add(control.SmallLines(line))
				continue
			}
			rows.Add(control.NewText(line))
		}
		list.Add(section(heading))
		list.Add(rows)
	}
	if len(made) > 0 {
		lines(fmt.Sprintf("Changed since revision %d", s.Approval.Revision), made)
	}
	if s.State == approve.Changed && len(numbers) > 0 {
		lines("What follows from it", numbers)
	}
	scroll := container.NewVScroll(control.Pad(0, look.Space, list))
	answers := []control.Answer{}
	add := func(a control.Answer) { answers = append(answers, a) }
	if s.State == approve.Never || s.State == approve.Changed {
		add(control.Answer{Text: "Approval sheet…", Hint: keys.Hint(keys.ApprovalSheet), Then: func() { d.run(keys.ApprovalSheet) }})
		add(control.Answer{Text: "Mark as approved…", Hint: keys.Hint(keys.MarkApproved), Then: func() { d.run(keys.MarkApproved) }})
	}
	if s.State == approve.Agreed || s.State == approve.Changed {
		add(control.Answer{Text: "Its sheet…", Hint: fmt.Sprintf("Makes the sheet of revision %d again, as it was.", s.Approval.Revision),
			Then: func() { d.sheetOf(s.Approval.Revision) }})
	}
	if s.State == approve.Changed {
		add(control.Answer{Text: "Bring it back", Hint: "Option " + o.Name + " becomes what was approved; what it is now stays as another option.",
			Then: func() { d.restore(s.Approval.Revision) }})
	}
	if s.State != approve.Never {
		add(control.Answer{Text: "Withdraw…", Hint: fmt.Sprintf("Revision %d no longer holds.", s.Approval.Revision),
			Then: func() { d.askWithdraw(s.Approval.Revision) }})
	}
	add(control.Answer{Text: "Close", Kind: control.Primary, Enter: true, Esc: true})
	high := float32(300)
	if len(made)+len(numbers) > 4 {
		high = 520
	}
	control.NewDialog(d.frame, "What was approved", scroll, answers...).Sized(680, high).Show()
}

// sheetOf makes the sheet of a frozen revision again. Characters that can't be printed
// are told first, as with a new sheet.
func (d *Desk) sheetOf(revision int) {
	j := d.s.Job()
	for _, a := range j.Approvals {
		if a.Revision != revision {
			continue
		}
		order := approval.Order{Job: j, Revision: revision, Date: a.Date, Paper: d.paper(), Price: !a.Price.Amount.IsZero(), Quality: d.quality}
		write := func() { d.writeSheet(order, 0, fmt.Sprintf("-revision-%d", revision)) }
		with := order
		with.Head, _ = d.head() // a letterhead that can't be read is told later
		words := with.Unseen()
		if words == "" {
			write()
			return
		}
		control.Ask(d.frame, "Not all of it can be printed", words+" What was approved stays as it is until it is withdrawn and approved anew.",
			control.Cancel(), control.Answer{Text: "Make the sheet all the same", Kind: control.Primary, Enter: true,
				Hint: "Asks for the file's name.", Then: write})
		return
	}
}

func (d *Desk) restore(revision int) {
	if err := d.s.DoJob(approve.Restore(revision)); err != nil {
		control.Warn(d.frame, "That can't be done", err)
	}
}

// Verify warns of approved revisions that were changed outside the program. It is
// for a job that was opened.
func (d *Desk) Verify() {
	j := d.s.Job()
	if len(j.Approvals) == 0 {
		return
	}
	d.frame.Background(func() func() {
		faults := approve.Check(j)
		return func() {
			if err := errors.Join(faults...); err != nil {
				control.Warn(d.frame, "An approval in this file is not sound", err)
			}
		}
	})
}
