package main

import (
	"time"
	_ "unsafe" // for go:linkname

	"fyne.io/fyne/v2"
)

// aliveEvery is how often the toolkit is told that it still needs what is seen. It
// must be well below the life of its caches, which package first sets.
const aliveEvery = 3 * time.Second

// walkSeen walks through what is visible, from the outside in.
//
//go:linkname walkSeen fyne.io/fyne/v2/internal/driver.WalkVisibleObjectTree
func walkSeen(root fyne.CanvasObject,
	before func(o fyne.CanvasObject, at, clip fyne.Position, room fyne.Size) bool,
	after func(o fyne.CanvasObject, at fyne.Position, parent fyne.CanvasObject)) bool

// keepAlive has the toolkit remember which window each thing belongs to that is
// seen. By itself it forgets that, of all that has not changed for the life of its
// caches, when something was painted again and again meanwhile, such as a blinking
// caret, and then stops. What is forgotten can't have itself painted any more: the
// window stood still though the program went on. It never returns.
func keepAlive(d fyne.Driver) {
	for range time.Tick(aliveEvery) {
		fyne.Do(func() {
			for _, w := range d.AllWindows() {
				c := w.Canvas()
				touch(d, c.Content())
				for _, o := range c.Overlays().List() {
					touch(d, o)
				}
			}
		})
	}
}

// touch looks up all that is seen of a tree, which is what its life is counted from.
func touch(d fyne.Driver, root fyne.CanvasObject) {
	walkSeen(root, func(o fyne.CanvasObject, _, _ fyne.Position, _ fyne.Size) bool {
		d.CanvasForObject(o)
		return false
	}, nil)
}
