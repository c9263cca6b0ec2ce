package keys_test

import (
	"slices"
	"strings"
	"testing"

	"example.org/castwright/ui/control"
	"example.org/castwright/ui/keys"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
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

// TestKeysLeaveTextAlone keeps the keys of editing text out of the table: the
// menu gets a key before the text that is being typed does.
func TestKeysLeaveTextAlone(t *testing.T) {
	taken := []keys.Key{
		{Name: fyne.KeyC, Mod: keys.Ctrl}, {Name: fyne.KeyV, Mod: keys.Ctrl}, {Name: fyne.KeyX, Mod: keys.Ctrl}, {Name: fyne.KeyA, Mod: keys.Ctrl},
		{Name: fyne.KeyLeft, Mod: keys.Ctrl}, {Name: fyne.KeyRight, Mod: keys.Ctrl},
	}
	for _, a := range keys.Table {
		if slices.Contains(taken, a.Key) {
			t.Errorf("%s takes %s from texts", a.ID, a.Key)
		}
	}
}

func TestKeyString(t *testing.T) {
	for want, k := range map[string]keys.Key{
		"Delete": {Name: fyne.KeyDelete}, "F11": {Name: fyne.KeyF11}, "Ctrl+Shift+Page up": {Name: fyne.KeyPageUp, Mod: fyne.KeyModifierControl | fyne.KeyModifierShift},
		"Ctrl+=": {Name: fyne.KeyEqual, Mod: fyne.KeyModifierControl}, "Ctrl+Alt+E": {Name: fyne.KeyE, Mod: fyne.KeyModifierAlt | fyne.KeyModifierControl},
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

func TestEveryActionIsInTheMenu(t *testing.T) {
	d, _, done, _ := rig(t)
	var want []keys.ID
	for _, a := range keys.Table {
		want = append(want, a.ID)
	}
	for _, m := range d.Menu().Items {
		for _, i := range m.Items {
			if !i.IsSeparator {
				i.Action()
			}
		}
	}
	if !slices.Equal(*done, want) {
		t.Errorf("the menu does %v\nwant %v", *done, want)
	}
}

// TestNothingHappensUnderADialog guards what the toolkit does not: it gives menu
// keys to the menu while a dialog is open.
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
	if i := d.Menu().Items[0].Items[0]; !i.Disabled {
		t.Error("the menu shows it as enabled")
	}
	d.Run(keys.Save)
	may = true
	d.Update()
	if i := d.Menu().Items[0].Items[0]; i.Disabled {
		t.Error("the menu shows it as disabled")
	}
	d.Run(keys.Save)
	if done != 1 {
		t.Errorf("done %d times, want once", done)
	}
}
