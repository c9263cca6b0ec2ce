package ui

import (
	"example.org/castwright/ui/keys"
	"example.org/castwright/ui/room"
)

// bindRoom says what the actions of the client's room mean.
func (w *window) bindRoom(b map[keys.ID]keys.Binding) {
	b[keys.Room] = keys.Binding{
		Do: func() {
			if w.rooming() {
				w.closeRoom()
				return
			}
			w.settle()
			w.openRoom()
		},
		Enabled: func() bool { return w.rooming() || !w.covered() },
		Checked: w.rooming,
	}
	b[keys.RoomPhoto] = keys.Binding{
		Do: func() {
			w.settle()
			if !w.rooming() {
				w.openRoom()
			}
			w.room.Choose()
		},
		Enabled: b[keys.Room].Enabled,
	}
	b[keys.RoomCompose] = keys.Binding{Do: func() { w.settle(); w.room.Compose() },
		Enabled: func() bool { return w.rooming() && w.room.CanSave() }}
	b[keys.RoomSave] = keys.Binding{Do: func() { w.settle(); w.room.Save() },
		Enabled: func() bool { return w.rooming() && w.room.CanSave() }}
	b[keys.RoomRemove] = keys.Binding{Do: func() { w.settle(); w.room.Remove() },
		Enabled: func() bool { return w.rooming() && !w.session.Job().Room.None() }}
}

func (w *window) rooming() bool { return w.room.Shown() }

// openRoom shows the option in hand in the client's room.
func (w *window) openRoom() {
	w.cover()
	w.win.Canvas().Unfocus()
	w.room.Open()
	w.lookAgain()
}

// closeRoom goes back to the drawing.
func (w *window) closeRoom() {
	w.room.Close()
	w.hint.over("")
	w.main.Show()
	w.lookAgain()
}

// dropPhoto takes a photograph of the room that was dropped on the window.
func (w *window) dropPhoto(path string) bool {
	if !room.Can(path) || w.frame.Busy() || w.covered() && !w.rooming() {
		return false
	}
	w.settle()
	if !w.rooming() {
		w.openRoom()
	}
	w.room.Bring(path)
	return true
}
