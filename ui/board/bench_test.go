package board_test

import (
	"fmt"
	"math"
	"testing"
	"time"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/board"
	"example.org/castwright/ui/session"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
)

// full is a top with one of everything.
func full() design.Design {
	d := plain()
	d.Outline = edit.LShape(1800*mm, 600*mm, 600*mm, 1500*mm, 80*mm)
	d.Outline.Nodes[3].Edge = design.Edge{Curve: design.CurveSpline, C1: at(1850, 1100), C2: at(1750, 1300)}
	d.Finish = design.Finish{Colour: design.Colour{R: 0x9a, G: 0x94, B: 0x8a}, Exposure: design.ExposureCoarse,
		Polish: 3, Grind: 3 * mm}
	d.Sinks = []design.Sink{{ID: "sink-1", At: at(1000, 1200), Shape: design.Shape{Kind: design.ShapeD,
		Width: 500 * mm, Depth: 360 * mm, CornerRadius: 40 * mm, Bow: 90 * mm},
		Reveal: design.Reveal{Kind: design.RevealRimShows, Size: 3 * mm}}}
	d.Taps = []design.TapSet{{ID: "taps-1", Pattern: design.TapThree8, Sink: "sink-1", SetBack: 60 * mm, Diameter: 35 * mm}}
	d.Holes = []design.Hole{{ID: "hole-1", At: at(1400, 1200), Diameter: 45 * mm}}
	d.Channels = []design.Channel{{ID: "channel-1", Depth: 12 * mm, Rivers: []design.River{{Nodes: []design.RiverNode{
		{At: at(120, -10), Width: 60 * mm}, {At: at(300, 400), Width: 40 * mm},
		{At: at(250, 800), Width: 80 * mm}, {At: at(450, 1150), Width: 50 * mm}}, Start: design.EndOpen}},
		Fill: design.Fill{Resin: true, Colour: design.Colour{R: 0x2e, G: 0x7d, B: 0x8c}, Opacity: 60 * units.Percent}}}
	d.Glass = []design.GlassBed{{ID: "glass-1", Grain: 8 * mm, Coverage: 50 * units.Percent, Depth: 9 * mm,
		Colour: design.Colour{R: 0x6f, G: 0xb3, B: 0xa8},
		Region: design.Region{Outer: []design.Node{{At: at(1500, 1000)}, {At: at(1740, 1000)}, {At: at(1740, 1400)}}}}}
	d.Supports = []design.Support{
		{ID: "support-1", Kind: design.SupportGable, Width: 18 * mm, Line: []design.Point{at(620, 950), at(620, 1500)}},
		{ID: "support-2", Kind: design.SupportGable, Width: 18 * mm, Line: []design.Point{at(1750, 950), at(1750, 1500)}},
		{ID: "support-3", Kind: design.SupportWall, Width: 20 * mm, Line: []design.Point{at(0, 1490), at(1800, 1490)}}}
	return d
}

// wavy is a top of n points: the corners of its outline and a sink.
func wavy(n int) design.Design {
	d := plain()
	n--
	d.Outline.Nodes = make([]design.Node, n)
	for i := range d.Outline.Nodes {
		a := 2 * math.Pi * float64(i) / float64(n)
		r := 1 + 0.02*math.Sin(40*a)
		d.Outline.Nodes[i].At = at(900+900*r*math.Cos(a), 450+450*r*math.Sin(a))
	}
	d.Sinks[0].At = at(900, 450)
	return d
}

func benchDesk(b *testing.B, d design.Design, w, h float32) (*board.Board, *session.Session) {
	test.NewTempApp(b)
	s := session.New(design.Job{Options: []design.Option{{Name: "A", Design: d}}}, "")
	win := test.NewWindow(nil)
	b.Cleanup(win.Close)
	k := board.New(s, win)
	win.SetPadded(false)
	win.SetContent(k)
	win.Resize(fyne.NewSize(w, h))
	k.Draw(int(w), int(h))
	return k, s
}

// BenchmarkDragStep is a whole step of a drag, from the toolkit's event to the
// finished picture: the edit, the report of the changed design, base and
// overlay at 1400 x 900. A corner of the outline is dragged.
func BenchmarkDragStep(b *testing.B) {
	for _, tt := range []struct {
		name   string
		design design.Design
		node   int
	}{
		{"demo", full(), 0},
		{"n=200", wavy(200), 20}, {"n=2000", wavy(2000), 200}, {"n=20000", wavy(20000), 2000},
	} {
		b.Run(tt.name, func(b *testing.B) {
			k, s := benchDesk(b, tt.design, 1400, 900)
			n := tt.design.Outline.Nodes[tt.node].At
			at := k.View().Point(vec(n))
			from := fyne.NewPos(float32(at.X), float32(at.Y))
			k.SetClock(func() time.Time { return time.Time{} })
			k.MouseDown(mouse(from, desktop.MouseButtonPrimary))
			i := 0
			b.ReportAllocs()
			for b.Loop() {
				i++
				p := from.AddXY(float32(20+i%40), float32(-20-i%30))
				k.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: p}})
				k.Draw(1400, 900)
			}
			b.StopTimer()
			k.DragEnd()
			if s.UndoName() != "Move corner" {
				b.Fatalf("the drag was %q", s.UndoName())
			}
		})
	}
}

