// Package template reads outlines that the maker brings in: a sink's template,
// a scanned wall, a drawing of the cabinet, from SVG or ASCII DXF.
//
// [Read] turns a file into spans (lines, circular arcs, cubics), joins them
// into chains, closes them, drops what cannot be used with a note that says so,
// and sorts the closed chains into outlines with their holes. It trusts no
// file: size, nesting, number of spans and every number are bounded.
package template
