package store

import "example.org/castwright/model/design"

// room is the client's room. None of its members is needed: a file without one
// opens, and the room's faults say what is missing.
func room(v visitor, r *design.Room) {
	v.text(may("photo"), &r.Photo)
	v.text(may("sha256"), &r.SHA256)
	v.object(may("corners"), func(v visitor) {
		for i, name := range [...]string{"back_left", "back_right", "front_right", "front_left"} {
			v.object(may(name), func(v visitor) { spot(v, &r.Corners[i]) })
		}
	})
	word(v, may("marks"), markedWords, &r.Marks)
	v.length(may("width_mm"), &r.Width)
	v.length(may("depth_mm"), &r.Depth)
	v.length(may("old_thickness_mm"), &r.Old)
	v.point(may("at_mm"), &r.At)
	v.angle(may("turn_deg"), &r.Turn)
	v.object(may("light"), func(v visitor) {
		v.share(may("brighter_percent"), &r.Lit.Brighter)
		v.share(may("warmer_percent"), &r.Lit.Warmer)
		word(v, may("from"), lightWords, &r.Lit.From)
	})
}

func spot(v visitor, s *design.Spot) {
	v.share(may("x_percent"), &s.X)
	v.share(may("y_percent"), &s.Y)
}
