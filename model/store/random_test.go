package store_test

import (
	"fmt"

	"example.org/castwright/model/design"
	"example.org/castwright/model/units"
	"github.com/shopspring/decimal"
	"pgregory.net/rapid"
)

// draw makes random jobs: any value that a design can hold, sensible or not.
type draw struct{ *rapid.T }

func (t draw) length() units.Length {
	return units.Length(rapid.Int64Range(-int64(units.MaxLength), int64(units.MaxLength)).Draw(t.T, "length"))
}

func (t draw) point() design.Point { return design.Point{X: t.length(), Y: t.length()} }

func (t draw) text() string { return rapid.String().Draw(t.T, "text") }

func (t draw) number() float64 {
	return rapid.Float64Range(-design.MaxQuantity, design.MaxQuantity).Draw(t.T, "number")
}

func (t draw) share() units.Share {
	return units.Share(rapid.Int64Range(-1000*int64(units.Whole), 1000*int64(units.Whole)).Draw(t.T, "share"))
}

func (t draw) angle() units.Angle {
	return units.Angle(rapid.Int64Range(-360_000*int64(units.Degree), 360_000*int64(units.Degree)).Draw(t.T, "angle"))
}

func (t draw) flag() bool { return rapid.Bool().Draw(t.T, "flag") }

func (t draw) below(n int) int { return rapid.IntRange(0, n-1).Draw(t.T, "n") }

func (t draw) colour() design.Colour {
	return design.Colour{R: uint8(t.below(256)), G: uint8(t.below(256)), B: uint8(t.below(256))}
}

func (t draw) price() decimal.Decimal {
	cents := rapid.Int64Range(-99_999_999_999, 99_999_999_999).Draw(t.T, "cents")
	return decimal.New(cents, -2)
}

func some[T any](t draw, most int, item func(i int) T) []T {
	var out []T
	for i := range t.below(most + 1) {
		out = append(out, item(i))
	}
	return out
}

func (t draw) profile() design.Profile {
	return design.Profile{Kind: design.ProfileKind(t.below(7)), Size: t.length()}
}

func (t draw) chain() []design.Node {
	return some(t, 4, func(int) design.Node {
		return design.Node{At: t.point(),
			Corner: design.Corner{Kind: design.CornerKind(t.below(3)), Size: t.length()},
			Edge: design.Edge{Curve: design.CurveKind(t.below(3)), Rise: t.length(), C1: t.point(), C2: t.point(),
				Side: design.Side(t.below(2)), Profile: t.profile()}}
	})
}

func (t draw) region() design.Region {
	return design.Region{Outer: t.chain(), Islands: some(t, 2, func(int) []design.Node { return t.chain() })}
}

func (t draw) points() []design.Point {
	return some(t, 4, func(int) design.Point { return t.point() })
}

func (t draw) id(prefix string, i int) design.ID {
	if t.flag() {
		return design.ID(t.text()) // empty, doubled, with slashes
	}
	return design.ID(fmt.Sprintf("%s-%d", prefix, i+1))
}

