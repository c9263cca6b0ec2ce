package ui

import (
	"example.org/castwright/ui/board"
	"example.org/castwright/ui/bring"
	"example.org/castwright/ui/keys"
)

// bindDrawing says what the actions of the menu Draw mean in this window.
func (w *window) bindDrawing(change func(keys.ID, func())) {
	for id, t := range map[keys.ID]board.Tool{
		keys.DrawOutline: board.Outline, keys.DrawRiver: board.River, keys.DrawRegion: board.Region,
		keys.DrawGlass: board.Glass, keys.DrawSupport: board.Support, keys.DrawFreehand: board.Freehand,
		keys.PaintGlass: board.Brush, keys.WipeGlass: board.Eraser, keys.LineBank: board.Bank,
		keys.FillGlass: board.Flood,
	} {
		change(id, func() { w.board.SetTool(t) })
	}
	change(keys.BringIn, func() { w.bringIn(bring.Top) })
}

// bringIn asks for a drawing to take an outline from.
func (w *window) bringIn(as bring.As) { w.bring.Choose(w.files.Folder(), as) }

// dropDrawing takes an outline from a drawing that was dropped on the window.
func (w *window) dropDrawing(path string) bool {
	if !bring.Can(path) || w.frame.Busy() || w.comparing() {
		return false
	}
	w.settle()
	w.bring.Open(path, bring.Top)
	return true
}
