"""The tops: invented, of every kind."""


def n(x, y, corner=None, **edge):
    o = {"at_mm": [x, y]}
    if corner:
        o["corner"] = {"kind": corner[0], "size_mm": corner[1]}
    if edge:
        e = {}
        if "rise" in edge:
            e.update(curve="arc", rise_mm=edge["rise"])
        if "c" in edge:
            e.update(curve="spline", c1_mm=list(edge["c"][0]), c2_mm=list(edge["c"][1]))
        if edge.get("wall"):
            e["side"] = "wall"
        if "p" in edge:
            e["profile"] = prof(edge["p"])
        o["edge"] = e
    return o


def prof(p):
    if isinstance(p, str):
        return {"kind": p}
    return {"kind": p[0], "size_mm": p[1]}


def rect(w, h, ps=(None,) * 4, corners=(None,) * 4):
    pts = [(0, 0), (w, 0), (w, h), (0, h)]
    return [n(*q, corner=c, **({"p": p} if p else {})) for q, p, c in zip(pts, ps, corners)]


def ring(*pts):
    return [{"at_mm": list(p)} for p in pts]


def circle(cx, cy, r, **e):
    """A circle of four arcs."""
    s = r * (1 - 2**-0.5)
    return [n(cx + r, cy, rise=s, **e), n(cx, cy + r, rise=s, **e), n(cx - r, cy, rise=s, **e),
            n(cx, cy - r, rise=s, **e)]


def circle2(cx, cy, r, **e):
    """A circle of two half circles."""
    return [n(cx - r, cy, rise=r, **e), n(cx + r, cy, rise=r, **e)]


TOPS = {}


def top(name, T, nodes, **more):
    d = {"thickness_mm": T, "outline": {"nodes": nodes}}
    d.update({k: v for k, v in more.items() if k != "units"})
    d["finish"] = {"colour": "#b0a899", "exposure": "cream", "polish": 2, "grind_mm": 2}
    TOPS[name] = {"format": "castwright-job", "version": 1, "units": more.get("units", "metric"),
                  "materials": {"mix": {"name": "mortar", "bag_mass_kg": 25, "bag_yield_l": 12,
                                        "cured_density_kg_per_m3": 2400}},
                  "options": [{"name": "A", "design": d}]}


def under(i, x, y, shape, deg=0, reveal=None, p=None):
    s = {"id": i, "at_mm": [x, y], "shape": shape, "mount": "under"}
    if deg:
        s["rotation_deg"] = deg
    if reveal:
        s["reveal"] = {"kind": reveal[0], "size_mm": reveal[1]}
    if p:
        s["profile"] = prof(p)
    return s


def hole(i, x, y, dia, kind="other"):
    return {"id": i, "kind": kind, "at_mm": [x, y], "diameter_mm": dia}


RESIN = {"resin": True, "colour": "#2f6f8f"}
E40, R10, B8 = ("eased", 4), ("rounded", 10), ("bevelled", 8)

# --- plain outlines and profiles
top("rect-plain", 40, rect(1200, 550))
top("rect-eased", 40, rect(1200, 550, [("eased", 3)] * 4))
top("rect-rounded-corners", 50, rect(1200, 550, [R10] * 4, [("rounded", 30)] * 4))
top("rect-bevel-chamfers", 50, rect(1000, 600, [B8] * 4, [("chamfered", 40)] * 4))
top("rect-mixed", 45, rect(1100, 560, [("rounded", 15), ("bevelled", 6), "square", ("eased", 2)]))
top("rect-mixed-round-corners", 45, rect(1100, 560, [("rounded", 15), ("bevelled", 6), ("half round", 0), ("eased", 2)],
                                         [("rounded", 25), ("rounded", 60), ("rounded", 12), ("rounded", 40)]))
