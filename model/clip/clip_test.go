package clip_test

import (
	"errors"
	"strings"
	"testing"

	"example.org/castwright/model/clip"
	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/units"
	"github.com/google/go-cmp/cmp"
)

const mm = units.Millimetre

func at(x, y int) design.Point {
	return design.Point{X: units.Length(x) * mm, Y: units.Length(y) * mm}
}

// parts is a sink with its tap holes, a hole in line with it, and a river.
func parts(t testing.TB) design.Design {
	t.Helper()
	d := design.Design{Outline: edit.Rectangle(1200*mm, 500*mm), Thickness: 40 * mm}
	for _, e := range []edit.Edit{
		edit.AddSink(design.Sink{At: at(600, 250), Shape: design.Shape{Kind: design.ShapeEllipse, Width: 400 * mm, Depth: 300 * mm}}),
		edit.AddTaps(design.TapSet{Sink: "sink-1", Pattern: design.TapThree8, Diameter: 35 * mm, SetBack: 50 * mm}),
		edit.AddHole(design.Hole{At: at(100, 250), Diameter: 45 * mm}),
		edit.AddChannel(design.Channel{Depth: 10 * mm, Rivers: []design.River{{Nodes: []design.RiverNode{
			{At: at(100, 80), Width: 30 * mm}, {At: at(1000, 60), Width: 40 * mm},
		}}}}),
		edit.AddRelation(design.Relation{Kind: design.RelationPart, Part: "hole-1", Other: "sink-1", Axis: design.AxisY}),
	} {
		var err error
		if d, err = e.Apply(d); err != nil {
			t.Fatal(err)
		}
	}
	return d
}

// Through the text, parts are pasted just as without it.
func TestRoundTrip(t *testing.T) {
	d := parts(t)
	for _, ids := range [][]design.ID{edit.Parts(d), {"sink-1"}, {"taps-1"}, {"hole-1", "sink-1"}, {"channel-1"}} {
		c, err := edit.CopyParts(d, ids)
		if err != nil {
			t.Fatal(err)
		}
		text := clip.Text(c, units.Imperial)
		if !clip.Is(text) {
			t.Errorf("%v: the text is not known for what it is", ids)
		}
		got, err := clip.Read(text)
		if err != nil {
			t.Errorf("%v: %v", ids, err)
			continue
		}
		other := design.Design{Outline: edit.Rectangle(900*mm, 500*mm), Thickness: 30 * mm}
		want, err1 := edit.PasteParts(c, c.At.Add(at(7, 0))).Apply(other)
		have, err2 := edit.PasteParts(got, got.At.Add(at(7, 0))).Apply(other)
		if err1 != nil || err2 != nil {
			t.Fatal(err1, err2)
		}
		if diff := cmp.Diff(want, have); diff != "" {
			t.Errorf("%v pasted through the text (-without +with):\n%s", ids, diff)
		}
	}
}

func TestOtherTextsAreRefused(t *testing.T) {
	d := parts(t)
	c, _ := edit.CopyParts(d, edit.Parts(d))
	good := clip.Text(c, units.Metric)
	for _, c := range []struct{ name, text, says string }{
		{"nothing", "", "no copied parts"},
		{"a sentence", "the client likes the green river", "no copied parts"},
		{"another program's", `{"parts":[1,2,3]}`, "no copied parts"},
		{"a whole job", strings.Replace(good, "Copied parts", "Clay room", 1), "no copied parts"},
		{"cut off", good[:len(good)/2], "can't be read"},
		{"a size beyond all bounds", strings.Replace(good, `"width_mm": 400`, `"width_mm": 4e300`, 1), "can't be read"},
		{"not a number", strings.Replace(good, `"width_mm": 400`, `"width_mm": NaN`, 1), "can't be read"},
		{"a name twice", strings.ReplaceAll(good, "taps-1", "sink-1"), "told apart"},
		{"no name", strings.Replace(good, `"id": "hole-1"`, `"id": ""`, 1), "told apart"},
		{"far too long", good + strings.Repeat(" ", clip.MaxText), "too long"},
		{"of a later version", strings.Replace(good, `"version": 1`, `"version": 2`, 1), "can't be read"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if c.text == good {
				t.Fatal("the case changes nothing")
			}
			_, err := clip.Read(c.text)
			if err == nil || !strings.Contains(err.Error(), c.says) {
				t.Errorf("error %v, want %q", err, c.says)
			}
			if strings.Contains(c.says, "no copied parts") && !errors.Is(err, clip.ErrOther) {
				t.Errorf("%v is not ErrOther", err)
			}
		})
	}
}

func FuzzRead(f *testing.F) {
	d := parts(f)
	c, _ := edit.CopyParts(d, edit.Parts(d))
	f.Add(clip.Text(c, units.Metric))
	f.Add(`{"format":"castwright-job","version":1,"client":"Copied parts","units":"metric","options":[]}`)
	plain := design.Design{Outline: edit.Rectangle(900*mm, 500*mm), Thickness: 30 * mm}
	f.Fuzz(func(t *testing.T, text string) {
		c, err := clip.Read(text)
		if err != nil {
			return
		}
		out, err := edit.PasteParts(c, c.At).Apply(plain)
		if err != nil {
			return
		}
		if got, want := len(edit.Parts(out)), len(c.IDs()); got != want {
			t.Errorf("%d parts pasted of %d", got, want)
		}
		for _, r := range out.Relations {
			if f, bad := out.RelationFault(r); bad {
				t.Errorf("a pasted relation names what is not there: %v", f)
			}
		}
	})
}
