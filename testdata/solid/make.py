#!/usr/bin/env python3
"""Makes varied tops as a job file and their volumes by an independent way.

Sections come from shapely over finely sampled curves (../geos/sections.py); they
are integrated over the height by scipy's adaptive Gauss-Kronrod rule between the
heights at which a profile or a channel starts. Run in this folder with Debian's
python3-shapely, python3-numpy and python3-scipy: ./make.py
It writes tops.json, a job that the program opens, and volumes.json.
"""
import json
import math
import random
import sys

from scipy.integrate import quad

sys.path.insert(0, "../geos")
import make as geos  # noqa: E402
import sections  # noqa: E402

sections.FINE = 2000


def prof(kind, size=None):
    p = {"kind": kind}
    if size is not None:
        p["size_mm"] = size
    return p


def node(x, y, profile=None, corner=None, **edge):
    n = {"at_mm": [x, y]}
    if profile:
        edge["profile"] = profile
    if edge:
        n["edge"] = edge
    if corner:
        n["corner"] = {"kind": corner[0], "size_mm": corner[1]}
    return n


def arc(rise):
    return {"curve": "arc", "rise_mm": rise}


def spline(c1, c2):
    return {"curve": "spline", "c1_mm": list(c1), "c2_mm": list(c2)}


ROUND, HALF, FULL = prof("rounded", 10), prof("half round", 0), prof("full round")
BEVEL, EASED, SQUARE, ROUGH = prof("bevelled", 8), prof("eased", 3), prof("square"), prof("rough", 12)


def box(w, h, *profiles, corner=None):
    at = [(0, 0), (w, 0), (w, h), (0, h)]
    return [node(x, y, profiles[i % len(profiles)], corner) for i, (x, y) in enumerate(at)]


def sink(kind, x, y, w, h, mount="under", turn=0, profile=None, reveal=None, **more):
    s = {"id": f"sink-{x}-{y}", "at_mm": [x, y], "rotation_deg": turn, "mount": mount, "shape": {"kind": kind, "width_mm": w, **more}}
    if h:
        s["shape"]["depth_mm"] = h
    if mount == "vessel":
        s["drain_mm"] = 45
    if profile:
        s["profile"] = profile
    if reveal:
        s["reveal"] = {"kind": reveal[0], "size_mm": reveal[1]}
    return s


def hole(x, y, d):
    return {"id": f"hole-{x}-{y}", "kind": "other", "at_mm": [x, y], "diameter_mm": d}


def river(*xyw, start="round", end="round"):
    return {"nodes": [{"at_mm": list(n[:2]), "width_mm": n[2]} for n in xyw], "start": start, "end": end}


def channel(i, depth, rivers=(), regions=(), resin=True):
    fill = {"resin": True, "colour": "#336699"} if resin else {"resin": False}
    return {"id": f"channel-{i}", "depth_mm": depth, "rivers": list(rivers), "regions": list(regions), "fill": fill}


def region(outer, *islands):
    return {"outer": [{"at_mm": list(p)} for p in outer], "islands": [[{"at_mm": list(p)} for p in i] for i in islands]}


L = [node(0, 0, ROUND, ("rounded", 25), **spline((500, -60), (1000, 60))), node(1600, 0, HALF, ("rounded", 40)),
     node(1600, 560, SQUARE), node(620, 560, ROUND, ("rounded", 30)), node(620, 1100, EASED), node(0, 1100, SQUARE)]

