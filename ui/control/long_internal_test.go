package control

import (
	"runtime/debug"
	"testing"

	"fyne.io/fyne/v2/test"
)

// percent is how much the heap grows before it is collected.
func percent() int {
	now := debug.SetGCPercent(100)
	debug.SetGCPercent(now)
	return now
}

// While long works go on, one within the other, the collector runs more often, and
// after them as before; nothing is given back while one goes on.
func TestLong(t *testing.T) {
	f := NewFrame(test.NewTempWindow(t, nil))
	usual := percent()
	w := &f.works
	w.begin()
	w.begin()
	f.LetGo()
	if got := percent(); got != garbage || w.timer != nil {
		t.Errorf("in two works the heap grows by %d %%, memory is given back: %v", got, w.timer != nil)
	}
	w.end()
	if got := percent(); got != garbage {
		t.Errorf("in one work the heap grows by %d %%", got)
	}
	w.end()
	if got := percent(); got != usual || w.timer == nil {
		t.Errorf("afterwards the heap grows by %d %%, usually by %d; memory is given back: %v", got, usual, w.timer != nil)
	}
	w.begin()
	if w.timer.Stop() {
		t.Error("memory is given back while a work goes on")
	}
	w.end()

	did, then := false, false
	f.Inline = true
	f.Long(func() func() { did = true; return func() { then = did } })
	if !then {
		t.Error("the work was not done")
	}
}
