package ui

import (
	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
)

// both does one edit of the job after another, or neither.
func both(first, second edit.JobEdit) func(design.Job) (design.Job, error) {
	return func(j design.Job) (design.Job, error) {
		out, err := first.Apply(j)
		if err == nil {
			out, err = second.Apply(out)
		}
		if err != nil {
			return j, err
		}
		return out, nil
	}
}
