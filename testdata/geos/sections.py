"""Sections of a top by an independent way: shapely (GEOS) over very fine polygons.

Reads a design as the job file has it and gives the plan region of concrete at
any height. Nothing here is shared with the Go code: curves are sampled finely
instead of flattened with their area kept, what a profile takes off is a polygon
between an edge and its parallel with a disc at either end, rivers are built
from scipy's natural spline and PCHIP interpolator, and regions are combined by
GEOS overlay.
"""
import math

import numpy as np
from scipy.interpolate import CubicSpline, PchipInterpolator
from scipy.optimize import fsolve
from shapely.geometry import LineString, Point, Polygon
from shapely.ops import unary_union

FINE = 1500  # steps of one curve: 1e-7 of a top's area is left
DISC = 128  # steps of a quarter circle


def cross(a, b):
    return a[0] * b[1] - a[1] * b[0]


class Edge:
    """A curve over t in [0, 1] with its derivative."""

    def __init__(self, f, df, straight=False):
        self.f, self.df, self.straight = f, df, straight

    def part(self, t0, t1):
        return Edge(lambda t: self.f(t0 + (t1 - t0) * t), lambda t: self.df(t0 + (t1 - t0) * t) * (t1 - t0), self.straight)

    def points(self):
        t = np.array([0.0, 1.0]) if self.straight else np.linspace(0, 1, FINE + 1)
        return np.array([self.f(x) for x in t])

    def normals(self):
        t = np.array([0.0, 1.0]) if self.straight else np.linspace(0, 1, FINE + 1)
        d = np.array([self.df(x) for x in t])
        d = d / np.linalg.norm(d, axis=1)[:, None]
        return np.stack([-d[:, 1], d[:, 0]], axis=1)

    def length(self, t0=0.0, t1=1.0):
        if self.straight:
            return float(np.linalg.norm(self.f(t1) - self.f(t0)))
        x, w = np.polynomial.legendre.leggauss(40)
        total = 0.0
        for k in range(8):
            a, b = t0 + (t1 - t0) * k / 8, t0 + (t1 - t0) * (k + 1) / 8
            t = (a + b) / 2 + (b - a) / 2 * x
            total += (b - a) / 2 * sum(wi * np.linalg.norm(self.df(ti)) for wi, ti in zip(w, t))
        return float(total)


def line(a, b):
    a, b = np.array(a, float), np.array(b, float)
    return Edge(lambda t: a + (b - a) * t, lambda t: b - a, True)


def arc(a, b, rise):
    a, b = np.array(a, float), np.array(b, float)
    d = b - a
    c = np.linalg.norm(d)
    right = np.array([d[1], -d[0]]) / c
    r = (c * c / 4 + rise * rise) / (2 * abs(rise))
    centre = (a + b) / 2 + right * (rise - math.copysign(r, rise))
    start = math.atan2(*(a - centre)[::-1])
    sweep = 4 * math.atan(2 * rise / c)
    return circle_arc(centre, r, start, sweep)


def circle_arc(centre, r, start, sweep):
    centre = np.array(centre, float)
    return Edge(
        lambda t: centre + r * np.array([math.cos(start + t * sweep), math.sin(start + t * sweep)]),
        lambda t: r * sweep * np.array([-math.sin(start + t * sweep), math.cos(start + t * sweep)]),
    )


def cubic(p0, p1, p2, p3):
    p = [np.array(q, float) for q in (p0, p1, p2, p3)]
    return Edge(
        lambda t: (1 - t) ** 3 * p[0] + 3 * (1 - t) ** 2 * t * p[1] + 3 * (1 - t) * t * t * p[2] + t**3 * p[3],
        lambda t: 3 * ((1 - t) ** 2 * (p[1] - p[0]) + 2 * (1 - t) * t * (p[2] - p[1]) + t * t * (p[3] - p[2])),
    )


def edge_of(node, following):
    e = node.get("edge", {})
    kind = e.get("curve", "straight")
    if kind == "arc" and e["rise_mm"] != 0:
        return arc(node["at_mm"], following["at_mm"], e["rise_mm"])
    if kind == "spline":
        return cubic(node["at_mm"], e["c1_mm"], e["c2_mm"], following["at_mm"])
    return line(node["at_mm"], following["at_mm"])


def unit(v):
    return v / np.linalg.norm(v)


