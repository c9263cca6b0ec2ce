package main

import (
	"cmp"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// windowEnv gives the environment for the window, from that of this process:
// a language that the toolkit can read and a folder for the session's sockets,
// which bare systems lack. With quiet, the screen and the toolkit's own settings
// are taken away, so that checks are the same on every machine.
func windowEnv(env []string, sockets string, quiet bool) []string {
	language := cmp.Or(lookup(env, "LC_ALL"), lookup(env, "LC_MESSAGES"), lookup(env, "LANG"))
	base, _, _ := strings.Cut(language, ".")
	if quiet || base == "" || base == "C" || base == "POSIX" {
		env = setVar(env, "LC_ALL", "")
		env = setVar(env, "LC_MESSAGES", "")
		env = setVar(env, "LANG", "en_US.UTF-8")
	}
	if lookup(env, "XDG_RUNTIME_DIR") == "" {
		env = setVar(env, "XDG_RUNTIME_DIR", sockets)
	}
	if quiet {
		for _, name := range []string{"DISPLAY", "WAYLAND_DISPLAY"} {
			env = setVar(env, name, "")
		}
		env = slices.DeleteFunc(slices.Clone(env), func(v string) bool { return strings.HasPrefix(v, "FYNE_") })
	}
	return env
}

// lookup gives the value of a variable in a list of NAME=value; the last one counts.
func lookup(env []string, name string) string {
	for _, v := range slices.Backward(env) {
		if key, value, _ := strings.Cut(v, "="); key == name {
			return value
		}
	}
	return ""
}

// setVar gives env with a variable set, or without it when the value is empty.
// The list that it is given stays as it is: others share it.
func setVar(env []string, name, value string) []string {
	env = slices.DeleteFunc(slices.Clone(env), func(v string) bool { return strings.HasPrefix(v, name+"=") })
	if value == "" {
		return env
	}
	return append(env, name+"="+value)
}

// socketFolder makes, if need be, the folder for the session's sockets.
func (d dev) socketFolder() (string, error) {
	dir := filepath.Join(d.root, "out", "session")
	return dir, os.MkdirAll(dir, 0o700)
}
