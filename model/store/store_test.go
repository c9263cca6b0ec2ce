package store_test

import (
	"bytes"
	"errors"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/store"
	"example.org/castwright/model/units"
	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/shopspring/decimal"
	"pgregory.net/rapid"
)

// same compares jobs; prices by their worth.
var same = cmp.Options{
	cmp.Comparer(func(a, b decimal.Decimal) bool { return a.Equal(b) }),
	cmpopts.EquateEmpty(),
}

// What is written is read back as it was, and written again byte for byte.
func TestRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := draw{t}.job()
		data := store.Encode(job)
		got, err := store.Decode(data)
		if err != nil {
			t.Fatalf("%v\n%s", err, data)
		}
		if diff := cmp.Diff(job, got, same); diff != "" {
			t.Fatalf("read back (-want +got):\n%s", diff)
		}
		if again := store.Encode(got); !bytes.Equal(data, again) {
			t.Fatalf("written again (-want +got):\n%s", cmp.Diff(string(data), string(again)))
		}
	})
}

func mm(x float64) units.Length { return units.FromMM(x) }

// rectangle is a small job, written by hand as a stranger would.
const rectangle = `{
  "format": "castwright-job",
  "version": 1,
  "units": "imperial",
  "options": [
    {
      "name": "A",
      "design": {
        "thickness_mm": 38.1,
        "outline": {
          "nodes": [
            {"at_mm": [0, 0]},
            {"at_mm": [1549.4, 0], "edge": {"profile": {"kind": "eased", "size_mm": 3.175}}},
            {"at_mm": [1549.4, 558.8], "edge": {"side": "wall"}},
            {"at_mm": [0, 558.8], "corner": {"kind": "rounded", "size_mm": 12.7}}
          ]
        },
        "sinks": [
          {
            "id": "sink-1",
            "at_mm": [774.7, 279.4],
            "shape": {"kind": "ellipse", "width_mm": 431.8, "depth_mm": 330.2},
            "mount": "under"
          }
        ],
        "finish": {"colour": "#d8d2c4", "exposure": "cream", "polish": 2, "grind_mm": 0.5}
      }
    }
  ]
}
`

func TestDecodeByHand(t *testing.T) {
	got, err := store.Decode([]byte(rectangle))
	if err != nil {
		t.Fatal(err)
	}
	outline := edit.Rectangle(61*units.Inch, 22*units.Inch)
	outline.Nodes[1].Edge.Profile = design.Profile{Kind: design.ProfileEased, Size: units.Inch / 8}
	outline.Nodes[3].Corner = design.Corner{Kind: design.CornerRounded, Size: units.Inch / 2}
	want := design.Job{Units: units.Imperial, Options: []design.Option{{Name: "A", Design: design.Design{
		Outline: outline, Thickness: 3 * units.Inch / 2,
		Sinks: []design.Sink{{ID: "sink-1", At: design.Point{X: 61 * units.Inch / 2, Y: 11 * units.Inch},
			Shape: design.Shape{Kind: design.ShapeEllipse, Width: 17 * units.Inch, Depth: 13 * units.Inch}}},
		Finish: design.Finish{Colour: design.Colour{R: 0xd8, G: 0xd2, B: 0xc4}, Polish: 2, Grind: mm(0.5)},
	}}}}
	if diff := cmp.Diff(want, got, same); diff != "" {
		t.Errorf("read (-want +got):\n%s", diff)
	}
	if diff := cmp.Diff(rectangle, string(store.Encode(got))); diff != "" {
		t.Errorf("written (-want +got):\n%s", diff)
	}
}

// A mark of byte order, as some editors put before the text, is passed over.
func TestDecodeAfterAByteOrderMark(t *testing.T) {
	if _, err := store.Decode([]byte("\ufeff" + rectangle)); err != nil {
		t.Error(err)
	}
}

