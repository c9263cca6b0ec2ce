package store

import (
	"regexp"
	"testing"

	"example.org/castwright/model/slab"
)

// bad is a design with something wrong everywhere.
const bad = `{"format": "castwright-job", "version": 1, "units": "metric", "options": [{"name": "A", "design": {
"thickness_mm": -40,
"outline": {"nodes": [
  {"at_mm": [0, 0], "corner": {"kind": "rounded", "size_mm": -5}, "edge": {"profile": {"kind": "eased", "size_mm": -1}}},
  {"at_mm": [0, 0], "corner": {"kind": "chamfered", "size_mm": 9000}, "edge": {"curve": "arc", "rise_mm": 90000}},
  {"at_mm": [90000, 500], "edge": {"curve": "spline", "c1_mm": [0, -90000], "c2_mm": [90000, 90000],
   "profile": {"kind": "rounded", "size_mm": 900}}},
  {"at_mm": [500, 20]}]},
"sinks": [
  {"id": "", "at_mm": [90000, 0], "shape": {"kind": "rectangle", "width_mm": -1, "depth_mm": 0, "corner_radius_mm": -4},
   "mount": "under", "reveal": {"kind": "rim shows", "size_mm": -3}, "profile": {"kind": "eased", "size_mm": -2},
   "bowl_depth_mm": -1, "bowl_mass_kg": -1},
  {"id": "x", "at_mm": [0, 0], "shape": {"kind": "D", "width_mm": 10, "depth_mm": 10, "bow_mm": 90}, "mount": "over", "rim_mm": -5},
  {"id": "x", "at_mm": [0, 0], "shape": {"kind": "circle", "width_mm": -10}, "mount": "vessel", "drain_mm": -5},
  {"id": "p", "at_mm": [0, 0], "shape": {"kind": "path", "path": [{"at_mm": [0, 0]}]}, "mount": "under"},
  {"id": "e", "at_mm": [0, 0], "shape": {"kind": "ellipse", "width_mm": 0, "depth_mm": 10}, "mount": "under",
   "reveal": {"kind": "concrete overhangs", "size_mm": 400}}],
"taps": [
  {"id": "t", "pattern": "own", "diameter_mm": -1, "sink": "nobody", "set_back_mm": -9},
  {"id": "u", "pattern": "own", "holes_mm": [[90000, 0]], "diameter_mm": 9000, "at_mm": [90000, 0]}],
"holes": [{"id": "h", "kind": "other", "at_mm": [90000, 0], "diameter_mm": -1}],
"channels": [
  {"id": "c", "depth_mm": -2, "rivers": [{"nodes": []}, {"nodes": [{"at_mm": [0, 0], "width_mm": -1}, {"at_mm": [0, 0], "width_mm": 90000}]}],
   "regions": [{"outer": [{"at_mm": [0, 0]}], "islands": [[], [{"at_mm": [90000, 0], "corner": {"kind": "rounded", "size_mm": -1}}]]}],
   "fill": {"resin": true, "colour": "#000000", "opacity_percent": 150, "top_coat_mm": -1,
    "glass": {"grain_mm": -1, "share_percent": -5, "colour": "#000000"}}},
  {"id": "d", "depth_mm": 9000}],
"glass_beds": [{"id": "g", "region": {"outer": []}, "grain_mm": -1, "coverage_percent": 101, "depth_mm": -1, "colour": "#000000"}],
"finish": {"colour": "#000000", "exposure": "cream", "polish": 9, "grind_mm": -1},
"supports": [
  {"id": "s", "kind": "wall", "line_mm": [], "width_mm": -1},
  {"id": "l", "kind": "leg", "line_mm": [[0, 0], [90000, 0]], "patch": true}],
"relations": [
  {"kind": "centred on top", "part": "nobody", "axis": "x"},
  {"kind": "centred between", "part": "h", "axis": "x", "other": "nobody", "second": "s"},
  {"kind": "centred between", "part": "h", "axis": "y", "other": "s", "second": "s"},
  {"kind": "in line", "part": "h", "axis": "y", "other": "g"},
  {"kind": "in line", "part": "g", "axis": "y", "other": "h"},
  {"kind": "distance", "part": "t", "side": "left", "distance_mm": 5},
  {"kind": "on edge", "part": "c", "river": 9, "end": "end", "edge": 0, "along_percent": 50},
  {"kind": "on edge", "part": "c", "end": "start", "edge": 99, "along_percent": 50},
  {"kind": "on edge", "part": "c", "end": "end", "edge": 0, "along_percent": 500},
  {"kind": "in line", "part": "c", "axis": "x", "other": "x"}]}}]}`

// A fault's field is the path of a member of the file within the design, so
// that a maker who edits by hand finds it.
func TestFaultsNameMembersOfTheFile(t *testing.T) {
	j, err := Decode([]byte(bad))
	if err != nil {
		t.Fatal(err)
	}
	members := listed()
	index := regexp.MustCompile(`(\[[0-9]+\])+`)
	dot := regexp.MustCompile(`\.`)
	faults := slab.Validate(j.Options[0].Design)
	if len(faults) == 0 {
		t.Fatal("no fault in a design with something wrong everywhere")
	}
	for _, f := range faults {
		if f.Field == "" {
			continue
		}
		path := "/options/design/" + dot.ReplaceAllString(index.ReplaceAllString(f.Field, ""), "/")
		if _, known := members[path]; !known {
			t.Errorf("fault %s is in %s, which no file has", f.Rule, f.Field)
		}
	}
}
