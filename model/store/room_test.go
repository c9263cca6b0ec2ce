package store_test

import (
	"bytes"
	"strings"
	"testing"

	"example.org/castwright/assets"
	"example.org/castwright/model/design"
	"example.org/castwright/model/store"
	"example.org/castwright/model/units"
)

// A room by hand: the schema's own words, and what this version does not know.
const roomText = `"room": {
  "photo": "clay-room.room.jpg",
  "sha256": "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
  "corners": {
    "back_left": {"x_percent": 12.3456, "y_percent": 40, "by": "hand"},
    "back_right": {"x_percent": 80.00004, "y_percent": 41.5},
    "front_right": {"x_percent": 100, "y_percent": 90},
    "front_left": {"y_percent": 89}
  },
  "marks": "sheet of paper", "width_mm": 279.4, "depth_mm": 215.9, "at_mm": [-300, 40.5], "turn_deg": -1.5,
  "light": {"brighter_percent": 50, "from": "left"}, "lens": "wide"}`

func TestRoomByHand(t *testing.T) {
	text := strings.Replace(rectangle, `"version": 1,`, `"version": 1, `+roomText+`,`, 1)
	j, err := store.Decode([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	want := design.Room{Photo: "clay-room.room.jpg", SHA256: store.PhotoSum([]byte("abc")),
		Corners: [4]design.Spot{{X: 123_456, Y: 400_000}, {X: 800_000, Y: 415_000}, {X: 1_000_000, Y: 900_000}, {Y: 890_000}},
		Marks:   design.MarkedSheet, Width: 11 * units.Inch, Depth: 17 * units.Inch / 2,
		At: design.Point{X: -300 * units.Millimetre, Y: 40_500 * units.Millimetre / 1000}, Turn: -15 * units.Degree / 10,
		Lit: design.RoomLight{Brighter: units.Whole / 2, From: design.LightFromLeft}}
	if j.Room != want {
		t.Errorf("room %+v,\nwant %+v", j.Room, want)
	}
	if f := j.Room.Faults(); len(f) > 0 {
		t.Error(f)
	}
	if j.Extra["/room/lens"] != `"wide"` || j.Extra["/room/corners/back_left/by"] != `"hand"` {
		t.Error(j.Extra)
	}
	data := store.Encode(j)
	again, err := store.Decode(data)
	if err != nil || again.Room != want || !bytes.Contains(data, []byte(`"lens": "wide"`)) || !bytes.Contains(data, []byte(`"by": "hand"`)) {
		t.Errorf("%v\n%s", err, data)
	}
	if err := validate(compiled(t), []byte(text)); err != nil {
		t.Error(err)
	}
}

// A file that says nothing of a room is read and written as it always was.
func TestNoRoom(t *testing.T) {
	for _, demo := range assets.Demos() {
		j, err := store.Decode(demo.Data)
		if err != nil || j.Room != (design.Room{}) {
			t.Fatal(demo.Name, err)
		}
		if data := store.Encode(j); !bytes.Equal(data, demo.Data) {
			t.Errorf("%s is written otherwise", demo.Name)
		}
	}
}

// A file with a bad room opens, and its faults explain it.
func TestABadRoomOpens(t *testing.T) {
	for _, c := range []struct{ was, now, field string }{
		{`"clay-room.room.jpg"`, `"/etc/passwd"`, "room.photo"},
		{`"ba78`, `"BA78`, "room.sha256"},
		{`12.3456`, `-12`, "room.corners.back_left.x_percent"},
		{`"y_percent": 89`, `"y_percent": 101`, "room.corners.front_left.y_percent"},
		{`279.4`, `0`, "room.width_mm"},
		{`215.9`, `-5`, "room.depth_mm"},
		{`-300`, `-30000`, "room.at_mm"},
		{`-1.5`, `-361`, "room.turn_deg"},
		{`"brighter_percent": 50`, `"brighter_percent": 999`, "room.light.brighter_percent"},
	} {
		text := strings.Replace(rectangle, `"version": 1,`, `"version": 1, `+strings.Replace(roomText, c.was, c.now, 1)+`,`, 1)
		j, err := store.Decode([]byte(text))
		if err != nil {
			t.Errorf("%s: %v", c.now, err)
			continue
		}
		if f := j.Room.Faults(); len(f) != 1 || f[0].Field != c.field {
			t.Errorf("%s: %v", c.now, f)
		}
	}
}