func TestRefusals(t *testing.T) {
	for _, c := range []struct {
		old, new string // in the file above
		line     int
		key      string
		want     string
	}{
		{`38.1`, `"38.1"`, 9, "options[0].design.thickness_mm", "must be a number and is text"},
		{`38.1`, `1e400`, 9, "options[0].design.thickness_mm", "beyond what a number can be"},
		{`38.1`, `100001`, 9, "options[0].design.thickness_mm", "beyond the 100000 mm"},
		{`38.1`, `NaN`, 9, "options[0].design.thickness_mm", "a value must stand here"},
		{`38.1`, `null`, 9, "options[0].design.thickness_mm", "this is null"},
		{`"thickness_mm": 38.1,`, ``, 8, "options[0].design", "thickness_mm is missing"},
		{`"thickness_mm": 38.1,`, `"thickness_mm": 38.1, "thickness_mm": 40,`, 9, "options[0].design.thickness_mm", "stands twice, first in line 9"},
		{`[1549.4, 558.8]`, `[1549.4]`, 14, "options[0].design.outline.nodes[2].at_mm", "two numbers"},
		{`{"at_mm": [0, 0]}`, `7`, 12, "options[0].design.outline.nodes[0]", "must be an object"},
		{`"rounded", "size_mm": 12.7`, `"rounded"`, 15, "options[0].design.outline.nodes[3].corner", "size_mm is missing"},
		{`"rounded"`, `"curvy"`, 15, "options[0].design.outline.nodes[3].corner.kind", "use square, rounded or chamfered"},
		{`"under"`, `"below"`, 23, "options[0].design.sinks[0].mount", "use under, over or vessel"},
		{`"#d8d2c4"`, `"beige"`, 26, "options[0].design.finish.colour", "#8c8a82"},
		{`"polish": 2`, `"polish": 2.5`, 26, "options[0].design.finish.polish", "whole number"},
		{`"imperial"`, `"cubits"`, 4, "units", "use metric or imperial"},
		{`"castwright-job"`, `"something"`, 2, "format", "open a job file"},
		{`"format": "castwright-job",`, ``, 1, "", "format is missing"},
		{`"version": 1`, `"version": 0`, 3, "version", "the first is 1"},
		{`"name": "A",`, `"name": "A"`, 7, "options[0]", "a comma or a closing brace"},
		{`"side": "wall"}}`, `"side": "wall"`, 15, "options[0].design.outline.nodes[2].edge", "a key in double quotes"},
		{`"imperial"`, `"imper` + "\xff" + `"`, 4, "", "not UTF-8"},
		{rectangle, ``, 1, "", "empty"},
		{rectangle, `[]`, 1, "", "not a job"},
		{rectangle, rectangle[:240], 13, "options[0].design.outline.nodes[1]", "cut short"},
		{`"units"`, `"materials": {"resin": {"price_per_l": 12.5}}, "units"`, 4, "materials.resin.price_per_l", "must be text"},
		{`"units"`, `"materials": {"resin": {"price_per_l": "1e9"}}, "units"`, 4, "materials.resin.price_per_l", "12.50"},
		{`"units"`, `"materials": {"mix": {"bag_mass_kg": 1e10}}, "units"`, 4, "materials.mix.bag_mass_kg", "beyond"},
	} {
		text := strings.Replace(rectangle, c.old, c.new, 1)
		if text == rectangle {
			t.Errorf("%q is not in the file", c.old)
		}
		_, err := store.Decode([]byte(text))
		var s *store.SyntaxError
		if !errors.As(err, &s) {
			t.Errorf("%q for %q: error %v, want a *SyntaxError", c.new, c.old, err)
			continue
		}
		if s.Line != c.line || s.Key != c.key || !strings.Contains(s.Detail, c.want) || s.Col < 1 {
			t.Errorf("%.40q for %.40q:\n got %v\nwant line %d, %s: ...%s...", c.new, c.old, err, c.line, c.key, c.want)
		}
	}
}

func TestTooManyPoints(t *testing.T) {
	nodes := strings.TrimSuffix(strings.Repeat(`{"at_mm": [0, 0]},`, design.MaxPoints+1), ",")
	text := strings.Replace(rectangle, `{"at_mm": [0, 0]}`, nodes, 1)
	if _, err := store.Decode([]byte(text)); err == nil || !strings.Contains(err.Error(), "more than 20000 points") {
		t.Errorf("error %v, want one that names the bound", err)
	}
}

func TestNewerIsRefusedBeforeAllElse(t *testing.T) {
	for _, text := range []string{
		strings.Replace(rectangle, `"version": 1`, `"version": 2`, 1),
		`{"options": "in a new form", "format": "castwright-job", "version": 7}`,
	} {
		_, err := store.Decode([]byte(text))
		if !errors.Is(err, store.ErrNewer) || !strings.Contains(err.Error(), "version") {
			t.Errorf("error %v, want ErrNewer with the place", err)
		}
	}
	if _, err := store.Decode([]byte(`{"format": "castwright-job", "version": "x"}`)); errors.Is(err, store.ErrNewer) {
		t.Error("a version that is no number is called newer")
	}
}

