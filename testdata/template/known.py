#!/usr/bin/env python3
"""Makes drawings with known measures: SVG by hand after the specification, DXF by
an independent library (ezdxf 0.18) or by hand. Measures are closed forms of
mensuration; those of splines the library's own points, those of crossing lines by
shapely 1.8. Run: /usr/bin/python3 known.py
Writes known.json: each drawing's text, the unit to give, and either its loops in mm
(areas less their holes) or a word of the error that refuses it."""
import io
import json
import math
import random

import ezdxf
from ezdxf.math import fit_points_to_cad_cv
from shapely.geometry import LineString, Polygon
from shapely.ops import polygonize, unary_union

cases = []


def case(name, data, loops=None, err=None, args=(), note=None, tol=1e-6):
    if callable(data):
        data = data()
    cases.append((name, data, loops, err, list(args), note, tol))


def strip(text):
    """A file's text without its classes and objects, most of its header and all
    tables but that of layers."""
    lines = text.replace("\r\n", "\n").split("\n")
    pairs = [(lines[i].strip(), lines[i + 1]) for i in range(0, len(lines) - 1, 2)]
    out, i = [], 0
    while pairs[i] != ("0", "EOF"):
        j = pairs.index(("0", "ENDSEC"), i)
        name, section = pairs[i + 1][1], pairs[i : j + 1]
        if name == "HEADER":
            section = section[:2] + [
                p for k, v in enumerate(section) if v in (("9", "$INSUNITS"), ("9", "$MEASUREMENT"))
                for p in section[k : k + 2]] + [("0", "ENDSEC")]
        elif name == "TABLES":
            k = section.index(("2", "LAYER")) - 1
            section = section[:2] + section[k : section.index(("0", "ENDTAB"), k) + 1] + [("0", "ENDSEC")]
        if name not in ("CLASSES", "OBJECTS"):
            out += section
        i = j + 1
    return "".join(f"{a}\n{b}\n" for a, b in out) + "0\nEOF\n"


