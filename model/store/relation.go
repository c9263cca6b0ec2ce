package store

import "example.org/castwright/model/design"

func relation(v visitor, r *design.Relation) {
	word(v, need("kind"), relationWords, &r.Kind)
	id(v, need("part"), &r.Part)
	between, aligned := r.Kind == design.RelationBetween, r.Kind == design.RelationPart
	word(v, when(between || aligned || r.Kind == design.RelationTop, "axis"), axisWords, &r.Axis)
	bank := r.Kind == design.RelationBank
	id(v, when(between || aligned || bank, "other"), &r.Other)
	id(v, when(between, "second"), &r.Second)
	side, edge := r.Kind == design.RelationSide, r.Kind == design.RelationEdge
	word(v, when(side, "side"), topSideWords, &r.Side)
	v.length(when(side || bank, "distance_mm"), &r.Distance)
	v.count(may("river"), &r.River)
	word(v, when(edge, "end"), riverSideWords, &r.End)
	v.count(when(edge, "edge"), &r.Edge)
	v.percent(when(edge, "along_percent"), &r.Along)
	word(v, when(bank, "bank"), bankWords, &r.Bank)
	v.length(when(bank, "width_mm"), &r.Width)
}

func id(v visitor, k key, id *design.ID) {
	s := string(*id)
	v.text(k, &s)
	*id = design.ID(s)
}
