package keys

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

// Key is a key with what is held beside it.
type Key struct {
	Name fyne.KeyName
	Mod  fyne.KeyModifier
}

// Ctrl is the key that goes with letters: Command on a Mac.
const Ctrl = fyne.KeyModifierShortcutDefault

// Plain reports whether nothing, or only Shift, is held: the toolkit makes no
// shortcut of such a key and gives it to whoever has the keyboard.
func (k Key) Plain() bool { return k.Mod&^fyne.KeyModifierShift == 0 }

var keyWords = map[fyne.KeyName]string{
	fyne.KeyPageUp: "Page up", fyne.KeyPageDown: "Page down", fyne.KeyEscape: "Esc",
	fyne.KeyDelete: "Delete", fyne.KeyEqual: "=", fyne.KeyMinus: "-",
}

// String writes the key as it stands on a keyboard.
func (k Key) String() string {
	var parts []string
	for _, m := range []struct {
		mod  fyne.KeyModifier
		word string
	}{
		{fyne.KeyModifierSuper, "Cmd"}, {fyne.KeyModifierControl, "Ctrl"},
		{fyne.KeyModifierAlt, "Alt"}, {fyne.KeyModifierShift, "Shift"},
	} {
		if k.Mod&m.mod != 0 {
			parts = append(parts, m.word)
		}
	}
	word, ok := keyWords[k.Name]
	if !ok {
		word = string(k.Name)
	}
	return strings.Join(append(parts, word), "+")
}

// shortcut is the key as the toolkit names it.
func (k Key) shortcut() fyne.Shortcut {
	if k.Mod == Ctrl {
		switch k.Name {
		case fyne.KeyZ:
			return &fyne.ShortcutUndo{}
		case fyne.KeyY:
			return &fyne.ShortcutRedo{}
		case fyne.KeyA:
			return &fyne.ShortcutSelectAll{}
		case fyne.KeyC:
			return &fyne.ShortcutCopy{}
		case fyne.KeyX:
			return &fyne.ShortcutCut{}
		case fyne.KeyV:
			return &fyne.ShortcutPaste{}
		}
	}
	return &desktop.CustomShortcut{KeyName: k.Name, Modifier: k.Mod}
}
