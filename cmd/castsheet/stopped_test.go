package main

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// A program that is told to stop says so, writes nothing and leaves nothing behind.
func TestStopped(t *testing.T) {
	dir := t.TempDir()
	var out, errs bytes.Buffer
	if code := run(context.Background(), []string{"demo", dir}, &out, &errs); code != exitFine {
		t.Fatal(errs.String())
	}
	before, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	job := filepath.Join(dir, "clay-room-wash-counter.json")
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	for _, args := range [][]string{
		{"picture", job, "-o", filepath.Join(dir, "a.png")},
		{"preview", job, "-o", filepath.Join(dir, "b.png"), "--width", "200"},
		{"compare", job, "--options", "A,B", "-o", filepath.Join(dir, "c.pdf")},
		{"approval", job, "-o", filepath.Join(dir, "d.pdf"), "--approve", "2026-11-26", "--letterhead", "none"},
	} {
		out.Reset()
		errs.Reset()
		if code := run(ctx, args, &out, &errs); code != exitFailed || !strings.Contains(errs.String(), "stopped") || out.Len() > 0 {
			t.Errorf("%s: ends with %d, says %q and %q", args[0], code, out.String(), errs.String())
		}
	}
	after, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	if len(after) != len(before) {
		t.Errorf("%d files, want %d: %v", len(after), len(before), after)
	}
}
