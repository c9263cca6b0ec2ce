package approval

import (
	"fmt"
	"strings"

	"example.org/castwright/model/design"
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
	client, words := o.Job.Client, o.Job.Terms
	option, ok := o.Job.Option(o.Option)
	by := ""
	for _, a := range o.Job.Approvals { // a frozen revision says what was said then
		if o.Revision != 0 && a.Revision == o.Revision {
			client, words, by, ok = a.Client, a.Terms, a.By, true
			option = design.Option{Name: a.Option, Title: a.Title, Price: a.Price, Design: a.Design}
		}
	}
	texts := []place{{"the client's name", client}}
	if ok {
		said := terms.Filled(words, option.Design)
		texts = append(texts, place{"the option's title", option.Name + " " + option.Title},
			place{"the words of the sheet", strings.Join([]string{option.Price.Note, option.Design.Notes, said.Included, said.NotIncluded, said.Care}, " ")},
			place{"the name of who agreed", by})
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
	where := places[0]
	if n := len(places); n > 1 {
		where = strings.Join(places[:n-1], ", ") + " and " + places[n-1]
	}
	return fmt.Sprintf("%s: the sheet has no letters for %s%s and prints □ in their place. Write it in Latin, Greek, Cyrillic, Hebrew or Arabic letters.",
		strings.ToUpper(where[:1])+where[1:], strings.Join(named, " "), more)
}
