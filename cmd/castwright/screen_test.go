//go:build window

package main_test

import (
	"image"
	"strings"
	"testing"
)

// TestScreen holds the test's own eye and hand to what they claim, so that a
// failure elsewhere is the program's.
func TestScreen(t *testing.T) {
	d := startDisplay(t, 640, 480)
	img, err := d.picture()
	if err != nil {
		t.Fatal(err)
	}
	if img.Rect != image.Rect(0, 0, 640, 480) {
		t.Errorf("the screen is %v", img.Rect)
	}
	if share := changed(img, image.NewRGBA(img.Rect), img.Rect); share != 1 {
		t.Errorf("pixels of an opaque screen equal those of a clear picture: %g differ", share)
	}
	h := d.hand(t)
	h.move(at{123.4, 56.7})
	if got := h.do("getmouselocation"); !strings.HasPrefix(got, "x:123 y:57 ") {
		t.Errorf("the pointer is at %q, want x:123 y:57", got)
	}
	if _, err := readDump([]byte("short")); err == nil {
		t.Error("a dump with no header was read")
	}
}
