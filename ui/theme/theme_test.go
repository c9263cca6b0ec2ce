package theme_test

import (
	"image/color"
	"math"
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

// TestContrast holds text to 4.5 to 1 and borders and marks to 3 to 1 (WCAG 2.2,
// success criteria 1.4.3 and 1.4.11).
func TestContrast(t *testing.T) {
	test.NewTempApp(t)
	grounds := []fyne.ThemeColorName{
		theme.ColorNameBackground, look.Surface, theme.ColorNameHeaderBackground, theme.ColorNameMenuBackground,
		theme.ColorNameOverlayBackground,
	}
	pairs := []struct {
		on    []fyne.ThemeColorName
		names []fyne.ThemeColorName
		least float64
	}{
		{append(grounds, theme.ColorNameInputBackground, theme.ColorNameButton),
			[]fyne.ThemeColorName{theme.ColorNameForeground}, 4.5},
		{grounds, []fyne.ThemeColorName{look.Muted, theme.ColorNameError, theme.ColorNameWarning,
			look.Note, theme.ColorNamePrimary}, 4.5},
		{[]fyne.ThemeColorName{theme.ColorNameInputBackground},
			[]fyne.ThemeColorName{theme.ColorNamePlaceHolder}, 4.5},
		{[]fyne.ThemeColorName{theme.ColorNamePrimary},
			[]fyne.ThemeColorName{theme.ColorNameForegroundOnPrimary}, 4.5},
		{[]fyne.ThemeColorName{theme.ColorNameError},
			[]fyne.ThemeColorName{theme.ColorNameForegroundOnError}, 4.5},
		{[]fyne.ThemeColorName{look.Surface, theme.ColorNameInputBackground,
			theme.ColorNameOverlayBackground}, []fyne.ThemeColorName{theme.ColorNameInputBorder}, 3},
		{[]fyne.ThemeColorName{look.Ground}, []fyne.ThemeColorName{theme.ColorNameForeground}, 4.5},
	}
	for _, choice := range []look.Choice{look.Light, look.Dark} {
		th := look.New(choice)
		for _, p := range pairs {
			for _, on := range p.on {
				for _, name := range p.names {
					if got := contrast(th.Color(name, 0), th.Color(on, 0)); got < p.least {
						t.Errorf("%s: %s on %s has a contrast of %.2f, want %g", choice, name, on, got,
							p.least)
					}
				}
			}
		}
	}
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
