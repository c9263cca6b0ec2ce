package approval

import (
	"fmt"
	"strings"

	"example.org/castwright/model/scene"
	"example.org/castwright/model/terms"
)

// mostNamed is how many characters are named in words.
const mostNamed = 6

// Unseen says in a sentence where the client's name, the option's title, the words of
// the sheet or the letterhead have characters that its fonts have no shapes for, and
// which; "" when there are none. They are printed as boxes.
func (o Order) Unseen() string {
	type place struct{ where, text string }
	texts := []place{{"the client's name", o.Job.Client}}
	if option, ok := o.Job.Option(o.Option); ok {
		said := terms.Filled(o.Job.Terms, option.Design)
		texts = append(texts, place{"the option's title", option.Name + " " + option.Title},
			place{"the words of the sheet", strings.Join([]string{option.Price.Note, option.Design.Notes, said.Included, said.NotIncluded, said.Care}, " ")})
	}
	for _, a := range o.Job.Approvals {
		if o.Revision != 0 && a.Revision == o.Revision {
			texts = append(texts, place{"the name of who agreed", a.By})
		}
	}
	texts = append(texts, place{"the letterhead", strings.Join(o.Head.Lines, " ")})
	var places []string
	var all strings.Builder
	for _, t := range texts {
		if len(scene.Unseen(t.text)) > 0 {
			places = append(places, t.where)
		}
		all.WriteString(t.text)
	}
	list := scene.Unseen(all.String())
	if len(list) == 0 {
		return ""
	}
	named := list[:min(len(list), mostNamed)]
	more := ""
	if n := len(list) - len(named); n > 0 {
		more = fmt.Sprintf(" and %d more", n)
	}
	where := strings.Join(places, " and ")
	return fmt.Sprintf("%s: the sheet has no letters for %s%s and prints □ in their place. Write it in Latin, Greek, Cyrillic, Hebrew or Arabic letters.",
		strings.ToUpper(where[:1])+where[1:], strings.Join(named, " "), more)
}
