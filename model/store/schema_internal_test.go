package store

import (
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"example.org/castwright/assets"
	"example.org/castwright/model/design"
	"example.org/castwright/model/units"
	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"
)

// lister is the visitor that writes down which members there are: the path of
// each, of what kind it is and whether it is needed in a zero design.
type lister struct {
	path  string
	found map[string]string
}

func (l lister) note(k key, kind string) lister {
	path := l.path + "/" + k.name
	if k.needed {
		kind += ", needed"
	}
	l.found[path] = kind
	return lister{path, l.found}
}

func (l lister) text(k key, _ *string)                { l.note(k, "string") }
func (l lister) flag(k key, _ *bool)                  { l.note(k, "boolean") }
func (l lister) count(k key, _ *int)                  { l.note(k, "count") }
func (l lister) number(k key, _ *float64)             { l.note(k, "quantity") }
func (l lister) percent(k key, _ *float64)            { l.note(k, "quantity") }
func (l lister) price(k key, _ *decimal.Decimal)      { l.note(k, "price") }
func (l lister) length(k key, _ *units.Length)        { l.note(k, "length") }
func (l lister) angle(k key, _ *units.Angle)          { l.note(k, "angle") }
func (l lister) share(k key, _ *units.Share)          { l.note(k, "share") }
func (l lister) colour(k key, _ *design.Colour)       { l.note(k, "colour") }
func (l lister) point(k key, _ *design.Point)         { l.note(k, "point") }
func (l lister) points(k key, _ *[]design.Point)      { l.note(k, "list of point") }
func (l lister) owner(_ *design.Extra, _ string)      {}
func (l lister) word(k key, words []string, _ *uint8) { l.note(k, strings.Join(words, "|")) }
func (l lister) object(k key, visit func(visitor))    { visit(l.note(k, "object")) }

func (l lister) pointed(k key, _ bool, visit func(visitor)) { visit(l.note(k, "object")) }

func (l lister) list(k key, _ int, _ func(int) string, visit func(visitor, int)) {
	visit(l.note(k, "list of object"), 0)
}

func (l lister) chains(k key, _ int, _ func(int) int, visit func(v visitor, k, i int)) {
	visit(l.note(k, "list of list of object"), 0, 0)
}

// listed are the members of the Go types.
func listed() map[string]string {
	l := lister{found: map[string]string{}}
	format, version := "", 0
	l.text(need("format"), &format)
	l.count(need("version"), &version)
	job(l, &design.Job{})
	return l.found
}

// described are the members of the schema, told in the same way.
func described(t *testing.T) map[string]string {
	t.Helper()
	var root map[string]any
	if err := json.Unmarshal(assets.Schema(), &root); err != nil {
		t.Fatal(err)
	}
	found := map[string]string{}
	d := describer{t, root["$defs"].(map[string]any), found}
	d.members("", root)
	return found
}

type describer struct {
	t     *testing.T
	defs  map[string]any
	found map[string]string
}

// follow is the schema that a reference leads to and its name.
func (d describer) follow(s map[string]any) (map[string]any, string) {
	ref, ok := s["$ref"].(string)
	if !ok {
		return s, ""
	}
	name := strings.TrimPrefix(ref, "#/$defs/")
	def, ok := d.defs[name].(map[string]any)
	if !ok {
		d.t.Fatalf("%s leads nowhere", ref)
	}
	return def, name
}

func (d describer) members(path string, s map[string]any) {
	required := fmt.Sprint(s["required"])
	props, _ := s["properties"].(map[string]any)
	for name, p := range props {
		at := path + "/" + name
		kind := d.kind(at, p.(map[string]any))
		if slices.Contains(strings.Fields(strings.Trim(required, "[]")), name) {
			kind += ", needed"
		}
		d.found[at] = kind
	}
}

func (d describer) kind(path string, s map[string]any) string {
	def, name := d.follow(s)
	switch name {
	case "length", "angle", "share", "quantity", "count", "point", "colour", "price":
		return name
	}
	if words, ok := def["enum"].([]any); ok {
		all := make([]string, len(words))
		for i, w := range words {
			all[i] = w.(string)
		}
		return strings.Join(all, "|")
	}
	if c, ok := def["const"]; ok {
		if _, text := c.(string); text {
			return "string"
		}
		return "count"
	}
	switch def["type"] {
	case "array":
		return "list of " + d.kind(path, def["items"].(map[string]any))
	case "object":
		d.members(path, def)
		return "object"
	}
	return def["type"].(string)
}

// Every member of the Go types stands in the schema and the other way round,
// of the same kind, with the same words in the same order, needed or not.
func TestSchemaMatchesTheTypes(t *testing.T) {
	types, schema := listed(), described(t)
	// A zero design has square corners, straight edges and so on; what the
	// schema asks for under a condition is looked at by the next test. These
	// are needed at once because of the first words.
	for _, path := range slices.Sorted(maps.Keys(types)) {
		for _, c := range conditional {
			if strings.HasSuffix(path, c) {
				types[path] = strings.TrimSuffix(types[path], ", needed")
			}
		}
	}
	if diff := cmp.Diff(types, schema); diff != "" {
		t.Errorf("members (-types +schema):\n%s", diff)
	}
}

// conditional are members that are needed when another says so.
var conditional = []string{"/shape/width_mm", "/shape/depth_mm", "/taps/at_mm", "/supports/width_mm",
	"/relations/axis"}
