package approval

import (
	"errors"
	"image"
	"strings"

	"example.org/castwright/export/letterhead"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/files"
	look "example.org/castwright/ui/theme"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
)

// nameHead says in a line which letterhead there is.
func (d *Desk) nameHead(t *control.Text) {
	t.SetText("none")
	path := d.files.Settings.LetterheadPath()
	if path == "" {
		return
	}
	l, err := letterhead.Load(path)
	name := strings.TrimSpace(l.Name)
	switch {
	case err != nil:
		t.SetText("can't be read")
	case name != "":
		t.SetText(name)
	case l != (letterhead.Letterhead{}):
		t.SetText("without a name")
	}
}

// EditLetterhead shows the maker's letterhead for editing; then, which may be nil,
// hears that it was kept.
func (d *Desk) EditLetterhead(then func()) {
	path := d.files.Settings.LetterheadPath()
	if path == "" {
		control.Warn(d.frame, "There is no place for a letterhead", errors.New("this system names no folder for settings"))
		return
	}
	l, err := letterhead.Load(path)
	var logo image.Image
	if err == nil {
		logo, err = l.Picture(path)
	}
	bad := fault()
	if err != nil {
		bad.SetText(control.Sentence(err.Error()))
	}
	name := d.line("The name of your workshop, in bold.", l.Name)
	address := d.text("Address, a line for each.", l.Address, 3)
	contact := d.text("Telephone, mail and the like, a line for each.", l.Contact, 2)
	seen := canvas.NewImageFromImage(logo)
	seen.FillMode = canvas.ImageFillContain
	seen.SetMinSize(fyne.NewSize(220, 64))
	none := control.NewText("No logo").Muted().Centred()
	var remove *control.Button
	show := func(img image.Image) {
		logo = img
		seen.Image = img
		seen.Refresh()
		remove.SetEnabled(img != nil)
		none.SetText(map[bool]string{true: "No logo"}[img == nil])
	}
	choose := control.NewButton(d.frame, control.Face{Text: "Choose a picture…", Kind: control.Raised,
		Hint: "A PNG or JPEG file, not an SVG; a copy is kept, without what else the file says."}, func() {
		files.Choose(d.frame, files.Wish{Title: "Choose a logo", Accept: "Choose", Ext: ".png .jpg .jpeg .svg", Start: d.files.Folder()},
			func(from string) {
				d.frame.Background(func() func() {
					img, err := letterhead.ReadLogo(from)
					return func() {
						if err != nil {
							bad.SetText(control.Sentence(err.Error()))
							return
						}
						bad.SetText("")
						show(img)
					}
				})
			})
	})
	remove = control.NewButton(d.frame, control.Face{Text: "Remove", Kind: control.Raised, Hint: "Leaves the logo out."},
		func() { show(nil) })
	show(logo)
	body := control.Column(look.Space,
		control.Narrow(460, control.SmallLines("Stands at the head of the approval sheet, the logo on the left and the words on the right. "+
			"It is kept for you, not in the job.")),
		label("Name", name), label("Address", address), label("Contact", contact),
		label("Logo", control.Column(look.Gap, control.Ground(theme.ColorNameInputBackground, control.Pad(look.Gap, look.Gap, container.NewStack(seen, control.Middle(none)))),
			control.Row(look.Space, choose, remove))),
		control.Narrow(460, bad))
	take := func() bool {
		for _, e := range []*control.Entry{name, address, contact} {
			e.Settle()
		}
		l := letterhead.Letterhead{Name: strings.TrimSpace(name.Text), Address: strings.TrimSpace(address.Text),
			Contact: strings.TrimSpace(contact.Text)}
		if err := letterhead.Keep(path, l, logo); err != nil {
			bad.SetText(control.Sentence(err.Error()))
			return false
		}
		return true
	}
	control.NewDialog(d.frame, "Letterhead", body, control.Cancel(),
		control.Answer{Text: "Keep", Kind: control.Primary, Enter: true, Hint: "Keeps it for all sheets (Enter).", Do: take,
			Then: func() {
				if then != nil {
					then()
				}
			}}).First(name).Show()
}
