package ui

import (
	"example.org/castwright/model/units"
	"example.org/castwright/ui/keys"
	"example.org/castwright/ui/tool"
)

// bindSteps binds the choice of the step that the snap rounds to. It is
// remembered from one start to the next; each choice stands for a round figure
// of either system.
func (w *window) bindSteps(b map[keys.ID]keys.Binding) {
	for i, id := range []keys.ID{keys.StepByZoom, keys.Step1, keys.Step2, keys.Step3, keys.Step4, keys.Step5} {
		r := tool.Rounding(i)
		binding := keys.Binding{
			Do: func() {
				w.board.SetRounding(r)
				w.settings.Step = int(r)
				w.settings.Save()
			},
			Enabled: func() bool { return !w.comparing() },
			Checked: func() bool { return w.board.Rounding() == r },
		}
		if r != tool.ByZoom {
			binding.Name = func() string {
				sys := w.session.Job().Units
				return "Steps of " + units.Format(tool.FixedSteps(sys)[r-1], sys)
			}
		}
		b[id] = binding
	}
}
