package approval

import (
	"fmt"
	"strings"

	"example.org/castwright/model/scene"
	"example.org/castwright/model/terms"
)

// mostNamed is how many characters are named in words.
const mostNamed = 6

// Unseen says in a sentence which characters of the client's name, the option's
// title, the words of the sheet and the letterhead its fonts have no shapes for, ""
// when there are none. They are printed as boxes.
func (o Order) Unseen() string {
	words := []string{o.Job.Client}
	if option, ok := o.Job.Option(o.Option); ok {
		said := terms.Filled(o.Job.Terms, option.Design)
		words = append(words, option.Name, option.Title, option.Price.Note, said.Included, said.NotIncluded, said.Care)
	}
	for _, a := range o.Job.Approvals {
		if o.Revision != 0 && a.Revision == o.Revision {
			words = append(words, a.By)
		}
	}
	list := scene.Unseen(strings.Join(append(words, o.Head.Lines...), "\n"))
	if len(list) == 0 {
		return ""
	}
	named := list[:min(len(list), mostNamed)]
	more := ""
	if n := len(list) - len(named); n > 0 {
		more = fmt.Sprintf(" and %d more", n)
	}
	return fmt.Sprintf("The sheet has no letters for %s%s and prints □ in their place: write that name or word in Latin, Greek, Cyrillic, Hebrew or Arabic letters.",
		strings.Join(named, " "), more)
}