TOPS = {
    "every edge another": (38.1, box(1200, 560, ROUND, BEVEL, HALF, EASED), {}),
    "re-entrant, rounded": (38, [node(*p, prof("rounded", 12)) for p in ((0, 0), (1500, 0), (1500, 900), (1000, 900), (1000, 500), (500, 500), (500, 900), (0, 900))], {}),
    "re-entrant, mixed": (38, [node(*p, q) for p, q in zip(((0, 0), (900, 0), (900, 400), (400, 400), (400, 800), (0, 800)), (ROUND, SQUARE, HALF, BEVEL, SQUARE, FULL))], {}),
    "L with a spline front": (38, L, {}),
    "bowed front, full round": (40, [node(0, 0, FULL, **arc(90)), node(1200, 0, FULL), node(1200, 500, FULL), node(0, 500, FULL)], {}),
    "round, half round": (50, [node(-250, 0, HALF, **arc(250)), node(250, 0, HALF, **arc(250))], {}),
    "oval by splines": (30, [node(500, 0, ROUND, **spline((500, 165), (276, 300))), node(0, 300, ROUND, **spline((-276, 300), (-500, 165))),
                             node(-500, 0, ROUND, **spline((-500, -165), (-276, -300))), node(0, -300, ROUND, **spline((276, -300), (500, -165)))], {}),
    "concave front": (38, [node(0, 0, ROUND, **arc(-80)), node(1000, 0, BEVEL), node(1000, 600, SQUARE), node(0, 600, ROUND)], {}),
    "a sink whose arris meets the edge's": (38, box(1200, 560, prof("rounded", 15), SQUARE), {"sinks": [sink("rectangle", 600, 175, 500, 310, corner_radius_mm=40, profile=prof("rounded", 12))]}),
    "overlapping holes": (38, box(900, 500, ROUND), {"holes": [hole(400, 250, 120), hole(480, 250, 90), hole(430, 300, 70)], "sinks": [sink("circle", 520, 280, 160, 0, profile=prof("rounded", 6))]}),
    "openings over the edge": (38, box(900, 500, prof("rounded", 14)), {"holes": [hole(300, 4, 90), hole(900, 500, 120)], "sinks": [sink("ellipse", 30, 260, 200, 160, turn=20, profile=BEVEL)]}),
    "channels that cross": (38, box(1200, 560, ROUND, HALF), {"channels": [channel(0, 8, [river((-50, 200, 60), (500, 300, 40), (1250, 180, 70), start="flat", end="flat")]),
                                                                           channel(1, 15, [river((600, -40, 40), (640, 300, 50), (560, 620, 30), start="flat", end="flat")], resin=False)]}),
    "a river that leaves by one edge": (38, [node(0, 0, HALF, ("rounded", 60)), node(1200, 0, ROUND), node(1200, 560, SQUARE), node(0, 560, SQUARE)],
                                        {"channels": [channel(0, 10, [river((900, 300, 20), (600, 250, 60), (300, 320, 40), (120, 260, 50), end="open")])]}),
    "branches and an island": (38, box(1400, 600, EASED), {"channels": [channel(0, 9, [river((100, 300, 30), (500, 350, 60), (900, 200, 40), (1300, 300, 20)), river((500, 350, 30), (800, 480, 40), (1100, 520, 10))],
                                                                                [region(((350, 150), (700, 120), (760, 420), (380, 470)), ((480, 250), (600, 240), (590, 330)))])], "sinks": [sink("circle", 1100, 300, 280, 0, profile=EASED)]}),
    "D, rim shows": (38, box(1100, 560, ROUND), {"sinks": [sink("D", 500, 290, 420, 320, turn=12, bow_mm=70, corner_radius_mm=40, profile=EASED, reveal=("rim shows", 5))]}),
    "D, concrete overhangs": (38, box(1100, 560, ROUND), {"sinks": [sink("D", 500, 290, 420, 320, turn=-8, bow_mm=70, corner_radius_mm=0, profile=prof("rounded", 7), reveal=("concrete overhangs", 6))]}),
    "corners smaller than the edge": (38, box(900, 500, prof("rounded", 20), corner=("rounded", 8)), {}),
    "clipped corners, mixed": (38.1, box(900, 500, HALF, EASED, BEVEL, SQUARE, corner=("chamfered", 45)), {}),
    "a narrow neck": (40, [node(*p, FULL) for p in ((0, 0), (400, 0), (420, 180), (700, 182), (720, 0), (1100, 0), (1100, 400), (720, 400), (700, 215), (420, 214), (400, 400), (0, 400))], {}),
    "a path with an inside corner": (38, box(1100, 560, ROUND), {"sinks": [{"id": "p", "at_mm": [550, 280], "rotation_deg": 30, "mount": "under", "profile": prof("rounded", 9),
                                     "reveal": {"kind": "rim shows", "size_mm": 4}, "shape": {"kind": "path", "path": [{"at_mm": list(p)} for p in ((-150, -120), (160, -120), (160, 40), (20, 50), (10, 140), (-150, 130))]}}]}),
    "a vessel and taps": (38, box(1100, 520, BEVEL), {"sinks": [sink("circle", 400, 250, 380, 0, mount="vessel")], "holes": [hole(298.4, 460, 35), hole(400, 460, 35), hole(501.6, 460, 35)]}),
    "a profile larger than the slab": (25, box(800, 400, prof("rounded", 40), SQUARE, prof("bevelled", 30), ROUND), {}),
    "an acute triangle": (38, [node(0, 0, HALF), node(900, 0, ROUND), node(150, 420, FULL)], {}),
}


