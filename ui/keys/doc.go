// Package keys holds the one table of everything that can be done in the
// window: its place in the menu, its key and what it does. Menu, keys, help and
// tests all read it, and one guarded dispatcher runs it: the toolkit gives menu
// keys to the menu even while a dialog is open or a text is being typed.
package keys
