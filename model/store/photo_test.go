package store_test

import (
	"bytes"
	"crypto/sha256"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/store"
)

// picture is bytes that no picture program has touched.
func picture(n int) []byte { return bytes.Repeat([]byte{0xff, 0xd8, 0xff, 7, 0, byte(n)}, 500) }

func written(t *testing.T, path string, data []byte) {
	t.Helper()
	if err := os.WriteFile(path, data, 0o644); err != nil {
		t.Fatal(err)
	}
}

func content(t *testing.T, path string) []byte {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// The sum of FIPS 180-4's one-block example, "abc" (NIST, Secure Hash Standard
// examples, SHA256.pdf).
func TestPhotoSum(t *testing.T) {
	if got := store.PhotoSum([]byte("abc")); got != "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad" {
		t.Error(got)
	}
}

// A photograph lies beside the job byte for byte, and no file is overwritten.
func TestKeepPhoto(t *testing.T) {
	dir := t.TempDir()
	job := filepath.Join(dir, "counter.json")
	mine := filepath.Join(dir, "counter.room.jpg")
	written(t, mine, []byte("a holiday"))
	name, sum, err := store.KeepPhoto(job, picture(1), ".jpg")
	if err != nil || name != "counter.room-2.jpg" {
		t.Fatal(name, err)
	}
	if string(content(t, mine)) != "a holiday" {
		t.Error("a file of that name was overwritten")
	}
	if got := sha256.Sum256(content(t, filepath.Join(dir, name))); fmt.Sprintf("%x", got) != sum || sum != store.PhotoSum(picture(1)) {
		t.Error("the copy is not the photograph byte for byte")
	}
	// The same again stays the one file.
	if again, _, err := store.KeepPhoto(job, picture(1), ".jpg"); err != nil || again != name {
		t.Error(again, err)
	}
	if third, _, err := store.KeepPhoto(job, picture(2), ".jpg"); err != nil || third != "counter.room-3.jpg" {
		t.Error(third, err)
	}
	list, _ := os.ReadDir(dir)
	if len(list) != 3 {
		t.Errorf("%d files, something was left behind: %v", len(list), list)
	}
	// The name is one that a job may hold.
	r := design.Room{Photo: name, SHA256: sum, Width: design.MinMarked, Depth: design.MinMarked}
	if f := r.Faults(); len(f) > 0 {
		t.Error(f)
	}
}

func TestKeepPhotoNames(t *testing.T) {
	dir := t.TempDir()
	for base, want := range map[string]string{
		"a.b":                    "a.b.room.png",
		strings.Repeat("ü", 100): "",
		strings.Repeat("…", 60):  "",
		"counter ":               "counter.room.png",
		"Θέμα 1 – γραφείο (τέλος)": "Θέμα 1 – γραφείο (τέλος).room.png",
	} {
		name, sum, err := store.KeepPhoto(filepath.Join(dir, base+".json"), picture(3), ".png")
		if err != nil || want != "" && name != want {
			t.Errorf("%q: %q %v", base, name, err)
		}
		if f := (design.Room{Photo: name, SHA256: sum, Width: design.MinMarked, Depth: design.MinMarked}).Faults(); len(f) > 0 {
			t.Errorf("%q: %v", base, f)
		}
	}
}

func TestKeepPhotoNowhere(t *testing.T) {
	if _, _, err := store.KeepPhoto(filepath.Join(t.TempDir(), "no", "counter.json"), picture(1), ".jpg"); err == nil {
		t.Error("kept in a folder that is not there")
	}
	if _, _, err := store.KeepPhoto(filepath.Join(t.TempDir(), "counter.json"), nil, ".jpg"); err == nil {
		t.Error("kept nothing")
	}
}

// What is missing or changed is said with what to do, and a photograph that only
// has another name is found.
func TestPhoto(t *testing.T) {
	dir := t.TempDir()
	job := filepath.Join(dir, "counter.json")
	name, sum, err := store.KeepPhoto(job, picture(1), ".jpg")
	if err != nil {
		t.Fatal(err)
	}
	r := design.Room{Photo: name, SHA256: sum}
	got, err := store.Photo(job, r)
	if err != nil || !bytes.Equal(got, picture(1)) {
		t.Fatal(err)
	}
	full := filepath.Join(dir, name)
	if err := os.Rename(full, filepath.Join(dir, "first.room.jpg")); err != nil {
		t.Fatal(err)
	}
	if got, err := store.Photo(job, r); err != nil || !bytes.Equal(got, picture(1)) {
		t.Error("not found under another name:", err)
	}
	os.Remove(filepath.Join(dir, "first.room.jpg"))
	if _, err := store.Photo(job, r); !errors.Is(err, store.ErrPhotoGone) || !strings.Contains(err.Error(), "choose the photograph again") {
		t.Error(err)
	}
	written(t, full, picture(9))
	if _, err := store.Photo(job, r); !errors.Is(err, store.ErrPhotoChanged) || !strings.Contains(err.Error(), "mark its corners anew") {
		t.Error(err)
	}
	// A job's file may come from anybody: it reads nothing elsewhere.
	outside := filepath.Join(filepath.Dir(dir), "outside.room.jpg")
	written(t, outside, picture(1))
	for _, name := range []string{"../outside.room.jpg", outside, "", "..", "a\x00b", `a\b`, ".hidden"} {
		if _, err := store.Photo(job, design.Room{Photo: name, SHA256: sum}); err == nil {
			t.Errorf("%q was read", name)
		}
	}
}

// A job that is saved elsewhere takes its photograph along; the first stays.
func TestPhotoAlong(t *testing.T) {
	here, there := t.TempDir(), t.TempDir()
	from, to := filepath.Join(here, "counter.json"), filepath.Join(there, "kitchen.json")
	name, sum, err := store.KeepPhoto(from, picture(1), ".jpg")
	if err != nil {
		t.Fatal(err)
	}
	r, err := store.PhotoAlong(from, to, design.Room{Photo: name, SHA256: sum})
	if err != nil || r.Photo != "kitchen.room.jpg" || r.SHA256 != sum {
		t.Fatal(r, err)
	}
	if !bytes.Equal(content(t, filepath.Join(there, r.Photo)), content(t, filepath.Join(here, name))) {
		t.Error("the copy is another picture")
	}
	os.Remove(filepath.Join(here, name))
	if _, err := store.PhotoAlong(from, to, design.Room{Photo: name, SHA256: sum}); !errors.Is(err, store.ErrPhotoGone) {
		t.Error(err)
	}
	if r, err := store.PhotoAlong(from, to, design.Room{}); err != nil || !r.None() {
		t.Error(r, err)
	}
}
