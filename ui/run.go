package ui

import (
	"errors"
	"fmt"
	"io"
	"time"

	"example.org/castwright/assets"
	"example.org/castwright/model/design"
	"example.org/castwright/model/store"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/files"
	"example.org/castwright/ui/session"
	"fyne.io/fyne/v2"
)

// Args is how the program was called.
type Args struct {
	Path  string    // job to open; "" opens the demo job
	Dump  string    // file to keep the window's state in, for tests; "" for none
	Ready io.Writer // told READY once the first picture stands; nil for nobody
	Mouse Mouse     // nil where nobody knows more than the toolkit tells
	// Screen is the room for windows in points, zero when that is not known; nil
	// for never.
	Screen func() fyne.Size
}

// Mouse is what the toolkit does not tell about the mouse. Its methods are called
// on the main goroutine.
type Mouse interface {
	// Attach takes the mouse of the window that is being painted.
	Attach()
	// Acted is where in the window, in pixels, the press, release or turn of the
	// wheel was made that is being told of; ok is false at all other times.
	Acted() (x, y float64, ok bool)
	// Late reports whether one of these was made and is still to be told of.
	Late() bool
	// Again looks again at what lies under the mouse, which may be something else
	// though it has not moved.
	Again()
}

// Run shows the window and goes on until it is closed.
func Run(a fyne.App, args Args) {
	path, err := files.DefaultPath()
	if err != nil {
		path = "" // settings are not kept then
	}
	w := newWindow(a, files.LoadSettings(path), host{post: fyne.Do, later: later, screen: args.Screen})
	w.follow(args.Mouse)
	w.start(args)
	w.win.ShowAndRun()
}

// host is what the window needs of its surroundings; tests have their own.
type host struct {
	post  func(func())                // runs something on the main goroutine
	later func(time.Duration, func()) // the same after a while
	// screen is the room for windows in points; nil or zero when not known.
	screen func() fyne.Size
}

func later(d time.Duration, f func()) { time.AfterFunc(d, func() { fyne.Do(f) }) }

// start takes the first job in hand and begins to tell about itself.
func (w *window) start(args Args) {
	w.host.post(func() {
		if args.Path != "" {
			w.files.OpenPath(args.Path)
		} else {
			w.files.OfferLost("")
		}
	})
	w.tellReady(args)
	w.onFirstPicture(w.frame.LetGo) // what the start took
	if args.Dump != "" {
		go w.keepDumping(args.Dump)
	}
}

// firstJob is what the window opens on: the demo job, or a plain one.
func firstJob(s *files.Settings) (j design.Job, demo bool) {
	j, err := demoJob()
	if err == nil {
		return j, true
	}
	sys := units.Metric
	if s.Imperial {
		sys = units.Imperial
	}
	return session.Blank(sys), false
}

func demoJob() (design.Job, error) {
	demos := assets.Demos()
	if len(demos) == 0 {
		return design.Job{}, errors.New("there is no demo job")
	}
	j, err := store.Decode(demos[0].Data)
	if err == nil && len(j.Options) == 0 {
		err = fmt.Errorf("%s holds no options", demos[0].Name)
	}
	return j, err
}
