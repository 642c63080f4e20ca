"""Prints what a DXF file holds, as ezdxf reads it, one item a line: for CutterDxfTest.

    python3 read.py FILE

version AC1009 | units 4 | error TEXT | layer NAME on|off
line LAYER open|closed x,y x,y ... | circle LAYER x,y r | text LAYER x,y height WORDS
"""
import sys

import ezdxf

document = ezdxf.readfile(sys.argv[1])
print("version", document.dxfversion)
print("units", document.header.get("$INSUNITS", 0))
auditor = document.audit()
for entry in auditor.errors + auditor.fixes:
    print("error", entry.message)
for layer in document.layers:
    print("layer", layer.dxf.name, "on" if layer.is_on() else "off")


def at(point):
    return f"{point[0]:.6f},{point[1]:.6f}"


for entity in document.modelspace():
    layer = entity.dxf.layer
    kind = entity.dxftype()
    if kind == "POLYLINE":
        points = " ".join(at(p) for p in entity.points())
        print("line", layer, "closed" if entity.is_closed else "open", points)
    elif kind == "CIRCLE":
        print("circle", layer, at(entity.dxf.center), f"{entity.dxf.radius:.6f}")
    elif kind == "TEXT":
        print("text", layer, at(entity.dxf.insert), f"{entity.dxf.height:.6f}", entity.plain_text())
    else:
        print("error", "unexpected", kind)