func (t draw) design() design.Design {
	d := design.Design{Outline: design.Outline{Nodes: t.chain()}, Thickness: t.length(), Notes: t.text()}
	d.Sinks = some(t, 3, func(i int) design.Sink {
		return design.Sink{ID: t.id("sink", i), At: t.point(), Rotation: t.angle(),
			Shape: design.Shape{Kind: design.ShapeKind(t.below(5)), Width: t.length(), Depth: t.length(),
				CornerRadius: t.length(), Bow: t.length(), Path: t.chain()},
			Mount: design.Mount(t.below(3)), Reveal: design.Reveal{Kind: design.RevealKind(t.below(3)), Size: t.length()},
			Rim: t.length(), Drain: t.length(), Profile: t.profile(), BowlDepth: t.length(), BowlMass: t.number()}
	})
	d.Taps = some(t, 2, func(i int) design.TapSet {
		return design.TapSet{ID: t.id("taps", i), Pattern: design.TapPattern(t.below(4)), Holes: t.points(),
			Diameter: t.length(), Sink: t.id("sink", i), Offset: t.length(), SetBack: t.length(), At: t.point(),
			Rotation: t.angle()}
	})
	d.Holes = some(t, 2, func(i int) design.Hole {
		return design.Hole{ID: t.id("hole", i), Kind: design.HoleKind(t.below(4)), At: t.point(), Diameter: t.length()}
	})
	d.Channels = some(t, 2, func(i int) design.Channel {
		c := design.Channel{ID: t.id("channel", i), Depth: t.length(), Fill: design.Fill{Resin: t.flag(),
			Colour: t.colour(), Opacity: t.share(), TopCoat: t.length()}}
		c.Rivers = some(t, 2, func(int) design.River {
			return design.River{Start: design.RiverEnd(t.below(3)), End: design.RiverEnd(t.below(3)),
				Nodes: some(t, 4, func(int) design.RiverNode {
					return design.RiverNode{At: t.point(), Width: t.length()}
				})}
		})
		c.Regions = some(t, 2, func(int) design.Region { return t.region() })
		if t.flag() {
			c.Fill.Glass = &design.GlassFill{Grain: t.length(), Share: t.share(), Colour: t.colour()}
		}
		return c
	})
	d.Glass = some(t, 2, func(i int) design.GlassBed {
		return design.GlassBed{ID: t.id("glass", i), Region: t.region(), Grain: t.length(), Coverage: t.share(),
			Depth: t.length(), Colour: t.colour()}
	})
	d.Finish = design.Finish{Colour: t.colour(), Exposure: design.Exposure(t.below(3)), Polish: t.below(9) - 2,
		Grind: t.length()}
	d.Supports = some(t, 2, func(i int) design.Support {
		return design.Support{ID: t.id("support", i), Kind: design.SupportKind(t.below(5)), Line: t.points(),
			Width: t.length(), Patch: t.flag()}
	})
	d.Relations = some(t, 3, func(i int) design.Relation {
		return design.Relation{Kind: design.RelationKind(t.below(5)), Part: t.id("hole", i), Axis: design.Axis(t.below(2)),
			Other: t.id("sink", i), Second: t.id("support", i), Side: design.TopSide(t.below(4)), Distance: t.length(),
			River: t.below(4) - 1, End: design.RiverSide(t.below(2)), Edge: t.below(9) - 2, Along: t.number() / 100}
	})
	return d
}

func (t draw) asked() design.Price { return design.Price{Amount: t.price(), Note: t.text()} }

func (t draw) spot() design.Spot { return design.Spot{X: t.share(), Y: t.share()} }

func (t draw) room() design.Room {
	return design.Room{Photo: t.text(), SHA256: t.text(), Corners: [4]design.Spot{t.spot(), t.spot(), t.spot(), t.spot()},
		Marks: design.Marked(t.below(2)), Width: t.length(), Depth: t.length(), Old: t.length(), At: t.point(), Turn: t.angle(),
		Lit: design.RoomLight{Brighter: t.share(), Warmer: t.share(), From: design.LightFrom(t.below(5))}}
}

func (t draw) job() design.Job {
	j := design.Job{Client: t.text(), Units: units.System(t.below(2))}
	j.Site = design.Site{Notes: t.text(), DoorWidth: t.length(), DoorHeight: t.length(), StairWidth: t.length(),
		StairTurn: t.length(), Helpers: t.below(9)}
	j.Materials = design.Materials{Currency: t.text(),
		Mix: design.Mix{Name: t.text(), BagMass: t.number(), BagYield: t.number(), BagWater: t.number(),
			FreshDensity: t.number(), CuredDensity: t.number(), Waste: t.number() / 100, BagPrice: t.price(),
			Rapid: t.flag(), StripHours: t.number(), WorkingMinutes: t.number()},
		Resin: design.Resin{Name: t.text(), PartsA: t.number(), PartsB: t.number(), Density: t.number(),
			MaxPour: t.number(), Waste: t.number() / 100, LitrePrice: t.price()},
		Glass: design.GlassStock{Name: t.text(), Density: t.number(), Waste: t.number() / 100, KgPrice: t.price()}}
	j.Options = some(t, 3, func(i int) design.Option {
		return design.Option{Name: string(t.id("option", i)), Title: t.text(), Price: t.asked(), Design: t.design(),
			Handling: some(t, 3, func(i int) design.Handling {
				return design.Handling{Part: t.id("sink", i), Locked: t.flag(), Hidden: t.flag()}
			})}
	})
	j.Terms = design.Terms{Included: t.text(), NotIncluded: t.text(), Care: t.text()}
	j.Approvals = some(t, 2, func(i int) design.Approval {
		return design.Approval{Revision: t.below(99), Option: t.text(), Title: t.text(), Date: t.text(), By: t.text(),
			Units: units.System(t.below(2)), Materials: j.Materials, Design: t.design(), Price: t.asked(),
			Client: t.text(), Terms: design.Terms{Included: t.text(), NotIncluded: t.text(), Care: t.text()},
			Fingerprint: t.text(), Withdrawn: t.text()}
	})
	if t.flag() {
		j.Room = t.room()
	}
	return j
}
