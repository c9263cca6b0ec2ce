package keys

import "fyne.io/fyne/v2"

// What is drawn, and what is done to edges.
const (
	BringIn      ID = "bring-in"
	DrawOutline  ID = "draw-outline"
	DrawRiver    ID = "draw-river"
	DrawRegion   ID = "draw-region"
	DrawGlass    ID = "draw-glass"
	DrawSupport  ID = "draw-support"
	DrawFreehand ID = "draw-freehand"
	PaintGlass   ID = "paint-glass"
	WipeGlass    ID = "wipe-glass"
	LineBank     ID = "line-bank"
	FillGlass    ID = "fill-glass"
	EdgeSpline   ID = "edge-spline"
	EdgeThrough  ID = "edge-through"
	EdgeStraight ID = "edge-straight"
	EdgeCorner   ID = "edge-corner"
	EdgeJoin     ID = "edge-join"
	CornerSmooth ID = "corner-smooth"
	ScribeEdge   ID = "scribe-edge"
	MirrorPart   ID = "mirror-part"
	KeepPart     ID = "keep-part"
	ShowBook     ID = "show-book"
)

// drawing is the menu of what is drawn by hand.
var drawing = []Action{
	{ID: DrawOutline, Menu: "Draw", Name: "Outline, point by point", Key: Key{fyne.KeyF2, Ctrl},
		Does: "Draws the outline of the top corner by corner."},
	{ID: EdgeSpline, Menu: "Draw", Name: "Make the edge a curve", Key: Key{fyne.KeyF3, Ctrl}, Group: true,
		Does: "Turns the selected edge into a spline with two handles to shape it."},
	{ID: EdgeThrough, Menu: "Draw", Name: "Draw the edge through points", Key: Key{fyne.KeyF3, alt},
		Does: "Draws the selected edge, or the one beside the first click, through points: an arc through one, a smooth curve through more."},
	{ID: EdgeStraight, Menu: "Draw", Name: "Straighten the edge", Key: Key{fyne.KeyF3, Ctrl | shift},
		Does: "Makes the selected edge straight."},
	{ID: EdgeCorner, Menu: "Draw", Name: "Add a corner", Key: Key{fyne.KeyF2, Ctrl | shift},
		Does: "Puts a corner into the middle of the selected edge; a double click puts one anywhere."},
	{ID: EdgeJoin, Menu: "Draw", Name: "Join edges", Key: Key{fyne.KeyJ, Ctrl | shift},
		Does: "Makes one edge of the two at the selected corner, or of the selected edge and the next."},
	{ID: CornerSmooth, Menu: "Draw", Name: "Smooth the corner", Key: Key{fyne.KeyM, Ctrl | shift},
		Does: "Lets the two edges at the selected corner run into each other without a bend."},
	{ID: ScribeEdge, Menu: "Draw", Name: "Scribe to a wall…", Key: Key{fyne.KeyW, Ctrl | shift},
		Does: "Takes the measured offsets of a wall that is not straight for the selected edge."},
	{ID: DrawFreehand, Menu: "Draw", Name: "River, freehand", Key: Key{fyne.KeyF, Ctrl | shift}, Group: true,
		Does: "Draws a river in one stroke, fitted smoothly; from a channel on it is a branch, round an area a pool."},
	{ID: DrawRiver, Menu: "Draw", Name: "River, point by point", Key: Key{fyne.KeyF7, Ctrl},
		Does: "Draws the middle of a river point by point."},
	{ID: DrawRegion, Menu: "Draw", Name: "Pool, point by point", Key: Key{fyne.KeyF7, Ctrl | shift},
		Does: "Draws a recess of any shape point by point."},
	{ID: PaintGlass, Menu: "Draw", Name: "Paint glass", Key: Key{fyne.KeyB, Ctrl}, Group: true,
		Does: "Paints a bed of glass with a round brush."},
	{ID: WipeGlass, Menu: "Draw", Name: "Wipe glass away", Key: Key{fyne.KeyB, Ctrl | shift},
		Does: "Takes glass out of beds with a round brush."},
	{ID: LineBank, Menu: "Draw", Name: "Glass along a bank", Key: Key{fyne.KeyF8, Ctrl | shift},
		Does: "Lays a strip of glass along the bank of a channel."},
	{ID: FillGlass, Menu: "Draw", Name: "Fill with glass", Key: Key{fyne.KeyL, Ctrl | shift},
		Does: "Fills what lies between edges, banks and holes with glass."},
	{ID: DrawGlass, Menu: "Draw", Name: "Glass bed, point by point", Key: Key{fyne.KeyF8, Ctrl},
		Does: "Draws a bed of glass point by point."},
	{ID: DrawSupport, Menu: "Draw", Name: "Support", Key: Key{fyne.KeyF10, Ctrl}, Group: true,
		Does: "Draws the line that something carries the top along."},
}