pi = math.pi
def L(a,p=None,c=None,h=()): return (a,p,c,list(h))
def svg(body,attrs='width="200mm" height="100mm" viewBox="0 0 200 100"',pre=''): return pre+f'<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" {attrs}>{body}</svg>'
# ---------- SVG
# Radii too small are scaled up: a half circle over a chord of sqrt(200).
case("s01.svg",svg('<path d="M10 10a1 1 0 0110 10z"/>'),[L(pi*50/2,pi*math.sqrt(50)+math.sqrt(200))])
case("s02.svg",svg('<path d="M10 10h20v20h-20z l-5 0 0-5 5 0 z"/>'),[L(400,80),L(25,20)])
case("s02b.svg",svg('<path d="m10 10h20v20h-20z m30 0h10v10h-10z m 20 0 h5v5h-5z"/>'),[L(400,80,(20,20)),L(100,40,(45,15)),L(25,20,(62.5,12.5))])
case("s03.svg",svg('<rect x="10" y="10" width="40" height="20" rx="5"/>'),[L(800-(4-pi)*25,120-8*5+2*pi*5,(30,20))])
case("s03b.svg",svg('<rect x="10" y="10" width="40" height="20" ry="50"/>'),[L(pi*20*10,None,(30,20))])
case("s04.svg",svg('<polygon points="0,0 10,0 10,10 0,10 5"/>'),[L(100,40)])
case("s05.svg",svg('<polyline points="0,0 10,0 10,10 0,10"/>'),[L(100,40)])
case("s05b.svg",svg('<polyline points="0,0 10,0 10,10 0,10" fill="none" stroke="black"/>'),None,err="open line")
case("s05c.svg",svg('<polyline points="0,0 10,0 10,10 0,10 0 0" fill="none" stroke="black"/>'),[L(100,40)])
case("s06.svg",svg('<rect width="10" height="10"/>','width="4in" height="2in" viewBox="0 0 4 2"'),[L(100*645.16,40*25.4,(127,127))])
case("s07.svg",svg('<rect width="10" height="10"/>','width="288pt" height="144pt" viewBox="0 0 4 2"'),[L(100*645.16,40*25.4)])
case("s08.svg",svg('<rect width="96" height="48"/>','width="200px" height="100px"'),[L(25.4*12.7)])
case("s09.svg",svg('<rect width="96" height="48"/>','width="100%" height="100%" viewBox="0 0 200 100"'),None,err="unit")
case("s09b.svg",svg('<rect width="96" height="48"/>','width="100%" height="100%" viewBox="0 0 200 100"'),[L(96*48)],args=["--units","mm"])
case("s10.svg",svg('<rect width="100" height="100"/>','width="200mm" height="100mm" viewBox="0 0 100 100" preserveAspectRatio="none"'),[L(20000,600,(100,50))])
case("s11.svg",svg('<rect width="100" height="100"/>','width="200mm" height="100mm" viewBox="0 0 100 100" preserveAspectRatio="xMaxYMid slice"'),[L(40000,800,(100,50))])
case("s12.svg",svg('<rect width="100" height="100"/>','width="200mm" height="100mm" viewBox="0 0 100 100" preserveAspectRatio="xMaxYMid"'),[L(10000,400,(150,50))])
case("s13.svg",svg('<g transform="matrix(1 0.5 -0.5 2 3 4)"><g transform="skewX(30) translate(3) scale(2,-1)"><rect width="10" height="5"/></g></g>'),[L(50*2*(2+.25))])
case("s14.svg",svg('<defs><g id="a"><circle r="5"/></g><symbol id="b" viewBox="0 0 2 2"><rect width="2" height="2"/></symbol></defs><use xlink:href="#a" x="20" y="20"/><use href="#b" x="50" y="10" width="10" height="20"/>'),[L(25*pi,10*pi,(20,20)),L(100,40,(55,20))])
case("s15.svg",svg('<clipPath id="c"><rect width="5" height="5"/></clipPath><rect clip-path="url(#c)" width="20" height="20"/>'),[L(400)],note="clipped")
case("s16.svg",svg('<path fill-rule="evenodd" d="M0 0h50v50h-50z M10 10h30v30h-30z"/>'),[L(2500-900,200,(25,25),[900])])
case("s17.svg",svg('<path d="M0 0h50v50h-50z M10 10v30h30v-30z"/>'),[L(2500-900,200,(25,25),[900])])
case("s17a.svg",svg('<path d="M0 0h50v50h-50z M10 10h30v30h-30z"/>'),[L(2500-900,200,(25,25),[900])],note="fill rule shows filled")
case("s17b.svg",svg('<path fill="none" stroke="#000" d="M0 0h50v50h-50z M10 10h30v30h-30z"/>'),[L(2500-900,200,(25,25),[900])])
def star(): return "M"+" ".join(f"{50+40*math.sin(2*k*2*pi/5):.9f},{50-40*math.cos(2*k*2*pi/5):.9f}" for k in range(5))+"z"
pts=[(50+40*math.sin(2*k*2*pi/5),50-40*math.cos(2*k*2*pi/5)) for k in range(5)]
polys=[p for p in polygonize(unary_union(LineString(pts+pts[:1])))]
polys.sort(key=lambda p:p.area)
tips=sum(p.area for p in polys[:5]); core=polys[5].area
case("s18-nonzero.svg",svg(f'<path d="{star()}"/>'),[L(tips+core)])
case("s18-evenodd.svg",svg(f'<path fill-rule="evenodd" d="{star()}"/>'),[L(p.area) for p in polys[:5]])
case("s19.svg",svg('<style>.x{display:none} path.cut{fill:none;stroke:red}</style><rect class="x" width="90" height="90"/><path class="cut" d="M0 0H30V30H0Z"/><g style="display:none"><circle r="9" cx="50" cy="50"/></g><text x="3" y="9">hi</text>'),[L(900,120)],note="hidden|text")
case("s20.svg",svg('<svg x="50" y="10" width="50" height="50" viewBox="0 0 10 10"><rect width="10" height="10"/></svg>'),[L(2500,200,(75,35))])
case("s23.svg",svg('<circle cx="20" cy="20" r="1e3"/>',),[L(pi*1e6)])
case("s24.svg",svg('<rect width="NaN" height="5"/>'),None,err="plain length")
case("s25.svg",svg('<rect width="1e300" height="1e300"/>'),None,err="can't be drawn")
case("s26.svg",svg('<path d="M0 0 L 50 0 50 50 0 50"/>'),[L(2500,200)])   # implicit close
case("s28.svg",svg('<path style="fill:none;stroke:#000000;stroke-width:0.26" d="m 10,10 h 30 v 30 H 10 Z" id="path1" />','width="210mm" height="297mm" viewBox="0 0 210 297" version="1.1" id="svg5" inkscape:version="1.2" xmlns:inkscape="http://www.inkscape.org/namespaces/inkscape" xmlns:sodipodi="http://sodipodi.sourceforge.net/DTD/sodipodi-0.dtd" xmlns:svg="http://www.w3.org/2000/svg"','<?xml version="1.0" encoding="UTF-8" standalone="no"?>\n<!-- Created with Inkscape (http://www.inkscape.org/) -->\n'),[L(900,120,(25,25))])
case("s28b.svg",svg('<svg:path d="m 10,10 h 30 v 30 H 10 Z"/>'.replace("svg:path","x:path"),'width="210mm" height="297mm" viewBox="0 0 210 297" xmlns:x="http://www.w3.org/2000/svg"'),[L(900)])
case("s28c.svg",'<svg:svg xmlns:svg="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100"><svg:rect width="10" height="10"/></svg:svg>',[L(100)])
case("s30.svg",svg('<rect width="10" height="10" x="-5" y="-5" transform="rotate(45)"/>'),[L(100,40,(0,0))])
case("s31.svg",svg('<path d="M0,0 10,0 10,10,0,10Z"/>'),[L(100)])
case("s32.svg",svg('<path d="M.5.5l10-.0.0 10-10 0z"/>'),[L(100,40,(5.5,5.5))])
case("s33.svg",svg('<path d="M0 0 H1e1 V1E+1 H0 Z"/>'),[L(100)])
case("s35.svg",svg('<path d="M10 10 A 5 5 0 1 0 10.001 10 Z"/>'),[L(25*pi)],tol=1e-5)
case("s36.svg",svg('<path d="M10 10 A 5 5 0 1 0 10 10 Z"/><rect width="1" height="2"/>'),[L(2)])
case("s37.svg",svg('<circle cx="50%" cy="50%" r="10%"/>'),[L(pi*(0.1*math.hypot(200,100)/math.sqrt(2))**2,None,(100,50))])
case("s38.svg",svg('<rect width="10mm" height="1in"/>'),[L(37.7952755906*96)],tol=1e-8)
case("s39.svg",svg('<switch><g systemLanguage="xx"><rect width="5" height="5"/></g><g><rect width="10" height="10"/></g></switch>'),[L(100)])
case("s40.svg",svg('<pattern id="p"><rect width="5" height="5"/></pattern><marker><rect width="5" height="5"/></marker><mask><rect width="9" height="9"/></mask><rect width="10" height="10"/>'),[L(100)])
case("s47.svg",svg('<rect width="10" height="10"/>')[:-20],None,err="part")
case("s49.svg",svg('<path transform="scale(1e-200)" d="M0 0H10V10H0z"/>'),None,err="without length")
case("s50.svg",svg('<path transform="matrix(1 1 1 1 0 0)" d="M0 0H10V10H0z"/>'),None,err="less than 1 mm2")
case("s51.svg",svg('<path d="M10 10 L 10 10 Z M 20 20 z M0 0h4v4h-4z"/>'),[L(16)])
case("s52.svg",svg('<ellipse cx="20" cy="20" rx="10"/>'),[L(pi*100)])
case("s53.svg",svg('<line x1="0" y1="0" x2="10" y2="0"/><line x1="10" y1="0" x2="10" y2="10.05"/><line x1="0" y1="0" x2="10" y2="10"/>'),[L(50)],tol=2e-2)
case("s55.svg",svg('<g fill="none"><path fill="inherit" d="M0 0h9v9"/></g><rect width="3" height="3"/>'),[L(9)])
case("s56.svg",svg('<path d="M0 0h10v10h-10zM0 0"/>'),[L(100)])
case("s57.svg",svg('<path d="M 5,5 a 5 5 0 1 1 10 0 a 5 5 0 1 1 -10 0"/>'),[L(25*pi,10*pi)])
case("s58.svg",svg('<rect x="0" y="0" width="100" height="50"/><circle cx="25" cy="25" r="10"/><circle cx="75" cy="25" r="10"/><circle cx="75" cy="25" r="4"/>'),[L(5000-200*pi,300,None,[100*pi,100*pi]),L(16*pi)])
case("s59.svg",svg('<path d="M0 0H50V50H0Z"/><path d="M0 0H50V50H0Z"/>'),[L(2500)],note="twice")
case("s60.svg",svg('<rect width="10" height="10" style="DISPLAY:NONE"/><rect width="5" height="5"/>'),[L(25)])
# ---------- DXF
def doc(v="R2010",ins=4):
    d=ezdxf.new(v)
    if v!="R12" and ins is not None: d.header["$INSUNITS"]=ins
    elif ins: d.header["$INSUNITS"]=ins
    return d
