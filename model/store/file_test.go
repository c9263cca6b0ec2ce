package store_test

import (
	"errors"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"

	"example.org/castwright/model/design"
	"example.org/castwright/model/store"
)

func TestSaveAndLoad(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "wash counter.json")
	for _, client := range []string{"first", "second, longer than the first", "3rd"} {
		if err := store.Save(path, design.Job{Client: client}); err != nil {
			t.Fatal(err)
		}
		if j, err := store.Load(path); err != nil || j.Client != client {
			t.Errorf("loaded %q, %v, want %q", j.Client, err, client)
		}
	}
	onlyFile(t, dir, "wash counter.json")
}

// onlyFile fails when a folder holds anything else than one file.
func onlyFile(t *testing.T, dir, want string) {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		if e.Name() != want {
			t.Errorf("%s is left in the folder", e.Name())
		}
	}
}

func TestSaveKeepsPermissions(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("Windows has other permissions")
	}
	path := filepath.Join(t.TempDir(), "job.json")
	if err := os.WriteFile(path, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	for _, mode := range []fs.FileMode{0o600, 0o664, 0o644} {
		if err := os.Chmod(path, mode); err != nil {
			t.Fatal(err)
		}
		if err := store.Save(path, design.Job{}); err != nil {
			t.Fatal(err)
		}
		if info, err := os.Stat(path); err != nil || info.Mode().Perm() != mode {
			t.Errorf("mode %v, %v, want %v", info.Mode(), err, mode)
		}
	}
	if err := os.Chmod(path, 0o444); err != nil {
		t.Fatal(err)
	}
	if err := store.Save(path, design.Job{}); err == nil || !strings.Contains(err.Error(), "read-only") {
		t.Errorf("a read-only file: error %v", err)
	}
}

func TestSaveFollowsLinks(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "jobs", "job.json")
	if err := os.Mkdir(filepath.Dir(path), 0o755); err != nil {
		t.Fatal(err)
	}
	one, two := filepath.Join(dir, "one.json"), filepath.Join(dir, "two.json")
	if err := errors.Join(os.Symlink(filepath.Join("jobs", "job.json"), one), os.Symlink(one, two)); err != nil {
		t.Skip("no links here: ", err)
	}
	for _, client := range []string{"to a name that is free", "to a file that is there"} {
		if err := store.Save(two, design.Job{Client: client}); err != nil {
			t.Fatal(err)
		}
		if j, err := store.Load(path); err != nil || j.Client != client {
			t.Errorf("the file holds %q, %v, want %q", j.Client, err, client)
		}
	}
	for _, link := range []string{one, two} {
		if info, err := os.Lstat(link); err != nil || info.Mode()&fs.ModeSymlink == 0 {
			t.Errorf("%s is no link any more: %v", link, err)
		}
	}
	round := filepath.Join(dir, "round.json")
	if err := os.Symlink(round, round); err != nil {
		t.Fatal(err)
	}
	if err := store.Save(round, design.Job{}); err == nil || !strings.Contains(err.Error(), "circle") {
		t.Errorf("links in a circle: error %v", err)
	}
}

func TestWhatIsNoFile(t *testing.T) {
	dir := t.TempDir()
	if err := store.Save(dir, design.Job{}); err == nil || !strings.Contains(err.Error(), "not a file") {
		t.Errorf("saving to a folder: %v", err)
	}
	if _, err := store.Load(dir); err == nil || !strings.Contains(err.Error(), "not a file") {
		t.Errorf("opening a folder: %v", err)
	}
	missing := filepath.Join(dir, "no", "job.json")
	if _, err := store.Load(missing); !errors.Is(err, fs.ErrNotExist) || !strings.Contains(err.Error(), missing) {
		t.Errorf("opening what is not there: %v", err)
	}
	if err := store.Save(missing, design.Job{}); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("saving into a folder that is not there: %v", err)
	}
}

// A file that can't be read is left as it is, and the error names the place.
func TestLoadNeverTouches(t *testing.T) {
	path := filepath.Join(t.TempDir(), "job.json")
	for text, want := range map[string]string{
		strings.Replace(rectangle, `"version": 1`, `"version": 9`, 1): "line 3, version: this file is version 9",
		strings.Replace(rectangle, `38.1`, `"thick"`, 1):              "line 9, options[0].design.thickness_mm: ",
		"not a job": "line 1: ",
	} {
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		before, err := os.Stat(path)
		if err != nil {
			t.Fatal(err)
		}
		_, err = store.Load(path)
		var s *store.SyntaxError
		if !errors.As(err, &s) || !strings.Contains(err.Error(), want) || !strings.Contains(err.Error(), path) {
			t.Errorf("error %v, want one with %q", err, want)
		}
		after, err := os.Stat(path)
		if err != nil || !os.SameFile(before, after) || after.ModTime() != before.ModTime() {
			t.Errorf("the file was touched: %v", err)
		}
		if data, err := os.ReadFile(path); err != nil || string(data) != text {
			t.Errorf("the file was changed: %v", err)
		}
	}
}

const savingForever = "CASTWRIGHT_TEST_SAVING"

// TestMain lets the test below run this program as one that saves for ever.
func TestMain(m *testing.M) {
	if path := os.Getenv(savingForever); path != "" {
		for i := 0; ; i++ {
			if err := store.Save(path, large(i)); err != nil {
				os.Exit(1)
			}
		}
	}
	os.Exit(m.Run())
}

// large is a job that takes a while to write.
func large(i int) design.Job {
	d := design.Design{Notes: strings.Repeat("clay ", 20_000*(1+i%3)), Thickness: mm(float64(i % 1000))}
	return design.Job{Client: "studio", Options: []design.Option{{Name: "A", Design: d}}}
}

// Killed at any moment, a program that saves leaves a whole file behind.
func TestKilledWhileSaving(t *testing.T) {
	path := filepath.Join(t.TempDir(), "job.json")
	if err := store.Save(path, large(0)); err != nil {
		t.Fatal(err)
	}
	for i := range 15 {
		cmd := exec.Command(os.Args[0])
		cmd.Env = append(os.Environ(), savingForever+"="+path)
		if err := cmd.Start(); err != nil {
			t.Fatal(err)
		}
		time.Sleep(time.Duration(20+7*i) * time.Millisecond)
		if err := cmd.Process.Kill(); err != nil {
			t.Fatal(err)
		}
		cmd.Wait()
		if j, err := store.Load(path); err != nil || j.Client != "studio" {
			t.Fatalf("after kill %d: %q, %v", i+1, j.Client, err)
		}
	}
	if err := store.Save(path, design.Job{Client: "after"}); err != nil {
		t.Errorf("saving beside what was left: %v", err)
	}
}

func BenchmarkDecode(b *testing.B) {
	data := []byte(rectangle)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := store.Decode(data); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkEncode(b *testing.B) {
	job, err := store.Decode([]byte(rectangle))
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		store.Encode(job)
	}
}
