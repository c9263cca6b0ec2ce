package keys_test

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"example.org/castwright/ui/control"
	"example.org/castwright/ui/keys"
)

// TestTable holds every action to a place in the menu, a key of its own and a
// sentence that says what it does.
func TestTable(t *testing.T) {
	ids, byKey, names := map[keys.ID]bool{}, map[keys.Key]keys.ID{}, map[string]bool{}
	for _, a := range keys.Table {
		if ids[a.ID] {
			t.Errorf("%s stands twice in the table", a.ID)
		}
		ids[a.ID] = true
		if !slices.Contains(keys.Menus, a.Menu) {
			t.Errorf("%s has no place in the menu: %q", a.ID, a.Menu)
		}
		if names[a.Menu+"/"+a.Name] || a.Name == "" {
			t.Errorf("%s: the menu %s says %q twice", a.ID, a.Menu, a.Name)
		}
		names[a.Menu+"/"+a.Name] = true
		if a.Key.Name == "" {
			t.Errorf("%s has no key", a.ID)
		}
		for _, k := range append([]keys.Key{a.Key}, a.Also...) {
			if other, taken := byKey[k]; taken {
				t.Errorf("%s and %s share the key %s", other, a.ID, k)
			}
			byKey[k] = a.ID
		}
		if !strings.HasSuffix(a.Does, ".") || len(a.Does) < 12 {
			t.Errorf("%s: %q is no sentence", a.ID, a.Does)
		}
	}
}

// TestKeysLeaveTextAlone keeps the keys that move in a text out of the table. Those
// that copy, cut, paste and select all a text keeps for itself while it is typed
// in (control.Entry); they may mean parts otherwise, as the toolkit's own
// shortcuts alone.
func TestKeysLeaveTextAlone(t *testing.T) {
	for _, a := range keys.Table {
		switch a.Key {
		case keys.Key{Name: fyne.KeyLeft, Mod: keys.Ctrl}, keys.Key{Name: fyne.KeyRight, Mod: keys.Ctrl}:
			t.Errorf("%s takes %s from texts", a.ID, a.Key)
		}
	}
}

func TestKeyString(t *testing.T) {
	for want, k := range map[string]keys.Key{
		"Delete": {Name: fyne.KeyDelete}, "F11": {Name: fyne.KeyF11}, "Ctrl+Shift+Page up": {Name: fyne.KeyPageUp, Mod: fyne.KeyModifierControl | fyne.KeyModifierShift},
		"Ctrl+=": {Name: fyne.KeyEqual, Mod: fyne.KeyModifierControl}, "Ctrl+Alt+E": {Name: fyne.KeyE,
			Mod: fyne.KeyModifierAlt | fyne.KeyModifierControl},
	} {
		if got := k.String(); got != want {
			t.Errorf("%+v reads %q, want %q", k, got, want)
		}
	}
}

// rig is a dispatcher whose actions only note that they were done.
func rig(t *testing.T) (*keys.Dispatcher, *control.Frame, *[]keys.ID, map[keys.ID]keys.Binding) {
	t.Helper()
	test.NewTempApp(t)
	w := test.NewTempWindow(t, widget.NewLabel(""))
	f := control.NewFrame(w)
	var done []keys.ID
	b := map[keys.ID]keys.Binding{}
	for _, a := range keys.Table {
		b[a.ID] = keys.Binding{Do: func() { done = append(done, a.ID) }}
	}
	return keys.NewDispatcher(f, b), f, &done, b
}

// press presses a key where the keyboard is.
func press(f *control.Frame, name fyne.KeyName) {
	e := &fyne.KeyEvent{Name: name}
	if focused := f.Window.Canvas().Focused(); focused != nil {
		focused.TypedKey(e)
		return
	}
	f.Key(e)
}

// TestEveryActionIsInTheMenu opens each menu and works each of its lines by the
// keyboard alone.
func TestEveryActionIsInTheMenu(t *testing.T) {
	d, f, done, _ := rig(t)
	bar := keys.NewBar(f, d)
	f.Window.SetContent(bar.Object)
	var want []keys.ID
	for i, menu := range keys.Menus {
		n := 0
		for _, a := range keys.Table {
			if a.Menu != menu {
				continue
			}
			want = append(want, a.ID)
			bar.Open(i)
			for range n {
				press(f, fyne.KeyDown)
			}
			press(f, fyne.KeyReturn)
			n++
		}
	}
	if !slices.Equal(*done, want) {
		t.Errorf("the menu does %v\nwant %v", *done, want)
	}
	if f.Busy() {
		t.Error("a menu stays open")
	}
}