top("rect-full-round", 38, rect(900, 500, ["full round"] * 4, [("rounded", 50)] * 4))
top("rect-full-round-front", 38.1, rect(914.4, 558.8, ["full round", "square", "square", ("half round", 0)]), units="imperial")
top("rect-rough", 60, rect(800, 400, [("rough", 12), R10, "square", R10]))
top("rect-size-over-T", 20, rect(700, 400, [("rounded", 30), ("bevelled", 26), "square", "square"]))
top("thin", 12, rect(600, 300, [("half round", 0)] * 4, [("rounded", 8)] * 4))
top("thick", 150, rect(2400, 900, [("rounded", 60)] * 4, [("rounded", 100)] * 4))
top("triangle-obtuse", 40, [n(0, 0, p=R10), n(900, 0, p=R10), n(300, 350, p=R10)])
top("hexagon-two-profiles", 40, [n(300, 0, p=("rounded", 14)), n(700, 0, p=("bevelled", 5)), n(900, 350, p=("rounded", 14)),
                                 n(700, 700, p=("eased", 3)), n(300, 700, p="square"), n(100, 350, p=("rounded", 6))])
# --- re-entrant
L = lambda ps, cs: [n(*q, corner=c, **({"p": p} if p else {})) for q, p, c in
                    zip([(0, 0), (1600, 0), (1600, 600), (600, 600), (600, 1400), (0, 1400)], ps, cs)]
top("L-rounded", 40, L([("rounded", 12)] * 6, [None] * 6))
top("L-mixed", 40, L([("rounded", 12), "square", ("bevelled", 20), ("eased", 3), "square", "square"], [None] * 6))
top("L-corners", 40, L([R10] * 6, [("rounded", 40), ("rounded", 40), ("chamfered", 50), ("rounded", 80), ("rounded", 5), None]))
top("L-inner-chamfer", 40, L([("rounded", 16)] * 6, [None, None, None, ("chamfered", 60), None, None]))
top("U-shape", 45, [n(0, 0, p=R10), n(2000, 0), n(2000, 1300, p=B8), n(1400, 1300, p=R10, corner=("rounded", 20)),
                    n(1400, 600, p=R10, corner=("rounded", 60)), n(600, 600, p=R10, corner=("chamfered", 60)),
                    n(600, 1300, p=("bevelled", 4)), n(0, 1300)])
top("notch", 40, [n(0, 0, p=R10), n(1000, 0, p=R10), n(1000, 500), n(620, 500), n(620, 420, p=R10), n(500, 420), n(500, 500), n(0, 500)])
# --- arcs
top("round-two-arcs", 40, circle2(400, 400, 400, p=("rounded", 12)))
top("round-four-arcs-full-round", 40, circle(0, 0, 350, p="full round"))
top("bowed-front", 50, [n(0, 0, rise=120, p=("rounded", 20)), n(1400, 0, p=B8), n(1400, 550, wall=True), n(0, 550, p=B8)])
top("bowed-front-round-corners", 50, [n(0, 0, rise=120, p=("rounded", 20), corner=("rounded", 70)), n(1400, 0, p=B8, corner=("rounded", 70)),
                                      n(1400, 550, wall=True), n(0, 550, p=B8, corner=("chamfered", 30))])
top("concave-front", 50, [n(0, 0, rise=-100, p=("rounded", 18)), n(1300, 0, p=("rounded", 18)), n(1300, 600, p="square"), n(0, 600, p=("eased", 5))])
top("concave-corners", 40, [n(200, 0, p=R10), n(1000, 0, rise=-60, p=R10), n(1200, 200, p=R10), n(1200, 600, rise=-60, p=B8),
                            n(1000, 800, p=R10), n(200, 800, rise=-60, p="square"), n(0, 600, p=R10), n(0, 200, rise=-82.842712, p=("rounded", 25))])
top("concave-arc-small", 40, [n(0, 0, p=R10), n(500, 0, rise=-12, p=("rounded", 15)), n(524, 0, p=R10), n(1000, 0, p=R10), n(1000, 500, p=R10), n(0, 500, p=R10)])
top("large-arc", 40, [n(-200, 0, p=R10), n(-100, 0, rise=320, p=("rounded", 15)), n(100, 0, p=R10), n(200, 0, p=R10), n(200, 300, p=R10), n(-200, 300, p=R10)])
top("S-edge-arcs", 45, [n(0, 0, rise=60, p=("rounded", 14)), n(600, 0, rise=-60, p=("rounded", 14)), n(1200, 0, p=("rounded", 14)),
                        n(1200, 600, rise=40, p=("bevelled", 9)), n(0, 600, p=("rounded", 14))])
