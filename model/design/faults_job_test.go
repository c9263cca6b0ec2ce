package design

import "testing"

// Each fault of a job itself stands at its place in the file.
func TestJobFaults(t *testing.T) {
	sound := Job{Options: []Option{{Name: "A"}, {Name: "B"}}, Site: Site{Helpers: 2, DoorWidth: 800e6}}
	if f := sound.Validate(); len(f) > 0 {
		t.Errorf("a sound job has faults %v", f)
	}
	for _, c := range []struct {
		field string
		spoil func(*Job)
	}{
		{"options[1].name", func(j *Job) { j.Options = []Option{{Name: "A"}, {Name: "A"}} }},
		{"site.door_width_mm", func(j *Job) { j.Site.DoorWidth = -1 }},
		{"site.stair_turn_mm", func(j *Job) { j.Site.StairTurn = -1 }},
		{"site.helpers", func(j *Job) { j.Site.Helpers = -1 }},
	} {
		j := sound
		c.spoil(&j)
		if f := j.Validate(); len(f) != 1 || f[0].Field != c.field {
			t.Errorf("%s: faults %v", c.field, f)
		}
	}
}
