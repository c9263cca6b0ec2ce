package files

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"sync/atomic"
	"time"

	"example.org/castwright/export/raster"
	exportreport "example.org/castwright/export/report"
	"example.org/castwright/model/design"
	"example.org/castwright/model/draw"
	"example.org/castwright/model/report"
	"example.org/castwright/model/scene"
	"example.org/castwright/model/store"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/session"
	look "example.org/castwright/ui/theme"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

// JobExt is the ending of job files.
const JobExt = ".json"

// Files is the window's dealings with the disk. It belongs to the main
// goroutine.
type Files struct {
	Settings *Settings
	// OnOpen hears that another job is in hand, such as to show all of it.
	OnOpen func()
	// OnDrawing hears of a drawing that was dropped on the window: it reports
	// whether it takes it.
	OnDrawing func(path string) bool
	// OnKept hears that copies of the work can no longer be kept, or again.
	OnKept func()
	// Later runs something on the main goroutine after a while.
	Later func(time.Duration, func())
	// Now is the clock.
	Now func() time.Time

	s       *session.Session
	frame   *control.Frame
	keeping *keeping
	unkept  error // why no copy could be kept lately
}

// New deals with the files of a session.
func New(s *session.Session, f *control.Frame, settings *Settings,
	later func(time.Duration, func())) *Files {
	files := &Files{Settings: settings, Later: later, Now: time.Now, s: s, frame: f,
		keeping: &keeping{folder: settings.unsavedFolder()}}
	files.keeping.take("")
	files.watch()
	return files
}

// Guard goes on at once when nothing would be lost, else it asks first: save,
// drop, or stay.
func (f *Files) Guard(doing string, then func()) {
	if !f.s.Dirty() {
		then()
		return
	}
	name := "This job"
	if p := f.s.Path(); p != "" {
		name = filepath.Base(p)
	}
	control.Ask(f.frame, "Save the changes?",
		name+" has changes that are not saved. "+doing+" without saving loses them.",
		control.Answer{Text: "Don't save", Kind: control.Danger, Hint: "Loses the changes.",
			Then: then},
		control.Answer{Text: "Stay", Hint: "Changes nothing (Esc).", Esc: true},
		control.Answer{Text: "Save", Kind: control.Primary, Hint: "Saves first (Enter).", Enter: true,
			Then: func() { f.save(then) }})
}

// NewJob takes a plain job in hand.
func (f *Files) NewJob() {
	f.Guard("A new job", func() {
		sys := units.Metric
		if f.Settings.Imperial {
			sys = units.Imperial
		}
		f.s.Load(session.Blank(sys), "")
		f.keeping.take("")
		f.opened()
	})
}

// Open asks for a job's file and opens it.
func (f *Files) Open() {
	f.Guard("Opening another job", func() {
		Choose(f.frame, Wish{Title: "Open a job", Accept: "Open", Ext: JobExt, Start: f.folder()},
			f.load)
	})
}

// OpenPath opens a job's file, after asking about changes.
func (f *Files) OpenPath(path string) {
	f.Guard("Opening another job", func() { f.load(path) })
}

// load reads a file and takes its job in hand. A file that can't be read is said
// why, and what is in hand stays.
func (f *Files) load(path string) {
	j, err := ReadJob(path)
	if err != nil {
		control.Warn(f.frame, "The job can't be opened", err)
		return
	}
	f.s.Load(j, path)
	f.Settings.Remember(path)
	f.keeping.take(path)
	f.opened()
	f.OfferLost(path)
}

// ReadJob reads a job that has at least one option.
func ReadJob(path string) (design.Job, error) {
	j, err := store.Load(path)
	if err == nil && len(j.Options) == 0 {
		err = fmt.Errorf("%s: the job holds no options: it can't be shown", path)
	}
	return j, err
}

func (f *Files) opened() {
	if f.OnOpen != nil {
		f.OnOpen()
	}
}

// Dropped opens the first file that was dropped on the window.
func (f *Files) Dropped(uris []fyne.URI) {
	for _, u := range uris {
		if u.Scheme() == "file" && strings.EqualFold(u.Extension(), JobExt) {
			f.OpenPath(u.Path())
			return
		}
		if u.Scheme() == "file" && f.OnDrawing != nil && f.OnDrawing(u.Path()) {
			return
		}
	}
	if len(uris) > 0 {
		control.Warn(f.frame, "This can't be opened",
			fmt.Errorf("%s is neither a job nor a drawing or photograph: drop a %s, .svg, .dxf, .jpg or .png file", uris[0].Name(), JobExt))
	}
}

