// Package partsrow is the row of the trade's nouns over the drawing: shape,
// edge, sink, taps, hole, channel, glass, finish, supports. A noun opens small
// live-drawn starters at sensible sizes; picking one puts it in hand or applies
// it. The maker thinks in sinks and rivers, not in drawing tools.
package partsrow
