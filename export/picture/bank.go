package picture

import "math"

// Light at the foot of a bank and on the bank itself, below the resin. All of it
// has been bent toward the vertical: it comes within the critical angle, so that an
// upright bank gets little of it, and the bank on the key light's side throws a
// shadow on the floor.

const (
	// Of light from all sides, what an upright wall gets over what the floor gets:
	// 2 (c/2 - sin 2c / 4) / (pi sin² c), with the critical angle c of resin.
	uprightShare = 0.163
	// The height of a normal, that is its cosine with the vertical, from which on
	// all of the light is before the wall: sin c.
	allBefore = 1 / resinIndex
	// The key light's half width as the resin bends it, a tangent.
	keyHalf = 0.21
	// What the rest of a channel lends a dark place in it.
	givenBack = 0.22
)

// reached is the light that comes to a place of bank or floor, depth mm below the
// resin's surface, over what comes to the open floor.
func (c *channel) reached(s *scene, q v3, depth float64) float64 {
	plan := c.plan.at(q.X, q.Y)
	if plan < -1.2*depth-8 {
		return 1
	}
	nz := c.steepness(q, s.body.t, plan)
	// From all sides.
	even := nz
	if nz < allBefore {
		even = uprightShare + nz*(allBefore-uprightShare)/allBefore
	}
	even *= 1 - 0.5*math.Exp(min(0, plan)/(0.45*depth+0.5))*nz
	// From the key light: where it came in, and how it meets the wall.
	in, _ := refracted(s.key.mul(-1), v3{Z: 1}, resinIndex)
	to := in.mul(-1)
	way := depth / to.Z
	entry := c.plan.at(q.X+to.X*way, q.Y+to.Y*way)
	soft := keyHalf*depth + 0.3
	key := 1 - smooth(-soft, soft, entry)
	if key > 0 && nz < 0.999 {
		g := c.plan.slope(q.X, q.Y)
		side := math.Sqrt(1 - nz*nz)
		key *= max(0, nz-side*(g.X*to.X+g.Y*to.Y)/to.Z)
	}
	// Floor and bank light each other a little.
	return givenBack + (1-givenBack)*(s.keyShare*key+(1-s.keyShare)*even)
}

// steepness is the height of the channel's normal at a place of its bank or floor,
// 1 where that is level.
func (c *channel) steepness(q v3, t, plan float64) float64 {
	h := q.Z - t
	r := min(footFillet, 0.6*c.depth)
	x, y := plan+bankDraft*max(0, -h)+r, -h-c.depth+r
	switch {
	case x <= 0:
		return 1
	case y <= 0:
		return bankDraft
	}
	return max(bankDraft, y/math.Sqrt(x*x+y*y))
}