def left(v):
    return np.array([-v[1], v[0]])


def fillet(a, b, r):
    u, v = unit(a.df(1.0)), unit(b.df(0.0))
    turn = math.atan2(cross(u, v), float(u @ v))
    d = math.copysign(r, turn)
    reach = r * math.tan(abs(turn) / 2)

    def gap(x):
        s, t = x
        return a.f(s) + d * left(unit(a.df(s))) - b.f(t) - d * left(unit(b.df(t)))

    guess = [1 - reach / np.linalg.norm(a.df(1.0)), reach / np.linalg.norm(b.df(0.0))]
    s, t = fsolve(gap, guess, full_output=True, xtol=1e-14)[0]
    if np.linalg.norm(gap((s, t))) > 1e-9 or not (0 <= s <= 1 and 0 <= t <= 1):
        raise ValueError("no fillet")
    c = a.f(s) + d * left(unit(a.df(s)))
    p, q = a.f(s) - c, b.f(t) - c
    sweep = math.atan2(cross(p, q), float(p @ q))
    return s, t, circle_arc(c, r, math.atan2(p[1], p[0]), sweep)


def at_length(e, s):
    lo, hi = 0.0, 1.0
    for _ in range(60):
        mid = (lo + hi) / 2
        if e.length(0, mid) < s:
            lo = mid
        else:
            hi = mid
    return (lo + hi) / 2


def pieces(nodes):
    """The smooth pieces of a closed chain, each with the index of its node."""
    n = len(nodes)
    edges = [edge_of(nodes[i], nodes[(i + 1) % n]) for i in range(n)]
    first, last, cuts = [0.0] * n, [1.0] * n, [None] * n
    for i, node in enumerate(nodes):
        c = node.get("corner", {})
        if c.get("kind", "square") == "square":
            continue
        before = (i - 1) % n
        if c["kind"] == "rounded":
            last[before], first[i], cuts[i] = fillet(edges[before], edges[i], c["size_mm"])
        else:
            last[before] = at_length(edges[before], edges[before].length() - c["size_mm"])
            first[i] = at_length(edges[i], c["size_mm"])
            cuts[i] = line(edges[before].f(last[before]), edges[i].f(first[i]))
    out = []
    for i in range(n):
        if first[i] > last[i]:
            raise ValueError("corners overlap")
        if cuts[i]:
            out.append((cuts[i].part(0.5, 1), i))
        if last[i] - first[i] > 1e-9:
            out.append((edges[i].part(first[i], last[i]), i))
        if cuts[(i + 1) % n]:
            out.append((cuts[(i + 1) % n].part(0, 0.5), i))
    return out


def polygon(parts):
    pts = np.concatenate([e.points()[:-1] for e in parts])
    p = Polygon(pts)
    if not p.is_valid:
        raise ValueError("chain crosses itself")
    return p


def strip(e, d):
    """What lies within d of the edge on its left, with a disc at either end."""
    p, n = e.points(), e.normals()
    q = p + d * n
    forward = np.einsum("ij,ij->i", np.diff(q, axis=0), np.diff(p, axis=0))
    if (forward > 0).all():
        body = [Polygon(np.concatenate([p, q[::-1]]))]
        if not body[0].is_valid:
            body = None
    else:
        body = None
    if body is None:
        # The parallel turns back on itself: the sum of what each step sweeps.
        k = np.unique(np.linspace(0, len(p) - 1, 401).astype(int))
        quads = []
        for i, j in zip(k, k[1:]):
            a, b = d * n[i], d * n[j]
            if (p[j] + b - p[i] - a) @ (p[j] - p[i]) <= 0:
                a = b = d * left(unit(p[j] - p[i]))
            quads.append(Polygon([p[i], p[j], p[j] + b, p[i] + a]))
        body = [unary_union(quads)]
    return unary_union(body + [Point(p[0]).buffer(d, DISC), Point(p[-1]).buffer(d, DISC)])


def inset(profile, t, z):
    kind, size = profile.get("kind", "square"), profile.get("size_mm", 0)
    if kind in ("square", "rough"):
        return 0.0
    if kind == "full round":
        r, h = t / 2, abs(z - t / 2)
    else:
        r = size if size else (t / 2 if kind == "half round" else 0)
        h = z - (t - r)
    if h <= 0 or r <= 0:
        return 0.0
    if kind == "bevelled":
        return h
    return r - math.sqrt(max(0.0, r * r - h * h))


