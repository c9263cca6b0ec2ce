package approval

import (
	"fmt"
	"strings"
	"time"

	"example.org/castwright/model/amount"
	"example.org/castwright/model/approve"
	"example.org/castwright/model/warn"
	"example.org/castwright/ui/control"
	look "example.org/castwright/ui/theme"
	"fyne.io/fyne/v2/widget"
)

// Mark asks on what day and by whom the option in hand was agreed to, and freezes it
// as the job's next revision.
func (d *Desk) Mark() {
	j, o := d.s.Job(), d.s.Option()
	date := d.line("The day on which the client agreed: year, month, day.", d.files.Now().Format(time.DateOnly))
	by := d.line("Who agreed, and how: Mrs Clay, signed at the studio.", j.Client)
	deal := approve.Deal{Price: !o.Price.Amount.IsZero()}
	told := control.NewCheck(d.frame, "The client was told the price, "+amount.Money(j.Materials.Currency, o.Price.Amount),
		"The price is kept with the revision.", func(on bool) { deal.Price = on })
	told.SetTicked(deal.Price)
	bad := fault()
	body := control.Column(look.Space,
		control.Narrow(460, control.SmallLines(fmt.Sprintf("Freezes option %s as revision %d, with the materials and the words of today. "+
			"You can go on drawing: what changes is shown against it.", o.Name, approve.Next(j)))),
		label("Option", control.Middle(control.NewText(nameOf(o)).Cut())),
		label("Fingerprint", control.Middle(control.NewText(approve.Fingerprint(o.Design)).Bold())),
		label("Day", date), label("Agreed by", by))
	if deal.Price {
		body.Add(told)
	}
	if n := d.severe(); n > 0 {
		body.Add(control.Narrow(460, standing(n)))
	}
	body.Add(control.Narrow(460, bad))
	take := func() bool {
		deal.Date, deal.By = strings.TrimSpace(date.Text), strings.TrimSpace(by.Text)
		if err := d.s.DoJob(approve.Approve(o.Name, deal)); err != nil {
			bad.SetText(control.Sentence(err.Error()))
			return false
		}
		return true
	}
	var dialog *control.Dialog
	enter := func(string) { dialog.Enter() }
	date.OnSubmitted, by.OnSubmitted = enter, enter
	dialog = control.NewDialog(d.frame, "Mark as approved", body, control.Cancel(),
		control.Answer{Text: "Mark as approved", Kind: control.Primary, Enter: true, Hint: "Freezes it; undo takes that back (Enter).", Do: take})
	dialog.First(by).Show()
}

// standing says that there are n severe warnings.
func standing(n int) *widget.Label {
	stand := " stands"
	if n > 1 {
		stand = " stand"
	}
	words := control.SmallLines(amount.Count(n, "severe warning") + stand + " against this top. Put it right before it is cast.")
	words.Importance = fault().Importance
	return words
}

// severe is how many severe warnings there are.
func (d *Desk) severe() int {
	n := 0
	for _, w := range d.s.Report().Warnings {
		if w.Severity == warn.Severe {
			n++
		}
	}
	return n
}

// askWithdraw takes a revision back, after asking.
func (d *Desk) askWithdraw(revision int) {
	date := d.line("The day on which it was taken back.", d.files.Now().Format(time.DateOnly))
	bad := fault()
	body := control.Column(look.Space,
		control.Narrow(420, control.SmallLines(fmt.Sprintf("Revision %d no longer holds; the one before it does, if there is one. It stays in the job as it was.", revision))),
		label("Day", date), control.Narrow(420, bad))
	take := func() bool {
		if err := d.s.DoJob(approve.Withdraw(revision, strings.TrimSpace(date.Text))); err != nil {
			bad.SetText(control.Sentence(err.Error()))
			return false
		}
		return true
	}
	var dialog *control.Dialog
	date.OnSubmitted = func(string) { dialog.Enter() }
	dialog = control.NewDialog(d.frame, fmt.Sprintf("Withdraw revision %d?", revision), body, control.Cancel(),
		control.Answer{Text: "Withdraw", Kind: control.Danger, Enter: true, Do: take})
	dialog.First(date).Show()
}
