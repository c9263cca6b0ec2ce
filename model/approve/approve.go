// Package approve freezes what a client agreed to, gives it a fingerprint that
// can be read out over the telephone, and says what has changed since.
package approve

import (
	"crypto/sha256"
	"fmt"
	"slices"
	"strings"

	"example.org/castwright/model/canon"
	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/store"
	"example.org/castwright/model/terms"
)

// letters is Crockford's base 32: no I, L, O or U, which are misread.
const letters = "0123456789ABCDEFGHJKMNPQRSTVWXYZ"

// Fingerprint is a short word for a design: its JSON in the canonical form of RFC
// 8785, hashed by SHA-256 (FIPS 180-4), the first 80 bits in Crockford's base 32:
// "7K3M-0VXA-92QF-D4TP". It is "" for a design that JSON has no form for.
func Fingerprint(d design.Design) string {
	text, err := canon.JSON(store.EncodeDesign(d))
	if err != nil {
		return ""
	}
	sum := sha256.Sum256(text)
	var out strings.Builder
	bits, n := 0, 0
	for _, b := range sum[:10] {
		for k := 7; k >= 0; k-- {
			bits = bits<<1 | int(b>>k&1)
			if n++; n%5 == 0 {
				out.WriteByte(letters[bits])
				bits = 0
				if n%20 == 0 && n < 80 {
					out.WriteByte('-')
				}
			}
		}
	}
	return out.String()
}

// Deal is what is said at an approval beside the design.
type Deal struct {
	Date string // ISO 8601
	By   string // who agreed
	// Price reports whether the client was told the option's price.
	Price bool
}

// Approve freezes an option as the job's next revision.
func Approve(option string, deal Deal) edit.JobEdit {
	return edit.JobEdit{Name: "Approve option", Apply: func(j design.Job) (design.Job, error) {
		o, ok := j.Option(option)
		if !ok {
			return j, fmt.Errorf("there is no option %q to approve", option)
		}
		if !design.ValidDate(deal.Date) {
			return j, fmt.Errorf("the date %q is not like 2026-11-26", deal.Date)
		}
		if len(j.Approvals) >= design.MaxApprovals {
			return j, fmt.Errorf("this job has %d revisions already: start a new job file", len(j.Approvals))
		}
		if faults := o.Design.Validate(); len(faults) > 0 {
			return j, fmt.Errorf("option %s can't be cast as drawn, so it can't be approved: %s", option, faults[0])
		}
		if s := Of(j, option); s.State == Agreed && !s.Priced && s.Approval.Terms == terms.Filled(j.Terms, o.Design) &&
			(!deal.Price || s.Approval.Price.Amount.Equal(o.Price.Amount)) {
			return j, fmt.Errorf("option %s is approved as revision %d already, and nothing has changed since", option, s.Approval.Revision)
		}
		print := Fingerprint(o.Design)
		if print == "" {
			return j, fmt.Errorf("option %s can't be written to a file as it is", option)
		}
		a := design.Approval{
			Revision: Next(j), Option: o.Name, Title: o.Title, Date: deal.Date, By: strings.TrimSpace(deal.By),
			Client: j.Client, Terms: terms.Filled(j.Terms, o.Design),
			Units: j.Units, Materials: j.Materials, Design: o.Design, Fingerprint: print,
		}
		if deal.Price {
			a.Price = o.Price
		}
		j.Approvals = append(slices.Clip(j.Approvals), a)
		return j, nil
	}}
}

// Withdraw takes a revision back on a date. It stays in the job as it was.
func Withdraw(revision int, date string) edit.JobEdit {
	return edit.JobEdit{Name: "Withdraw approval", Apply: func(j design.Job) (design.Job, error) {
		if !design.ValidDate(date) {
			return j, fmt.Errorf("the date %q is not like 2026-11-26", date)
		}
		for i, a := range j.Approvals {
			switch {
			case a.Revision != revision:
				continue
			case a.Withdrawn != "":
				return j, fmt.Errorf("revision %d was withdrawn on %s already", revision, a.Withdrawn)
			}
			j.Approvals = slices.Clone(j.Approvals)
			j.Approvals[i].Withdrawn = date
			return j, nil
		}
		return j, fmt.Errorf("there is no revision %d to withdraw", revision)
	}}
}

// Restore brings the option of a revision back to the design that was agreed. What
// it has become since is kept as another option.
func Restore(revision int) edit.JobEdit {
	return edit.JobEdit{Name: "Bring back approved design", Apply: func(j design.Job) (design.Job, error) {
		k := slices.IndexFunc(j.Approvals, func(a design.Approval) bool { return a.Revision == revision })
		if k < 0 {
			return j, fmt.Errorf("there is no revision %d in this job", revision)
		}
		a := j.Approvals[k]
		i := slices.IndexFunc(j.Options, func(o design.Option) bool { return o.Name == a.Option })
		if i < 0 {
			j.Options = append(slices.Clip(j.Options), design.Option{Name: a.Option, Title: a.Title, Price: a.Price, Design: a.Design})
			return j, nil
		}
		now := j.Options[i]
		if Fingerprint(now.Design) != a.Fingerprint {
			title := strings.TrimSpace(fmt.Sprintf("%s, changed since revision %d", now.Title, revision))
			var err error
			if j, err = edit.AddOption(title, now.Design).Apply(j); err != nil {
				return j, err
			}
		}
		j.Options = slices.Clone(j.Options)
		j.Options[i].Design = a.Design
		return j, nil
	}}
}

// Next is the number of the job's next revision.
func Next(j design.Job) int {
	n := 1
	for _, a := range j.Approvals {
		n = max(n, a.Revision+1)
	}
	return n
}

// Check says what is wrong with the job's approvals: a frozen design that is no
// longer what was agreed, a number that comes twice, a day that does not exist.
func Check(j design.Job) []error {
	var out []error
	seen := map[int]bool{}
	for i, a := range j.Approvals {
		where := fmt.Sprintf("approvals[%d], revision %d", i, a.Revision)
		if got := Fingerprint(a.Design); got != a.Fingerprint {
			out = append(out, fmt.Errorf("%s: the design in the file has the fingerprint %s, but %s was approved: "+
				"it was changed outside this program. Go by the signed sheet", where, got, a.Fingerprint))
		}
		if a.Revision < 1 || seen[a.Revision] {
			out = append(out, fmt.Errorf("%s: revisions count 1, 2, 3, each once", where))
		}
		seen[a.Revision] = true
		for _, date := range []string{a.Date, a.Withdrawn} {
			if date != "" && !design.ValidDate(date) {
				out = append(out, fmt.Errorf("%s: the date %q is not like 2026-11-26", where, date))
			}
		}
	}
	return out
}
