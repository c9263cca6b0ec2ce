#!/usr/bin/env python3
"""Makes random SVG drawings and works out their loops by the SVG specification
on its own: curves at some hundred points, regions by shapely 1.8. Each drawing
is held against what librsvg (rsvg-convert) paints: area to 0.2 %, centroid to
0.1 % of the page. Run: /usr/bin/python3 make_svg.py FOLDER COUNT SEED
Writes FOLDER/*.svg and FOLDER/svg.json with the loops of each, in mm of the
page, y down."""
import json
import math
import random
import subprocess
import sys
import tempfile

import numpy as np
from shapely.geometry import Polygon

folder, count, seed = sys.argv[1], int(sys.argv[2]), int(sys.argv[3])
rng = random.Random(seed)
PX = {"mm": 96 / 25.4, "cm": 96 / 2.54, "in": 96, "pt": 96 / 72, "pc": 16, "px": 1}
STEPS = 1500


def u(a, b):
    return rng.uniform(a, b)


def num(v):
    """A number as programs write it, in one of several ways."""
    text = f"{v:.6f}".rstrip("0").rstrip(".")
    if rng.random() < 0.2 and text.lstrip("-").startswith("0."):
        text = text.replace("0.", ".", 1)
    if rng.random() < 0.1:
        text = f"{v:.9e}"
    return text


def rounded(v):
    return round(v, 6)


def mat(a, b, c, d, e, f):
    return np.array([[a, c, e], [b, d, f], [0, 0, 1.0]])


def translate(x, y):
    return mat(1, 0, 0, 1, x, y)


# -- shapes: (text, points) in their own coordinates


def ellipse_points(cx, cy, rx, ry, a=0.0, b=math.tau, turn=0.0):
    out = []
    for i in range(STEPS + 1):
        t = a + (b - a) * i / STEPS
        x, y = rx * math.cos(t), ry * math.sin(t)
        out.append((cx + x * math.cos(turn) - y * math.sin(turn), cy + x * math.sin(turn) + y * math.cos(turn)))
    return out


def rect():
    w, h = rounded(u(40, 120)), rounded(u(30, 100))
    x, y = rounded(-w / 2 + u(-5, 5)), rounded(-h / 2 + u(-5, 5))
    attrs, rx, ry = "", 0.0, 0.0
    kind = rng.random()
    if kind < 0.3:
        rx = ry = rounded(u(2, 15))
        attrs = rng.choice((f' rx="{rx}"', f' ry="{ry}"', f' rx="{rx}" ry="{ry}"'))
    elif kind < 0.5:
        rx, ry = rounded(u(2, 90)), rounded(u(2, 15))
        attrs = f' rx="{rx}" ry="{ry}"'
        rx, ry = min(rx, w / 2), min(ry, h / 2)
    pts = []
    for cx, cy, a in ((x + w - rx, y + ry, -90), (x + w - rx, y + h - ry, 0), (x + rx, y + h - ry, 90), (x + rx, y + ry, 180)):
        if rx == 0:
            pts.append((cx, cy))
        else:
            pts += ellipse_points(cx, cy, rx, ry, math.radians(a), math.radians(a + 90))
    unit = rng.choice(("", "", "", "mm", "pt", "in"))
    if unit:
        k = PX[unit]
        return f'<rect x="{x}" y="{y}" width="{w / k:.9f}{unit}" height="{h / k:.9f}{unit}"{attrs}/>', pts
    return f'<rect x="{x}" y="{y}" width="{w}" height="{h}"{attrs}/>', pts


def circle():
    cx, cy, r = rounded(u(-9, 9)), rounded(u(-9, 9)), rounded(u(20, 60))
    return f'<circle cx="{cx}" cy="{cy}" r="{r}"/>', ellipse_points(cx, cy, r, r)


def ellipse():
    cx, cy, rx, ry = rounded(u(-9, 9)), rounded(u(-9, 9)), rounded(u(20, 60)), rounded(u(20, 60))
    return f'<ellipse cx="{cx}" cy="{cy}" rx="{rx}" ry="{ry}"/>', ellipse_points(cx, cy, rx, ry)


