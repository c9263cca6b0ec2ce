// Package keys holds the one table of everything that can be done in the
// window: its place in the menu, its key and what it does. Menu, keys, help and
// tests all read it, and one guarded dispatcher runs it, so that nothing happens
// under a dialog and a text that is being typed keeps its own keys. The menu bar
// is our own: the toolkit's shows keys too faint to be read, can't say in the
// hint line what an action does, and gives keys to the menu before anybody else.
package keys
