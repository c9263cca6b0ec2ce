package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"example.org/castwright/export/picture"
	"example.org/castwright/model/draw"
	"example.org/castwright/model/store"
)

// What the flags of commands that write sheets and pictures may say, by the words
// that ask for it.
var (
	papers    = map[string]draw.PaperSize{"": draw.PaperByUnits, "a4": draw.PaperA4, "letter": draw.PaperLetter}
	qualities = map[string]picture.Quality{"quick": picture.Quick, "good": picture.Good, "reference": picture.Reference}
)

// paperOf is the size of paper of --paper.
func paperOf(word string) (draw.PaperSize, error) {
	size, ok := papers[strings.ToLower(word)]
	if !ok {
		return size, fmt.Errorf("there is no paper %q: give a4 or letter", word)
	}
	return size, nil
}

// qualityOf is the work of --quality.
func qualityOf(word string) (picture.Quality, error) {
	q, ok := qualities[word]
	if !ok {
		return q, fmt.Errorf("there is no quality %q: give quick, good or reference", word)
	}
	return q, nil
}

// widthWithin checks --width, in pixels.
func widthWithin(width, most int) error {
	if width < minWidth || width > most {
		return fmt.Errorf("a width of %d pixels is out of range: give %d to %d", width, minWidth, most)
	}
	return nil
}

// writeFile writes a file wholly or not at all; not at all when ctx ends first.
func writeFile(ctx context.Context, path string, write func(io.Writer) error) error {
	return store.Write(path, func(w io.Writer) error {
		if err := write(stoppable{ctx, w}); err != nil {
			return err
		}
		return ctx.Err()
	})
}

// stoppable writes until its context ends.
type stoppable struct {
	ctx context.Context
	to  io.Writer
}

func (s stoppable) Write(p []byte) (int, error) {
	if err := s.ctx.Err(); err != nil {
		return 0, err
	}
	return s.to.Write(p)
}

// notOver refuses to write over one of the files that are read.
func notOver(output string, read ...string) error {
	for _, path := range read {
		if path != "" && same(path, output) {
			return fmt.Errorf("the result can't be written over %s, which it is made from: give -o another name", path)
		}
	}
	return nil
}

// same reports whether two names are of one file.
func same(a, b string) bool {
	x, err := os.Stat(a)
	y, other := os.Stat(b)
	return err == nil && other == nil && os.SameFile(x, y)
}

// endingOf is the ending, in small letters, of the file that -o names, which must be
// one of two.
func endingOf(output, command, one, other string) (string, error) {
	ending := strings.ToLower(filepath.Ext(output))
	if !slices.Contains([]string{one, other}, ending) {
		return "", fmt.Errorf("%s needs -o and the name of a file to write, ending in %s or %s; it got %q", command, one, other, output)
	}
	return ending, nil
}

// printed is what can be written as PDF or as PNG.
type printed interface {
	PDF(w io.Writer) error
	PNG(w io.Writer, width int) error
}

// writeSheet writes a sheet as PDF, or as PNG of a width in pixels.
func writeSheet(ctx context.Context, output, ending string, s printed, width int) error {
	return writeFile(ctx, output, func(w io.Writer) error {
		if ending == ".png" {
			return s.PNG(w, width)
		}
		return s.PDF(w)
	})
}

// keeping is a sheet that has something kept once it is written in whole, before
// it is put in its place: when that fails, there is no sheet.
type keeping struct {
	printed
	keep func() error
}

func (k keeping) PDF(w io.Writer) error {
	if err := k.printed.PDF(w); err != nil {
		return err
	}
	return k.keep()
}

func (k keeping) PNG(w io.Writer, width int) error {
	if err := k.printed.PNG(w, width); err != nil {
		return err
	}
	return k.keep()
}
