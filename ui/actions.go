package ui

import (
	"strings"

	"example.org/castwright/model/edit"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/board"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/jobsheet"
	"example.org/castwright/ui/keys"
	"example.org/castwright/ui/session"
	look "example.org/castwright/ui/theme"
	"fyne.io/fyne/v2"
)

// bindings says what every action of the table means in this window.
func (w *window) bindings() map[keys.ID]keys.Binding {
	b := map[keys.ID]keys.Binding{}
	// drawing is for what only makes sense while the drawing is seen.
	drawing := func() bool { return !w.covered() }
	always := func(id keys.ID, do func()) { b[id] = keys.Binding{Do: do} }
	change := func(id keys.ID, do func()) {
		b[id] = keys.Binding{Do: func() { w.settle(); do() }, Enabled: drawing}
	}
	job := func(id keys.ID, do func()) { b[id] = keys.Binding{Do: func() { w.settle(); do() }} }

	job(keys.NewJob, func() { w.files.NewJob() })
	job(keys.Open, func() { w.files.Open() })
	job(keys.Recent, func() { w.files.Recent() })
	job(keys.Save, func() { w.files.Save() })
	job(keys.SaveAs, func() { w.files.SaveAs() })
	job(keys.ExportPicture, func() { w.files.ExportPicture() })
	job(keys.ExportText, func() { w.files.ExportText() })
	job(keys.ExportJSON, func() { w.files.ExportJSON() })
	job(keys.JobSettings, func() { jobsheet.Show(w.session, w.frame) })
	job(keys.ApprovalSheet, func() { w.desk.MakeSheet() })
	job(keys.MarkApproved, func() { w.desk.Mark() })
	job(keys.ShowApproved, func() { w.desk.Show() })
	job(keys.Letterhead, func() { w.desk.EditLetterhead(nil) })
	job(keys.ExportComparison, func() { w.desk.ExportComparison(w.compared()) })
	job(keys.Quit, w.quit)

	named := func(word string, name func() string) func() string {
		return func() string {
			if n := name(); n != "" {
				return word + " " + strings.ToLower(n[:1]) + n[1:]
			}
			return word
		}
	}
	b[keys.Undo] = keys.Binding{
		Do:   func() { w.settle(); w.session.Undo() },
		Why:  w.unless(func() bool { return w.session.UndoName() != "" || w.typing() }, "there is nothing to take back"),
		Name: named("Undo", w.session.UndoName),
	}
	b[keys.Redo] = keys.Binding{
		Do:   func() { w.settle(); w.session.Redo() },
		Why:  w.unless(func() bool { return w.session.RedoName() != "" || w.typing() }, "there is nothing that was taken back"),
		Name: named("Redo", w.session.RedoName),
	}
	change(keys.SelectTop, func() { w.session.Select(session.Pick{Node: -1}) })
	always(keys.SelectNone, w.backOut)
	change(keys.Mirror, func() { w.do(w.session.Do(edit.Mirror())) })

	w.bindPicture(b)
	// What is seen is the drawing, the two that are compared, or the picture.
	seen := func(id keys.ID, board, compared, picture func()) {
		b[id] = keys.Binding{
			Do: func() {
				switch {
				case w.showing.InPicture():
					picture()
				case w.comparing():
					compared()
				default:
					board()
				}
			},
			Enabled: func() bool {
				return drawing() || w.comparing() && !w.compare.Empty() || w.showing.InPicture()
			},
		}
	}
	seen(keys.Fit, func() { w.board.Fit() }, func() { w.compare.Fit() }, w.showing.WholeTop)
	seen(keys.ZoomIn, func() { w.board.ZoomIn() }, func() { w.compare.ZoomIn() }, func() { w.showing.Nearer(1) })
	seen(keys.ZoomOut, func() { w.board.ZoomOut() }, func() { w.compare.ZoomOut() }, func() { w.showing.Nearer(-1) })
	b[keys.ZoomActual] = keys.Binding{Do: func() { w.board.ZoomActual() }, Enabled: drawing}
	b[keys.PanTool] = keys.Binding{Do: func() { w.board.TogglePan() }, Enabled: drawing,
		Checked: func() bool { return w.board.Tool() == board.Pan }}
	for id, at := range map[keys.ID]func(*board.Show) *bool{
		keys.Dimensions: func(s *board.Show) *bool { return &s.Dimensions },
		keys.Textures:   func(s *board.Show) *bool { return &s.Textures },
		keys.Supports:   func(s *board.Show) *bool { return &s.Supports },
		keys.Grid:       func(s *board.Show) *bool { return &s.Grid },
	} {
		b[id] = keys.Binding{Enabled: drawing,
			Do: func() {
				s := w.board.Shown()
				*at(&s) = !*at(&s)
				w.board.SetShow(s)
				w.bar.show(w)
			},
			Checked: func() bool { s := w.board.Shown(); return *at(&s) },
		}
	}
	shown := func(id keys.ID, toggle func(), on func() bool) {
		board := b[id]
		b[id] = keys.Binding{Enabled: func() bool { return !w.comparing() && !w.rooming() },
			Do: func() {
				if w.showing.Shown() {
					toggle()
				} else {
					board.Do()
				}
			},
			Checked: func() bool { return w.showing.Shown() && on() || !w.showing.Shown() && board.Checked() },
		}
	}
	shown(keys.Dimensions, func() { w.showing.ToggleDimensions() }, func() bool { return w.showing.Dimensions() })
	shown(keys.Textures, func() { w.showing.ToggleTextures() }, func() bool { return w.showing.Textures() })
	w.bindCompare(b)
	w.bindSteps(b)
	w.bindArrange(b, drawing)
	w.bindRoom(b)
	job(keys.Units, w.switchUnits)
	always(keys.Theme, w.switchTheme)
	b[keys.Showing] = keys.Binding{
		Do: func() {
			if w.showing.Object.Visible() {
				w.closeShowing()
				return
			}
			w.settle()
			w.openShowing()
		},
		Enabled: func() bool { return !w.comparing() && !w.rooming() },
		Checked: func() bool { return w.showing.Object.Visible() },
	}
	b[keys.FullScreen] = keys.Binding{
		Do:      func() { w.win.SetFullScreen(!w.win.FullScreen()) },
		Checked: w.win.FullScreen,
	}

	for _, id := range []keys.ID{keys.PartShape, keys.PartEdge, keys.PartSink, keys.PartTaps,
		keys.PartHole,
		keys.PartChannel, keys.PartGlass, keys.PartFinish, keys.PartSupports} {
		change(id, func() { w.parts.Open(id) })
	}
	w.bindDrawing(b, change)

	job(keys.OptionNew, w.newOption)
	job(keys.OptionDuplicate, func() {
		name := edit.NextOption(w.session.Job())
		if w.do(w.session.DoJob(edit.DuplicateOption(w.session.Option().Name))) {
			w.session.SetOption(name)
		}
	})
	job(keys.OptionRename, w.renameOption)
	job(keys.OptionRemove, func() { w.do(w.session.DoJob(edit.RemoveOption(w.session.Option().Name))) })
	b[keys.OptionRemove] = keys.Binding{Do: b[keys.OptionRemove].Do,
		Why: w.unless(func() bool { return len(w.session.Job().Options) > 1 }, "a job keeps one option at least")}
	place := func(id keys.ID, by int, do func(int)) {
		b[id] = keys.Binding{
			Do: func() { w.settle(); do(w.optionPlace() + by) },
			Why: w.unless(func() bool { to := w.optionPlace() + by; return to >= 0 && to < len(w.session.Job().Options) },
				map[int]string{-1: "there is no option further left", 1: "there is no option further right"}[by]),
		}
	}
	move := func(to int) { w.do(w.session.DoJob(edit.MoveOption(w.session.Option().Name, to))) }
	take := func(to int) { w.session.SetOption(w.session.Job().Options[to].Name) }
	place(keys.OptionLeft, -1, move)
	place(keys.OptionRight, 1, move)
	place(keys.OptionPrevious, -1, take)
	place(keys.OptionNext, 1, take)
	b[keys.Lessons] = keys.Binding{
		Do: func() {
			if w.coach.Teaching() {
				w.coach.Stop()
			} else {
				w.settle()
				w.coach.Again()
			}
		},
		Enabled: drawing,
		Checked: func() bool { return w.coach.Teaching() },
	}
	always(keys.Actions, w.showActions)
	always(keys.About, w.showAbout)
	return b
}

