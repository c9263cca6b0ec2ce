package approval_test

import (
	"bytes"
	"context"
	"image"
	"image/color"
	"image/png"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"example.org/castwright/export/approval"
	"example.org/castwright/export/picture"
	"example.org/castwright/model/design"
	"example.org/castwright/model/store"
	"example.org/castwright/model/units"
)

// roomed is the demo with a photograph of its room beside its file: a grey one, w by h
// pixels.
func roomed(t *testing.T, w, h int) (design.Job, string) {
	t.Helper()
	grey := image.NewRGBA(image.Rect(0, 0, w, h))
	for i := range grey.Pix {
		grey.Pix[i] = 0x90
	}
	for y := range h {
		for x := range w {
			grey.Set(x, y, color.Gray{Y: 0x90})
		}
	}
	var b bytes.Buffer
	if err := png.Encode(&b, grey); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "job.json")
	name, sum, err := store.KeepPhoto(path, b.Bytes(), ".png")
	if err != nil {
		t.Fatal(err)
	}
	j := demo(t)
	spot := func(x, y units.Share) design.Spot { return design.Spot{X: x * units.Percent, Y: y * units.Percent} }
	j.Room = design.Room{Photo: name, SHA256: sum, Corners: [4]design.Spot{spot(25, 30), spot(75, 30), spot(88, 70), spot(12, 70)},
		Width: 1580 * units.Millimetre, Depth: 1080 * units.Millimetre}
	return j, path
}

// Each choice of pictures makes a sheet that says what is on it: in the words below the
// pictures and in those that are signed.
func TestPictures(t *testing.T) {
	j, path := roomed(t, 400, 300)
	images := map[approval.Pictures]int{} // on page 1, those of the drawing among them
	for which, want := range map[approval.Pictures][]string{
		approval.Studio: {"I have seen the picture, the drawing and the words"},
		approval.InRoom: {"Set into a photograph of the room.", "I have seen the picture, the drawing and the words"},
		approval.Both:   {"At the right: set into a photograph of the room.", "I have seen the pictures, the drawing and the words"},
		approval.None:   {"I have seen the drawing and the words"},
	} {
		file := filepath.Join(t.TempDir(), "sheet.pdf")
		if err := os.WriteFile(file, pdf(t, approval.Order{Job: j, Option: "A", Pictures: which, Path: path}), 0o600); err != nil {
			t.Fatal(err)
		}
		text := strings.Join(strings.Fields(tool(t, "pdftotext", file, "-")), " ")
		for _, w := range want {
			if !strings.Contains(text, w) {
				t.Errorf("pictures %d: the text lacks %q", which, w)
			}
		}
		if strings.Contains(text, "photograph of the room") != (len(want) > 1) {
			t.Errorf("pictures %d: a photograph is spoken of", which)
		}
		images[which] = len(regexp.MustCompile(`(?m)^\s+1\s+\d+\s+image`).FindAllString(tool(t, "pdfimages", "-list", "-l", "1", file), -1))
	}
	none := images[approval.None]
	if images[approval.Studio] != none+1 || images[approval.InRoom] != none+1 || images[approval.Both] != none+2 {
		t.Errorf("images by pictures %v", images)
	}
}

// A picture in the room asks for a room, and for its photograph.
func TestNoRoom(t *testing.T) {
	j, path := roomed(t, 400, 300)
	if err := os.Remove(filepath.Join(filepath.Dir(path), j.Room.Photo)); err != nil {
		t.Fatal(err)
	}
	for want, o := range map[string]approval.Order{
		"this job holds no room":  {Job: demo(t), Option: "A", Pictures: approval.InRoom, Path: path},
		"photograph":              {Job: j, Option: "A", Pictures: approval.Both, Path: path},
		"The picture in the room": {Job: j, Option: "A", Pictures: approval.InRoom, Path: path},
	} {
		o.Quality = picture.First
		if _, err := approval.Make(context.Background(), o, nil); err == nil || !strings.Contains(strings.ToLower(err.Error()), strings.ToLower(want)) {
			t.Errorf("%v, want %q", err, want)
		}
	}
}
