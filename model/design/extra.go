package design

import "strings"

// Places of unknown members (see [Extra]) are JSON pointers (RFC 6901) within
// the owner, with one change: a part of a list that has an ID stands by "@" and
// its ID in place of its number, so that the member stays with its part when
// others come and go. "/sinks/@sink-1/shape/maker" is the member "maker" of the
// shape of sink-1. What an option says beside its design is kept in the design,
// under places that start with "..".

var (
	placeEscaper   = strings.NewReplacer("~", "~0", "/", "~1")
	placeUnescaper = strings.NewReplacer("~1", "/", "~0", "~")
)

// PartToken is how a part stands in a place.
func PartToken(id ID) string { return "@" + EscapePlace(string(id)) }

// EscapePlace writes a name as one step of a place.
func EscapePlace(name string) string {
	return placeEscaper.Replace(name)
}

// UnescapePlace reads a step of a place back to the name.
func UnescapePlace(step string) string {
	return placeUnescaper.Replace(step)
}

// WithoutPart is the unknown members less those of one part. It never changes
// e.
func (e Extra) WithoutPart(id ID) Extra {
	within := "/" + PartToken(id) + "/"
	var out Extra
	for place, raw := range e {
		if strings.Contains(place, within) {
			continue
		}
		if out == nil {
			out = make(Extra, len(e))
		}
		out[place] = raw
	}
	return out
}
