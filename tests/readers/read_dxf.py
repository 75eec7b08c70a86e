"""Loads a DXF strictly with ezdxf, audits it and prints what it holds as JSON. Usage: read_dxf.py FILE"""

import gc
import json
import sys

import ezdxf
from ezdxf import path
from ezdxf.colors import DXF_DEFAULT_COLORS
from ezdxf.math import BoundingBox


def entity(e):
    kind = e.dxftype()
    if kind == "LWPOLYLINE":
        points = [[x, y, bulge] for x, y, bulge in e.get_points("xyb")]
        return {"type": kind, "layer": e.dxf.layer, "closed": e.closed, "points": points}
    if kind == "CIRCLE":
        return {"type": kind, "layer": e.dxf.layer, "center": list(e.dxf.center)[:2], "radius": e.dxf.radius}
    if kind == "LINE":
        return {"type": kind, "layer": e.dxf.layer, "points": [list(e.dxf.start)[:2], list(e.dxf.end)[:2]]}
    return {"type": kind, "layer": e.dxf.layer}


def reach(e):
    """Corners of a box that an entity surely keeps within, as minX, minY, maxX, maxY; None for one that is not looked at here."""
    kind = e.dxftype()
    if kind == "CIRCLE":
        (x, y), r = list(e.dxf.center)[:2], e.dxf.radius
        return x - r, y - r, x + r, y + r
    if kind == "LWPOLYLINE":
        points = list(e.get_points("xyb"))
    elif kind == "POLYLINE":
        points = [(*list(v.dxf.location)[:2], v.dxf.bulge) for v in e.vertices]
    else:
        return None
    xs, ys = [p[0] for p in points], [p[1] for p in points]
    # An arc leaves its chord by half the chord times the bulge, which beyond a half circle is no bound to the sides.
    over = 0.0
    if any(p[2] for p in points):
        bulge = max(abs(p[2]) for p in points)
        if bulge > 1:
            return None
        over = bulge * (abs(max(xs) - min(xs)) + abs(max(ys) - min(ys))) / 2
    return min(xs) - over, min(ys) - over, max(xs) + over, max(ys) + over


def extents(entities):
    """The box of all entities, curves by where they turn back; exact, and without a look at those that cannot reach beyond the others."""
    box = BoundingBox()
    reaches = [(e, reach(e)) for e in entities]
    # The large ones first.
    for e, r in sorted(reaches, key=lambda each: each[1] is not None and (each[1][0] - each[1][2]) + (each[1][1] - each[1][3])):
        if r is not None and box.has_data and box.inside((r[0], r[1], 0)) and box.inside((r[2], r[3], 0)):
            continue
        box.extend(path.precise_bbox(path.make_path(e)))
    return box


# Reading makes many objects and drops none.
gc.disable()
doc = ezdxf.readfile(sys.argv[1])  # strict: raises where recover.readfile would repair
auditor = doc.audit()
modelspace = list(doc.modelspace())
box = extents(modelspace)
print(
    json.dumps(
        {
            "errors": [error.message for error in auditor.errors],
            "fixes": [error.message for error in auditor.fixes],
            "units": doc.units,
            "measurement": doc.header["$MEASUREMENT"],
            "declaredExtents": [list(doc.header[name])[:2] for name in ("$EXTMIN", "$EXTMAX")],
            "extents": [list(box.extmin)[:2], list(box.extmax)[:2]],
            "layers": [
                {"name": layer.dxf.name, "linetype": layer.dxf.linetype, "rgb": DXF_DEFAULT_COLORS[layer.color]}
                for layer in doc.layers
            ],
            "entities": [entity(e) for e in modelspace],
        }
    )
)
