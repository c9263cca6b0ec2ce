package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
)

const usage = `usage:
  go run ./cmd/dev run [FILE]      set up, build and start the program
  go run ./cmd/dev test [-short]   set up and run every check
  go run ./cmd/dev check           set up only, for running and testing
`

// errUsage is a call that makes no sense; the usage has been shown.
var errUsage = errors.New("usage")

func main() {
	err := dispatch(os.Args[1:], os.Stdout)
	switch {
	case err == nil:
	case errors.Is(err, errUsage):
		fmt.Fprint(os.Stderr, usage)
		os.Exit(2)
	default:
		fmt.Fprintln(os.Stderr, "dev:", err)
		os.Exit(1)
	}
}

func dispatch(args []string, out io.Writer) error {
	if len(args) == 0 {
		return errUsage
	}
	flags := flag.NewFlagSet(args[0], flag.ContinueOnError)
	flags.SetOutput(io.Discard)
	short := false
	most := 0 // arguments after the flags
	switch args[0] {
	case "test":
		flags.BoolVar(&short, "short", false, "leave out what takes long")
	case "run":
		most = 1
	case "check":
	default:
		return errUsage
	}
	if flags.Parse(args[1:]) != nil || flags.NArg() > most {
		return errUsage
	}
	file := flags.Arg(0)
	if file != "" {
		abs, err := filepath.Abs(file)
		if err != nil {
			return err
		}
		file = abs
	}
	root, err := moduleRoot()
	if err != nil {
		return err
	}
	if err := os.Chdir(root); err != nil {
		return err
	}
	d := dev{root: root, out: out, system: thisSystem()}
	switch args[0] {
	case "run":
		return d.run(file)
	case "test":
		return d.test(short)
	}
	return d.check()
}

// dev is what every sub-command works with.
type dev struct {
	root   string // the module's folder, and the working folder
	out    io.Writer
	system system
}

func (d dev) say(format string, args ...any) { fmt.Fprintf(d.out, format+"\n", args...) }

// check sets the machine up for running and testing.
func (d dev) check() error {
	missing := d.setUp(toBuild, toShow, toTest, toRead)
	if len(missing) > 0 {
		return fmt.Errorf("%d of the things named above are still missing", len(missing))
	}
	d.say("Everything is here.")
	return nil
}

// moduleRoot is the nearest folder upward that holds go.mod.
func moduleRoot() (string, error) {
	dir, err := os.Getwd()
	if err != nil {
		return "", err
	}
	for {
		if _, err := os.Stat(filepath.Join(dir, "go.mod")); err == nil {
			return dir, nil
		}
		up := filepath.Dir(dir)
		if up == dir {
			return "", errors.New("no go.mod here or above: run this inside the project's folder")
		}
		dir = up
	}
}
