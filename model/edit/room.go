package edit

import (
	"errors"
	"strings"

	"example.org/castwright/model/design"
)

// SetRoom puts the client's room into the job, or changes it: its photograph, what
// is marked there, its size, and where the new top lies.
func SetRoom(r design.Room) JobEdit {
	return changeRoom("Change the room", func(was design.Room) design.Room { return r })
}

// PlaceRoomCorner puts one of the four corners of what is marked at a place in the
// photograph; 0 is the back left one, and they go clockwise.
func PlaceRoomCorner(i int, at design.Spot) JobEdit {
	return changeRoom("Move a corner in the room", func(r design.Room) design.Room {
		r.Corners[i&3] = at
		return r
	})
}

// TakeRoom takes the room out of the job. Its photograph stays where it is.
func TakeRoom() JobEdit {
	return JobEdit{"Take the room out", func(j design.Job) (design.Job, error) {
		j.Room, j.Extra = design.Room{}, withoutRoom(j.Extra)
		return j, nil
	}}
}

func changeRoom(name string, change func(design.Room) design.Room) JobEdit {
	return JobEdit{name, func(j design.Job) (design.Job, error) {
		r := change(j.Room)
		if f := r.Faults(); len(f) > 0 {
			return j, errors.New(f[0].Detail)
		}
		// What a newer program said of another photograph says nothing of this one.
		if r.SHA256 != j.Room.SHA256 {
			j.Extra = withoutRoom(j.Extra)
		}
		j.Room = r
		return j, nil
	}}
}

// withoutRoom is the unknown members of a job less those of its room.
func withoutRoom(e design.Extra) design.Extra {
	var out design.Extra
	for place, raw := range e {
		if strings.HasPrefix(place, "/room/") {
			continue
		}
		if out == nil {
			out = make(design.Extra, len(e))
		}
		out[place] = raw
	}
	return out
}
