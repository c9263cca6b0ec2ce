// Package bring takes an outline from a file, SVG or DXF, in hand: it reads the
// file in the background, asks for the unit where the file does not say it, shows
// what was found at its size, and what was joined or left out on the way, and
// lets the maker choose which outline and as what.
package bring