// A file that describes a bad top opens: faults explain it.
func TestABadTopOpens(t *testing.T) {
	text := strings.NewReplacer(`38.1`, `-5`, `"polish": 2`, `"polish": 40`, `"id": "sink-1"`, `"id": ""`).
		Replace(rectangle)
	j, err := store.Decode([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	if d := j.Options[0].Design; d.Thickness != mm(-5) || d.Finish.Polish != 40 {
		t.Errorf("thickness %v, polish %d", d.Thickness.MM(), d.Finish.Polish)
	}
}

// Digits finer than a nanometre, as a program writes them, are rounded.
func TestFinerThanANanometre(t *testing.T) {
	j, err := store.Decode([]byte(strings.Replace(rectangle, `38.1`, `38.10000049999999`, 1)))
	if err != nil || j.Options[0].Design.Thickness != mm(38.1) {
		t.Errorf("thickness %v, %v", j.Options[0].Design.Thickness.MM(), err)
	}
}

func TestUnknownMembersSurvive(t *testing.T) {
	text := strings.NewReplacer(
		`"version": 1,`, `"version": 1, "zeal": [1.50, {"b": null, "a": 1e2}], "mood": "cal\u006d",`,
		`"name": "A",`, `"name": "A", "star": true,`,
		`"thickness_mm": 38.1,`, `"thickness_mm": 38.1, "drop_mm": 0,`,
		`{"at_mm": [0, 0]}`, `{"at_mm": [0, 0], "seam": "x", "edge": {"scribe": [[0, 1], [2, 3]]}}`,
		`"id": "sink-1",`, `"id": "sink/1", "maker": {},`,
		`"height"`, ``,
	).Replace(rectangle)
	job, err := store.Decode([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	wantJob := design.Extra{"/zeal": `[1.50,{"b":null,"a":1e2}]`, "/mood": `"cal\u006d"`}
	wantDesign := design.Extra{"../star": "true", "/drop_mm": "0", "/outline/nodes/0/seam": `"x"`,
		"/outline/nodes/0/edge/scribe": "[[0,1],[2,3]]", "/sinks/@sink~11/maker": "{}"}
	if diff := cmp.Diff(wantJob, job.Extra); diff != "" {
		t.Errorf("job's (-want +got):\n%s", diff)
	}
	if diff := cmp.Diff(wantDesign, job.Options[0].Design.Extra); diff != "" {
		t.Errorf("design's (-want +got):\n%s", diff)
	}
	data := store.Encode(job)
	again, err := store.Decode(data)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(job, again, same); diff != "" {
		t.Errorf("read back (-want +got):\n%s", diff)
	}
	for _, want := range []string{
		"\n  \"mood\": \"cal\\u006d\",\n  \"zeal\": [\n    1.50,\n    {\"b\": null, \"a\": 1e2}\n  ]\n}\n",
		`{"at_mm": [0, 0], "edge": {"scribe": [[0, 1], [2, 3]]}, "seam": "x"}`,
		"\n        \"drop_mm\": 0\n      },\n      \"star\": true\n    }",
		"\"maker\": {}\n          }",
	} {
		if !strings.Contains(string(data), want) {
			t.Errorf("the file does not hold\n%s\nbut is\n%s", want, data)
		}
	}
}

// Unknown members stay with their option and their part when the order
// changes, and go when the part goes.
func TestUnknownMembersFollow(t *testing.T) {
	text := strings.NewReplacer(`"name": "A",`, `"name": "A", "star": true,`,
		`"id": "sink-1",`, `"id": "sink-1", "maker": "ours",`).Replace(rectangle)
	job, err := store.Decode([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range []edit.JobEdit{
		edit.AddOption("", design.Design{Outline: edit.Round(mm(900)), Thickness: mm(40)}),
		edit.MoveOption("B", 0),
		edit.RenameOption("A", "kept"),
		edit.On("kept", edit.AddSink(design.Sink{ID: "first"})),
	} {
		if job, err = e.Apply(job); err != nil {
			t.Fatal(err)
		}
	}
	sinks := job.Options[1].Design.Sinks
	sinks[0], sinks[1] = sinks[1], sinks[0]
	data := string(store.Encode(job))
	for what, want := range map[string]string{
		"the option's": "\"star\": true\n    }\n  ]",
		"the sink's":   "\"id\": \"sink-1\",\n            \"at_mm\": [774.7, 279.4],\n            \"shape\": {\"kind\": \"ellipse\", \"width_mm\": 431.8, \"depth_mm\": 330.2},\n            \"mount\": \"under\",\n            \"maker\": \"ours\"",
	} {
		if !strings.Contains(data, want) {
			t.Errorf("%s member is lost:\n%s", what, data)
		}
	}
	job, err = edit.On("kept", edit.RemovePart("sink-1")).Apply(job)
	if err != nil || strings.Contains(string(store.Encode(job)), "maker") {
		t.Errorf("%v; the removed sink's member is there yet", err)
	}
}

// Unknown members that stand in the way, or are no JSON, never spoil a file.
func TestBadExtraIsLeftOut(t *testing.T) {
	job := design.Job{Client: "studio", Extra: design.Extra{
		"/client": `"thief"`, "/broken": `{"a":`, "nowhere": "1", "/gone/far": "2", "/good": "3", "/two": "1 2"}}
	got, err := store.Decode(store.Encode(job))
	if err != nil {
		t.Fatal(err)
	}
	want := design.Job{Client: "studio", Extra: design.Extra{"/good": "3"}}
	if diff := cmp.Diff(want, got, same); diff != "" {
		t.Errorf("read back (-want +got):\n%s", diff)
	}
}

// Lines stay readable, and every corner of a plain outline stands on one.
func TestLayout(t *testing.T) {
	job := design.Job{Client: "Töpferei «Blau» 🏺", Options: []design.Option{{Name: "A", Design: design.Design{
		Outline: edit.Oval(mm(1500), mm(600)), Thickness: mm(40), Notes: "a\tb\n\"c\" \\ \x01"}}}}
	data := string(store.Encode(job))
	for i, line := range strings.Split(data, "\n") {
		if n := len([]rune(line)); n > 100 {
			t.Errorf("line %d has %d characters: %s", i+1, n, line)
		}
	}
	for _, want := range []string{`"client": "Töpferei «Blau» 🏺"`, `"notes": "a\tb\n\"c\" \\ \u0001"`} {
		if !strings.Contains(data, want) {
			t.Errorf("no %s in\n%s", want, data)
		}
	}
}

func TestPricesKeepTheirCents(t *testing.T) {
	for in, want := range map[string]string{
		"12.5": `"12.50"`, "12.50": `"12.50"`, "12": `"12.00"`, "0.125": `"0.125"`, "1200.1000": `"1200.10"`, "-3.333333": `"-3.333333"`,
	} {
		var j design.Job
		j.Materials.Mix.BagPrice = decimal.RequireFromString(in)
		if data := string(store.Encode(j)); !strings.Contains(data, `"price_per_bag": `+want) {
			t.Errorf("%s is not written as %s in\n%s", in, want, data)
		}
	}
}

func FuzzDecode(f *testing.F) {
	f.Add([]byte(rectangle))
	f.Add([]byte(strings.Replace(rectangle, `"version": 1,`, `"version": 1, "zeal": [1.50, {"\u0062\u007f": null}],`, 1)))
	f.Add([]byte(`{"format":"castwright-job","version":1,"units":"metric","options":[{"name":"B","design":` +
		`{"thickness_mm":1e1,"outline":{"nodes":[]},"taps":[{"id":"t","pattern":"own","diameter_mm":35,` +
		`"holes_mm":[[0,0]],"at_mm":[1,2]}],"channels":[{"id":"c","depth_mm":12,"rivers":[{"nodes":` +
		`[{"at_mm":[0,0],"width_mm":40}],"end":"open"}],"regions":[{"outer":[],"islands":[[]]}],"fill":` +
		`{"resin":true,"colour":"#123456","glass":{"grain_mm":4,"share_percent":0.5,"colour":"#fefefe"}}}],` +
		`"supports":[{"id":"s","kind":"leg","line_mm":[],"patch":true}],` +
		`"finish":{"colour":"#000000","exposure":"fine","polish":1,"grind_mm":0}}}]}`))
	demos, err := filepath.Glob("../../assets/demo/*.json")
	if err != nil {
		f.Fatal(err)
	}
	for _, name := range demos {
		data, err := os.ReadFile(name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data)
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		job, err := store.Decode(data)
		if err != nil {
			var s *store.SyntaxError
			if !errors.As(err, &s) || s.Line < 1 || s.Detail == "" {
				t.Fatalf("error %#v", err)
			}
			return
		}
		written := store.Encode(job)
		again, err := store.Decode(written)
		if err != nil {
			t.Fatalf("%v in what was written:\n%s", err, written)
		}
		if diff := cmp.Diff(job, again, same); diff != "" {
			t.Fatalf("read back (-want +got):\n%s", diff)
		}
		if twice := store.Encode(again); !bytes.Equal(written, twice) {
			t.Fatalf("written twice (-want +got):\n%s", cmp.Diff(string(written), string(twice)))
		}
	})
}

// A number that JSON has no word for, or a word of no meaning, is never saved.
func TestWhatCannotBeReadIsNotSaved(t *testing.T) {
	path := filepath.Join(t.TempDir(), "job.json")
	if err := store.Save(path, design.Job{Client: "before"}); err != nil {
		t.Fatal(err)
	}
	var nan, odd, far design.Job
	nan.Materials.Mix.BagMass = math.NaN()
	odd.Units = units.System(9)
	far.Site.DoorWidth = 2 * units.MaxLength
	for _, j := range []design.Job{nan, odd, far} {
		if err := store.Save(path, j); err == nil || !strings.Contains(err.Error(), "holds what a file can't") {
			t.Errorf("error %v", err)
		}
	}
	if j, err := store.Load(path); err != nil || j.Client != "before" {
		t.Errorf("the file holds %q, %v", j.Client, err)
	}
}
