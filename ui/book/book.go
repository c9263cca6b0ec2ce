package book

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"time"

	"example.org/castwright/model/book"
	"example.org/castwright/model/design"
	"example.org/castwright/model/store"
	"example.org/castwright/model/store/keep"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/control"
)

// Book is the book of one window. It belongs to the main goroutine.
type Book struct {
	frame *control.Frame
	path  string // "" keeps it in memory alone
	job   design.Job
	fault error // why the file can't be read
	seen  stamp // of the file as it was read last
}

// stamp tells one state of a file from the next.
type stamp struct {
	when time.Time
	size int64
}

// New is the book in a file; it is read when it is first looked at.
func New(f *control.Frame, path string) *Book {
	return &Book{frame: f, path: path, job: book.New(units.Metric)}
}

// Path is the book's file.
func (b *Book) Path() string { return b.path }

// Entries are the parts that the book keeps now. A file that can't be read keeps
// nothing, and the error says why.
func (b *Book) Entries() ([]book.Entry, error) {
	b.look()
	return book.Entries(b.job), b.fault
}

// Of lists the parts of one kind.
func (b *Book) Of(kind book.Kind) []book.Entry {
	var out []book.Entry
	all, _ := b.Entries()
	for _, e := range all {
		if e.Kind == kind {
			out = append(out, e)
		}
	}
	return out
}

// Has reports whether a part of this title is kept.
func (b *Book) Has(title string) bool {
	all, _ := b.Entries()
	for _, e := range all {
		if e.Title == title {
			return true
		}
	}
	return false
}

// look reads the file again if it has changed.
func (b *Book) look() {
	if b.path == "" {
		return
	}
	now, err := stampOf(b.path)
	if err == nil && now == b.seen {
		return
	}
	job, err := read(b.path)
	b.seen, b.fault = now, err
	if err == nil {
		b.job = job
	}
}

func stampOf(path string) (stamp, error) {
	info, err := os.Stat(path)
	if err != nil {
		return stamp{}, err
	}
	return stamp{info.ModTime(), info.Size()}, nil
}

// read reads the book's file; one that is not there is an empty book.
func read(path string) (design.Job, error) {
	if _, err := os.Stat(path); errors.Is(err, fs.ErrNotExist) {
		return book.New(units.Metric), nil
	}
	j, err := store.Load(path)
	if err != nil {
		return j, fmt.Errorf("your book of parts can't be read, and is left as it is: %w", err)
	}
	return j, nil
}

// change makes a change to the file as it stands, off the main goroutine; then
// hears why it could not be, nil when it was.
func (b *Book) change(do func(design.Job) (design.Job, error), then func(error)) {
	if b.path == "" {
		job, err := do(b.job)
		if err == nil {
			b.job = job
		}
		then(err)
		return
	}
	path := b.path
	b.frame.Background(func() func() {
		var job design.Job
		err := keep.Locked(path, func() error {
			had, err := read(path)
			if err != nil {
				return err
			}
			if job, err = do(had); err != nil {
				return err
			}
			return store.Save(path, job)
		})
		return func() {
			if err == nil {
				b.job, b.fault = job, nil
				b.seen, _ = stampOf(path)
			}
			then(err)
		}
	})
}

// Keep adds a part, or replaces the one that has its title.
func (b *Book) Keep(e book.Entry, then func(error)) {
	b.change(func(j design.Job) (design.Job, error) { return book.Keep(j, e) }, then)
}

// Rename gives a part another title.
func (b *Book) Rename(title, to string, then func(error)) {
	b.change(func(j design.Job) (design.Job, error) { return book.Rename(j, title, to) }, then)
}

// Forget takes a part out.
func (b *Book) Forget(title string, then func(error)) {
	b.change(func(j design.Job) (design.Job, error) { return book.Forget(j, title) }, then)
}
