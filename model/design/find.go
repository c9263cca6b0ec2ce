package design

// PartKind is what a part is.
type PartKind uint8

// The kinds of part, in the order of a design's lists.
const (
	NoPart PartKind = iota
	PartSink
	PartTaps
	PartHole
	PartChannel
	PartGlass
	PartSupport
)

// Find is the kind of a part and its place in the list of that kind; NoPart where no
// part has this ID.
func (d Design) Find(id ID) (PartKind, int) {
	for i := range d.Sinks {
		if d.Sinks[i].ID == id {
			return PartSink, i
		}
	}
	for i := range d.Taps {
		if d.Taps[i].ID == id {
			return PartTaps, i
		}
	}
	for i := range d.Holes {
		if d.Holes[i].ID == id {
			return PartHole, i
		}
	}
	for i := range d.Channels {
		if d.Channels[i].ID == id {
			return PartChannel, i
		}
	}
	for i := range d.Glass {
		if d.Glass[i].ID == id {
			return PartGlass, i
		}
	}
	for i := range d.Supports {
		if d.Supports[i].ID == id {
			return PartSupport, i
		}
	}
	return NoPart, -1
}
