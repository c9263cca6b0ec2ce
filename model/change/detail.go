package change

import (
	"reflect"
	"strconv"
	"strings"

	"example.org/castwright/model/design"
	"example.org/castwright/model/units"
)

// details gathers in words which members of a part are others now.
type details struct {
	sys  units.System
	list []string
}

// say names a member that is another.
func (d *details) say(changed bool, words string) {
	if changed {
		d.list = append(d.list, words)
	}
}

// length tells a length that is another.
func (d *details) length(a, b units.Length, words string) {
	d.say(a != b, words+" "+units.Format(b, d.sys)+", was "+units.Format(a, d.sys))
}

// share tells a share that is another.
func (d *details) share(a, b units.Share, words string) {
	d.say(a != b, words+" "+units.FormatShare(b)+", was "+units.FormatShare(a))
}

// words are all of them in one line, "" for none.
func (d *details) words() string { return strings.Join(d.list, "; ") }

// detail says what of a part is another, but for its place and its size in plan; shape
// reports whether the form of its outline is told too, for one whose size is the same.
func detail(was, is any, shape bool, sys units.System) string {
	d := &details{sys: sys}
	switch b := is.(type) {
	case design.Finish:
		a := was.(design.Finish)
		d.say(a.Colour != b.Colour, "colour")
		d.say(a.Exposure != b.Exposure, "stone exposed")
		d.say(a.Polish != b.Polish, "polish level "+strconv.Itoa(b.Polish)+", was "+strconv.Itoa(a.Polish))
		d.length(a.Grind, b.Grind, "ground off")
	case design.Sink:
		a := was.(design.Sink)
		d.say(a.Mount != b.Mount, "mounted otherwise")
		d.say(shape && !reflect.DeepEqual(a.Shape, b.Shape) || a.Shape.Kind != b.Shape.Kind, "another shape")
		d.say(a.Rotation != b.Rotation, "turned")
		d.say(a.Reveal != b.Reveal, "reveal")
		d.length(a.Rim, b.Rim, "rim")
		d.length(a.Drain, b.Drain, "drain hole")
		d.say(a.Profile != b.Profile, "edge")
	case design.TapSet:
		a := was.(design.TapSet)
		d.say(a.Pattern != b.Pattern || !reflect.DeepEqual(a.Holes, b.Holes), "another pattern")
		d.length(a.Diameter, b.Diameter, "holes")
		d.say(a.Sink != b.Sink, "kept to another sink")
		d.say(a.Rotation != b.Rotation, "turned")
	case design.Hole:
		a := was.(design.Hole)
		d.say(a.Kind != b.Kind, "for another use")
		d.length(a.Diameter, b.Diameter, "diameter")
	case design.Channel:
		a := was.(design.Channel)
		d.say(shape && !reflect.DeepEqual(a.Rivers, b.Rivers), "course")
		d.say(shape && !reflect.DeepEqual(a.Regions, b.Regions), "pools")
		d.length(a.Depth, b.Depth, "depth")
		d.fill(a.Fill, b.Fill)
	case design.GlassBed:
		a := was.(design.GlassBed)
		d.say(shape && !reflect.DeepEqual(a.Region, b.Region), "shape")
		d.length(a.Grain, b.Grain, "pieces")
		d.share(a.Coverage, b.Coverage, "covered")
		d.length(a.Depth, b.Depth, "depth")
		d.say(a.Colour != b.Colour, "colour")
	case design.Support:
		a := was.(design.Support)
		d.say(a.Kind != b.Kind, "another kind")
		d.say(shape && (a.Patch != b.Patch || !reflect.DeepEqual(a.Line, b.Line)), "course")
		d.length(a.Width, b.Width, "width")
	}
	return d.words()
}

// fill says what of a channel's fill is another.
func (d *details) fill(a, b design.Fill) {
	switch {
	case a.Resin && !b.Resin:
		d.say(true, "left empty")
		return
	case !a.Resin && b.Resin:
		d.say(true, "filled with resin")
		return
	}
	d.say(a.Colour != b.Colour, "colour")
	d.share(a.Opacity, b.Opacity, "opacity")
	d.length(a.TopCoat, b.TopCoat, "top coat")
	switch {
	case a.Glass == nil && b.Glass != nil:
		d.say(true, "with glass in it")
	case a.Glass != nil && b.Glass == nil:
		d.say(true, "no glass in it")
	default:
		d.say(!reflect.DeepEqual(a.Glass, b.Glass), "glass in it")
	}
}
