package model_test

import (
	"go/parser"
	"go/token"
	"io/fs"
	"maps"
	"os"
	"path"
	"slices"
	"strconv"
	"strings"
	"testing"
)

const (
	module    = "example.org/castwright/"
	fyne      = "fyne.io/fyne/v2/"
	windowApp = "fyne.io/fyne/v2/app" // brings cgo and a screen
	decimal   = "github.com/shopspring/decimal"
	fonts     = "codeberg.org/go-fonts/dejavu/ golang.org/x/image/ golang.org/x/text/unicode/bidi golang.org/x/text/unicode/norm"
)

// layers says what each package may import besides the standard library. An
// entry that ends in "/" admits the package and every one below it; a key that
// does speaks for the packages below it that have none of their own. Packages of
// model and export are listed one by one, so that a new one is a decision. Files
// are parsed in this process so that go test's cache knows about every one that
// was read.
var layers = map[string]string{
	"assets": "",

	"model":            "",
	"model/units":      "",
	"model/geom":       "gonum.org/v1/gonum/integrate/quad",
	"model/design":     "model/units model/geom " + decimal,
	"model/lift":       "model/units",
	"model/material":   "model/units model/design " + decimal,
	"model/edit":       "model/units model/geom model/design model/stroke model/template " + decimal,
	"model/stroke":     "model/geom gonum.org/v1/gonum/",
	"model/template":   "model/units model/geom model/design golang.org/x/text/encoding/charmap",
	"model/slab":       "model/units model/geom model/design gonum.org/v1/gonum/integrate/quad",
	"model/edging":     "model/units model/geom model/design model/slab",
	"model/takeoff":    "model/units model/geom model/design model/material model/slab " + decimal,
	"model/amount":     "model/units model/takeoff " + decimal,
	"model/warn":       "model/units model/geom model/design model/lift model/slab model/takeoff",
	"model/report":     "model/units model/amount model/geom model/design model/material model/slab model/takeoff model/warn " + decimal,
	"model/scene":      "model/geom " + fonts,
	"model/look":       "model/units model/geom model/design model/scene",
	"model/draw":       "model/units model/geom model/design model/edging model/slab model/takeoff model/warn model/report model/amount model/change model/terms model/scene model/look " + decimal,
	"model/store":      "model/units model/design " + decimal,
	"model/store/keep": "github.com/gofrs/flock",
	"model/book":       "model/units model/design",
	"model/clip":       "model/units model/design model/edit model/store",
	"model/canon":      "",
	"model/pose":       "model/units model/geom gonum.org/v1/gonum/mat",
	"model/change":     "model/units model/geom model/design model/edging model/edit model/slab",
	"model/terms":      "model/design",
	"model/approve":    "model/units model/amount model/canon model/change model/design model/edit model/report model/store model/terms",

	"export/raster":     "model/geom model/scene " + fonts,
	"export/paper":      "model/geom model/scene codeberg.org/go-pdf/fpdf " + fonts,
	"export/emblem":     "github.com/fogleman/gg",
	"export/intake":     "golang.org/x/image/ github.com/bep/imagemeta",
	"export/letterhead": "export/intake model/draw model/store",
	"export/approval":   "model/ export/paper export/picture export/raster export/room github.com/piglig/go-qr",
	"export/comparison": "model/ export/paper export/picture export/raster",
	"export/picture":    "model/",
	"export/report":     "model/ " + decimal,
	"export/room":       "model/ export/intake export/picture golang.org/x/image/draw",

	"ui/": "ui/ model/ export/ assets github.com/golang/freetype/ golang.org/x/image/ " + decimal + " " + fyne,

	"cmd/castsheet":        "model/ export/ assets github.com/spf13/cobra",
	"cmd/castwright":       "cmd/castwright/first ui/ model/ export/ assets github.com/go-gl/glfw/v3.4/glfw github.com/go-text/typesetting/shaping " + fyne,
	"cmd/castwright/first": "",
	"cmd/dev":              "",
}

// fenced is what model and export may not use of the standard library: the
// machine, and random numbers and logs that are shared.
var fenced = strings.Fields("C log math/rand net net/http os os/exec plugin syscall unsafe")

// unfenced are the packages of model that are there to touch files.
var unfenced = strings.Fields("model/store model/store/keep")

