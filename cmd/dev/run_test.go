package main

import (
	"errors"
	"io"
	"slices"
	"testing"
)

func TestOptionNames(t *testing.T) {
	got, err := optionNames([]byte(`{"client":"x","options":[{"name":"A"},{"name":"B"}]}`))
	if err != nil || !slices.Equal(got, []string{"A", "B"}) {
		t.Errorf("got %v, %v", got, err)
	}
	for _, bad := range []string{``, `[]`, `{"options":[]}`, `{"options":`} {
		if _, err := optionNames([]byte(bad)); err == nil {
			t.Errorf("%q gave no error", bad)
		}
	}
}

func TestFileName(t *testing.T) {
	for in, want := range map[string]string{"A": "A", "../x": "---x", "Größe 2": "Größe-2"} {
		if got := fileName(in); got != want {
			t.Errorf("%q: got %q, want %q", in, got, want)
		}
	}
}

func TestUsage(t *testing.T) {
	for _, args := range [][]string{
		nil, {"fly"}, {"run", "a", "b"}, {"test", "x"}, {"test", "-long"}, {"check", "x"},
	} {
		if err := dispatch(args, io.Discard); !errors.Is(err, errUsage) {
			t.Errorf("%q: got %v, want the usage", args, err)
		}
	}
}
