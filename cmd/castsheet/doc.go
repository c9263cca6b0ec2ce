// Command castsheet is the window's headless twin: the same job files, the same
// report, the same picture, for scripts and for machines without a screen.
//
//	castsheet demo DIR [--force]
//	castsheet check FILE [--option B]
//	castsheet report FILE [--json] [--option B]
//	castsheet picture FILE -o out.png [--width N] [--option B]
//	castsheet preview FILE -o out.png [--view top|quarter|close] [--quality quick|good] [--width N] [--option B]
//	castsheet compare FILE --options A,B -o out.png|out.pdf
//	castsheet approval FILE [--option A] [--approve DAY] -o out.pdf|out.png
//	castsheet approved FILE [--option A]
//	castsheet room FILE --photo P --corners x,y,x,y,x,y,x,y -o out.png
//	castsheet outline FILE.svg|FILE.dxf [--units mm|in]
//	castsheet schema
//	castsheet licences
//	castsheet version
//
// It ends with 0 when all is well; with 1 when check found something severe or a
// fault, or approved a revision that is not as it was approved; and with 2 when it
// could not do what was asked: then it has said why in one line on the error
// stream, and has written and changed no file.
package main
