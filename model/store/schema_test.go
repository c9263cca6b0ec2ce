package store_test

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"example.org/castwright/assets"
	"example.org/castwright/model/store"
	"github.com/google/go-cmp/cmp"
	"github.com/santhosh-tekuri/jsonschema/v6"
	"pgregory.net/rapid"
)

// compiled is the schema of the job file, as an independent validator reads it.
func compiled(t testing.TB) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(assets.Schema()))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	const url = "urn:castwright:job:1"
	if err := c.AddResource(url, doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile(url)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func validate(s *jsonschema.Schema, data []byte) error {
	v, err := jsonschema.UnmarshalJSON(bytes.NewReader(data))
	if err != nil {
		return err
	}
	return s.Validate(v)
}

// The schema itself keeps to the meta-schema of draft 2020-12.
func TestSchemaIsOne(t *testing.T) {
	meta, err := jsonschema.NewCompiler().Compile("https://json-schema.org/draft/2020-12/schema")
	if err != nil {
		t.Fatal(err)
	}
	if err := validate(meta, assets.Schema()); err != nil {
		t.Error(err)
	}
}

// What the reader refuses for its structure, the schema refuses too, and what
// it reads the schema lets pass.
func TestSchemaAgreesWithTheReader(t *testing.T) {
	s := compiled(t)
	const frame = `{"format":"castwright-job","version":1,"units":"metric","options":[{"name":"A","design":{` +
		`"thickness_mm":40,"finish":{"colour":"#aaBB00","exposure":"fine","polish":2,"grind_mm":1},` +
		`"outline":{"nodes":[%s]}%s}}]}`
	node := func(rest string) string { return fmt.Sprintf(frame, `{"at_mm":[0,0]`+rest+`}`, "") }
	part := func(list string) string { return fmt.Sprintf(frame, "", ","+list) }
	for _, c := range []struct {
		text string
		ok   bool
	}{
		{node(``), true},
		{node(`,"corner":{}`), true},
		{node(`,"corner":{"kind":"rounded"}`), false},
		{node(`,"corner":{"kind":"chamfered","size_mm":5}`), true},
		{node(`,"corner":{"kind":"round","size_mm":5}`), false},
		{node(`,"corner":{"size_mm":"5"}`), false},
		{node(`,"edge":{"curve":"arc"}`), false},
		{node(`,"edge":{"curve":"arc","rise_mm":-2}`), true},
		{node(`,"edge":{"curve":"spline","c1_mm":[1,2]}`), false},
		{node(`,"edge":{"curve":"spline","c1_mm":[1,2],"c2_mm":[1,2,3]}`), false},
		{node(`,"edge":{"curve":"spline","c1_mm":[1,2],"c2_mm":[3,4]}`), true},
		{node(`,"edge":{"profile":{"kind":"eased"}}`), false},
		{node(`,"edge":{"profile":{"kind":"half round"}}`), true},
		{node(`,"edge":{"side":"back"}`), false},
		{node(`,"seam":[null]`), true},
		{fmt.Sprintf(frame, `{}`, ""), false},
		{fmt.Sprintf(frame, `[0,0]`, ""), false},
		{fmt.Sprintf(frame, `{"at_mm":[0,100001]}`, ""), false},
		{part(`"sinks":[{"at_mm":[0,0],"shape":{"kind":"circle","width_mm":9},"mount":"under"}]`), false},
		{part(`"sinks":[{"id":"s","at_mm":[0,0],"shape":{"kind":"circle","width_mm":9},"mount":"under"}]`), true},
		{part(`"sinks":[{"id":"s","at_mm":[0,0],"shape":{"kind":"D","width_mm":9},"mount":"under"}]`), false},
		{part(`"sinks":[{"id":"s","at_mm":[0,0],"shape":{"kind":"path"},"mount":"under"}]`), false},
		{part(`"sinks":[{"id":"s","at_mm":[0,0],"shape":{"kind":"path","path":[]},"mount":"vessel"}]`), true},
		{part(`"sinks":[{"id":"s","at_mm":[0,0],"shape":{"kind":"circle","width_mm":9},"mount":"under",` +
			`"reveal":{"kind":"rim shows"}}]`), false},
		{part(`"taps":[{"id":"t","pattern":"single","diameter_mm":35,"at_mm":[0,0]}]`), true},
		{part(`"taps":[{"id":"t","pattern":"single","diameter_mm":35}]`), false},
		{part(`"taps":[{"id":"t","pattern":"single","diameter_mm":35,"sink":"s","set_back_mm":60}]`), true},
		{part(`"taps":[{"id":"t","pattern":"single","diameter_mm":35,"sink":"s"}]`), false},
		{part(`"taps":[{"id":"t","pattern":"single","diameter_mm":35,"sink":"","set_back_mm":60}]`), false},
		{part(`"taps":[{"id":"t","pattern":"five","diameter_mm":35,"at_mm":[0,0]}]`), false},
		{part(`"holes":[{"id":"h","kind":"drain","at_mm":[0,0],"diameter_mm":1e1}]`), true},
		{part(`"holes":[{"id":"h","kind":"drain","at_mm":[0,0]}]`), false},
		{part(`"holes":{}`), false},
		{part(`"channels":[{"id":"c","depth_mm":9}]`), true},
		{part(`"channels":[{"id":"c","depth_mm":9,"fill":{"resin":true}}]`), false},
		{part(`"channels":[{"id":"c","depth_mm":9,"fill":{"resin":false}}]`), true},
		{part(`"channels":[{"id":"c","depth_mm":9,"fill":{"glass":null}}]`), false},
		{part(`"channels":[{"id":"c","depth_mm":9,"fill":{"glass":{"grain_mm":4}}}]`), false},
		{part(`"channels":[{"id":"c","depth_mm":9,"rivers":[{"nodes":[{"at_mm":[0,0]}]}]}]`), false},
		{part(`"channels":[{"id":"c","depth_mm":9,"rivers":[{"nodes":[{"at_mm":[0,0],"width_mm":5}],"end":"open"}]}]`), true},
		{part(`"channels":[{"id":"c","depth_mm":9,"regions":[{"outer":[],"islands":[[]]}]}]`), true},
		{part(`"channels":[{"id":"c","depth_mm":9,"regions":[{"outer":[],"islands":[[[]]]}]}]`), false},
		{part(`"channels":[{"id":"c","depth_mm":9,"regions":[{"islands":[]}]}]`), false},
		{part(`"glass_beds":[{"id":"g","region":{"outer":[]},"grain_mm":4,"coverage_percent":50,"depth_mm":6,` +
			`"colour":"#00ff00"}]`), true},
		{part(`"glass_beds":[{"id":"g","region":{"outer":[]},"grain_mm":4,"depth_mm":6,"colour":"#00ff00"}]`), false},
		{part(`"glass_beds":[{"id":"g","region":{"outer":[]},"grain_mm":4,"coverage_percent":50,"depth_mm":6,` +
			`"colour":"green"}]`), false},
		{part(`"supports":[{"id":"w","kind":"wall","line_mm":[[0,0],[5,0]],"width_mm":40}]`), true},
		{part(`"supports":[{"id":"w","kind":"wall","line_mm":[[0,0],[5,0]]}]`), false},
		{part(`"supports":[{"id":"w","kind":"leg","line_mm":[],"patch":true}]`), true},
		{part(`"supports":[{"id":"w","kind":"leg","line_mm":[5],"patch":true}]`), false},
		{part(`"relations":[{"kind":"centred on top","part":"s","axis":"y"}]`), true},
		{part(`"relations":[{"kind":"centred on top","part":"s"}]`), false},
		{part(`"relations":[{"kind":"centred on top","axis":"y"}]`), false},
		{part(`"relations":[{"kind":"centred between","part":"s","axis":"x","other":"a","second":"b"}]`), true},
		{part(`"relations":[{"kind":"centred between","part":"s","axis":"x","other":"a"}]`), false},
		{part(`"relations":[{"kind":"in line","part":"s","axis":"x","other":"a"}]`), true},
		{part(`"relations":[{"kind":"in line","part":"s","axis":"x"}]`), false},
		{part(`"relations":[{"kind":"distance","part":"s","side":"left","distance_mm":5}]`), true},
		{part(`"relations":[{"kind":"distance","part":"s","side":"left"}]`), false},
		{part(`"relations":[{"kind":"distance","part":"s","side":"top","distance_mm":5}]`), false},
		{part(`"relations":[{"kind":"on edge","part":"c","end":"end","edge":0,"along_percent":50}]`), true},
		{part(`"relations":[{"kind":"on edge","part":"c","end":"end","edge":0}]`), false},
		{part(`"relations":[{"kind":"on edge","part":"c","river":0.5,"end":"end","edge":0,"along_percent":5}]`), false},
		{part(`"relations":[` + strings.Repeat(`{"kind":"centred on top","part":"s","axis":"y"},`, 1000) +
			`{"kind":"centred on top","part":"s","axis":"y"}]`), false},
		{part(`"notes":7`), false},
		{strings.Replace(node(``), `"metric"`, `"us"`, 1), false},
		{strings.Replace(node(``), `"units":"metric",`, ``, 1), false},
		{strings.Replace(node(``), `"version":1`, `"version":2`, 1), false},
		{strings.Replace(node(``), `"name":"A",`, ``, 1), false},
		{strings.Replace(node(``), `"polish":2`, `"polish":2.5`, 1), false},
		{strings.Replace(node(``), `"polish":2`, `"polish":20`, 1), true},
		{strings.Replace(node(``), `"format"`, `"site":{"helpers":"two"},"format"`, 1), false},
		{strings.Replace(node(``), `"format"`, `"materials":{"mix":{"price_per_bag":"12.5"}},"format"`, 1), true},
		{strings.Replace(node(``), `"format"`, `"materials":{"mix":{"price_per_bag":"12,5"}},"format"`, 1), false},
		{strings.Replace(node(``), `"format"`, `"materials":{"mix":{"rapid":1}},"format"`, 1), false},
	} {
		_, read := store.Decode([]byte(c.text))
		schema := validate(s, []byte(c.text))
		if (read == nil) != c.ok || (schema == nil) != c.ok {
			t.Errorf("%s\nis to pass: %v\nreader: %v\nschema: %v", c.text, c.ok, read, schema)
		}
	}
}

// Whatever a job holds, its file keeps to the schema.
func TestFilesKeepToTheSchema(t *testing.T) {
	s := compiled(t)
	rapid.Check(t, func(t *rapid.T) {
		data := store.Encode(draw{t}.job())
		if err := validate(s, data); err != nil {
			t.Fatalf("%v\n%s", err, data)
		}
	})
}

// The demo jobs keep to the schema and stand as they would be saved.
func TestDemos(t *testing.T) {
	s := compiled(t)
	if len(assets.Demos()) < 2 {
		t.Fatalf("%d demo jobs", len(assets.Demos()))
	}
	for _, demo := range assets.Demos() {
		if err := validate(s, demo.Data); err != nil {
			t.Errorf("%s: %v", demo.Name, err)
		}
		job, err := store.Decode(demo.Data)
		if err != nil {
			t.Errorf("%s: %v", demo.Name, err)
			continue
		}
		if diff := cmp.Diff(string(demo.Data), string(store.Encode(job))); diff != "" {
			t.Errorf("%s (-is +would be saved):\n%s", demo.Name, diff)
		}
	}
}
