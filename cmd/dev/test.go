package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"time"
)

// shared lists the packages whose code runs on several goroutines at once; the
// race detector is too slow to run over everything.
var shared = []string{"./ui/session"}

// test sets the machine up and runs every check, to the end even when one fails.
func (d dev) test(short bool) error {
	missing := d.setUp(toBuild, toShow, toTest, toRead)
	sockets, err := d.socketFolder()
	if err != nil {
		return err
	}
	env := windowEnv(os.Environ(), sockets, true)
	d.say("A first run builds the drawing library and takes some minutes; later runs are quick.")
	results := runSteps(d.out, d.testSteps(env, short, missing))
	passed, failed := summary(d.out, results)
	if failed > 0 {
		return fmt.Errorf("%d of %d checks failed; what each said stands above", failed, passed+failed)
	}
	return nil
}

// testSteps lists the checks in their order: quick ones first, the window last.
func (d dev) testSteps(env []string, short bool, missing []need) []step {
	cgo := setVar(env, "CGO_ENABLED", "1")
	plain := setVar(env, "CGO_ENABLED", "0")
	slow, screen := "", ""
	if short {
		slow = "left to the long run"
		screen = slow
	}
	if !d.system.linux {
		screen = "it needs Linux"
	}
	return []step{
		{name: "formatting", run: func(out io.Writer) error { return checkFormat(out, d.root) }},
		{name: "castsheet without a C compiler", run: func(out io.Writer) error {
			return d.buildCastsheet(out, plain)
		}},
		{name: "vet", run: lacking(missing, []purpose{toBuild}, func(out io.Writer) error {
			if err := call(out, cgo, "go", "vet", "./..."); err != nil {
				return err
			}
			return call(out, cgo, "go", "vet", "-tags", "window", "./cmd/castwright")
		})},
		{name: "unit tests and import law", run: lacking(missing, []purpose{toBuild}, func(out io.Writer) error {
			return d.unitTests(out, cgo, short)
		})},
		{name: "race detector", leftOut: slow, run: lacking(missing, []purpose{toBuild}, func(out io.Writer) error {
			return call(out, cgo, append([]string{"go", "test", "-race"}, shared...)...)
		})},
		{name: "castsheet for Windows and macOS", leftOut: slow, run: func(out io.Writer) error {
			return d.crossBuild(out, plain)
		}},
		{name: "real window", leftOut: screen, run: lacking(missing, []purpose{toBuild, toShow, toTest},
			func(out io.Writer) error {
				return call(out, cgo, "go", "test", "-tags", "window", "-count=1", "-timeout=15m",
					"./cmd/castwright")
			})},
	}
}

// lacking makes a step fail at once, and say why, when what it needs is not here.
func lacking(missing []need, purposes []purpose, run func(io.Writer) error) func(io.Writer) error {
	var names []string
	for _, n := range missing {
		for _, p := range purposes {
			if n.purpose == p {
				names = append(names, n.what)
			}
		}
	}
	if len(names) == 0 {
		return run
	}
	return func(io.Writer) error { return errors.New("missing on this machine: " + strings.Join(names, ", ")) }
}

// unitTests runs the packages that have tests; the others are vetted only.
func (d dev) unitTests(out io.Writer, env []string, short bool) error {
	const tested = "{{if or .TestGoFiles .XTestGoFiles}}{{.ImportPath}}{{end}}"
	list := exec.Command("go", "list", "-f", tested, "./...")
	list.Env, list.Stderr = env, out
	found, err := list.Output()
	if err != nil {
		return fmt.Errorf("go list: %w", err)
	}
	words := []string{"go", "test", "-timeout=20m"}
	if short {
		words = append(words, "-short")
	}
	failed := &failures{out: out}
	err = call(failed, env, append(words, strings.Fields(string(found))...)...)
	if len(failed.packages) > 0 {
		return fmt.Errorf("%w: %s", err, strings.Join(failed.packages, ", "))
	}
	return err
}

// failures passes on what go test prints and keeps the packages that failed,
// which may stand far above the end.
type failures struct {
	out      io.Writer
	packages []string
	rest     string // a line that has not ended yet
}

func (f *failures) Write(p []byte) (int, error) {
	lines := strings.Split(f.rest+string(p), "\n")
	f.rest = lines[len(lines)-1]
	for _, line := range lines[:len(lines)-1] {
		if fields := strings.Fields(line); strings.HasPrefix(line, "FAIL\t") && len(fields) > 1 {
			f.packages = append(f.packages, fields[1])
		}
	}
	return f.out.Write(p)
}

// buildCastsheet builds the command line tool for this machine, without cgo.
func (d dev) buildCastsheet(out io.Writer, env []string) error {
	if err := call(out, env, "go", "build", "-o", d.binary("castsheet"), "./cmd/castsheet"); err != nil {
		return err
	}
	return call(out, env, d.binary("castsheet"), "version")
}

// crossBuild builds the command line tool for the other desktop systems.
func (d dev) crossBuild(out io.Writer, env []string) error {
	for _, target := range [][2]string{{"windows", "amd64"}, {"darwin", "arm64"}} {
		start := time.Now()
		env := setVar(setVar(env, "GOOS", target[0]), "GOARCH", target[1])
		name := filepath.Join("bin", "castsheet-"+target[0])
		if err := call(out, env, "go", "build", "-o", name, "./cmd/castsheet"); err != nil {
			return fmt.Errorf("%s/%s: %w", target[0], target[1], err)
		}
		fmt.Fprintf(out, "%s/%s built in %v\n", target[0], target[1], time.Since(start).Round(time.Second/10))
	}
	return nil
}

// binary is the path of a program that this tool builds.
func (d dev) binary(name string) string {
	if d.system.family == windows {
		name += ".exe"
	}
	return filepath.Join(d.root, "bin", name)
}
