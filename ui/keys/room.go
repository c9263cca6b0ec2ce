package keys

import "fyne.io/fyne/v2"

// What is done in the client's room.
const (
	Room        ID = "room"
	RoomPhoto   ID = "room-photo"
	RoomCompose ID = "room-compose"
	RoomSave    ID = "room-save"
	RoomRemove  ID = "room-remove"
)

// rooming is the client's room, in the menu of what is seen.
var rooming = []Action{
	{ID: Room, Menu: "Show", Name: "In the client's room", Key: Key{fyne.KeyF12, Ctrl}, Group: true,
		Does: "Sets the option in hand into a photograph of the client's room."},
	{ID: RoomPhoto, Menu: "Show", Name: "Photograph of the room…", Key: Key{fyne.KeyF12, Ctrl | shift},
		Does: "Chooses the photograph; it is kept beside the job as it is."},
	{ID: RoomCompose, Menu: "Show", Name: "Set the top into the room", Key: Key{fyne.KeyReturn, Ctrl},
		Does: "Makes the picture of the room with the new top from the corners that are marked."},
	{ID: RoomSave, Menu: "Show", Name: "Save the room's picture…", Key: Key{fyne.KeyS, Ctrl | alt},
		Does: "Writes the room with the new top as a picture; it holds nothing of where the photograph was taken."},
	{ID: RoomRemove, Menu: "Show", Name: "Take the room out", Key: Key{fyne.KeyDelete, Ctrl | shift},
		Does: "Takes the room out of the job; the photograph's file stays where it is."},
}
