package design

import (
	"time"

	"example.org/castwright/model/units"
	"github.com/shopspring/decimal"
)

// MaxApprovals bounds the revisions of a job.
const MaxApprovals = 200

// Approval is a revision that the client agreed to: the design as it was that
// day with what it was reckoned with. It is frozen: no edit changes it.
type Approval struct {
	Revision  int    // 1, 2, ... over the whole job, never used again
	Option    string // the option's name that day
	Title     string
	Client    string // as on that day's sheet
	Date      string // ISO 8601, "2026-11-26"
	By        string // who agreed, as the maker typed it
	Units     units.System
	Materials Materials
	Design    Design
	Price     Price // what the client was told, if anything
	Terms     Terms // in full, as on that day's sheet
	// Fingerprint is that of the design; see package approve.
	Fingerprint string
	// Withdrawn is the date on which it was taken back, "" while it holds.
	Withdrawn string
}

// When says on what day a revision was agreed to and by whom, and that it was
// withdrawn.
func (a Approval) When() string {
	words := "agreed " + a.Date
	if a.By != "" {
		words += " by " + a.By
	}
	if a.Withdrawn != "" {
		words += ", withdrawn " + a.Withdrawn
	}
	return words
}

// Price is what the client pays for an option, as the maker sets it.
type Price struct {
	Amount decimal.Decimal // in the currency of the materials, 0 for none
	Note   string          // "with VAT, fitted"
}

// Terms is what the client's sheet says beside the design. Lines of a text are
// parted by line feeds; an empty text takes the program's own words.
type Terms struct {
	Included    string
	NotIncluded string
	Care        string
}

// ValidDate reports whether s is a calendar date of ISO 8601, "2026-11-26".
func ValidDate(s string) bool {
	t, err := time.Parse(time.DateOnly, s)
	return err == nil && t.Year() >= 1900
}
