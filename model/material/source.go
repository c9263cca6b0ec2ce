// Package material holds the mixes, resins, glass and pipes that the trade
// uses: property tables whose rows name their sources. Names are generic; a
// product's own data sheet always overrules a figure here.
package material

// Status says how well a figure is founded.
type Status uint8

// The standings of a figure.
const (
	Published Status = iota // in the published source named
	Memory                  // in the published source named, quoted from memory
	Practice                // common practice, no source
)

func (s Status) String() string {
	return [...]string{"published", "from memory", "common practice, no source"}[s]
}

// Source is where a figure comes from.
type Source struct {
	Work   string // the published work, "" for common practice
	Status Status
}

func (s Source) String() string {
	switch {
	case s.Work == "":
		return s.Status.String()
	case s.Status == Published:
		return s.Work
	}
	return s.Work + " (" + s.Status.String() + ")"
}
