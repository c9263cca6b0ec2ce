package store

import (
	"example.org/castwright/model/design"
	"example.org/castwright/model/units"
	"github.com/shopspring/decimal"
)

// key is a member's name. A needed member is always written and its absence is
// an error; any other is left out at its zero value and is that when absent. A
// list with a bound is refused beyond that many items.
type key struct {
	name   string
	needed bool
	most   int // 0 for no bound
}

func need(name string) key              { return key{name: name, needed: true} }
func may(name string) key               { return key{name: name} }
func when(needed bool, name string) key { return key{name: name, needed: needed} }

func (k key) atMost(n int) key { k.most = n; return k }

// visitor goes through the members of one JSON object in the order of the
// file: the reader fills the values in, the writer writes them out. Because
// both follow one description, a member's needs may hang on one before it.
type visitor interface {
	text(key, *string)
	word(key, []string, *uint8)
	flag(key, *bool)
	count(key, *int)
	number(key, *float64)  // in the unit that the key names
	percent(key, *float64) // held as a fraction, 1 the whole
	price(key, *decimal.Decimal)
	length(key, *units.Length) // mm
	angle(key, *units.Angle)   // degrees
	share(key, *units.Share)   // per cent
	colour(key, *design.Colour)
	point(key, *design.Point)    // [x, y] in mm
	points(key, *[]design.Point) // a list of these

	// object visits an object within this one.
	object(key, func(visitor))
	// pointed is an object that may be missing altogether: the writer visits
	// it when present says so, the reader when it is there.
	pointed(k key, present bool, visit func(visitor))
	// list visits the items of a list, n of which exist already. Items that
	// have an identity are told apart by id; else id is nil.
	list(k key, n int, id func(int) string, visit func(visitor, int))
	// chains visits the objects of a list of lists: object i of list k.
	// length makes list k when it is not there and says how many objects it has.
	chains(k key, n int, length func(int) int, visit func(v visitor, k, i int))

	// owner says who keeps the unknown members of this object and of all that
	// are in it from now on, and by what name the place starts.
	owner(extra *design.Extra, place string)
}

// word is a member that is one of a few words.
func word[E ~uint8](v visitor, k key, words []string, e *E) {
	n := uint8(*e)
	v.word(k, words, &n)
	*e = E(n)
}

// list is a list of objects.
func list[T any](v visitor, k key, items *[]T, visit func(visitor, *T)) {
	v.list(k, len(*items), nil, func(v visitor, i int) { visit(v, grown(items, i)) })
}

// parts is a list of objects with an identity.
func parts[T any](v visitor, k key, items *[]T, id func(*T) *design.ID, visit func(visitor, *T)) {
	name := func(i int) string { return string(*id(&(*items)[i])) }
	v.list(k, len(*items), name, func(v visitor, i int) {
		item := grown(items, i)
		s := string(*id(item))
		v.text(need("id"), &s)
		*id(item) = design.ID(s)
		visit(v, item)
	})
}

// grown is item i, made when the list is one short of it.
func grown[T any](items *[]T, i int) *T {
	for i >= len(*items) {
		var zero T
		*items = append(*items, zero)
	}
	return &(*items)[i]
}
