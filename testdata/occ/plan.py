"""The plan of a top as the schema words it: chains of lines, arcs, spans and ellipses,
corners cut, bands about curves, rivers. Independent of the Go code: numpy, scipy,
shapely only. Lengths in mm."""
import math

import numpy as np

from scipy.interpolate import CubicSpline, PchipInterpolator
from scipy.optimize import fsolve
from shapely.geometry import MultiPolygon, Point, Polygon
from shapely.ops import unary_union
from shapely.validation import make_valid

STEP = math.radians(0.1)  # of flattened arcs at most: the area of a disc is short by 5e-7
SAGITTA = 2e-5  # of a step of an arc, mm: of a shallow one the area is right to some hundredths of a mm2


def left(v):
    return np.stack([-v[..., 1], v[..., 0]], -1)


class Line:
    def __init__(self, p, q):
        self.p, self.q = np.array(p, float), np.array(q, float)

    def at(self, t):
        return self.p + np.multiply.outer(t, self.q - self.p)

    def tangent(self, t):
        d = (self.q - self.p) / np.linalg.norm(self.q - self.p)
        return np.broadcast_to(d, np.shape(t) + (2,))

    def length(self):
        return float(np.linalg.norm(self.q - self.p))

    def part(self, a, b):
        return Line(self.at(a), self.at(b))

    def steps(self):
        return 1

    def reach(self, side):
        return math.inf

    def moved(self, m):
        return Line(m(self.p), m(self.q))

    def locate(self, s):
        return s / self.length()


class Arc:
    def __init__(self, c, r, a, w):
        self.c, self.r, self.a, self.w = np.array(c, float), r, a, w

    def at(self, t):
        x = self.a + self.w * np.asarray(t)
        return self.c + self.r * np.stack([np.cos(x), np.sin(x)], -1)

    def tangent(self, t):
        x = self.a + self.w * np.asarray(t)
        return np.stack([-np.sin(x), np.cos(x)], -1) * math.copysign(1, self.w)

    def length(self):
        return self.r * abs(self.w)

    def part(self, a, b):
        return Arc(self.c, self.r, self.a + self.w * a, self.w * (b - a))

    def steps(self):
        return max(2, math.ceil(abs(self.w) / min(STEP, math.sqrt(8 * SAGITTA / self.r))))

    def reach(self, side):  # how far an offset to a side (+1 left) can go
        return self.r if side * self.w > 0 else math.inf

    def moved(self, m):
        d = m(np.array([1.0, 0])) - m(np.zeros(2))
        return Arc(m(self.c), self.r, self.a + math.atan2(d[1], d[0]), self.w)

    def locate(self, s):
        return s / self.length()


class Span:
    N = 3000

    def __init__(self, *p):
        self.p = np.array(p, float)

    def at(self, t):
        t = np.asarray(t)[..., None]
        a, b, c, d = self.p
        return (1 - t)**3 * a + 3 * t * (1 - t)**2 * b + 3 * t * t * (1 - t) * c + t**3 * d

    def speed(self, t):
        t = np.asarray(t)[..., None]
        a, b, c, d = self.p
        return 3 * ((1 - t)**2 * (b - a) + 2 * t * (1 - t) * (c - b) + t * t * (d - c))

    def tangent(self, t):
        v = self.speed(t)
        n = np.linalg.norm(v, axis=-1, keepdims=True)
        if np.any(n < 1e-9):
            v = self.speed(np.clip(t, 1e-6, 1 - 1e-6))
            n = np.linalg.norm(v, axis=-1, keepdims=True)
        return v / n

    def length(self, to=1.0):
        x, w = np.polynomial.legendre.leggauss(40)
        total = 0.0
        for k in range(16):
            a, b = to * k / 16, to * (k + 1) / 16
            v = self.speed((a + b) / 2 + (b - a) / 2 * x)
            total += float(np.sum(w * np.linalg.norm(v, axis=-1)) * (b - a) / 2)
        return total

    def part(self, a, b):
        def cut(p, t):
            q = [p]
            while len(q[-1]) > 1:
                q.append([(1 - t) * u + t * v for u, v in zip(q[-1], q[-1][1:])])
            return [x[0] for x in q], [x[-1] for x in reversed(q)]
        p = [v for v in self.p]
        lo, _ = cut(p, b)
        _, hi = cut(lo, a / b) if a else (None, lo)
        return Span(*hi)

    def steps(self):
        return self.N

    def reach(self, side):
        t = np.linspace(0, 1, 2001)
        v = self.speed(t)
        acc = np.gradient(v, t, axis=0)
        k = (v[:, 0] * acc[:, 1] - v[:, 1] * acc[:, 0]) / np.maximum(1e-12, np.linalg.norm(v, axis=1))**3
        k = side * k
        return 1 / k.max() if k.max() > 0 else math.inf

    def moved(self, m):
        return Span(*[m(v) for v in self.p])

    def locate(self, s):
        lo, hi = 0.0, 1.0
        for _ in range(80):
            mid = (lo + hi) / 2
            lo, hi = (mid, hi) if self.length(mid) < s else (lo, mid)
        return (lo + hi) / 2