def save(d):
    """The text of a document, less what no reader of outlines looks at."""
    text = io.StringIO()
    d.write(text)
    return strip(text.getvalue())
for k,v in enumerate(["R12","R2000","R2004","R2007","R2010","R2013","R2018"]):
    d=doc(v,4); m=d.modelspace()
    # stadium 200x80, soup
    parts=[((-60,-40),(60,-40)),((60,40),(-60,40))]
    rng=random.Random(k); fs=[]
    for a,b in parts:
        if rng.random()<.5:a,b=b,a
        fs.append(lambda a=a,b=b:m.add_line(a,b))
    fs.append(lambda:m.add_arc((60,0),40,270,90)); fs.append(lambda:m.add_arc((-60,0),40,90,270))
    rng.shuffle(fs); [f() for f in fs]
    m.add_circle((0,0),12.5); m.add_text("sink",dxfattribs={"height":5})
    case(f"d-soup-{v}.dxf",save(d),[L(120*80+pi*1600-pi*12.5**2,240+80*pi,(0,0),[pi*12.5**2])],args=["--units","mm"] if v=="R12" else [],note="text")
def one(name,add,loops=None,err=None,v="R2010",ins=4,args=(),**k):
    d=doc(v,ins); add(d,d.modelspace()); case(name,save(d),loops,err,args,**k)
