package report

import (
	"encoding/json"
	"io"

	"example.org/castwright/model/amount"
	"example.org/castwright/model/design"
	"example.org/castwright/model/report"
	"example.org/castwright/model/takeoff"
	"example.org/castwright/model/units"
	"example.org/castwright/model/warn"
)

// document is the JSON report. Every key that holds a quantity names its unit;
// the order of keys is the order of fields. Numbers that could not be reckoned
// are null.
type document struct {
	Option    string    `json:"option"`
	Title     string    `json:"title"`
	Client    string    `json:"client"`
	Thickness length    `json:"thickness_mm"`
	Size      [2]number `json:"size_mm"` // of the box around the plan, x and y

	PlanArea         number `json:"plan_area_mm2"`
	NetArea          number `json:"net_area_mm2"`
	OutlinePerimeter number `json:"outline_perimeter_mm"`
	SeenEdges        number `json:"seen_edge_mm"`
	WallEdges        number `json:"wall_edge_mm"`
	CutoutPerimeter  number `json:"cutout_perimeter_mm"`

	ConcreteVolume number    `json:"concrete_volume_mm3"`
	ResinVolume    number    `json:"resin_volume_mm3"` // space of the resin-filled channels
	ResinArea      number    `json:"resin_area_mm2"`
	EmptyVolume    number    `json:"empty_channel_volume_mm3"`
	GrindVolume    number    `json:"grind_volume_mm3"`
	GlassArea      number    `json:"glass_area_mm2"`
	GlassMass      number    `json:"glass_mass_kg"` // in beds, without waste
	Weight         number    `json:"weight_kg"`     // finished and dry
	Centre         [3]number `json:"centre_of_gravity_mm"`
	Bags           number    `json:"bags"`

	Figures  []jsonFigure  `json:"figures"`
	Dams     []jsonDam     `json:"dams"`
	Costs    jsonCosts     `json:"costs"`
	Faults   []jsonFault   `json:"faults"`
	Warnings []jsonWarning `json:"warnings"`
}

type jsonFigure struct {
	Key    string `json:"key"`
	Label  string `json:"label"`
	Value  number `json:"value"`
	Unit   string `json:"unit"`
	Low    number `json:"low"`
	High   number `json:"high"`
	How    string `json:"how"`
	Source string `json:"source"`
}

type jsonDam struct {
	Channel string    `json:"channel"`
	At      [2]number `json:"at_mm"`
	Length  number    `json:"length_mm"`
	Height  number    `json:"height_mm"`
}

// jsonCosts holds money as decimal strings.
type jsonCosts struct {
	Currency string     `json:"currency"`
	Lines    []jsonCost `json:"lines"`
	Total    string     `json:"total"`
}

type jsonCost struct {
	Label  string `json:"label"`
	Amount number `json:"amount"`
	Unit   string `json:"unit"`
	Price  string `json:"price"`
	Total  string `json:"total"`
}

type jsonFault struct {
	Rule   string    `json:"rule"`
	Part   string    `json:"part"`
	Field  string    `json:"field"`
	At     [2]length `json:"at_mm"`
	Detail string    `json:"detail"`
}

type jsonWarning struct {
	Code     string    `json:"code"`
	Severity string    `json:"severity"`
	Title    string    `json:"title"`
	Part     string    `json:"part"`
	At       [2]number `json:"at_mm"`
	Value    number    `json:"value"`
	Limit    number    `json:"limit"`
	Unit     string    `json:"unit"`
	Source   string    `json:"source"`
	Advice   string    `json:"advice"`
}

// JSON writes the report of an option of the job as one JSON object (RFC 8259) in
// UTF-8, keys always in the same order.
func JSON(w io.Writer, j design.Job, o design.Option, r report.Report) error {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(newDocument(j, o, r))
}

func newDocument(j design.Job, o design.Option, r report.Report) document {
	ms, t := r.Measures, r.Takeoff
	return document{
		Option:    o.Name,
		Title:     o.Title,
		Client:    j.Client,
		Thickness: length(units.DecimalMM(o.Design.Thickness)),
		Size: [2]number{number(ms.Bounds.W()),
			number(ms.Bounds.H())},

		PlanArea:         number(ms.PlanArea),
		NetArea:          number(ms.NetArea),
		OutlinePerimeter: number(ms.OutlinePerimeter),
		SeenEdges:        number(ms.SeenLength),
		WallEdges:        number(ms.WallLength),
		CutoutPerimeter:  number(ms.CutoutPerimeter),

		ConcreteVolume: number(ms.ConcreteVolume),
		ResinVolume:    number(ms.ResinVolume),
		ResinArea:      number(ms.ResinArea),
		EmptyVolume:    number(ms.EmptyVolume),
		GrindVolume:    number(ms.GrindVolume),
		GlassArea:      number(t.GlassArea.Value),
		GlassMass:      number(t.GlassMass0.Value),
		Weight:         number(t.WeightDry.Value),
		Centre:         [3]number{number(t.CentreX.Value), number(t.CentreY.Value), number(t.CentreZ.Value)},
		Bags:           number(t.Bags.Value),

		Figures:  jsonFigures(t),
		Dams:     jsonDams(t),
		Costs:    jsonMoney(j, t),
		Faults:   jsonFaults(r.Faults),
		Warnings: jsonWarnings(r.Warnings),
	}
}

func jsonFigures(t takeoff.Takeoff) []jsonFigure {
	out := []jsonFigure{}
	for _, f := range t.Figures() {
		out = append(out, jsonFigure{f.Key, f.Label, number(f.Value), f.Unit, number(f.Low),
			number(f.High), f.How, f.Source})
	}
	return out
}

func jsonDams(t takeoff.Takeoff) []jsonDam {
	out := []jsonDam{}
	for _, d := range t.Dams {
		out = append(out, jsonDam{string(d.Channel), [2]number{number(d.End.At.X), number(d.End.At.Y)},
			number(d.Length), number(d.Height)})
	}
	return out
}

func jsonMoney(j design.Job, t takeoff.Takeoff) jsonCosts {
	out := jsonCosts{Currency: j.Materials.Currency, Lines: []jsonCost{}, Total: t.Total.StringFixed(2)}
	for _, c := range t.Costs {
		out.Lines = append(out.Lines, jsonCost{c.Label, number(c.Amount), c.Unit, amount.Money("", c.Price),
			c.Total.StringFixed(2)})
	}
	return out
}

func jsonFaults(faults []design.Fault) []jsonFault {
	out := []jsonFault{}
	for _, f := range faults {
		at := [2]length{length(units.DecimalMM(f.At.X)), length(units.DecimalMM(f.At.Y))}
		out = append(out, jsonFault{string(f.Rule), string(f.Part), f.Field, at, f.Detail})
	}
	return out
}

func jsonWarnings(warnings []warn.Warning) []jsonWarning {
	out := []jsonWarning{}
	for _, w := range warnings {
		out = append(out, jsonWarning{string(w.Code), w.Severity.String(), w.Title, string(w.Part),
			[2]number{number(w.At.X), number(w.At.Y)}, number(w.Value), number(w.Limit), w.Unit,
			w.Source, w.Advice})
	}
	return out
}
