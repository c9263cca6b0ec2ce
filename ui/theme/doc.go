// Package theme is the look of the window: one accent on neutral greys, light or
// dark, few sizes of type, and distances that are multiples of four points. The
// greys have no tint, so that the colours of materials are judged fairly beside
// them.
package theme