top("arc-arc-corners", 40, [n(0, 0, rise=90, p=R10, corner=("rounded", 40)), n(800, 0, rise=-50, p=R10, corner=("rounded", 30)),
                            n(900, 500, rise=70, p=("bevelled", 10), corner=("chamfered", 50)), n(50, 550, rise=30, p="square", corner=("rounded", 60))])
# --- splines
top("spline-kidney", 40, [n(0, 300, c=((0, 0), (300, -60)), p=R10), n(600, 80, c=((900, 220), (1300, -150)), p=R10),
                          n(1400, 300, c=((1500, 750), (900, 700)), p=R10), n(700, 600, c=((500, 500), (0, 600)), p=R10)])
top("spline-front-straight-back", 45, [n(0, 0, c=((400, -200), (900, 250)), p=("rounded", 15), corner=("rounded", 50)), n(1300, 0, p=("rounded", 15), corner=("rounded", 35)),
                                       n(1300, 600, corner=("chamfered", 30)), n(0, 600, p=("bevelled", 7), corner=("chamfered", 45))])
top("spline-arc-corners", 40, [n(0, 0, c=((300, -150), (600, -150)), p=("bevelled", 12), corner=("rounded", 45)),
                               n(900, 0, rise=80, p=R10, corner=("rounded", 60)), n(900, 600, c=((700, 720), (350, 420)), p=("rounded", 20), corner=("chamfered", 40)),
                               n(0, 550, rise=-40, p=R10, corner=("rounded", 30))])
# --- sinks
top("sink-under-rect", 40, rect(1200, 560, [("eased", 3), None, None, None]), sinks=[under("s", 600, 270, {"kind": "rectangle", "width_mm": 460, "depth_mm": 330, "corner_radius_mm": 40}, p=("eased", 3))])
top("sink-rect-sharp-rim", 40, rect(1200, 560), sinks=[under("s", 600, 270, {"kind": "rectangle", "width_mm": 460, "depth_mm": 330}, deg=12.5, reveal=("rim shows", 8), p=("rounded", 6))])
top("sink-rect-overhang", 40, rect(1200, 560), sinks=[under("s", 600, 270, {"kind": "rectangle", "width_mm": 460, "depth_mm": 330, "corner_radius_mm": 25}, deg=-30, reveal=("concrete overhangs", 6), p=("rounded", 5))])
top("sink-rect-sharp-overhang", 40, rect(1200, 560), sinks=[under("s", 600, 270, {"kind": "rectangle", "width_mm": 460, "depth_mm": 330, "corner_radius_mm": 4}, reveal=("concrete overhangs", 6), p=("bevelled", 5))])
top("sink-ellipse-over", 40, rect(1200, 560, [R10] * 4), sinks=[{"id": "s", "at_mm": [500, 280], "rotation_deg": 25, "shape": {"kind": "ellipse", "width_mm": 520, "depth_mm": 380}, "mount": "over", "rim_mm": 25}])
top("sink-ellipse-under", 40, rect(1200, 560, [R10] * 4), sinks=[under("s", 500, 280, {"kind": "ellipse", "width_mm": 520, "depth_mm": 380}, deg=25, reveal=("rim shows", 10), p=("rounded", 8)),
                                                               under("t", 980, 280, {"kind": "ellipse", "width_mm": 200, "depth_mm": 300}, reveal=("concrete overhangs", 10), p=("eased", 3))])
