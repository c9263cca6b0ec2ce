package bring

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"sync/atomic"
	"time"

	"example.org/castwright/model/template"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/files"
	"example.org/castwright/ui/session"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

// Exts are the endings of the files that can be brought in.
const Exts = ".svg .dxf"

// Can reports whether a file is of a kind that can be brought in, by its ending.
func Can(path string) bool {
	for _, e := range strings.Fields(Exts) {
		if strings.EqualFold(filepath.Ext(path), e) {
			return true
		}
	}
	return false
}

// Bring is where outlines come in. It belongs to the main goroutine.
type Bring struct {
	Session *session.Session
	Frame   *control.Frame
	Hands   Hands
	Later   func(time.Duration, func())
}

// Choose asks for a file from a folder on and then for what is in it.
func (b *Bring) Choose(folder string, as As) {
	files.Choose(b.Frame, files.Wish{Title: "Bring in an outline", Accept: "Look at it", Ext: Exts, Start: folder},
		func(path string) { b.Open(path, as) })
}

// found is what a file holds: its drawing, in both units when it says none.
type found struct {
	path   string
	says   bool // the file says its unit, or its size beyond doubt
	fixed  bool // no other unit can be meant
	as     [3]template.Drawing
	faults [3]error
}

// patience is how long a reading goes on before it is shown.
const patience = 300 * time.Millisecond

// Open reads a file and shows what is in it.
func (b *Bring) Open(path string, as As) {
	var stop atomic.Bool
	done := false
	bar := widget.NewProgressBarInfinite()
	wait := control.NewDialog(b.Frame, "Reading "+filepath.Base(path), control.Sized(320, 24, container.NewStack(bar)),
		control.Answer{Text: "Stop", Hint: "Leaves the file alone (Esc).", Esc: true,
			Do: func() bool { stop.Store(true); return true }})
	b.Later(patience, func() {
		if !done {
			wait.Show()
		}
	})
	b.Frame.Background(func() func() {
		got, err := read(path)
		return func() {
			done = true
			bar.Stop()
			wait.Close()
			switch {
			case stop.Load():
			case err != nil:
				control.Warn(b.Frame, "The outline can't be brought in", err)
			default:
				b.show(got, as)
			}
		}
	})
}

// read reads a file, as it says itself, in millimetres and in inches. Its error is
// why nothing in it can be used.
func read(path string) (found, error) {
	f := found{path: path}
	data, err := readFile(path)
	if err != nil {
		return f, err
	}
	for _, u := range [...]template.Unit{template.UnitUnknown, template.UnitMM, template.UnitInch} {
		f.as[u], f.faults[u] = template.Read(data, u)
	}
	f.says = f.faults[0] != template.ErrUnits
	switch {
	case f.says && f.faults[0] != nil:
		return f, fmt.Errorf("%s: %w", filepath.Base(path), f.faults[0])
	case !f.says && f.faults[1] != nil && f.faults[2] != nil:
		return f, fmt.Errorf("%s: %w", filepath.Base(path), f.faults[1])
	}
	f.fixed = f.says && f.as[0].MM == f.as[1].MM && f.as[0].MM == f.as[2].MM
	return f, nil
}

// mostBytes is how much of a file is read.
const mostBytes = 32 << 20

func readFile(path string) ([]byte, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	data, err := io.ReadAll(io.LimitReader(f, mostBytes+1))
	if err == nil && len(data) > mostBytes {
		err = fmt.Errorf("%s: the file is larger than %d MB: save only the outline", filepath.Base(path), mostBytes>>20)
	}
	return data, err
}
