package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"image"
	"image/png"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/material"
	"example.org/castwright/model/store"
	"example.org/castwright/model/units"
	"github.com/rogpeppe/go-internal/testscript"
	"github.com/santhosh-tekuri/jsonschema/v6"
)

// TestMain lets the scripts call castsheet as a program of its own.
func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"castsheet": main})
}

func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata/script",
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		Setup:               writeJobs,
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"exits": exits,
			"keys":  keys,
			"value": value,
			"about": about,
			"png":   pngSize,
			"valid": valid,
			"fill":  fill,
			"forge": forge,
		},
	})
}

// writeJobs gives every script the jobs that it can ask about:
//
//	sound.json   one option, A, with nothing severe
//	mixed.json   A is sound, B has a severe warning
//	faulty.json  A has a fault: a thickness of nothing
//	absurd.json  designs that no one can cast, one to an option
//	empty.json   no options
func writeJobs(env *testscript.Env) error {
	const mm = units.Millimetre
	wall := func(id design.ID, x, y, x2, y2 units.Length) design.Support {
		return design.Support{ID: id, Kind: design.SupportWall, Width: 40 * mm,
			Line: []design.Point{{X: x, Y: y}, {X: x2, Y: y2}}}
	}
	sound := design.Design{
		Outline:   edit.Rectangle(500*mm, 300*mm),
		Thickness: 50 * mm,
		Finish:    design.Finish{Polish: 2},
		Supports: []design.Support{
			wall("support-1", 20*mm, 0, 20*mm, 300*mm),
			wall("support-2", 480*mm, 0, 480*mm, 300*mm),
			wall("support-3", 20*mm, 20*mm, 480*mm, 20*mm),
			wall("support-4", 20*mm, 280*mm, 480*mm, 280*mm),
		},
	}
	heavy := sound
	heavy.Outline, heavy.Supports = edit.Rectangle(4000*mm, 900*mm), nil
	faulty := sound
	faulty.Thickness = 0
	option := func(name string, d design.Design) design.Option {
		return design.Option{Name: name, Title: "Shelf " + name, Design: d}
	}
	for name, options := range map[string][]design.Option{
		"sound.json":  {option("A", sound)},
		"mixed.json":  {option("A", sound), option("B", heavy)},
		"faulty.json": {option("A", faulty)},
		"absurd.json": absurd(sound),
		"empty.json":  nil,
	} {
		job := design.Job{Client: "The glaze room", Materials: material.Defaults(), Options: options,
			Site: design.Site{Helpers: 2}}
		if err := store.Save(filepath.Join(env.WorkDir, name), job); err != nil {
			return err
		}
	}
	return roomed(env.WorkDir, option("A", sound))
}

// roomed writes a job with a photograph of the client's room.
func roomed(dir string, o design.Option) error {
	var photo bytes.Buffer
	if err := png.Encode(&photo, image.NewGray(image.Rect(0, 0, 400, 300))); err != nil {
		return err
	}
	path := filepath.Join(dir, "roomed.json")
	name, sum, err := store.KeepPhoto(path, photo.Bytes(), ".png")
	if err != nil {
		return err
	}
	spot := func(x, y units.Share) design.Spot { return design.Spot{X: x * units.Percent, Y: y * units.Percent} }
	return store.Save(path, design.Job{Materials: material.Defaults(), Options: []design.Option{o}, Room: design.Room{Photo: name, SHA256: sum,
		Corners: [4]design.Spot{spot(25, 30), spot(75, 30), spot(88, 70), spot(12, 70)}, Width: 500 * units.Millimetre, Depth: 300 * units.Millimetre}})
}

// absurd gives designs that can be written down and mean nothing, made from a
// sound one.
func absurd(sound design.Design) []design.Option {
	const mm = units.Millimetre
	var out []design.Option
	with := func(name string, change func(*design.Design)) {
		d := sound
		change(&d)
		out = append(out, design.Option{Name: name, Design: d})
	}
	with("no-outline", func(d *design.Design) { d.Outline = design.Outline{} })
	with("two-nodes", func(d *design.Design) { d.Outline.Nodes = d.Outline.Nodes[:2] })
	with("crossing", func(d *design.Design) {
		n := slices.Clone(d.Outline.Nodes)
		n[1].At = design.Point{X: -100 * mm, Y: 200 * mm}
		d.Outline.Nodes = n
	})
	with("a-point", func(d *design.Design) {
		n := slices.Clone(d.Outline.Nodes)
		for i := range n {
			n[i].At = design.Point{}
		}
		d.Outline.Nodes = n
	})
	with("as-thick-as-long", func(d *design.Design) { d.Thickness = units.MaxLength })
	with("thinner-than-nothing", func(d *design.Design) { d.Thickness = -50 * mm })
	with("hole-larger-than-top", func(d *design.Design) {
		d.Holes = []design.Hole{{ID: "hole-1", At: design.Point{X: 250 * mm, Y: 150 * mm}, Diameter: 50 * units.Metre}}
	})
	with("hole-far-away", func(d *design.Design) {
		d.Holes = []design.Hole{{ID: "hole-1", At: design.Point{X: units.MaxLength}, Diameter: 20 * mm}}
	})
	return out
}

