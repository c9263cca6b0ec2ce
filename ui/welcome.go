package ui

import (
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/icon"
	"example.org/castwright/ui/keys"
	look "example.org/castwright/ui/theme"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
)

// newWelcome is the line over the demo job that says how to start an own one.
func (w *window) newWelcome() *fyne.Container {
	var line *fyne.Container
	own := control.NewButton(w.frame, control.Face{Text: "Start my own", Kind: control.Primary,
		Hint: keys.Hint(keys.NewJob)}, func() { w.keys.Run(keys.NewJob) })
	shut := control.NewButton(w.frame, control.Face{Icon: icon.Close,
		Hint: "Takes this line away; the demo stays."}, func() { line.Hide() })
	words := control.NewText("This is an invented demo job: pull at anything. " +
		"Your own starts with Ctrl+N, or open one with Ctrl+O.").Cut()
	line = control.Ground(theme.ColorNameHeaderBackground, control.Pad(look.Gap, look.Space+look.Gap,
		container.NewBorder(nil, nil, nil, control.Row(look.Space, own, shut), control.Middle(words))))
	return line
}
