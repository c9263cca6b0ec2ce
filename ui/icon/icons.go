package icon

// The nouns of the trade.
var (
	Shape = draw("shape", loop(3, 5, 21, 5, 21, 11.5, 13.5, 11.5, 12.1, 12.1, 11.5, 13.5, 11.5, 19, 3,
		19))
	Edge = draw("edge", line(2.5, 6, 14, 6), arc(14, 11, 5, -90, 0), line(19, 11, 19, 18, 2.5, 18),
		line(3.5, 14.5, 8.5, 9.5), line(8, 14.5, 13, 9.5), line(12.5, 14.5, 15.5, 11.5))
	Sink = draw("sink", round(3, 8, 18, 12, 5), ring(12, 14.5, 1.4), line(12, 3, 12, 9))
	Taps = draw("taps", line(4, 20, 13, 20), line(8.5, 20, 8.5, 8.5), arc(12.5, 8.5, 4, 180, 360),
		line(16.5, 8.5, 16.5, 12), line(8.5, 14, 4.5, 12.5))
	Hole = draw("hole", ring(12, 12, 5), disc(12, 12, 1.1), line(12, 2.5, 12, 4.5),
		line(12, 19.5, 12, 21.5),
		line(2.5, 12, 4.5, 12), line(19.5, 12, 21.5, 12))
	Channel = draw("channel", bezier(2.5, 9, 9, 2, 14, 15, 21.5, 7),
		bezier(2.5, 17, 9, 10, 14, 23, 21.5, 15))
	Glass = draw("glass", loop(3.5, 14, 7.5, 8, 11, 12.5, 8, 18.5),
		loop(12, 5.5, 17.5, 3.5, 20.5, 8.5, 15, 10.5),
		loop(14, 15, 19.5, 14, 20.5, 19, 15, 20.5), line(3.5, 14, 11, 12.5), line(15, 10.5, 17.5, 3.5))
	Finish = draw("finish", ring(12, 12, 8.5), area(12, 3.5, 9, 4, 6, 6, 4, 9, 3.5, 12, 4, 15, 6, 18, 9,
		20, 12, 20.5),
		disc(15, 8.5, 1.1), disc(17.3, 12.5, 1.1), disc(14.6, 14.2, 1), disc(15.2, 17.6, 0.9))
	Supports = draw("supports", line(2.5, 6, 21.5, 6), line(2.5, 9.5, 21.5, 9.5), line(6, 9.5, 6, 20),
		line(18, 9.5, 18, 20), line(6, 15, 11, 9.5))
)

