package store

import "example.org/castwright/model/design"

func channel(v visitor, c *design.Channel) {
	v.length(need("depth_mm"), &c.Depth)
	list(v, may("rivers"), &c.Rivers, river)
	list(v, may("regions"), &c.Regions, region)
	v.object(may("fill"), func(v visitor) { fill(v, &c.Fill) })
}

func river(v visitor, r *design.River) {
	list(v, need("nodes"), &r.Nodes, func(v visitor, n *design.RiverNode) {
		v.point(need("at_mm"), &n.At)
		v.length(need("width_mm"), &n.Width)
	})
	word(v, may("start"), endWords, &r.Start)
	word(v, may("end"), endWords, &r.End)
}

func fill(v visitor, f *design.Fill) {
	v.flag(may("resin"), &f.Resin)
	v.colour(when(f.Resin, "colour"), &f.Colour)
	v.share(may("opacity_percent"), &f.Opacity)
	v.length(may("top_coat_mm"), &f.TopCoat)
	v.pointed(may("glass"), f.Glass != nil, func(v visitor) {
		if f.Glass == nil {
			f.Glass = &design.GlassFill{}
		}
		v.length(need("grain_mm"), &f.Glass.Grain)
		v.share(need("share_percent"), &f.Glass.Share)
		v.colour(need("colour"), &f.Glass.Colour)
	})
}

func glassBed(v visitor, g *design.GlassBed) {
	v.object(need("region"), func(v visitor) { region(v, &g.Region) })
	v.length(need("grain_mm"), &g.Grain)
	v.share(need("coverage_percent"), &g.Coverage)
	v.length(need("depth_mm"), &g.Depth)
	v.colour(need("colour"), &g.Colour)
}
