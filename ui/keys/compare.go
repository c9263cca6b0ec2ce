package keys

import "fyne.io/fyne/v2"

// What is done while two options are looked at side by side.
const (
	ComparePicture ID = "compare-picture"
	CompareFrom    ID = "compare-from"
	CompareOver    ID = "compare-over"
	CompareScale   ID = "compare-scale"
	CompareMarks   ID = "compare-marks"
	CompareSame    ID = "compare-same"
	CompareSwap    ID = "compare-swap"
	CompareStop    ID = "compare-stop"
)

// comparing is what the menu Options has for two options side by side. While they
// are, most have a plain letter too; package compare reads it.
var comparing = []Action{
	{ID: ComparePicture, Menu: "Options", Name: "Compared as pictures", Key: Key{fyne.KeyJ, Ctrl | alt}, Group: true, Guard: Looks,
		Does: "Compares photo-like pictures, or drawings to scale; P does the same."},
	{ID: CompareFrom, Menu: "Options", Name: "Pictures from above", Key: Key{fyne.KeyV, Ctrl | alt}, Guard: Looks,
		Does: "Takes the compared pictures from straight above, to scale, or from the front; V does the same."},
	{ID: CompareOver, Menu: "Options", Name: "One over the other", Key: Key{fyne.KeyO, Ctrl | alt}, Guard: Looks,
		Does: "Lays the compared two over each other with a line that wipes from one to the other, or side by side; O does the same."},
	{ID: CompareScale, Menu: "Options", Name: "Each as large as fits", Key: Key{fyne.KeyY, Ctrl | alt}, Guard: Looks,
		Does: "Shows each of the compared two as large as fits, or both at one scale; S does the same."},
	{ID: CompareMarks, Menu: "Options", Name: "Mark what differs", Key: Key{fyne.KeyN, Ctrl | alt}, Guard: Looks,
		Does: "Marks what differs on both sides, with the numbers of the list; M does the same."},
	{ID: CompareSame, Menu: "Options", Name: "List what is the same too", Key: Key{fyne.KeyB, Ctrl | alt}, Guard: Looks,
		Does: "Lists what is the same in both beside what differs; L does the same."},
	{ID: CompareSwap, Menu: "Options", Name: "Change sides", Key: Key{fyne.KeyX, Ctrl | alt}, Guard: Looks,
		Does: "Puts the left one at the right; X does the same."},
	{ID: CompareStop, Menu: "Options", Name: "Stop or go on with the pictures", Key: Key{fyne.KeyQ, Ctrl | alt}, Guard: Looks,
		Does: "Stops the pictures that are being taken, or takes them further."},
}
