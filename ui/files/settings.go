package files

import (
	"encoding/json"
	"io"
	"os"
	"path/filepath"
	"slices"

	"example.org/castwright/model/store"
)

// Settings is what the window remembers from one start to the next. A job never
// depends on it.
type Settings struct {
	Theme        string   `json:"theme,omitempty"`         // "system", "light" or "dark"
	Imperial     bool     `json:"imperial,omitempty"`      // for new jobs
	Folder       string   `json:"folder,omitempty"`        // last opened or saved in
	Step         int      `json:"step,omitempty"`          // that the snap rounds to, 0 by the zoom
	PictureWidth int      `json:"picture_width,omitempty"` // px
	Paper        string   `json:"paper,omitempty"`         // "a4" or "letter"; "" by a job's units
	Width        float32  `json:"width,omitempty"`         // of the window, points
	Height       float32  `json:"height,omitempty"`
	Recent       []string `json:"recent,omitempty"`  // paths, latest first
	Learned      []string `json:"learned,omitempty"` // notes on the drawing that are not shown again

	path string
}

// mostRecent is how many jobs of late are remembered.
const mostRecent = 12

// DefaultPath is where the settings of this person lie.
func DefaultPath() (string, error) {
	dir, err := os.UserConfigDir()
	if err != nil {
		return "", err
	}
	return filepath.Join(dir, "castwright", "settings.json"), nil
}

// LoadSettings reads settings; what is missing or can't be read gives plain ones.
// With an empty path they are never written.
func LoadSettings(path string) *Settings {
	s := &Settings{path: path}
	data, err := os.ReadFile(path)
	if err != nil || json.Unmarshal(data, s) != nil {
		s = &Settings{path: path}
	}
	return s
}

// BookPath is where the maker's book of parts lies, beside the settings; "" where
// these are never written.
func (s *Settings) BookPath() string {
	if s.path == "" {
		return ""
	}
	return filepath.Join(filepath.Dir(s.path), "book.json")
}

// LetterheadPath is where the maker's letterhead lies, beside the settings; "" where
// these are never written.
func (s *Settings) LetterheadPath() string {
	if s.path == "" {
		return ""
	}
	return filepath.Join(filepath.Dir(s.path), "letterhead.json")
}

// Save writes the settings. They are a convenience: that they can't be written
// must not stop anybody's work, so the error is for tests.
func (s *Settings) Save() error {
	if s.path == "" {
		return nil
	}
	if err := os.MkdirAll(filepath.Dir(s.path), 0o755); err != nil {
		return err
	}
	data, err := json.MarshalIndent(s, "", "  ")
	if err != nil {
		return err
	}
	return store.Write(s.path, func(w io.Writer) error {
		_, err := w.Write(append(data, '\n'))
		return err
	})
}

// Remember puts a job's file first among those of late.
func (s *Settings) Remember(path string) {
	if abs, err := filepath.Abs(path); err == nil {
		path = abs
	}
	s.Forget(path)
	s.Recent = slices.Insert(s.Recent, 0, path)
	s.Recent = s.Recent[:min(len(s.Recent), mostRecent)]
	s.Folder = filepath.Dir(path)
	s.Save()
}

// Forget takes a file out of those of late.
func (s *Settings) Forget(path string) {
	s.Recent = slices.DeleteFunc(s.Recent, func(p string) bool { return p == path })
}