// unless says what is in the way while something does not hold.
func (w *window) unless(holds func() bool, why string) func() string {
	return func() string {
		if holds() {
			return ""
		}
		return why
	}
}

// typing reports whether a text has the keyboard, which has an undo of its own.
func (w *window) typing() bool {
	_, ok := w.win.Canvas().Focused().(interface{ Undo() })
	return ok
}

// do says why something could not be done.
func (w *window) do(err error) bool {
	if err != nil {
		control.Warn(w.frame, "That can't be done", err)
	}
	return err == nil
}

// backOut backs out of one thing.
func (w *window) backOut() {
	if w.showing.Object.Visible() {
		if !w.showing.BackOut() {
			w.closeShowing()
		}
		return
	}
	if w.comparing() {
		w.closeCompare()
		return
	}
	if w.rooming() {
		if !w.room.BackOut() {
			w.closeRoom()
		}
		return
	}
	w.board.Put(board.Put{})
}

func (w *window) switchUnits() {
	to := units.Imperial
	if w.session.Job().Units == units.Imperial {
		to = units.Metric
	}
	if w.do(w.session.DoJob(edit.SetUnits(to))) {
		w.settings.Imperial = to == units.Imperial
		w.settings.Save()
	}
}

func (w *window) switchTheme() {
	c := look.Dark
	if look.IsDark() {
		c = look.Light
	}
	w.settings.Theme = string(c)
	w.settings.Save()
	w.app.Settings().SetTheme(look.New(c))
	w.bar.show(w)
}

