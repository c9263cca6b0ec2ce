package main

import (
	"bytes"
	"fmt"
	"go/format"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// checkFormat names every Go file below root that gofmt would change.
func checkFormat(out io.Writer, root string) error {
	files, wrong := 0, 0
	err := fs.WalkDir(os.DirFS(root), ".", func(name string, e fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if e.IsDir() && skipFolder(name) {
			return fs.SkipDir
		}
		if e.IsDir() || !strings.HasSuffix(name, ".go") {
			return nil
		}
		src, err := os.ReadFile(filepath.Join(root, name))
		if err != nil {
			return err
		}
		files++
		switch want, err := format.Source(src); {
		case err != nil:
			wrong++
			fmt.Fprintf(out, "%s: %v\n", name, err)
		case !bytes.Equal(src, want):
			wrong++
			fmt.Fprintf(out, "%s: gofmt would change it; run gofmt -w %s\n", name, name)
		}
		return nil
	})
	if err != nil {
		return err
	}
	if wrong > 0 {
		return fmt.Errorf("%d of %d files are not as gofmt writes them", wrong, files)
	}
	fmt.Fprintf(out, "%d files are as gofmt writes them\n", files)
	return nil
}

// skipFolder says which folders hold no source of the project.
func skipFolder(name string) bool {
	base := filepath.Base(name)
	return name != "." && strings.HasPrefix(base, ".") || base == "testdata" || name == "bin" || name == "out"
}
