// Package control holds the small things that the rooms of the window are made
// of: texts, buttons that say in the hint line what they do, entries that keep
// what was typed, cards with a picture, dialogs that obey Enter and Esc.
package control