func TestLayers(t *testing.T) {
	met := map[string]bool{}
	root := os.DirFS("..")
	err := fs.WalkDir(root, ".", func(name string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir() && name != "." && (d.Name() == "testdata" || strings.HasPrefix(d.Name(), ".")):
			return fs.SkipDir
		case d.IsDir(), path.Ext(name) != ".go":
			return nil
		}
		imports, err := importsOf(root, name)
		if err != nil {
			return err
		}
		dir := path.Dir(name)
		key, ok := layerOf(dir)
		if !ok {
			t.Errorf("%s is not in the layer table: %s", dir, name)
			return nil
		}
		met[key] = true
		if strings.HasSuffix(name, "_test.go") {
			for _, imp := range imports {
				if !testAdmits(dir, imp) {
					t.Errorf("%s may not import %s", name, imp)
				}
			}
			return nil
		}
		for _, imp := range imports {
			if !admits(dir, layers[key], imp) {
				t.Errorf("%s may not import %s", name, imp)
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	for _, key := range slices.Sorted(maps.Keys(layers)) {
		if !met[key] {
			t.Errorf("%s is in the layer table and not in the house", key)
		}
	}
}

func importsOf(root fs.FS, name string) ([]string, error) {
	src, err := fs.ReadFile(root, name)
	if err != nil {
		return nil, err
	}
	file, err := parser.ParseFile(token.NewFileSet(), name, src, parser.ImportsOnly)
	if err != nil {
		return nil, err
	}
	var imports []string
	for _, spec := range file.Imports {
		imp, err := strconv.Unquote(spec.Path.Value)
		if err != nil {
			return nil, err
		}
		imports = append(imports, imp)
	}
	return imports, nil
}

// layerOf is the key in the table that speaks for a folder.
func layerOf(dir string) (string, bool) {
	if _, ok := layers[dir]; ok {
		return dir, true
	}
	for up := dir; up != "."; up = path.Dir(up) {
		if _, ok := layers[up+"/"]; ok {
			return up + "/", true
		}
	}
	return "", false
}

// admits reports whether a package with the given allowance may import imp.
func admits(dir, allowed, imp string) bool {
	if host, _, _ := strings.Cut(imp, "/"); !strings.Contains(host, ".") {
		return !pure(dir) || slices.Contains(unfenced, dir) || !slices.Contains(fenced, imp)
	}
	if imp == windowApp {
		return strings.HasPrefix(dir, "cmd/") && below(allowed, imp)
	}
	return below(allowed, strings.TrimPrefix(imp, module))
}

func below(allowed, imp string) bool {
	for a := range strings.FieldsSeq(allowed) {
		if imp == strings.TrimSuffix(a, "/") || strings.HasSuffix(a, "/") && strings.HasPrefix(imp, a) {
			return true
		}
	}
	return false
}

// testAdmits reports whether a test in a folder may import imp. A test may look
// upward within the domain, but tests of the domain need no toolkit and none but
// those of cmd a screen.
func testAdmits(dir, imp string) bool {
	if pure(dir) && below("ui/ "+fyne, strings.TrimPrefix(imp, module)) {
		return false
	}
	return imp != windowApp || strings.HasPrefix(dir, "cmd/")
}

// pure reports whether a folder belongs to the part of the house without a
// window.
func pure(dir string) bool {
	top, _, _ := strings.Cut(dir, "/")
	return top == "model" || top == "export" || top == "assets"
}

// The law catches what it is there to catch.
func TestLayersCatch(t *testing.T) {
	for _, c := range []struct {
		dir, imp string
		want     bool
	}{
		{"model/geom", "math", true},
		{"model/geom", module + "model/design", false},
		{"model/warn", module + "model/report", false},
		{"model/warn", module + "ui/board", false},
		{"model/draw", "fyne.io/fyne/v2", false},
		{"model/slab", "os", false},
		{"model/slab", "C", false},
		{"model/store", "os", true},
		{"export/raster", module + "ui", false},
		{"export/raster", "os", false},
		{"ui/board", "fyne.io/fyne/v2/canvas", true},
		{"ui/board", windowApp, false},
		{"cmd/castwright", windowApp, true},
		{"cmd/castsheet", windowApp, false},
		{"cmd/castsheet", "fyne.io/fyne/v2", false},
		{"cmd/castsheet", module + "ui/session", false},
		{"cmd/dev", "github.com/spf13/cobra", false},
	} {
		key, ok := layerOf(c.dir)
		if got := ok && admits(c.dir, layers[key], c.imp); got != c.want {
			t.Errorf("%s importing %s: admitted %v, want %v", c.dir, c.imp, got, c.want)
		}
	}
	if _, ok := layerOf("model/unheardof"); ok {
		t.Error("a package of model that is not in the table passes")
	}
	if testAdmits("model/warn", "fyne.io/fyne/v2/test") || testAdmits("ui/board", windowApp) ||
		!testAdmits("model/warn", module+"model/report") {
		t.Error("tests: the toolkit passes in model, the window in ui, or a look upward does not")
	}
}