class Ring:
    """A whole ellipse, counter-clockwise."""

    def __init__(self, c, rx, ry, turn):
        self.c, self.rx, self.ry, self.turn = np.array(c, float), rx, ry, turn

    def _out(self, x, y):
        c, s = math.cos(self.turn), math.sin(self.turn)
        return np.stack([c * x - s * y, s * x + c * y], -1)

    def at(self, t):
        x = 2 * math.pi * np.asarray(t)
        return self.c + self._out(self.rx * np.cos(x), self.ry * np.sin(x))

    def tangent(self, t):
        x = 2 * math.pi * np.asarray(t)
        v = self._out(-self.rx * np.sin(x), self.ry * np.cos(x))
        return v / np.linalg.norm(v, axis=-1, keepdims=True)

    def length(self):
        from scipy.special import ellipe
        a, b = max(self.rx, self.ry), min(self.rx, self.ry)
        return 4 * a * ellipe(1 - (b / a)**2)

    def steps(self):
        return math.ceil(2 * math.pi / min(STEP, math.sqrt(8 * SAGITTA / max(self.rx, self.ry))))

    def reach(self, side):
        a, b = max(self.rx, self.ry), min(self.rx, self.ry)
        return b * b / a if side > 0 else math.inf

    def moved(self, m):
        d = m(np.array([1.0, 0])) - m(np.zeros(2))
        return Ring(m(self.c), self.rx, self.ry, self.turn + math.atan2(d[1], d[0]))


def rise_arc(p, q, s):
    p, q = np.array(p, float), np.array(q, float)
    c = np.linalg.norm(q - p)
    right = -left((q - p) / c)
    r = (c * c / 4 + s * s) / (2 * abs(s))
    centre = (p + q) / 2 + right * (s - math.copysign(r, s))
    d = p - centre
    return Arc(centre, r, math.atan2(d[1], d[0]), math.copysign(4 * math.atan(2 * abs(s) / c), s))


def edge_curve(p, q, e):
    kind = e.get("curve", "straight")
    if kind == "arc" and e.get("rise_mm", 0):
        return rise_arc(p, q, e["rise_mm"])
    if kind == "spline":
        return Span(p, e["c1_mm"], e["c2_mm"], q)
    return Line(p, q)