top("sink-circle", 50, rect(1100, 600, [B8] * 4), sinks=[under("s", 550, 300, {"kind": "circle", "width_mm": 400}, reveal=("concrete overhangs", 5), p=("half round", 0))])
top("sink-D", 40, rect(1200, 600), sinks=[under("s", 600, 300, {"kind": "D", "width_mm": 480, "depth_mm": 380, "bow_mm": 90, "corner_radius_mm": 30}, deg=8, reveal=("rim shows", 5), p=("eased", 4))])
top("sink-D-sharp-half", 40, rect(1200, 600), sinks=[{"id": "s", "at_mm": [600, 300], "shape": {"kind": "D", "width_mm": 400, "depth_mm": 380, "bow_mm": 200, "corner_radius_mm": 0}, "mount": "over"}])
top("sink-path", 40, rect(1300, 700), sinks=[under("s", 650, 350, {"kind": "path", "path": [
    n(-250, -150, rise=40, corner=("rounded", 30)), n(250, -150, corner=("chamfered", 25)), n(250, 160, corner=("rounded", 20)), n(60, 160, c=((40, 60), (-40, 60))), n(-60, 160), n(-250, 160, corner=("rounded", 50))]}, deg=15, reveal=("rim shows", 7), p=("eased", 3))])
top("sink-vessel-taps", 40, rect(1200, 560, [("eased", 3)] * 4), sinks=[{"id": "v", "at_mm": [400, 280], "rotation_deg": 10, "shape": {"kind": "circle", "width_mm": 400}, "mount": "vessel", "drain_mm": 45}],
    taps=[{"id": "t", "pattern": "three at 8 in", "diameter_mm": 35, "sink": "v", "set_back_mm": 60, "offset_mm": 15},
          {"id": "u", "pattern": "three at 4 in", "diameter_mm": 32, "at_mm": [900, 400], "rotation_deg": 33},
          {"id": "w", "pattern": "own", "diameter_mm": 28, "at_mm": [900, 150], "rotation_deg": -20, "holes_mm": [[0, 0], [20, 10], [-60, 5]]}])
top("sink-near-rounded-edge", 50, rect(1000, 500, [("rounded", 30)] * 4, [("rounded", 60)] * 4), sinks=[under("s", 500, 200, {"kind": "rectangle", "width_mm": 500, "depth_mm": 330, "corner_radius_mm": 30}, p=("rounded", 20))])
top("sink-over-edge", 40, rect(1000, 500, [R10] * 4), sinks=[under("s", 500, 20, {"kind": "circle", "width_mm": 300}, p=("eased", 5))])
top("two-sinks-overlap", 40, rect(1600, 600), sinks=[under("a", 600, 300, {"kind": "circle", "width_mm": 400}, p=("eased", 6)), under("b", 850, 320, {"kind": "rectangle", "width_mm": 400, "depth_mm": 300, "corner_radius_mm": 20}, p=("rounded", 10))])
# --- holes
top("holes-overlap-straddle", 40, rect(1000, 500, [R10] * 4), holes=[hole("a", 300, 250, 60), hole("b", 340, 260, 50), hole("c", 1000, 250, 80), hole("d", 600, 5, 40), hole("e", 995, 497, 30), hole("f", 1500, 250, 100), hole("g", 300, 250, 20)])
# --- channels
top("region-channel", 40, rect(1200, 600, [R10] * 4), channels=[{"id": "c", "depth_mm": 8, "fill": RESIN, "regions": [
    {"outer": [n(1000, 500, c=((800, 560), (400, 380))), n(200, 450, corner=("chamfered", 60)), n(200, 100, rise=30), n(1000, 100, corner=("rounded", 50))],
     "islands": [ring((400, 200), (500, 200), (500, 300), (400, 300)), circle2(750, 270, 60)]}]}])
top("region-through-rounded-edge", 50, rect(1200, 600, [("rounded", 25), None, ("bevelled", 12), ("half round", 0)]), channels=[{"id": "c", "depth_mm": 10, "fill": RESIN, "regions": [
    {"outer": ring((-50, 150), (1300, 250), (1300, 330), (-50, 300))}, {"outer": ring((500, -40), (700, -40), (650, 640), (560, 640))}]}])
top("channels-crossing", 50, rect(1200, 600), channels=[
    {"id": "a", "depth_mm": 6, "fill": RESIN, "regions": [{"outer": ring((100, 200), (1100, 200), (1100, 300), (100, 300))}]},
    {"id": "b", "depth_mm": 12, "fill": {}, "regions": [{"outer": ring((300, 50), (420, 50), (420, 550), (300, 550))}]},
    {"id": "c", "depth_mm": 9, "fill": RESIN, "regions": [{"outer": ring((700, 50), (820, 50), (820, 550), (700, 550))}]}])
