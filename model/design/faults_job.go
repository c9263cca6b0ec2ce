package design

import (
	"fmt"

	"example.org/castwright/model/units"
)

// Validate lists what is wrong with the job itself, with its place in the file:
// options that can't be told apart, and a site that can't be. Materials are looked
// at by [Materials.Validate], each design by [Design.Validate].
func (j Job) Validate() []Fault {
	c := &checker{}
	met := map[string]int{}
	for i, o := range j.Options {
		if k, has := met[o.Name]; has {
			c.add(RuleDuplicate, fmt.Sprintf("options[%d].name", i),
				"this option and options[%d] are both named %q: give one of them another name", k, o.Name)
			continue
		}
		met[o.Name] = i
	}
	for _, q := range [...]struct {
		field, name string
		value       units.Length
	}{
		{"door_width_mm", "the door's width", j.Site.DoorWidth},
		{"door_height_mm", "the door's height", j.Site.DoorHeight},
		{"stair_width_mm", "the stair's width", j.Site.StairWidth},
		{"stair_turn_mm", "the length at the stair's turn", j.Site.StairTurn},
	} {
		if q.value < 0 {
			c.add(RuleRange, "site."+q.field, "%s is %s: give what was measured, or leave it out", q.name, mm(q.value))
		}
	}
	if j.Site.Helpers < 0 {
		c.add(RuleRange, "site.helpers", "%d people can't carry: give how many do, yourself included, or leave it out", j.Site.Helpers)
	}
	return c.faults
}
