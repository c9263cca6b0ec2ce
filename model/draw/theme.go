package draw

import "example.org/castwright/model/scene"

// Theme is the colours of everything but the top.
type Theme struct {
	Ground scene.Colour // of the page; neutral, so that materials are judged fairly
	Grid   scene.Colour
	Ink    scene.Colour // dimensions and texts
	Halo   scene.Colour // around ink that lies over the top
	Faint  scene.Colour // lesser lines and texts
	Wall   scene.Colour // hatching
	// WallFill lies below the hatching.
	WallFill scene.Colour
	Support  scene.Colour // dashed lines
	// SupportHalo lies below the dashed lines, which may cross any colour.
	SupportHalo scene.Colour
	Shadow      float64 // darkness of the top's shadow, 0 to 1
}

// Light is for a screen with light panels: a neutral mid-grey.
func Light() Theme {
	return Theme{
		Ground:      scene.Colour{R: 0xb9, G: 0xb9, B: 0xb9, A: 0xff},
		Grid:        scene.Colour{R: 0xad, G: 0xad, B: 0xad, A: 0xff},
		Ink:         scene.Colour{R: 0x1b, G: 0x1d, B: 0x1f, A: 0xff},
		Halo:        scene.Colour{R: 0xb9, G: 0xb9, B: 0xb9, A: 0xff},
		Faint:       scene.Colour{R: 0x4c, G: 0x4f, B: 0x52, A: 0xff},
		Wall:        scene.Colour{R: 0x6c, G: 0x6c, B: 0x6c, A: 0xff},
		Support:     scene.Colour{R: 0x35, G: 0x4b, B: 0x5c, A: 0xff},
		WallFill:    scene.Colour{R: 0xa6, G: 0xa6, B: 0xa6, A: 0xff},
		SupportHalo: scene.Colour{R: 0xff, G: 0xff, B: 0xff, A: 0x70},
		Shadow:      0.42,
	}
}

// Dark is for a screen with dark panels.
func Dark() Theme {
	return Theme{
		Ground:      scene.Colour{R: 0x52, G: 0x52, B: 0x52, A: 0xff},
		Grid:        scene.Colour{R: 0x5c, G: 0x5c, B: 0x5c, A: 0xff},
		Ink:         scene.Colour{R: 0xf2, G: 0xf2, B: 0xf0, A: 0xff},
		Halo:        scene.Colour{R: 0x52, G: 0x52, B: 0x52, A: 0xff},
		Faint:       scene.Colour{R: 0xc6, G: 0xc6, B: 0xc4, A: 0xff},
		Wall:        scene.Colour{R: 0x9a, G: 0x9a, B: 0x9a, A: 0xff},
		Support:     scene.Colour{R: 0xb4, G: 0xc8, B: 0xd8, A: 0xff},
		WallFill:    scene.Colour{R: 0x63, G: 0x63, B: 0x63, A: 0xff},
		SupportHalo: scene.Colour{R: 0x10, G: 0x12, B: 0x14, A: 0x80},
		Shadow:      0.55,
	}
}

// Paper is for sheets.
func Paper() Theme {
	return Theme{
		Ground:      scene.Colour{R: 0xff, G: 0xff, B: 0xff, A: 0xff},
		Grid:        scene.Colour{R: 0xea, G: 0xea, B: 0xe8, A: 0xff},
		Ink:         scene.Colour{R: 0x22, G: 0x25, B: 0x28, A: 0xff},
		Halo:        scene.Colour{R: 0xff, G: 0xff, B: 0xff, A: 0xff},
		Faint:       scene.Colour{R: 0x6a, G: 0x6e, B: 0x72, A: 0xff},
		Wall:        scene.Colour{R: 0x9b, G: 0x9c, B: 0x9d, A: 0xff},
		Support:     scene.Colour{R: 0x56, G: 0x6a, B: 0x7a, A: 0xff},
		WallFill:    scene.Colour{R: 0xf1, G: 0xf1, B: 0xef, A: 0xff},
		SupportHalo: scene.Colour{R: 0xff, G: 0xff, B: 0xff, A: 0x70},
		Shadow:      0.30,
	}
}
