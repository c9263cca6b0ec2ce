package ui

import (
	"example.org/castwright/export/comparison"
	"example.org/castwright/ui/keys"
)

// bindCompare says what is meant by the actions for two options side by side.
func (w *window) bindCompare(b map[keys.ID]keys.Binding) {
	b[keys.Compare] = keys.Binding{
		Do: func() {
			if w.comparing() {
				w.closeCompare()
				return
			}
			w.settle()
			w.openCompare()
		},
		Enabled: func() bool { return w.comparing() || !w.covered() },
		Checked: w.comparing,
	}
	can := func() bool { return w.comparing() && !w.compare.Empty() }
	on := func(id keys.ID, do func(), checked func() bool, why func() string) {
		b[id] = keys.Binding{Do: do, Checked: checked, Enabled: can, Why: why}
	}
	c := w.compare
	on(keys.ComparePicture, c.TogglePicture, c.Pictures, nil)
	on(keys.CompareFrom, c.ToggleFrom, func() bool { return c.Pictures() && c.Above() }, nil)
	on(keys.CompareOver, c.ToggleOver, c.Over, nil)
	on(keys.CompareScale, c.ToggleScale, c.Fitted, func() string {
		if c.Over() {
			return "what lies over each other has one scale"
		}
		return ""
	})
	on(keys.CompareMarks, c.ToggleMarks, c.Marked, nil)
	on(keys.CompareSame, c.ToggleSame, c.Same, nil)
	on(keys.CompareSwap, c.Swap, nil, nil)
	on(keys.CompareStop, c.StopOrGoOn, nil, func() string {
		if !c.Pictures() {
			return "drawings are shown, not pictures"
		}
		return ""
	})
	// Dimension lines are those of what is seen.
	drawn := b[keys.Dimensions]
	b[keys.Dimensions] = keys.Binding{
		Do: func() {
			if w.comparing() {
				c.ToggleDimensions()
			} else {
				drawn.Do()
			}
		},
		Enabled: func() bool {
			if w.comparing() {
				return can() && !c.Pictures()
			}
			return drawn.Enabled()
		},
		Checked: func() bool { return w.comparing() && c.Dimensions() || !w.comparing() && drawn.Checked() },
	}
}

// compared is what is shown side by side, nothing while nothing is.
func (w *window) compared() comparison.Order {
	if w.comparing() {
		return w.compare.Shown()
	}
	return comparison.Order{}
}
