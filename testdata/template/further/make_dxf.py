#!/usr/bin/env python3
"""Makes random DXF drawings with an independent library (ezdxf 0.18) and reads
them back with it: curves at some thousand points, regions and holes by
shapely 1.8. Run: /usr/bin/python3 make_dxf.py FOLDER COUNT SEED
Writes FOLDER/*.dxf and FOLDER/dxf.json with the loops of each, in mm."""
import json
import math
import random
import sys

import ezdxf
from ezdxf import disassemble
from ezdxf.math import Vec3
from shapely.geometry import LineString, Polygon
from shapely.ops import polygonize, unary_union

folder, count, seed = sys.argv[1], int(sys.argv[2]), int(sys.argv[3])
rng = random.Random(seed)
VERSIONS = ("R12", "R2000", "R2004", "R2007", "R2010", "R2013", "R2018")
UNITS = {1: 25.4, 2: 304.8, 4: 1.0, 5: 10.0, 6: 1000.0, 14: 100.0}


def u(a, b):
    return rng.uniform(a, b)


class Maker:
    """Draws one closed figure into a layout, about its own middle."""

    def __init__(self, to, r12, layer):
        self.to, self.r12, self.at = to, r12, {"layer": layer}

    def lines_and_arcs(self, s):
        w, h = s * u(0.6, 1), s * u(0.4, 0.9)
        r = min(w, h) * u(0.1, 0.4)
        x, y = -w / 2, -h / 2
        parts = [
            lambda: line((x + r, y), (x + w - r, y)),
            lambda: self.to.add_arc((x + w - r, y + r), r, 270, 360, dxfattribs=self.at),
            lambda: line((x + w, y + h - r), (x + w, y + r)),
            lambda: self.to.add_arc((x + w - r, y + h - r), r, 0, 90, dxfattribs=self.at),
            lambda: line((x + w - r, y + h), (x, y + h)),
            lambda: line((x, y + h), (x, y + r)),
            lambda: self.to.add_arc((x + r, y + r), r, 180, 270, dxfattribs=self.at),
        ]

        def line(a, b):
            if rng.random() < 0.5:
                a, b = b, a
            self.to.add_line(a, b, dxfattribs=self.at)

        rng.shuffle(parts)
        for p in parts:
            p()

    def ring(self, s, n):
        """Points round the middle, so that bulges can't cross."""
        turn = u(0, math.tau)
        return [(s / 2 * u(0.6, 1) * math.cos(turn + i * math.tau / n),
                 s / 2 * u(0.6, 1) * math.sin(turn + i * math.tau / n)) for i in range(n)]

    def extrusion(self):
        return {**self.at, "extrusion": (0, 0, -1)} if rng.random() < 0.4 else dict(self.at)

    def light(self, s):
        pts = [(*p, u(-0.15, 0.3) if rng.random() < 0.7 else 0) for p in self.ring(s, rng.randint(3, 8))]
        at = self.extrusion()
        if rng.random() < 0.3:
            at["elevation"] = (0, 0, 12.5) if self.r12 else 12.5
        if self.r12:
            self.to.add_polyline2d(pts, format="xyb", close=True, dxfattribs=at)
        elif rng.random() < 0.3:
            pts.append((*pts[0][:2], 0))
            self.to.add_lwpolyline(pts, format="xyb", dxfattribs=at)
        else:
            self.to.add_lwpolyline(pts, format="xyb", close=True, dxfattribs=at)

    def old(self, s):
        pts = [(*p, u(-0.15, 0.3)) for p in self.ring(s, rng.randint(3, 8))]
        self.to.add_polyline2d(pts, format="xyb", close=True, dxfattribs=self.extrusion())

    def spatial(self, s):
        self.to.add_polyline3d([(*p, u(0, 5)) for p in self.ring(s, 6)], close=True, dxfattribs=self.at)

    def circle(self, s):
        self.to.add_circle((s * u(-0.1, 0.1), s * u(-0.1, 0.1)), s * u(0.2, 0.4), dxfattribs=self.extrusion())

    def slice(self, s):
        r, a, b = s * u(0.3, 0.5), u(0, 360), u(0, 360)
        at = self.extrusion()
        arc = self.to.add_arc((0, 0), r, a, b, dxfattribs=at)
        self.to.add_line(arc.start_point, arc.end_point, dxfattribs=self.at)

    def ellipse(self, s):
        major = Vec3.from_deg_angle(u(0, 360), s * u(0.3, 0.5))
        at = self.extrusion()
        if rng.random() < 0.5:
            self.to.add_ellipse((0, 0), major, ratio=u(0.3, 1), dxfattribs=at)
            return
        a = u(0, math.tau)
        e = self.to.add_ellipse((0, 0), major, ratio=u(0.3, 1), start_param=a, end_param=a + u(1, 5), dxfattribs=at)
        self.to.add_line(e.start_point, e.end_point, dxfattribs=self.at)

    def spline_closed(self, s):
        e = self.to.add_spline(dxfattribs=self.at)
        pts = [Vec3(p) for p in self.ring(s, rng.randint(5, 12))]
        if rng.random() < 0.5:
            e.set_closed(pts, degree=rng.choice((2, 3, 3, 4)))
        else:
            e.set_closed_rational(pts, [u(0.5, 2) for _ in pts], degree=rng.choice((2, 3)))

    def spline_open(self, s):
        pts = self.ring(s, rng.randint(5, 9))
        if rng.random() < 0.5:
            self.to.add_open_spline([(*p, 0) for p in pts], degree=rng.choice((2, 3)), dxfattribs=self.at)
        else:
            self.to.add_rational_spline([(*p, 0) for p in pts], [u(0.6, 2) for _ in pts], degree=3, dxfattribs=self.at)
        self.to.add_line(pts[0], pts[-1], dxfattribs=self.at)

    def spline_fit(self, s):
        pts = [(*p, 0) for p in self.ring(s, rng.randint(5, 9))]
        if rng.random() < 0.5:
            self.to.add_spline(fit_points=pts, dxfattribs=self.at)
            self.to.add_line(pts[0], pts[-1], dxfattribs=self.at)
        else:
            self.to.add_spline(fit_points=pts + pts[:1], dxfattribs=self.at)

    def figure(self, s, fit=True):
        kinds = [self.lines_and_arcs, self.light, self.old, self.spatial, self.circle, self.slice]
        if not self.r12:
            kinds += [self.ellipse, self.spline_closed, self.spline_open]
            kinds += [self.spline_fit] if fit else []
        rng.choice(kinds)(s)


