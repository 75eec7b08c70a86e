"""Loads a DXF strictly with ezdxf, audits it and prints what it holds as JSON. Usage: read_dxf.py FILE"""

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


doc = ezdxf.readfile(sys.argv[1])  # strict: raises where recover.readfile would repair
auditor = doc.audit()
modelspace = list(doc.modelspace())
box = BoundingBox()
for e in modelspace:
    box.extend(path.precise_bbox(path.make_path(e)))
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