def shape_edges(s):
    """A shape about its own centre, counter-clockwise."""
    kind = s["kind"]
    w, h, r = s.get("width_mm", 0) / 2, s.get("depth_mm", 0) / 2, s.get("corner_radius_mm", 0)
    if kind == "circle":
        return [circle_arc((0, 0), w, 0, math.pi), circle_arc((0, 0), w, math.pi, math.pi)]
    if kind == "ellipse":
        f = lambda u: np.array([w * math.cos(u), h * math.sin(u)])
        g = lambda u: np.array([-w * math.sin(u), h * math.cos(u)])
        return [Edge(lambda t, k=k: f((k + t) * math.pi / 2), lambda t, k=k: g((k + t) * math.pi / 2) * math.pi / 2) for k in range(4)]
    if kind == "path":
        return [e for e, _ in pieces(s["path"])]
    corner = {"kind": "rounded", "size_mm": r} if r else {"kind": "square"}
    if kind == "rectangle":
        nodes = [{"at_mm": p, "corner": corner} for p in ((w, -h), (w, h), (-w, h), (-w, -h))]
    else:  # D
        bow = s["bow_mm"]
        nodes = [{"at_mm": p, "corner": corner} for p in ((-w, bow - h), (w, bow - h), (w, h), (-w, h))]
        nodes[0]["edge"] = {"curve": "arc", "rise_mm": bow}
    return [e for e, _ in pieces(nodes)]


def grown(parts, d):
    """The parallel body of a closed chain, d to the outside, or the inside."""
    p = polygon(parts)
    if d == 0:
        return p
    if d < 0:
        rest = p.difference(unary_union([strip(e, -d) for e in parts]))
        # Rounding may leave slivers along the edge.
        return max(getattr(rest, "geoms", [rest]), key=lambda g: g.area)
    back = [Edge(lambda t, e=e: e.f(1 - t), lambda t, e=e: -e.df(1 - t), e.straight) for e in parts]
    return unary_union([p] + [strip(e, d) for e in back])


def placed(parts, at, degrees):
    c, s = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
    m, o = np.array([[c, -s], [s, c]]), np.array(at, float)
    return [Edge(lambda t, e=e: m @ e.f(t) + o, lambda t, e=e: m @ e.df(t), e.straight) for e in parts]


def opening(sink):
    """A sink's cut-out as edges, and how much it is grown by its reveal."""
    if sink["mount"] == "vessel":
        r = sink["drain_mm"] / 2
        parts = placed([circle_arc((0, 0), r, 0, math.pi), circle_arc((0, 0), r, math.pi, math.pi)], sink["at_mm"], 0)
        return parts, 0.0, {}
    parts = placed(shape_edges(sink["shape"]), sink["at_mm"], sink.get("rotation_deg", 0))
    by, reveal = 0.0, sink.get("reveal", {})
    if sink["mount"] == "under":
        by = {"flush": 0, "rim shows": 1, "concrete overhangs": -1}[reveal.get("kind", "flush")] * reveal.get("size_mm", 0)
    return parts, by, sink.get("profile", {}) if sink["mount"] == "under" else {}


