// Package strip is the strip of options below the drawing: a live picture of
// each with its title, weight and price.
package strip