def bulgeseg(b,c): # area of segment
    th=4*math.atan(b); r=c/2/math.sin(th/2); return r*r/2*(th-math.sin(th)), abs(r*th)
a2,p2=bulgeseg(2,100)
one("d-bulge2.dxf",lambda d,m:m.add_lwpolyline([(0,0,0),(100,0,2),(100,100,0),(0,100,0)],format="xyb",close=True),[L(1e4+a2,300+p2)])
an,pn=bulgeseg(-.5,100)
one("d-bulgeneg.dxf",lambda d,m:m.add_lwpolyline([(0,0,0),(100,0,-.5),(100,100,0),(0,100,0)],format="xyb",close=True),[L(1e4+an,300+pn)])
one("d-constwidth.dxf",lambda d,m:m.add_lwpolyline([(0,0),(100,0),(100,100),(0,100)],close=True,dxfattribs={"const_width":8}),[L(1e4,400)])
one("d-2pt-circle.dxf",lambda d,m:m.add_lwpolyline([(0,0,1),(100,0,1)],format="xyb",close=True),[L(pi*2500,100*pi,(50,0))])
one("d-lastbulge-open.dxf",lambda d,m:m.add_lwpolyline([(0,0,0),(100,0,0),(100,100,0),(0,100,0),(0,0,0.7)],format="xyb"),[L(1e4,400)])
one("d-gap-ok.dxf",lambda d,m:[m.add_line((0,0),(100,0)),m.add_line((100.05,0),(100,50)),m.add_line((100,50),(0,50)),m.add_line((0,50),(0,0))],[L(5000)],tol=1e-3,note="joined|closed")
one("d-gap-1.5.dxf",lambda d,m:[m.add_line((0,0),(98.5,0)),m.add_line((100,0),(100,50)),m.add_line((100,50),(0,50)),m.add_line((0,50),(0,0))],[L(5000,300)],note="closed 1 gap")
one("d-gap-3.dxf",lambda d,m:[m.add_line((0,0),(97,0)),m.add_line((100,0),(100,50)),m.add_line((100,50),(0,50)),m.add_line((0,50),(0,0))],None,err="open lines")
def poly(pts): return Polygon(pts)
one("d-ellpart.dxf",lambda d,m:[m.add_ellipse((10,20),(50,0),.5,0,pi),m.add_line((60,20),(-40,20))],[L(pi*50*25/2,None,(10,20+4*25/3/pi))])
one("d-ellrot.dxf",lambda d,m:m.add_ellipse((10,20),(30,40),.4),[L(pi*50*20,None,(10,20))])
one("d-ellneg.dxf",lambda d,m:[m.add_ellipse((0,0),(50,0),.5,3*pi/2,pi/2),m.add_line((0,25),(0,-25))],[L(pi*50*25/2,None,(4*50/3/pi,0))])
one("d-ell-ocs.dxf",lambda d,m:[m.add_ellipse((10,0),(50,0),.5,0,pi/2,dxfattribs={"extrusion":(0,0,-1)}),m.add_line((60,0),(10,0)),m.add_line((10,0),(10,-25))],[L(pi*50*25/4)])
def flat(e,n=20000):
    b=e.construction_tool(); k=b.knots(); lo,hi=k[b.degree],k[b.count]
    return [(p.x,p.y) for p in b.points([min(lo+(hi-lo)*i/n,hi-1e-12) for i in range(n+1)])]
