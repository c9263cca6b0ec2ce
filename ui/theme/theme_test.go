package theme_test

import (
	"image/color"
	"math"
	"slices"
	"testing"

	look "example.org/castwright/ui/theme"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
)

// luminance and contrast are those of WCAG 2.2 (W3C Recommendation, 2023),
// definitions "relative luminance" and "contrast ratio".
func luminance(c color.Color) float64 {
	n := color.NRGBAModel.Convert(c).(color.NRGBA)
	linear := func(v uint8) float64 {
		x := float64(v) / 255
		if x <= 0.04045 {
			return x / 12.92
		}
		return math.Pow((x+0.055)/1.055, 2.4)
	}
	return 0.2126*linear(n.R) + 0.7152*linear(n.G) + 0.0722*linear(n.B)
}

func contrast(a, b color.Color) float64 {
	x, y := luminance(a), luminance(b)
	return (math.Max(x, y) + 0.05) / (math.Min(x, y) + 0.05)
}

// TestContrast holds every pair of text and ground of both themes to 4.5 to 1, and
// every pair of mark and ground to 3 to 1 (WCAG 2.2, success criteria 1.4.3 and
// 1.4.11), at rest, under the mouse and pressed. That no other pairs are used is
// held by TestContrastOfAllThatIsSeen of package ui.
func TestContrast(t *testing.T) {
	test.NewTempApp(t)
	const none fyne.ThemeColorName = ""
	grounds := []fyne.ThemeColorName{
		theme.ColorNameBackground, look.Surface, theme.ColorNameHeaderBackground, theme.ColorNameMenuBackground,
		theme.ColorNameOverlayBackground,
	}
	with := func(more ...fyne.ThemeColorName) []fyne.ThemeColorName { return append(slices.Clone(grounds), more...) }
	names := func(n ...fyne.ThemeColorName) []fyne.ThemeColorName { return n }
	pairs := []struct {
		on, veils, names []fyne.ThemeColorName // a veil lies over the ground, under the text
		least            float64
	}{
		{with(theme.ColorNameInputBackground, theme.ColorNameButton), names(none, theme.ColorNameHover, theme.ColorNamePressed),
			names(theme.ColorNameForeground), 4.5},
		{grounds, names(none, theme.ColorNameHover, look.Selected), names(look.Muted, theme.ColorNameForeground), 4.5},
		{grounds, names(none), names(theme.ColorNameError, theme.ColorNameWarning, look.Note, theme.ColorNameSuccess,
			theme.ColorNameHyperlink), 4.5},
		{grounds, names(none, look.Selected), names(theme.ColorNamePrimary), 4.5},
		{grounds, names(theme.ColorNameHover), names(theme.ColorNameError, theme.ColorNameWarning, look.Note, theme.ColorNamePrimary), 3},
		{with(theme.ColorNameInputBackground, theme.ColorNameDisabledButton), names(none), names(theme.ColorNameDisabled), 4.5},
		{names(theme.ColorNameInputBackground), names(none, theme.ColorNameHover), names(theme.ColorNamePlaceHolder), 4.5},
		{names(theme.ColorNameInputBackground), names(theme.ColorNameSelection), names(theme.ColorNameForeground), 4.5},
		{names(theme.ColorNamePrimary), names(none, theme.ColorNameHover), names(theme.ColorNameForegroundOnPrimary), 4.5},
		{names(theme.ColorNameError), names(none, theme.ColorNameHover), names(theme.ColorNameForegroundOnError), 4.5},
		{names(theme.ColorNameWarning), names(none), names(theme.ColorNameForegroundOnWarning), 4.5},
		{names(theme.ColorNameSuccess), names(none), names(theme.ColorNameForegroundOnSuccess), 4.5},
		{names(look.Ground), names(none, look.Veil), names(theme.ColorNameForeground), 4.5},
		{names(look.Ground), names(look.Veil), names(look.Muted), 4.5},
		// Marks: borders of what is typed in, focus, the cards' signs on pictures.
		{names(look.Surface, theme.ColorNameInputBackground, theme.ColorNameOverlayBackground), names(none),
			names(theme.ColorNameInputBorder), 3},
		{with(look.Ground), names(none), names(theme.ColorNamePrimary), 3},
		{names(look.Ground), names(none, theme.ColorNameHover), names(look.Muted), 3},
	}
	for _, choice := range []look.Choice{look.Light, look.Dark} {
		th := look.New(choice)
		for _, p := range pairs {
			for _, on := range p.on {
				for _, veil := range p.veils {
					ground := color.NRGBAModel.Convert(th.Color(on, 0)).(color.NRGBA)
					if veil != none {
						ground = over(color.NRGBAModel.Convert(th.Color(veil, 0)).(color.NRGBA), ground)
					}
					for _, name := range p.names {
						if got := contrast(th.Color(name, 0), ground); got < p.least {
							t.Errorf("%s: %s on %s %s has a contrast of %.2f, want %g", choice, name, on, veil, got, p.least)
						}
					}
				}
			}
		}
	}
}

// over is a colour as it is seen over an opaque one.
func over(top, below color.NRGBA) color.NRGBA {
	mix := func(t, b uint8) uint8 {
		return uint8(math.Round((float64(t)*float64(top.A) + float64(b)*float64(0xff-top.A)) / 0xff))
	}
	return color.NRGBA{mix(top.R, below.R), mix(top.G, below.G), mix(top.B, below.B), 0xff}
}

// TestGreysAreNeutral holds the ground to no tint, so that colours of materials
// are judged fairly beside it.
func TestGreysAreNeutral(t *testing.T) {
	test.NewTempApp(t)
	for _, choice := range []look.Choice{look.Light, look.Dark} {
		for _, name := range []fyne.ThemeColorName{theme.ColorNameBackground, look.Surface, look.Ground,
			theme.ColorNameButton} {
			c := color.NRGBAModel.Convert(look.New(choice).Color(name, 0)).(color.NRGBA)
			if c.R != c.G || c.G != c.B {
				t.Errorf("%s: %s is %v, no grey", choice, name, c)
			}
		}
	}
}

func TestChoice(t *testing.T) {
	a := test.NewTempApp(t)
	a.Settings().SetTheme(look.New(look.Dark))
	if !look.IsDark() {
		t.Error("the dark theme is not dark")
	}
	a.Settings().SetTheme(look.New(look.Light))
	if look.IsDark() {
		t.Error("the light theme is dark")
	}
	for _, tt := range []struct {
		choice  look.Choice
		desktop fyne.ThemeVariant
		want    fyne.ThemeVariant
	}{
		{look.System, theme.VariantDark, theme.VariantDark},
		{look.System, theme.VariantLight, theme.VariantLight},
		{look.Light, theme.VariantDark, theme.VariantLight},
		{look.Dark, theme.VariantLight, theme.VariantDark},
		{"nonsense", theme.VariantDark, theme.VariantDark},
	} {
		if got := tt.choice.Variant(tt.desktop); got != tt.want {
			t.Errorf("%q on a desktop of %d gives %d, want %d", tt.choice, tt.desktop, got, tt.want)
		}
	}
}