def block(doc, r12, depth):
    name = f"B{rng.randrange(10**9)}"
    b = doc.blocks.new(name, base_point=(u(-20, 20), u(-20, 20)))
    if depth and rng.random() < 0.6:
        inner = block(doc, r12, depth - 1)
        b.add_blockref(inner[0], (u(-10, 10), u(-10, 10)), dxfattribs=placing(False, inner[1]))
        return name, True
    # The library fits a spline anew to points that a block has skewed.
    fit = rng.random() < 0.5
    Maker(b, r12, "0").figure(100, fit)
    return name, fit


def placing(array, even):
    """Even scales where a block holds others: the library gets skewed blocks
    in blocks wrong."""
    k = u(0.4, 1)
    at = {"xscale": k * rng.choice((-1, 1)),
          "yscale": (k if even or rng.random() < 0.5 else u(0.4, 1)) * rng.choice((-1, 1)),
          "rotation": u(-180, 180)}
    if rng.random() < 0.3:
        at["extrusion"] = (0, 0, -1)
    if array:
        at.update(column_count=rng.randint(1, 3), row_count=rng.randint(1, 3), column_spacing=300, row_spacing=310)
        at["rotation"] = rng.choice((0, 90, 180, 270))
    return at


def points(e):
    """An entity's own points, close enough for 1e-6 of an area."""
    kind = e.dxftype()
    if kind in ("LWPOLYLINE", "POLYLINE"):
        for v in e.virtual_entities():
            yield from points(v)
    elif kind == "LINE":
        yield [e.dxf.start, e.dxf.end]
    elif kind == "CIRCLE":
        yield list(e.flattening(e.dxf.radius * 1e-7))
    elif kind == "ARC":
        n, a, b = 4000, e.dxf.start_angle, e.dxf.end_angle
        b += 360 * math.ceil((a - b) / 360 + 1e-12) if b <= a else 0
        yield list(e.vertices([a + (b - a) * i / n for i in range(n + 1)]))
    elif kind == "ELLIPSE":
        n = 8000
        a, b = e.dxf.start_param, e.dxf.end_param
        b += math.tau if b <= a else 0
        yield list(e.vertices([a + (b - a) * i / n for i in range(n + 1)]))
    elif kind == "SPLINE":
        curve = e.construction_tool()
        knots, n = curve.knots(), 8000
        lo, hi = knots[curve.degree], knots[curve.count]
        yield list(curve.points([min(lo + (hi - lo) * i / n, hi - 1e-13 * hi) for i in range(n)] + [hi - 1e-13 * hi]))


