package main

import (
	"math"
	"os"
	"runtime"
	"strconv"

	"fyne.io/fyne/v2"
	"github.com/go-gl/glfw/v3.4/glfw"
)

// screen is the room that the first screen has for windows, in points; zero when
// that can't be told. It can be once a window has been made.
func screen() fyne.Size {
	m := glfw.GetPrimaryMonitor()
	if m == nil {
		return fyne.Size{}
	}
	_, _, w, h := m.GetWorkarea()
	scale := pointPixels(m)
	return fyne.NewSize(float32(w)/scale, float32(h)/scale)
}

// pointPixels is how many of a screen's pixels the toolkit makes a point of: one
// to the 120th of an inch and no less, unless its user wants otherwise.
func pointPixels(m *glfw.Monitor) float32 {
	scale := 1.0
	if mm, _ := m.GetPhysicalSize(); mm > 0 && runtime.GOOS != "darwin" {
		if dpi := float64(m.GetVideoMode().Width) / (float64(mm) / 25.4); dpi <= 1000 {
			scale = math.Max(1, dpi/120)
		}
	}
	if wish, err := strconv.ParseFloat(os.Getenv("FYNE_SCALE"), 32); err == nil && wish > 0 {
		scale *= wish
	} else if wish := fyne.CurrentApp().Settings().Scale(); wish > 0 {
		scale *= float64(wish)
	}
	return float32(scale)
}
