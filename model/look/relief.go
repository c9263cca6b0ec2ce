package look

import (
	"math"
	"sync"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/scene"
)

// Rim is a run of edge whose profile shows from above: concrete lies to the left
// of the direction of its points.
type Rim struct {
	Points  []geom.Vec
	Profile design.Profile
	Closed  bool
}

// fallOf is how a profile falls away in plan: the band's breadth, and the sine
// of the slope at a share t of it, 0 at the edge and 1 where the face begins.
func fallOf(p design.Profile, thickness float64) (breadth float64, sine func(t float64) float64) {
	size := p.Size.MM()
	round := func(t float64) float64 { return 1 - t }
	switch p.Kind {
	case design.ProfileEased, design.ProfileRounded:
		return min(size, thickness), round
	case design.ProfileBevelled:
		return min(size, thickness), func(float64) float64 { return math.Sqrt2 / 2 }
	case design.ProfileHalfRound:
		if size <= 0 {
			size = thickness / 2
		}
		return min(size, thickness), round
	case design.ProfileFullRound:
		return thickness / 2, round
	}
	return 0, nil
}

// Relief is the light and shade that edge profiles give the face: dark or white
// with alpha, to be laid over the concrete. Thickness in mm; perMM is the
// picture's pixels to the millimetre.
func Relief(rims []Rim, thickness float64, polish int, perMM float64) scene.Rows {
	k := newKey("relief").number(thickness).number(float64(polish))
	cell := cellFor(min(perMM, 2))
	k.number(cell)
	box, reach := geom.EmptyBox(), 0.0
	for _, r := range rims {
		if r.Profile.Kind == design.ProfileRough {
			reach = max(reach, min(60, r.Profile.Size.MM()))
		}
		k.loops([]geom.Loop{r.Points}).number(float64(r.Profile.Kind)).number(r.Profile.Size.MM())
		box = box.Union(geom.Loop(r.Points).Bounds())
	}
	pieces := piecesOf(rims, thickness, cell)
	return newMosaic(k, cell, 64, perMM, box.Grow(2*cell+reach), false, func(g grid) []uint32 {
		return g.relief(pieces, polish)
	})
}

// fall is what the nearest edge does to a texel.
type fall struct {
	height float32 // of the surface, mm below the face; 0 for none
	light  float32
}

// spare is grids of falls to be used again.
var spare = sync.Pool{New: func() any { return new([]fall) }}

// relief is the shade of all pieces of edge that reach into a grid.
func (g grid) relief(pieces []piece, polish int) []uint32 {
	held := spare.Get().(*[]fall)
	defer spare.Put(held)
	var falls []fall
	gloss := [...]float64{0, 0.02, 0.07, 0.16, 0.30}[max(0, min(4, polish))]
	box := g.box()
	for i := range pieces {
		e := &pieces[i]
		if !meets(box, e.box) {
			continue
		}
		if falls == nil {
			if n := g.w * g.h; len(*held) != n {
				*held = make([]fall, n)
			}
			falls = *held
			clear(falls)
		}
		if e.band == nil {
			g.broken(falls, e)
		} else {
			g.slope(falls, e, gloss)
		}
	}
	if falls == nil {
		return nil
	}
	pix := make([]uint32, g.w*g.h)
	for i, f := range falls {
		if f.height != 0 {
			pix[i] = shades[int(max(0, min(shadeSteps, f.light*shadeSteps/2)))]
		}
	}
	return pix
}

// shadeSteps is how finely shades holds brightnesses from 0 to 2.
const shadeSteps = 512

// shades is what lifts or lowers a surface of brightness 1 to another one, in
// sRGB: white with alpha, or black.
var shades = func() (t [shadeSteps + 1]uint32) {
	for i := range t {
		v := float32(math.Pow(2*float64(i)/shadeSteps, 1/2.2))
		if v >= 1 {
			t[i] = premultiplied(255, 255, 255, min(0.85, (v-1)*1.6))
		} else {
			t[i] = premultiplied(8, 8, 12, min(0.9, 1-v))
		}
	}
	return t
}()

// roughDepth is how deep a rough edge is broken, mm.
func roughDepth(p design.Profile) float64 { return max(4, min(60, p.Size.MM())) }

// bandSteps is how finely a profile is known across its band.
const bandSteps = 128

// band is a profile across its breadth, from the edge inward: how steep it is,
// and how far below the face.
type band struct {
	breadth float64
	sine    [bandSteps + 1]float64
	height  [bandSteps + 1]float32
}

func bandOf(breadth float64, sine func(float64) float64) *band {
	b := &band{breadth: breadth}
	for i := range b.sine {
		t := float64(i) / bandSteps
		s := sine(t)
		b.sine[i] = s
		b.height[i] = float32(max(1e-3, breadth*(1-math.Sqrt(max(0, 1-s*s)))+1e-3*(1-t)))
	}
	return b
}

