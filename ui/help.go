package ui

import (
	"strings"

	"example.org/castwright/ui/control"
	"example.org/castwright/ui/keys"
	look "example.org/castwright/ui/theme"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
)

// showActions is the list of every action, found by a word of it.
func (w *window) showActions() {
	list := control.Column(0)
	scroll := container.NewVScroll(list)
	var d *control.Dialog
	var found []keys.Action
	run := func(id keys.ID) {
		d.Close()
		w.keys.Run(id)
	}
	search := control.NewEntry(w.frame, "Type a word of what you want to do; Enter does the first one.")
	search.EscLeaves = true
	search.SetPlaceHolder("Find an action")
	fill := func(text string) {
		found = matching(text)
		list.RemoveAll()
		for _, a := range found {
			list.Add(w.actionLine(a, run))
		}
		if len(found) == 0 {
			list.Add(control.SmallLines("Nothing is called so."))
		}
		scroll.ScrollToTop()
	}
	search.OnChanged = fill
	search.OnSubmitted = func(string) {
		if len(found) > 0 {
			run(found[0].ID)
		}
	}
	fill("")
	d = control.NewDialog(w.frame, "Keys and actions",
		container.NewBorder(control.Pad(0, 0, search), nil, nil, nil,
			control.Pad(look.Space, 0, scroll)),
		control.Answer{Text: "Close", Kind: control.Primary, Enter: true, Esc: true})
	d.First(search).Sized(1140, 600).Show()
}

// matching is the actions in which every word of a text occurs.
func matching(text string) (out []keys.Action) {
	for _, a := range keys.Table {
		all := strings.ToLower(a.Name + " " + a.Does + " " + a.Menu + " " + a.Key.String())
		ok := true
		for _, word := range strings.Fields(strings.ToLower(text)) {
			ok = ok && strings.Contains(all, word)
		}
		if ok {
			out = append(out, a)
		}
	}
	return out
}

func (w *window) actionLine(a keys.Action, run func(keys.ID)) fyne.CanvasObject {
	tone := control.NewText(w.keys.Name(a.ID)).Bold().Cut()
	if !w.keys.Enabled(a.ID) {
		tone.Muted()
	}
	name := control.Sized(190, 0, tone)
	where := control.Sized(70, 0, control.NewText(a.Menu).Muted())
	key := control.Sized(130, 0, control.NewText(a.Key.String()))
	body := container.NewBorder(nil, nil, control.Row(look.Space, name, where, key), nil,
		control.NewText(a.Does).Muted().Cut())
	hint := a.Does
	if why := w.keys.Why(a.ID); why != "" {
		hint = "Not now: " + why + ". " + a.Does
	}
	return control.NewTile(w.frame, hint, control.Pad(look.Gap+1, look.Space, body),
		func() { run(a.ID) })
}

// showAbout says what the program is and what to take care of.
func (w *window) showAbout() { control.Tell(w.frame, "About Castwright", about) }

const about = "Castwright draws, reckons and checks cast concrete tops. It works without a network " +
	"and sends nothing anywhere.\n\n" +
	"Spans, overhangs and handling are checked by simple sums against the trade's figures, which " +
	"is no structural proof. A product's own data sheet overrules every figure here.\n\n" +
	"Take care. Silica dust from cutting and grinding: work wet or with a shroud and vacuum, and " +
	"wear a fitted respirator. Wet cement burns skin and eyes: gloves, eye protection, wash at " +
	"once. Resin sensitises skin: gloves and air, never a torch near solvent; a bucket of leftover " +
	"resin gets hot: outdoors, on concrete. Tops are heavy and brittle: a team, straps, on edge.\n\n" +
	"Overhead, public, seating or structural use, wall brackets and plumbing: local code and a " +
	"licensed person decide."
