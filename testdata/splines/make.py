#!/usr/bin/env python3
"""Values of scipy's natural cubic spline and PCHIP interpolator for model/geom.

Run in this folder with Debian's python3-scipy: ./make.py
"""
import json
import random

import numpy as np
from scipy.interpolate import CubicSpline, PchipInterpolator


def main():
    rnd = random.Random(3)
    out = []
    for case in range(40):
        n = rnd.randint(2, 9)
        p = [[round(rnd.uniform(-500, 500), 3), round(rnd.uniform(-300, 300), 3)] for _ in range(n)]
        w = [rnd.choice([10, 10, 25, 40, 40, round(rnd.uniform(5, 90), 2)]) for _ in range(n)]
        s = np.concatenate([[0], np.cumsum(np.linalg.norm(np.diff(np.array(p), axis=0), axis=1))])
        f = CubicSpline(s, p, bc_type="natural") if n > 2 else None
        g = PchipInterpolator(s, w)
        at = sorted(rnd.uniform(0, s[-1]) for _ in range(12)) + [0.0, float(s[-1])]
        row = {"points": p, "widths": w, "s": at, "width": [float(g(x)) for x in at], "slope": [float(g(x, 1)) for x in at]}
        if f is not None:
            row["at"] = [f(x).tolist() for x in at]
            row["first"] = [f(x, 1).tolist() for x in at]
            row["second"] = [f(x, 2).tolist() for x in at]
        out.append(row)
    with open("splines.json", "w") as f:
        json.dump(out, f)
        f.write("\n")


if __name__ == "__main__":
    main()
