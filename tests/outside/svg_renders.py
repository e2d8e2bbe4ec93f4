"""Renders every SVG of an output folder with rsvg-convert, parses it as XML, and compares it with panels.json.

    /usr/bin/python3 tests/outside/svg_renders.py OUTPUT-FOLDER

The picture at 48 dpi must have the size that the file's millimetres ask for, and something drawn on it where the outline
is. In the file, width and height are in mm and equal to the viewBox, nothing is mirrored by a transform, and no other
length has a unit. Circles on BORE and COUNTERSINK layers are compared with the drillings of that face (y = 0 is the panel's
upper edge), and the corners of the outline, round notches too, to 0.001 mm; paths on GROOVE and REBATE layers (box, and width and
depth by the layer's name) and everything on MARK to 0.002 mm. The last line says how much was compared; the exit code is
1 on any disagreement, or when nothing was compared.
"""

import math
import re
import subprocess
import sys
import xml.etree.ElementTree as ElementTree
import zlib
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent / "lib"))
import agreement  # noqa: E402
import panels  # noqa: E402

SVG = "{http://www.w3.org/2000/svg}"
DPI = 48
MM = re.compile(r"(\d+(?:\.\d+)?)mm$")
PIECES = re.compile(r"[MLA]([^MLAZ]*)")
WITH_UNIT = re.compile(r"-?[\d.]+(?:mm|cm|in|px|pt|pc|em|%)$")
PLAIN_TURN = re.compile(r"rotate\(-?[\d.]+ -?[\d.]+ -?[\d.]+\)$")


def png_of(path):
    """Width and height in pixels, and for each row whether anything is drawn on it."""
    command = ["rsvg-convert", "--dpi-x", str(DPI), "--dpi-y", str(DPI), "--unlimited", "--format", "png", str(path)]
    done = subprocess.run(command, capture_output=True, timeout=120)
    if done.returncode != 0:
        raise ValueError(f"rsvg-convert: {done.stderr.decode('utf-8', 'replace').strip()}")
    data, at, packed = done.stdout, 8, b""
    while at < len(data):
        size, kind = int.from_bytes(data[at : at + 4], "big"), data[at + 4 : at + 8]
        body = data[at + 8 : at + 8 + size]
        if kind == b"IHDR":
            width, height = int.from_bytes(body[:4], "big"), int.from_bytes(body[4:8], "big")
            if body[8:10] != b"\x08\x06":
                raise ValueError("the picture is not in 8 bits of red, green, blue and cover")
        if kind == b"IDAT":
            packed += body
        at += size + 12
    rows, stride = zlib.decompress(packed), 1 + 4 * width
    # A row's bytes are differences; on a bare ground all are 0, and a row that differs from it or its neighbour has some.
    return width, height, [rows.count(0, i * stride + 1, (i + 1) * stride) < stride - 1 for i in range(height)]


def size_of(root, sheet, proof):
    """left, top, width and height of the view, mm; None where the file does not say them rightly."""
    width, height = (MM.match(root.get(name, "")) for name in ("width", "height"))
    box = root.get("viewBox", "").split()
    if width is None or height is None or len(box) != 4:
        proof.fault(sheet.name, "width, height or viewBox is missing or not in mm")
        return None
    if [width.group(1), height.group(1)] != box[2:]:
        proof.fault(sheet.name, f"width {width.group()} and height {height.group()} are not the viewBox's {box[2:]}")
        return None
    return tuple(float(v) for v in box)


def rendered(sheet, view, proof):
    left, top, width, height = view
    try:
        pixels = png_of(sheet.path)
    except (ValueError, subprocess.TimeoutExpired) as error:
        proof.fault(sheet.name, str(error))
        return
    for side, mm, found in (("width", width, pixels[0]), ("height", height, pixels[1])):
        if abs(mm / 25.4 * DPI - found) > 1:
            proof.fault(sheet.name, f"{side} {mm} mm is drawn as {found} pixels at {DPI} dpi")
    if not any(pixels[2]):
        proof.fault(sheet.name, "the picture is blank")
    for edge, y in (("upper", 0.0), ("lower", sheet.width)):
        row = round((y - top) / 25.4 * DPI)
        if not any(pixels[2][max(0, row - 1) : row + 2]):
            proof.fault(sheet.name, f"nothing is drawn where the {edge} edge of the panel should be")


def plain(root, sheet, proof):
    """Nothing mirrored, no unit but on the root."""
    for element in root.iter():
        if element is root:
            continue
        turn = element.get("transform")
        if turn is not None and not PLAIN_TURN.match(turn):
            proof.fault(sheet.name, f"transform {turn}")
        for name, value in element.attrib.items():
            if WITH_UNIT.match(value):
                proof.fault(sheet.name, f"{name} is {value}, a length with a unit")


def ends_of(path, height):
    """The ends of a path's pieces, y up; no arc in a file swells beyond the box of its ends, being a quarter at most."""
    points = [(float(x), height - float(y)) for x, y in (f.split()[-2:] for f in PIECES.findall(path.get("d")))]
    # A last piece that is an arc comes back to where the path begins.
    return points[:-1] if len(points) > 1 and points[0] == points[-1] else points


