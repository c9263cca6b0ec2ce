package store

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.org/castwright/model/design"
	"example.org/castwright/model/units"
	"github.com/shopspring/decimal"
)

// writer is the visitor that writes one object of a file.
type writer struct {
	out   *tree
	extra map[string][]unknown // by the place of the object that they are in
	place string
}

var _ visitor = (*writer)(nil)

// unknown is a member that this version does not know.
type unknown struct{ name, raw string }

// owner sorts the unknown members of a new owner by the object that each is in.
func (w *writer) owner(extra *design.Extra, place string) {
	w.place = place
	w.extra = nil
	if extra == nil || len(*extra) == 0 {
		return
	}
	w.extra = map[string][]unknown{}
	for at, raw := range *extra {
		if i := strings.LastIndexByte(at, '/'); i >= 0 {
			w.extra[at[:i]] = append(w.extra[at[:i]], unknown{unescape(at[i+1:]), raw})
		}
	}
	for _, list := range w.extra {
		slices.SortFunc(list, func(a, b unknown) int { return cmp.Compare(a.name, b.name) })
	}
}

func (w *writer) put(k key, zero bool, text string) {
	if k.needed || !zero {
		w.out.add(k.name, &tree{text: text})
	}
}

func (w *writer) text(k key, s *string)     { w.put(k, *s == "", quote(*s)) }
func (w *writer) flag(k key, b *bool)       { w.put(k, !*b, strconv.FormatBool(*b)) }
func (w *writer) count(k key, n *int)       { w.put(k, *n == 0, strconv.Itoa(*n)) }
func (w *writer) number(k key, x *float64)  { w.float(k, 0, x) }
func (w *writer) percent(k key, x *float64) { w.float(k, 2, x) }

func (w *writer) word(k key, words []string, n *uint8) {
	text := strconv.Itoa(int(*n)) // not one of the words: refused when read
	if int(*n) < len(words) {
		text = words[*n]
	}
	w.put(k, *n == 0, quote(text))
}

func (w *writer) float(k key, shift int, x *float64) {
	text, ok := float(*x, shift)
	if !ok {
		text = "null"
	}
	w.put(k, *x == 0, text)
}

func (w *writer) price(k key, p *decimal.Decimal) {
	w.put(k, p.Sign() == 0, quote(priceText(*p)))
}

func (w *writer) length(k key, l *units.Length) {
	w.put(k, *l == 0, fixed(int64(*l), lengthPlaces))
}

func (w *writer) angle(k key, a *units.Angle) {
	w.put(k, *a == 0, fixed(int64(*a), anglePlaces))
}

func (w *writer) share(k key, s *units.Share) {
	w.put(k, *s == 0, fixed(int64(*s), sharePlaces))
}

func (w *writer) colour(k key, c *design.Colour) {
	w.put(k, *c == design.Colour{}, quote(colourText(*c)))
}

func (w *writer) point(k key, p *design.Point) {
	if k.needed || *p != (design.Point{}) {
		w.out.add(k.name, pointTree(*p))
	}
}

func (w *writer) points(k key, ps *[]design.Point) {
	if !k.needed && len(*ps) == 0 {
		return
	}
	out := &tree{open: '['}
	for _, p := range *ps {
		out.kids = append(out.kids, pointTree(p))
	}
	w.out.add(k.name, out)
}

func pointTree(p design.Point) *tree {
	return &tree{open: '[', kids: []*tree{
		{text: fixed(int64(p.X), lengthPlaces)},
		{text: fixed(int64(p.Y), lengthPlaces)},
	}}
}

func (w *writer) object(k key, visit func(visitor)) {
	if kid := w.visit("/"+escape(k.name), visit); k.needed || len(kid.kids) > 0 {
		w.out.add(k.name, kid)
	}
}

func (w *writer) pointed(k key, present bool, visit func(visitor)) {
	if present {
		w.out.add(k.name, w.visit("/"+escape(k.name), visit))
	}
}

// visit writes the object at a place within this one.
func (w *writer) visit(place string, visit func(visitor)) *tree {
	kid := &writer{out: &tree{open: '{'}, extra: w.extra, place: w.place + place}
	visit(kid)
	kid.close()
	return kid.out
}

func (w *writer) list(k key, n int, id func(int) string, visit func(visitor, int)) {
	if !k.needed && n == 0 {
		return
	}
	tokens := indexes(n)
	if id != nil {
		tokens = identities(n, id)
	}
	out := &tree{open: '['}
	for i := range n {
		place := "/" + escape(k.name) + "/" + tokens(i)
		out.kids = append(out.kids, w.visit(place, func(v visitor) { visit(v, i) }))
	}
	w.out.add(k.name, out)
}

func (w *writer) chains(k key, n int, length func(int) int, visit func(v visitor, k, i int)) {
	if !k.needed && n == 0 {
		return
	}
	out := &tree{open: '['}
	for c := range n {
		chain := &tree{open: '['}
		for i := range length(c) {
			place := fmt.Sprintf("/%s/%d/%d", escape(k.name), c, i)
			chain.kids = append(chain.kids, w.visit(place, func(v visitor) { visit(v, c, i) }))
		}
		out.kids = append(out.kids, chain)
	}
	w.out.add(k.name, out)
}

// close writes the unknown members of this object, sorted, after the known.
func (w *writer) close() {
	known := w.out.keys
	for _, u := range w.extra[w.place] {
		if slices.Contains(known, u.name) {
			continue
		}
		v, err := parse([]byte(u.raw))
		if err != nil {
			continue // not from a file, and not JSON
		}
		w.out.add(u.name, rawTree([]byte(u.raw), v))
	}
}