def ring(n, big=60.0):
    turn = u(0, math.tau)
    return [(rounded(big * u(0.6, 1) * math.cos(turn + i * math.tau / n)),
             rounded(big * u(0.6, 1) * math.sin(turn + i * math.tau / n))) for i in range(n)]


def poly():
    pts = ring(rng.randint(3, 9))
    text = rng.choice((" ", ",")).join(f"{x}{rng.choice((',', ' '))}{y}" for x, y in pts)
    return f'<{rng.choice(("polygon", "polyline"))} points="{text}"/>', pts


def arc_points(p, q, rx, ry, turn, large, sweep):
    """SVG 1.1, F.6.5 and F.6.6."""
    phi = math.radians(turn)
    dx, dy = (p[0] - q[0]) / 2, (p[1] - q[1]) / 2
    x1 = math.cos(phi) * dx + math.sin(phi) * dy
    y1 = -math.sin(phi) * dx + math.cos(phi) * dy
    lam = (x1 / rx) ** 2 + (y1 / ry) ** 2
    if lam > 1:
        rx, ry = rx * math.sqrt(lam), ry * math.sqrt(lam)
    k = max(0.0, (rx * ry) ** 2 - (rx * y1) ** 2 - (ry * x1) ** 2) / ((rx * y1) ** 2 + (ry * x1) ** 2)
    k = math.sqrt(k) * (-1 if large == sweep else 1)
    cx1, cy1 = k * rx * y1 / ry, -k * ry * x1 / rx
    cx = math.cos(phi) * cx1 - math.sin(phi) * cy1 + (p[0] + q[0]) / 2
    cy = math.sin(phi) * cx1 + math.cos(phi) * cy1 + (p[1] + q[1]) / 2
    a = math.atan2((y1 - cy1) / ry, (x1 - cx1) / rx)
    b = math.atan2((-y1 - cy1) / ry, (-x1 - cx1) / rx)
    if sweep and b < a:
        b += math.tau
    if not sweep and b > a:
        b -= math.tau
    return ellipse_points(cx, cy, rx, ry, a, b, phi)


def bezier(*c):
    out = []
    for i in range(STEPS + 1):
        t, pts = i / STEPS, [np.array(p) for p in c]
        while len(pts) > 1:
            pts = [p * (1 - t) + q * t for p, q in zip(pts, pts[1:])]
        out.append(tuple(pts[0]))
    return out


def path():
    global STEPS
    pts = ring(rng.randint(3, 8))
    n = len(pts)
    out, text, last, kind, lastc = [], "", None, "", None
    start = pts[0]
    text = f"M{num(start[0])} {num(start[1])}"
    at, written = start, (float(num(0)), 0)
    STEPS = 400

    def emit(letter, *numbers_and_points):
        """Writes a command, relative or not. Points are tuples."""
        nonlocal text
        relative = rng.random() < 0.5
        bits = []
        for v in numbers_and_points:
            if isinstance(v, tuple):
                x, y = (v[0] - at[0], v[1] - at[1]) if relative else v
                bits += [f"{x:.6f}", f"{y:.6f}"]
            elif isinstance(v, bool):
                bits.append(str(int(v)))
            else:
                bits.append(f"{v:.6f}")
        text += (letter.lower() if relative else letter) + " ".join(bits)

    for i in range(1, n + 1):
        to = pts[i % n]
        mid = np.array(at) * 0.5 + np.array(to) * 0.5
        way = np.array(to) - np.array(at)
        out_way = np.array((way[1], -way[0])) * u(0.0, 0.35)
        what = rng.choice("LLHCSQTA")
        c1 = tuple(round(float(v), 6) for v in np.array(at) * 0.7 + np.array(to) * 0.3 + out_way)
        c2 = tuple(round(float(v), 6) for v in np.array(at) * 0.3 + np.array(to) * 0.7 + out_way)
        if what == "H":
            corner = (to[0], at[1])
            relative = rng.random() < 0.5
            text += f"h{corner[0] - at[0]:.6f}v{to[1] - at[1]:.6f}" if relative else f"H{corner[0]}V{to[1]}"
            out += [at, corner]
            lastc = None
        elif what == "L":
            if i == n:
                pass  # Z does it
            else:
                emit("L", to)
            out.append(at)
            lastc = None
        elif what == "C":
            emit("C", c1, c2, to)
            out += bezier(at, c1, c2, to)
            lastc = ("C", c2)
        elif what == "S":
            first = (2 * at[0] - lastc[1][0], 2 * at[1] - lastc[1][1]) if lastc and lastc[0] == "C" else at
            emit("S", c2, to)
            out += bezier(at, first, c2, to)
            lastc = ("C", c2)
        elif what == "Q":
            emit("Q", c1, to)
            out += bezier(at, c1, to)
            lastc = ("Q", c1)
        elif what == "T":
            first = (2 * at[0] - lastc[1][0], 2 * at[1] - lastc[1][1]) if lastc and lastc[0] == "Q" else at
            emit("T", to)
            out += bezier(at, first, to)
            lastc = ("Q", first)
        elif what == "A":
            chord = float(np.hypot(*way))
            rx, ry, turn = rounded(chord * u(0.3, 1.5)), rounded(chord * u(0.3, 1.5)), rounded(u(-180, 180))
            if rng.random() < 0.4:
                ry = rx
            sweep = rng.random() < 0.5
            emit("A", rx, ry, turn, False, sweep, to)
            out += arc_points(at, to, rx, ry, turn, False, sweep)
            lastc = None
        at = to
    STEPS = 1500
    text += rng.choice("Zz")
    hole = None
    if rng.random() < 0.4:
        r = rounded(u(3, 8))
        text += f"m{r - start[0]:.6f} {-start[1]:.6f}" if rng.random() < 0.5 else f"M{r} 0"
        text += f"a{r} {r} 0 0 1 {-2 * r} 0a{r} {r} 0 0 1 {2 * r} 0z"
        hole = ellipse_points(0, 0, r, r)
    return f'<path fill-rule="evenodd" d="{text}"/>', out, hole


