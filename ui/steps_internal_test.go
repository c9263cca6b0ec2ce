package ui

import (
	"path/filepath"
	"strings"
	"testing"
	"time"

	"example.org/castwright/model/units"
	"example.org/castwright/ui/files"
	"example.org/castwright/ui/keys"
	"example.org/castwright/ui/tool"
	"fyne.io/fyne/v2/test"
)

// The step that is chosen is ticked in the menu, reads in the job's units and is
// remembered at the next start.
func TestStepsAreChosenAndRemembered(t *testing.T) {
	path := filepath.Join(t.TempDir(), "settings.json")
	open := func() *window {
		w := newWindow(test.NewTempApp(t), files.LoadSettings(path),
			host{post: func(f func()) { f() }, later: func(time.Duration, func()) {}})
		t.Cleanup(w.win.Close)
		w.frame.Inline = true
		return w
	}
	w := open()
	w.keys.Run(keys.NewJob)
	if !w.keys.Checked(keys.StepByZoom) {
		t.Error("a first start does not follow the zoom")
	}
	w.keys.Run(keys.Step4)
	if !w.keys.Checked(keys.Step4) || w.keys.Checked(keys.StepByZoom) {
		t.Error("the menu does not tick the step that was chosen")
	}
	if w.session.Job().Units == units.Metric {
		w.keys.Run(keys.Units)
	}
	if name := w.keys.Name(keys.Step4); name != `Steps of 1/2"` && name != "Steps of 1/2 in" {
		t.Errorf("in inches the fourth step reads %q", name)
	}
	w.keys.Run(keys.Units)
	if name := w.keys.Name(keys.Step4); !strings.HasSuffix(name, "10 mm") {
		t.Errorf("in millimetres the fourth step reads %q", name)
	}
	if r := open().board.Rounding(); r != tool.Rounding(4) {
		t.Errorf("the next start has rounding %d, want 4", r)
	}
}
