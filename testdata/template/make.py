#!/usr/bin/env python3
"""Makes the drawings in this folder with an independent library (ezdxf 0.18),
and expected.json with their areas, worked out here by closed forms or by fine
flattening in that library. Run: /usr/bin/python3 make.py"""
import json
import math
import random

import ezdxf
from ezdxf.math import area

want = {}


def save(doc, name, loops):
    doc.saveas(name)
    want[name] = loops


def flat_area(entity):
    curve = entity.construction_tool()
    knots, n = curve.knots(), len(curve.control_points)
    lo, hi = knots[curve.degree], knots[n]
    pts = [curve.point(min(lo + (hi - lo) * i / 20000, hi - 1e-12)) for i in range(20001)]
    return abs(area(pts))


for version in ("R12", "R2000", "R2004", "R2007", "R2010", "R2013", "R2018"):
    doc = ezdxf.new(version)
    if version != "R12":
        doc.units = ezdxf.units.MM
    msp = doc.modelspace()
    # A rounded rectangle 500 x 350, r = 40, of lines and arcs in any order.
    w, h, r = 500, 350, 40
    parts = [
        lambda: msp.add_line((r, 0), (w - r, 0)),
        lambda: msp.add_arc((w - r, r), r, 270, 360),
        lambda: msp.add_line((w, h - r), (w, r)),
        lambda: msp.add_arc((w - r, h - r), r, 0, 90),
        lambda: msp.add_line((w - r, h), (r, h)),
        lambda: msp.add_arc((r, h - r), r, 90, 180),
        lambda: msp.add_line((0, r), (0, h - r)),
        lambda: msp.add_arc((r, r), r, 180, 270),
    ]
    random.Random(version).shuffle(parts)
    for p in parts:
        p()
    msp.add_circle((250, 175), 22)
    save(doc, f"sink-{version}.dxf", [w * h - (4 - math.pi) * r * r - math.pi * 22 * 22])

doc = ezdxf.new("R2010")
doc.units = ezdxf.units.IN
msp = doc.modelspace()
e = msp.add_ellipse((30, 10), major_axis=(8.5, 0), ratio=7 / 8.5)
save(doc, "oval-inch.dxf", [math.pi * 8.5 * 7 * 645.16])

doc = ezdxf.new("R2010")
doc.units = ezdxf.units.CM
msp = doc.modelspace()
rng = random.Random(5)
pts = [(math.cos(t) * (40 + rng.uniform(-6, 6)), math.sin(t) * (25 + rng.uniform(-4, 4)), 0)
       for t in [i * math.tau / 12 for i in range(12)]]
s = msp.add_spline()
s.set_closed(pts, degree=3)
save(doc, "closed-spline-cm.dxf", [flat_area(s) * 100])

doc = ezdxf.new("R2010")
doc.units = ezdxf.units.MM
msp = doc.modelspace()
s = msp.add_rational_spline([(0, 0, 0), (100, 0, 0), (100, 100, 0), (0, 100, 0), (0, 0, 0)], [1, 0.7, 2, 0.7, 1], degree=3)
save(doc, "rational-spline.dxf", [flat_area(s)])

doc = ezdxf.new("R2010")
doc.units = ezdxf.units.MM
b = doc.blocks.new("BOWL", base_point=(10, 10))
b.add_lwpolyline([(0, 0, 0), (200, 0, 1), (200, 120, 0), (0, 120, 0.5)], format="xyb", close=True)
msp = doc.modelspace()
msp.add_blockref("BOWL", (1000, 500), dxfattribs={"xscale": -1.5, "yscale": 0.5, "rotation": 30})
grid = msp.add_blockref("BOWL", (0, 0), dxfattribs={"column_count": 2, "row_count": 2,
                                                    "column_spacing": 600, "row_spacing": 400})
one = 200 * 120 + math.pi * 60 * 60 / 2
chord, bulge = 120, 0.5
theta = 4 * math.atan(bulge)
R = chord * (1 + bulge ** 2) / (4 * bulge)
one += R * R * (theta - math.sin(theta)) / 2
save(doc, "blocks.dxf", [one * 0.75] + [one] * 4)

json.dump(want, open("expected.json", "w"), indent=1, sort_keys=True)