# -- what shapes lie in


def transform():
    """A transform list and its matrix."""
    parts, m = [], np.eye(3)
    for _ in range(rng.randint(1, 3)):
        k = rng.choice(("translate", "scale", "rotate", "rotate3", "skewX", "skewY", "matrix"))
        if k == "translate":
            v = [rounded(u(-30, 30)), rounded(u(-30, 30))]
            t = translate(*v)
        elif k == "scale":
            v = [rounded(u(0.6, 1.3) * rng.choice((1, -1))), rounded(u(0.6, 1.3))][: rng.randint(1, 2)]
            t = mat(v[0], 0, 0, v[-1], 0, 0)
        elif k == "rotate":
            v = [rounded(u(-180, 180))]
            c, s = math.cos(math.radians(v[0])), math.sin(math.radians(v[0]))
            t = mat(c, s, -s, c, 0, 0)
        elif k == "rotate3":
            v = [rounded(u(-180, 180)), rounded(u(-20, 20)), rounded(u(-20, 20))]
            c, s = math.cos(math.radians(v[0])), math.sin(math.radians(v[0]))
            t = translate(v[1], v[2]) @ mat(c, s, -s, c, 0, 0) @ translate(-v[1], -v[2])
        elif k in ("skewX", "skewY"):
            v = [rounded(u(-20, 20))]
            w = math.tan(math.radians(v[0]))
            t = mat(1, 0, w, 1, 0, 0) if k == "skewX" else mat(1, w, 0, 1, 0, 0)
        else:
            v = [rounded(u(0.7, 1.1)), rounded(u(-0.3, 0.3)), rounded(u(-0.3, 0.3)), rounded(u(0.7, 1.1)), 4.0, -3.0]
            t = mat(*v)
        parts.append(f"{k.rstrip('3')}({rng.choice((', ', ' ', ',')).join(map(str, v))})")
        m = m @ t
    return rng.choice((" ", ", ", "")).join(parts), m


ALIGN = ["none"] + [f"x{a}Y{b}" for a in ("Min", "Mid", "Max") for b in ("Min", "Mid", "Max")]