// What is done.
var (
	New = draw("new", line(13.5, 3, 6, 3, 6, 21, 18, 21, 18, 13), line(18, 3, 18, 9),
		line(15, 6, 21, 6))
	Open = draw("open", line(3, 19, 3, 5, 9, 5, 11.5, 7.5, 19, 7.5, 19, 10.5),
		loop(3, 19, 6.5, 10.5, 22, 10.5, 18.5, 19))
	Save = draw("save", line(12, 3, 12, 14), line(7.5, 9.5, 12, 14, 16.5, 9.5),
		line(4, 15, 4, 20, 20, 20, 20, 15))
	Export = draw("export", line(12, 15, 12, 3.5), line(7.5, 8, 12, 3.5, 16.5, 8),
		line(4, 15, 4, 20, 20, 20, 20, 15))
	Undo = draw("undo", line(8.5, 4.5, 3.5, 9.5, 8.5, 14.5), line(3.5, 9.5, 15, 9.5),
		arc(15, 14.5, 5, -90, 90), line(15, 19.5, 9, 19.5))
	Redo = draw("redo", line(15.5, 4.5, 20.5, 9.5, 15.5, 14.5), line(20.5, 9.5, 9, 9.5),
		arc(9, 14.5, 5, 90, 270), line(9, 19.5, 15, 19.5))
	Add    = draw("add", line(12, 4.5, 12, 19.5), line(4.5, 12, 19.5, 12))
	Close  = draw("close", line(5.5, 5.5, 18.5, 18.5), line(18.5, 5.5, 5.5, 18.5))
	Check  = draw("check", line(4.5, 12.5, 9.5, 17.5, 19.5, 6.5))
	Remove = draw("remove", line(4, 6.5, 20, 6.5), line(9, 6.5, 9, 3.5, 15, 3.5, 15, 6.5),
		line(6, 6.5, 7, 20.5, 17, 20.5, 18, 6.5), line(10.3, 10.5, 10.3, 16.5), line(13.7, 10.5, 13.7,
			16.5))
	Copy = draw("copy", loop(8.5, 8.5, 20.5, 8.5, 20.5, 20.5, 8.5, 20.5),
		line(5, 15.5, 3.5, 15.5, 3.5, 3.5, 15.5, 3.5, 15.5, 5))
	Rename  = draw("rename", loop(4, 20, 5, 15.5, 16.5, 4, 20, 7.5, 8.5, 19), line(13.5, 7, 17, 10.5))
	Compare = draw("compare", loop(3, 6, 10, 6, 10, 18, 3, 18), loop(14, 6, 21, 6, 21, 18, 14, 18),
		line(12, 3, 12, 21))
	Mirror = draw("mirror", line(12, 3, 12, 5), line(12, 8.5, 12, 10.5), line(12, 14, 12, 16),
		line(12, 19.5, 12, 21), loop(9, 6.5, 9, 17.5, 2.5, 17.5), area(15, 6.5, 15, 17.5, 21.5, 17.5))
	Stroke = draw("stroke", bezier(3, 16, 8, 2, 13, 24, 21, 8), disc(21, 8, 1.8))
	Brush  = draw("brush", line(20.5, 3.5, 12, 12), loop(12, 12, 9, 12, 6.5, 15, 6.5, 18, 3.5, 20, 9, 20.5,
		12, 18, 12.5, 14.5))
	Bank = draw("bank", bezier(2.5, 15, 9, 8, 14, 21, 21.5, 13), disc(5, 9, 1.5), disc(9.5, 7.5, 1.5),
		disc(14, 10.5, 1.5), disc(18.5, 9, 1.5))
	Flood = draw("flood", loop(3.5, 4, 20.5, 4, 20.5, 20, 3.5, 20), disc(8, 9, 1.5), disc(13, 8, 1.5),
		disc(16.5, 12, 1.5), disc(11, 13, 1.5), disc(7.5, 16, 1.5), disc(14.5, 16.5, 1.5))
	Pen = draw("pen", disc(5, 19, 1.8), line(5, 19, 9, 6, 19, 10), disc(9, 6, 1.8),
		disc(19, 10, 1.8))
	Select = draw("select", loop(5, 3, 5, 18, 9.3, 14.3, 12, 20.5, 14.7, 19.3, 12, 13.3, 17.5, 13))
	Pan    = draw("pan", line(12, 3, 12, 21), line(3, 12, 21, 12), line(9.5, 5.5, 12, 3, 14.5, 5.5),
		line(9.5, 18.5, 12, 21, 14.5, 18.5), line(5.5, 9.5, 3, 12, 5.5, 14.5), line(18.5, 9.5, 21, 12,
			18.5, 14.5))
	ZoomIn = draw("zoom-in", ring(10.5, 10.5, 6.5), line(15.5, 15.5, 20.5, 20.5),
		line(10.5, 7.5, 10.5, 13.5), line(7.5, 10.5, 13.5, 10.5))
	ZoomOut = draw("zoom-out", ring(10.5, 10.5, 6.5), line(15.5, 15.5, 20.5, 20.5),
		line(7.5, 10.5, 13.5, 10.5))
	Search = draw("search", ring(10.5, 10.5, 6.5), line(15.5, 15.5, 20.5, 20.5))
	Fit    = draw("fit", line(3.5, 8.5, 3.5, 3.5, 8.5, 3.5), line(15.5, 3.5, 20.5, 3.5, 20.5, 8.5),
		line(20.5, 15.5, 20.5, 20.5, 15.5, 20.5), line(8.5, 20.5, 3.5, 20.5, 3.5, 15.5), loop(8, 9.5,
			16, 9.5, 16, 14.5, 8, 14.5))
	Settings = draw("settings", line(3, 6, 21, 6), line(3, 12, 21, 12), line(3, 18, 21, 18),
		disc(9, 6, 2.6), disc(16, 12, 2.6), disc(7, 18, 2.6))
	Place = draw("place", ring(12, 12, 6), line(12, 2.5, 12, 8.5), line(12, 15.5, 12, 21.5),
		line(2.5, 12, 8.5, 12), line(15.5, 12, 21.5, 12))
	More = draw("more", disc(5, 12, 1.8), disc(12, 12, 1.8), disc(19, 12, 1.8))
)

