// Package words says amounts, parts and kinds of things as the window shows
// them: in the trade's words and the maker's units.
package words
