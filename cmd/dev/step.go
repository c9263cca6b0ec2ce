package main

import (
	"bytes"
	"fmt"
	"io"
	"os/exec"
	"strings"
	"sync"
	"time"
)

// step is one part of a long command. It is done when run gives nil.
type step struct {
	name    string
	leftOut string // why it is not done here, "" when it is
	needed  bool   // the steps after it cannot do without it
	run     func(out io.Writer) error
}

// result is how a step ended.
type result struct {
	step step
	err  error
	took time.Duration
}

// runSteps does the steps one after the other, on after a failure unless that
// step is needed, and says at every moment what it is doing.
func runSteps(out io.Writer, steps []step) []result {
	var results []result
	for i, s := range steps {
		if s.leftOut != "" {
			results = append(results, result{step: s})
			continue
		}
		fmt.Fprintf(out, "\n[%d/%d] %s\n", i+1, len(steps), s.name)
		t := newTeller(out, 20*time.Second)
		err := s.run(t)
		took := t.stop()
		if err != nil {
			fmt.Fprintf(out, "failed: %v\n", err)
		}
		results = append(results, result{s, err, took})
		if err != nil && s.needed {
			break
		}
	}
	return results
}

// summary prints how each step ended and, as its last line, how many passed and
// failed, which it also gives.
func summary(out io.Writer, results []result) (passed, failed int) {
	fmt.Fprintln(out, "\nSummary")
	for _, r := range results {
		took := r.took.Round(100 * time.Millisecond)
		switch {
		case r.step.leftOut != "":
			fmt.Fprintf(out, "  left out  %s: %s\n", r.step.name, r.step.leftOut)
		case r.err != nil:
			failed++
			fmt.Fprintf(out, "  FAILED    %s, %v: %v\n", r.step.name, took, r.err)
		default:
			passed++
			fmt.Fprintf(out, "  passed    %s, %v\n", r.step.name, took)
		}
	}
	fmt.Fprintf(out, "%d passed, %d failed\n", passed, failed)
	return passed, failed
}

// call runs a program with its output going to out.
func call(out io.Writer, env []string, words ...string) error {
	cmd := exec.Command(words[0], words[1:]...)
	cmd.Env = env
	cmd.Stdout, cmd.Stderr = out, out
	if err := cmd.Run(); err != nil {
		return fmt.Errorf("%s: %w", strings.Join(words[:min(len(words), 2)], " "), err)
	}
	return nil
}

// teller passes whole lines on and, when none has come for a while, says that
// work goes on, so that nobody takes a cold build for a hang.
type teller struct {
	mu     sync.Mutex
	out    io.Writer
	rest   []byte // a line that has not ended yet
	start  time.Time
	last   time.Time
	ticker *time.Ticker
	done   chan struct{}
}

func newTeller(out io.Writer, silence time.Duration) *teller {
	now := time.Now()
	t := &teller{out: out, start: now, last: now, ticker: time.NewTicker(silence), done: make(chan struct{})}
	go func() {
		for {
			select {
			case <-t.done:
				return
			case now := <-t.ticker.C:
				t.mu.Lock()
				if now.Sub(t.last) >= silence-time.Second {
					fmt.Fprintf(t.out, "  ... still at it after %v\n", now.Sub(t.start).Round(time.Second))
				}
				t.mu.Unlock()
			}
		}
	}()
	return t
}

// Write passes on the lines that are whole by now.
func (t *teller) Write(p []byte) (int, error) {
	t.mu.Lock()
	defer t.mu.Unlock()
	t.last = time.Now()
	t.rest = append(t.rest, p...)
	if end := bytes.LastIndexByte(t.rest, '\n'); end >= 0 {
		if _, err := t.out.Write(t.rest[:end+1]); err != nil {
			return 0, err
		}
		t.rest = append(t.rest[:0], t.rest[end+1:]...)
	}
	return len(p), nil
}

// stop passes on what is left and gives the time since the start.
func (t *teller) stop() time.Duration {
	t.ticker.Stop()
	close(t.done)
	t.mu.Lock()
	defer t.mu.Unlock()
	if len(t.rest) > 0 {
		fmt.Fprintf(t.out, "%s\n", t.rest)
		t.rest = nil
	}
	return time.Since(t.start)
}