top("river-straight", 40, rect(1200, 600, [R10] * 4), channels=[{"id": "c", "depth_mm": 10, "fill": RESIN, "rivers": [
    {"nodes": [{"at_mm": [200, 200], "width_mm": 60}, {"at_mm": [900, 400], "width_mm": 120}], "start": "round", "end": "flat"}]}])


def river(pts, start="round", end="round"):
    return {"nodes": [{"at_mm": [x, y], "width_mm": w} for x, y, w in pts], "start": start, "end": end}


top("river-curved", 40, rect(1600, 600, [R10] * 4), channels=[{"id": "c", "depth_mm": 10, "fill": RESIN, "rivers": [
    river([(150, 300, 50), (500, 180, 110), (850, 380, 40), (1100, 420, 40), (1450, 250, 90)], "round", "flat")]}])
top("river-open-branch", 40, rect(1600, 600, [("rounded", 15)] * 4), channels=[{"id": "c", "depth_mm": 12, "fill": RESIN, "rivers": [
    river([(40, 350, 80), (500, 220, 120), (1000, 360, 60), (1570, 240, 100)], "open", "open"), river([(520, 230, 40), (700, 450, 60), (720, 585, 70)], "flat", "open")]}])
top("river-tight", 40, rect(1200, 600), channels=[{"id": "c", "depth_mm": 10, "fill": RESIN, "rivers": [
    river([(200, 100, 150), (400, 130, 150), (430, 300, 180), (250, 420, 120), (150, 300, 60)])]}])
top("river-loop", 40, rect(1200, 700), channels=[{"id": "c", "depth_mm": 10, "fill": RESIN, "rivers": [
    river([(100, 350, 40), (600, 200, 60), (900, 400, 50), (600, 600, 40), (400, 350, 60), (500, 60, 30)], "flat", "round")]}])
top("river-sink-hole-island", 45, rect(1800, 650, [("rounded", 15)] * 4, [("rounded", 30)] * 4),
    sinks=[under("s", 1100, 330, {"kind": "rectangle", "width_mm": 480, "depth_mm": 340, "corner_radius_mm": 60}, p=("eased", 5))],
    holes=[hole("h", 480, 300, 45)],
    channels=[{"id": "c", "depth_mm": 9, "fill": RESIN, "rivers": [river([(20, 250, 100), (450, 310, 140), (900, 200, 60), (1770, 150, 90)], "open", "open")],
               "regions": [{"outer": circle2(450, 310, 160), "islands": [circle2(420, 340, 40)]}]},
              {"id": "e", "depth_mm": 5, "rivers": [river([(300, 60, 30), (350, 600, 30)], "flat", "flat")]}],
    glass_beds=[{"id": "g", "region": {"outer": circle2(1100, 330, 300)}, "grain_mm": 6, "coverage_percent": 60, "depth_mm": 6, "colour": "#44aa88"},
                {"id": "k", "region": {"outer": ring((1500, 400), (1900, 400), (1900, 800), (1500, 800))}, "grain_mm": 6, "coverage_percent": 60, "depth_mm": 6, "colour": "#44aa88"}])
# --- imperial
IN = 25.4
top("imperial-vanity", 1.5 * IN, [n(0, 0, p=("eased", IN / 8), corner=("rounded", IN)), n(49 * IN, 0, p=("eased", IN / 8), corner=("rounded", IN)),
                                  n(49 * IN, 22.5 * IN, wall=True), n(0, 22.5 * IN, wall=True)],
    sinks=[under("s", 24.5 * IN, 10.5 * IN, {"kind": "ellipse", "width_mm": 17 * IN, "depth_mm": 14 * IN}, reveal=("rim shows", IN / 8), p=("eased", IN / 16))],
    taps=[{"id": "t", "pattern": "three at 4 in", "diameter_mm": 1.375 * IN, "sink": "s", "set_back_mm": 2.5 * IN}], units="imperial")