// What is seen and where things lie.
var (
	Dimension = draw("dimension", line(3, 5, 3, 19), line(21, 5, 21, 19), line(3, 12, 21, 12),
		line(6.5, 9, 3.5, 12, 6.5, 15), line(17.5, 9, 20.5, 12, 17.5, 15))
	Texture = draw("texture", round(3.5, 3.5, 17, 17, 2), disc(8, 8, 1.2), disc(13, 7.5, 0.9),
		disc(16, 11.5, 1.3), disc(10.5, 12.5, 1), disc(7.5, 16, 1.1), disc(14, 16.3, 1.2))
	Grid = draw("grid", line(3, 8.5, 21, 8.5), line(3, 15.5, 21, 15.5), line(8.5, 3, 8.5, 21),
		line(15.5, 3, 15.5, 21))
	Sun = draw("sun", ring(12, 12, 4), line(12, 2.5, 12, 4.5), line(12, 19.5, 12, 21.5),
		line(2.5, 12, 4.5, 12), line(19.5, 12, 21.5, 12), line(5.3, 5.3, 6.7, 6.7), line(17.3, 17.3,
			18.7, 18.7), line(5.3, 18.7, 6.7, 17.3), line(17.3, 6.7, 18.7, 5.3))
	Moon   = draw("moon", arc(12, 12, 8.5, 20, 285), arc(16.2, 7.8, 7.2, 62, 208))
	Left   = draw("left", line(14.5, 5.5, 8.5, 12, 14.5, 18.5))
	Right  = draw("right", line(9.5, 5.5, 15.5, 12, 9.5, 18.5))
	Up     = draw("up", line(5.5, 14.5, 12, 8.5, 18.5, 14.5))
	Down   = draw("down", line(5.5, 9.5, 12, 15.5, 18.5, 9.5))
	Folder = draw("folder", loop(3, 19, 3, 5, 9, 5, 11.5, 7.5, 21, 7.5, 21, 19))
	File   = draw("file", loop(6, 3, 14, 3, 18.5, 7.5, 18.5, 21, 6, 21),
		line(13.5, 3.5, 13.5, 8, 18, 8))
	Home = draw("home", line(3, 12, 12, 4, 21, 12), line(5.5, 10.5, 5.5, 20, 18.5, 20, 18.5, 10.5),
		line(10, 20, 10, 14, 14, 14, 14, 20))
	Recent  = draw("recent", ring(12, 12, 8.5), line(12, 7, 12, 12, 15.5, 14.5))
	Picture = draw("picture", round(3, 4.5, 18, 15, 1.5), disc(8, 9.5, 1.5),
		line(4, 17.5, 10, 12.5, 13, 15, 17, 10.5, 20.5, 14))
	Show = draw("show", bezier(2.5, 12, 7, 4.5, 17, 4.5, 21.5, 12), bezier(2.5, 12, 7, 19.5, 17, 19.5, 21.5, 12),
		ring(12, 12, 3))
	Keys = draw("keys", round(2.5, 6, 19, 12, 2), disc(6.5, 10, 1), disc(10.2, 10, 1),
		disc(13.8, 10, 1), disc(17.5, 10, 1), line(8, 14.3, 16, 14.3))
	Full = draw("full", line(3.5, 9, 3.5, 3.5, 9, 3.5), line(15, 3.5, 20.5, 3.5, 20.5, 9),
		line(20.5, 15, 20.5, 20.5, 15, 20.5), line(9, 20.5, 3.5, 20.5, 3.5, 15))
)

