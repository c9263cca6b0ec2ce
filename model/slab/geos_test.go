package slab_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/store"
)

// reference is where the tops and their values by other programs lie, with the
// scripts that made them.
const reference = "../../testdata"

// cases reads the options of all job files that match a pattern.
func cases(t *testing.T, pattern string) map[string]design.Design {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(reference, pattern))
	if err != nil || len(files) == 0 {
		t.Fatalf("no job files %s: %v", pattern, err)
	}
	out := map[string]design.Design{}
	for _, f := range files {
		j, err := store.Load(f)
		if err != nil {
			t.Fatal(err)
		}
		for _, o := range j.Options {
			out[o.Name] = o.Design
		}
	}
	return out
}

func expected(t *testing.T, file string, into any) {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(reference, file))
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(data, into); err != nil {
		t.Fatal(err)
	}
}
