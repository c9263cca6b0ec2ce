package main

import (
	"fmt"
	"io"
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

// endingOf is the ending, in small letters, of the file that -o names, which must be
// one of two.
func endingOf(output, command, one, other string) (string, error) {
	ending := strings.ToLower(filepath.Ext(output))
	if !slices.Contains([]string{one, other}, ending) {
		return "", fmt.Errorf("%s needs -o and the name of a file to write, ending in %s or %s; it got %q", command, one, other, output)
	}
	return ending, nil
}

// writeSheet writes a sheet as PDF, or as PNG of a width in pixels.
func writeSheet(output, ending string, sheet interface {
	PDF(io.Writer) error
	PNG(io.Writer, int) error
}, width int) error {
	return store.Write(output, func(w io.Writer) error {
		if ending == ".png" {
			return sheet.PNG(w, width)
		}
		return sheet.PDF(w)
	})
}
