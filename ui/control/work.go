package control

import (
	"context"
	"sync"
	"time"

	look "example.org/castwright/ui/theme"
	"fyne.io/fyne/v2/widget"
)

// Work is something long that is done off the main goroutine.
type Work struct {
	Title string // "Making the sheet"
	// Do does it. It gives up with an error once the context is done, and may show,
	// from any goroutine, the stage in words and the share that is done, 0 to 1.
	Do func(ctx context.Context, show func(stage string, done float64)) error
	// Done hears on the main goroutine how it ended; not after it was stopped.
	Done func(error)
	// Stopped, which may be nil, hears that it was.
	Stopped func()
}

// How long a work goes on before it is shown, and how often its progress is.
const (
	patience  = 300 * time.Millisecond
	paceShown = 80 * time.Millisecond
)

// Start starts a work; when it takes a while a dialog shows how far it is and can
// stop it. later runs something on the main goroutine after a while.
func Start(f *Frame, later func(time.Duration, func()), w Work) {
	ctx, cancel := context.WithCancel(context.Background())
	stage := NewText("").Muted().Cut()
	bar := widget.NewProgressBar()
	finished, shown := false, false
	d := NewDialog(f, w.Title, Column(look.Space, Sized(360, 20, bar), Sized(360, 0, stage)),
		Answer{Text: "Stop", Hint: "Stops; nothing is written (Esc).", Esc: true,
			Do: func() bool { cancel(); return true }})
	var mu sync.Mutex
	var words string
	var share float64
	show := func(s string, done float64) {
		mu.Lock()
		words, share = s, done
		mu.Unlock()
	}
	var tick func()
	tick = func() {
		if finished {
			return
		}
		if !shown {
			shown = true
			d.Show()
		}
		mu.Lock()
		stage.SetText(Sentence(words))
		bar.SetValue(share)
		mu.Unlock()
		later(paceShown, tick)
	}
	later(patience, tick)
	f.Long(func() func() {
		err := w.Do(ctx, show)
		return func() {
			finished = true
			stopped := ctx.Err() != nil
			cancel()
			if shown {
				d.Close()
			}
			switch {
			case !stopped:
				w.Done(err)
			case w.Stopped != nil:
				w.Stopped()
			}
		}
	})
}
