package panel

import (
	"fyne.io/fyne/v2"

	"example.org/castwright/ui/control"
	"example.org/castwright/ui/icon"
	"example.org/castwright/ui/keys"
	look "example.org/castwright/ui/theme"
)

// arrangings are what can be done to several parts among each other, with how many
// it takes.
var arrangings = [][]struct {
	id    keys.ID
	sign  fyne.Resource
	least int
}{
	{{keys.AlignLeft, icon.AlignLeft, 2}, {keys.AlignCentre, icon.AlignCentre, 2}, {keys.AlignRight, icon.AlignRight, 2}},
	{{keys.AlignFront, icon.AlignFront, 2}, {keys.AlignMiddle, icon.AlignMiddle, 2}, {keys.AlignBack, icon.AlignBack, 2}},
	{{keys.SpreadAcross, icon.SpreadAcross, 3}, {keys.SpreadDeep, icon.SpreadDeep, 3}},
	{{keys.MirrorPart, icon.Mirror, 1}, {keys.Turn, icon.Turn, 1}},
}

// addArranging offers to set several parts among each other.
func (p *Panel) addArranging() {
	n := len(p.s.SelectedParts())
	if n < 2 {
		return
	}
	row := control.Row(0)
	for i, group := range arrangings {
		if i > 0 {
			row.Add(control.Sized(look.Space-1, 0, nothing()))
		}
		for _, a := range group {
			b := control.NewButton(p.frame, control.Face{Icon: a.sign, Hint: keys.Hint(a.id)}, func() {
				if p.OnRun != nil {
					p.OnRun(a.id)
				}
			})
			if n < a.least || len(p.locks) > 0 {
				face := b.Face()
				face.Hint = "Not now: it takes three parts or more. " + keys.Hint(a.id)
				if len(p.locks) > 0 {
					face.Hint = "Not now: some of the parts are locked. " + keys.Hint(a.id)
				}
				b.SetFace(face)
				b.Disable()
			}
			row.Add(b)
		}
	}
	p.fields.Add(row)
}
