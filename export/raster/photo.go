package raster

import (
	"bufio"
	"compress/zlib"
	"image"
	"io"
)

// Photo writes a picture without holes as a PNG, fast rather than small: 8 bits a
// channel, said to be sRGB (ISO/IEC 15948, 11.3.3.5), with its size and nothing
// else. Whatever stands in the picture's alpha is not written.
func Photo(w io.Writer, img *image.NRGBA) error {
	width, height, err := size(float64(img.Rect.Dx()), float64(img.Rect.Dy()))
	if err != nil {
		return err
	}
	f := &pngFile{w: w, colours: 3}
	f.header(width, height, 0)
	data := bufio.NewWriterSize(chunks{f}, 1<<16)
	z, err := zlib.NewWriterLevel(data, zlib.BestSpeed)
	if err != nil {
		return err
	}
	e := encoder{z: z, colours: f.colours, width: width}
	for y := range height {
		at := y * img.Stride
		if err := e.rows(img.Pix[at : at+4*width]); err != nil {
			return err
		}
	}
	if err := z.Close(); err != nil {
		return err
	}
	if err := data.Flush(); err != nil {
		return err
	}
	f.chunk("IEND", nil)
	return f.err
}
