//go:build window

package main_test

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/store"
	"example.org/castwright/model/units"
)

// stroke draws along places of the drawing, in millimetres, and lets go.
func (m *maker) stroke(words string, places [][2]float64) {
	m.t.Helper()
	s, err := m.state()
	if err != nil {
		m.t.Fatal(err)
	}
	m.count("stroke: %s", words)
	m.move(s.Board.place(places[0][0], places[0][1]))
	m.down()
	for _, p := range places[1:] {
		m.move(s.Board.place(p[0], p[1]))
	}
	m.up()
}

// TestStrokes draws what is drawn by strokes in the real window, brings a sink in
// from a file, scribes the back to a wall and keeps the sink: what stands in the
// files is what was meant.
func TestStrokes(t *testing.T) {
	d := startDisplay(t, screenW, screenH)
	home := t.TempDir()
	path := writeJob(t, home)
	m := newMaker(t, start(t, d, home, path), d.hand(t))
	m.wait("the job is open", func(s state) bool { return s.Path == path })
	says := func(words string) func(state) bool {
		return func(s state) bool { return strings.Contains(s.Hint, words) }
	}
	selected := func(id string) func(state) bool {
		return func(s state) bool { return len(s.Selection) == 1 && s.Selection[0] == id }
	}

	// A river from beyond the left edge, and a branch of it over the front.
	m.press("ctrl+shift+f", "a river in one stroke", says("in one stroke"))
	var river, branch, paint [][2]float64
	for i := range 40 {
		x := -40 + 18*float64(i)
		river = append(river, [2]float64{x, 330 + 50*math.Sin(x/110)})
	}
	for i := range 24 {
		branch = append(branch, [2]float64{330 + 6*float64(i), 335 - 16*float64(i)})
	}
	m.stroke("river", river)
	m.wait("the river is fitted", func(s state) bool { return selected("channel-1")(s) && says("Fitted with ")(s) })
	m.stroke("branch", branch)
	m.wait("it is a branch", says("a branch of the channel"))
	d.shootStill(t, "strokes-1-river")
	m.press("Escape", "the tool is put down", func(s state) bool { return !says("Fitted")(s) })

	// Glass, with a brush of a typed size.
	m.press("ctrl+b", "a brush", says("paint glass"))
	m.value("Brush", "90", "Return", "the brush has its size", func(s state) bool { return s.Typing == nil })
	for i := range 20 {
		paint = append(paint, [2]float64{850 + 12*float64(i), 480 + 20*math.Sin(float64(i)/4)})
	}
	m.stroke("glass", paint)
	m.wait("a bed of glass", selected("glass-1"))
	d.shootStill(t, "strokes-2-glass")
	m.press("Escape", "the tool is put down", func(s state) bool { return !says("paint glass")(s) })

	// The back edge along a wall.
	s, err := m.state()
	if err != nil {
		t.Fatal(err)
	}
	m.click(s.Board.place(760, 600))
	m.wait("the back edge is selected", selected("edge 2"))
	m.press("ctrl+shift+w", "the table of offsets", func(s state) bool { return s.Busy })
	for _, text := range []string{"300", "4", "700", "7"} {
		m.write(text)
		m.key("Return")
	}
	d.shootStill(t, "strokes-3-scribe")
	m.key("Return")
	m.wait("the edge is scribed", func(s state) bool { return !s.Busy && s.DepthMM == 607 })

	// A sink from a file that does not say its unit.
	drawing, err := filepath.Abs(filepath.Join("..", "..", "testdata", "template", "sink-R12.dxf"))
	if err != nil {
		t.Fatal(err)
	}
	m.press("ctrl+i", "a file is asked for", func(s state) bool { return s.Busy })
	m.write(drawing)
	m.key("Return")
	m.pick("The file's numbers are millimetres", "the unit is said", func(s state) bool { return s.Busy })
	m.pick("An under-mounted sink", "it is to be a sink", func(s state) bool { return s.Busy })
	d.shootStill(t, "strokes-4-bring")
	m.key("Return")
	m.wait("it is in hand", func(s state) bool { return !s.Busy && says("the sink down")(s) })
	s, err = m.state()
	if err != nil {
		t.Fatal(err)
	}
	m.click(s.Board.place(860, 240))
	m.wait("the sink is set down", selected("sink-1"))

	// It is kept under the name that is offered.
	m.press("ctrl+shift+p", "a name is asked for", func(s state) bool { return s.Busy })
	m.key("Return")
	kept := filepath.Join(home, ".config", "castwright", "book.json")
	m.until("the book is written", func() bool { _, err := os.Stat(kept); return err == nil })
	m.wait("the dialog is closed", func(s state) bool { return !s.Busy })
	d.shootStill(t, "strokes-5-kept")
	m.key("ctrl+s")
	m.wait("the job is saved", func(s state) bool { return !s.Dirty })

	job, err := store.Load(path)
	if err != nil {
		t.Fatal(err)
	}
	o, _ := job.Option("A")
	got := o.Design
	if len(got.Channels) != 1 || len(got.Channels[0].Rivers) != 2 {
		t.Fatalf("channels %+v", got.Channels)
	}
	main, arm := got.Channels[0].Rivers[0], got.Channels[0].Rivers[1]
	if main.Start != design.EndOpen || main.Nodes[0].At.X != 0 || len(main.Nodes) > 8 || arm.End != design.EndOpen {
		t.Errorf("the river is %+v, its branch %+v", main, arm)
	}
	if len(got.Relations) != 2 {
		t.Errorf("relations %v: want the two open ends tied", got.Relations)
	}
	if len(got.Glass) != 1 || len(got.Glass[0].Region.Outer) < 12 {
		t.Errorf("glass %+v", got.Glass)
	}
	at := func(x, y units.Length) design.Point { return design.Point{X: x * mm, Y: y * mm} }
	nodes := got.Outline.Nodes
	if len(nodes) != 6 || nodes[3].At != at(700, 607) || nodes[4].At != at(300, 604) {
		t.Errorf("the outline is %+v", nodes)
	}
	if len(got.Sinks) != 1 || got.Sinks[0].Shape.Kind != design.ShapePath || len(got.Sinks[0].Shape.Path) != 8 {
		t.Errorf("sinks %+v", got.Sinks)
	}
	book, err := store.Load(kept)
	if err != nil || len(book.Options) != 1 || len(book.Options[0].Design.Sinks) != 1 {
		t.Errorf("the book holds %+v, error %v", book.Options, err)
	}
	if t.Failed() {
		t.Log(strings.Join(m.log, "\n"))
	}
}
