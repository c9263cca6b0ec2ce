package theme

import (
	"image/color"

	"example.org/castwright/ui/icon"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// Choice is the maker's wish for light or dark.
type Choice string

// The choices. As a word in a settings file an unknown one means System.
const (
	System Choice = "system" // as the desktop says
	Light  Choice = "light"
	Dark   Choice = "dark"
)

// New is the look in one of its two kinds.
func New(c Choice) fyne.Theme { return look{theme.DefaultTheme(), c} }

type look struct {
	fyne.Theme // fonts
	choice     Choice
}

// Variant is the kind that a choice gives where the desktop has its own wish.
func (c Choice) Variant(desktop fyne.ThemeVariant) fyne.ThemeVariant {
	switch c {
	case Light:
		return theme.VariantLight
	case Dark:
		return theme.VariantDark
	}
	return desktop
}

func (l look) Color(name fyne.ThemeColorName, desktop fyne.ThemeVariant) color.Color {
	colours := light
	if l.choice.Variant(desktop) == theme.VariantDark {
		colours = dark
	}
	if c, ok := colours[name]; ok {
		return c
	}
	return l.Theme.Color(name, l.choice.Variant(desktop))
}

// IsDark reports whether the theme in use is a dark one.
func IsDark() bool {
	c := color.GrayModel.Convert(theme.Color(theme.ColorNameBackground)).(color.Gray)
	return c.Y < 0x80
}

func (l look) Size(name fyne.ThemeSizeName) float32 {
	if s, ok := sizes[name]; ok {
		return s
	}
	return l.Theme.Size(name)
}

func (l look) Icon(name fyne.ThemeIconName) fyne.Resource {
	if r, ok := icons[name]; ok {
		return r
	}
	return l.Theme.Icon(name)
}

// icons puts the family's own in the place of the toolkit's.
var icons = map[fyne.ThemeIconName]fyne.Resource{
	theme.IconNameViewZoomIn:     icon.ZoomIn,
	theme.IconNameViewZoomOut:    icon.ZoomOut,
	theme.IconNameViewZoomFit:    icon.Fit,
	theme.IconNameCancel:         icon.Close,
	theme.IconNameArrowDropDown:  icon.Down,
	theme.IconNameArrowDropUp:    icon.Up,
	theme.IconNameMenuExpand:     icon.Right,
	theme.IconNameNavigateNext:   icon.Right,
	theme.IconNameNavigateBack:   icon.Left,
	theme.IconNameMoveDown:       icon.Down,
	theme.IconNameMoveUp:         icon.Up,
	theme.IconNameConfirm:        icon.Check,
	theme.IconNameDelete:         icon.Remove,
	theme.IconNameContentUndo:    icon.Undo,
	theme.IconNameContentRedo:    icon.Redo,
	theme.IconNameContentAdd:     icon.Add,
	theme.IconNameWarning:        icon.Caution,
	theme.IconNameError:          icon.Severe,
	theme.IconNameInfo:           icon.Note,
	theme.IconNameSearch:         icon.Search,
	theme.IconNameFolder:         icon.Folder,
	theme.IconNameSettings:       icon.Settings,
	theme.IconNameHome:           icon.Home,
	theme.IconNameHistory:        icon.Recent,
	theme.IconNameDocument:       icon.File,
	theme.IconNameDocumentSave:   icon.Save,
	theme.IconNameColorPalette:   icon.Finish,
	theme.IconNameMoreHorizontal: icon.More,
}
