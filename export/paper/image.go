package paper

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"image"
	"image/color"
	"image/png"
	"math"

	"codeberg.org/go-pdf/fpdf"

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

// picture places an image over a part of the page. Images go by the hash of
// their bytes, so that the same one is stored once.
func (p *printer) picture(img image.Image, box geom.Box) {
	var buf bytes.Buffer
	enc := png.Encoder{CompressionLevel: png.BestSpeed}
	if err := enc.Encode(&buf, img); err != nil {
		p.f.SetError(err)
		return
	}
	sum := sha256.Sum256(buf.Bytes())
	name := hex.EncodeToString(sum[:])
	opt := fpdf.ImageOptions{ImageType: "PNG"}
	if p.f.GetImageInfo(name) == nil {
		p.f.RegisterImageOptionsReader(name, opt, &buf)
	}
	p.f.ImageOptions(name, box.Min.X, box.Min.Y, box.W(), box.H(), false, opt, 0, "")
}
