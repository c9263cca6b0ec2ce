package raster

import (
	"bufio"
	"compress/zlib"
	"encoding/binary"
	"hash/crc32"
	"io"
	"math"

	"example.org/castwright/model/scene"
)

// Options of a PNG.
type Options struct {
	// DotsPerMetre is the size that the picture says it has when printed; 0
	// takes the page's own, if it has one.
	DotsPerMetre float64
}

// bandRows is how many rows are painted and held at a time.
const bandRows = 256

// PNG paints a page and writes it as a PNG (ISO/IEC 15948), one pixel to the page
// unit: 8 bits a channel, with alpha when the ground is not opaque. It holds no
// more than a few bands of the picture in memory. A page that is smaller than a
// pixel or has a side above [MaxSide] is refused.
func PNG(w io.Writer, p scene.Page, o Options) error {
	width, height, err := size(p.W, p.H)
	if err != nil {
		return err
	}
	dots := o.DotsPerMetre
	if dots == 0 {
		dots = p.Print * 1000
	}
	f := &pngFile{w: w, colours: 4}
	if p.Ground.A == 0xff {
		f.colours = 3
	}
	f.header(width, height, dots)
	data := bufio.NewWriterSize(chunks{f}, 1<<16)
	z, err := zlib.NewWriterLevel(data, zlib.BestSpeed)
	if err != nil {
		return err
	}
	// One goroutine paints, this one packs; each band goes back to be reused.
	painted, free := make(chan []uint8), make(chan []uint8, 2)
	stop := make(chan struct{})
	defer close(stop)
	go func() {
		defer close(painted)
		for top := 0; top < height; top += bandRows {
			var band []uint8
			select {
			case band = <-free:
			default:
				band = make([]uint8, 4*width*min(bandRows, height))
			}
			rows := min(bandRows, height-top)
			band = band[:4*width*rows]
			clear(band)
			drawBand(band, 4*width, width, top, rows, height, p)
			select {
			case painted <- band:
			case <-stop:
				return
			}
		}
	}()
	e := encoder{z: z, colours: f.colours, width: width}
	for band := range painted {
		if err := e.rows(band); err != nil {
			return err
		}
		select {
		case free <- band:
		default:
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

// pngFile writes chunks.
type pngFile struct {
	w       io.Writer
	colours int // bytes of a pixel
	err     error
}

func (f *pngFile) write(b []byte) {
	if f.err == nil {
		_, f.err = f.w.Write(b)
	}
}

func (f *pngFile) chunk(name string, data []byte) {
	var length [4]byte
	binary.BigEndian.PutUint32(length[:], uint32(len(data)))
	f.write(length[:])
	sum := crc32.NewIEEE()
	sum.Write([]byte(name))
	sum.Write(data)
	f.write([]byte(name))
	f.write(data)
	f.write(sum.Sum(nil))
}

func (f *pngFile) header(w, h int, dotsPerMetre float64) {
	f.write([]byte("\x89PNG\r\n\x1a\n"))
	var b []byte
	b = binary.BigEndian.AppendUint32(b, uint32(w))
	b = binary.BigEndian.AppendUint32(b, uint32(h))
	kind := byte(2) // red, green, blue
	if f.colours == 4 {
		kind = 6 // and alpha
	}
	f.chunk("IHDR", append(b, 8, kind, 0, 0, 0))
	f.chunk("sRGB", []byte{0}) // perceptual
	if dotsPerMetre >= 1 && dotsPerMetre < math.MaxInt32 {
		n := uint32(math.Round(dotsPerMetre))
		b = binary.BigEndian.AppendUint32(nil, n)
		f.chunk("pHYs", append(binary.BigEndian.AppendUint32(b, n), 1)) // to the metre
	}
}

// chunks writes what it is given as image data.
type chunks struct{ f *pngFile }

func (c chunks) Write(b []byte) (int, error) {
	c.f.chunk("IDAT", b)
	return len(b), c.f.err
}

// encoder filters and packs rows.
type encoder struct {
	z              io.Writer
	colours, width int
	row, prev, out []uint8
}

// rows packs rows of premultiplied colours.
func (e *encoder) rows(pix []uint8) error {
	n := e.colours * e.width
	if e.row == nil {
		e.row, e.prev, e.out = make([]uint8, n), make([]uint8, n), make([]uint8, n+1)
	}
	for ; len(pix) >= 4*e.width; pix = pix[4*e.width:] {
		if e.colours == 3 {
			for i, j := 0, 0; j < n; i, j = i+4, j+3 {
				e.row[j], e.row[j+1], e.row[j+2] = pix[i], pix[i+1], pix[i+2]
			}
		} else {
			straight(e.row, pix)
		}
		e.filter()
		if _, err := e.z.Write(e.out); err != nil {
			return err
		}
		e.row, e.prev = e.prev, e.row
	}
	return nil
}

// straight takes the alpha out of premultiplied colours.
func straight(dst, src []uint8) {
	for i := 0; i+3 < len(dst); i += 4 {
		a := uint32(src[i+3])
		if a == 0 || a == 0xff {
			copy(dst[i:i+4], src[i:i+4])
			continue
		}
		for k := range 3 {
			dst[i+k] = uint8(min(255, (uint32(src[i+k])*255+a/2)/a))
		}
		dst[i+3] = uint8(a)
	}
}

// filter sets out to the row with the better of the filters None and Up. Flat
// drawings pack best as they are, photographic rows as the difference from the
// row above; a sample of the row tells which it is.
func (e *encoder) filter() {
	same, rough := 0, 0
	for i := e.colours; i < len(e.row); i += 7 {
		if e.row[i] == e.row[i-e.colours] || e.row[i] == e.prev[i] {
			same++
		} else {
			rough++
		}
	}
	if rough <= same {
		e.out[0] = 0
		copy(e.out[1:], e.row)
		return
	}
	e.out[0] = 2
	for i, v := range e.row {
		e.out[i+1] = v - e.prev[i]
	}
}