def frame(w, h, held=None):
    """A view box for w x h: its attributes and matrix. Points held lie in it:
    librsvg 2.54 clips symbols whatever their overflow says."""
    box = [rounded(u(-50, 50)), rounded(u(-50, 50)), rounded(w * u(0.6, 1.6)), rounded(h * u(0.6, 1.6))]
    if held is not None:
        lo, hi = np.min(held, axis=0), np.max(held, axis=0)
        box = [rounded(v) for v in (lo[0] - u(1, 40), lo[1] - u(1, 40), 0, 0)]
        box[2:] = [rounded(hi[0] - box[0] + u(1, 40)), rounded(hi[1] - box[1] + u(1, 40))]
    text = f' viewBox="{box[0]} {box[1]} {box[2]} {box[3]}"'
    align = rng.choice(ALIGN + [""] * 6)
    kx, ky = w / box[2], h / box[3]
    slices = held is None and align not in ("", "none") and rng.random() < 0.3
    if align:
        text += f' preserveAspectRatio="{align}{" slice" if slices else rng.choice(("", " meet"))}"'
    if align == "none":
        return text, mat(kx, 0, 0, ky, -kx * box[0], -ky * box[1])
    k = max(kx, ky) if slices else min(kx, ky)
    align = align or "xMidYMid"
    x = {"Min": 0, "Mid": 0.5, "Max": 1}[align[1:4]] * (w - k * box[2])
    y = {"Min": 0, "Mid": 0.5, "Max": 1}[align[5:8]] * (h - k * box[3])
    return text, mat(k, 0, 0, k, x - k * box[0], y - k * box[1])


def wrap(text, defs, held):
    """Text within something that moves it, and the matrix of that."""
    k = rng.choice(("g", "g", "svg", "use", "symbol", "plain"))
    if k == "plain":
        return rng.choice((f"<g>{text}</g>", f'<a xlink:href="#x">{text}</a>', f"<switch><g>{text}</g></switch>")), np.eye(3)
    if k == "g":
        t, m = transform()
        return f'<g transform="{t}">{text}</g>', m
    w, h, x, y = rounded(u(150, 300)), rounded(u(150, 300)), rounded(u(-30, 30)), rounded(u(-30, 30))
    if k == "svg":
        box, m = frame(w, h)
        return f'<svg x="{x}" y="{y}" width="{w}" height="{h}"{box} style="overflow:visible">{text}</svg>', translate(x, y) @ m
    name = f"d{len(defs)}"
    href = rng.choice(("href", "xlink:href"))
    if k == "use":
        defs.append(f'<g id="{name}">{text}</g>')
        t, m = transform()
        return f'<use {href}="#{name}" x="{x}" y="{y}" transform="{t}"/>', m @ translate(x, y)
    box, m = frame(w, h, held)
    defs.append(f'<symbol id="{name}"{box} style="overflow:visible">{text}</symbol>')
    return f'<use {href}="#{name}" x="{x}" y="{y}" width="{w}" height="{h}"/>', translate(x, y) @ m


def moved(m, pts):
    return [tuple((m @ np.array((x, y, 1.0)))[:2]) for x, y in pts]


HIDDEN = [
    '<rect width="300" height="200" display="none"/>', '<circle r="90" style="fill:red;display:none"/>',
    '<circle r="90" class="gone other"/>', '<g visibility="hidden"><rect width="200" height="100"/></g>',
    '<g style="display : none"><path d="M0 0H90V90z"/></g>', '<defs><circle r="120"/></defs>',
    '<clipPath id="cc"><circle r="120"/></clipPath>', '<symbol id="unused"><rect width="99" height="99"/></symbol>',
    '<rect width="0" height="50"/>', '<circle r="0"/>', '<line x1="0" y1="0" x2="400" y2="300"/>',
    '<g id="ghost" visibility="hidden"></g>', '<rect id="gone2" width="80" height="80"/>',
]


def loops(all_polygons):
    all_polygons.sort(key=lambda p: -p.area)
    return [{"area": p.area, "perimeter": p.exterior.length, "centroid": list(p.centroid.coords[0]),
             "holes": [{"area": Polygon(h).area, "perimeter": h.length, "centroid": list(Polygon(h).centroid.coords[0]),
                        "holes": []} for h in p.interiors]} for p in all_polygons]


