package design

// Handling is how one part of an option may be handled while the design is
// drawn: locked, so that the hand neither moves nor changes it, or hidden, so
// that it is not drawn on the board.
//
// It stands beside the design and is no part of it. A hidden part belongs to the
// top like any other: it is cast, counted, warned about, approved and printed,
// and only the board leaves it out. So neither locking nor hiding changes a
// number, a paper or the fingerprint of an approval.
type Handling struct {
	Part   ID
	Locked bool
	Hidden bool
}

// HandlingOf is how a part may be handled: the first word on it holds.
func (o Option) HandlingOf(id ID) Handling {
	for _, h := range o.Handling {
		if h.Part == id {
			return h
		}
	}
	return Handling{Part: id}
}

// Locked reports whether the hand must leave a part alone.
func (o Option) Locked(id ID) bool { return o.HandlingOf(id).Locked }

// Hidden reports whether a part is left out on the board.
func (o Option) Hidden(id ID) bool { return o.HandlingOf(id).Hidden }

// HiddenParts are the parts of the design that are hidden, in the order in which
// they were hidden.
func (o Option) HiddenParts() []ID {
	var out []ID
	for _, h := range o.Handling {
		if h.Hidden && o.Design.hasPart(h.Part) {
			out = append(out, h.Part)
		}
	}
	return out
}
