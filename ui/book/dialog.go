package book

import (
	"fmt"
	"strings"

	"example.org/castwright/model/book"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/session"
	look "example.org/castwright/ui/theme"
	"fyne.io/fyne/v2/widget"
)

// AskToKeep asks for a name and keeps what is selected.
func (b *Book) AskToKeep(s *session.Session) {
	e, err := Selected(s.Design(), s.Selection(), s.Job().Units)
	if err != nil {
		control.Warn(b.frame, "That can't be kept", err)
		return
	}
	what := strings.ToLower(Kind(e.Kind))
	if n := len(e.Taps); e.Kind == book.KindSink && n > 0 {
		what += " and the tap holes that keep to it"
	}
	b.askName("Keep in your book", "The "+what+" can then be used in every job, from the parts row.", e.Title, "Keep",
		func(title string, then func(error)) {
			e.Title = title
			b.Keep(e, then)
		}, true)
}

// AskToRename asks for another name of a part.
func (b *Book) AskToRename(title string, then func()) {
	b.askName("Rename "+title, "", title, "Rename", func(to string, done func(error)) {
		b.Rename(title, to, func(err error) {
			done(err)
			if err == nil {
				then()
			}
		})
	}, false)
}

// askName asks for a name and does something with it. Where it is that of another
// part and replaces says so, it asks before it goes on.
func (b *Book) askName(heading, words, start, verb string, do func(string, func(error)), replaces bool) {
	name := control.NewEntry(b.frame, "A name to know the part by.")
	name.SetText(start)
	name.EscLeaves = true
	fault := control.SmallLines("")
	fault.Importance = widget.DangerImportance
	var d *control.Dialog
	finish := func(title string) {
		do(title, func(err error) {
			if err != nil {
				fault.SetText(control.Sentence(err.Error()))
				return
			}
			d.Close()
		})
	}
	take := func() bool {
		title := strings.TrimSpace(name.Text)
		switch {
		case title == "":
			fault.SetText("The part needs a name: type one.")
		case replaces && b.Has(title):
			control.Ask(b.frame, "Replace it?", fmt.Sprintf("Your book has a part %q already.", title), control.Cancel(),
				control.Answer{Text: "Replace", Kind: control.Danger, Enter: true, Then: func() { finish(title) }})
		default:
			finish(title)
		}
		return false // it closes once the book has taken the part
	}
	name.OnSubmitted = func(string) { d.Enter() }
	body := control.Column(look.Space)
	if words != "" {
		body.Add(control.Narrow(380, control.SmallLines(words)))
	}
	body.Add(control.Sized(380, 0, name))
	body.Add(control.Narrow(380, fault))
	d = control.NewDialog(b.frame, heading, body, control.Cancel(),
		control.Answer{Text: verb, Kind: control.Primary, Enter: true, Do: take})
	d.First(name).Show()
}

// AskToForget takes a part out, after asking.
func (b *Book) AskToForget(title string, then func()) {
	control.Ask(b.frame, "Take it out of your book?",
		fmt.Sprintf("%q is no longer offered. Jobs that use it keep it.", title), control.Cancel(),
		control.Answer{Text: "Take out", Kind: control.Danger, Enter: true, Then: func() {
			b.Forget(title, func(err error) {
				if err != nil {
					control.Warn(b.frame, "The part stays in the book", err)
					return
				}
				then()
			})
		}})
}

func lower(s string) string {
	if s == "" {
		return s
	}
	return strings.ToLower(s[:1]) + s[1:]
}
