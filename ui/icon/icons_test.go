package icon_test

import (
	"encoding/xml"
	"go/ast"
	"go/parser"
	"go/token"
	"strings"
	"testing"

	"example.org/castwright/ui/icon"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/software"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
)

var some = []fyne.Resource{
	icon.Shape, icon.Edge, icon.Sink, icon.Taps, icon.Hole, icon.Channel, icon.Glass, icon.Finish, icon.Supports,
	icon.Undo, icon.Redo, icon.Severe, icon.Caution, icon.Note,
}

// TestFillOnly holds the family to areas: the toolkit recolours fill alone.
func TestFillOnly(t *testing.T) {
	for _, r := range some {
		var svg struct {
			Paths []struct {
				Fill   string `xml:"fill,attr"`
				Stroke string `xml:"stroke,attr"`
				D      string `xml:"d,attr"`
			} `xml:"path"`
		}
		if err := xml.Unmarshal(r.Content(), &svg); err != nil {
			t.Errorf("%s: %v", r.Name(), err)
			continue
		}
		if len(svg.Paths) != 1 || svg.Paths[0].Fill == "" || svg.Paths[0].Stroke != "" {
			t.Errorf("%s is not one filled path", r.Name())
		}
		if n := strings.Count(svg.Paths[0].D, "M"); n == 0 || n != strings.Count(svg.Paths[0].D, "Z") {
			t.Errorf("%s has areas that are not closed", r.Name())
		}
	}
}

// TestEveryIconShows draws each icon of the family as small as it is used.
func TestEveryIconShows(t *testing.T) {
	test.NewTempApp(t)
	for _, r := range some {
		img := canvas.NewImageFromResource(r)
		img.SetMinSize(fyne.NewSquareSize(18))
		pic := software.Render(img, theme.DefaultTheme())
		seen := 0
		ground := pic.At(0, 0)
		for y := range pic.Bounds().Dy() {
			for x := range pic.Bounds().Dx() {
				if pic.At(x, y) != ground {
					seen++
				}
			}
		}
		if seen < 40 {
			t.Errorf("%s marks %d of %d pixels", r.Name(), seen, pic.Bounds().Dx()*pic.Bounds().Dy())
		}
	}
}

// TestNamesAreTheirOwn reads the source: the toolkit keeps pictures by name, so
// two icons of one name would look alike.
func TestNamesAreTheirOwn(t *testing.T) {
	f, err := parser.ParseFile(token.NewFileSet(), "icons.go", nil, 0)
	if err != nil {
		t.Fatal(err)
	}
	names := map[string]bool{}
	ast.Inspect(f, func(n ast.Node) bool {
		call, ok := n.(*ast.CallExpr)
		if !ok || len(call.Args) == 0 {
			return true
		}
		if fn, ok := call.Fun.(*ast.Ident); !ok || fn.Name != "draw" {
			return true
		}
		name := call.Args[0].(*ast.BasicLit).Value
		if names[name] {
			t.Errorf("two icons are called %s", name)
		}
		names[name] = true
		return true
	})
	if len(names) < 40 {
		t.Errorf("%d icons were found, want the family", len(names))
	}
}