def spl(name,mk,close=False,**k):
    d=doc(); m=d.modelspace(); e=mk(m); pts=flat(e); P=Polygon(pts)
    if close: m.add_line(pts[0],pts[-1])
    case(name,save(d),[L(P.area,P.exterior.length,P.centroid.coords[0])],**k)
ctl=[(0,0),(100,-20),(150,60),(80,120),(10,90),(-30,40)]
spl("d-spl-rat.dxf",lambda m:m.add_rational_spline([(x,y,0) for x,y in ctl],[1,2,.5,3,1,1]),True,tol=1e-5)
spl("d-spl-open4.dxf",lambda m:m.add_open_spline([(x,y,0) for x,y in ctl],degree=4),True,tol=1e-5)
def closed(m):
    e=m.add_spline(); e.set_closed([(x,y,0) for x,y in ctl],degree=3); return e
spl("d-spl-closed.dxf",closed,tol=1e-5)
def closedr(m):
    e=m.add_spline(); e.set_closed_rational([(x,y,0) for x,y in ctl],[1,3,1,.7,2,1],degree=3); return e
spl("d-spl-closedr.dxf",closedr,tol=1e-5)
def closedp(m):
    e=m.add_spline(); e.set_uniform([(x,y,0) for x,y in ctl],degree=3); return e
spl("d-spl-unif.dxf",closedp,True,tol=1e-5)
# circle as rational quadratic B-spline: 9 ctl
s=math.sqrt(.5); cc=[(1,0),(1,1),(0,1),(-1,1),(-1,0),(-1,-1),(0,-1),(1,-1),(1,0)]
def nurbscirc(d,m):
    e=m.add_spline(degree=2); e.control_points=[(50*x,50*y,0) for x,y in cc]; e.weights=[1,s]*4+[1]; e.knots=[0,0,0,1,1,2,2,3,3,4,4,4]; e.closed=True
