package approval

import (
	"context"
	"io"

	"example.org/castwright/model/store"
	"example.org/castwright/ui/control"
)

// paper is a page or sheet that is made and can be written.
type paper interface {
	PDF(io.Writer) error
	PNG(w io.Writer, width int) error
}

// make makes a paper in the background, with its progress, and writes it to a file,
// wholly or not at all; a PNG is width pixels wide. title heads the progress, what
// names the paper when it is done.
func (d *Desk) make(title, what, path string, kind fileKind, width int,
	of func(ctx context.Context, show func(string, float64)) (paper, error)) {
	var notes []string // of what was made, set before it is done
	control.Start(d.frame, d.later, control.Work{
		Title: title,
		Do: func(ctx context.Context, show func(string, float64)) error {
			p, err := of(ctx, show)
			if err != nil {
				return err
			}
			if n, ok := p.(interface{ Notes() []string }); ok {
				notes = n.Notes()
			}
			show("Writing the file", 1)
			return store.Write(path, func(w io.Writer) error {
				if err := ctx.Err(); err != nil {
					return err
				}
				if kind == 1 {
					return p.PNG(w, width)
				}
				return p.PDF(w)
			})
		},
		Done: func(err error) {
			if err != nil {
				control.Warn(d.frame, "The "+what+" is not written", err)
				return
			}
			control.TellFile(d.frame, "The "+what, path, notes...)
		},
	})
}
