//go:build window

package main_test

import (
	"fmt"
	"strings"
	"testing"
)

// maker works the window as a person does and counts the gestures. A gesture is
// one of:
//
//   - a click, with the way of the pointer to it,
//   - a drag, from the press to the release,
//   - a key or a shortcut,
//   - a value: a number or a text with the Enter or Tab that ends it.
//
// Every gesture waits until the window shows that it was understood; none waits
// for a time to pass.
type maker struct {
	*running
	hand
	t        testing.TB
	gestures int
	log      []string
}

func newMaker(t testing.TB, r *running, h hand) *maker { return &maker{running: r, hand: h, t: t} }

// count notes a gesture.
func (m *maker) count(format string, args ...any) {
	m.gestures++
	m.log = append(m.log, fmt.Sprintf("%2d %s", m.gestures, fmt.Sprintf(format, args...)))
}

// press presses a shortcut, and waits for what it does.
func (m *maker) press(key, words string, done func(state) bool) state {
	m.t.Helper()
	m.count("key %s: %s", key, words)
	m.key(key)
	return m.wait(words, done)
}

// clickAt clicks a place of the drawing, in inches, once the hint line says that a
// click there does what is meant.
func (m *maker) clickAt(x, y float64, hint, words string, done func(state) bool) state {
	m.t.Helper()
	m.over(x, y, hint)
	m.count("click at %g, %g in: %s", x, y, words)
	m.down()
	m.up()
	return m.wait(words, done)
}

// over moves the pointer over a place of the drawing, in inches, until the hint
// line says so. It is no gesture: a click or a value follows.
func (m *maker) over(x, y float64, hint string) state {
	m.t.Helper()
	s, err := m.state()
	if err != nil {
		m.t.Fatal(err)
	}
	p := s.Board.place(x*25.4, y*25.4)
	m.move(at{p.X + 3, p.Y + 3})
	m.move(p)
	return m.wait("the hint says "+hint, func(s state) bool { return strings.Contains(s.Hint, hint) })
}

// pick clicks a control of the card that is open.
func (m *maker) pick(says, words string, done func(state) bool) state {
	m.t.Helper()
	var p at
	m.wait("a control that says "+says, func(s state) bool {
		var ok bool
		p, ok = spotOf(s.Controls, says)
		return ok && s.Busy
	})
	m.move(p)
	m.wait("the hint line says "+says, func(s state) bool { return strings.HasPrefix(s.Hint, says) })
	m.count("click %q: %s", says, words)
	m.down()
	m.up()
	return m.wait(words, done)
}

// pull presses a handle of the drawing, pulls it by some pixels and holds it. It
// is a gesture; let go afterwards.
func (m *maker) pull(handle string, dx, dy float64, words string, done func(state) bool) state {
	m.t.Helper()
	var p at
	m.wait("a handle "+handle, func(s state) bool {
		var ok bool
		p, ok = spotOf(s.Handles, handle)
		return ok
	})
	m.move(at{p.X + 2, p.Y})
	m.move(p)
	m.wait("the handle is under the pointer", func(s state) bool { return strings.HasPrefix(s.Hint, "Drag ") })
	m.count("drag the handle %s: %s", handle, words)
	m.down()
	for i := 1.0; i <= 4; i++ {
		m.move(at{p.X + dx*i/4, p.Y + dy*i/4})
	}
	return m.wait(words, done)
}

// value types a number for a measure of what is in hand, with the key that ends
// it, and waits for what it does.
func (m *maker) value(measure, text, end string, words string, done func(state) bool) state {
	m.t.Helper()
	m.count("value %s %q %s: %s", measure, text, end, words)
	m.write(text)
	m.wait(fmt.Sprintf("%q typed for %q", text, measure), func(s state) bool {
		return s.Typing != nil && s.Typing.Name == measure && s.Typing.Text == text
	})
	m.key(end)
	return m.wait(words, done)
}

// fill clicks an entry of the panel and types its value: two gestures. It waits
// until the entry shows the value as the window writes it.
func (m *maker) fill(says, text, shown string) {
	m.t.Helper()
	var p at
	m.wait("an entry that says "+says, func(s state) bool {
		var ok bool
		p, ok = spotOf(s.Controls, says)
		return ok
	})
	m.move(p)
	m.wait("the hint line says "+says, func(s state) bool { return strings.HasPrefix(s.Hint, says) })
	m.count("click the entry %q", says)
	m.down()
	m.up()
	m.count("value %q Return", text)
	m.write(text)
	shows := func(value string) func(state) bool {
		return func(s state) bool {
			for _, c := range s.Controls {
				if strings.HasPrefix(c.Says, says) {
					return c.Value == value
				}
			}
			return false
		}
	}
	m.wait(fmt.Sprintf("%q typed", text), shows(text))
	m.key("Return")
	m.wait(says+" is "+shown, shows(shown))
}

// typingFor reports whether a number for a measure is open and empty.
func typingFor(measure string) func(state) bool {
	return func(s state) bool { return s.Typing != nil && s.Typing.Name == measure && s.Typing.Text == "" }
}

// undoes reports whether undo would take back an edit of that name.
func undoes(name string) func(state) bool {
	return func(s state) bool { return s.Undo == name && s.Typing == nil && !s.Busy }
}
