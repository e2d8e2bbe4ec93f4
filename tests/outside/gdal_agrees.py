"""Reads every DXF of an output folder with GDAL's ogr2ogr and compares it with panels.json.

    /usr/bin/python3 tests/outside/gdal_agrees.py OUTPUT-FOLDER

GDAL shares no code with ezdxf and gives a circle as a ring of points: its centre is the middle of the ring's box, its
diameter the box's size. It knows no units, so the header's $INSUNITS is read here, by hand. Compared as in
dxf_agrees.py: circles on BORE and COUNTERSINK layers and the box of OUTLINE to 0.001 mm, the boxes on GROOVE and REBATE
layers and everything on MARK to 0.002 mm. The last line says how much was compared; the exit code is 1 on any
disagreement, or when nothing was compared.
"""

import csv
import re
import subprocess
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent / "lib"))
import agreement  # noqa: E402
import panels  # noqa: E402

MM_PER_UNIT = {"1": panels.MM_PER_INCH, "4": 1.0}
UNIT = re.compile(r"\$INSUNITS\s+70\s+(\d+)\s")


def features(sheet, proof):
    """Layer, kind and points of every entity, as GDAL reads them."""
    # Steps of one degree, so that a ring has a point at each quarter turn.
    command = ["ogr2ogr", "--config", "OGR_ARC_STEPSIZE", "1", "-f", "CSV", "-lco", "GEOMETRY=AS_WKT"]
    done = subprocess.run([*command, "/vsistdout/", str(sheet.path)], capture_output=True, text=True, timeout=60)
    if done.returncode != 0 or done.stderr.strip():
        proof.fault(sheet.name, f"ogr2ogr: {done.stderr.strip() or done.returncode}")
        return None
    return [
        (row["Layer"], row["SubClasses"], points_of(row["WKT"])) for row in csv.DictReader(done.stdout.splitlines())
    ]


def points_of(wkt):
    numbers = re.findall(r"-?[\d.]+(?:e-?\d+)?", wkt.partition("(")[2])
    size = 3 if " Z " in wkt else 2
    return [(float(numbers[i]), float(numbers[i + 1])) for i in range(0, len(numbers), size)]


def circle_of(points):
    """Centre and diameter of a ring, or None where it is not as wide as high."""
    left, low, right, high = panels.box_of(points)
    if abs((right - left) - (high - low)) > panels.TOLERANCE:
        return None
    return (left + right) / 2, (low + high) / 2, right - left


def put_mark(found, subclasses, points, sheet, proof):
    kind = subclasses.rpartition(":")[2]
    if kind == "AcDbCircle" and circle_of(points):
        found.mark_circles.append(panels.Circle(*circle_of(points), "MARK"))
    elif kind == "AcDbPolyline" and points[0] == points[-1]:
        found.mark_paths.append(points[:-1])
    elif kind == "AcDbLine" and len(points) == 2:
        found.mark_lines.append(tuple(points))
    else:
        proof.fault(sheet.name, f"{subclasses} on MARK")


def put(found, layer, subclasses, points, sheet, proof):
    """Sorts one entity by its layer; what belongs to no work is left out."""
    if layer == panels.MARK_LAYER:
        put_mark(found, subclasses, points, sheet, proof)
    elif panels.is_cutout_layer(layer):
        found.cutouts.append((layer, points))
    elif panels.is_groove_layer(layer):
        found.grooves.append((layer, panels.box_of(points)))
    elif panels.is_bore_layer(layer) or panels.is_sink_layer(layer):
        circle = circle_of(points) if subclasses.endswith("AcDbCircle") else None
        if circle is None:
            proof.fault(sheet.name, f"{subclasses} on {layer}, where only circles belong")
        elif panels.is_bore_layer(layer):
            found.bores.append(panels.found_bore(layer, *circle, sheet.name, proof))
        else:
            found.sinks.append(panels.found_sink(layer, *circle, sheet.name, proof))


def main():
    folder = panels.folder_from(sys.argv, "gdal_agrees.py")
    version = subprocess.run(["ogr2ogr", "--version"], capture_output=True, text=True, check=True).stdout
    proof = panels.Proof(version.partition(",")[0])
    for sheet in panels.sheets_of(folder, "dxf", proof):
        unit = UNIT.search(sheet.path.read_text("ascii", "replace"))
        scale = MM_PER_UNIT.get(unit.group(1)) if unit else None
        if scale is None:
            proof.fault(sheet.name, "the header names neither inches nor millimetres")
            continue
        read = features(sheet, proof)
        if read is None:
            continue
        found, outline = panels.Found(), []
        for layer, subclasses, raw in read:
            points = [(scale * x, scale * y) for x, y in raw]
            if layer == "OUTLINE":
                outline += points
            put(found, layer, subclasses, points, sheet, proof)
        found.outline = outline
        agreement.compare(sheet, found, proof)
    proof.end()


main()