one("d-spl-circle.dxf",nurbscirc,[L(pi*2500,100*pi,(0,0))],tol=1e-5)
def spfit(m):
    d=m
# Programs differ in how a curve leaves its first point: 3 %.
b=fit_points_to_cad_cv([(0,0,0),(50,30,0),(100,0,0)]); P=Polygon([(p.x,p.y) for p in b.approximate(5000)])
one("d-spl-fit.dxf",lambda d,m:[m.add_spline(fit_points=[(0,0,0),(50,30,0),(100,0,0)]),m.add_line((0,0),(100,0))],[L(P.area)],tol=3e-2)
# inserts
def blk(d,name="B",base=(5,5)):
    b=d.blocks.new(name,base_point=base); b.add_lwpolyline([(0,0,0),(30,0,.3),(30,10,0),(0,10,0)],format="xyb",close=True); return b
ab,pb=bulgeseg(.3,10); A0=300+ab
def arr(d,m):
    blk(d); m.add_blockref("B",(100,50),dxfattribs={"column_count":3,"row_count":2,"column_spacing":40,"row_spacing":25,"rotation":30})
one("d-ins-array.dxf",arr,[L(A0,70+pb)]*6)
def minsert0(d,m):
    blk(d); m.add_blockref("B",(100,50),dxfattribs={"column_count":3,"row_count":2,"column_spacing":0,"row_spacing":0})
one("d-ins-array0.dxf",minsert0,[L(A0)],note=None)
def ns(d,m):
    blk(d); m.add_blockref("B",(0,0),dxfattribs={"xscale":-2,"yscale":3,"rotation":77})
one("d-ins-ns.dxf",ns,[L(A0*6)],tol=1e-6)
def nest(d,m):
    blk(d); b=d.blocks.new("C"); b.add_blockref("B",(3,4),dxfattribs={"rotation":45,"xscale":2}); b.add_circle((500,0),7)
    m.add_blockref("C",(0,0),dxfattribs={"yscale":2,"rotation":-20}); m.add_blockref("C",(1000,0),dxfattribs={"extrusion":(0,0,-1)})
one("d-ins-nest.dxf",nest,[L(A0*4),L(A0*2),L(49*pi*2),L(49*pi)])
def ocs(d,m): m.add_lwpolyline([(0,0),(10,0),(10,20)],close=True,dxfattribs={"extrusion":(0,0,-1)}); m.add_arc((-100,0),10,0,180,dxfattribs={"extrusion":(0,0,-1)}); m.add_line((90,0),(110,0))
one("d-ocs.dxf",ocs,[L(100,None,(-20/3,20/3)),L(50*pi,None,(100,40/3/pi))])
def lay(d,m):
    d.layers.new("OFF").off(); d.layers.new("FRZ").freeze(); m.add_circle((0,0),10); m.add_circle((50,0),10,dxfattribs={"layer":"off"}); m.add_circle((90,0),10,dxfattribs={"layer":"frz"})
    b=d.blocks.new("Z"); b.add_circle((0,0),5); m.add_blockref("Z",(200,0),dxfattribs={"layer":"FRZ"})
    d.layout("Layout1").add_circle((0,0),99); 
    h=m.add_hatch(); h.paths.add_polyline_path([(0,0),(300,0),(300,300)]); m.add_linear_dim(base=(0,2),p1=(0,0),p2=(3,0)).render(); m.add_mtext("x")
one("d-layers.dxf",lay,[L(100*pi)],note="off.*|paper")
for code,mm in {3:1609344,5:10,16:1e5}.items():
    r=20/mm
    one(f"d-ins{code}.dxf",lambda d,m:m.add_circle((0,0),r),[L(400*pi)],ins=code)
