//go:build reference

package picture

import (
	"bytes"
	"context"
	"encoding/binary"
	"flag"
	"fmt"
	"image"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"testing"
	"time"

	"example.org/castwright/model/design"
)

var (
	samples = flag.Int("samples", 512, "paths to a pixel of the reference")
	minutes = flag.Float64("minutes", 1e6, "for the references; what is missing is reckoned from their noise")
	wide    = flag.Int("wide", 960, "width of the pictures that are compared, pixels")
)

// passPaths is how many paths to a pixel are traced between two savings.
const passPaths = 16

// The quick method against the path tracer at full size on three tops: the root
// mean square of the difference is at most 3.2 of 255. The reference takes an
// hour or so of processor time a top, is kept in out/reference and goes on where
// it was stopped; what it is of is known by a small picture, so that it starts
// anew when materials, shapes or lights have changed. It leaves the pictures and
// a map of the error, eight times as strong about mid-grey, beside it.
func TestFullSize(t *testing.T) {
	w, h := *wide, *wide*9/16
	for _, c := range []struct {
		name string
		d    design.Design
	}{{"poured", poured()}, {"corner", demo(t, 0, 0)}, {"oval", demo(t, 1, 0)}} {
		t.Run(c.name, func(t *testing.T) {
			s := built(c.d, SetOptions{})
			dir := filepath.Join("..", "..", "out", "reference")
			if err := os.MkdirAll(dir, 0o755); err != nil {
				t.Fatal(err)
			}
			k := keep{path: filepath.Join(dir, fmt.Sprintf("%s-%d.bin", c.name, w)), w: w, h: h}
			if err := k.trace(s, *samples); err != nil {
				t.Fatal(err)
			}
			a, b := developed(k.mean(0, 2), w, h), developed(k.mean(1, 2), w, h)
			want := developed(k.mean(0, 1), w, h)
			noise, _ := rmse(a, b)
			noise /= 2
			got := shotOf(t, s, View{Kind: Quarter}, Good, w, h, workers())
			root, mean := rmse(got, want)
			// The noise of the two halves is not of one piece: the product of what
			// the picture differs from each by has none. A reference of as many
			// paths as are asked for adds its own.
			paths := k.passes * passPaths
			bare := product(got, a, b)
			full := math.Sqrt(max(0, bare) + noise*noise*float64(paths)/float64(max(paths, *samples)))
			t.Logf("%s, %d x %d: %.2f of 255, mean %+.2f, without the noise of the reference; against %d paths %.2f, with noise %.2f; against %d paths %.2f",
				c.name, w, h, math.Sqrt(max(0, bare)), mean, paths, root, noise, max(paths, *samples), full)
			save(t, filepath.Join(dir, c.name+"-reference.png"), want)
			save(t, filepath.Join(dir, c.name+"-quick.png"), got)
			save(t, filepath.Join(dir, c.name+"-error.png"), errorMap(got, want))
			if *wide >= 960 && full > 3.2 {
				t.Errorf("the quick picture differs by %.2f of 255", full)
			}
		})
	}
}

// keep is a reference in the making: sums of linear light over even passes and
// over odd ones.
type keep struct {
	path   string
	w, h   int
	of     *image.NRGBA // what it is a picture of, small
	passes int
	sum    [2][]float32
}

func (k *keep) trace(s *Set, samples int) error {
	small, err := s.room().reference(context.Background(), s.camera(View{Kind: Quarter}, 64, 36), 0, 4, 0, nil)
	if err != nil {
		return err
	}
	k.of = developed(small, 64, 36)
	k.load()
	until := time.Now().Add(time.Duration(*minutes / 3 * float64(time.Minute)))
	for k.passes < 4 || k.passes*passPaths < samples && (k.passes&1 == 1 || time.Now().Before(until)) {
		// The two sums have seeds of their own, so that they tell the noise.
		c, err := s.room().reference(context.Background(), s.camera(View{Kind: Quarter}, k.w, k.h), k.passes/2*passPaths, passPaths, uint32(k.passes&1), nil)
		if err != nil {
			return err
		}
		sum := k.sum[k.passes&1]
		for i, v := range c {
			sum[3*i] += float32(v.X)
			sum[3*i+1] += float32(v.Y)
			sum[3*i+2] += float32(v.Z)
		}
		k.passes++
		if err := k.save(); err != nil {
			return err
		}
	}
	return nil
}

// load takes up what was kept, if it is of the same scene.
func (k *keep) load() {
	for i := range k.sum {
		k.sum[i] = make([]float32, 3*k.w*k.h)
	}
	head := 8 + len(k.of.Pix)
	b, err := os.ReadFile(k.path)
	if err != nil || len(b) != head+8*3*k.w*k.h {
		return
	}
	// The same paths in the same scene; the level of its light may have moved by
	// a hair.
	kept := &image.NRGBA{Pix: b[8:head], Stride: k.of.Stride, Rect: k.of.Rect}
	if off, _ := rmse(kept, k.of); off > 0.5 {
		return
	}
	k.passes = int(binary.LittleEndian.Uint64(b))
	for i := range k.sum {
		_ = binary.Read(bytes.NewReader(b[head+i*4*3*k.w*k.h:]), binary.LittleEndian, k.sum[i])
	}
}

func (k *keep) save() error {
	var b bytes.Buffer
	for _, v := range []any{uint64(k.passes), k.of.Pix, k.sum[0], k.sum[1]} {
		if err := binary.Write(&b, binary.LittleEndian, v); err != nil {
			return err
		}
	}
	if err := os.WriteFile(k.path+".new", b.Bytes(), 0o644); err != nil {
		return err
	}
	return os.Rename(k.path+".new", k.path)
}

// mean is the light of every step-th of the two sums from one on.
func (k *keep) mean(from, step int) []v3 {
	n := 0.0
	out := make([]v3, k.w*k.h)
	for i := from; i < 2; i += step {
		n += float64((k.passes + 1 - i) / 2 * passPaths)
		for j := range out {
			out[j] = out[j].add(v3{float64(k.sum[i][3*j]), float64(k.sum[i][3*j+1]), float64(k.sum[i][3*j+2])}.mul(passPaths))
		}
	}
	for j := range out {
		out[j] = out[j].mul(1 / n)
	}
	return out
}

func save(t *testing.T, path string, img image.Image) {
	t.Helper()
	var b bytes.Buffer
	if err := png.Encode(&b, img); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, b.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
}

// errorMap is the difference of two pictures, eight times as strong about grey.
func errorMap(got, want *image.NRGBA) *image.NRGBA {
	out := image.NewNRGBA(got.Rect)
	for i := range out.Pix {
		out.Pix[i] = 255
		if i&3 < 3 {
			out.Pix[i] = uint8(math.Max(0, math.Min(255, 128+8*(float64(got.Pix[i])-float64(want.Pix[i])))))
		}
	}
	return out
}

// product is the mean product of a picture's differences from two others.
func product(p, a, b *image.NRGBA) float64 {
	sum, n := 0.0, 0.0
	for i := range p.Pix {
		if i&3 < 3 {
			sum += (float64(p.Pix[i]) - float64(a.Pix[i])) * (float64(p.Pix[i]) - float64(b.Pix[i]))
			n++
		}
	}
	return sum / n
}