// optionPlace is where the option in hand stands in the strip.
func (w *window) optionPlace() int {
	for i, o := range w.session.Job().Options {
		if o.Name == w.session.Option().Name {
			return i
		}
	}
	return -1
}

// newOption adds a plain top of the size of the one in hand.
func (w *window) newOption() {
	j := w.session.Job()
	d := session.Plain(j.Units)
	if box := edit.Bounds(w.session.Design().Outline); !box.Empty() {
		resize := edit.Resize(units.FromMM(box.W()), units.FromMM(box.H()))
		if sized, err := resize.Apply(d); err == nil {
			d = sized
		}
	}
	d.Finish, d.Thickness = w.session.Design().Finish, w.session.Design().Thickness
	name := edit.NextOption(j)
	if w.do(w.session.DoJob(edit.AddOption("New idea", d))) {
		w.session.SetOption(name)
	}
}

// renameOption asks for another letter and title.
func (w *window) renameOption() {
	o := w.session.Option()
	name := control.NewEntry(w.frame, "A letter or a short word.")
	name.SetValue(o.Name)
	title := control.NewEntry(w.frame, "What the option is about, in a few words.")
	title.SetValue(o.Title)
	name.EscLeaves, title.EscLeaves = true, true
	var d *control.Dialog
	take := func() bool {
		to, words := strings.TrimSpace(name.Text), strings.TrimSpace(title.Text)
		err := w.session.DoJob(edit.JobEdit{Name: "Rename option",
			Apply: both(edit.RetitleOption(o.Name, words), edit.RenameOption(o.Name, to))})
		return w.do(err)
	}
	enter := func(string) { d.Enter() }
	name.OnSubmitted, title.OnSubmitted = enter, enter
	line := func(label string, e *control.Entry) fyne.CanvasObject {
		name := control.Middle(control.NewText(label).Muted())
		return control.Row(look.Space, control.Sized(56, 0, name), control.Sized(280, 0, e))
	}
	d = control.NewDialog(w.frame, "Rename option "+o.Name,
		control.Column(look.Space, line("Name", name), line("Title", title)),
		control.Cancel(), control.Answer{Text: "Rename", Kind: control.Primary, Enter: true, Do: take})
	d.First(title).Show()
}