// How parts are handled and arranged.
var (
	Lock = draw("lock", area(5, 11, 19, 11, 19, 20.5, 5, 20.5), arc(12, 8, 4.5, 180, 360), line(7.5, 8, 7.5, 11),
		line(16.5, 8, 16.5, 11), cutDisc(12, 15.7, 1.5))
	Unlock = draw("unlock", loop(5, 11, 19, 11, 19, 20.5, 5, 20.5), arc(12, 8, 4.5, 180, 330), line(7.5, 8, 7.5, 11))
	Hide   = draw("hide", bezier(2.5, 12, 7, 4.5, 17, 4.5, 21.5, 12), bezier(2.5, 12, 7, 19.5, 17, 19.5, 21.5, 12),
		ring(12, 12, 3), line(4, 20, 20, 4))
	List = draw("list", disc(4.5, 6, 1.5), disc(4.5, 12, 1.5), disc(4.5, 18, 1.5), line(9, 6, 21, 6),
		line(9, 12, 21, 12), line(9, 18, 21, 18))
	Link      = draw("link", ring(8.2, 12, 5), ring(15.8, 12, 5))
	AlignLeft = draw("align-left", line(3.5, 3, 3.5, 21), area(6.5, 6, 20, 6, 20, 10, 6.5, 10),
		area(6.5, 14, 14, 14, 14, 18, 6.5, 18))
	AlignCentre = draw("align-centre", line(12, 3, 12, 21), area(4, 6, 20, 6, 20, 10, 4, 10),
		area(7.5, 14, 16.5, 14, 16.5, 18, 7.5, 18))
	AlignRight = draw("align-right", line(20.5, 3, 20.5, 21), area(4, 6, 17.5, 6, 17.5, 10, 4, 10),
		area(10, 14, 17.5, 14, 17.5, 18, 10, 18))
	AlignFront = draw("align-front", line(3, 20.5, 21, 20.5), area(6, 4, 10, 4, 10, 17.5, 6, 17.5),
		area(14, 10, 18, 10, 18, 17.5, 14, 17.5))
	AlignMiddle = draw("align-middle", line(3, 12, 21, 12), area(6, 4, 10, 4, 10, 20, 6, 20),
		area(14, 7.5, 18, 7.5, 18, 16.5, 14, 16.5))
	AlignBack = draw("align-back", line(3, 3.5, 21, 3.5), area(6, 6.5, 10, 6.5, 10, 20, 6, 20),
		area(14, 6.5, 18, 6.5, 18, 14, 14, 14))
	SpreadAcross = draw("spread-across", line(3, 4, 3, 20), line(21, 4, 21, 20), area(9.5, 6.5, 14.5, 6.5, 14.5, 17.5, 9.5, 17.5),
		line(5.5, 12, 7, 12), line(17, 12, 18.5, 12))
	SpreadDeep = draw("spread-deep", line(4, 3, 20, 3), line(4, 21, 20, 21), area(6.5, 9.5, 17.5, 9.5, 17.5, 14.5, 6.5, 14.5),
		line(12, 5.5, 12, 7), line(12, 17, 12, 18.5))
	Turn = draw("turn", arc(12, 12, 8, -60, 210), line(12.2, 2, 16.3, 5, 13, 8.8))
)

// How an option stands to what was approved: three shapes.
var (
	Approved   = draw("approved", ring(12, 12, 8.5), line(7.5, 12.5, 10.8, 15.8, 16.5, 9))
	Changed    = draw("changed", ring(12, 12, 8.5), line(8, 10, 16, 10), line(8, 14.5, 16, 14.5), line(14.5, 7, 9.5, 17.5))
	Unapproved = draw("unapproved", arc(12, 12, 8.5, 0, 50), arc(12, 12, 8.5, 75, 125), arc(12, 12, 8.5, 150, 200),
		arc(12, 12, 8.5, 225, 275), arc(12, 12, 8.5, 300, 345))
	Sheet = draw("sheet", loop(5, 3, 19, 3, 19, 21, 5, 21), round(8, 6, 8, 5, 0.5), line(8, 14.5, 16, 14.5),
		line(8, 17.8, 11.5, 17.8))
)

// How grave a warning is: three shapes, so that the colour carries nothing
// alone.
var (
	Severe = draw("severe", area(8, 2.5, 16, 2.5, 21.5, 8, 21.5, 16, 16, 21.5, 8, 21.5, 2.5, 16, 2.5,
		8), cutLine(12, 7, 12, 12.6), cutDisc(12, 16.6, 1.2))
	Caution = draw("caution", area(12, 2.5, 22.5, 21, 1.5, 21), cutLine(12, 9, 12, 14.2),
		cutDisc(12, 17.6, 1.2))
	Note = draw("note", disc(12, 12, 9.5), cutLine(12, 11.4, 12, 16.8), cutDisc(12, 7.6, 1.3))
)
