package room

import (
	"context"
	"errors"
	"fmt"
	"image"
	"math"

	"example.org/castwright/export/picture"
	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/pose"
	"example.org/castwright/model/slab"
	"golang.org/x/image/draw"
)

// Side is where most of the light comes from.
type Side uint8

// The sides.
const (
	AsSeen Side = iota // as the photograph says, if it does
	FromLeft
	FromRight
	FromFront
	FromAbove
)

// Light is what the maker sets by hand. The zero value leaves the light as it was
// judged.
type Light struct {
	Brighter float64 // stops, -3 to 3
	Warmer   float64 // -1 to 1: from cooler to warmer
	From     Side
}

// Order says what is set into which photograph.
type Order struct {
	Photo   *image.RGBA // as it is seen, upright
	Focal35 float64     // see pose.Photo
	Corners pose.Corners
	W, D    float64 // of the marked rectangle, mm
	// Paper says that a sheet of white paper was marked, not the present top.
	Paper bool
	Place pose.Place
	Light Light // by hand
}

// Camera is the camera of the photograph.
func (o Order) Camera() (pose.Camera, error) {
	if o.Photo == nil || o.Photo.Rect.Empty() {
		return pose.Camera{}, errors.New("there is no photograph")
	}
	return pose.Find(o.Corners, o.W, o.D, pose.Photo{W: o.Photo.Rect.Dx(), H: o.Photo.Rect.Dy(), Focal35: o.Focal35})
}

// scaled is the order for its photograph at another width; the height follows.
func (o Order) scaled(w int) Order {
	b := o.Photo.Rect
	if w == b.Dx() {
		return o
	}
	h := max(1, int(math.Round(float64(w)*float64(b.Dy())/float64(b.Dx()))))
	out := image.NewRGBA(image.Rect(0, 0, w, h))
	draw.CatmullRom.Scale(out, out.Rect, o.Photo, b, draw.Src, nil)
	kx, ky := float64(w)/float64(b.Dx()), float64(h)/float64(b.Dy())
	for i, c := range o.Corners {
		o.Corners[i] = geom.Vec{X: c.X * kx, Y: c.Y * ky}
	}
	o.Photo = out
	return o
}

// Top is what is set in.
type Top struct {
	Design design.Design
	Solid  slab.Solid
	Set    *picture.Set // of them, without furniture of its own; nil to have it built
}

// Standing is where a top stands by itself: its back left corner at the marked
// one, its underside where the present top, old mm thick, has its own; 0 takes the
// present top for as thick as the new one. On paper it lies with its middle at the
// sheet's.
func Standing(t slab.Solid, w, d float64, paper bool, old float64) pose.Place {
	var at pose.Place
	if paper {
		b := t.Outline.Bounds()
		at.X, at.Y = (w-b.W())/2, -(d-b.H())/2
	}
	if old > 0 {
		at.Rise = t.Thickness - old
	}
	return at
}

// Result is a photograph with the top in it.
type Result struct {
	Image  *image.NRGBA
	Part   image.Rectangle // all that differs from the photograph lies in it
	Camera pose.Camera     // of the photograph at this size
	// Notes are what the maker should know of it, in sentences.
	Notes []string
}

// What is photographed about a top, mm: its shadow beside it, taps above it.
const (
	shadowReach = 260.0
	tapsReach   = 420.0
)

