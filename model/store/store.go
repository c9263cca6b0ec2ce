package store

import (
	"bytes"
	"errors"
	"fmt"

	"example.org/castwright/model/design"
)

// Format and Version name the files that this package writes.
const (
	Format  = "castwright-job"
	Version = 1
)

// MaxBytes bounds a file.
const MaxBytes = 32 << 20

// ErrNewer is in the chain of the error for a file of a later version.
var ErrNewer = errors.New("the file is of a newer version")

// SyntaxError says why a file can't be read, and where.
type SyntaxError struct {
	Line, Col int    // from 1; columns count characters
	Key       string // path of the member, such as "options[0].design.thickness_mm"
	Detail    string // what is wrong and what to do
	Err       error  // ErrNewer, or nil
}

func (e *SyntaxError) Error() string {
	if e.Key == "" {
		return fmt.Sprintf("line %d: %s", e.Line, e.Detail)
	}
	return fmt.Sprintf("line %d, %s: %s", e.Line, e.Key, e.Detail)
}

func (e *SyntaxError) Unwrap() error { return e.Err }

// Decode reads a job. Its error is a [*SyntaxError].
func Decode(data []byte) (design.Job, error) {
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	root, err := parse(data)
	if err != nil {
		return design.Job{}, err
	}
	src := &source{data: data}
	r := &reader{src: src, at: root}
	if root.kind != isObject {
		r.failAt(root, "the file is not a job: it must start with an opening brace")
		return design.Job{}, src.err
	}
	if !r.heading() {
		return design.Job{}, src.err
	}
	var j design.Job
	r.owner(&j.Extra, "")
	job(r, &j)
	r.close()
	if src.err != nil {
		return design.Job{}, src.err
	}
	return j, nil
}

// heading checks format and version before anything else is read, so that a
// newer file is called newer, whatever else is in it.
func (r *reader) heading() bool {
	var format string
	r.text(need("format"), &format)
	if r.src.err != nil {
		return false
	}
	if format != Format {
		r.fail(need("format"), *r.at.find("format"), fmt.Sprintf("this is a %q, not a %q: open a job file", format, Format))
		return false
	}
	var version int
	r.count(need("version"), &version)
	switch {
	case r.src.err != nil:
		return false
	case version > Version:
		r.fail(need("version"), *r.at.find("version"), fmt.Sprintf("this file is version %d and this program reads "+
			"up to version %d: open it with a newer one. The file was not touched", version, Version))
		r.src.err.Err = ErrNewer
		return false
	case version < 1:
		r.fail(need("version"), *r.at.find("version"), fmt.Sprintf("version %d does not exist: the first is 1", version))
		return false
	}
	return true
}

// EncodeDesign writes a design alone, as it stands in a job's file.
func EncodeDesign(d design.Design) []byte {
	w := &writer{out: &tree{open: '{'}}
	w.owner(&d.Extra, "")
	top(w, &d)
	w.close()
	return layout(w.out)
}

// Encode writes a job. Numbers that JSON has no word for (NaN, infinite) come
// out as null, which Decode and Save refuse.
func Encode(j design.Job) []byte {
	w := &writer{out: &tree{open: '{'}}
	w.owner(&j.Extra, "")
	format, version := Format, Version
	w.text(need("format"), &format)
	w.count(need("version"), &version)
	job(w, &j)
	w.close()
	return layout(w.out)
}
