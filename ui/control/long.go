package control

import (
	"runtime/debug"
	"time"
)

// calm is how long no long work goes on before the machine gets back what such works
// took and nobody holds any more. The runtime by itself keeps most of it: a hundred
// megabytes and more after a picture.
const calm = time.Second

// garbage is how much the heap grows while a long work goes on before what is not used
// any more is collected, in hundredths of what is used. A picture holds large plain
// numbers, which cost the collector nothing; a drag has more for it to do.
const garbage = 25

// Shown is by which share of a picture its progress is shown anew. The toolkit paints
// the whole window for it, which a key would wait for.
const Shown = 0.05

// works are the long ones that go on.
type works struct {
	n     int
	usual int // garbage at other times
	timer *time.Timer
}

func (w *works) begin() {
	if w.n++; w.n == 1 {
		w.usual = debug.SetGCPercent(garbage)
	}
	if w.timer != nil {
		w.timer.Stop()
	}
}

func (w *works) end() {
	if w.n--; w.n == 0 {
		debug.SetGCPercent(w.usual)
		w.rest()
	}
}

// rest has memory given back unless a long work begins soon, or goes on.
func (w *works) rest() {
	if w.timer != nil {
		w.timer.Stop()
	}
	if w.n == 0 {
		w.timer = time.AfterFunc(calm, debug.FreeOSMemory)
	}
}

// Long is Background for a work that takes seconds and much memory, such as a picture.
// Such works waste less meanwhile, and what they took is given back.
func (f *Frame) Long(work func() (then func())) {
	if f.Inline {
		work()()
		return
	}
	f.works.begin()
	f.Background(func() func() {
		then := work()
		return func() {
			then()
			f.works.end()
		}
	})
}

// Works is how many long works go on.
func (f *Frame) Works() int { return f.works.n }

// LetGo is told that something large is held no more, such as a page's pictures.
func (f *Frame) LetGo() {
	if !f.Inline {
		f.works.rest()
	}
}
