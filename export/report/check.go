package report

import (
	"io"

	"example.org/castwright/model/design"
	"example.org/castwright/model/report"
)

// Check writes what stands against casting an option of the job, the part of
// [Text] with its faults and warnings.
func Check(w io.Writer, j design.Job, o design.Option, r report.Report) error {
	p := newPage(w)
	p.title(j, o, r)
	p.faults(r.Faults)
	p.warnings(r.Warnings, j.Units)
	return p.w.Flush()
}