def points_along(d, height):
    """The ends of a path's pieces, and points along its arcs, a degree apart at most; y up."""
    points, at = [], None
    for letter, figures in re.findall(r"([MLA])([^MLAZ]*)", d):
        numbers = [float(word) for word in figures.split()]
        to = (numbers[-2], height - numbers[-1])
        if letter == "A" and at is not None:
            # In y up, what SVG sweeps clockwise turns to the right; no piece turns more than a quarter.
            radius, left = numbers[0], numbers[4] == 0
            dx, dy = to[0] - at[0], to[1] - at[1]
            chord = math.hypot(dx, dy)
            off = math.sqrt(max(0.0, radius * radius - chord * chord / 4)) / chord * (1 if left else -1)
            centre = ((at[0] + to[0]) / 2 - dy * off, (at[1] + to[1]) / 2 + dx * off)
            start = math.atan2(at[1] - centre[1], at[0] - centre[0])
            turn = 2 * math.asin(min(1.0, chord / 2 / radius)) * (1 if left else -1)
            steps = math.ceil(abs(math.degrees(turn)))
            points += [
                (centre[0] + radius * math.cos(start + turn * k / steps), centre[1] + radius * math.sin(start + turn * k / steps))
                for k in range(1, steps)
            ]
        points.append(to)
        at = to
    return points


def outline_points(root, height):
    """From the ends of the pieces; y up again."""
    groups = [group for group in root.iter(f"{SVG}g") if group.get("data-layer") == "OUTLINE"]
    points = [point for group in groups for path in group.iter(f"{SVG}path") for point in ends_of(path, height)]
    return points


def circle_of(element, sheet, proof):
    """x, y (up) and diameter."""
    x, y, radius = (float(element.get(name)) for name in ("cx", "cy", "r"))
    diameter = float(element.get("data-diameter"))
    # A radius has half the steps of a diameter to be rounded to.
    if abs(2 * radius - diameter) > panels.TOLERANCE:
        proof.fault(sheet.name, f"a circle of radius {radius} says that its diameter is {diameter}")
    return x, sheet.width - y, diameter


def put_mark(found, element, sheet, proof):
    if element.tag == f"{SVG}circle":
        found.mark_circles.append(panels.Circle(*circle_of(element, sheet, proof), "MARK"))
    elif element.tag == f"{SVG}path":
        found.mark_paths.append(ends_of(element, sheet.width))
    elif element.tag == f"{SVG}line":
        x1, y1, x2, y2 = (float(element.get(name)) for name in ("x1", "y1", "x2", "y2"))
        found.mark_lines.append(((x1, sheet.width - y1), (x2, sheet.width - y2)))
    else:
        proof.fault(sheet.name, f"{element.tag} on MARK")


def put(found, layer, element, sheet, proof):
    """Sorts one element by its layer; what belongs to no work is left out."""
    if layer == panels.MARK_LAYER:
        put_mark(found, element, sheet, proof)
        return
    groove = panels.is_groove_layer(layer)
    hole = panels.is_bore_layer(layer) or panels.is_sink_layer(layer)
    cutout = panels.is_cutout_layer(layer)
    if not (groove or hole or cutout):
        return
    if element.tag != (f"{SVG}circle" if hole else f"{SVG}path"):
        proof.fault(sheet.name, f"{element.tag} on {layer}, where it does not belong")
    elif cutout:
        found.cutouts.append((layer, points_along(element.get("d"), sheet.width)))
    elif groove:
        found.grooves.append((layer, panels.box_of(ends_of(element, sheet.width))))
    elif panels.is_bore_layer(layer):
        found.bores.append(panels.found_bore(layer, *circle_of(element, sheet, proof), sheet.name, proof))
    else:
        found.sinks.append(panels.found_sink(layer, *circle_of(element, sheet, proof), sheet.name, proof))


def found_in(root, sheet, proof):
    found = panels.Found(outline=outline_points(root, sheet.width))
    for group in root.iter(f"{SVG}g"):
        for element in group:
            put(found, group.get("data-layer", ""), element, sheet, proof)
    return found


def main():
    folder = panels.folder_from(sys.argv, "svg_renders.py")
    version = subprocess.run(["rsvg-convert", "--version"], capture_output=True, text=True, check=True).stdout.split()
    proof = panels.Proof(f"librsvg {version[2]}")
    for sheet in panels.sheets_of(folder, "svg", proof):
        try:
            root = ElementTree.parse(sheet.path).getroot()
        except (ElementTree.ParseError, OSError) as error:
            proof.fault(sheet.name, f"not XML: {error}")
            continue
        view = size_of(root, sheet, proof)
        if root.tag != f"{SVG}svg" or view is None:
            proof.fault(sheet.name, "not an SVG of a known size")
            continue
        rendered(sheet, view, proof)
        plain(root, sheet, proof)
        agreement.compare(sheet, found_in(root, sheet, proof), proof)
    proof.end()


main()
