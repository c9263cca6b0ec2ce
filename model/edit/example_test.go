package edit_test

import (
	"fmt"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/units"
)

func ExampleHistory() {
	top := design.Design{Outline: edit.BowedFront(1500*units.Millimetre, 560*units.Millimetre, 60*units.Millimetre)}
	h := edit.NewHistory(design.Job{Options: []design.Option{{Name: "A", Design: top}}})
	round := edit.SetCorner(1, design.Corner{Kind: design.CornerRounded, Size: 25 * units.Millimetre})
	if err := h.Do(edit.On("A", round), 0); err != nil {
		fmt.Println(err)
	}
	fmt.Println("Undo", h.UndoName())
	err := h.Do(edit.On("A", edit.SetCorner(7, design.Corner{})), 0)
	fmt.Println(err)
	// Output:
	// Undo Round corner
	// Square corner: corner 8: the outline has corners 1 to 4: pick one of these
}
