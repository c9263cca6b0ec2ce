package edit

import (
	"fmt"

	"example.org/castwright/model/design"
)

// SetFinish sets colour, exposure, polish and grind of the face.
func SetFinish(f design.Finish) Edit {
	return newEdit("Change finish", func(d design.Design) (design.Design, error) {
		if f.Exposure > design.ExposureCoarse {
			return d, fmt.Errorf("exposure %d is not known: use cream, fine or coarse", f.Exposure)
		}
		if f.Polish < 1 || f.Polish > 4 {
			return d, fmt.Errorf("polish level %d is not known: use 1 (flat) to 4 (highly polished)",
				f.Polish)
		}
		if err := checkLength("the grind", f.Grind, 0); err != nil {
			return d, err
		}
		d.Finish = f
		return d, nil
	})
}
