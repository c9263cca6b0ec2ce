package compare

// State is what a test of the real window reads of the page.
type State struct {
	A       string  `json:"a"`
	B       string  `json:"b"`
	Picture bool    `json:"picture"`
	Over    bool    `json:"over"`
	Wipe    float64 `json:"wipe"`    // share of the first of two that lie over each other
	Scale   string  `json:"scale"`   // in words
	Work    string  `json:"work"`    // at what, "" for nothing
	Grade   int     `json:"grade"`   // how clear the lesser of two pictures is, from 0; -1 for none
	PerMM   float64 `json:"per_mm"`  // points to the millimetre, of the first
	Changes int     `json:"changes"` // that are listed
	Picked  int     `json:"picked"`  // the one that stands out, -1 for none
}

// State is the state of the page.
func (p *Page) State() State {
	s := State{A: p.a, B: p.b, Picture: p.picture, Over: p.over, Wipe: p.wiper.share, Scale: p.words.Text(), Work: p.doing.Text(),
		Grade: len(grades), PerMM: p.lock().views[0].Scale, Changes: len(p.changes), Picked: p.picked}
	for i := range p.of {
		of, _ := p.subject(i)
		l, exact := p.kept.best(of, p.lock().views[i].Pixels(p.px))
		if !exact {
			s.Grade = -1
			break
		}
		s.Grade = min(s.Grade, l.grade)
	}
	return s
}
