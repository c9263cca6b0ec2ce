package files

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"example.org/castwright/ui/control"
	"example.org/castwright/ui/icon"
	look "example.org/castwright/ui/theme"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Wish is what a path is wanted for.
type Wish struct {
	Title  string
	Accept string // the button's word: "Open", "Save"
	Ext    string // such as ".json"; files of others are not shown; to read there may be several: ".svg .dxf"
	Write  bool   // the file is to be written: it need not exist, and one that does is asked about
	Start  string // path or folder to start from
	Extra  fyne.CanvasObject
	// Check may refuse before the dialog closes, such as for a bad number in Extra.
	Check func() error
}

// shows reports whether a file has one of the endings.
func (w Wish) shows(name string) bool {
	for ext := range strings.FieldsSeq(w.Ext) {
		if strings.EqualFold(filepath.Ext(name), ext) {
			return true
		}
	}
	return false
}

// chooser is the dialog that asks for a path. A path can be typed, or found in
// the list; Enter accepts, Esc backs out.
type chooser struct {
	frame  *control.Frame
	wish   Wish
	done   func(path string)
	dir    string
	shown  []entry
	dialog *control.Dialog
	path   *control.Entry
	where  *control.Text
	fault  *widget.Label
	list   *fyne.Container
	scroll *container.Scroll
	last   string // the file tapped last, and when
	lastAt time.Time
}

// entry is a line of the list.
type entry struct {
	name   string
	folder bool
	when   time.Time
}

// Choose asks for a path.
func Choose(f *control.Frame, w Wish, done func(path string)) {
	c := &chooser{frame: f, wish: w, done: done}
	c.build()
	dir, name := w.Start, ""
	if info, err := os.Stat(dir); err != nil || !info.IsDir() {
		dir, name = filepath.Dir(w.Start), filepath.Base(w.Start)
	}
	if abs, err := filepath.Abs(dir); err == nil {
		dir = abs
	}
	if c.enter(dir) != nil {
		home, _ := os.UserHomeDir()
		c.enter(home)
	}
	if w.Write {
		c.path.SetValue(name)
	}
	c.dialog.First(c.path).Sized(680, 520).Show()
}

func (c *chooser) build() {
	c.path = control.NewEntry(c.frame, "A name in this folder or a whole path; Enter accepts it.")
	c.path.SetPlaceHolder("Name or whole path")
	c.path.OnSubmitted = func(string) { c.accept() }
	c.path.EscLeaves = true
	c.where = control.NewText("").Muted().Cut()
	c.fault = control.SmallLines("")
	c.fault.Importance = widget.DangerImportance
	c.list = control.Column(0)
	c.scroll = container.NewVScroll(c.list)

	places := control.Column(2)
	for _, p := range c.places() {
		places.Add(control.NewButton(c.frame, control.Face{Icon: p.icon, Text: p.name,
			Hint: "Goes to " + p.dir + ".", Wide: true}, func() { c.visit(p.dir) }))
	}
	up := control.NewButton(c.frame, control.Face{Icon: icon.Up, Text: "Up",
		Hint: "Goes to the folder that holds this one."}, func() { c.visit(filepath.Dir(c.dir)) })
	head := control.Column(look.Space, container.NewBorder(nil, nil, up, nil,
		control.Pad(0, look.Space, control.Middle(c.where))))
	foot := control.Column(look.Gap, c.path, c.fault)
	if c.wish.Extra != nil {
		foot.Add(c.wish.Extra)
	}
	body := container.NewBorder(head, control.Pad(look.Space, 0, foot),
		control.Pad(0, look.Space, control.Sized(148, 0, places)), nil,
		control.Ground(theme.ColorNameInputBackground, c.scroll))
	c.dialog = control.NewDialog(c.frame, c.wish.Title, body, control.Cancel(),
		control.Answer{Text: c.wish.Accept, Kind: control.Primary, Enter: true,
			Do: func() bool { c.accept(); return false }})
}

// place is a folder to go to by one click.
type place struct {
	name, dir string
	icon      fyne.Resource
}

func (c *chooser) places() (out []place) {
	add := func(name, dir string, res fyne.Resource) {
		if info, err := os.Stat(dir); err == nil && info.IsDir() {
			out = append(out, place{name, dir, res})
		}
	}
	if home, err := os.UserHomeDir(); err == nil {
		add("Home", home, icon.Home)
		for _, name := range []string{"Documents", "Desktop", "Downloads", "Pictures"} {
			add(name, filepath.Join(home, name), icon.Folder)
		}
	}
	add("Computer", filepath.VolumeName(c.dir)+string(filepath.Separator), icon.Folder)
	return out
}

// visit goes to a folder, or says why not.
func (c *chooser) visit(dir string) {
	c.say(c.enter(dir))
}

func (c *chooser) say(err error) {
	text := ""
	if err != nil {
		text = control.Sentence(err.Error())
	}
	if c.fault.Text != text {
		c.fault.SetText(text)
	}
}

