"""The same tops as boundary solids: gmsh 4.8.4 with the OpenCascade kernel 7.6.3. The blank is
the outline extruded; each profile is a tool, its cross-section extruded along a line, turned
about the centre of an arc, piped along a span, and turned about the corners where distance
asks for it; openings and channels are extruded and cut."""
import math

import gmsh
import numpy as np

from plan import Arc, Line, Ring, Span, chain, left, mover, shape_curves

occ = gmsh.model.occ


class Cannot(Exception):
    pass


def halves(c):
    if isinstance(c, Arc):
        k = max(1, math.ceil(abs(c.w) / 3.0))
        return [c.part(i / k, (i + 1) / k) for i in range(k)]
    return [c]


def wire(curves, z):
    """The edges of a closed chain at height z."""
    cs = [h for c in curves for h in halves(c)]
    if len(cs) == 1 and isinstance(cs[0], Ring):
        r = cs[0]
        a, b, t = (r.rx, r.ry, r.turn) if r.rx >= r.ry else (r.ry, r.rx, r.turn + math.pi / 2)
        e = occ.addEllipse(*r.c, z, a, b)
        occ.rotate([(1, e)], *r.c, z, 0, 0, 1, t)
        return [e]
    pts = [occ.addPoint(*c.at(0.0), z) for c in cs]
    out = []
    for i, c in enumerate(cs):
        p, q = pts[i], pts[(i + 1) % len(cs)]
        if isinstance(c, Line):
            out.append(occ.addLine(p, q))
        elif isinstance(c, Arc):
            out.append(occ.addCircleArc(p, occ.addPoint(*c.c, z), q))
        else:
            out.append(occ.addBezier([p, occ.addPoint(*c.p[1], z), occ.addPoint(*c.p[2], z), q]))
    return out


def plane(curves, z=0.0, holes=()):
    return occ.addPlaneSurface([occ.addCurveLoop(wire(c, z)) for c in (curves, *holes)])


def prism(curves, z0, z1, holes=()):
    return [e for e in occ.extrude([(2, plane(curves, z0, holes))], 0, 0, z1 - z0) if e[0] == 3]


def cut(objs, tools):
    """One tool after another: the kernel is surest so."""
    for t in tools:
        objs, _ = occ.cut(objs, [t])
        if not objs:
            return objs
    return objs


def sections_of(profile, T):
    """Cross-sections of the tool in (inset, z): lists of ('line'|'arc', ...) made by make()."""
    kind, r = profile.get("kind", "square"), profile.get("size_mm", 0)
    if kind == "half round" and not r:
        r = T / 2
    if kind in ("square", "rough"):
        return []
    if kind == "full round":
        return [("arc", T / 2, T, 1), ("arc", T / 2, 0, -1)]
    return [("line" if kind == "bevelled" else "arc", r, T, 1)]


OUT = 1.0  # how far a tool reaches beyond side and face


def section(spec, place):
    """The tool's cross-section as a face; place(inset, z) is the point in space."""
    form, r, z, up = spec
    p = lambda a, b: occ.addPoint(*place(a, b))
    s0, s1 = p(0, z - up * r), p(r, z)
    t1, t0, t2 = p(r, z + up * OUT), p(-OUT, z + up * OUT), p(-OUT, z - up * r)
    curve = occ.addLine(s0, s1) if form == "line" else occ.addCircleArc(s0, p(r, z - up * r), s1)
    loop = [curve, occ.addLine(s1, t1), occ.addLine(t1, t0), occ.addLine(t0, t2), occ.addLine(t2, s0)]
    return occ.addPlaneSurface([occ.addCurveLoop(loop)])


def tool(c, spec, side):
    """The tool along a curve; its inset grows to a side, +1 left."""
    p, t = c.at(0.0), np.array(c.tangent(0.0))
    n = side * left(t)
    r = spec[1]
    f = section(spec, lambda a, z: (*(p + a * n), z))
    if isinstance(c, Line):
        d = c.q - c.p
        return [e for e in occ.extrude([(2, f)], *d, 0) if e[0] == 3]
    if isinstance(c, Arc):
        if side * c.w > 0 and r > c.r * (1 - 1e-9):
            raise Cannot("a tool passes the centre of its arc")
        return [e for e in occ.revolve([(2, f)], *c.c, 0, 0, 0, 1, c.w) if e[0] == 3]
    if side > 0 and r > c.reach(1) or side < 0 and r > c.reach(-1):
        raise Cannot("a tool passes the centre of a bend")
    spine = occ.addWire([occ.addBezier([occ.addPoint(*q, 0) for q in c.p])])
    return [e for e in occ.addPipe([(2, f)], spine) if e[0] == 3]