one("d-ins99.dxf",lambda d,m:m.add_circle((0,0),20),err="unit",ins=99)
one("d-ins21.dxf",lambda d,m:m.add_circle((0,0),1),[L(pi*(1200/3937*1000)**2)],ins=21)
def meas(d,m): d.header["$MEASUREMENT"]=1; m.add_circle((0,0),20)
one("d-meas.dxf",meas,None,err="unit",ins=0)
# spline-fit and curve-fit polyline
def pf(flag):
    s="0\nPOLYLINE\n66\n1\n10\n0\n20\n0\n70\n%d\n"%flag
    return s
def raw(ents,ins=4): return f"0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n{ins}\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n"+ents+"0\nENDSEC\n0\nEOF\n"
def vx(x,y,f=0,b=0): return f"0\nVERTEX\n10\n{x}\n20\n{y}\n70\n{f}\n"+(f"42\n{b}\n" if b else "")
frame=[(0,0),(100,0),(100,100),(0,100)]
fit=[(50+60*math.cos(t*pi/20),50+60*math.sin(t*pi/20)) for t in range(40)]
case("d-plfit.dxf",raw(pf(5)+"".join(vx(x,y,16) for x,y in frame)+"".join(vx(x,y,8) for x,y in fit)+"0\nSEQEND\n"),[L(Polygon(fit).area)])
case("d-plwidth.dxf",raw("0\nPOLYLINE\n66\n1\n70\n1\n40\n3\n41\n3\n"+"".join(vx(x,y) for x,y in frame)+"0\nSEQEND\n"),[L(1e4)])
case("d-nan.dxf",raw("0\nCIRCLE\n10\nnan\n20\n0\n40\n5\n"),None,err="not a number")
case("d-comma.dxf",raw("0\nCIRCLE\n10\n1,5\n20\n0\n40\n5\n"),None,err="not a number")
case("d-mill.dxf",raw("0\nINSERT\n2\nB\n70\n30000\n71\n30000\n44\n1\n45\n1\n"),None,err="does not hold")
case("d-arr.dxf",raw("").replace("0\nSECTION\n2\nENTITIES\n","0\nSECTION\n2\nBLOCKS\n0\nBLOCK\n2\nB\n10\n0\n20\n0\n0\nCIRCLE\n10\n0\n20\n0\n40\n.1\n0\nENDBLK\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n0\nINSERT\n2\nB\n70\n30000\n71\n30000\n44\n1\n45\n1\n"),None,err="more than")
case("d-empty.dxf","",None,err="empty"); case("d-ws.dxf","\n\n \n",None,err="empty")
case("d-line0.dxf",raw("0\nLINE\n10\n5\n20\n5\n11\n5\n21\n5\n0\nCIRCLE\n10\n0\n20\n0\n40\n5\n"),[L(25*pi)],note="length")
case("d-solid.dxf",raw("0\nSOLID\n10\n0\n20\n0\n11\n9\n21\n0\n12\n9\n22\n9\n13\n0\n23\n9\n0\nCIRCLE\n10\n0\n20\n0\n40\n5\n"),[L(25*pi)],note="other kind")
case("d-crossing.dxf",raw("0\nLWPOLYLINE\n90\n4\n70\n1\n10\n0\n20\n0\n10\n100\n20\n100\n10\n100\n20\n0\n10\n0\n20\n100\n"),[L(2500),L(2500)],note="cross")
case("d-over.dxf",raw("0\nLINE\n10\n-10\n20\n0\n11\n110\n21\n0\n0\nLINE\n10\n100\n20\n-10\n11\n100\n21\n60\n0\nLINE\n10\n110\n20\n50\n11\n-10\n21\n50\n0\nLINE\n10\n0\n20\n60\n11\n0\n21\n-10\n"),[L(5000,300)],note="cut")

known = {}
for name, data, loops, err, args, note, tol in cases:
    c = {"data": data}
    if args:
        c["unit"] = args[1]
    if loops is None:
        c["error"] = err
    else:
        c["tolerance"] = tol
        c["loops"] = [{"area": a, "perimeter": p or 0, "holes": h, **({"centroid": list(at)} if at else {})} for a, p, at, h in loops]
    if note:
        c["note"] = note
    known[name] = c
json.dump(known, open("known.json", "w"), indent=1, ensure_ascii=False)
