//go:build window && kills

package main_test

import (
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

// TestFullDisk fills the disk below an open job: the window says so, the file stays
// as it was, nothing of the work is lost, and with room again it is saved. It
// needs the right to mount a small disk, and is run by hand like the kills.
func TestFullDisk(t *testing.T) {
	disk := t.TempDir()
	if out, err := exec.Command("mount", "-t", "tmpfs", "-o", "size=128k", "tmpfs", disk).CombinedOutput(); err != nil {
		t.Skipf("no small disk can be mounted here: %v %s", err, out)
	}
	t.Cleanup(func() { exec.Command("umount", disk).Run() })
	path := writeJob(t, disk)
	before, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	d := startDisplay(t, screenW, screenH)
	h := d.hand(t)
	r := start(t, d, t.TempDir(), path)
	s := r.wait("the job is open", func(s state) bool { return s.Path == path })

	filler := filepath.Join(disk, "filler")
	f, err := os.Create(filler)
	for err == nil {
		_, err = f.Write(make([]byte, 512))
	}
	f.Close()
	if !errors.Is(err, syscall.ENOSPC) {
		t.Fatal(err)
	}
	h.click(s.Board.place(900, 450))
	h.write("1234")
	h.key("Return")
	r.wait("the edit, and that no copy can be kept", func(s state) bool {
		return near(s.WidthMM, 1234) && strings.Contains(s.Saved, "no copy can be kept")
	})
	h.key("ctrl+s")
	s = r.wait("the window says that it is not saved", func(s state) bool { return s.Busy })
	if !s.Dirty {
		t.Error("the job counts as saved")
	}
	d.shootStill(t, "full-disk")
	if now, err := os.ReadFile(path); err != nil || string(now) != string(before) {
		t.Errorf("the file is not as it was: %v", err)
	}
	h.key("Return")
	r.wait("the message is gone", func(s state) bool { return !s.Busy && s.Dirty && near(s.WidthMM, 1234) })
	if err := os.Remove(filler); err != nil {
		t.Fatal(err)
	}
	h.key("ctrl+s")
	r.wait("the job is saved", func(s state) bool { return !s.Dirty && !s.Busy })
	if w := saved(t, path, "A").Measures.Bounds.W(); !near(w, 1234) {
		t.Errorf("the file holds %g mm", w)
	}
}