def painted(file, w, h):
    """Area and centroid, in pixels of the page, of what librsvg paints."""
    k = 2400 / max(w, h)
    with tempfile.NamedTemporaryFile(suffix=".png") as png, tempfile.NamedTemporaryFile(suffix=".pgm") as pgm:
        subprocess.run(["rsvg-convert", "-w", str(round(w * k)), "-h", str(round(h * k)), "-o", png.name, file], check=True)
        subprocess.run(["/usr/bin/convert-im6.q16", png.name, "-alpha", "extract", "-depth", "8", pgm.name], check=True)
        data = open(pgm.name, "rb").read()
    head = data.split(b"\n", 3)
    cols, rows = map(int, head[1].split())
    a = np.frombuffer(data[-cols * rows:], dtype=np.uint8).reshape(rows, cols) / 255.0
    area = a.sum()
    ys, xs = np.mgrid[0:rows, 0:cols]
    kx, ky = cols / w, rows / h
    return area / kx / ky, ((xs + 0.5) * a).sum() / area / kx, ((ys + 0.5) * a).sum() / area / ky


want = {}
number = 0
while number < count:
    unit = rng.choice(list(PX))
    w, h = rounded(u(400, 900)), rounded(u(300, 700))  # of the page, px
    box, root = frame(w, h)
    sized = f'width="{w / PX[unit]:.9f}{unit}" height="{h / PX[unit]:.9f}{unit}"'
    if rng.random() < 0.2:
        box, root = "", np.eye(3)
    defs, body, found = [], [], []
    for k in range(rng.randint(1, 4)):
        made = rng.choice((rect, circle, ellipse, poly, path, path, path))()
        text, pts, hole = made if len(made) == 3 else (*made, None)
        m = np.eye(3)
        if rng.random() < 0.3:
            t, m = transform()
            text = text.replace("/>", f' transform="{t}"/>')
        for _ in range(rng.randint(0, 3)):
            text, outer = wrap(text, defs, np.array(moved(m, pts)))
            m = outer @ m
        # Into its quarter of the page, at a size that fits.
        middle = moved(np.linalg.inv(root), [((0.25 + 0.5 * (k % 2)) * w, (0.25 + 0.5 * (k // 2)) * h)])[0]
        ext = np.array(moved(root @ m, pts))
        s = rounded(0.4 * min(w, h) / max(np.ptp(ext[:, 0]), np.ptp(ext[:, 1])))
        here = (m @ np.array((0, 0, 1.0)))[:2]
        x, y = rounded(middle[0] - s * here[0]), rounded(middle[1] - s * here[1])
        text = f'<g transform="translate({x} {y}) scale({s})">{text}</g>'
        m = root @ translate(x, y) @ mat(s, 0, 0, s, 0, 0) @ m
        poly_ = Polygon(moved(m, pts), [moved(m, hole)] if hole else [])
        if not poly_.is_valid or any(poly_.intersects(q) for q in found):
            continue
        # Every part on the page, where librsvg paints it.
        lo_x, lo_y, hi_x, hi_y = poly_.bounds
        if lo_x < 1 or lo_y < 1 or hi_x > w - 1 or hi_y > h - 1 or poly_.area < 100:
            continue
        found.append(poly_)
        body.append(text)
    if not found:
        continue
    body += rng.sample(HIDDEN, 3)
    rng.shuffle(body)
    file = f"{folder}/{number:02d}-{unit}.svg"
    with open(file, "w") as f:
        f.write(f'<?xml version="1.0" encoding="UTF-8"?>\n<svg xmlns="http://www.w3.org/2000/svg" '
                f'xmlns:xlink="http://www.w3.org/1999/xlink" {sized}{box}>\n'
                "<style>/* hidden */ .gone, .gone3 { display: none; } #gone2{visibility:hidden}</style>\n"
                f'<defs>{"".join(defs)}</defs>\n' + "\n".join(body) + "\n</svg>\n")
    area, cx, cy = painted(file, w, h)
    total = sum(p.area for p in found)
    mx = sum(p.area * p.centroid.x for p in found) / total
    my = sum(p.area * p.centroid.y for p in found) / total
    if abs(area - total) > 2e-3 * total or math.hypot(cx - mx, cy - my) > 1e-3 * max(w, h):
        print("librsvg differs:", file, area, total, (cx, cy), (mx, my))
    mm = 25.4 / 96
    want[file.split("/")[-1]] = loops([Polygon(np.array(p.exterior.coords) * mm, [np.array(i.coords) * mm for i in p.interiors]) for p in found])
    number += 1

json.dump(want, open(f"{folder}/svg.json", "w"), indent=0, sort_keys=True)
