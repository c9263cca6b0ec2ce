package edit

import (
	"fmt"

	"example.org/castwright/model/design"
	"example.org/castwright/model/units"
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

// UsualGrind is what is usually ground off a face to open it that far, in a round
// figure of the maker's system: cream less than 0.5 mm, fine stone about 1/16 in,
// coarse stone 1/4 in or more (Concrete Polishing Council, exposure classes, first
// edition of the chart).
func UsualGrind(e design.Exposure, sys units.System) units.Length {
	of := func(mm float64, inches units.Length) units.Length {
		if sys == units.Imperial {
			return inches
		}
		return units.FromMM(mm)
	}
	switch e {
	case design.ExposureFine:
		return of(1.5, units.Inch/16)
	case design.ExposureCoarse:
		return of(6, units.Inch/4)
	}
	return of(0.5, units.Inch/64)
}

// SetExposure sets how far the face is opened. The grind becomes the usual one of
// that, unless the maker has set one that was not usual before, or the top is too
// thin for it.
func SetExposure(e design.Exposure, sys units.System) Edit {
	return newEdit("Change finish", func(d design.Design) (design.Design, error) {
		f := d.Finish
		usual := f.Grind == UsualGrind(f.Exposure, units.Metric) || f.Grind == UsualGrind(f.Exposure, units.Imperial)
		if grind := UsualGrind(e, sys); usual && e != f.Exposure && grind <= d.Thickness/2 {
			f.Grind = grind
		}
		f.Exposure = e
		return SetFinish(f).Apply(d)
	})
}