def design(thickness, nodes, more):
    d = {"thickness_mm": thickness, "outline": {"nodes": nodes}, "finish": {"colour": "#808080", "exposure": "cream", "polish": 2, "grind_mm": 0}}
    d.update(more)
    return d


def cuts(top):
    """The heights at which something starts."""
    z = {0.0, top.t, top.t / 2}
    for p in [p for _, p in top.sides] + [o[2] for o in top.openings]:
        size = p.get("size_mm", 0) or (top.t / 2 if p.get("kind") == "half round" else 0)
        z.add(top.t - size)
    for depth, _, _ in top.channels:
        z.add(top.t - depth)
    return sorted(x for x in z if 0 <= x <= top.t)


def volumes(d):
    top = sections.Top(d)
    concrete, moment, error = 0.0, [0.0, 0.0, 0.0], 0.0
    held = [0.0] * len(top.channels)
    known = {}

    def section(z):
        if z not in known:
            known[z] = top.section(z)
        return known[z]

    z = cuts(top)
    for lo, hi in zip(z, z[1:]):
        # z = mid - half cos(angle): a root at either end does no harm.
        def over(value):
            f = lambda a: value((lo + hi) / 2 - (hi - lo) / 2 * math.cos(a)) * (hi - lo) / 2 * math.sin(a)
            return quad(f, 0, math.pi, epsabs=1e-7 * top.plan.area * top.t, epsrel=1e-9, limit=6)

        v, e = over(lambda x: section(x)[0].area)
        concrete, error = concrete + v, error + e
        moment[0] += over(lambda x: section(x)[0].area * section(x)[0].centroid.x)[0]
        moment[1] += over(lambda x: section(x)[0].area * section(x)[0].centroid.y)[0]
        moment[2] += over(lambda x: section(x)[0].area * x)[0]
        for k in range(len(held)):
            held[k] += over(lambda x: section(x)[1][k].area)[0]
    return {"concrete_volume_mm3": concrete, "centroid_mm": [m / concrete for m in moment], "channel_volume_mm3": held, "error_mm3": error}


def main():
    options, expected = [], {}
    todo = [(name, design(*top)) for name, top in TOPS.items()]
    rnd = random.Random(5)
    while len(todo) < len(TOPS) + 5:
        d = geos.design(rnd, "channels")
        try:
            sections.Top(d)
        except ValueError:
            continue
        todo.append((f"random {len(todo) - len(TOPS) + 1}", d))
    for name, d in todo:
        options.append({"name": name, "design": d})
        expected[name] = volumes(d)
        print(name, expected[name], file=sys.stderr, flush=True)
    with open("tops.json", "w") as f:
        json.dump({"format": "castwright-job", "version": 1, "units": "metric", "options": options}, f, indent=1)
        f.write("\n")
    with open("volumes.json", "w") as f:
        json.dump(expected, f, indent=1)
        f.write("\n")


if __name__ == "__main__":
    main()