def pin(c, spec):
    """The tool turned about a corner."""
    return [e for k in (0, 1) for e in occ.revolve([(2, section_half(spec, c, 1 - 2 * k))], *c, 0, 0, 0, 1, math.pi)
            if e[0] == 3]


def section_half(spec, c, sx):
    form, r, z, up = spec
    p = lambda a, b: occ.addPoint(c[0] + sx * a, c[1], b)
    s0, s1 = p(0, z - up * r), p(r, z)
    t1, t0 = p(r, z + up * OUT), p(0, z + up * OUT)
    curve = occ.addLine(s0, s1) if form == "line" else occ.addCircleArc(s0, p(r, z - up * r), s1)
    loop = [curve, occ.addLine(s1, t1), occ.addLine(t1, t0), occ.addLine(t0, s0)]
    return occ.addPlaneSurface([occ.addCurveLoop(loop)])


def turn(a, b):
    u, v = a.tangent(1.0), b.tangent(0.0)
    return math.atan2(u[0] * v[1] - u[1] * v[0], float(np.dot(u, v)))


def grown(curves, g):
    """The parallel body of a smooth chain, or of one with sharp outer corners, as a chain."""
    if not g:
        return curves
    out = []
    for i, c in enumerate(curves):
        if isinstance(c, Line):
            n = -left(np.array(c.tangent(0.0)))
            out.append(Line(c.p + g * n, c.q + g * n))
        elif isinstance(c, Arc):
            r = c.r + g * math.copysign(1, c.w)
            if r <= 1e-9:
                raise Cannot("an arc shrinks away")
            out.append(Arc(c.c, r, c.a, c.w))
        else:
            raise Cannot("the parallel of a span or an ellipse is neither")
        if len(curves) == 1:
            continue
        b = curves[(i + 1) % len(curves)]
        t = turn(c, b)
        if t > 1e-7:
            if g < 0:
                raise Cannot("a sharp corner shrinks")
            u = -left(np.array(c.tangent(1.0)))
            out.append(Arc(c.at(1.0), g, math.atan2(u[1], u[0]), t))
        elif t < -1e-7:
            raise Cannot("an inner corner grows")
    return out


def tools_along(items, T, side):
    """items: curves with their profile, a closed chain; side to which the inset grows."""
    out = []
    n = len(items)
    for i, (c, p) in enumerate(items):
        for spec in sections_of(p, T):
            if spec[1] > T:
                raise Cannot("a profile larger than the thickness")
            out += [x for h in halves(c) for x in tool(h, spec, side)]
        if n == 1:
            continue
        b, q = items[(i + 1) % n]
        t = side * turn(c, b)
        if abs(t) < 1e-7:
            if sections_of(p, T) != sections_of(q, T):  # a step: distance takes a round end
                for spec in sections_of(p, T) + sections_of(q, T):
                    out += pin(c.at(1.0), spec)
            continue
        same = sections_of(p, T) == sections_of(q, T)
        if t < 0 or not same and t < math.pi / 2 - 1e-7:
            for spec in sections_of(p, T) + ([] if same else sections_of(q, T)):
                out += pin(c.at(1.0), spec)
    return out


def total(objs):
    v, m = 0.0, np.zeros(3)
    for d, t in objs:
        w = occ.getMass(d, t)
        v, m = v + w, m + w * np.array(occ.getCenterOfMass(d, t))
    return v, m


