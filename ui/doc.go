// Package ui is the window: the drawing in the middle, the parts row over it,
// the live panel beside it, the options below it, and the hint line. It puts its
// rooms together; what each does stands in its own package.
package ui
