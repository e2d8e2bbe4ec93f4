"""Reads every DXF of an output folder with ezdxf and compares it with panels.json.

    /usr/bin/python3 tests/outside/dxf_agrees.py OUTPUT-FOLDER

Each file must open in ezdxf's strict reader and pass its audit without an error or a fix. Every circle on a BORE or
COUNTERSINK layer is compared with the drillings of that face (centre, diameter, depth by the layer's name), and the box
of OUTLINE with the panel's size, to 0.001 mm. Numbers are read by the unit that the header names. The last line says
how much was compared; the exit code is 1 on any disagreement, or when nothing was compared.
"""

import math
import sys
from pathlib import Path

import ezdxf

sys.path.insert(0, str(Path(__file__).parent / "lib"))
import panels  # noqa: E402

MM_PER_UNIT = {1: panels.MM_PER_INCH, 4: 1.0}


def audited(sheet, proof):
    """The document, or None where ezdxf refuses it."""
    try:
        document = ezdxf.readfile(sheet.path)
    except (ezdxf.DXFError, OSError, UnicodeError) as error:
        proof.fault(sheet.name, f"ezdxf cannot open it: {error}")
        return None
    auditor = document.audit()
    for entry in list(auditor.errors) + list(auditor.fixes):
        proof.fault(sheet.name, f"audit: {entry.message}")
    return document


def arc_points(start, end, bulge):
    """Both ends of a polyline segment, and where its arc turns back along x or y."""
    if bulge == 0:
        return [start, end]
    centre, first, last, radius = ezdxf.math.bulge_to_arc(start, end, bulge)
    turn = (last - first) % math.tau
    quarters = [(1, 0), (0, 1), (-1, 0), (0, -1)]
    turning = [
        (centre[0] + radius * x, centre[1] + radius * y)
        for k, (x, y) in enumerate(quarters)
        if (k * math.pi / 2 - first) % math.tau < turn
    ]
    return [start, end, *turning]


def outline_box(space, scale):
    points = []
    for path in space.query("LWPOLYLINE[layer=='OUTLINE']"):
        corners = list(path.get_points("xyb"))
        for (x, y, bulge), (next_x, next_y, _) in zip(corners, corners[1:] + corners[:1]):
            points += arc_points((x, y), (next_x, next_y), bulge)
    for line in space.query("LINE[layer=='OUTLINE']"):
        points += [line.dxf.start[:2], line.dxf.end[:2]]
    for arc in space.query("ARC[layer=='OUTLINE']"):
        points += [p[:2] for p in arc.flattening(1e-5)]
    if not points:
        return None
    xs, ys = zip(*points)
    return tuple(scale * v for v in (min(xs), min(ys), max(xs), max(ys)))


def main():
    folder = panels.folder_from(sys.argv, "dxf_agrees.py")
    proof = panels.Proof(f"ezdxf {ezdxf.__version__}")
    for sheet in panels.sheets_of(folder, "dxf", proof):
        document = audited(sheet, proof)
        if document is None:
            continue
        scale = MM_PER_UNIT.get(document.header.get("$INSUNITS"))
        if scale is None:
            proof.fault(sheet.name, f"$INSUNITS is {document.header.get('$INSUNITS')}, neither inches nor millimetres")
            continue
        space = document.modelspace()
        bores, sinks = [], []
        for entity in space:
            layer = entity.dxf.layer
            if not (panels.is_bore_layer(layer) or panels.is_sink_layer(layer)):
                continue
            if entity.dxftype() != "CIRCLE":
                proof.fault(sheet.name, f"{entity.dxftype()} on {layer}, where only circles belong")
                continue
            x, y = entity.dxf.center.x * scale, entity.dxf.center.y * scale
            found = (layer, x, y, 2 * entity.dxf.radius * scale, sheet.name, proof)
            if panels.is_bore_layer(layer):
                bores.append(panels.found_bore(*found))
            else:
                sinks.append(panels.found_sink(*found))
        panels.compare(sheet, bores, sinks, outline_box(space, scale), proof)
    proof.end()


main()