def measure(d, tops_holes):
    """tops_holes: centre and radius of every round hole."""
    gmsh.initialize()
    gmsh.option.setNumber("General.Terminal", 0)
    try:
        T = d["thickness_mm"]
        edges = chain(d["outline"]["nodes"])
        curves = [c for part, _, _ in edges for c in part]
        solid = prism(curves, 0, T)
        occ.synchronize()
        plan_area = total([(2, plane(curves))])[0]
        length = sum(occ.getMass(1, e) for e in wire(curves, 0))
        solid = cut(solid, tools_along([(c, p) for part, p, _ in edges for c in part], T, 1))
        wells = []
        for s in d.get("sinks", []):
            if s["mount"] == "vessel":
                continue
            m = mover(s["at_mm"], s.get("rotation_deg", 0))
            cs = [c.moved(m) for c in shape_curves(s["shape"])]
            p = {}
            if s["mount"] == "under":
                rv = s.get("reveal", {})
                g = {"rim shows": 1, "concrete overhangs": -1}.get(rv.get("kind"), 0) * rv.get("size_mm", 0)
                cs, p = grown(cs, g), s.get("profile", {})
            wells.append((cs, p))
        wells += [([Arc(c, r, 0, 2 * math.pi)], {}) for c, r in tops_holes]
        net = [(2, plane(curves))]
        rims = []
        for cs, p in wells:
            solid = cut(solid, prism(cs, -1, T + 1))
            if sections_of(p, T):
                solid = cut(solid, tools_along([(c, p) for c in cs], T, -1))
            net = cut(net, [(2, plane(cs))])
            rims.append(cs)
        net_area = total(net)[0] if wells else plan_area
        out = {"plan_area_mm2": plan_area, "net_area_mm2": net_area, "outline_perimeter_mm": length}
        # the rim of the net region less the outline's is the cut-outs' where nothing straddles
        if wells:
            rim = 0.0
            for f in net:
                for e in gmsh_boundary(f):
                    if not on_outline(e, curves):
                        rim += occ.getMass(*e)
            out["cutout_perimeter_mm"] = rim
        else:
            out["cutout_perimeter_mm"] = 0.0
        resin = 0.0
        for ch in d.get("channels", []):
            z = T - ch["depth_mm"]
            tools = []
            for r in ch.get("regions", []):
                holes = [[c for part, _, _ in chain(i) for c in part] for i in r.get("islands", [])]
                body = prism([c for part, _, _ in chain(r["outer"]) for c in part], z, T + 1)
                for h in holes:
                    body = cut(body, prism(h, z - 1, T + 2))
                tools += body
            for r in ch.get("rivers", []):
                k = r["nodes"]
                if len(k) > 2:
                    raise Cannot("a river's bank")
                if len(k) == 2:
                    a, b = np.array(k[0]["at_mm"], float), np.array(k[1]["at_mm"], float)
                    e = (b - a) / np.linalg.norm(b - a)
                    n, h0, h1 = left(e), k[0]["width_mm"] / 2, k[1]["width_mm"] / 2
                    tools += prism([Line(a - h0 * n, b - h1 * n), Line(b - h1 * n, b + h1 * n),
                                    Line(b + h1 * n, a + h0 * n), Line(a + h0 * n, a - h0 * n)], z, T + 1)
                    for at, h, how in ((a, h0, r.get("start", "round")), (b, h1, r.get("end", "round"))):
                        if how == "round":
                            tools += prism([Arc(at, h, 0, 2 * math.pi)], z, T + 1)
                        elif how == "open":
                            raise Cannot("an open end")
            if len(tools) > 1:
                tools, _ = occ.fuse(tools[:1], tools[1:])
            # what stood there: the part within, then gone
            own, _ = occ.intersect(occ.copy(solid), occ.copy(tools))
            if ch.get("fill", {}).get("resin"):
                resin += total(own)[0]
            solid = cut(solid, tools)
        v, m = total(solid)
        out.update(concrete_volume_mm3=v, resin_volume_mm3=resin)
        if v:
            out["centre_of_gravity_mm"] = list(m / v)
        return out
    finally:
        gmsh.finalize()


def gmsh_boundary(f):
    occ.synchronize()
    return [(1, abs(t)) for _, t in gmsh.model.getBoundary([f], oriented=False)]


def on_outline(e, curves):
    """Whether the middle of an edge lies on the outline."""
    lo, hi = gmsh.model.getParametrizationBounds(*e)
    p = np.array(gmsh.model.getValue(*e, [(lo[0] + hi[0]) / 2])[:2])
    for c in curves:
        if isinstance(c, Line):
            v = c.q - c.p
            t = min(1, max(0, float((p - c.p) @ v) / float(v @ v)))
            if np.linalg.norm(c.p + t * v - p) < 1e-6:
                return True
        elif isinstance(c, Arc):
            a = (math.atan2(*(p - c.c)[::-1]) - c.a) * math.copysign(1, c.w) % (2 * math.pi)
            if abs(np.linalg.norm(p - c.c) - c.r) < 1e-6 and a <= abs(c.w) + 1e-9:
                return True
        else:
            t = np.linspace(0, 1, 20001)
            if np.min(np.linalg.norm(c.at(t) - p, axis=1)) < 1e-2:
                return True
    return False
