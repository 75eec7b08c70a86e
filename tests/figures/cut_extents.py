"""Prints width and height of what lies on layer CUT of a DXF, as ezdxf reads it strictly. Usage: cut_extents.py FILE"""

import json
import sys

import ezdxf
from ezdxf import path
from ezdxf.math import BoundingBox

box = BoundingBox()
for entity in ezdxf.readfile(sys.argv[1]).modelspace():
    if entity.dxf.layer == "CUT":
        box.extend(path.make_path(entity).flattening(0.0001))
print(json.dumps([box.size.x, box.size.y]))
