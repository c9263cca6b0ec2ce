package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestCheckFormat(t *testing.T) {
	root := t.TempDir()
	write := func(name, text string) {
		t.Helper()
		path := filepath.Join(root, name)
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	write("a/good.go", "package a\n")
	write("a/testdata/bad.go", "package  a\n")
	write("out/bad.go", "package  a\n")
	var out bytes.Buffer
	if err := checkFormat(&out, root); err != nil {
		t.Errorf("a tidy tree: %v\n%s", err, &out)
	}
	write("a/bad.go", "package a\nfunc  f( ) {}\n")
	write("a/broken.go", "package")
	out.Reset()
	if err := checkFormat(&out, root); err == nil {
		t.Error("an untidy tree passed")
	}
	for _, want := range []string{"a/bad.go", "a/broken.go"} {
		if !strings.Contains(out.String(), want) {
			t.Errorf("%s is not named in:\n%s", want, &out)
		}
	}
}
