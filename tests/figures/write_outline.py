"""Writes outlines and strokes as DXF with ezdxf: the same polylines that our writer was given. Usage: write_outline.py PATHS.json OUT.dxf"""

import json
import sys

import ezdxf

with open(sys.argv[1], encoding="utf-8") as file:
    paths = json.load(file)
doc = ezdxf.new("R2007", setup=False)
doc.units = ezdxf.units.MM
for layer in {path["layer"] for path in paths}:
    doc.layers.add(layer)
space = doc.modelspace()
for path in paths:
    space.add_lwpolyline(path["points"], format="xyb", close=path["closed"], dxfattribs={"layer": path["layer"]})
doc.saveas(sys.argv[2])
