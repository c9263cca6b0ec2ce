//go:build window && tour

package main_test

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"
	"time"
)

// TestTour takes a picture of every tool in use, in both themes, at the least size
// of the window and at a large one, for a person to look at in out/window. It is
// run by hand:
//
//	go test -tags window,tour -run TestTour -timeout 30m ./cmd/castwright
func TestTour(t *testing.T) {
	for _, size := range [][2]int{{1280, 800}, {2560, 1440}} {
		for _, theme := range []string{"light", "dark"} {
			t.Run(fmt.Sprintf("%s-%d", theme, size[0]), func(t *testing.T) { tour(t, theme, size[0], size[1]) })
		}
	}
}

// guide leads through the tour.
type guide struct {
	*maker
	display display
	name    string
}

func tour(t *testing.T, theme string, w, h int) {
	d := startDisplay(t, w, h)
	home := t.TempDir()
	dir := filepath.Join(home, ".config", "castwright")
	if err := os.MkdirAll(dir, 0o755); err != nil {
		t.Fatal(err)
	}
	settings := fmt.Sprintf(`{"imperial": true, "theme": %q, "width": %d, "height": %d}`, theme, w, h)
	if err := os.WriteFile(filepath.Join(dir, "settings.json"), []byte(settings), 0o644); err != nil {
		t.Fatal(err)
	}
	text, err := os.ReadFile("../../testdata/jobs/bowed-counter.json")
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(home, "bowed-counter.json")
	if err := os.WriteFile(path, text, 0o644); err != nil {
		t.Fatal(err)
	}
	r := start(t, d, home, path)
	r.wait("the job is open", func(s state) bool { return s.Path == path })
	g := guide{newMaker(t, r, d.hand(t)), d, fmt.Sprintf("tour-%s-%d", theme, w)}
	g.selecting()
	g.dragging()
	g.typing()
	g.drawing()
	g.strokes()
	g.inHand()
	g.cards()
}

// shot takes a picture.
func (g guide) shot(name string) {
	g.t.Helper()
	g.display.shootStill(g.t, g.name+"-"+name)
}

// at points at a place of the drawing, in inches, and lets the window see it.
func (g guide) at(x, y float64) {
	g.t.Helper()
	s, err := g.state()
	if err != nil {
		g.t.Fatal(err)
	}
	p := s.Board.place(x*25.4, y*25.4)
	g.move(at{p.X + 4, p.Y + 3})
	g.move(p)
	time.Sleep(150 * time.Millisecond)
}

func (g guide) tap(x, y float64) { g.at(x, y); g.down(); g.up(); time.Sleep(150 * time.Millisecond) }

// hold drags from a place to another and keeps the button down.
func (g guide) hold(x0, y0, x1, y1 float64) {
	g.at(x0, y0)
	g.down()
	for i := 1.0; i <= 4; i++ {
		g.at(x0+(x1-x0)*i/4, y0+(y1-y0)*i/4)
	}
}

// drop takes the drag back and lets go.
func (g guide) drop() { g.key("Escape", "Escape"); g.up(); g.key("Escape", "Escape", "Escape") }

func (g guide) selecting() {
	g.tap(50, 15)
	g.shot("select-top")
	g.tap(15, 0.35) // the bow lies a little before the chord there
	g.shot("select-edge")
	g.tap(61.5, 22)
	g.shot("select-corner")
	g.tap(30.75, 8)
	g.shot("select-sink")
	g.tap(26.75, 19.75)
	g.shot("select-taps")
	g.tap(3, 7.6)
	g.shot("select-river")
	g.tap(8, 10)
	g.shot("select-glass")
	g.tap(60.125, 10)
	g.shot("select-support")
	g.key("Escape", "Escape")
}

func (g guide) dragging() {
	g.hold(30.75, 8, 30.9, 3)
	g.shot("drag-sink-low")
	g.drop()
	g.hold(61.5, 22, 63, 23)
	g.shot("drag-corner")
	g.drop()
	g.hold(61.5, 8, 64, 8)
	g.shot("drag-edge")
	g.drop()
	g.tap(45, 0.1)
	if p, ok := spotOf(g.look().Handles, "bend"); ok {
		g.move(p)
		g.down()
		g.move(at{p.X, p.Y + 20})
		g.move(at{p.X, p.Y + 40})
		g.shot("drag-bend")
	}
	g.drop()
	g.tap(61.5, 22)
	if p, ok := spotOf(g.look().Handles, "radius"); ok {
		g.move(p)
		g.down()
		g.move(at{p.X - 20, p.Y + 20})
		g.move(at{p.X - 40, p.Y + 40})
		g.shot("drag-radius")
	}
	g.drop()
	for _, h := range []string{"width", "turn"} {
		g.tap(30.75, 8)
		if p, ok := spotOf(g.look().Handles, h); ok {
			g.move(p)
			g.down()
			g.move(at{p.X + 20, p.Y + 10})
			g.move(at{p.X + 45, p.Y + 15})
			g.shot("drag-sink-" + h)
		}
		g.drop()
	}
	g.hold(26.75, 19.75, 26.5, 18.5)
	g.shot("drag-taps")
	g.drop()
	g.tap(3, 7.6)
	g.hold(11, 7, 12, 5)
	g.shot("drag-river-node")
	g.drop()
}

