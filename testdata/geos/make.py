#!/usr/bin/env python3
"""Makes random tops as job files and their areas by GEOS, for the tests of model/slab.

Run with Debian's python3-shapely, python3-numpy and python3-scipy in this folder:
    ./make.py
It writes cases-*.json, jobs that the program opens, and areas.json. The seed is
fixed; the areas agree between runs to about 1e-9.
"""
import json
import math
import random
import sys

import sections

CASES = 50  # of each kind
KINDS = ("straight", "curved", "openings", "channels")
PROFILES = ("square", "eased", "rounded", "bevelled", "half round", "full round", "rough")


def r6(x):
    return round(x, 6)


def profile(rnd, t, most):
    kind = rnd.choice(PROFILES)
    p = {"kind": kind}
    if kind in ("eased", "rounded", "bevelled"):
        p["size_mm"] = r6(rnd.uniform(1, most))
    if kind == "half round":
        p["size_mm"] = rnd.choice([0, r6(rnd.uniform(3, most))])
    if kind == "rough":
        p["size_mm"] = 12
    return p


def star(rnd, n, a, b, low=0.7):
    out = []
    for i in range(n):
        w = 2 * math.pi * (i + 0.6 * rnd.random()) / n
        s = rnd.uniform(low, 1)
        out.append([r6(a * s * math.cos(w)), r6(b * s * math.sin(w))])
    return out


def outline(rnd, kind, t):
    n = rnd.randint(3, 9) if kind != "straight" else rnd.randint(3, 24)
    pts = star(rnd, n, rnd.uniform(300, 800), rnd.uniform(250, 400), 0.5 if kind == "straight" else 0.75)
    shared = profile(rnd, t, 15)
    nodes = []
    for i, p in enumerate(pts):
        q = pts[(i + 1) % n]
        c = math.dist(p, q)
        e = {"profile": shared if rnd.random() < 0.5 else profile(rnd, t, 15)}
        if kind == "curved" or kind != "straight" and rnd.random() < 0.4:
            what = rnd.choice(["straight", "arc", "spline"])
            if what == "arc":
                e.update(curve="arc", rise_mm=r6(rnd.uniform(-0.12, 0.25) * c))
            elif what == "spline":
                d, nrm = [(q[0] - p[0]) / c, (q[1] - p[1]) / c], None
                nrm = [d[1], -d[0]]
                f, g = rnd.uniform(-0.1, 0.2) * c, rnd.uniform(-0.1, 0.2) * c
                e.update(curve="spline",
                         c1_mm=[r6(p[0] + d[0] * c * 0.35 + nrm[0] * f), r6(p[1] + d[1] * c * 0.35 + nrm[1] * f)],
                         c2_mm=[r6(p[0] + d[0] * c * 0.65 + nrm[0] * g), r6(p[1] + d[1] * c * 0.65 + nrm[1] * g)])
        node = {"at_mm": p, "edge": e}
        if rnd.random() < (0.5 if kind == "curved" else 0.3):
            node["corner"] = {"kind": rnd.choice(["rounded", "chamfered"]), "size_mm": r6(rnd.uniform(4, 40))}
        nodes.append(node)
    return nodes


def shape(rnd):
    kind = rnd.choice(["rectangle", "ellipse", "circle", "D", "path"])
    w, h = r6(rnd.uniform(120, 420)), r6(rnd.uniform(100, 300))
    s = {"kind": kind}
    if kind == "path":
        s["path"] = [{"at_mm": p} for p in star(rnd, rnd.randint(4, 8), w / 2, h / 2, 0.6)]
        for node in s["path"]:
            if rnd.random() < 0.3:
                node["corner"] = {"kind": "rounded", "size_mm": r6(rnd.uniform(3, 12))}
        return s
    s["width_mm"] = w
    if kind != "circle":
        s["depth_mm"] = h
    if kind in ("rectangle", "D"):
        s["corner_radius_mm"] = rnd.choice([0, r6(rnd.uniform(12, 40))])
    if kind == "D":
        s["bow_mm"] = r6(rnd.uniform(0.1, 0.3) * min(w, h))
    return s


def sink(rnd, i):
    s = {"id": f"sink-{i}", "at_mm": [r6(rnd.uniform(-400, 400)), r6(rnd.uniform(-180, 180))],
         "rotation_deg": r6(rnd.uniform(-180, 180)), "shape": shape(rnd), "mount": rnd.choice(["under", "under", "over", "vessel"])}
    if s["mount"] == "vessel":
        s["drain_mm"] = 45
    if s["mount"] == "under":
        kind = rnd.choice(["flush", "rim shows", "concrete overhangs"])
        s["reveal"] = {"kind": kind}
        if kind != "flush":
            s["reveal"]["size_mm"] = r6(rnd.uniform(1, 9))
        s["profile"] = rnd.choice([{"kind": "square"}, {"kind": "eased", "size_mm": 2}, {"kind": "rounded", "size_mm": 9}, {"kind": "bevelled", "size_mm": 6}])
        if kind == "concrete overhangs" and s["shape"]["kind"] == "path":
            s["profile"] = {"kind": "square"}  # buffers of hollow shapes are not exact enough
    return s