def chain(nodes):
    """The edges of a closed chain: of each its curves (first the half of the cut where it
    starts, its own curve, the half of the cut where it ends) and its profile."""
    n = len(nodes)
    curves = [edge_curve(nodes[i]["at_mm"], nodes[(i + 1) % n]["at_mm"], nodes[i].get("edge", {}))
              for i in range(n)]
    lo, hi = [0.0] * n, [1.0] * n
    cut = [None] * n
    for i in range(n):
        corner = nodes[i].get("corner", {})
        kind, size = corner.get("kind", "square"), corner.get("size_mm", 0)
        if kind == "square" or not size:
            continue
        a, b = curves[i - 1], curves[i]
        u, v = a.tangent(1.0), b.tangent(0.0)
        turn = math.atan2(u[0] * v[1] - u[1] * v[0], float(u @ v))
        if abs(turn) <= math.radians(0.1):
            continue
        if kind == "chamfered":
            t, s = a.locate(a.length() - size), b.locate(size)
            cut[i] = Line(a.at(t), b.at(s))
        else:
            k = math.copysign(size, turn)

            def gap(x):
                return (a.at(x[0]) + k * left(a.tangent(x[0]))
                        - b.at(x[1]) - k * left(b.tangent(x[1])))
            d = size * math.tan(abs(turn) / 2)
            (t, s), _, ok, msg = fsolve(gap, [1 - d / a.length(), d / b.length()],
                                        xtol=1e-14, full_output=True)
            g = np.linalg.norm(gap([t, s]))
            assert g < 1e-8, (i, msg, g)
            c = a.at(t) + k * left(a.tangent(t))
            p, q = a.at(t) - c, b.at(s) - c
            w = math.atan2(p[0] * q[1] - p[1] * q[0], float(p @ q))
            cut[i] = Arc(c, size, math.atan2(p[1], p[0]), w)
            assert w * turn > 0
        hi[i - 1], lo[i] = float(t), float(s)
    edges = []
    for i in range(n):
        assert lo[i] < hi[i] + 1e-12, ("the cuts do not fit", i)
        part = []
        if cut[i]:
            part.append(cut[i].part(0.5, 1.0))
        if hi[i] - lo[i] > 1e-9:
            part.append(curves[i].part(lo[i], hi[i]) if (lo[i], hi[i]) != (0, 1) else curves[i])
        j = (i + 1) % n
        if cut[j]:
            part.append(cut[j].part(0.0, 0.5))
        edges.append((part, nodes[i].get("edge", {}).get("profile", {"kind": "square"}), i))
    return edges


def flat(curves):
    pts = []
    for c in curves:
        pts.append(c.at(np.linspace(0, 1, c.steps() + 1))[:-1])
    return np.concatenate(pts)


def fill(curves):
    p = Polygon(flat(curves))
    return p if p.is_valid else make_valid(p)


def disc(c, r):
    x = np.arange(3600) * (2 * math.pi / 3600)
    return Polygon(np.stack([c[0] + r * np.cos(x), c[1] + r * np.sin(x)], -1))


def sweep(a, b):
    """What the straight lines from a[i] to b[i] sweep over."""
    p = Polygon(np.concatenate([a, b[::-1]]))
    if p.is_valid:
        return p
    quads = [make_valid(Polygon([a[i], a[i + 1], b[i + 1], b[i]])) for i in range(len(a) - 1)]
    return unary_union([q for q in quads if q.area > 0]).buffer(1e-9)


def band(c, d, sides=(1,)):
    """All that lies straight in front of the curve, no farther than d: on its left alone,
    or on both sides."""
    t = np.linspace(0, 1, c.steps() + 1)
    p, n = c.at(t), left(c.tangent(t))
    if isinstance(c, Ring):
        if d < c.reach(1):
            return Polygon(p - d * n).difference(Polygon(p + d * n))
    out = []
    for side in sides:
        r = c.reach(side)
        out.append(sweep(p, p + side * (min(d, r) if isinstance(c, Arc) else d) * n))
    return unary_union(out)


def round_end(e, r, top):
    """The part of the disc about an end that hangs together with it on the top."""
    on = disc(e, r).intersection(top)
    p = Point(*e)
    return unary_union([g for g in getattr(on, "geoms", [on]) if g.distance(p) < 1e-6])


def near(items, top):
    """What profiles take off a top, its edges and how far each is drawn in: what lies straight
    in front of an edge on its inner side, and round its ends over the concrete there."""
    parts = [band(c, d) for c, d in items if d > 0]
    for i, (b, d1) in enumerate(items):
        r = max(items[i - 1][1], d1)
        if r and not isinstance(b, Ring):
            parts.append(round_end(b.at(0.0), r, top))
    return unary_union(parts)


def about(curves, d):
    """All that lies nearer to the curves than d."""
    parts = []
    for c in curves:
        parts.append(band(c, d, (1, -1)))
        parts += [disc(c.at(0.0), d), disc(c.at(1.0), d)]
    return unary_union(parts)


def mover(at, deg):
    a = math.radians(deg)
    c, s = math.cos(a), math.sin(a)
    at = np.array(at, float)
    return lambda v: np.array([c * v[0] - s * v[1], s * v[0] + c * v[1]]) + at


