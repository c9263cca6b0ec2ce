// Package raster paints scene pages as pictures and writes them as PNG. One page
// unit is one pixel.
//
// A page may hold any number, NaN, infinite or huge: what can't be painted is
// left out, what reaches beyond the picture is cut off before it meets the
// rasterizer. The same page gives the same bytes, however many goroutines paint
// it.
package raster
