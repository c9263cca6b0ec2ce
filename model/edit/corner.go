package edit

import (
	"fmt"

	"example.org/castwright/model/design"
)

// SetCorner treats corner i: square, rounded or chamfered with its size.
func SetCorner(i int, c design.Corner) Edit {
	return outlineEdit(cornerName(c), func(nodes []design.Node) ([]design.Node, error) {
		if err := atCorner(nodes, i); err != nil {
			return nil, err
		}
		if err := checkCorner(c); err != nil {
			return nil, fmt.Errorf("corner %d: %w", i+1, err)
		}
		nodes[i].Corner = c
		return nodes, nil
	})
}

// SetAllCorners treats every corner of the outline alike.
func SetAllCorners(c design.Corner) Edit {
	return outlineEdit(cornerName(c)+"s", func(nodes []design.Node) ([]design.Node, error) {
		if err := checkCorner(c); err != nil {
			return nil, err
		}
		for i := range nodes {
			nodes[i].Corner = c
		}
		return nodes, nil
	})
}

func cornerName(c design.Corner) string {
	switch c.Kind {
	case design.CornerRounded:
		return "Round corner"
	case design.CornerChamfered:
		return "Chamfer corner"
	}
	return "Square corner"
}

func checkCorner(c design.Corner) error {
	if c.Kind > design.CornerChamfered {
		return fmt.Errorf("corner kind %d is not known: use square, rounded or chamfered", c.Kind)
	}
	return checkLength("the corner's size", c.Size, 0)
}
