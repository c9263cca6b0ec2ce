// Package letterhead keeps how the maker's own papers start: name, address,
// contact and a logo, in a file of each user's own. There is none until the maker
// makes one. The logo is kept as a small picture of our own beside the file: what
// it was taken from may be moved, and none of its metadata comes along.
//
// A logo is a JPEG or PNG. An SVG drawing is refused: it may ask for fonts, other
// files, scripts and endless repetition, and a library that shows it half right
// (units, lines and rounded corners lost) would put a wrong logo on a contract. The
// program that made it exports a PNG in a moment.
package letterhead

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"image"
	"image/png"
	"io"
	"io/fs"
	"path/filepath"
	"strings"

	"example.org/castwright/export/intake"
	"example.org/castwright/model/draw"
	"example.org/castwright/model/store"
)

// Letterhead is the words and the logo. Its zero value is none.
type Letterhead struct {
	Name    string `json:"name,omitempty"`
	Address string `json:"address,omitempty"` // lines parted by line feeds
	Contact string `json:"contact,omitempty"` // lines parted by line feeds
	Logo    string `json:"logo,omitempty"`    // a PNG or JPEG; a relative path starts at this file
}

// maxFile bounds the file, in bytes.
const maxFile = 1 << 20

// logoName is the logo's file beside the letterhead's.
const logoName = "letterhead-logo.png"

// DefaultPath is where the letterhead of this user lies.
func DefaultPath() (string, error) { return store.OwnPath("letterhead.json") }

// Load reads a letterhead. A file that is not there is none at all.
func Load(path string) (Letterhead, error) {
	var l Letterhead
	data, err := store.Read(path, maxFile)
	if errors.Is(err, fs.ErrNotExist) {
		return l, nil
	}
	if err == nil {
		err = plain(json.Unmarshal(data, &l), data)
	}
	if err != nil {
		return Letterhead{}, fmt.Errorf("the letterhead %s can't be read: %w", path, err)
	}
	return l, nil
}

// plain says an error of JSON in the words of this program.
func plain(err error, data []byte) error {
	var kind *json.UnmarshalTypeError
	var form *json.SyntaxError
	switch {
	case errors.As(err, &kind) && kind.Field != "":
		return fmt.Errorf("%s must be text in double quotes, with \\n between its lines, and is of another kind", kind.Field)
	case errors.As(err, &kind):
		return errors.New("it must be one object with name, address, contact and logo")
	case errors.As(err, &form):
		line := 1 + bytes.Count(data[:min(int(form.Offset), len(data))], []byte("\n"))
		return fmt.Errorf("line %d is not JSON: check its quotes, commas and braces", line)
	}
	return err
}

// Save writes a letterhead, wholly or not at all.
func (l Letterhead) Save(path string) error {
	data, err := json.MarshalIndent(l, "", "  ")
	if err == nil {
		err = write(path, append(data, '\n'))
	}
	if err != nil {
		return fmt.Errorf("the letterhead can't be kept: %w", err)
	}
	return nil
}

func write(path string, data []byte) error {
	if err := store.MakeFolder(path); err != nil {
		return err
	}
	return store.Write(path, func(w io.Writer) error {
		_, err := w.Write(data)
		return err
	})
}

// Keep writes a letterhead to path with a copy of a logo, nil for none, beside it.
func Keep(path string, l Letterhead, logo image.Image) error {
	l.Logo = ""
	if logo != nil {
		var b bytes.Buffer
		err := png.Encode(&b, logo)
		if err == nil {
			err = write(filepath.Join(filepath.Dir(path), logoName), b.Bytes())
		}
		if err != nil {
			return fmt.Errorf("the logo can't be kept: %w", err)
		}
		l.Logo = logoName
	}
	return l.Save(path)
}

// ErrSVG refuses an SVG drawing.
var ErrSVG = errors.New("this is an SVG drawing, and a logo must be a PNG or JPEG picture: export it as PNG, about 1600 pixels wide, from the program that made it")

// isSVG reports whether a file starts as an SVG drawing does, packed or not.
func isSVG(data []byte) bool {
	head := bytes.ToLower(bytes.TrimLeft(data[:min(len(data), 4096)], "\xef\xbb\xbf \t\r\n"))
	return bytes.HasPrefix(head, []byte("<svg")) || bytes.HasPrefix(head, []byte("<")) && bytes.Contains(head, []byte("<svg")) ||
		bytes.HasPrefix(data, []byte{0x1f, 0x8b}) // gzip, as in .svgz
}

// ReadLogo reads a picture for a logo with care; see package intake.
func ReadLogo(path string) (image.Image, error) {
	data, err := store.Read(path, int64(intake.Logo.Bytes))
	if err != nil {
		return nil, fmt.Errorf("the logo %s can't be read: %w", path, err)
	}
	if isSVG(data) {
		return nil, fmt.Errorf("the logo %s can't be used: %w", path, ErrSVG)
	}
	img, _, err := intake.Read(bytes.NewReader(data), intake.Logo)
	if err != nil {
		return nil, fmt.Errorf("the logo %s can't be used: %w", path, err)
	}
	return img, nil
}

// Picture is the logo of a letterhead that lies at path, nil for none.
func (l Letterhead) Picture(path string) (image.Image, error) {
	if l.Logo == "" {
		return nil, nil
	}
	logo := l.Logo
	if !filepath.IsAbs(logo) {
		logo = filepath.Join(filepath.Dir(path), logo)
	}
	return ReadLogo(logo)
}

// Head is a letterhead as sheets show it.
func (l Letterhead) Head(logo image.Image) draw.Letterhead {
	h := draw.Letterhead{Logo: logo}
	for _, text := range [...]string{l.Name, l.Address, l.Contact} {
		for _, line := range strings.Split(text, "\n") {
			if line = strings.TrimSpace(line); line != "" {
				h.Lines = append(h.Lines, line)
			}
		}
	}
	return h
}

// Read is the letterhead at path as sheets show it, logo and all.
func Read(path string) (draw.Letterhead, error) {
	l, err := Load(path)
	if err != nil {
		return draw.Letterhead{}, err
	}
	logo, err := l.Picture(path)
	if err != nil {
		return draw.Letterhead{}, err
	}
	return l.Head(logo), nil
}