// BenchmarkDragSink is a step of a drag that leaves the outline as it is.
func BenchmarkDragSink(b *testing.B) {
	for _, tt := range []struct {
		name   string
		design design.Design
	}{{"demo", full()}, {"n=2000", wavy(2000)}} {
		b.Run(tt.name, func(b *testing.B) {
			k, s := benchDesk(b, tt.design, 1400, 900)
			at := k.View().Point(vec(tt.design.Sinks[0].At))
			from := fyne.NewPos(float32(at.X), float32(at.Y))
			k.MouseDown(mouse(from, desktop.MouseButtonPrimary))
			i := 0
			b.ReportAllocs()
			for b.Loop() {
				i++
				p := from.AddXY(float32(10+i%40), float32(-10-i%30))
				k.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: p}})
				k.Draw(1400, 900)
			}
			b.StopTimer()
			k.DragEnd()
			if s.UndoName() != "Move sink" {
				b.Fatalf("the drag was %q", s.UndoName())
			}
		})
	}
}

// BenchmarkRedraw draws the whole base and overlay of the demo anew.
func BenchmarkRedraw(b *testing.B) {
	for _, size := range [][2]int{{1400, 900}, {2880, 1800}} {
		b.Run(fmt.Sprintf("%dx%d", size[0], size[1]), func(b *testing.B) {
			k, _ := benchDesk(b, full(), 1400, 900)
			b.ReportAllocs()
			for b.Loop() {
				k.Stale()
				k.Draw(size[0], size[1])
			}
		})
	}
}

// BenchmarkLook is a step of panning and of zooming on the demo.
func BenchmarkLook(b *testing.B) {
	k, _ := benchDesk(b, full(), 1400, 900)
	at := fyne.NewPos(700, 450)
	b.Run("pan", func(b *testing.B) {
		k.MouseDown(mouse(at, desktop.MouseButtonTertiary))
		i := 0
		b.ReportAllocs()
		for b.Loop() {
			i++
			k.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: at.AddXY(float32(i%80), float32(i%50))}})
			k.Draw(1400, 900)
		}
		k.DragEnd()
	})
	b.Run("zoom", func(b *testing.B) {
		i := 0
		b.ReportAllocs()
		for b.Loop() {
			i++
			dy := float32(25)
			if i%16 >= 8 {
				dy = -25
			}
			k.Scrolled(&fyne.ScrollEvent{PointEvent: fyne.PointEvent{Position: at}, Scrolled: fyne.Delta{DY: dy}})
			k.Draw(1400, 900)
		}
	})
}

// BenchmarkHover is a move of the mouse that only looks for what lies under it.
func BenchmarkHover(b *testing.B) {
	for _, n := range []int{2000, 20000} {
		b.Run(fmt.Sprintf("n=%d", n), func(b *testing.B) {
			k, _ := benchDesk(b, wavy(n), 1400, 900)
			i := 0
			b.ReportAllocs()
			for b.Loop() {
				i++
				k.MouseMoved(mouse(fyne.NewPos(float32(100+i%1000), 400), 0))
				k.Draw(1400, 900)
			}
		})
	}
}

// BenchmarkFinish is what a finish never met before takes of the main goroutine;
// the rest is done in the background.
func BenchmarkFinish(b *testing.B) {
	for _, size := range [][2]int{{1400, 900}, {2560, 1440}} {
		b.Run(fmt.Sprintf("%dx%d", size[0], size[1]), func(b *testing.B) {
			k, s := benchDesk(b, full(), float32(size[0]), float32(size[1]))
			var works []func() func()
			k.Background(func(work func() func()) { works = append(works, work) })
			b.ReportAllocs()
			i := 0
			for b.Loop() {
				i++
				f := full().Finish
				f.Colour = design.Colour{R: uint8(i), G: uint8(i >> 8), B: 0x80}
				if err := s.Do(edit.SetFinish(f)); err != nil {
					b.Fatal(err)
				}
				k.Draw(size[0], size[1])
				b.StopTimer()
				for len(works) > 0 {
					work := works[0]
					works = works[1:]
					then := work()
					b.StartTimer()
					then()
					k.Draw(size[0], size[1])
					b.StopTimer()
				}
				b.StartTimer()
			}
		})
	}
}
