package store

import "example.org/castwright/model/design"

func job(v visitor, j *design.Job) {
	v.text(may("client"), &j.Client)
	word(v, need("units"), systemWords, &j.Units)
	v.object(may("site"), func(v visitor) { site(v, &j.Site) })
	v.object(may("materials"), func(v visitor) { materials(v, &j.Materials) })
	list(v, need("options").atMost(design.MaxOptions), &j.Options, option)
	v.object(may("terms"), func(v visitor) { terms(v, &j.Terms) })
	list(v, may("approvals").atMost(design.MaxApprovals), &j.Approvals, approval)
	v.object(may("room"), func(v visitor) { room(v, &j.Room) })
}

func terms(v visitor, t *design.Terms) {
	v.text(may("included"), &t.Included)
	v.text(may("not_included"), &t.NotIncluded)
	v.text(may("care"), &t.Care)
}

func site(v visitor, s *design.Site) {
	v.text(may("notes"), &s.Notes)
	v.length(may("door_width_mm"), &s.DoorWidth)
	v.length(may("door_height_mm"), &s.DoorHeight)
	v.length(may("stair_width_mm"), &s.StairWidth)
	v.length(may("stair_turn_mm"), &s.StairTurn)
	v.count(may("helpers"), &s.Helpers)
}

func materials(v visitor, m *design.Materials) {
	v.text(may("currency"), &m.Currency)
	v.object(may("mix"), func(v visitor) {
		v.text(may("name"), &m.Mix.Name)
		v.number(may("bag_mass_kg"), &m.Mix.BagMass)
		v.number(may("bag_yield_l"), &m.Mix.BagYield)
		v.number(may("bag_water_l"), &m.Mix.BagWater)
		v.number(may("fresh_density_kg_per_m3"), &m.Mix.FreshDensity)
		v.number(may("cured_density_kg_per_m3"), &m.Mix.CuredDensity)
		v.percent(may("waste_percent"), &m.Mix.Waste)
		v.price(may("price_per_bag"), &m.Mix.BagPrice)
		v.flag(may("rapid"), &m.Mix.Rapid)
		v.number(may("strip_hours"), &m.Mix.StripHours)
		v.number(may("working_minutes"), &m.Mix.WorkingMinutes)
	})
	v.object(may("resin"), func(v visitor) {
		v.text(may("name"), &m.Resin.Name)
		v.number(may("parts_a_by_volume"), &m.Resin.PartsA)
		v.number(may("parts_b_by_volume"), &m.Resin.PartsB)
		v.number(may("density_kg_per_m3"), &m.Resin.Density)
		v.number(may("max_pour_mm"), &m.Resin.MaxPour)
		v.percent(may("waste_percent"), &m.Resin.Waste)
		v.price(may("price_per_l"), &m.Resin.LitrePrice)
	})
	v.object(may("glass"), func(v visitor) {
		v.text(may("name"), &m.Glass.Name)
		v.number(may("density_kg_per_m3"), &m.Glass.Density)
		v.percent(may("waste_percent"), &m.Glass.Waste)
		v.price(may("price_per_kg"), &m.Glass.KgPrice)
	})
}

// option gives its own unknown members to its design to keep, under a place
// that starts with "..": they go along when the option is renamed or moved.
func option(v visitor, o *design.Option) {
	v.owner(&o.Design.Extra, "..")
	v.text(need("name"), &o.Name)
	v.text(may("title"), &o.Title)
	price(v, &o.Price)
	list(v, may("handling").atMost(design.MaxHandling), &o.Handling, handling)
	v.object(need("design"), func(v visitor) {
		v.owner(&o.Design.Extra, "")
		top(v, &o.Design)
	})
}

func handling(v visitor, h *design.Handling) {
	id(v, need("part"), &h.Part)
	v.flag(may("locked"), &h.Locked)
	v.flag(may("hidden"), &h.Hidden)
}

func price(v visitor, p *design.Price) {
	v.price(may("price"), &p.Amount)
	v.text(may("price_note"), &p.Note)
}

// approval keeps its own unknown members as an option does.
func approval(v visitor, a *design.Approval) {
	v.owner(&a.Design.Extra, "..")
	v.count(need("revision"), &a.Revision)
	v.text(need("option"), &a.Option)
	v.text(may("title"), &a.Title)
	v.text(need("date"), &a.Date)
	v.text(may("by"), &a.By)
	v.text(may("client"), &a.Client)
	price(v, &a.Price)
	v.object(may("terms"), func(v visitor) { terms(v, &a.Terms) })
	v.text(need("fingerprint"), &a.Fingerprint)
	v.text(may("withdrawn"), &a.Withdrawn)
	word(v, need("units"), systemWords, &a.Units)
	v.object(may("materials"), func(v visitor) { materials(v, &a.Materials) })
	v.object(need("design"), func(v visitor) {
		v.owner(&a.Design.Extra, "")
		top(v, &a.Design)
	})
}
