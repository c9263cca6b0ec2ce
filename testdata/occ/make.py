#!/usr/bin/env python3
"""Makes jobs of this folder (tops.py; the others are written by hand) and expected.json: the
measures of them all by an independent solid modeller where it can build them (solid.py:
gmsh 4.8.4 over OpenCascade 7.6.3), else by fine sections (sections.py: shapely 1.8.5, numpy
1.24.2, scipy 1.10.1, Gauss in z).
The geometry is written from the words of the job file's schema alone. Where both
reckon a top they must agree, or the sections hold and the difference is printed.
Run: /usr/bin/python3 make.py [NAME...]"""
import json
import multiprocessing
import os
import sys

import solid
from sections import Sections
from tops import TOPS

HERE = os.path.dirname(os.path.abspath(__file__))
DEAR = {"river-sink-hole-island", "ellipse-slim-rim", "ellipse-slim-over", "spline-convex-tight2",
        "sinks-overlap-profiles"}  # whose sections take minutes and have no kinks over the height
SLOW = {"rect-full-round", "river-sink-hole-island"}  # where the kernel's cuts take minutes


def by_kernel(d, holes, out):
    try:
        out.put(solid.measure(d, holes))
    except Exception as e:  # the kernel refuses, or the code above does: the sections hold
        out.put(repr(e))


def reckon(name):
    d = json.load(open(os.path.join(HERE, name + ".json")))["options"][0]["design"]
    s = Sections(d)
    want = s.measure(2, 7)
    if name not in DEAR:
        for panels in (6, 18, 54):  # until kinks over the height are told well enough
            before, want = want["concrete_volume_mm3"], s.measure(panels, 7)
            if abs(want["concrete_volume_mm3"] - before) < 1e-7 * before:
                break
    by = "sections"
    if name not in SLOW:
        drains = [(v["at_mm"], v["drain_mm"] / 2) for v in d.get("sinks", []) if v.get("drain_mm")]
        q = multiprocessing.Queue()
        p = multiprocessing.Process(target=by_kernel, args=(d, s.round_holes(d) + drains, q))
        p.start()
        try:
            k = q.get(timeout=30)
        except Exception:
            k = "too slow"
        p.kill()
        if isinstance(k, str):
            print(name, k, flush=True)
        else:
            off = {m: abs(k[m] - want[m]) / max(1, abs(want[m])) for m in k if m != "centre_of_gravity_mm"}
            worst = max(off, key=off.get)
            if off[worst] < 2e-7:
                want.update(k)
                by = "gmsh 4.8.4, OpenCascade 7.6.3"
            else:
                print(name, worst, off[worst], "kernel", k[worst], "sections", want[worst], flush=True)
    if want["resin_volume_mm3"] or want["glass_area_mm2"]:
        del want["centre_of_gravity_mm"]
    want["by"] = by
    return want


def rounded(v):
    """Ten digits of every number: what the next machine prints alike."""
    if isinstance(v, dict):
        return {k: rounded(w) for k, w in v.items()}
    if isinstance(v, list):
        return [rounded(w) for w in v]
    return v if isinstance(v, str) else float("%.10g" % v)


def main():
    path = os.path.join(HERE, "expected.json")
    all_ = json.load(open(path)) if os.path.exists(path) else {}
    by_hand = [n[:-5] for n in sorted(os.listdir(HERE)) if n.endswith(".json") and n != "expected.json"]
    for name in sys.argv[1:] or [*TOPS, *(n for n in by_hand if n not in TOPS)]:
        if name in TOPS:
            with open(os.path.join(HERE, name + ".json"), "w") as f:
                json.dump(TOPS[name], f, separators=(",", ":"))
                f.write("\n")
        all_[name] = reckon(name)
        with open(path, "w") as f:
            json.dump(rounded(all_), f, indent=1, sort_keys=True)
            f.write("\n")


main()
