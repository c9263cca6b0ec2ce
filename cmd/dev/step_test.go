package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"strings"
	"testing"
	"time"
)

func TestStepsGoOnAfterAFailure(t *testing.T) {
	var out bytes.Buffer
	var order []string
	do := func(name string, err error) step {
		return step{name: name, run: func(w io.Writer) error {
			order = append(order, name)
			fmt.Fprintf(w, "%s says\nmore", name)
			return err
		}}
	}
	left := do("third", nil)
	left.leftOut = "it needs Linux"
	results := runSteps(&out, []step{
		do("first", nil), do("second", errors.New("broken")), left, do("fourth", nil),
	})
	passed, failed := summary(&out, results)
	if passed != 2 || failed != 1 {
		t.Errorf("got %d passed and %d failed, want 2 and 1", passed, failed)
	}
	if got := strings.Join(order, " "); got != "first second fourth" {
		t.Errorf("ran %s", got)
	}
	text := out.String()
	for _, want := range []string{
		"[1/4] first\nfirst says\nmore\n",
		"failed: broken\n", "left out  third: it needs Linux\n",
		"FAILED    second",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("the output lacks %q:\n%s", want, text)
		}
	}
	if !strings.HasSuffix(text, "\n2 passed, 1 failed\n") {
		t.Errorf("the last line is not the count:\n%s", text)
	}
}

func TestNeededStepStops(t *testing.T) {
	first := step{name: "first", needed: true, run: func(io.Writer) error { return errors.New("broken") }}
	second := step{name: "second", run: func(io.Writer) error { t.Error("the second step ran"); return nil }}
	if results := runSteps(io.Discard, []step{first, second}); len(results) != 1 || results[0].err == nil {
		t.Errorf("got %+v, want the first step's failure alone", results)
	}
}

func TestTellerKeepsLinesWhole(t *testing.T) {
	var out bytes.Buffer
	tell := newTeller(&out, time.Hour)
	for _, s := range []string{"ok  \tpack", "age\t0.1s\nok", "\n", "last"} {
		if n, err := tell.Write([]byte(s)); n != len(s) || err != nil {
			t.Fatalf("wrote %d of %d: %v", n, len(s), err)
		}
	}
	if got, want := out.String(), "ok  \tpackage\t0.1s\nok\n"; got != want {
		t.Errorf("before the end: got %q, want %q", got, want)
	}
	tell.stop()
	if got, want := out.String(), "ok  \tpackage\t0.1s\nok\nlast\n"; got != want {
		t.Errorf("at the end: got %q, want %q", got, want)
	}
}

func TestLacking(t *testing.T) {
	ran := false
	run := func(io.Writer) error { ran = true; return nil }
	missing := []need{{what: "Xvfb", purpose: toTest}}
	if err := lacking(missing, []purpose{toBuild}, run)(io.Discard); err != nil || !ran {
		t.Errorf("a build that lacks nothing did not run: %v", err)
	}
	ran = false
	err := lacking(missing, []purpose{toBuild, toTest}, run)(io.Discard)
	if err == nil || !strings.Contains(err.Error(), "Xvfb") || ran {
		t.Errorf("a test without its screen: ran %v, error %v", ran, err)
	}
}

func TestFailuresKeepsFailedPackages(t *testing.T) {
	var out bytes.Buffer
	f := &failures{out: &out}
	const said = "ok  \tx/a\t0.1s\n--- FAIL: TestB (0.0s)\nFAIL\nFAIL\tx/b\t0.2s\nFAIL\tx/c [build failed]\nFAIL\n"
	for _, half := range []string{said[:50], said[50:]} {
		if _, err := f.Write([]byte(half)); err != nil {
			t.Fatal(err)
		}
	}
	if got := strings.Join(f.packages, " "); got != "x/b x/c" {
		t.Errorf("got %q, want x/b and x/c", got)
	}
	if out.String() != said {
		t.Errorf("what was said came out as %q", &out)
	}
}