func TestMenusByKeys(t *testing.T) {
	d, f, done, _ := rig(t)
	bar := keys.NewBar(f, d)
	f.Window.SetContent(bar.Object)
	bar.Open(0)
	press(f, fyne.KeyRight) // Edit
	press(f, fyne.KeyUp)    // its last line
	press(f, fyne.KeyReturn)
	bar.Open(0)
	press(f, fyne.KeyLeft) // Help
	press(f, fyne.KeyEscape)
	if !slices.Equal(*done, []keys.ID{keys.Paste}) || f.Busy() {
		t.Errorf("did %v, open %v", *done, f.Busy())
	}
}

// TestNothingHappensUnderADialog guards what the toolkit does not: it runs
// shortcuts while a dialog is open.
func TestNothingHappensUnderADialog(t *testing.T) {
	d, f, done, _ := rig(t)
	dialog := control.NewDialog(f, "?", widget.NewLabel("?"), control.Cancel()).Show()
	d.Run(keys.Save)
	if len(*done) != 0 {
		t.Errorf("under a dialog %v was done", *done)
	}
	dialog.Esc()
	d.Run(keys.Save)
	if len(*done) != 1 {
		t.Errorf("after the dialog: %v", *done)
	}
}

func TestUndoGoesToATextThatIsTyped(t *testing.T) {
	d, f, done, _ := rig(t)
	e := control.NewEntry(f, "")
	e.Commit = func(string) error { return nil }
	f.Window.SetContent(e)
	f.Window.Canvas().Focus(e)
	d.Run(keys.Undo) // nothing is pending: the change before it is meant
	if !slices.Equal(*done, []keys.ID{keys.Undo}) {
		t.Fatalf("with nothing typed: %v", *done)
	}
	test.Type(e, "12")
	d.Run(keys.Undo)
	if len(*done) != 1 || e.Text == "12" {
		t.Errorf("with a text being typed the job was undone: %v, text %q", *done, e.Text)
	}
}

func TestOtherActionsHandOverWhatIsTyped(t *testing.T) {
	d, f, done, _ := rig(t)
	got := ""
	e := control.NewEntry(f, "")
	e.Commit = func(text string) error { got = text; return nil }
	f.Window.SetContent(e)
	f.Window.Canvas().Focus(e)
	test.Type(e, "640")
	d.Run(keys.Fit)
	if got != "" {
		t.Errorf("looking took %q", got)
	}
	d.Run(keys.Save)
	if got != "640" || !slices.Equal(*done, []keys.ID{keys.Fit, keys.Save}) {
		t.Errorf("saving took %q and did %v", got, *done)
	}
}

func TestPlainKeys(t *testing.T) {
	d, _, done, _ := rig(t)
	for _, k := range []fyne.KeyName{fyne.KeyF4, fyne.KeyDelete, fyne.KeyQ} {
		d.Key(&fyne.KeyEvent{Name: k})
	}
	if !slices.Equal(*done, []keys.ID{keys.PartSink, keys.Remove}) {
		t.Errorf("F4, Delete and Q did %v", *done)
	}
}

func TestDisabledActionsDoNothing(t *testing.T) {
	test.NewTempApp(t)
	f := control.NewFrame(test.NewTempWindow(t, widget.NewLabel("")))
	done, may := 0, false
	b := map[keys.ID]keys.Binding{}
	for _, a := range keys.Table {
		b[a.ID] = keys.Binding{Do: func() { done++ }, Enabled: func() bool { return may }}
	}
	d := keys.NewDispatcher(f, b)
	bar := keys.NewBar(f, d)
	f.Window.SetContent(bar.Object)
	open := func() {
		bar.Open(0)
		press(f, fyne.KeyDown)
		press(f, fyne.KeyReturn)
		press(f, fyne.KeyEscape)
	}
	open()
	d.Run(keys.Save)
	if done != 0 {
		t.Errorf("disabled, done %d times", done)
	}
	may = true
	open()
	d.Run(keys.Save)
	if done != 2 {
		t.Errorf("enabled, done %d times, want twice", done)
	}
}

// TestShortcutsReachTheWindowFromAText: a text that has the keyboard keeps what
// edits it and hands the rest on.
func TestShortcutsReachTheWindowFromAText(t *testing.T) {
	_, f, done, _ := rig(t)
	e := control.NewEntry(f, "")
	e.SetValue("64")
	f.Window.SetContent(e)
	f.Window.Canvas().Focus(e)
	e.TypedShortcut(&desktop.CustomShortcut{KeyName: fyne.KeyS, Modifier: keys.Ctrl})
	e.TypedShortcut(&fyne.ShortcutSelectAll{})
	if got := e.SelectedText(); got != "64" || !slices.Equal(*done, []keys.ID{keys.Save}) {
		t.Errorf("selected %q, done %v", got, *done)
	}
	e.TypedShortcut(&fyne.ShortcutUndo{})
	if !slices.Equal(*done, []keys.ID{keys.Save, keys.Undo}) {
		t.Errorf("undo with nothing typed: %v", *done)
	}
}