def polygons(entities, unit):
    """What the library itself reads, as polygons in mm."""
    lines = []
    for e in disassemble.recursive_decompose(entities):
        for pts in points(e):
            if len(pts) > 1:
                lines.append(LineString([(round(p.x * unit, 6), round(p.y * unit, 6)) for p in pts]))
    found = [Polygon(p.exterior) for p in polygonize(unary_union(lines))]
    rings = [p.exterior for p in found]
    if any(a.intersects(b) for i, a in enumerate(rings) for b in rings[:i]):
        return None  # figures that cross or touch have no one reading
    return found


def add_junk(doc, msp, r12, off, frozen):
    m = Maker(msp, r12, off)
    m.figure(80)
    Maker(msp, r12, frozen).figure(90)
    msp.add_text("600 x 400", dxfattribs={"height": 10})
    msp.add_point((3, 4))
    if not r12:
        Maker(doc.layout("Layout1"), r12, "0").figure(200)


def loops(all_polygons):
    all_polygons.sort(key=lambda p: -p.area)
    out, level = [], []
    for i, p in enumerate(all_polygons):
        parent = next((j for j in range(i - 1, -1, -1) if all_polygons[j].contains(p)), None)
        level.append(0 if parent is None else level[parent] + 1)
        shape = {"area": p.area, "perimeter": p.exterior.length, "centroid": list(p.centroid.coords[0]), "holes": []}
        shape["polygon"] = p
        if level[i] % 2:
            parent_shape = shapes[parent]
            parent_shape["holes"].append(shape)
            parent_shape["polygon"] = Polygon(parent_shape["polygon"].exterior, [
                *(h.coords for h in parent_shape["polygon"].interiors), p.exterior.coords])
            parent_shape["area"] = parent_shape["polygon"].area
            parent_shape["centroid"] = list(parent_shape["polygon"].centroid.coords[0])
        else:
            out.append(shape)
        shapes.append(shape)
    return out


def plain(shape):
    return {"area": shape["area"], "perimeter": shape["perimeter"], "centroid": shape["centroid"],
            "holes": [plain(h) for h in shape["holes"]]}


want = {}
for number in range(count):
    version = VERSIONS[number % len(VERSIONS)]
    r12 = version == "R12"
    doc = ezdxf.new(version)
    code = rng.choice(list(UNITS))
    unit = 1.0 if r12 else UNITS[code]
    if not r12:
        doc.header["$INSUNITS"] = code
    msp = doc.modelspace()
    off, frozen = doc.layers.new("Off"), doc.layers.new("Frozen")
    off.off()
    frozen.freeze()
    size = 300 / unit
    regions = []
    for k in range(rng.randint(1, 4)):
        before = set(id(e) for e in msp)
        x, y = 1500 * (k % 2) / unit, 1500 * (k // 2) / unit
        kind = rng.random()
        if kind < 0.45:
            name, holds = block(doc, r12, 2)
            at = placing(rng.random() < 0.4, holds)
            s = size / 100
            for f in ("xscale", "yscale"):
                at[f] *= s
            for f in ("column_spacing", "row_spacing"):
                if f in at:
                    at[f] *= s
            msp.add_blockref(name, (-x if "extrusion" in at else x, y), dxfattribs=at)
        else:
            name = f"P{number}_{k}"
            b = doc.blocks.new(name)
            Maker(b, r12, "0").figure(100)
            if kind > 0.75:
                b.add_circle((0, 0), 8)
            msp.add_blockref(name, (x, y), dxfattribs={"xscale": size / 100, "yscale": size / 100})
            if rng.random() < 0.7:  # as plain entities
                msp.query("INSERT")[-1].explode()
        new = [e for e in msp if id(e) not in before]
        found = polygons(new, unit)
        if found is None:
            for e in new:
                msp.delete_entity(e)
        else:
            regions += found
    add_junk(doc, msp, r12, "OFF" if rng.random() < 0.3 else "Off", "Frozen")
    file = f"{number:02d}-{version}.dxf"
    doc.saveas(f"{folder}/{file}")
    shapes = []
    want[file] = [plain(s) for s in loops(regions)]

json.dump(want, open(f"{folder}/dxf.json", "w"), indent=0, sort_keys=True)
