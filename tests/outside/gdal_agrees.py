"""Reads every DXF of an output folder with GDAL's ogr2ogr and compares it with panels.json.

    /usr/bin/python3 tests/outside/gdal_agrees.py OUTPUT-FOLDER

GDAL shares no code with ezdxf and gives a circle as a ring of points: its centre is the middle of the ring's box, its
diameter the box's size. It knows no units, so the header's $INSUNITS is read here, by hand. Compared as in
dxf_agrees.py: every circle on a BORE or COUNTERSINK layer and the box of OUTLINE, to 0.001 mm. The last line says how
much was compared; the exit code is 1 on any disagreement, or when nothing was compared.
"""

import csv
import re
import subprocess
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent / "lib"))
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


def box_of(points, scale):
    xs, ys = zip(*points)
    return tuple(scale * v for v in (min(xs), min(ys), max(xs), max(ys)))


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
        bores, sinks, outline = [], [], []
        for layer, subclasses, points in read:
            if layer == "OUTLINE":
                outline += points
            if not (panels.is_bore_layer(layer) or panels.is_sink_layer(layer)):
                continue
            left, low, right, high = box_of(points, scale)
            if not subclasses.endswith("AcDbCircle") or abs((right - left) - (high - low)) > panels.TOLERANCE:
                proof.fault(sheet.name, f"{subclasses} on {layer}, where only circles belong")
                continue
            found = (layer, (left + right) / 2, (low + high) / 2, right - left, sheet.name, proof)
            if panels.is_bore_layer(layer):
                bores.append(panels.found_bore(*found))
            else:
                sinks.append(panels.found_sink(*found))
        panels.compare(sheet, bores, sinks, box_of(outline, scale) if outline else None, proof)
    proof.end()


main()