// enter lists a folder.
func (c *chooser) enter(dir string) error {
	names, err := os.ReadDir(dir)
	if err != nil {
		return fmt.Errorf("%s can't be shown: %w", dir, plainlyRead(err))
	}
	c.dir = dir
	c.where.SetText(dir)
	c.shown = nil
	for _, n := range names {
		if strings.HasPrefix(n.Name(), ".") {
			continue
		}
		info, err := os.Stat(filepath.Join(dir, n.Name())) // over links
		if err != nil || !info.IsDir() && !c.wish.shows(n.Name()) {
			continue
		}
		c.shown = append(c.shown, entry{n.Name(), info.IsDir(), info.ModTime()})
	}
	slices.SortStableFunc(c.shown, func(a, b entry) int {
		if a.folder != b.folder {
			if a.folder {
				return -1
			}
			return 1
		}
		return strings.Compare(strings.ToLower(a.name), strings.ToLower(b.name))
	})
	c.fill()
	return nil
}

// mostShown bounds the list; a name can always be typed.
const mostShown = 400

// fill shows the list.
func (c *chooser) fill() {
	c.list.RemoveAll()
	for i, e := range c.shown {
		if i == mostShown {
			c.list.Add(control.SmallLines(fmt.Sprintf("and %d more: type the name", len(c.shown)-i)))
			break
		}
		c.list.Add(c.line(e))
	}
	if len(c.shown) == 0 {
		c.list.Add(control.SmallLines("There are no folders and no " + strings.Join(strings.Fields(c.wish.Ext), " or ") + " files here."))
	}
	c.scroll.ScrollToTop()
}

func (c *chooser) line(e entry) *control.Tile {
	res, hint := icon.File, "A click takes this file, a double click accepts it."
	when := e.when.Format("2 Jan 2006, 15:04")
	if e.folder {
		res, hint, when = icon.Folder, "A click goes into this folder.", ""
	}
	body := container.NewBorder(nil, nil, control.Sized(18, 18,
		control.Middle(control.Icon(res, look.Muted))),
		control.Middle(control.NewText(when).Caption().Muted().Right()),
		control.Pad(0, look.Space, control.Middle(control.NewText(e.name).Cut())))
	return control.NewTile(c.frame, hint, control.Pad(look.Gap, look.Space, body), func() { c.tap(e) })
}

// tap goes into a folder, or takes a file; a second tap at once accepts it.
func (c *chooser) tap(e entry) {
	if e.folder {
		c.visit(filepath.Join(c.dir, e.name))
		return
	}
	now := time.Now()
	again := c.last == e.name && now.Sub(c.lastAt) < doubleClick
	c.last, c.lastAt = e.name, now
	c.path.SetText(e.name)
	if again {
		c.accept()
		return
	}
	c.frame.Window.Canvas().Focus(c.path)
}

const doubleClick = 500 * time.Millisecond

// resolve makes a whole path of what was typed.
func (c *chooser) resolve(typed string) (string, error) {
	typed = strings.TrimSpace(typed)
	if typed == "" {
		return "", errors.New("type a name, or pick a file from the list")
	}
	if rest, ok := strings.CutPrefix(typed, "~"); ok && (rest == "" || rest[0] == filepath.Separator) {
		if home, err := os.UserHomeDir(); err == nil {
			typed = filepath.Join(home, rest)
		}
	}
	if !filepath.IsAbs(typed) {
		typed = filepath.Join(c.dir, typed)
	}
	return filepath.Clean(typed), nil
}

// accept takes the path that stands there, if it can be used.
func (c *chooser) accept() {
	path, err := c.resolve(c.path.Text)
	if err != nil {
		c.say(err)
		return
	}
	info, err := os.Stat(path)
	if err == nil && info.IsDir() {
		c.path.SetText("")
		c.visit(path)
		return
	}
	if c.wish.Write && filepath.Ext(path) == "" {
		path += c.wish.Ext
		info, err = os.Stat(path)
	}
	there := err == nil
	switch {
	case !c.wish.Write && !there:
		c.say(fmt.Errorf("%s: %w", path, plainlyRead(err)))
		return
	case c.wish.Write && !there:
		if folder, err := os.Stat(filepath.Dir(path)); err != nil || !folder.IsDir() {
			c.say(fmt.Errorf("there is no folder %s: pick one from the list", filepath.Dir(path)))
			return
		}
	}
	if c.wish.Check != nil {
		if err := c.wish.Check(); err != nil {
			c.say(err)
			return
		}
	}
	if c.wish.Write && there {
		control.Ask(c.frame, "Write over it?",
			fmt.Sprintf("There is a file %s already, last changed %s.", filepath.Base(path),
				info.ModTime().Format("2 Jan 2006, 15:04")), control.Cancel(),
			control.Answer{Text: "Write over", Kind: control.Danger, Enter: true,
				Then: func() { c.end(path) }})
		return
	}
	c.end(path)
}

func (c *chooser) end(path string) {
	c.dialog.Close()
	c.done(path)
}

// plainlyRead says why something can't be read in plain words.
func plainlyRead(err error) error {
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return errors.New("there is no such file or folder")
	case errors.Is(err, fs.ErrPermission):
		return errors.New("you may not read it")
	}
	return plainly(err)
}
