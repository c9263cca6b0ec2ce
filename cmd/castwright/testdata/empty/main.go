// Command empty shows a window with nothing in it, to tell what of a start is the
// toolkit's and the machine's. It prints READY as castwright does.
package main

import (
	"fmt"
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/app"
	"fyne.io/fyne/v2/canvas"
)

func main() {
	w := app.NewWithID("org.example.castwright.empty").NewWindow("Empty")
	told := false
	w.SetContent(canvas.NewRaster(func(width, height int) image.Image {
		if !told {
			told = true
			fyne.Do(func() { fmt.Println("READY") })
		}
		return image.NewRGBA(image.Rect(0, 0, width, height))
	}))
	w.Resize(fyne.NewSize(1280, 800))
	w.ShowAndRun()
}
