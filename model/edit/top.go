package edit

import (
	"example.org/castwright/model/design"
	"example.org/castwright/model/units"
)

// SetThickness sets the finished thickness.
func SetThickness(t units.Length) Edit {
	return newEdit("Change thickness", func(d design.Design) (design.Design, error) {
		if err := checkLength("the thickness", t, units.Nanometre); err != nil {
			return d, err
		}
		d.Thickness = t
		return d, nil
	})
}

// SetNotes writes the maker's notes to this design.
func SetNotes(notes string) Edit {
	return newEdit("Write notes", func(d design.Design) (design.Design, error) {
		d.Notes = notes
		return d, nil
	})
}
