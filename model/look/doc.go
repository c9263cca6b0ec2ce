// Package look is what the materials of a top look like from above: concrete of
// every finish, resin, glass, and the soft light and shade of edges and basins.
//
// Everything is a pure function of places in millimetres of the design, of the
// design's own values and of fixed seeds: the same top looks the same in every
// picture. Colours are mixed in linear light and given as sRGB. What is costly
// is baked once into a grid of texels, a tile that repeats without a seam or a
// patch that lies on the design, with halved levels so that nothing flickers or
// forms a moiré when it is small; bakes are kept by their value.
//
// The light comes from the left, the back and above ([Light]).
package look
