package intake

import (
	"bytes"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"io"
	"time"

	"github.com/bep/imagemeta"
)

// format is a kind of file that is taken in.
type format struct {
	name   string
	magic  string
	kind   imagemeta.ImageFormat
	config func(io.Reader) (image.Config, error)
	decode func(io.Reader) (image.Image, error)
	// perPixel is how many bytes unpacking takes for each pixel.
	perPixel func(data []byte, c image.Config) int64
}

// formats by what their files start with; a name's ending says nothing.
var formats = []format{
	{"jpeg", "\xff\xd8\xff", imagemeta.JPEG, jpeg.DecodeConfig, jpeg.Decode, jpegCost},
	{"png", "\x89PNG\r\n\x1a\n", imagemeta.PNG, png.DecodeConfig, png.Decode, pngCost},
}

func formatOf(data []byte) (format, bool) {
	for _, f := range formats {
		if bytes.HasPrefix(data, []byte(f.magic)) {
			return f, true
		}
	}
	return format{}, false
}

// jpegCost: samples of one byte each; a progressive file (SOF2 of ITU-T T.81, table
// B.1) keeps all its coefficients too, four bytes to the sample.
func jpegCost(data []byte, _ image.Config) int64 {
	for i := 2; i+4 <= len(data) && data[i] == 0xff; {
		marker := data[i+1]
		switch {
		case marker == 0xff: // fill
			i++
			continue
		case marker == 0xc2:
			return 4 + 4*4
		case marker == 0xc0 || marker == 0xc1 || marker == 0xda:
			return 4
		}
		i += 2 + int(data[i+2])<<8 + int(data[i+3])
	}
	return 4
}

// pngCost: by the depth; an interlaced file (ISO/IEC 15948, 11.2.2) is unpacked
// beside what it is put together in.
func pngCost(data []byte, c image.Config) int64 {
	n := int64(4)
	switch c.ColorModel {
	case color.GrayModel:
		n = 1
	case color.Gray16Model:
		n = 2
	case color.RGBA64Model, color.NRGBA64Model:
		n = 8
	}
	if len(data) > 28 && data[28] == 1 {
		n *= 2
	}
	return n
}

// tagged is what the file's EXIF says of how it was taken: tag 0x0112, which way up,
// 1 when there is none that makes sense; tag 0xA405, the focal length in terms of
// 35 mm film, 0 when it is not said. A file whose metadata can't be read is still a
// picture.
func tagged(data []byte, kind imagemeta.ImageFormat) (orientation, focal35 int) {
	orientation = 1
	defer func() {
		if recover() != nil {
			orientation, focal35 = 1, 0
		}
	}()
	_, _ = imagemeta.Decode(imagemeta.Options{
		R: bytes.NewReader(data), ImageFormat: kind, Sources: imagemeta.EXIF,
		ShouldHandleTag: func(t imagemeta.TagInfo) bool {
			return t.Tag == "Orientation" && t.Namespace == "IFD0" || t.Tag == "FocalLengthIn35mmFormat"
		},
		HandleTag: func(t imagemeta.TagInfo) error {
			v, ok := t.Value.(uint16)
			switch {
			case ok && t.Tag == "Orientation" && v >= 1 && v <= 8:
				orientation = int(v)
			case ok && t.Tag != "Orientation" && v >= 8 && v <= 1200:
				focal35 = int(v)
			}
			return nil
		},
		Timeout: 2 * time.Second, LimitNumTags: 1000, LimitTagSize: 1000,
	})
	return orientation, focal35
}

// upright turns a picture as its orientation says (EXIF 2.3, 4.6.4, tag 0x0112):
// 2 is mirrored left to right, 3 upside down, 4 mirrored top to bottom, 5 to 8 on
// their sides.
func upright(in *image.RGBA, orientation int) *image.RGBA {
	w, h := in.Rect.Dx(), in.Rect.Dy()
	if orientation <= 1 || orientation > 8 {
		return in
	}
	ow, oh := w, h
	if orientation >= 5 {
		ow, oh = h, w
	}
	out := image.NewRGBA(image.Rect(0, 0, ow, oh))
	for y := range oh {
		row := out.Pix[y*out.Stride:]
		for x := range ow {
			sx, sy := x, y
			switch orientation {
			case 2:
				sx = w - 1 - x
			case 3:
				sx, sy = w-1-x, h-1-y
			case 4:
				sy = h - 1 - y
			case 5:
				sx, sy = y, x
			case 6:
				sx, sy = y, h-1-x
			case 7:
				sx, sy = w-1-y, h-1-x
			case 8:
				sx, sy = w-1-y, x
			}
			copy(row[4*x:4*x+4], in.Pix[sy*in.Stride+4*sx:])
		}
	}
	return out
}