func (g guide) look() state {
	time.Sleep(200 * time.Millisecond)
	s, err := g.state()
	if err != nil {
		g.t.Fatal(err)
	}
	return s
}

func (g guide) typing() {
	g.hold(30.75, 8, 28, 9)
	g.write("60 - 2*3/4")
	g.shot("type-sum")
	g.drop()
	g.key("Escape")
	g.tap(30.75, 8)
	g.write("12 bananas")
	g.key("Return")
	g.shot("type-wrong")
	g.key("Escape", "Escape")
}

func (g guide) drawing() {
	for _, draw := range []struct {
		key, name string
		points    [][2]float64
	}{
		{"ctrl+F7", "draw-river", [][2]float64{{61.5, 5}, {52, 8}, {46, 5}}},
		{"ctrl+shift+F7", "draw-pool", [][2]float64{{46, 4}, {56, 4}, {56, 9}}},
		{"ctrl+F8", "draw-glass", [][2]float64{{46, 14}, {56, 14}, {52, 19}}},
		{"ctrl+F10", "draw-support", [][2]float64{{46, 2}}},
		{"ctrl+F2", "draw-outline", [][2]float64{{0, 0}, {50, 0}, {50, 20}}},
	} {
		g.key(draw.key)
		for _, p := range draw.points {
			g.tap(p[0], p[1])
		}
		g.at(49, 11)
		g.shot(draw.name)
		if draw.name == "draw-river" {
			g.write("7 1/2")
			g.shot(draw.name + "-typed")
			g.key("Escape")
		}
		g.key("Escape", "Escape", "Escape")
	}
}

func (g guide) strokes() {
	for _, s := range []struct {
		key, name string
		points    [][2]float64
	}{
		{"ctrl+shift+F8", "bank", [][2]float64{{6, 7.2}, {6, 6.6}, {6, 5.8}}},
	} {
		g.key(s.key)
		g.stroke(s.name, s.points)
	}
	for _, says := range []string{"Draw a river in one", "Paint glass", "Take glass", "Fill what"} {
		card := map[bool]string{true: "F7", false: "F8"}[says == "Draw a river in one"]
		g.key(card)
		g.wait("the card is open", func(s state) bool { return s.Busy })
		p, ok := spotOf(g.look().Controls, says)
		if !ok {
			g.key("Escape")
			continue
		}
		g.click(p)
		g.wait("the card is shut", func(s state) bool { return !s.Busy })
		g.stroke("stroke-"+says[:4], [][2]float64{{45, 4}, {48, 7}, {52, 6}, {56, 10}})
	}
}

// stroke takes a picture in the middle of a stroke, and takes it back.
func (g guide) stroke(name string, points [][2]float64) {
	g.at(points[0][0], points[0][1])
	g.shot(name + "-before")
	g.down()
	for _, p := range points[1:] {
		g.at(p[0], p[1])
	}
	g.shot(name)
	g.key("Escape", "Escape")
	g.up()
	g.key("Escape", "Escape", "Escape")
}

func (g guide) inHand() {
	for _, put := range []struct {
		key, says, name string
		x, y            float64
	}{
		{"F4", "Under-mount, rectangular", "put-sink", 50, 10},
		{"F5", "Three holes, the outer two 8 in", "put-taps", 30.9, 19.5},
		{"F6", "A plain hole", "put-hole", 45, 19},
		{"F7", "A river that keeps", "put-river", 48, 10},
		{"F8", "Glass in an oval", "put-glass", 48, 10},
		{"F10", "The side of a cabinet", "put-gable", 45, 11},
	} {
		g.key(put.key)
		g.pick(put.says, put.name, func(s state) bool { return !s.Busy })
		g.at(put.x, put.y)
		g.shot(put.name)
		g.key("Escape", "Escape")
	}
}

func (g guide) cards() {
	for key, name := range map[string]string{"F2": "card-shape", "F3": "card-edge", "F4": "card-sink", "F5": "card-taps",
		"F6": "card-hole", "F7": "card-channel", "F8": "card-glass", "F9": "card-finish", "F10": "card-supports", "F1": "card-actions"} {
		g.key(key)
		g.wait("the card is open", func(s state) bool { return s.Busy })
		g.shot(name)
		g.key("Escape")
		g.wait("the card is shut", func(s state) bool { return !s.Busy })
	}
	p, _ := spotOf(g.look().Controls, "Opens the menu View")
	g.click(p)
	g.wait("the menu is open", func(s state) bool { return s.Busy })
	g.shot("menu-view")
	g.key("Escape")
}