// Save saves the job in its file; one that has none asks for it.
func (f *Files) Save() { f.save(nil) }

// SaveAs saves the job in another file and goes on there.
func (f *Files) SaveAs() { f.saveAs(nil) }

func (f *Files) save(then func()) {
	if f.s.Path() == "" {
		f.saveAs(then)
		return
	}
	f.saveHere(f.s.Path(), then)
}

func (f *Files) saveAs(then func()) {
	start := f.s.Path()
	if start == "" {
		start = filepath.Join(f.folder(), FileName(f.s.Job().Client, "job")+JobExt)
	}
	Choose(f.frame, Wish{Title: "Save the job", Accept: "Save", Ext: JobExt, Write: true, Start: start},
		func(path string) { f.write(path, then) })
}

func (f *Files) write(path string, then func()) {
	j := f.s.Job()
	room, gone := store.PhotoAlong(f.s.Path(), path, j.Room)
	j.Room = room
	err := store.Save(path, j)
	if err == nil {
		f.keeping.take(path)
		f.s.MarkSavedAs(path, j)
	}
	f.saved(path, err, then)
	if err == nil && gone != nil {
		control.Warn(f.frame, "The job is saved without its photograph of the room", gone)
	}
}

// WithFile goes on once the job has a file, for what is kept beside it; it asks for
// one first, and says what for.
func (f *Files) WithFile(what string, then func()) {
	if f.s.Path() != "" {
		then()
		return
	}
	control.Ask(f.frame, "Save the job first?", what, control.Cancel(),
		control.Answer{Text: "Save…", Kind: control.Primary, Hint: "Asks where to (Enter).", Enter: true,
			Then: func() { f.saveAs(then) }})
}

// saved goes on after a save, or says why there is none.
func (f *Files) saved(path string, err error, then func()) {
	if err != nil {
		control.Warn(f.frame, "The job is not saved", fmt.Errorf("%w. Nothing is lost: the job stays open here as it is, "+
			"and the file is as it was saved last. Put that right and save again, or save elsewhere (File, Save as)", err))
		return
	}
	f.s.MarkSaved(path)
	f.Settings.Remember(path)
	if then != nil {
		then()
	}
}

// Close gives up what was kept of the job in hand: it is saved, or the maker
// dropped it.
func (f *Files) Close() { f.keeping.close() }

// Folder is where dialogs start.
func (f *Files) Folder() string { return f.folder() }

// folder is where dialogs start.
func (f *Files) folder() string {
	if p := f.s.Path(); p != "" {
		return filepath.Dir(p)
	}
	if info, err := os.Stat(f.Settings.Folder); err == nil && info.IsDir() {
		return f.Settings.Folder
	}
	home, err := os.UserHomeDir()
	if err != nil {
		return "."
	}
	if docs := filepath.Join(home, "Documents"); isFolder(docs) {
		return docs
	}
	return home
}

func isFolder(path string) bool {
	info, err := os.Stat(path)
	return err == nil && info.IsDir()
}

// FileName makes a file's name of a text: small letters, digits and hyphens.
func FileName(text, otherwise string) string {
	var b strings.Builder
	for _, r := range strings.ToLower(text) {
		switch {
		case r >= 'a' && r <= 'z' || r >= '0' && r <= '9':
			b.WriteRune(r)
		case b.Len() > 0 && !strings.HasSuffix(b.String(), "-"):
			b.WriteByte('-')
		}
	}
	name := strings.Trim(b.String(), "-")
	if name == "" {
		return otherwise
	}
	return name[:min(len(name), 60)]
}

// ExportName is a name to offer for what is exported of the option in hand.
func (f *Files) ExportName(what, ext string) string { return f.exportName(what, ext) }

// exportName is the name of what is exported of the option in hand.
func (f *Files) exportName(what, ext string) string {
	base := FileName(f.s.Job().Client, "job")
	if p := f.s.Path(); p != "" {
		base = strings.TrimSuffix(filepath.Base(p), filepath.Ext(p))
	}
	return filepath.Join(f.folder(), base+"-"+FileName(f.s.Option().Name, "option")+what+ext)
}