// Compose sets a top into a photograph, width pixels wide (0 for the photograph's
// own). show, if not nil, tells the stage in words and the share that is done.
func Compose(ctx context.Context, t Top, o Order, q picture.Quality, width int, show func(stage string, done float64)) (*Result, error) {
	if show == nil {
		show = func(string, float64) {}
	}
	if _, err := o.Camera(); err != nil {
		return nil, err
	}
	if !t.Solid.Outline.Bounds().Min.Finite() || len(t.Solid.Outline) < 3 {
		return nil, errors.New("there is no top to set in: draw its outline first")
	}
	show("photograph", 0)
	if width > 0 {
		if width > picture.MaxSide {
			return nil, fmt.Errorf("a picture %d pixels wide is out of range: give at most %d", width, picture.MaxSide)
		}
		o = o.scaled(width)
	}
	cam, err := o.Camera()
	if err != nil {
		return nil, err
	}
	lit := judge(o.Photo, o, cam)
	if t.Set == nil {
		t.Set = Build(t)
	}
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	p := cam.Placed(o.Place, t.Solid.Outline.Bounds(), t.Solid.Thickness)
	part := touched(p, t.Solid, o.Photo.Rect)
	out := &Result{Image: opaque(o.Photo), Camera: cam, Notes: notes(o, cam, t)}
	const outside = "The top lies outside the photograph."
	if part.Dx() < 8 || part.Dy() < 8 {
		out.Notes = append(out.Notes, outside)
		return out, nil
	}
	m, err := picture.RenderMatte(ctx, t.Set, picture.View{Kind: picture.Through, Camera: moved(p, part.Min)},
		lit.setting(o), q, part.Dx(), part.Dy(), show)
	if err != nil {
		return nil, err
	}
	show("laid over", 1)
	if !seen(m) {
		out.Notes = append(out.Notes, outside)
	}
	c := t.Solid.Outline.Bounds().Centre()
	mm := perPixel(p, c.X, c.Y, t.Solid.Thickness)
	faded(ctx, m, mm)
	if !o.Paper && ctx.Err() == nil { // of a sheet nobody knows how far the present top reaches
		slivers(out.Image, m, part.Min, o, cam, t.Solid.Thickness-o.Place.Rise, mm, lit.grain)
	}
	lay(ctx, out.Image, m, part.Min, lit, o.Place, cam)
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	out.Part = part
	return out, nil
}

// seen reports whether a matte shows anything of its top.
func seen(m *picture.Matte) bool {
	for i := 3; i < len(m.Top.Pix); i += 4 {
		if m.Top.Pix[i] > 0 {
			return true
		}
	}
	return false
}

// Build is the set of a top for photographs.
func Build(t Top) *picture.Set {
	return picture.Build(t.Design, t.Solid, picture.SetOptions{Bare: true})
}

// moved is a projection for a part of its picture.
func moved(p [3][4]float64, by image.Point) (out picture.Projection) {
	for k := range 4 {
		out[0][k] = p[0][k] - float64(by.X)*p[2][k]
		out[1][k] = p[1][k] - float64(by.Y)*p[2][k]
		out[2][k] = p[2][k]
	}
	return out
}

// touched is the part of the photograph that the top and its shadow may change.
func touched(p [3][4]float64, s slab.Solid, photo image.Rectangle) image.Rectangle {
	b := s.Outline.Bounds()
	box := geom.EmptyBox()
	for i := range 8 {
		q := [3]float64{b.Min.X - shadowReach, b.Min.Y - shadowReach, -shadowReach}
		if i&1 > 0 {
			q[0] = b.Max.X + shadowReach
		}
		if i&2 > 0 {
			q[1] = b.Max.Y + shadowReach/4
		}
		if i&4 > 0 {
			q[2] = s.Thickness + tapsReach
		}
		var u [3]float64
		for k := range 3 {
			u[k] = p[k][0]*q[0] + p[k][1]*q[1] + p[k][2]*q[2] + p[k][3]
		}
		if u[2] <= 1e-6 { // behind the camera: it may be anywhere
			return photo
		}
		box = box.Include(geom.Vec{X: u[0] / u[2], Y: u[1] / u[2]})
	}
	if !box.Min.Finite() || !box.Max.Finite() {
		return photo
	}
	far := func(x float64) int { return int(clamp(x, -1e6, 1e6)) }
	return image.Rect(far(math.Floor(box.Min.X)), far(math.Floor(box.Min.Y)), far(math.Ceil(box.Max.X)), far(math.Ceil(box.Max.Y))).Intersect(photo)
}

// setting is the light for the picture of the top.
func (l light) setting(o Order) picture.Setting {
	g := picture.Setting{Gain: l.gain}
	k := math.Exp2(clamp(o.Light.Brighter, -3, 3))
	warm := clamp(o.Light.Warmer, -1, 1)
	tint := [3]float64{math.Exp(0.22 * warm), 1, math.Exp(-0.30 * warm)}
	y := luma(tint)
	for i := range 3 {
		g.Gain[i] *= k * tint[i] / y
	}
	const rise = 48
	switch o.Light.From {
	case FromLeft:
		g.KeyTurn, g.KeyRise = -75, rise
	case FromRight:
		g.KeyTurn, g.KeyRise = 75, rise
	case FromFront:
		g.KeyTurn, g.KeyRise = 5, rise
	case FromAbove:
		g.KeyTurn, g.KeyRise = -20, 80
	default:
		if l.sure {
			g.KeyTurn, g.KeyRise = l.turn+o.Place.Turn*180/math.Pi, rise
		}
	}
	return g
}