// piece is a straight piece of an edge.
type piece struct {
	p, q geom.Vec
	box  geom.Box // that it may shade
	// before and past are how far beyond its ends it shades the face: round
	// about an inside corner, which no other piece reaches.
	before, past float64
	band         *band // nil for a rough edge
	rough        float64
	along        float64 // from the edge's start
}

// piecesOf cuts rims into their pieces, for texels of cell mm.
func piecesOf(rims []Rim, thickness, cell float64) []piece {
	var out []piece
	for _, r := range rims {
		e := piece{}
		reach := 0.0
		if r.Profile.Kind == design.ProfileRough {
			e.rough = roughDepth(r.Profile)
			reach = 1.6 * e.rough
		} else {
			breadth, sine := fallOf(r.Profile, thickness)
			if !(breadth > 0 && breadth <= 500) {
				continue
			}
			e.band = bandOf(breadth, sine)
			reach = breadth + 2*cell
		}
		n := len(r.Points)
		if !r.Closed {
			n--
		}
		for i := range n {
			j := (i + 1) % len(r.Points)
			e.p, e.q = r.Points[i], r.Points[j]
			e.box = geom.EmptyBox().Include(e.p).Include(e.q).Grow(reach)
			if e.band != nil {
				e.before, e.past = r.reach(i, e.band.breadth, cell), r.reach(j, e.band.breadth, cell)
			}
			out = append(out, e)
			e.along += e.p.Dist(e.q)
		}
	}
	return out
}

// reach is how far beyond its point i the pieces of a rim go: as far as the wedge
// between them is wide at the band's inner side, all round at a sharp inside
// corner and where the rim ends.
func (r Rim) reach(i int, breadth, cell float64) float64 {
	n := len(r.Points)
	ease := 1.5 * cell
	if !r.Closed && (i == 0 || i == n-1) {
		return breadth + ease
	}
	u, v := r.Points[i].Sub(r.Points[(i+n-1)%n]), r.Points[(i+1)%n].Sub(r.Points[i])
	turn := math.Atan2(u.Cross(v), u.Dot(v))
	switch {
	case turn >= 0: // outside corner: the pieces overlap
		return ease
	case turn > -0.5:
		return ease + breadth*math.Tan(-turn/2)
	}
	return breadth + ease
}

// slope lays the fall of one piece of edge, where it is the lowest.
func (g grid) slope(falls []fall, e *piece, gloss float64) {
	p, q, band, breadth := e.p, e.q, e.band, e.band.breadth
	d := q.Sub(p)
	length := d.Norm()
	if length < 1e-9 {
		return
	}
	u := d.Mul(1 / length)
	facing := u.Left().Mul(-1).Dot(Light) // how far the edge looks toward the light
	// A long piece has many texels of each slope: their light is reckoned once.
	var light [bandSteps + 1]float32
	long := length*breadth > 2*bandSteps*g.cell*g.cell
	if long {
		for i, s := range band.sine {
			light[i] = float32(lit(s, facing, gloss))
		}
	}
	ease := 1.5 * g.cell // beyond the edge and the band, for smooth sampling
	a, b := p.Sub(u.Mul(e.before)), q.Add(u.Mul(e.past))
	in, out := u.Left().Mul(breadth+ease), u.Left().Mul(-ease)
	box := geom.EmptyBox().Include(a.Add(in)).Include(a.Add(out)).Include(b.Add(in)).Include(b.Add(out))
	y0, y1 := within(g.row(box.Min.Y), g.row(box.Max.Y)+1, g.h)
	for j := y0; j < y1; j++ {
		y := g.y(j)
		// The row meets the piece's band, and the strip across its ends.
		x0, x1 := box.Min.X, box.Max.X
		if math.Abs(u.Y) > 1e-9 {
			lo, hi := p.X+((y-p.Y)*u.X+ease)/u.Y, p.X+((y-p.Y)*u.X-breadth-ease)/u.Y
			x0, x1 = max(x0, min(lo, hi)), min(x1, max(lo, hi))
		}
		if math.Abs(u.X) > 1e-9 {
			lo, hi := p.X+(-e.before-(y-p.Y)*u.Y)/u.X, p.X+(length+e.past-(y-p.Y)*u.Y)/u.X
			x0, x1 = max(x0, min(lo, hi)), min(x1, max(lo, hi))
		}
		i0, i1 := within(g.column(x0), g.column(x1)+1, g.w)
		for i := i0; i < i1; i++ {
			at := geom.Vec{X: g.x(i) - p.X, Y: y - p.Y}
			along, in := at.Dot(u), u.Cross(at)
			toward, round := facing, false
			switch {
			case in < -ease || along < -e.before || along > length+e.past:
				continue
			case in > 0 && (along < 0 || along > length):
				off := at.Sub(u.Mul(max(0, min(length, along))))
				in = off.Norm()
				toward, round = -off.Dot(Light)/in, true
			}
			if in > breadth {
				continue
			}
			t := int(max(0, in/breadth*bandSteps) + 0.5)
			f := &falls[j*g.w+i]
			if band.height[t] <= f.height {
				continue
			}
			f.height = band.height[t]
			if long && !round {
				f.light = light[t]
			} else {
				f.light = float32(lit(band.sine[t], toward, gloss))
			}
		}
	}
}

