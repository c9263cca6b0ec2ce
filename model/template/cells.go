package template

import (
	"math"

	"example.org/castwright/model/geom"
)

// cells find points near a place: squares as wide as the reach hold them.
type cells map[[2]int64][]int

// maxCrowd is how many points in one cell are looked at: more are a texture.
const maxCrowd = 32

func cell(p geom.Vec, size float64) [2]int64 {
	return [2]int64{int64(math.Floor(p.X / size)), int64(math.Floor(p.Y / size))}
}

func (c cells) add(p geom.Vec, size float64, i int) {
	k := cell(p, size)
	if len(c[k]) < maxCrowd {
		c[k] = append(c[k], i)
	}
}

func (c cells) visit(p geom.Vec, size float64, f func(int)) {
	k := cell(p, size)
	for dx := int64(-1); dx <= 1; dx++ {
		for dy := int64(-1); dy <= 1; dy++ {
			for _, i := range c[[2]int64{k[0] + dx, k[1] + dy}] {
				f(i)
			}
		}
	}
}
