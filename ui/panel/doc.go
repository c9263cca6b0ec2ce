// Package panel is the live panel beside the drawing, always whole: what is
// selected with its fields, the quantities with how each was reckoned, the
// warnings worst first.
package panel