// lit is the brightness, as against a level face, of a surface that slopes with
// the given sine and looks toward the light by toward (1 straight at it).
func lit(sine, toward, gloss float64) float64 {
	cosine := math.Sqrt(max(0, 1-sine*sine))
	key := lightXY*toward*sine + lightZ*cosine
	v := 0.42 + 0.58*max(0, key)/lightZ
	// The mirror of the light is seen where the surface leans half way to it.
	if toward > 0.2 && gloss > 0 {
		off := (math.Atan2(sine*toward, cosine) - 0.36) / 0.24
		v += gloss * 3 * math.Exp(-off*off)
	}
	return v
}

// broken lays one piece of a rough edge: facets of broken stone that lean
// outward, deeper and shallower along the edge.
func (g grid) broken(falls []fall, e *piece) {
	const facet = 8.0 // mm
	p, q, along, depth := e.p, e.q, e.along, e.rough
	d := q.Sub(p)
	length := d.Norm()
	if length < 1e-9 {
		return
	}
	u := d.Mul(1 / length)
	out := u.Left().Mul(-1)
	reach := 1.5 * depth
	b := geom.EmptyBox().Include(p).Include(q).Grow(reach)
	i0, i1 := within(g.column(b.Min.X), g.column(b.Max.X)+1, g.w)
	j0, j1 := within(g.row(b.Min.Y), g.row(b.Max.Y)+1, g.h)
	for j := j0; j < j1; j++ {
		for i := i0; i < i1; i++ {
			at := geom.Vec{X: g.x(i), Y: g.y(j)}
			e := at.Sub(p)
			s := e.Dot(u)
			if s < -reach*0.3 || s > length+reach*0.3 {
				continue
			}
			in := -e.Dot(out)
			band := depth * (0.62 + 0.22*float64(clouds().at(float32((along+s)/2.2), 7)))
			if in < -reach || in > band {
				continue
			}
			h := float32(1 + (band - in)) // the outermost facets lie lowest
			f := &falls[j*g.w+i]
			if h <= f.height {
				continue
			}
			f.height, f.light = h, float32(facetLight(at, out, facet, in/band))
		}
	}
}

// Broken is a rough edge's line as it is seen: the mean line with chips out of
// it and knobs left on it, up to a third of the liner's thickness either way.
// The ends stay where they are.
func Broken(points []geom.Vec, size float64, seed uint32) []geom.Vec {
	if len(points) < 2 || !(size > 0) {
		return points
	}
	size = min(size, 60)
	total := 0.0
	for i := 1; i < len(points); i++ {
		total += points[i].Dist(points[i-1])
	}
	if !(total > 4 && total < 1e5) {
		return points
	}
	d := diceOf(62, int(seed), 0)
	out := []geom.Vec{points[0]}
	k, before := 0, 0.0 // the piece in hand and the length before it
	for s := float64(d.between(2, 5)); s < total-2; s += float64(d.between(2, 8)) {
		for k+2 < len(points) && before+points[k].Dist(points[k+1]) < s {
			before += points[k].Dist(points[k+1])
			k++
		}
		p, q := points[k], points[k+1]
		u := q.Sub(p).Unit()
		taper := min(1, s/12, (total-s)/12)
		swell := 0.20 * size * float64(clouds().at(float32(s/2.6), float32(seed)*9))
		chip := 0.11 * size * float64(d.between(-1, 1))
		if d.roll() < 0.12 {
			chip -= 0.20 * size * float64(d.roll())
		}
		off := taper * (swell + chip)
		out = append(out, p.Add(u.Mul(s-before)).Sub(u.Left().Mul(off)))
	}
	return append(out, points[len(points)-1])
}

// facetLight is the light on the facet of broken stone at a place.
func facetLight(at, out geom.Vec, size float64, t float64) float64 {
	ci, cj := int(math.Floor(at.X/size)), int(math.Floor(at.Y/size))
	best, next := math.MaxFloat64, math.MaxFloat64
	var d *dice
	for j := cj - 1; j <= cj+1; j++ {
		for i := ci - 1; i <= ci+1; i++ {
			o := diceOf(61, i, j)
			c := geom.Vec{X: (float64(i) + float64(o.roll())) * size, Y: (float64(j) + float64(o.roll())) * size}
			switch l := c.Sub(at).Norm(); {
			case l < best:
				best, next, d = l, best, o
			case l < next:
				next = l
			}
		}
	}
	lean := out.Add(geom.Vec{X: float64(d.between(-1, 1)), Y: float64(d.between(-1, 1))}.Mul(1.2))
	sine := float64(d.between(0.25, 0.90))
	v := lit(sine, lean.Dot(Light)/max(1, lean.Norm()), 0)*float64(d.between(0.86, 1.12)) - 0.06
	if next-best < 0.9 {
		v -= 0.16 * (1 - (next-best)/0.9) // a crack between two facets
	}
	return v * (0.74 + 0.26*min(1, max(0, t+0.15)*1.6))
}
