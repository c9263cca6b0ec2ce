// Package clip writes copied parts as text and reads them back, so that they can
// be pasted into another job, another window or another day's work. The text is
// that of a job of its own with one option, which holds the parts: it is read and
// checked by the same code as any job's file.
package clip

import (
	"errors"
	"fmt"
	"strings"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/store"
	"example.org/castwright/model/units"
)

// mark is the client of a job that holds copied parts.
const mark = "Copied parts"

// MaxText bounds a text that is read, in bytes: a design of the most points that
// one may have takes about a fifth of it.
const MaxText = 16 << 20

// ErrOther says that a text is not one of copied parts.
var ErrOther = errors.New("there are no copied parts on the clipboard: copy parts of a top first")

// Text writes copied parts.
func Text(c edit.Clip, sys units.System) string {
	d := c.Parts
	d.Extra = nil
	return string(store.Encode(design.Job{Client: mark, Units: sys,
		Options: []design.Option{{Name: "A", Design: d}}}))
}

// Is reports whether a text looks like one of copied parts, without reading it.
func Is(text string) bool {
	head := text[:min(len(text), 400)]
	return strings.Contains(head, `"`+store.Format+`"`) && strings.Contains(head, `"`+mark+`"`)
}

// Read reads copied parts back. It gives [ErrOther] for a text of another kind and
// says what is wrong with one that was meant to be of this.
func Read(text string) (edit.Clip, error) {
	if !Is(text) {
		return edit.Clip{}, ErrOther
	}
	if len(text) > MaxText {
		return edit.Clip{}, fmt.Errorf("the text on the clipboard is too long to be copied parts: copy them again")
	}
	j, err := store.Decode([]byte(text))
	if err != nil {
		return edit.Clip{}, fmt.Errorf("the copied parts can't be read: %w", err)
	}
	if j.Client != mark || len(j.Options) != 1 {
		return edit.Clip{}, ErrOther
	}
	from := j.Options[0].Design
	seen := map[design.ID]bool{}
	for _, id := range edit.Parts(from) {
		if id == "" || seen[id] {
			return edit.Clip{}, fmt.Errorf("the copied parts can't be told apart: the name %q stands twice or is empty", id)
		}
		seen[id] = true
	}
	if len(seen) == 0 {
		return edit.Clip{}, ErrOther
	}
	return edit.CopyParts(from, edit.Parts(from))
}
