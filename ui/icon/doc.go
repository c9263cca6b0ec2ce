// Package icon holds the window's icons: one family, drawn on a grid of 24 with
// one pen. The toolkit gives an icon the theme's colour only where it is filled,
// so each line is turned into the area that the pen covers.
package icon