def shape_curves(shape):
    kind = shape["kind"]
    w, d = shape.get("width_mm", 0), shape.get("depth_mm", 0)
    if kind == "circle":
        return [Arc([0, 0], w / 2, 0, 2 * math.pi)]
    if kind == "ellipse":
        return [Ring([0, 0], w / 2, d / 2, 0)]
    r = shape.get("corner_radius_mm", 0)
    corner = {"kind": "rounded", "size_mm": r} if r else {}
    if kind == "rectangle":
        pts = [(-w / 2, -d / 2), (w / 2, -d / 2), (w / 2, d / 2), (-w / 2, d / 2)]
        nodes = [{"at_mm": p, "corner": corner} for p in pts]
    elif kind == "D":
        y = shape["bow_mm"] - d / 2
        nodes = [{"at_mm": (-w / 2, y), "corner": corner,
                  "edge": {"curve": "arc", "rise_mm": shape["bow_mm"]}},
                 {"at_mm": (w / 2, y), "corner": corner}]
        if y < d / 2:
            nodes += [{"at_mm": (w / 2, d / 2), "corner": corner},
                      {"at_mm": (-w / 2, d / 2), "corner": corner}]
    else:
        nodes = shape["path"]
    return [c for part, _, _ in chain(nodes) for c in part]


def river_spine(river):
    pts, ws = [], []
    for k in river["nodes"]:
        p = np.array(k["at_mm"], float)
        if pts and np.allclose(p, pts[-1]):
            continue
        pts.append(p)
        ws.append(k["width_mm"])
    pts = np.array(pts)
    s = np.concatenate([[0], np.cumsum(np.linalg.norm(np.diff(pts, axis=0), axis=1))])
    if len(pts) == 2:
        x = lambda t: pts[0] + np.multiply.outer(np.asarray(t) / s[-1], pts[1] - pts[0])
        dx = lambda t: np.broadcast_to(pts[1] - pts[0], np.shape(t) + (2,))
        w = lambda t: ws[0] + (ws[1] - ws[0]) * np.asarray(t) / s[-1]
    else:
        cs = CubicSpline(s, pts, bc_type="natural")
        x, dx, w = cs, cs.derivative(), PchipInterpolator(s, ws)
    return s, x, dx, w


def way_out(a, b, e, top):
    """How far the cross line from a to b must run on in the direction e until none of it is on
    the top."""
    far = 1e5
    on = Polygon([a, b, b + far * e, a + far * e]).intersection(top)
    spans = sorted((lo, hi) for g in getattr(on, "geoms", [on]) if g.area > 1e-9
                   for x in [[float((np.array(q) - a) @ e) for q in g.exterior.coords]]
                   for lo, hi in [(min(x), max(x))])
    end = 0.0
    for lo, hi in spans:
        if lo > end + 1e-9:
            break
        end = max(end, hi)
    return end


def river_plan(river, top):
    s, x, dx, w = river_spine(river)
    t = np.unique(np.concatenate([np.linspace(a, b, 1001) for a, b in zip(s, s[1:])]))
    p, v = x(t), dx(t)
    n = left(v / np.linalg.norm(v, axis=-1, keepdims=True))
    half = w(t)[:, None] / 2
    parts = [sweep(p + half * n, p - half * n)]
    for key, k, sign in (("start", 0, -1), ("end", -1, 1)):
        kind = river.get(key, "round")
        e = v[k] / np.linalg.norm(v[k]) * sign
        h = float(half[k, 0])
        m = left(e)
        if kind == "round":
            a = math.atan2(e[1], e[0]) + np.linspace(-math.pi / 2, math.pi / 2, 3601)
            parts.append(Polygon(p[k] + h * np.stack([np.cos(a), np.sin(a)], -1)))
        elif kind == "open":
            far = way_out(p[k] - h * m, p[k] + h * m, e, top)
            if far:
                parts.append(Polygon([p[k] + h * m, p[k] - h * m, p[k] - h * m + far * e, p[k] + h * m + far * e]))
    return unary_union([q if q.is_valid else make_valid(q) for q in parts])


def region_plan(region):
    outer = fill([c for part, _, _ in chain(region["outer"]) for c in part])
    for i in region.get("islands", []):
        outer = outer.difference(fill([c for part, _, _ in chain(i) for c in part]))
    return outer
