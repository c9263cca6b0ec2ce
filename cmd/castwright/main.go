// Command castwright is the window: it draws, reckons and checks cast concrete
// tops. See package ui.
//
//	castwright [-dump FILE] [JOB.json]
//
// Without a job it opens on the demo. It prints READY once its first picture
// stands; with -dump it keeps its state in a file, for tests.
package main

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"

	_ "example.org/castwright/cmd/castwright/first"
	"example.org/castwright/export/emblem"
	"example.org/castwright/ui"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/app"
)

func main() {
	dump := flag.String("dump", "", "keep the window's state in this `file`, for tests")
	flag.Usage = func() {
		fmt.Fprintln(flag.CommandLine.Output(), "usage: castwright [-dump FILE] [JOB.json]")
		flag.PrintDefaults()
	}
	flag.Parse()
	if flag.NArg() > 1 {
		flag.Usage()
		os.Exit(2)
	}
	path := flag.Arg(0)
	if path != "" {
		if abs, err := filepath.Abs(path); err == nil {
			path = abs // so that it holds in the list of recent jobs
		}
	}
	makeCacheFolder()
	a := app.NewWithID("org.example.castwright")
	a.Settings().AddListener(forgetFonts)
	keepQuiet(a)
	if icon, err := emblem.PNG(128); err == nil {
		a.SetIcon(fyne.NewStaticResource("castwright.png", icon))
	}
	go keepAlive(a.Driver())
	ui.Run(a, ui.Args{Path: path, Dump: *dump, Ready: os.Stdout, Mouse: &mouse{}, Screen: screen})
}

// keepQuiet has the toolkit do nothing as it stops. It would save preferences of its
// own, which are not used here, on another goroutine, and panics when that comes
// after its queue is closed.
func keepQuiet(a fyne.App) {
	if l, ok := a.Lifecycle().(interface{ SetOnStoppedHookExecuted(func()) }); ok {
		l.SetOnStoppedHookExecuted(nil)
	}
}

// makeCacheFolder makes the user's cache folder, which the toolkit expects and
// complains about on a new machine. Without it the window works all the same.
func makeCacheFolder() {
	if dir, err := os.UserCacheDir(); err == nil {
		_ = os.MkdirAll(filepath.Join(dir, "fyne"), 0o700)
	}
}
