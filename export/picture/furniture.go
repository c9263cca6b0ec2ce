package picture

import (
	"math"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/slab"
)

const floorBelow = 860.0 // mm from the face to the floor

// ownLegs is the legs that the design has, down to the floor.
func ownLegs(s slab.Solid, floor float64) []triangle {
	var out []triangle
	for _, b := range s.Bearings {
		if b.Kind != design.SupportLeg {
			continue
		}
		for _, l := range b.Loops {
			if len(l) > 2 {
				out = append(out, loft(ccw(l), []ring{{0, 1, floor}, {0, 1, -0.2}}, matWood)...)
			}
		}
	}
	return out
}

// cabinet is a plain one, or a pedestal when nothing leans on a wall.
func cabinet(s slab.Solid, walls bool, floor float64) []triangle {
	outline := ccw(s.Outline)
	if !walls {
		// Set back all round by a share of the top's width, on a plinth.
		in := 0.8 * outline.Area() / outline.Perimeter()
		foot := in + 30
		return loft(outline, []ring{{foot, 1, floor}, {foot, 1, floor + 79}, {foot, 1, floor + 80}, {in, 1, floor + 80.5},
			{in, 1, floor + 82}, {in, 1, -2}, {in, 1, -0.2}}, matWood)
	}
	// Set back on the seen sides alone: at a wall the cabinet fills the corner.
	rows := make([][]v3, 4)
	for i, z := range [4]float64{floor, floor + 80, floor + 80.5, -0.2} {
		rows[i] = setBack(s, [4]float64{70, 70, 24, 24}[i], z)
	}
	return gridMesh(rows, true, matWood)
}

// setBack is the outline moved in by d where it is seen and held where it
// stands at a wall.
func setBack(s slab.Solid, d, z float64) []v3 {
	var row []v3
	n := len(s.Sides)
	for i, side := range s.Sides {
		before := s.Sides[(i+n-1)%n]
		pts := side.Points
		for j := range len(pts) - 1 {
			var a geom.Vec
			da, db := d, d
			if side.Wall {
				db = -1
			}
			if j > 0 {
				a, da = pts[j].Sub(pts[j-1]), db
			} else {
				m := len(before.Points)
				a = before.Points[m-1].Sub(before.Points[m-2])
				if before.Wall {
					da = -1
				}
			}
			na, nb := a.Unit().Left(), pts[j+1].Sub(pts[j]).Unit().Left()
			p := pts[j].Add(na.Mul(da))
			// The meeting of the two moved sides, or near it where they run on.
			if k := na.Cross(nb); math.Abs(k) > 0.05 {
				p = pts[j].Add(nb.Left().Mul(-da / k)).Add(na.Left().Mul(db / k))
			}
			row = append(row, v3{p.X, p.Y, z})
		}
	}
	return row
}

func ccw(l geom.Loop) geom.Loop {
	if l.Area() < 0 {
		return l.Reversed()
	}
	return l
}

// beaker is a dark beaker: without something dark nearby a polished face shows
// nothing of its polish.
func beaker(at v3) []triangle {
	p := []geom.Vec{{X: 0.1, Y: 0.1}, {X: 33, Y: 0.1}, {X: 36, Y: 2}, {X: 39, Y: 60}, {X: 40.5, Y: 108}, {X: 39.6, Y: 110.5}, {X: 38, Y: 108}, {X: 36, Y: 60}, {X: 33, Y: 6}, {X: 0.1, Y: 5}}
	return lathe(at, p, 56, matStoneware)
}

// beakerSpot finds a free place at the back of the top; ok is false when there
// is none.
func (s *Set) beakerSpot() (geom.Vec, bool) {
	b := s.bounds
	best, found, score := geom.Vec{}, false, 0.0
	for i := range 24 {
		for j := range 8 {
			p := geom.Vec{X: b.Min.X + b.W()*(float64(i)+0.5)/24, Y: b.Max.Y - 70 - 18*float64(j)}
			free := -s.body.outline.at(p.X, p.Y)
			free = min(free, s.body.openings.at(p.X, p.Y)-30)
			for k := range s.body.channels {
				free = min(free, s.body.channels[k].plan.at(p.X, p.Y))
			}
			for _, bowl := range s.solid.Bowls {
				free = min(free, p.Dist(bowl.Loop.Bounds().Centre())-0.6*bowl.Loop.Bounds().W()-20)
			}
			if free < 60 {
				continue
			}
			// Off the middle, toward the far side of the key light.
			if v := 3 - math.Abs((p.X-b.Min.X)/b.W()-0.80)*4 - float64(j)*0.05; !found || v > score {
				best, found, score = p, true, v
			}
		}
	}
	return best, found
}
