package picture

import (
	"math"
	"sync"

	"example.org/castwright/model/design"
)

// stoneSize is one size of aggregate in space: a jittered lattice of cells with
// at most one stone in each.
type stoneSize struct {
	cell    float64 // mm
	share   float64 // of the cells that hold one
	toward  float64 // how far its colours are drawn to the cement's
	seed    uint32
	base    v3 // the cement's colour
	kept    *stones
	counted *counted
}

func newStoneSize(cell, share, toward float64, seed uint32, base v3) stoneSize {
	return stoneSize{cell, share, toward, seed, base, new(stones), new(counted)}
}

// grades of aggregate: greys to tans, a dark one and a quartz, in sRGB, with
// their shares; the sketch uses the same ones.
var grades = []struct {
	c     design.Colour
	share float64
}{
	{design.Colour{R: 80, G: 79, B: 77}, 0.10},
	{design.Colour{R: 98, G: 96, B: 93}, 0.13},
	{design.Colour{R: 122, G: 119, B: 114}, 0.15},
	{design.Colour{R: 143, G: 137, B: 128}, 0.15},
	{design.Colour{R: 160, G: 149, B: 134}, 0.14},
	{design.Colour{R: 139, G: 122, B: 105}, 0.09},
	{design.Colour{R: 176, G: 167, B: 153}, 0.13},
	{design.Colour{R: 196, G: 191, B: 182}, 0.11},
}

// gradeLight is the grades in linear light, gradeMean their mean.
var gradeLight, gradeMean = func() (l []v3, mean v3) {
	for _, g := range grades {
		l = append(l, linearOf(g.c))
		mean = mean.add(linearOf(g.c).mul(g.share))
	}
	return l, mean
}()

// stoneTone is the mean of what stones of one grade differ by.
const stoneTone = 1.01

// gradeColour is a stone's colour by its hash: one of the grades, drawn toward
// the cement's hue.
func gradeColour(h uint32, base v3, toward float64) v3 {
	at, k := draw(h, 70), 0
	for k < len(grades)-1 && at >= grades[k].share {
		at -= grades[k].share
		k++
	}
	return gradeToned(gradeLight[k].mul(stoneTone+0.26*(draw(h, 71)-0.5)), base, toward)
}

func gradeToned(c, base v3, toward float64) v3 {
	hue := base.mul(c.luma() / max(base.luma(), 0.02))
	return c.mix(hue, 0.25).mix(base, toward)
}

// The lattices of stones and chips are turned in space, so that their rows lie
// along no face: the rotation of the quaternion (13, -6, -8, -6).
var latticeRows = func() [3]v3 {
	const w, x, y, z = 13.0, -6.0, -8.0, -6.0
	n := w*w + x*x + y*y + z*z
	return [3]v3{
		{1 - 2*(y*y+z*z)/n, 2 * (x*y - w*z) / n, 2 * (x*z + w*y) / n},
		{2 * (x*y + w*z) / n, 1 - 2*(x*x+z*z)/n, 2 * (y*z - w*x) / n},
		{2 * (x*z - w*y) / n, 2 * (y*z + w*x) / n, 1 - 2*(x*x+y*y)/n},
	}
}()

func toLattice(p v3) v3 {
	return v3{p.dot(latticeRows[0]), p.dot(latticeRows[1]), p.dot(latticeRows[2])}
}

func fromLattice(q v3) v3 {
	return latticeRows[0].mul(q.X).add(latticeRows[1].mul(q.Y)).add(latticeRows[2].mul(q.Z))
}

// at finds the stone at p. A stone is a skewed block with two corners broken
// off: angular, as crushed rock is. edge is how far inside its faces p lies, in mm.
func (z *stoneSize) at(p v3) (s *stone, edge float64) {
	q := toLattice(p).mul(1 / z.cell)
	i0, j0, k0 := int32(math.Floor(q.X-0.5)), int32(math.Floor(q.Y-0.5)), int32(math.Floor(q.Z-0.5))
	for n := range int32(8) {
		i, j, k := i0+n&1, j0+n>>1&1, k0+n>>2
		// No stone of this cell comes as near, wherever in it that lies.
		ax, ay, az := apart(q.X-float64(i)), apart(q.Y-float64(j)), apart(q.Z-float64(k))
		if ax*ax+ay*ay+az*az > 0.70*0.70*1.1 {
			continue
		}
		h := hash4(uint32(i), uint32(j), uint32(k), z.seed)
		if unit01(h) > z.share {
			continue
		}
		c, r := lies(i, j, k, h)
		if d := q.sub(c); d.dot(d) > reach2(r) {
			continue
		}
		s := z.stoneOf(i, j, k, h)
		if edge := s.depth(q); edge > 0 {
			return s, edge * z.cell
		}
	}
	return nil, 0
}