// The widths that a picture may have, in pixels.
const (
	minWidth     = 200
	maxWidth     = 8192
	defaultWidth = 2400
)

// ExportPicture asks where to, and writes the option in hand as a PNG.
func (f *Files) ExportPicture() {
	width := f.Settings.PictureWidth
	if width < minWidth || width > maxWidth {
		width = defaultWidth
	}
	entry := control.NewEntry(f.frame, fmt.Sprintf("Width of the picture in pixels, %d to %d.",
		minWidth, maxWidth))
	entry.SetValue(fmt.Sprint(width))
	entry.Commit = func(text string) error {
		var n int
		if _, err := fmt.Sscanf(strings.TrimSpace(text)+"\n", "%d\n",
			&n); err != nil || n < minWidth || n > maxWidth {
			return fmt.Errorf("%q is no width: type %d to %d pixels", text, minWidth, maxWidth)
		}
		width = n
		return nil
	}
	extra := control.Row(look.Space, control.Middle(control.NewText("Width").Muted()),
		control.Sized(88, 0, entry), control.Middle(control.NewText("pixels").Muted()))
	check := func() error {
		entry.Settle()
		return entry.Fault()
	}
	Choose(f.frame, Wish{Title: "Export a picture for the client", Accept: "Export", Ext: ".png",
		Write: true,
		Start: f.exportName("", ".png"), Extra: extra, Check: check}, func(path string) {
		f.Settings.PictureWidth = width
		f.Settings.Save()
		f.writePicture(path, width)
	})
}

func (f *Files) writePicture(path string, width int) {
	page := draw.Sheet(f.s.Job(), f.s.Option(), f.s.Report(), draw.SheetOptions{
		Width: float64(width), Date: f.Now().Format("2 January 2006"),
	})
	f.background("Drawing the picture", func(stopped func() bool) error {
		return WritePicture(path,
			page, stopped)
	}, func() {
		control.TellFile(f.frame, "The picture", path)
	})
}

// errStopped ends a work that was stopped.
var errStopped = errors.New("stopped")

// WritePicture writes a page as a PNG, wholly or not at all.
func WritePicture(path string, page scene.Page, stopped func() bool) error {
	return store.Write(path, func(w io.Writer) error {
		return raster.PNG(stopping{w, stopped}, page, raster.Options{})
	})
}

// stopping is a writer that fails once the work is to stop.
type stopping struct {
	io.Writer
	stopped func() bool
}

func (s stopping) Write(p []byte) (int, error) {
	if s.stopped() {
		return 0, errStopped
	}
	return s.Writer.Write(p)
}

// patience is how long a work goes on before it is shown.
const patience = 300 * time.Millisecond

// background does a work off the main goroutine; when it takes a while, a dialog
// says so and can stop it.
func (f *Files) background(title string, work func(stopped func() bool) error, done func()) {
	var stop atomic.Bool
	finished := false
	bar := widget.NewProgressBarInfinite()
	dialog := control.NewDialog(f.frame, title, control.Sized(320, 24, container.NewStack(bar)),
		control.Answer{Text: "Stop", Esc: true, Do: func() bool { stop.Store(true); return true }})
	f.Later(patience, func() {
		if !finished {
			dialog.Show()
		}
	})
	f.frame.Background(func() func() {
		err := work(stop.Load)
		return func() {
			finished = true
			bar.Stop()
			dialog.Close()
			switch {
			case err == nil:
				done()
			case !stop.Load():
				control.Warn(f.frame, "The file is not written", err)
			}
		}
	})
}

// ExportText asks where to, and writes the report of the option in hand as text.
func (f *Files) ExportText() { f.exportReport(".txt", exportreport.Text) }

// ExportJSON does so as JSON.
func (f *Files) ExportJSON() { f.exportReport(".json", exportreport.JSON) }

func (f *Files) exportReport(ext string, write func(io.Writer, design.Job, design.Option,
	report.Report) error) {
	Choose(f.frame, Wish{Title: "Export the report", Accept: "Export", Ext: ext, Write: true,
		Start: f.exportName("-report", ext)},
		func(path string) {
			j, o, r := f.s.Job(), f.s.Option(), f.s.Report()
			err := store.Write(path, func(w io.Writer) error { return write(w, j, o, r) })
			if err != nil {
				control.Warn(f.frame, "The report is not written", err)
				return
			}
			control.TellFile(f.frame, "The report", path)
		})
}
