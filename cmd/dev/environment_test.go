package main

import (
	"slices"
	"testing"
)

func TestWindowEnv(t *testing.T) {
	for _, c := range []struct {
		name  string
		env   []string
		quiet bool
		want  []string
	}{
		{"bare", nil, false, []string{"LANG=en_US.UTF-8", "XDG_RUNTIME_DIR=S"}},
		{"C", []string{"LANG=C.UTF-8", "HOME=h"}, false,
			[]string{"HOME=h", "LANG=en_US.UTF-8", "XDG_RUNTIME_DIR=S"}},
		{"C over all", []string{"LC_ALL=C", "LANG=de_DE.UTF-8"}, false,
			[]string{"LANG=en_US.UTF-8", "XDG_RUNTIME_DIR=S"}},
		{"a desktop keeps its own", []string{"LANG=de_DE.UTF-8", "XDG_RUNTIME_DIR=r", "DISPLAY=:0",
			"FYNE_SCALE=2"}, false,
			[]string{"DISPLAY=:0", "FYNE_SCALE=2", "LANG=de_DE.UTF-8", "XDG_RUNTIME_DIR=r"}},
		{"checks are alike everywhere", []string{"LANG=de_DE.UTF-8", "XDG_RUNTIME_DIR=r", "DISPLAY=:0",
			"WAYLAND_DISPLAY=w", "FYNE_SCALE=2"}, true,
			[]string{"LANG=en_US.UTF-8", "XDG_RUNTIME_DIR=r"}},
	} {
		got := windowEnv(c.env, "S", c.quiet)
		slices.Sort(got)
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: got %q, want %q", c.name, got, c.want)
		}
	}
}

func TestSetVarLeavesItsArgument(t *testing.T) {
	env := make([]string, 0, 8)
	env = append(env, "A=1", "B=2", "C=3")
	without, with := setVar(env, "A", "0"), setVar(env, "A", "1")
	if lookup(without, "A") != "0" || lookup(with, "A") != "1" {
		t.Errorf("two settings from one list got mixed: %q and %q", without, with)
	}
	if !slices.Equal(env, []string{"A=1", "B=2", "C=3"}) {
		t.Errorf("the list itself became %q", env)
	}
}
