package store

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.org/castwright/model/design"
	"example.org/castwright/model/units"
	"github.com/shopspring/decimal"
)

// source is the file that a tree of readers reads, and the first error.
type source struct {
	data   []byte
	err    *SyntaxError
	points int // of the design being read
}

// reader is the visitor that fills values in from one object of a file.
type reader struct {
	src   *source
	at    value
	path  string
	extra *design.Extra
	place string
	known []string
}

var _ visitor = (*reader)(nil)

func (r *reader) owner(extra *design.Extra, place string) {
	r.extra, r.place = extra, place
	r.src.points = 0 // the bound is a design's, which owns what is in it
}

// take is the member for a key when it is of the kind that is due; a needed
// member that is absent and one of another kind are errors.
func (r *reader) take(k key, due kind) *value {
	if r.src.err != nil {
		return nil
	}
	r.known = append(r.known, k.name)
	v := r.at.find(k.name)
	switch {
	case v == nil && k.needed:
		r.failAt(r.at, fmt.Sprintf("%s is missing: add it", k.name))
	case v == nil:
	case v.kind == isNull:
		r.fail(k, *v, "this is null: give "+due.String()+", or leave the key out")
	case v.kind != due:
		r.fail(k, *v, fmt.Sprintf("this must be %s and is %s", due, v.kind))
	default:
		return v
	}
	return nil
}

func (r *reader) fail(k key, v value, detail string) {
	r.failPath(join(r.path, k.name), v, detail)
}

func (r *reader) failAt(v value, detail string) { r.failPath(r.path, v, detail) }

func (r *reader) failPath(path string, v value, detail string) {
	if r.src.err == nil {
		line, col := place(r.src.data, int(v.start))
		r.src.err = &SyntaxError{Line: line, Col: col, Key: clip(path), Detail: detail}
	}
}

func join(path, name string) string {
	if path == "" {
		return name
	}
	return path + "." + name
}

func (r *reader) text(k key, s *string) {
	if v := r.take(k, isString); v != nil {
		*s = v.text
	}
}

func (r *reader) word(k key, words []string, n *uint8) {
	v := r.take(k, isString)
	if v == nil {
		return
	}
	for i, w := range words {
		if w == v.text {
			*n = uint8(i)
			return
		}
	}
	last := len(words) - 1
	r.fail(k, *v, fmt.Sprintf("%q is not known: use %s or %s",
		clip(v.text), strings.Join(words[:last], ", "), words[last]))
}

func (r *reader) flag(k key, b *bool) {
	if v := r.take(k, isBool); v != nil {
		*b = v.text == "true"
	}
}

func (r *reader) count(k key, n *int) {
	v := r.take(k, isNumber)
	if v == nil {
		return
	}
	i, err := strconv.Atoi(v.text)
	if err != nil || i > design.MaxQuantity || i < -design.MaxQuantity {
		r.fail(k, *v, fmt.Sprintf("%s is not a whole number that can be held here: "+
			"give one such as 2", clip(v.text)))
		return
	}
	*n = i
}

func (r *reader) number(k key, x *float64)  { r.float(k, 0, x) }
func (r *reader) percent(k key, x *float64) { r.float(k, -2, x) }

func (r *reader) float(k key, shift int, x *float64) {
	v := r.take(k, isNumber)
	if v == nil {
		return
	}
	f, err := parseFloat(v.text, shift)
	if err != nil || f > design.MaxQuantity || f < -design.MaxQuantity {
		r.fail(k, *v, fmt.Sprintf("%s is beyond the %d that can be held here: give less",
			clip(v.text), design.MaxQuantity))
		return
	}
	*x = f
}

func (r *reader) price(k key, p *decimal.Decimal) {
	v := r.take(k, isString)
	if v == nil {
		return
	}
	d, ok := parsePrice(v.text)
	if !ok {
		r.fail(k, *v, fmt.Sprintf("%q is not a price: write it like \"12.50\", "+
			"with at most %d decimals", clip(v.text), priceDecimals))
		return
	}
	*p = d
}

func (r *reader) length(k key, l *units.Length) {
	if v := r.take(k, isNumber); v != nil {
		*l = units.Length(r.fixed(k.name, *v, lengthPlaces, int64(units.MaxLength), " mm"))
	}
}

func (r *reader) angle(k key, a *units.Angle) {
	if v := r.take(k, isNumber); v != nil {
		*a = units.Angle(r.fixed(k.name, *v, anglePlaces, maxAngle, " degrees"))
	}
}

func (r *reader) share(k key, s *units.Share) {
	if v := r.take(k, isNumber); v != nil {
		*s = units.Share(r.fixed(k.name, *v, sharePlaces, maxShare, " per cent"))
	}
}

