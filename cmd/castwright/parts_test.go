//go:build window

package main_test

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// TestPartsAndRelations works parts without aiming at them: by the list, by their
// chains and by keys. The job's sink is held between its gables, and its tap holes
// keep to it.
func TestPartsAndRelations(t *testing.T) {
	d := startDisplay(t, screenW, screenH)
	home := t.TempDir()
	text, err := os.ReadFile("../../testdata/jobs/bowed-counter.json")
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(home, "bowed-counter.json")
	if err := os.WriteFile(path, text, 0o644); err != nil {
		t.Fatal(err)
	}
	r := start(t, d, home, path)
	r.wait("the job is open", func(s state) bool { return s.Path == path })
	m := newMaker(t, r, d.hand(t))
	selected := func(ids ...string) func(state) bool {
		return func(s state) bool { return slices.Equal(s.Selection, ids) }
	}
	// control clicks a control of the window.
	control := func(says, words string, done func(state) bool) state {
		t.Helper()
		var p at
		m.wait("a control that says "+says, func(s state) bool {
			var ok bool
			p, ok = spotOf(s.Controls, says)
			return ok
		})
		m.move(p)
		m.wait("the hint line says "+says, func(s state) bool { return strings.HasPrefix(s.Hint, says) })
		m.down()
		m.up()
		return m.wait(words, done)
	}

	m.press("ctrl+alt+p", "the list of parts is open", func(s state) bool {
		_, ok := spotOf(s.Controls, "Click selects the sink")
		return ok
	})
	s := control("Click selects the sink", "the sink is selected", selected("sink-1"))
	if len(s.Links) == 0 {
		t.Fatal("no relation of the sink is shown")
	}
	chain, ok := spotOf(s.Links, "Taps stay")
	if !ok {
		t.Fatalf("the tap holes' chain is not among %v", s.Links)
	}
	m.move(chain)
	m.wait("the hint says what the chain is", func(s state) bool { return strings.Contains(s.Hint, "click its chain") })
	m.down()
	m.up()
	m.wait("a click takes the relation", func(s state) bool { return strings.Contains(s.Hint, "Delete or a second click cuts it") })
	m.press("Delete", "the relation is cut", func(s state) bool { return s.Undo == "Free tap holes" && len(s.Selection) == 1 })
	m.press("ctrl+z", "and comes back", func(s state) bool { return s.Undo == "" })
	d.shootStill(t, "parts-relations")

	m.press("ctrl+alt+l", "the sink is locked", undoes("Lock sink"))
	s, err = m.state()
	if err != nil {
		t.Fatal(err)
	}
	m.drag(s.Board.place(30.75*25.4, 8*25.4), s.Board.place(36*25.4, 9*25.4))
	m.wait("a locked sink does not follow the hand, which is told why", func(s state) bool {
		return s.Undo == "Lock sink" && strings.Contains(s.Hint, "locked")
	})
	control("Hides the sink", "the sink is hidden and let go", func(s state) bool { return s.Undo == "Hide sink" && len(s.Selection) == 0 })
	d.shootStill(t, "parts-hidden")
	control("Shows every hidden part", "the sink is shown again", undoes("Show all parts"))
	m.press("ctrl+alt+shift+l", "and unlocked", undoes("Unlock sink"))

	n := 0
	m.press("ctrl+a", "all parts are selected", func(s state) bool { n = len(s.Selection); return n > 3 })
	m.press("ctrl+c", "they are copied", func(s state) bool { return strings.Contains(s.Hint, "Copied") })
	m.press("ctrl+v", "and pasted in one step", func(s state) bool {
		return strings.HasPrefix(s.Undo, "Paste ") && len(s.Selection) == n
	})
	m.press("Right", "and moved in one step", func(s state) bool { return strings.HasPrefix(s.Undo, "Move ") })
	m.press("Delete", "and removed in one step", func(s state) bool { return strings.HasPrefix(s.Undo, "Remove ") && len(s.Selection) == 0 })

	second := t.TempDir()
	other := start(t, d, second, writeJob(t, second))
	other.wait("another window is open", func(s state) bool { return s.Path != "" })
	windows := strings.Fields(m.do("search", "--sync", "--onlyvisible", "--name", "kiln-shelf"))
	m.do("windowfocus", "--sync", windows[len(windows)-1])
	m.key("ctrl+v")
	other.wait("the parts are pasted in another window", func(s state) bool {
		return strings.HasPrefix(s.Undo, "Paste ") && len(s.Selection) == n
	})
	d.shootStill(t, "parts-pasted")
}
