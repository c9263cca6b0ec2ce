package edit

import (
	"fmt"

	"example.org/castwright/model/design"
)

// AddGlass puts a glass bed into the face; without an ID it gets the next free
// one.
func AddGlass(g design.GlassBed) Edit { return glass.add(g, checkGlass) }

// SetGlass puts g in the place of the glass bed with its ID.
func SetGlass(g design.GlassBed) Edit { return glass.set(g, checkGlass) }

func checkGlass(_ design.Design, g design.GlassBed) error {
	return firstOf(checkBound("the grain", g.Grain), checkBound("the depth", g.Depth))
}

// MoveRegionNode puts a node of a closed region at a place: of a glass bed
// (region 0) or of one of a channel's regions. Chain 0 is the region's outer
// chain, chain k its k-th island.
func MoveRegionNode(id design.ID, region, chain, node int, to design.Point) Edit {
	name := "Move edge of " + nounOf(id)
	move := func(r *design.Region) error {
		nodes := r.Outer
		if chain != 0 {
			if chain < 0 || chain > len(r.Islands) {
				return fmt.Errorf("island %d: the region has %d islands: pick one of these",
					chain, len(r.Islands))
			}
			nodes = r.Islands[chain-1]
		}
		if node < 0 || node >= len(nodes) {
			return fmt.Errorf("corner %d: the chain has %d corners: pick one of these",
				node+1, len(nodes))
		}
		shiftNode(nodes, node, to.Sub(nodes[node].At))
		return nil
	}
	ofGlass := glass.change(name, id, func(_ design.Design, g *design.GlassBed) error {
		if region != 0 {
			return fmt.Errorf("region %d: a glass bed has one region: use the first", region+1)
		}
		return move(&g.Region)
	})
	ofChannel := channels.change(name, id, func(_ design.Design, c *design.Channel) error {
		if region < 0 || region >= len(c.Regions) {
			return fmt.Errorf("region %d: the channel has %d regions: pick one of these",
				region+1, len(c.Regions))
		}
		return move(&c.Regions[region])
	})
	return newEdit(name, func(d design.Design) (design.Design, error) {
		for i := range d.Channels {
			if d.Channels[i].ID == id {
				return ofChannel.change(d)
			}
		}
		return ofGlass.change(d)
	})
}
