package picture

import (
	"context"
	"image"
	"runtime"
	"sync"
	"sync/atomic"
)

// Quality says how much work a picture is worth.
type Quality uint8

// The qualities.
const (
	First     Quality = iota // for a picture that follows the hand: no smoothed edges
	Quick                    // light in blocks of 8 pixels: a second or so at 1920 x 1080
	Good                     // light in blocks of 4, or 8 above 3000 pixels
	Reference                // plain path tracing, minutes
)

// tileSide is the side of the squares that are worked on at a time.
const tileSide = 64

// shared work: every tile is written by one goroutine, and nothing in a tile
// depends on another one, so that the bytes are the same for any number.
type pool struct {
	ctx     context.Context
	workers int
	report  func(done float64)
}

// tiles calls work for each square of a w x h picture.
func (p *pool) tiles(w, h, side int, work func(r image.Rectangle)) error {
	nx, ny := (w+side-1)/side, (h+side-1)/side
	var next, done atomic.Int64
	var wg sync.WaitGroup
	var mu sync.Mutex
	for range max(1, p.workers) {
		wg.Go(func() {
			for p.ctx.Err() == nil {
				i := int(next.Add(1)) - 1
				if i >= nx*ny {
					return
				}
				x, y := i%nx*side, i/nx*side
				work(image.Rect(x, y, min(w, x+side), min(h, y+side)))
				if p.report != nil {
					n := done.Add(1)
					mu.Lock()
					p.report(float64(n) / float64(nx*ny))
					mu.Unlock()
				}
			}
		})
	}
	wg.Wait()
	return p.ctx.Err()
}

// stopped reports whether the work is given up. Within a square it is asked now and
// then, so that even a slow square ends at once.
func (p *pool) stopped() bool { return p.ctx.Err() != nil }

// workers is how many goroutines share a picture.
func workers() int { return runtime.GOMAXPROCS(0) }

// reference path-traces a picture in linear light, with samples paths a pixel
// from the first one on.
func (s *scene) reference(ctx context.Context, c camera, first, samples int, seed uint32, report func(float64)) ([]v3, error) {
	out := make([]v3, c.w*c.h)
	p := pool{ctx, workers(), report}
	err := p.tiles(c.w, c.h, 16, func(r image.Rectangle) {
		for y := r.Min.Y; y < r.Max.Y; y++ {
			for x := r.Min.X; x < r.Max.X; x++ {
				if ctx.Err() != nil {
					return
				}
				var sum v3
				start := source{seed: hash4(uint32(x), uint32(y), seed, 61)}
				u, v := start.next(), start.next()
				for i := first; i < first+samples; i++ {
					rnd := source{seed: hash4(uint32(x), uint32(y), uint32(i)+1, seed), pixel: start.seed | 1, path: uint32(i)}
					a, b := fract(u+float64(i)*r2x), fract(v+float64(i)*r2y)
					sum = sum.add(s.traced(c.ray(float64(x)+a, float64(y)+b), c.k, c.plan, &rnd))
				}
				out[y*c.w+x] = sum.mul(1 / float64(samples))
			}
		}
	})
	return out, err
}

// developed writes linear light as sRGB.
func developed(c []v3, w, h int) *image.NRGBA {
	img := image.NewNRGBA(image.Rect(0, 0, w, h))
	for i, v := range c {
		putPixel(img.Pix[4*i:4*i+4], v, i%w, i/w)
	}
	return img
}
