package ui

import (
	"example.org/castwright/ui/board"
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
}
