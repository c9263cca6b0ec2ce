package template

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"strings"

	"golang.org/x/text/encoding/charmap"
)

// Bounds on an SVG's elements, beyond those on its spans.
const (
	maxElements = 400_000
	maxNesting  = 256
	maxUses     = 100_000
)

// element is a node of the document.
type element struct {
	name     string
	attrs    map[string]string
	inline   map[string]string // its style attribute, once it was looked at
	sheet    map[string]string // what the style sheet says of it
	children []*element
	line     int
}

// parseSVG reads the elements and the ids. Entities that a document declares
// for itself are never expanded, so they can't grow.
func parseSVG(data []byte) (root *element, ids map[string]*element, err error) {
	d := xml.NewDecoder(bytes.NewReader(data))
	d.Strict = false // drawing programs write entities that they do not declare
	d.CharsetReader = func(label string, in io.Reader) (io.Reader, error) {
		switch strings.ToLower(label) {
		case "iso-8859-1", "latin1", "windows-1252":
			return charmap.Windows1252.NewDecoder().Reader(in), nil
		case "us-ascii", "ascii":
			return in, nil
		}
		return nil, fail(0, "the file is written in %q: save it as UTF-8", clip(label))
	}
	ids = map[string]*element{}
	var open, all []*element
	var styles strings.Builder
	count := 0
	for {
		t, err := d.Token()
		line, _ := d.InputPos()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			var own *Error
			if errors.As(err, &own) {
				return nil, nil, own
			}
			return nil, nil, fail(line, "this is not readable XML (%s): was it saved or copied only in part?", clip(err.Error()))
		}
		switch t := t.(type) {
		case xml.StartElement:
			if count++; count > maxElements {
				return nil, nil, fail(line, "the drawing has more than %d elements: save only the outline", maxElements)
			}
			if len(open) >= maxNesting {
				return nil, nil, fail(line, "elements lie in elements more than %d deep", maxNesting)
			}
			e := &element{name: t.Name.Local, attrs: make(map[string]string, len(t.Attr)), line: line}
			for _, a := range t.Attr {
				e.attrs[a.Name.Local] = a.Value
			}
			all = append(all, e)
			if id := e.attrs["id"]; id != "" && ids[id] == nil {
				ids[id] = e
			}
			if n := len(open); n > 0 {
				open[n-1].children = append(open[n-1].children, e)
			} else if root == nil {
				root = e
			}
			open = append(open, e)
		case xml.CharData:
			if n := len(open); n > 0 && open[n-1].name == "style" && styles.Len()+len(t) <= maxSheet {
				styles.Write(t)
			}
		case xml.EndElement:
			if n := len(open); n > 0 {
				open = open[:n-1]
			}
		}
	}
	switch {
	case root == nil || root.name != "svg":
		return nil, nil, fail(0, "this is not an SVG: its first element should be <svg>")
	case len(open) > 0:
		return nil, nil, fail(open[len(open)-1].line, "<%s> is never closed: the file was saved or copied only in part", clip(open[len(open)-1].name))
	}
	var css sheet
	css.read(styles.String())
	for _, e := range all {
		css.apply(e)
	}
	return root, ids, nil
}