def river(rnd, top):
    n = rnd.randint(2, 6)
    xs = sorted(rnd.uniform(-500, 500) for _ in range(n))
    v = {"nodes": [{"at_mm": [r6(x + 60 * k), r6(rnd.uniform(-200, 200))], "width_mm": r6(rnd.uniform(8, 70))} for k, x in enumerate(xs)],
         "start": rnd.choice(["round", "flat", "open"]), "end": rnd.choice(["round", "flat", "open"])}
    return v


def region(rnd, x, y, a, b):
    g = {"outer": [{"at_mm": [r6(p[0] + x), r6(p[1] + y)]} for p in star(rnd, rnd.randint(3, 9), a, b, 0.6)]}
    if rnd.random() < 0.5:
        g["islands"] = [[{"at_mm": [r6(p[0] + x), r6(p[1] + y)]} for p in star(rnd, rnd.randint(3, 6), a * 0.3, b * 0.3)]]
    return g


def colour():
    return "#808080"


def design(rnd, kind):
    t = r6(rnd.choice([25, 38.1, 50.8]))
    d = {"thickness_mm": t, "outline": {"nodes": outline(rnd, kind, t)},
         "finish": {"colour": colour(), "exposure": "cream", "polish": 1, "grind_mm": 0}}
    if kind == "openings" or kind == "channels" and rnd.random() < 0.4:
        d["sinks"] = [sink(rnd, i) for i in range(rnd.randint(1, 3))]
        d["holes"] = [{"id": f"hole-{i}", "kind": "other", "at_mm": [r6(rnd.uniform(-500, 500)), r6(rnd.uniform(-250, 250))], "diameter_mm": r6(rnd.uniform(20, 90))} for i in range(rnd.randint(0, 4))]
    if kind == "channels":
        d["channels"] = []
        for i in range(rnd.randint(1, 3)):
            c = {"id": f"channel-{i}", "depth_mm": r6(rnd.uniform(4, t * 0.6)), "rivers": [river(rnd, d) for _ in range(rnd.randint(0, 2))],
                 "regions": [region(rnd, rnd.uniform(-300, 300), rnd.uniform(-150, 150), rnd.uniform(60, 300), rnd.uniform(40, 150)) for _ in range(rnd.randint(0, 1))],
                 "fill": {"resin": rnd.random() < 0.6, "colour": colour()}}
            if not c["fill"]["resin"]:
                c["fill"] = {"resin": False}
            if c["rivers"] or c["regions"]:
                d["channels"].append(c)
        d["glass_beds"] = [{"id": "bed", "region": region(rnd, rnd.uniform(-300, 300), rnd.uniform(-100, 100), 200, 120), "grain_mm": 6, "coverage_percent": 50, "depth_mm": 6, "colour": colour()}]
    return d


def reckon(d, rnd):
    top = sections.Top(d)
    plan = top.plan
    # Openings as drawn, without their arris.
    net = sections.flat(plan.difference(sections.unary_union([o[3] for o in top.openings])))
    out = {"plan_area_mm2": plan.area, "net_area_mm2": net.area, "channel_area_mm2": [], "channel_length_mm": top.lengths,
           "outline_perimeter_mm": sum(e.length() for e, _ in top.sides)}
    left = net
    for _, c, _ in top.channels:
        out["channel_area_mm2"].append(left.intersection(c).area)
        left = sections.flat(left.difference(c))
    out["bed_area_mm2"] = []
    for b in top.beds:
        out["bed_area_mm2"].append(left.intersection(b).area)
    out["sections"] = []
    for z in (top.t, r6(top.t - rnd.uniform(0.2, 6)), r6(rnd.uniform(0, top.t))):
        s, held = top.section(z)
        c = s.centroid
        out["sections"].append({"z_mm": z, "area_mm2": s.area, "centroid_mm": [c.x, c.y], "held_mm2": [h.area for h in held]})
    return out


def main():
    rnd = random.Random(7)
    expected = {}
    for kind in KINDS:
        options = []
        while len(options) < CASES:
            d = design(rnd, kind)
            try:
                name = f"{kind} {len(options) + 1}"
                expected[name] = reckon(d, rnd)
            except ValueError as e:
                print("left out:", e, file=sys.stderr)
                continue
            options.append({"name": name, "design": d})
            print(name, file=sys.stderr)
        with open(f"cases-{kind}.json", "w") as f:
            json.dump({"format": "castwright-job", "version": 1, "units": "metric", "options": options}, f)
            f.write("\n")
    with open("areas.json", "w") as f:
        json.dump(expected, f, indent=1)
        f.write("\n")


if __name__ == "__main__":
    main()
