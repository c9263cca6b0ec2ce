// Package raster paints scene pages as pictures and writes them as PNG.
package raster
