package ui

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"time"

	"example.org/castwright/model/store"
	"example.org/castwright/ui/compare"
	"example.org/castwright/ui/control"
	"fyne.io/fyne/v2"
)

// state is what a test of the real window reads.
type state struct {
	Option    string         `json:"option"`
	Path      string         `json:"path"`
	Dirty     bool           `json:"dirty"`
	WidthMM   float64        `json:"width_mm"`
	DepthMM   float64        `json:"depth_mm"`
	WeightKG  float64        `json:"weight_kg"`
	Selection []string       `json:"selection"`
	Hint      string         `json:"hint"`
	Busy      bool           `json:"busy"`  // a dialog is open
	Works     int            `json:"works"` // pictures and other long works that go on
	Seen      string         `json:"seen"`  // the view of the picture
	Tool      string         `json:"tool"`
	Saved     string         `json:"saved"`  // whether the job is saved, in words
	Undo      string         `json:"undo"`   // what undo would take back
	Typing    *typing        `json:"typing"` // a number being typed on the drawing
	Board     boardState     `json:"board"`
	Labels    []spot         `json:"labels"`   // of measures that can be clicked
	Handles   []spot         `json:"handles"`  // on the drawing
	Compare   *compare.State `json:"compare"`  // two side by side
	Room      *roomState     `json:"room"`     // the client's room, while it is shown
	Links     []spot         `json:"links"`    // the chains of relations, on the drawing
	Controls  []spot         `json:"controls"` // of the card that is open, else of the window
}

// typing is a number being typed on the drawing.
type typing struct {
	Name string `json:"name"`
	Text string `json:"text"`
	Bad  bool   `json:"bad"`
}

// spot is the middle of something in the window, in pixels.
type spot struct {
	Says  string  `json:"says"`
	Value string  `json:"value,omitempty"` // of an entry
	X     float64 `json:"x"`
	Y     float64 `json:"y"`
}

// roomState is the client's room.
type roomState struct {
	Corners []spot  `json:"corners"` // as they are seen
	Work    string  `json:"work"`    // what is being worked at
	Result  string  `json:"result"`  // the picture that is seen, "" for the corners
	Wrong   string  `json:"wrong"`   // what is wrong with the corners
	Photo   string  `json:"photo"`   // whether there is one in hand
	Held    bool    `json:"held"`    // a corner is held
	Wipe    float64 `json:"wipe"`
}

// boardState is where the drawing lies in the window, in pixels.
type boardState struct {
	X       float64 `json:"x"`
	Y       float64 `json:"y"`
	W       float64 `json:"w"`
	H       float64 `json:"h"`
	Scale   float64 `json:"scale"` // pixels to the millimetre
	OriginX float64 `json:"origin_x"`
	OriginY float64 `json:"origin_y"`
}

func (w *window) state() state {
	r, g := w.session.Report(), w.board.Geometry()
	s := state{
		Option: w.session.Option().Name, Path: w.session.Path(), Dirty: w.session.Dirty(),
		WidthMM: r.Measures.Bounds.W(), DepthMM: r.Measures.Bounds.H(), WeightKG: r.Takeoff.WeightDry.Value,
		Selection: []string{}, Hint: w.hint.text.Text(),
		Busy: w.frame.Busy(), Works: w.frame.Works(), Seen: w.showing.Seen(),
		Board: boardState{g.X, g.Y, g.W, g.H, g.PerMM, g.Origin.X, g.Origin.Y},
	}
	s.Saved = w.hint.state.Text()
	s.Tool, s.Undo = w.board.Tool().String(), w.session.UndoName()
	if n, ok := w.board.Typing(); ok {
		s.Typing = &typing{n.Name, n.Text, n.Bad}
	}
	for _, l := range w.board.Labels() {
		s.Labels = append(s.Labels, spot{Says: l.Name, X: l.At.X, Y: l.At.Y})
	}
	for _, l := range w.board.Handles() {
		s.Handles = append(s.Handles, spot{Says: l.Name, X: l.At.X, Y: l.At.Y})
	}
	for _, l := range w.board.Links() {
		s.Links = append(s.Links, spot{Says: l.Name, X: l.At.X, Y: l.At.Y})
	}
	s.Controls = w.controls()
	if w.comparing() {
		c := w.compare.State()
		s.Compare = &c
	}
	if w.rooming() {
		r := w.room.State()
		s.Room = &roomState{Work: r.Work, Result: r.Result, Wrong: r.Wrong, Photo: r.Photo, Held: r.Held, Wipe: r.Wipe}
		for i, at := range r.Corners {
			x, y := w.win.Canvas().PixelCoordinateForPosition(at)
			s.Room.Corners = append(s.Room.Corners, spot{Says: r.Names[i], X: float64(x), Y: float64(y)})
		}
	}
	for _, p := range w.session.Selection() {
		switch {
		case p.Part != "":
			s.Selection = append(s.Selection, string(p.Part))
		case p.Node < 0:
			s.Selection = append(s.Selection, "top")
		case p.Edge:
			s.Selection = append(s.Selection, fmt.Sprintf("edge %d", p.Node))
		default:
			s.Selection = append(s.Selection, fmt.Sprintf("corner %d", p.Node))
		}
	}
	return s
}

// controls are the controls of the card that is open, else of the window.
func (w *window) controls() []spot {
	c := w.win.Canvas()
	root := c.Content()
	if top := c.Overlays().Top(); top != nil {
		root = top
	}
	var out []spot
	for _, s := range control.Spots(root, fyne.Position{}) {
		x, y := c.PixelCoordinateForPosition(s.At.AddXY(s.Size.Width/2, s.Size.Height/2))
		out = append(out, spot{s.Says, s.Value, float64(x), float64(y)})
	}
	return out
}

// dumpEvery is how often the state is looked at.
const dumpEvery = 50 * time.Millisecond

// keepDumping writes the state whenever it has changed. It ends with the program.
func (w *window) keepDumping(path string) {
	var last []byte
	for range time.Tick(dumpEvery) {
		w.host.post(func() {
			text, err := json.MarshalIndent(w.state(), "", "  ")
			if err != nil || bytes.Equal(text, last) {
				return
			}
			last = text
			store.Write(path, func(f io.Writer) error { _, err := f.Write(text); return err })
		})
	}
}

// tellReady says READY once the first picture stands.
func (w *window) tellReady(args Args) {
	if args.Ready != nil {
		w.onFirstPicture(func() { w.host.post(func() { fmt.Fprintln(args.Ready, "READY") }) })
	}
}
