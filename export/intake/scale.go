package intake

import (
	"image"
	"image/draw"

	xdraw "golang.org/x/image/draw"
)

// scaled is the picture in RGBA, its longer side at most side.
func scaled(img image.Image, side int) *image.RGBA {
	b := img.Bounds()
	w, h := b.Dx(), b.Dy()
	longest := max(w, h)
	if longest <= side {
		out := image.NewRGBA(image.Rect(0, 0, w, h))
		draw.Draw(out, out.Rect, img, b.Min, draw.Src)
		return out
	}
	return Scaled(img, max(1, w*side/longest), max(1, h*side/longest))
}

// Scaled is a picture in RGBA at another size, dw x dh pixels. Made smaller, each
// pixel is the mean of what it covers; that takes one row at a time, so that a large
// picture needs no more memory than itself and the result.
func Scaled(img image.Image, dw, dh int) *image.RGBA {
	b := img.Bounds()
	w, h := b.Dx(), b.Dy()
	if dw < 1 || dh < 1 || w < 1 || h < 1 {
		return image.NewRGBA(image.Rect(0, 0, max(1, dw), max(1, dh)))
	}
	if dw > w || dh > h {
		out := image.NewRGBA(image.Rect(0, 0, dw, dh))
		xdraw.ApproxBiLinear.Scale(out, out.Rect, img, b, xdraw.Src, nil)
		return out
	}
	out := image.NewRGBA(image.Rect(0, 0, dw, dh))
	row := image.NewRGBA(image.Rect(0, 0, w, 1))
	narrow, sum := make([]float32, 4*dw), make([]float32, 4*dw)
	// Row y of the source lies over rows y*dh/h to (y+1)*dh/h of the result, which
	// are at most two.
	for y := range h {
		draw.Draw(row, row.Rect, img, image.Pt(b.Min.X, b.Min.Y+y), draw.Src)
		narrowed(narrow, row.Pix, w, dw)
		to := y * dh / h
		first := min(dh, (to+1)*h-y*dh) // of the dh parts of this row; a row of the result has h
		add(sum, narrow, float32(first))
		if (y+1)*dh >= (to+1)*h {
			finish(out.Pix[to*out.Stride:], sum, float32(h))
			clear(sum)
			add(sum, narrow, float32(dh-first))
		}
	}
	return out
}

// narrowed is a row of w pixels as the means of dw.
func narrowed(dst []float32, row []uint8, w, dw int) {
	clear(dst)
	for x := range w {
		to := x * dw / w
		first := min(dw, (to+1)*w-x*dw)
		p, q := row[4*x:4*x+4], dst[4*to:]
		for k := range 4 {
			q[k] += float32(p[k]) * float32(first)
		}
		if rest := dw - first; rest > 0 {
			for k := range 4 {
				q[4+k] += float32(p[k]) * float32(rest)
			}
		}
	}
	for i := range dst {
		dst[i] /= float32(w)
	}
}

func add(sum, row []float32, share float32) {
	for i, v := range row {
		sum[i] += v * share
	}
}

func finish(dst []uint8, sum []float32, whole float32) {
	for i, v := range sum {
		dst[i] = uint8(min(255, v/whole+0.5))
	}
}
