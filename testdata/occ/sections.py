"""The measures of a top by fine plan sections (shapely) and Gauss in z."""
import math

import numpy as np
from shapely.geometry import Polygon
from shapely.ops import unary_union

from plan import *


def inset(profile, T, u):
    kind, r = profile.get("kind", "square"), profile.get("size_mm", 0)
    if kind == "half round" and not r:
        r = T / 2
    if kind == "full round":
        r = T / 2
        return r - math.sqrt(max(0, r * r - (r - u)**2))
    if kind in ("square", "rough") or u >= r:
        return 0.0
    if kind == "bevelled":
        return r - u
    return r - math.sqrt(max(0, r * r - (r - u)**2))


def breaks(profile, T):
    kind, r = profile.get("kind", "square"), profile.get("size_mm", 0)
    if kind in ("square", "rough"):
        return []
    if kind == "full round" or kind == "half round" and not r:
        return [T / 2]
    return [r]


def whole(p):
    """A region without the slivers between bands that should touch."""
    return unary_union([Polygon(g.exterior, [r for r in g.interiors if Polygon(r).area > 1e-3])
                        for g in getattr(p, "geoms", [p]) if g.area > 1e-3])


class Sections:
    def __init__(self, d):
        self.T = d["thickness_mm"]
        self.edges = chain(d["outline"]["nodes"])
        self.curves = [c for part, _, _ in self.edges for c in part]
        self.plan = fill(self.curves)
        self.sinks = {s["id"]: s for s in d.get("sinks", [])}
        self.openings = []  # curves, grown by, profile
        for s in d.get("sinks", []):
            m = mover(s["at_mm"], s.get("rotation_deg", 0))
            if s["mount"] == "vessel":
                if s.get("drain_mm"):
                    self.openings.append(([Arc(s["at_mm"], s["drain_mm"] / 2, 0, 2 * math.pi)], 0, {}))
                continue
            cs = [c.moved(m) for c in shape_curves(s["shape"])]
            rv = s.get("reveal", {}) if s["mount"] == "under" else {}
            g = {"rim shows": 1, "concrete overhangs": -1}.get(rv.get("kind"), 0) * rv.get("size_mm", 0)
            self.openings.append((cs, g, s.get("profile", {}) if s["mount"] == "under" else {}))
        for c, r in self.round_holes(d):
            self.openings.append(([Arc(c, r, 0, 2 * math.pi)], 0, {}))
        self.base = [self.opening(o, 0) for o in self.openings]
        self.channels = []
        for ch in d.get("channels", []):
            plan = unary_union([river_plan(r, self.plan) for r in ch.get("rivers", [])]
                               + [region_plan(r) for r in ch.get("regions", [])])
            self.channels.append((ch["depth_mm"], ch.get("fill", {}).get("resin", False), plan))
        self.beds = [region_plan(b["region"]) for b in d.get("glass_beds", [])]

    def round_holes(self, d):
        out = [(np.array(h["at_mm"], float), h["diameter_mm"] / 2) for h in d.get("holes", [])]
        for t in d.get("taps", []):
            holes = {"single": [(0, 0)], "three at 4 in": [(-50.8, 0), (0, 0), (50.8, 0)],
                     "three at 8 in": [(-101.6, 0), (0, 0), (101.6, 0)]}.get(t["pattern"], t.get("holes_mm"))
            if t.get("sink"):
                s = self.sinks[t["sink"]]
                turn = s.get("rotation_deg", 0)
                m = mover(s["at_mm"], turn)
                a = np.array(s["at_mm"], float)
                up = m((0, 1)) - a
                from shapely.geometry import LineString
                hit = LineString([a, a + 1e5 * up]).intersection(self.plan.boundary)
                pts = [np.array(g.coords[0]) for g in getattr(hit, "geoms", [hit])]
                y = max(float((p - a) @ up) for p in pts)
                m2 = mover(m((t.get("offset_mm", 0), y - t["set_back_mm"])), turn)
            else:
                m2 = mover(t["at_mm"], t.get("rotation_deg", 0))
            out += [(m2(h), t["diameter_mm"] / 2) for h in holes]
        return out

    def opening(self, o, grow):
        """The opening at its reveal, then grown."""
        cs, g, _ = o
        p = fill(cs)
        if g > 0:
            # growing twice is growing by the sum
            return p.union(about(cs, g + grow))
        if g < 0:
            p = p.difference(about(cs, -g))
            return p.buffer(grow, resolution=900) if grow > 0 and not p.is_empty else p
        return p.union(about(cs, grow)) if grow > 0 else p

    def face(self, u):
        """Steps 1 to 3."""
        gone = [near([(c, inset(profile, self.T, u)) for part, profile, _ in self.edges for c in part], self.plan)]
        for o, base in zip(self.openings, self.base):
            d = inset(o[2], self.T, u)
            gone.append(self.opening(o, d) if d > 0 else base)
        return self.plan.difference(unary_union(gone)) if gone else self.plan

    def measure(self, panels=3, order=10):
        T = self.T
        b = {0.0, T}
        full = False
        for p in [e[1] for e in self.edges] + [o[2] for o in self.openings]:
            b.update(x for x in breaks(p, T) if 0 < x < T)
            full |= p.get("kind") == "full round"
        b.update(c[0] for c in self.channels if 0 < c[0] < T)
        b = sorted(b)
        x, w = np.polynomial.legendre.leggauss(order)
        vol, mom, resin, empty = 0.0, np.zeros(3), 0.0, 0.0
        for i, (lo, hi) in enumerate(zip(b, b[1:])):
            # as u starts like a square root: u = lo + (hi-lo) s*s; mirrored for a full round
            last = full and i == len(b) - 2 and i > 0
            constant = all(all(hi <= q * (1 + 1e-12) or True for q in [0]) for _ in [0]) and not full and all(
                x0 <= lo for p in [e[1] for e in self.edges] + [o[2] for o in self.openings] for x0 in breaks(p, T))
            nodes = [(0.5, 1.0)] if constant else [
                ((k + (1 + xx) / 2) / panels, ww / 2 / panels) for k in range(panels) for xx, ww in zip(x, w)]
            for s, ws in nodes:
                if constant:
                    u, wt = (lo + hi) / 2, hi - lo
                elif last:
                    u, wt = hi - (hi - lo) * s * s, 2 * (hi - lo) * s * ws
                else:
                    u, wt = lo + (hi - lo) * s * s, 2 * (hi - lo) * s * ws
                a = self.face(u)
                taken = Polygon()
                for depth, isres, plan in self.channels:
                    if u >= depth:
                        continue
                    own = plan.difference(taken).intersection(a).area
                    taken = taken.union(plan)
                    if isres:
                        resin += wt * own
                    else:
                        empty += wt * own
                a = a.difference(taken)
                vol += wt * a.area
                if a.area:
                    c = a.centroid
                    mom += wt * a.area * np.array([c.x, c.y, T - u])
        openings = whole(unary_union(self.base))
        net = self.plan.difference(openings)
        edge = sum(sum(c.length() for c in part) for part, _, _ in self.edges)
        cutout = openings.boundary.intersection(self.plan).length if self.base else 0.0
        cov = unary_union([c[2] for c in self.channels])
        out = {"plan_area_mm2": self.plan.area, "net_area_mm2": net.area,
               "outline_perimeter_mm": edge, "cutout_perimeter_mm": cutout,
               "concrete_volume_mm3": vol, "resin_volume_mm3": resin,
               "empty_channel_volume_mm3": empty,
               "glass_area_mm2": unary_union(self.beds).intersection(net).difference(cov).area if self.beds else 0.0}
        if vol:
            out["centre_of_gravity_mm"] = list(mom / vol)
        return out