// exits runs a program and holds it to the code that it ends with:
//
//	exits 2 castsheet check nothing.json
//
// A program that ends with 2 must have said why in one line.
func exits(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: exits code program [args...]")
	}
	err := ts.Exec(args[1], args[2:]...)
	code := 0
	if exit := (*exec.ExitError)(nil); errors.As(err, &exit) {
		code = exit.ExitCode()
	} else {
		ts.Check(err)
	}
	if strconv.Itoa(code) != args[0] {
		ts.Fatalf("ended with %d, want %s", code, args[0])
	}
	said := ts.ReadFile("stderr")
	if code == exitFailed && (!strings.HasPrefix(said, "castsheet: ") || strings.Count(said, "\n") != 1) {
		ts.Fatalf("want one line that says why, got %q", said)
	}
	if code != exitFailed && said != "" {
		ts.Fatalf("want nothing on the error stream, got %q", said)
	}
}

// readObject reads a JSON object; the name stdout is what the last program wrote.
func readObject(ts *testscript.TestScript, name string) map[string]any {
	var object map[string]any
	ts.Check(json.Unmarshal([]byte(ts.ReadFile(name)), &object))
	return object
}

// keys holds a JSON object, or with "list." before it the first item of a list
// in it, to the keys that others rely on: keys file key...
func keys(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: keys file key...")
	}
	object := readObject(ts, args[0])
	for _, key := range args[1:] {
		where := object
		if list, inner, ok := strings.Cut(key, "."); ok {
			items, _ := object[list].([]any)
			if len(items) == 0 {
				ts.Fatalf("%s holds nothing", list)
			}
			where, key = items[0].(map[string]any), inner
		}
		if _, ok := where[key]; !ok {
			ts.Fatalf("the key %s is missing", key)
		}
	}
}

// value holds one member of a JSON object to its JSON text: value file key json
func value(ts *testscript.TestScript, neg bool, args []string) {
	if len(args) != 3 {
		ts.Fatalf("usage: value file key json")
	}
	got, err := json.Marshal(readObject(ts, args[0])[args[1]])
	ts.Check(err)
	if (string(got) == args[2]) == neg {
		ts.Fatalf("%s is %s", args[1], got)
	}
}

// about holds a number of a JSON object to what it should be, within a ten millionth
// of it: about file key number
func about(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 3 {
		ts.Fatalf("usage: about file key number")
	}
	want, err := strconv.ParseFloat(args[2], 64)
	ts.Check(err)
	got, ok := readObject(ts, args[0])[args[1]].(float64)
	if !ok || math.Abs(got-want) > 1e-7*math.Abs(want) {
		ts.Fatalf("%s is %.12g, want %.12g", args[1], got, want)
	}
}

// pngSize holds a picture to its width, and to being more than one colour.
func pngSize(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 2 {
		ts.Fatalf("usage: png file width")
	}
	img, err := png.Decode(strings.NewReader(ts.ReadFile(args[0])))
	ts.Check(err)
	b := img.Bounds()
	if strconv.Itoa(b.Dx()) != args[1] || b.Dy() < b.Dx()/4 {
		ts.Fatalf("the picture is %d x %d", b.Dx(), b.Dy())
	}
	first := img.At(b.Min.X, b.Min.Y)
	for y := b.Min.Y; y < b.Max.Y; y++ {
		for x := b.Min.X; x < b.Max.X; x++ {
			if img.At(x, y) != first {
				return
			}
		}
	}
	ts.Fatalf("the picture is of one colour")
}

// valid holds a JSON file to a JSON Schema, read by an independent library:
// valid schema file
func valid(ts *testscript.TestScript, neg bool, args []string) {
	if len(args) != 2 {
		ts.Fatalf("usage: valid schema file")
	}
	text, err := jsonschema.UnmarshalJSON(strings.NewReader(ts.ReadFile(args[0])))
	ts.Check(err)
	c := jsonschema.NewCompiler()
	c.DefaultDraft(jsonschema.Draft2020)
	c.AssertFormat()
	ts.Check(c.AddResource("job.json", text))
	schema, err := c.Compile("job.json")
	ts.Check(err)
	job, err := jsonschema.UnmarshalJSON(strings.NewReader(ts.ReadFile(args[1])))
	ts.Check(err)
	if err := schema.Validate(job); (err == nil) == neg {
		ts.Fatalf("validity of %s: %v", args[1], err)
	}
}

// fill writes a text many times over, for files that are too much to keep:
// fill file times text
func fill(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 3 {
		ts.Fatalf("usage: fill file times text")
	}
	times, err := strconv.Atoi(args[1])
	ts.Check(err)
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), bytes.Repeat([]byte(args[2]), times), 0o666))
}

// forge writes a file as another with the last of a text in it changed:
//
//	forge from to old new
func forge(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 4 {
		ts.Fatalf("usage: forge from to old new")
	}
	text := ts.ReadFile(args[0])
	i := strings.LastIndex(text, args[2])
	if i < 0 {
		ts.Fatalf("%s has no %q", args[0], args[2])
	}
	text = text[:i] + args[3] + text[i+len(args[2]):]
	ts.Check(os.WriteFile(ts.MkAbs(args[1]), []byte(text), 0o666))
}
