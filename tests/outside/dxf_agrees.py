"""Reads every DXF of an output folder with ezdxf and compares it with panels.json.

    /usr/bin/python3 tests/outside/dxf_agrees.py OUTPUT-FOLDER

Each file must open in ezdxf's strict reader and pass its audit without an error or a fix. Every circle on a BORE or
COUNTERSINK layer is compared with the drillings of that face (centre, diameter, depth by the layer's name), and the box
of OUTLINE with the panel's size, to 0.001 mm; every contour on a GROOVE or REBATE layer (its box, width and depth by the
layer's name) and every entity on MARK (edge bores, slanted bores, bores that leave the panel) to 0.002 mm, since those are
worked out from several rounded figures. Numbers are read by the unit that the header names. Files with contours as lines
and arcs are refused: the samples have none. The last line says how much was compared; the exit code is 1 on any
disagreement, or when nothing was compared.
"""

import math
import sys
from pathlib import Path

import ezdxf

sys.path.insert(0, str(Path(__file__).parent / "lib"))
import agreement  # noqa: E402
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


def path_points(path, scale, turning=True):
    """Corners of a polyline, with the places where its arcs turn back unless only corners are asked for."""
    corners = list(path.get_points("xyb"))
    points = []
    for (x, y, bulge), (next_x, next_y, _) in zip(corners, corners[1:] + corners[:1]):
        points += arc_points((x, y), (next_x, next_y), bulge) if turning else [(x, y)]
    return [(scale * x, scale * y) for x, y, *_ in points]


def cutout_points(path, scale):
    """Corners of a polyline, and points along its arcs, a degree apart at most."""
    corners = list(path.get_points("xyb"))
    points = []
    for (x, y, bulge), (next_x, next_y, _) in zip(corners, corners[1:] + corners[:1]):
        points.append((scale * x, scale * y))
        if bulge == 0:
            continue
        centre, first, last, radius = ezdxf.math.bulge_to_arc((x, y), (next_x, next_y), bulge)
        turn = (last - first) % math.tau
        steps = math.ceil(math.degrees(turn))
        for k in range(1, steps):
            angle = first + turn * k / steps
            points.append((scale * (centre[0] + radius * math.cos(angle)), scale * (centre[1] + radius * math.sin(angle))))
    return points


def outline_points(space, scale):
    points = []
    for path in space.query("LWPOLYLINE[layer=='OUTLINE']"):
        points += path_points(path, scale)
    for line in space.query("LINE[layer=='OUTLINE']"):
        points += [(scale * p[0], scale * p[1]) for p in (line.dxf.start, line.dxf.end)]
    for arc in space.query("ARC[layer=='OUTLINE']"):
        points += [(scale * p[0], scale * p[1]) for p in arc.flattening(1e-5)]
    return points


def put_mark(found, entity, scale, sheet, proof):
    kind = entity.dxftype()
    if kind == "CIRCLE":
        x, y = entity.dxf.center.x * scale, entity.dxf.center.y * scale
        found.mark_circles.append(panels.Circle(x, y, 2 * entity.dxf.radius * scale, "MARK"))
    elif kind == "LWPOLYLINE" and entity.closed:
        found.mark_paths.append(path_points(entity, scale, turning=False))
    elif kind == "LINE":
        ends = (entity.dxf.start, entity.dxf.end)
        found.mark_lines.append(tuple((scale * p.x, scale * p.y) for p in ends))
    else:
        proof.fault(sheet.name, f"{kind} on {entity.dxf.layer}")


def put(found, entity, scale, sheet, proof):
    """Sorts one entity by its layer; what belongs to no work is left out."""
    layer, kind = entity.dxf.layer, entity.dxftype()
    if layer == panels.MARK_LAYER:
        put_mark(found, entity, scale, sheet, proof)
        return
    groove = panels.is_groove_layer(layer)
    hole = panels.is_bore_layer(layer) or panels.is_sink_layer(layer)
    cutout = panels.is_cutout_layer(layer)
    if not (groove or hole or cutout):
        return
    if kind != ("CIRCLE" if hole else "LWPOLYLINE"):
        proof.fault(sheet.name, f"{kind} on {layer}, where it does not belong")
    elif cutout:
        found.cutouts.append((layer, cutout_points(entity, scale)))
    elif groove:
        found.grooves.append((layer, panels.box_of(path_points(entity, scale))))
    else:
        x, y = entity.dxf.center.x * scale, entity.dxf.center.y * scale
        circle = (layer, x, y, 2 * entity.dxf.radius * scale, sheet.name, proof)
        if panels.is_bore_layer(layer):
            found.bores.append(panels.found_bore(*circle))
        else:
            found.sinks.append(panels.found_sink(*circle))


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
        found = panels.Found(outline=outline_points(space, scale))
        for entity in space:
            put(found, entity, scale, sheet, proof)
        agreement.compare(sheet, found, proof)
    proof.end()


main()