var stoneNormals = [8]v3{{X: 1}, {X: -1}, {Y: 1}, {Y: -1}, {Z: 1}, {Z: -1}, {0.7, 0.7, 0.2}, {-0.6, 0.2, 0.7}}

var stoneFaces = [8]float64{0.80, 0.80, 0.66, 0.66, 0.72, 0.72, 0.74, 0.74}

// lies is where the stone of a cell lies, in cells, and its mean radius.
func lies(i, j, k int32, h uint32) (c v3, r float64) {
	return v3{
		float64(i) + 0.5 + 0.56*(draw(h, 1)-0.5),
		float64(j) + 0.5 + 0.56*(draw(h, 2)-0.5),
		float64(k) + 0.5 + 0.56*(draw(h, 3)-0.5)}, 0.44 + 0.26*draw(h, 4)
}

// reach2 is the square of the reach beyond which nothing of a stone lies.
func reach2(r float64) float64 { return r * r * 1.1 }

// apart is how far at least a place x in a cell is from the middle of a stone.
func apart(x float64) float64 { return max(0, math.Abs(x-0.5)-0.28) }

// stony is what a place of concrete with aggregate shows: the largest stone that p
// lies in, nil for none, over the cement's colour. Sizes that a pixel can hardly tell
// apart fade into their mean. Where found is not nil only its stones are tried, of
// sizes none of which can have been missed.
func (c *concrete) stony(p v3, ground *cement, sizes []stoneSize, footprint float64, found *handful) (v3, *stone) {
	var sum v3
	left := 1.0
	for i := range sizes {
		z := &sizes[i]
		if faded := smooth(0.4, 1.1, footprint/z.cell); faded > 0 {
			sum = sum.add(blended(ground.look(), sizes[i:]).mul(left * faded))
			if left *= 1 - faded; left == 0 {
				return sum, nil
			}
		}
		if s, edge := z.among(p, footprint, found); s != nil {
			return sum.add(s.look(p, ground, edge, footprint).mul(left)), s
		}
	}
	return sum.add(ground.look().mul(left)), nil
}

// blended is the colour of cement with stones in it that are too small to see.
func blended(cement v3, sizes []stoneSize) v3 {
	out := cement
	for i := len(sizes) - 1; i >= 0; i-- {
		z := &sizes[i]
		held, full := z.cover()
		out = out.mul(1 - held).add(cement.mul(cementRim * (held - full))).add(gradeToned(gradeMean.mul(stoneTone), z.base, z.toward).mul(full))
	}
	return out
}

// The cement by a stone is a little darker, over so many mm inside its faces.
const (
	cementRim = 0.86
	rimWidth  = 0.35
)

// cover is the share of a face that stones of this size hold, and the share of it
// that has their colour in full: what is missing is rims. It is counted at places
// spread evenly in space.
func (z *stoneSize) cover() (held, full float64) {
	z.counted.once.Do(func() {
		const places = 4000
		for i := range places {
			_, edge := z.at(v3{
				1000 * fract(float64(i)*0.8191725134), 1000 * fract(float64(i)*0.6710436067), 1000 * fract(float64(i)*0.5497004779)})
			if edge > 0 {
				z.counted.held += 1.0 / places
				z.counted.full += min(1, edge/rimWidth) / places
			}
		}
	})
	return z.counted.held, z.counted.full
}

// counted is what [stoneSize.cover] has found.
type counted struct {
	once       sync.Once
	held, full float64
}

// look is the stone's colour at p, edge mm inside its faces: grains of the rock,
// veins in a few, a dark line where cement meets it.
func (s *stone) look(p v3, ground *cement, edge, footprint float64) v3 {
	spot := noise3(p.mul(1 / 0.8).add(v3{Z: float64(s.h & 31)}))
	k := s.colour.wide().mul(1 + float64(s.grain)*spot*min(1, 1/max(0.3, footprint)))
	if s.veined {
		vein := math.Abs(noise3(p.mul(1 / (0.45 * s.of.cell)).add(v3{X: float64(s.h & 63)})))
		k = k.mix(v3{0.5, 0.48, 0.45}, 0.5*(1-smooth(0, 0.10, vein)))
	}
	if edge >= rimWidth {
		return k
	}
	return ground.look().mul(cementRim).mix(k, edge/rimWidth)
}
