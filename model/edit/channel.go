package edit

import (
	"fmt"
	"slices"

	"example.org/castwright/model/design"
	"example.org/castwright/model/units"
)

// AddChannel puts a channel into the face; without an ID it gets the next free
// one.
func AddChannel(c design.Channel) Edit { return channels.add(c, checkChannel) }

// SetChannel puts c in the place of the channel with its ID.
func SetChannel(c design.Channel) Edit { return channels.set(c, checkChannel) }

// AddRiver adds a branch, or another river, to a channel.
func AddRiver(id design.ID, r design.River) Edit {
	nodes := slices.Clone(r.Nodes)
	return channels.change("Add river", id, func(_ design.Design, c *design.Channel) error {
		if len(nodes) < 2 {
			return fmt.Errorf("a river needs at least 2 nodes and has %d: add places to run through",
				len(nodes))
		}
		r.Nodes = slices.Clone(nodes)
		c.Rivers = append(c.Rivers, r)
		return checkChannel(design.Design{}, *c)
	})
}

// RemoveRiver takes one river out of a channel. The last river or region of a
// channel is removed with [RemovePart].
func RemoveRiver(id design.ID, river int) Edit {
	remove := channels.change("Remove river", id, func(_ design.Design, c *design.Channel) error {
		if err := atRiver(c, river); err != nil {
			return err
		}
		if len(c.Rivers)+len(c.Regions) == 1 {
			return fmt.Errorf("this river is all that the channel has: remove the channel")
		}
		c.Rivers = slices.Delete(c.Rivers, river, river+1)
		return nil
	})
	return newEdit(remove.Name, func(d design.Design) (design.Design, error) {
		out, err := remove.change(d)
		if err != nil {
			return d, err
		}
		out.Relations = withoutRiver(out.Relations, id, river)
		return out, nil
	})
}

// withoutRiver are relations when a river has gone: those of its ends go, and
// those of the rivers after it count one less.
func withoutRiver(list []design.Relation, id design.ID, river int) []design.Relation {
	var out []design.Relation
	for _, r := range list {
		if r.Kind == design.RelationEdge && r.Part == id {
			if r.River == river {
				continue
			}
			if r.River > river {
				r.River--
			}
		}
		out = append(out, r)
	}
	return out
}

// MoveRiverNode puts a node of a river at a place.
func MoveRiverNode(id design.ID, river, node int, to design.Point) Edit {
	return riverEdit("Move river", id, river, func(r *design.River) error {
		if err := atRiverNode(r, node); err != nil {
			return err
		}
		r.Nodes[node].At = to
		return nil
	})
}

// InsertRiverNode puts a node into a river before its node number before; 0
// and the number of nodes make the river longer. Its width is the mean of its
// neighbours'.
func InsertRiverNode(id design.ID, river, before int, at design.Point) Edit {
	return riverEdit("Add river node", id, river, func(r *design.River) error {
		if before < 0 || before > len(r.Nodes) {
			return fmt.Errorf("node %d: the river has %d nodes: pick a place among them",
				before+1, len(r.Nodes))
		}
		var width units.Length
		switch {
		case len(r.Nodes) == 0:
			return fmt.Errorf("the river has no nodes: draw it anew")
		case before == 0:
			width = r.Nodes[0].Width
		case before == len(r.Nodes):
			width = r.Nodes[before-1].Width
		default:
			width = (r.Nodes[before-1].Width + r.Nodes[before].Width) / 2
		}
		r.Nodes = slices.Insert(r.Nodes, before, design.RiverNode{At: at, Width: width})
		return nil
	})
}

// RemoveRiverNode takes a node out of a river.
func RemoveRiverNode(id design.ID, river, node int) Edit {
	return riverEdit("Remove river node", id, river, func(r *design.River) error {
		if err := atRiverNode(r, node); err != nil {
			return err
		}
		if len(r.Nodes) <= 2 {
			return fmt.Errorf("a river needs 2 nodes: remove the river")
		}
		r.Nodes = slices.Delete(r.Nodes, node, node+1)
		return nil
	})
}

// SetRiverWidth sets the width at a node of a river; with node -1 at all of
// them.
func SetRiverWidth(id design.ID, river, node int, width units.Length) Edit {
	return riverEdit("Change river width", id, river, func(r *design.River) error {
		if err := checkLength("the width", width, 0); err != nil {
			return err
		}
		if node == -1 {
			for i := range r.Nodes {
				r.Nodes[i].Width = width
			}
			return nil
		}
		if err := atRiverNode(r, node); err != nil {
			return err
		}
		r.Nodes[node].Width = width
		return nil
	})
}

// SetRiverEnds says how a river starts and ends.
func SetRiverEnds(id design.ID, river int, start, end design.RiverEnd) Edit {
	return riverEdit("Change river ends", id, river, func(r *design.River) error {
		if start > design.EndOpen || end > design.EndOpen {
			return fmt.Errorf("the kind of end is not known: use round, flat or open")
		}
		r.Start, r.End = start, end
		return nil
	})
}

func riverEdit(name string, id design.ID, river int, f func(*design.River) error) Edit {
	return channels.change(name, id, func(_ design.Design, c *design.Channel) error {
		if err := atRiver(c, river); err != nil {
			return err
		}
		if err := f(&c.Rivers[river]); err != nil {
			return fmt.Errorf("river %d: %w", river+1, err)
		}
		return nil
	})
}

func atRiver(c *design.Channel, river int) error {
	if river < 0 || river >= len(c.Rivers) {
		return fmt.Errorf("river %d: the channel has %d rivers: pick one of these",
			river+1, len(c.Rivers))
	}
	return nil
}

func atRiverNode(r *design.River, node int) error {
	if node < 0 || node >= len(r.Nodes) {
		return fmt.Errorf("node %d: the river has %d nodes: pick one of these",
			node+1, len(r.Nodes))
	}
	return nil
}

func checkChannel(_ design.Design, c design.Channel) error {
	for _, r := range c.Rivers {
		for i, n := range r.Nodes {
			if err := checkBound(fmt.Sprintf("the width at node %d", i+1), n.Width); err != nil {
				return err
			}
		}
	}
	return firstOf(
		checkBound("the depth", c.Depth),
		checkBound("the top coat", c.Fill.TopCoat),
	)
}