def river(v, top):
    p = np.array([n["at_mm"] for n in v["nodes"]], float)
    w = [n["width_mm"] for n in v["nodes"]]
    s = np.concatenate([[0], np.cumsum(np.linalg.norm(np.diff(p, axis=0), axis=1))])
    f = CubicSpline(s, p, bc_type="natural") if len(s) > 2 else CubicSpline(s, p, bc_type=((2, [0, 0]), (2, [0, 0])))
    g = PchipInterpolator(s, w)
    x = np.concatenate([np.linspace(a, b, FINE + 1)[:-1] for a, b in zip(s, s[1:])] + [[s[-1]]])
    mid, d, half = f(x), f(x, 1), g(x)[:, None] / 2
    d = d / np.linalg.norm(d, axis=1)[:, None]
    n = np.stack([-d[:, 1], d[:, 0]], axis=1)
    lt, rt = mid + half * n, mid - half * n
    parts = []
    for k in range(len(s) - 1):  # span by span: a river may cross itself
        i, j = k * FINE, (k + 1) * FINE + 1
        parts.append(Polygon(np.concatenate([rt[i:j], lt[i:j][::-1]])))
        if not parts[-1].is_valid:
            raise ValueError("a river folds")
    for end, c, a, b, u in ((v.get("start", "round"), mid[0], lt[0], rt[0], -d[0]), (v.get("end", "round"), mid[-1], rt[-1], lt[-1], d[-1])):
        if end == "round":
            r = np.linalg.norm(a - c)
            from_ = math.atan2(*(a - c)[::-1])
            th = from_ + np.linspace(0, math.pi, 2 * FINE + 1)
            parts.append(Polygon(c + r * np.stack([np.cos(th), np.sin(th)], axis=1)))
        elif end == "open":
            way = 0.0
            for q in (a, b):
                if top.contains(Point(q)):
                    ray = LineString([q, q + 1e5 * u]).intersection(top.exterior)
                    hits = [ray] if ray.geom_type == "Point" else list(ray.geoms)
                    way = max(way, min(np.linalg.norm(np.array(h.coords[0]) - q) for h in hits))
            if way:
                way += 1
                if LineString([a + way * u, b + way * u]).intersects(top):
                    raise ValueError("a corner stands between the banks")
                parts.append(Polygon([a, a + way * u, b + way * u, b]))
    return unary_union(parts), sum_length(f, s)


def sum_length(f, s):
    x, w = np.polynomial.legendre.leggauss(40)
    total = 0.0
    for a, b in zip(s, s[1:]):
        t = (a + b) / 2 + (b - a) / 2 * x
        total += (b - a) / 2 * float(w @ np.linalg.norm(f(t, 1), axis=1))
    return total


def region(g):
    p = polygon([e for e, _ in pieces(g["outer"])])
    for island in g.get("islands", []):
        p = p.difference(polygon([e for e, _ in pieces(island)]))
    return p


def flat(g):
    """What has area of a result: overlays may leave points and lines beside it."""
    if g.geom_type == "GeometryCollection":
        return unary_union([p for p in g.geoms if p.area > 0])
    return g


class Top:
    """A design, ready to be cut."""

    def __init__(self, d):
        self.d, self.t = d, d["thickness_mm"]
        nodes = d["outline"]["nodes"]
        self.sides = [(e, nodes[i].get("edge", {}).get("profile", {})) for e, i in pieces(nodes)]
        self.plan = polygon([e for e, _ in self.sides])
        self.openings = []
        for k in d.get("sinks", []):
            parts, by, profile = opening(k)
            self.openings.append((parts, by, profile, grown(parts, by)))
        for h in d.get("holes", []):
            r = h["diameter_mm"] / 2
            parts = placed([circle_arc((0, 0), r, 0, math.pi), circle_arc((0, 0), r, math.pi, math.pi)], h["at_mm"], 0)
            self.openings.append((parts, 0.0, {}, polygon(parts)))
        self.channels, self.lengths = [], []
        for c in d.get("channels", []):
            parts, length = [region(g) for g in c.get("regions", [])], 0.0
            for v in c.get("rivers", []):
                p, l = river(v, self.plan)
                parts.append(p)
                length += l
            self.channels.append((c["depth_mm"], unary_union(parts), c.get("fill", {}).get("resin", False)))
            self.lengths.append(length)
        self.beds = [region(b["region"]) for b in d.get("glass_beds", [])]

    def drawn_in(self, z):
        """The outline drawn in, and all openings grown, at the height z."""
        strips = [strip(e, inset(p, self.t, z)) for e, p in self.sides if inset(p, self.t, z) > 0]
        whole = self.plan.difference(unary_union(strips)) if strips else self.plan
        gone = []
        for parts, by, profile, cut in self.openings:
            x = inset(profile, self.t, z)
            if x == 0:
                gone.append(cut)
            elif by < 0:  # from the cut-out's own corners, not from the bowl's
                gone.append(cut.buffer(x, DISC))
            else:
                gone.append(grown(parts, by + x))
        return whole, unary_union(gone)

    def section(self, z):
        """Concrete at z, and what each channel holds there, the first one first."""
        whole, gone = self.drawn_in(z)
        left = flat(whole.difference(gone))
        held = []
        for depth, c, _ in self.channels:
            if depth > self.t - z + 1e-12:
                held.append(flat(left.intersection(c)))
                left = flat(left.difference(c))
            else:
                held.append(Polygon())
        return left, held