// opaque is a copy of a photograph without holes.
func opaque(in *image.RGBA) *image.NRGBA {
	out := image.NewNRGBA(image.Rect(0, 0, in.Rect.Dx(), in.Rect.Dy()))
	for y := range in.Rect.Dy() {
		src := in.Pix[in.PixOffset(in.Rect.Min.X, in.Rect.Min.Y+y):]
		dst := out.Pix[y*out.Stride : (y+1)*out.Stride]
		copy(dst, src[:len(dst)])
		for x := 3; x < len(dst); x += 4 {
			dst[x] = 255
		}
	}
	return out
}

// lay lays the cut-out top and its shadow over the photograph from the place at
// on, in linear light, with the room's slope of light over the top and the grain of
// the photograph in it. It ends at once when the work is given up.
func lay(ctx context.Context, photo *image.NRGBA, m *picture.Matte, from image.Point, l light, place pose.Place, cam pose.Camera) {
	b := m.Top.Rect
	for y := range b.Dy() {
		if ctx.Err() != nil {
			return
		}
		row := photo.Pix[photo.PixOffset(from.X, from.Y+y):]
		for x := range b.Dx() {
			i := m.Top.PixOffset(x, y)
			a := float64(m.Top.Pix[i+3]) / 255
			s := float64(m.Shade.Pix[m.Shade.PixOffset(x, y)]) / 255
			if a == 0 && s == 1 {
				continue
			}
			k, noise := 1.0, 0.0
			if a > 0 {
				px, py := from.X+x, from.Y+y
				k = l.over(cam, geom.Vec{X: float64(px) + 0.5, Y: float64(py) + 0.5}, place.Rise)
				noise = a * l.grain * bell(px, py)
			}
			for c := range 3 {
				v := linear[row[4*x+c]]*s*(1-a) + linear[m.Top.Pix[i+c]]*a*k
				row[4*x+c] = uint8(clamp(encoded(v)+noise+0.5, 0, 255))
			}
		}
	}
}

// over is the light at a pixel of the top against that in the rectangle's middle.
func (l light) over(cam pose.Camera, pixel geom.Vec, rise float64) float64 {
	if l.slope == (geom.Vec{}) {
		return 1
	}
	at, ok := cam.OnPlane(pixel, rise)
	if !ok {
		return 1
	}
	return math.Exp(clamp(at.Sub(l.middle).Dot(l.slope), -mostSlope, mostSlope))
}

// bell is noise of about the normal distribution with a deviation of 1, the same
// at every call for a pixel.
func bell(x, y int) float64 {
	h := uint32(x)*0x9e3779b1 ^ uint32(y)*0x85ebca77
	sum := 0.0
	for range 4 {
		h ^= h >> 15
		h *= 0x2c1b3c6d
		h ^= h >> 12
		h *= 0x297a2d39
		h ^= h >> 15
		sum += float64(h>>8) / (1 << 24)
	}
	return (sum - 2) * math.Sqrt(3)
}

// When the size of what was marked is doubted, and how much of it may stick out from
// below the new top.
const (
	mostStrain = 5
	mostUnseen = 0.015
)

// notes says what the maker should know.
func notes(o Order, cam pose.Camera, t Top) (out []string) {
	if cam.Strain > mostStrain {
		out = append(out, "These corners do not look like a rectangle of this size: check its width and depth, and that they are not swapped.")
	}
	if !o.Paper {
		if s := uncovered(o, t); s > mostUnseen && s < 1 {
			out = append(out, fmt.Sprintf("The present top is larger than the new one: %.0f %% of it stay in the picture.", 100*s))
		}
	}
	return out
}

// uncovered is the share of the marked rectangle that the new top does not cover.
func uncovered(o Order, t Top) float64 {
	const n = 60
	box := t.Solid.Outline.Bounds()
	sin, cos := math.Sincos(o.Place.Turn)
	bare := 0
	for j := range n {
		for i := range n {
			x := o.W*(float64(i)+0.5)/n - o.Place.X
			y := -o.D*(float64(j)+0.5)/n - o.Place.Y
			p := geom.Vec{X: box.Min.X + cos*x + sin*y, Y: box.Max.Y - sin*x + cos*y}
			if !t.Solid.Outline.Contains(p) {
				bare++
			}
		}
	}
	return float64(bare) / (n * n)
}
