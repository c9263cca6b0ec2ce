// Package book is the maker's own book of parts to keep: sinks, tap sets, edges
// and finishes that are used again in the next job. A book is kept as a job of
// its own, one option a part, so that its file is read, checked and written by
// the same code as any job's.
package book

import (
	"fmt"
	"slices"
	"strings"

	"example.org/castwright/model/design"
	"example.org/castwright/model/units"
)

// Kind is what an entry keeps.
type Kind uint8

// The kinds of entry.
const (
	KindSink    Kind = iota // with the tap holes that keep to it
	KindTaps                // a tap set on its own
	KindProfile             // an edge's shape in section
	KindFinish
)

func (k Kind) String() string {
	return [...]string{"sink", "taps", "edge", "finish"}[k]
}

// Entry is one part that is kept.
type Entry struct {
	Title   string
	Kind    Kind
	Sink    design.Sink
	Taps    []design.TapSet
	Profile design.Profile
	Finish  design.Finish
}

// Title of the job that holds a book.
const client = "Parts to keep"

// New is an empty book for a maker who works in this system of units.
func New(s units.System) design.Job { return design.Job{Client: client, Units: s} }

// Keep adds an entry under its title, or replaces the one that has it.
func Keep(b design.Job, e Entry) (design.Job, error) {
	e.Title = strings.TrimSpace(e.Title)
	if e.Title == "" {
		return b, fmt.Errorf("the part to keep has no name: give it one")
	}
	d, err := e.design()
	if err != nil {
		return b, err
	}
	b.Options = slices.Clone(b.Options)
	for i, o := range b.Options {
		if o.Title == e.Title {
			b.Options[i].Design = d
			return b, nil
		}
	}
	b.Options = append(b.Options, design.Option{Name: e.Title, Title: e.Title, Design: d})
	return b, nil
}

// Forget takes an entry out.
func Forget(b design.Job, title string) (design.Job, error) {
	i := slices.IndexFunc(b.Options, func(o design.Option) bool { return o.Title == title })
	if i < 0 {
		return b, fmt.Errorf("the book has no part %q: pick one that is there", title)
	}
	b.Options = slices.Delete(slices.Clone(b.Options), i, i+1)
	return b, nil
}

// Rename gives an entry another title, which no other may have.
func Rename(b design.Job, title, to string) (design.Job, error) {
	to = strings.TrimSpace(to)
	at := func(title string) int {
		return slices.IndexFunc(b.Options, func(o design.Option) bool { return o.Title == title })
	}
	i := at(title)
	switch {
	case i < 0:
		return b, fmt.Errorf("the book has no part %q: pick one that is there", title)
	case to == "":
		return b, fmt.Errorf("the part needs a name: type one")
	case to != title && at(to) >= 0:
		return b, fmt.Errorf("the book has a part %q already: choose another name", to)
	}
	b.Options = slices.Clone(b.Options)
	b.Options[i].Name, b.Options[i].Title = to, to
	return b, nil
}

// Entries lists what a book keeps, in its order; options that hold nothing to
// keep are passed over.
func Entries(b design.Job) []Entry {
	var out []Entry
	for _, o := range b.Options {
		if e, ok := entry(o); ok {
			out = append(out, e)
		}
	}
	return out
}

// design is an entry as a design that holds it and nothing else.
func (e Entry) design() (d design.Design, err error) {
	switch e.Kind {
	case KindSink:
		d.Sinks = []design.Sink{e.Sink}
		d.Sinks[0].Shape.Path = slices.Clone(e.Sink.Shape.Path)
		d.Sinks[0].At = design.Point{}
		for _, t := range e.Taps {
			t.Holes = slices.Clone(t.Holes)
			t.Sink = e.Sink.ID
			d.Taps = append(d.Taps, t)
		}
	case KindTaps:
		if len(e.Taps) != 1 {
			return d, fmt.Errorf("%q keeps %d tap sets: keep one", e.Title, len(e.Taps))
		}
		t := e.Taps[0]
		t.Holes, t.Sink, t.At = slices.Clone(t.Holes), "", design.Point{}
		d.Taps = []design.TapSet{t}
	case KindProfile:
		// One edge carries the profile.
		d.Outline.Nodes = []design.Node{{Edge: design.Edge{Profile: e.Profile}}}
	case KindFinish:
		d.Finish = e.Finish
	default:
		return d, fmt.Errorf("%q is of no kind that can be kept", e.Title)
	}
	return d, nil
}

// entry reads an option back.
func entry(o design.Option) (Entry, bool) {
	e, d := Entry{Title: o.Title}, o.Design
	switch {
	case len(d.Sinks) > 0:
		e.Kind, e.Sink, e.Taps = KindSink, d.Sinks[0], d.Taps
	case len(d.Taps) > 0:
		e.Kind, e.Taps = KindTaps, d.Taps[:1]
	case len(d.Outline.Nodes) > 0:
		e.Kind, e.Profile = KindProfile, d.Outline.Nodes[0].Edge.Profile
	case d.Finish != design.Finish{}:
		e.Kind, e.Finish = KindFinish, d.Finish
	default:
		return e, false
	}
	return e, true
}
