package paper

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"math"

	"codeberg.org/go-pdf/fpdf"
	"golang.org/x/image/draw"

	"example.org/castwright/model/geom"
	"example.org/castwright/model/scene"
)

const (
	// textureDPI is how finely a texture is printed; paper shows no more of
	// cast concrete.
	textureDPI = 200.0
	// maxTexels bounds one texture's picture.
	maxTexels = 12_000_000
)

// texture prints a textured region: its picture, clipped to the region.
func (p *printer) texture(s scene.Fill) {
	p.f.TransformBegin()
	defer p.f.TransformEnd()
	p.f.SetAlpha(1, "Normal")
	box := p.traceAll(s.Loops)
	if box.Empty() {
		return
	}
	p.f.RawWriteStr("W n")
	page := geom.Box{Max: geom.Vec{X: p.w, Y: p.h}}
	box.Min = geom.Vec{X: math.Max(box.Min.X, page.Min.X), Y: math.Max(box.Min.Y, page.Min.Y)}
	box.Max = geom.Vec{X: math.Min(box.Max.X, page.Max.X), Y: math.Min(box.Max.Y, page.Max.Y)}
	if box.Empty() || box.W() == 0 || box.H() == 0 {
		return
	}
	p.picture(p.sample(s.Paint.Texture, box), box)
}

// sample draws a texture over a part of the page.
func (p *printer) sample(t scene.Texture, box geom.Box) image.Image {
	perMM := textureDPI / 25.4
	if n := box.W() * box.H() * perMM * perMM; n > maxTexels {
		perMM *= math.Sqrt(maxTexels / n)
	}
	w, h := max(1, int(math.Ceil(box.W()*perMM))), max(1, int(math.Ceil(box.H()*perMM)))
	w = p.widthFor(w)
	img := image.NewNRGBA(image.Rect(0, 0, w, h))
	foot := box.W() / float64(w) / p.perMM
	for y := range h {
		py := box.Min.Y + box.H()*(float64(y)+0.5)/float64(h)
		for x := range w {
			px := box.Min.X + box.W()*(float64(x)+0.5)/float64(w)
			c := t.At((px-p.origin.X)/p.perMM, (p.origin.Y-py)/p.perMM, foot)
			img.SetNRGBA(x, y, color.NRGBA{R: c.R, G: c.G, B: c.B, A: c.A})
		}
	}
	return img
}

// widthFor is the least width from w up that no picture in the file has yet: the
// PDF library puts pictures into the order of their widths and those of one width
// into a random order, but the same pages must give the same bytes.
func (p *printer) widthFor(w int) int {
	for p.taken[w] {
		w++
	}
	return w
}

// picture places an image over a part of the page. Images go by the hash of
// their bytes, so that the same one is stored once.
func (p *printer) picture(img image.Image, box geom.Box) {
	data, kind, err := packed(img)
	if err != nil {
		p.f.SetError(err)
		return
	}
	sum := sha256.Sum256(data)
	name := hex.EncodeToString(sum[:])
	opt := fpdf.ImageOptions{ImageType: kind}
	if p.f.GetImageInfo(name) == nil {
		b := img.Bounds()
		w := p.widthFor(b.Dx())
		p.taken[w] = true
		if w != b.Dx() {
			wider := image.NewNRGBA(image.Rect(0, 0, w, b.Dy()))
			draw.BiLinear.Scale(wider, wider.Rect, img, b, draw.Src, nil)
			if data, _, err = packed(wider); err != nil {
				p.f.SetError(err)
				return
			}
		}
		p.f.RegisterImageOptionsReader(name, opt, bytes.NewReader(data))
	}
	p.f.ImageOptions(name, box.Min.X, box.Min.Y, box.W(), box.H(), false, opt, 0, "")
}

// packed is a picture as a file for the PDF: a large one without holes as JPEG,
// at a quality that paper does not tell from the original, any other as PNG.
func packed(img image.Image) (data []byte, kind string, err error) {
	var buf bytes.Buffer
	o, ok := img.(interface{ Opaque() bool })
	if b := img.Bounds(); ok && b.Dx()*b.Dy() > 500_000 && o.Opaque() {
		err = jpeg.Encode(&buf, img, &jpeg.Options{Quality: 93})
		return buf.Bytes(), "JPG", err
	}
	enc := png.Encoder{CompressionLevel: png.BestSpeed}
	err = enc.Encode(&buf, img)
	return buf.Bytes(), "PNG", err
}
