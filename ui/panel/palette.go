package panel

import "example.org/castwright/model/design"

// palette says which colours are offered.
type palette uint8

const (
	ofConcrete palette = iota
	ofResin
	ofGlass
)

// Swatch is a colour with a plain name. The colours are our own choice of what
// pigments, resins and glass come near to; none is a product's.
type Swatch struct {
	Name   string
	Colour design.Colour
}

func hex(n uint32) design.Colour {
	return design.Colour{R: uint8(n >> 16), G: uint8(n >> 8), B: uint8(n)}
}

// ConcreteColours are faces of concrete, light to dark, grey to warm.
var ConcreteColours = []Swatch{
	{"White", hex(0xdcdad4)}, {"Bone", hex(0xcfc8b9)}, {"Ash", hex(0xb9b8b4)},
	{"Cement", hex(0xa9a69f)}, {"Dove", hex(0x95989a)}, {"Slate", hex(0x74797d)},
	{"Graphite", hex(0x505356)}, {"Coal", hex(0x36383a)}, {"Sand", hex(0xc2ad8a)},
	{"Clay", hex(0xa9836a)}, {"Brick", hex(0x8e5f50)}, {"Umber", hex(0x6b5546)},
	{"Moss", hex(0x84896f)}, {"Sage", hex(0x98a190)}, {"Mist", hex(0x9fb0b4)},
	{"Dusk", hex(0x7c8698)},
}

// ResinColours are resins, clear waters to strong pigments.
var ResinColours = []Swatch{
	{"Clear", hex(0xdfe8e6)}, {"Ice", hex(0xb7d6dc)}, {"Lagoon", hex(0x3f9aa8)},
	{"Sea", hex(0x1f6f86)}, {"Deep", hex(0x17466b)}, {"Ink", hex(0x1a2338)},
	{"Emerald", hex(0x1f7a5c)}, {"Bottle", hex(0x2d5a3a)}, {"Amber", hex(0xc8862a)},
	{"Honey", hex(0xdba94c)}, {"Copper", hex(0xa45a34)}, {"Ruby", hex(0x8f2436)},
	{"Plum", hex(0x5b2f5e)}, {"Smoke", hex(0x5a5f63)}, {"Milk", hex(0xe9e6de)},
	{"Black", hex(0x18191b)},
}

// GlassColours are broken glass.
var GlassColours = []Swatch{
	{"Clear", hex(0xd5e4df)}, {"Aqua", hex(0x8ecac8)}, {"Sky", hex(0x7fb2d6)},
	{"Cobalt", hex(0x2c4fa3)}, {"Green", hex(0x5c9a6a)}, {"Olive", hex(0x7c8443)},
	{"Amber", hex(0xb9772e)}, {"Brown", hex(0x6d4526)}, {"Red", hex(0xa8322c)},
	{"Rose", hex(0xd49aa0)}, {"Violet", hex(0x7a62a8)}, {"Smoke", hex(0x6a7074)},
	{"White", hex(0xeceae4)}, {"Black", hex(0x222427)}, {"Gold", hex(0xc9a24a)},
	{"Mirror", hex(0xb8bcc0)},
}

func (p palette) swatches() []Swatch {
	switch p {
	case ofResin:
		return ResinColours
	case ofGlass:
		return GlassColours
	}
	return ConcreteColours
}

// ColourName is the plain name of a colour of a palette, "" for one's own.
func ColourName(list []Swatch, c design.Colour) string {
	for _, s := range list {
		if s.Colour == c {
			return s.Name
		}
	}
	return ""
}
