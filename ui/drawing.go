package ui

import (
	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/ui/board"
	"example.org/castwright/ui/bring"
	"example.org/castwright/ui/keys"
	"example.org/castwright/ui/session"
)

// bindDrawing says what the actions of the menu Draw mean in this window.
func (w *window) bindDrawing(b map[keys.ID]keys.Binding, change func(keys.ID, func())) {
	for id, t := range map[keys.ID]board.Tool{
		keys.DrawOutline: board.Outline, keys.DrawRiver: board.River, keys.DrawRegion: board.Region,
		keys.DrawGlass: board.Glass, keys.DrawSupport: board.Support, keys.DrawFreehand: board.Freehand,
		keys.PaintGlass: board.Brush, keys.WipeGlass: board.Eraser, keys.LineBank: board.Bank,
		keys.FillGlass: board.Flood, keys.EdgeThrough: board.Through,
	} {
		change(id, func() { w.board.SetTool(t) })
	}
	change(keys.BringIn, func() { w.bringIn(bring.Top) })
	w.bindEdges(b)
	change(keys.KeepPart, func() { w.parts.Book.AskToKeep(w.session) })
	change(keys.ShowBook, func() { w.parts.ShowBook() })
}

// bindEdges says what is done to the selected edge or corner.
func (w *window) bindEdges(b map[keys.ID]keys.Binding) {
	on := func(id keys.ID, edges, corners bool, do func(at int, corner bool)) {
		fits := func() (session.Pick, bool) {
			sel := w.session.Selection()
			if len(sel) != 1 || sel[0].Part != "" || sel[0].Node < 0 ||
				sel[0].Node >= len(w.session.Design().Outline.Nodes) {
				return session.Pick{}, false
			}
			return sel[0], sel[0].Edge && edges || !sel[0].Edge && corners
		}
		what := "an edge"
		switch {
		case edges && corners:
			what = "an edge or a corner"
		case corners:
			what = "a corner"
		}
		b[id] = keys.Binding{
			Do: func() {
				w.settle()
				if p, ok := fits(); ok {
					do(p.Node, !p.Edge)
				}
			},
			Enabled: func() bool { return !w.covered() },
			Why: func() string {
				if _, ok := fits(); ok {
					return ""
				}
				return "it is for " + what + " of the outline: pick one first"
			},
		}
	}
	curve := func(kind design.CurveKind) func(int, bool) {
		return func(at int, _ bool) { w.do(w.session.Do(edit.SetEdgeCurve(at, kind))) }
	}
	on(keys.EdgeSpline, true, false, curve(design.CurveSpline))
	on(keys.EdgeStraight, true, false, curve(design.CurveStraight))
	on(keys.EdgeCorner, true, false, func(at int, _ bool) {
		if middle, ok := edit.OnEdge(w.session.Design(), at, 0.5); ok && w.do(w.session.Do(edit.InsertNode(at, middle))) {
			w.session.Select(session.Pick{Node: at + 1})
		}
	})
	on(keys.EdgeJoin, true, true, func(at int, corner bool) {
		if corner {
			at = (at + len(w.session.Design().Outline.Nodes) - 1) % len(w.session.Design().Outline.Nodes)
		}
		last := at == len(w.session.Design().Outline.Nodes)-1
		if w.do(w.session.Do(edit.JoinEdges(at))) {
			if last { // the first corner went, and the others count one less
				at--
			}
			w.session.Select(session.Pick{Node: at, Edge: true})
		}
	})
	on(keys.CornerSmooth, false, true, func(at int, _ bool) { w.do(w.session.Do(edit.SmoothCorner(at))) })
	on(keys.ScribeEdge, true, false, func(at int, _ bool) { w.scribe.Show(at) })
}

// bringIn asks for a drawing to take an outline from.
func (w *window) bringIn(as bring.As) { w.bring.Choose(w.files.Folder(), as) }

// dropDrawing takes an outline from a drawing that was dropped on the window.
func (w *window) dropDrawing(path string) bool {
	if w.dropPhoto(path) {
		return true
	}
	if !bring.Can(path) || w.frame.Busy() || w.comparing() || w.rooming() {
		return false
	}
	w.settle()
	w.bring.Open(path, bring.Top)
	return true
}
