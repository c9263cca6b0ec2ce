package session

import (
	"reflect"

	"example.org/castwright/model/design"
	"example.org/castwright/model/report"
)

// derived is a report with what it was derived from.
type derived struct {
	design    design.Design
	materials design.Materials
	site      design.Site
	report    report.Report
}

// ReportOf is the report of any option of the job; false when there is none of
// that name. Reports are kept while what they come from stays the same.
func (s *Session) ReportOf(option string) (report.Report, bool) {
	if option == s.option {
		return s.report, true
	}
	j := s.Job()
	o, ok := j.Option(option)
	if !ok {
		return report.Report{}, false
	}
	was, ok := s.others[option]
	if !ok || !reflect.DeepEqual(was.materials, j.Materials) || was.site != j.Site ||
		!reflect.DeepEqual(was.design, o.Design) {
		was = derived{o.Design, j.Materials, j.Site, report.Derive(o.Design, j.Materials, j.Site)}
		if s.others == nil {
			s.others = map[string]derived{}
		}
		s.others[option] = was
	}
	return was.report, true
}
