package keys

import "fyne.io/fyne/v2"

// What is done to the photo-like picture.
const (
	ShowPicture    ID = "show-picture"
	PictureFront   ID = "picture-front"
	PictureAbove   ID = "picture-above"
	PictureNear    ID = "picture-near"
	PictureLeft    ID = "picture-left"
	PictureRight   ID = "picture-right"
	PictureUp      ID = "picture-up"
	PictureDown    ID = "picture-down"
	PictureWall    ID = "picture-wall"
	PictureCabinet ID = "picture-cabinet"
	PictureLegs    ID = "picture-legs"
	SavePhoto      ID = "save-photo"
)

// picturing is what the menu Show has.
var picturing = []Action{
	{ID: ShowPicture, Menu: "Show", Name: "Show as a picture", Key: Key{fyne.KeyF12, alt},
		Does: "Gives the whole screen to a picture of the top as it will look; P there changes to the drawing."},
	{ID: SavePhoto, Menu: "Show", Name: "Save the picture…", Key: Key{fyne.KeyS, alt},
		Does: "Writes the photo-like picture, from where it is seen, up to 3840 pixels wide."},
	{ID: PictureFront, Menu: "Show", Name: "From the front", Key: Key{fyne.Key1, alt}, Group: true,
		Does: "Looks at the whole top from the front and above; on the picture 1 does the same."},
	{ID: PictureAbove, Menu: "Show", Name: "Straight from above", Key: Key{fyne.Key2, alt},
		Does: "Looks straight down, to scale; on the picture 2 does the same."},
	{ID: PictureNear, Menu: "Show", Name: "From near", Key: Key{fyne.Key3, alt},
		Does: "Looks at the front edge from near; a click on the picture looks at any place, Esc goes back."},
	{ID: PictureLeft, Menu: "Show", Name: "Walk to the left", Key: Key{fyne.KeyLeft, alt}, Group: true,
		Does: "Takes the eye round the top; on the picture dragging or the left arrow does the same."},
	{ID: PictureRight, Menu: "Show", Name: "Walk to the right", Key: Key{fyne.KeyRight, alt},
		Does: "Takes the eye round the top; on the picture dragging or the right arrow does the same."},
	{ID: PictureUp, Menu: "Show", Name: "Look from higher", Key: Key{fyne.KeyUp, alt},
		Does: "Lifts the eye; on the picture dragging or the up arrow does the same."},
	{ID: PictureDown, Menu: "Show", Name: "Look from lower", Key: Key{fyne.KeyDown, alt},
		Does: "Lowers the eye; on the picture dragging or the down arrow does the same."},
	{ID: PictureWall, Menu: "Show", Name: "Walls", Key: Key{fyne.KeyW, alt}, Group: true,
		Does: "Puts walls at the wall edges, or leaves them out; on the picture W does the same."},
	{ID: PictureCabinet, Menu: "Show", Name: "Cabinet below", Key: Key{fyne.KeyC, alt},
		Does: "Puts a plain cabinet below the top, or nothing; on the picture C does the same."},
	{ID: PictureLegs, Menu: "Show", Name: "Legs below", Key: Key{fyne.KeyL, alt},
		Does: "Puts the top on legs, the design's own if it has some, or on nothing; on the picture L does the same."},
}
