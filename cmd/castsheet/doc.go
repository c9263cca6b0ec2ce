// Command castsheet is the window's headless twin: the same job files, the same
// report, the same picture, for scripts and for machines without a screen.
//
//	castsheet demo DIR [--force]
//	castsheet check FILE [--option B]
//	castsheet report FILE [--json] [--option B]
//	castsheet picture FILE -o out.png [--width N] [--option B]
//	castsheet preview FILE -o out.png [--view top|quarter|close] [--quality quick|good] [--width N] [--option B]
//	castsheet outline FILE.svg|FILE.dxf [--units mm|in]
//	castsheet schema
//	castsheet version
//
// It ends with 0 when all is well, with 1 when check found something severe or
// a fault of the design, and with 2 when it could not do what was asked; then
// it has said why in one line on the error stream.
package main
