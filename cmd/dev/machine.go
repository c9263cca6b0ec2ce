package main

import (
	"os/exec"
	"path/filepath"
	"strings"
)

// machine answers what is on this computer. Tests put their own in its place.
type machine struct {
	program  func(name string) bool   // is on the search path
	compiles func(header string) bool // the C compiler finds this header
	config   func(name string) bool   // pkg-config knows this library
	file     func(pattern string) bool
}

func thisMachine() machine {
	compiler := cCompiler()
	return machine{
		program: func(name string) bool { return has(name) },
		compiles: func(header string) bool {
			if compiler == "" {
				return false
			}
			cmd := exec.Command(compiler, "-E", "-x", "c", "-")
			cmd.Stdin = strings.NewReader("#include <" + header + ">\n")
			return cmd.Run() == nil
		},
		config: func(name string) bool { return exec.Command("pkg-config", "--exists", name).Run() == nil },
		file: func(pattern string) bool {
			found, _ := filepath.Glob(pattern)
			return len(found) > 0
		},
	}
}

func has(program string) bool {
	_, err := exec.LookPath(program)
	return err == nil
}

// cCompiler is the compiler that Go would call for C, or "" when it is not here.
func cCompiler() string {
	out, err := exec.Command("go", "env", "CC").Output()
	fields := strings.Fields(string(out))
	if err != nil || len(fields) == 0 || !has(fields[0]) {
		return ""
	}
	return fields[0]
}

func program(name string) func(machine) bool {
	return func(m machine) bool { return m.program(name) }
}

func compiles(header string) func(machine) bool {
	return func(m machine) bool { return m.compiles(header) }
}

func configured(library string) func(machine) bool {
	return func(m machine) bool { return m.config(library) }
}

func both(a, b func(machine) bool) func(machine) bool {
	return func(m machine) bool { return a(m) && b(m) }
}

// driver looks for any of Mesa's drivers, by the places where the families keep
// them, or for that of a graphics card's maker.
func driver(m machine) bool {
	for _, pattern := range []string{
		"/usr/lib*/dri/*_dri.so", "/usr/lib/*/dri/*_dri.so",
		"/usr/lib*/libgallium*.so", "/usr/lib/*/libgallium*.so",
		"/usr/lib*/libGLX_*.so.0", "/usr/lib/*/libGLX_*.so.0",
		"/run/opengl-driver/lib/dri/*_dri.so",
	} {
		if m.file(pattern) {
			return true
		}
	}
	return false
}
