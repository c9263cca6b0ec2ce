package session

import (
	"slices"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/report"
)

// Locked reports whether the hand must leave a part of the design in hand alone.
func (s *Session) Locked(id design.ID) bool { return s.Option().Locked(id) }

// Hidden reports whether a part of the design in hand is left out on the board.
func (s *Session) Hidden(id design.ID) bool { return s.Option().Hidden(id) }

// Seen is what the board shows of the design in hand: all of it but the hidden
// parts, and the report of that. Numbers are never taken from it: they are those
// of the whole, [Session.Report].
func (s *Session) Seen() (design.Design, report.Report) {
	o := s.Option()
	if len(o.HiddenParts()) == 0 {
		return o.Design, s.report
	}
	if s.seen == nil {
		d := edit.Seen(o)
		s.seen = &derived{design: d, report: report.Derive(d, s.Job().Materials, s.Job().Site)}
	}
	return s.seen.design, s.seen.report
}

// Free are the parts of the design in hand that are neither locked nor hidden, in
// the order of the file.
func (s *Session) Free() []design.ID {
	var out []design.ID
	for _, id := range edit.Parts(s.Design()) {
		if h := s.Option().HandlingOf(id); !h.Locked && !h.Hidden {
			out = append(out, id)
		}
	}
	return out
}

// LockedParts are the parts of the design in hand that are locked, in the order of
// the file.
func (s *Session) LockedParts() []design.ID {
	var out []design.ID
	for _, id := range edit.Parts(s.Design()) {
		if s.Locked(id) {
			out = append(out, id)
		}
	}
	return out
}

// AllLocked reports whether each of some parts is locked.
func (s *Session) AllLocked(ids []design.ID) bool {
	return !slices.ContainsFunc(ids, func(id design.ID) bool { return !s.Locked(id) })
}

// AllHidden reports whether each of some parts is hidden.
func (s *Session) AllHidden(ids []design.ID) bool {
	return !slices.ContainsFunc(ids, func(id design.ID) bool { return !s.Hidden(id) })
}