func (r *reader) fixed(name string, v value, places int, bound int64, unit string) int64 {
	n, err := parseFixed(v.text, places, bound)
	if err != nil {
		r.failPath(join(r.path, name), v, fmt.Sprintf("%s is beyond the %s%s that can be held: give less",
			clip(v.text), fixed(bound, places), unit))
	}
	return n
}

func (r *reader) colour(k key, c *design.Colour) {
	v := r.take(k, isString)
	if v == nil {
		return
	}
	got, ok := parseColour(v.text)
	if !ok {
		r.fail(k, *v, fmt.Sprintf("%q is not a colour: write it like \"#8c8a82\"", clip(v.text)))
		return
	}
	*c = got
}

func (r *reader) point(k key, p *design.Point) {
	if v := r.take(k, isArray); v != nil {
		*p = r.pointOf(k.name, *v)
	}
}

func (r *reader) points(k key, ps *[]design.Point) {
	v := r.take(k, isArray)
	if v == nil {
		return
	}
	for i, kid := range v.kids {
		name := fmt.Sprintf("%s[%d]", k.name, i)
		if kid.kind != isArray {
			r.failPath(join(r.path, name), kid, "this must be a place, [x, y] in millimetres")
			return
		}
		*ps = append(*ps, r.pointOf(name, kid))
		if r.src.err != nil {
			return
		}
	}
}

func (r *reader) pointOf(name string, v value) design.Point {
	if len(v.kids) != 2 || v.kids[0].kind != isNumber || v.kids[1].kind != isNumber {
		r.failPath(join(r.path, name), v, "this must be two numbers, [x, y] in millimetres")
		return design.Point{}
	}
	if r.src.points++; r.src.points > design.MaxPoints {
		r.failPath(join(r.path, name), v, fmt.Sprintf("the design has more than %d points: "+
			"draw it with fewer, or with splines", design.MaxPoints))
		return design.Point{}
	}
	x := r.fixed(name, v.kids[0], lengthPlaces, int64(units.MaxLength), " mm")
	y := r.fixed(name, v.kids[1], lengthPlaces, int64(units.MaxLength), " mm")
	return design.Point{X: units.Length(x), Y: units.Length(y)}
}

func (r *reader) object(k key, visit func(visitor)) {
	if v := r.take(k, isObject); v != nil {
		kid := &reader{src: r.src, at: *v, path: join(r.path, k.name),
			extra: r.extra, place: r.place + "/" + escape(k.name)}
		visit(kid)
		kid.close()
	}
}

func (r *reader) pointed(k key, _ bool, visit func(visitor)) { r.object(k, visit) }

func (r *reader) list(k key, _ int, id func(int) string, visit func(visitor, int)) {
	v := r.take(k, isArray)
	if v == nil {
		return
	}
	if k.most > 0 && len(v.kids) > k.most {
		r.fail(k, *v, fmt.Sprintf("this list has %d items, beyond the %d that can be held: take some out",
			len(v.kids), k.most))
		return
	}
	tokens := indexes(len(v.kids))
	if id != nil {
		tokens = identities(len(v.kids), func(i int) string {
			if id := v.kids[i].find("id"); id != nil && id.kind == isString {
				return id.text
			}
			return ""
		})
	}
	r.items(k.name, "/"+escape(k.name), *v, tokens, visit)
}

func (r *reader) chains(k key, _ int, length func(int) int, visit func(v visitor, k, i int)) {
	v := r.take(k, isArray)
	if v == nil {
		return
	}
	for n, kid := range v.kids {
		name := fmt.Sprintf("%s[%d]", k.name, n)
		if kid.kind != isArray {
			r.failPath(join(r.path, name), kid, "this must be a list of corners")
			return
		}
		length(n) // the list is there, however empty
		r.items(name, fmt.Sprintf("/%s/%d", escape(k.name), n), kid, indexes(len(kid.kids)),
			func(v visitor, i int) { visit(v, n, i) })
	}
}

func (r *reader) items(name, place string, v value, tokens func(int) string, visit func(visitor, int)) {
	for i, kid := range v.kids {
		if r.src.err != nil {
			return
		}
		path := fmt.Sprintf("%s[%d]", join(r.path, name), i)
		if kid.kind != isObject {
			r.failPath(path, kid, fmt.Sprintf("this must be an object and is %s", kid.kind))
			return
		}
		item := &reader{src: r.src, at: kid, path: path,
			extra: r.extra, place: r.place + place + "/" + tokens(i)}
		visit(item, i)
		item.close()
	}
}

// close keeps the members that nobody has asked for.
func (r *reader) close() {
	if r.src.err != nil {
		return
	}
	for i, f := range r.at.keys {
		if slices.Contains(r.known, f.name) {
			continue
		}
		if *r.extra == nil {
			*r.extra = design.Extra{}
		}
		(*r.extra)[r.place+"/"+escape(f.name)] = rawTree(r.src.data, r.at.kids[i]).compact()
	}
}
