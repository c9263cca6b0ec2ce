//go:build window

package main_test

import (
	"bufio"
	"bytes"
	"encoding/binary"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// display is a screen in memory, with no window manager and nothing on it but
// what a test starts.
type display struct {
	name  string // as in the variable DISPLAY
	frame string // file that the screen's pixels lie in
}

// startDisplay starts a screen of w by h pixels that lives as long as the test.
func startDisplay(t testing.TB, w, h int) display {
	t.Helper()
	dir := t.TempDir()
	read, write, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	defer read.Close()
	cmd := exec.Command("Xvfb", "-displayfd", "3", "-screen", "0", fmt.Sprintf("%dx%dx24", w, h),
		"-nolisten", "tcp", "-noreset", "-fbdir", dir)
	cmd.ExtraFiles = []*os.File{write}
	if err := cmd.Start(); err != nil {
		t.Fatalf("starting the screen: %v", err)
	}
	write.Close()
	t.Cleanup(func() {
		cmd.Process.Signal(os.Interrupt)
		cmd.Wait()
	})
	if err := read.SetReadDeadline(time.Now().Add(20 * time.Second)); err != nil {
		t.Fatal(err)
	}
	number, err := bufio.NewReader(read).ReadString('\n')
	if err != nil {
		t.Fatalf("the screen did not say its number: %v", err)
	}
	return display{name: ":" + strings.TrimSpace(number), frame: filepath.Join(dir, "Xvfb_screen0")}
}

// picture gives what the screen shows at this moment.
func (d display) picture() (*image.RGBA, error) {
	b, err := os.ReadFile(d.frame)
	if err != nil {
		return nil, err
	}
	return readDump(b)
}

// readDump reads an X window dump (format 7, 24 bits in 32, true colour): a
// header of big-endian words, a table of colours, then rows of pixels. The
// fields stand in the order of XWDFile.h of the X Window System.
func readDump(b []byte) (*image.RGBA, error) {
	const fields = 25
	if len(b) < 4*fields {
		return nil, fmt.Errorf("a window dump of %d bytes has no header", len(b))
	}
	var h [fields]int
	for i := range h {
		h[i] = int(binary.BigEndian.Uint32(b[4*i:]))
	}
	headerSize, version, width, height := h[0], h[1], h[4], h[5]
	lsbFirst, bits, stride, colours := h[7] == 0, h[11], h[12], h[19]
	start := headerSize + 12*colours
	if version != 7 || bits != 32 || stride < 4*width || len(b) < start+stride*height {
		return nil, fmt.Errorf("a window dump of version %d, %d bits, %dx%d is not one that can be read",
			version, bits, width, height)
	}
	img := image.NewRGBA(image.Rect(0, 0, width, height))
	for y := range height {
		row := b[start+y*stride:]
		for x := range width {
			p := row[4*x : 4*x+4]
			if !lsbFirst {
				p = []byte{p[3], p[2], p[1]}
			}
			img.SetRGBA(x, y, color.RGBA{R: p[2], G: p[1], B: p[0], A: 255})
		}
	}
	return img, nil
}

// screenshots is the folder, not kept by git, where a person can look at what
// the tests saw.
const screenshots = "../../out/window"

// shoot saves what the screen shows as a numbered picture and gives it.
func (d display) shoot(t testing.TB, name string) *image.RGBA {
	t.Helper()
	img, err := d.picture()
	if err != nil {
		t.Fatal(err)
	}
	if err := os.MkdirAll(screenshots, 0o755); err != nil {
		t.Fatal(err)
	}
	f, err := os.Create(filepath.Join(screenshots, name+".png"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if err := (&png.Encoder{CompressionLevel: png.BestSpeed}).Encode(f, img); err != nil {
		t.Fatal(err)
	}
	return img
}

// shootStill does so once nothing moves any more, or after a while.
func (d display) shootStill(t testing.TB, name string) *image.RGBA {
	t.Helper()
	var last *image.RGBA
	for range 20 {
		time.Sleep(200 * time.Millisecond)
		img, err := d.picture()
		if err != nil {
			t.Fatal(err)
		}
		if last != nil && bytes.Equal(img.Pix, last.Pix) {
			break
		}
		last = img
	}
	return d.shoot(t, name)
}

// changed gives the share of pixels within r that differ between two pictures.
func changed(a, b *image.RGBA, r image.Rectangle) float64 {
	r = r.Intersect(a.Rect).Intersect(b.Rect)
	n := 0
	for y := r.Min.Y; y < r.Max.Y; y++ {
		for x := r.Min.X; x < r.Max.X; x++ {
			if a.RGBAAt(x, y) != b.RGBAAt(x, y) {
				n++
			}
		}
	}
	return float64(n) / float64(max(1, r.Dx()*r.Dy()))
}
