"""What panels.json says must be on each drawing, and what a reader sorts its findings into.

x and y in panels.json are always as seen on face A: origin lower left, x right, y up, mm. A drawing of face B is what a
person sees who has turned the panel over about its vertical: x becomes length - x, y stays. This mirroring is done here
and not taken from the program.
"""

import json
import math
import re
import sys
from dataclasses import dataclass, field
from pathlib import Path

# Outputs are rounded to 0.001 mm; the rest is float noise of the comparison itself.
TOLERANCE = 0.001 + 1e-6
# Figures in layer names are those of the bit, which may be named to a hundredth only.
NAME_TOLERANCE = 0.005 + 1e-6
# Ends and corners are worked out from up to four figures that are each rounded by as much as 0.0005 mm.
DERIVED_TOLERANCE = 0.002 + 1e-6
MM_PER_INCH = 25.4

BORE_LAYER = re.compile(r"BORE-D(\d+(?:P\d+)?)-(?:DEEP(\d+(?:P\d+)?)|(THROUGH))$")
GROOVE_LAYER = re.compile(r"(GROOVE|REBATE)-W(\d+(?:P\d+)?)-DEEP(\d+(?:P\d+)?)$")
MARK_LAYER = "MARK"
SINK_LAYER = re.compile(r"COUNTERSINK-D(\d+(?:P\d+)?)(?:-|$)")


@dataclass
class Circle:
    """A hole on a drawing: mm, as drawn. Depth is None when it goes through, or when nobody said."""

    x: float
    y: float
    diameter: float
    what: str
    depth: float | None = None
    through: bool = False


@dataclass
class Groove:
    """A groove or rebate: the box that it fills, as drawn, and what its layer must say. Width is the shorter side."""

    what: str
    kind: str
    box: tuple
    width: float
    depth: float


@dataclass
class Cutout:
    """An opening or recess, as drawn: its layer, its corners, and of each arc the middle, the centre and the radius."""

    what: str
    layer: str
    corners: list
    arcs: list


@dataclass
class Edge:
    """A bore in an edge: the box of the hidden hole, and the inner end of its centre line, as drawn."""

    what: str
    box: tuple
    inner: tuple


@dataclass
class Lean:
    """A slanted bore: where it enters, and the way it leans, as drawn."""

    what: str
    at: tuple
    way: tuple


@dataclass
class Sheet:
    """One drawing: the face of a panel, and what must be on it."""

    path: Path
    name: str
    length: float
    width: float
    outline: list = field(default_factory=list)  # the corners of what is cut, behind the lipped edges and round the notches
    bores: list[Circle] = field(default_factory=list)
    sinks: list[Circle] = field(default_factory=list)
    grooves: list[Groove] = field(default_factory=list)
    cutouts: list[Cutout] = field(default_factory=list)
    edges: list[Edge] = field(default_factory=list)
    leans: list[Lean] = field(default_factory=list)
    strays: list[Circle] = field(default_factory=list)


@dataclass
class Found:
    """What a reader found, mm, y up. Paths are lists of points, each point once; lines are pairs of points."""

    bores: list = field(default_factory=list)
    sinks: list = field(default_factory=list)
    outline: list = field(default_factory=list)  # points of OUTLINE
    grooves: list = field(default_factory=list)  # (layer, box)
    cutouts: list = field(default_factory=list)  # (layer, points): corners, and points along arcs
    mark_circles: list = field(default_factory=list)
    mark_paths: list = field(default_factory=list)
    mark_lines: list = field(default_factory=list)


class Proof:
    """Collects disagreements, counts what was compared, and ends with a verdict."""

    def __init__(self, name):
        self.name = name
        self.faults = []
        self.files = 0
        self.bores = 0
        self.grooves = 0
        self.cutouts = 0
        self.marks = 0

    def fault(self, where, what):
        self.faults.append(f"{where}: {what}")

    def end(self):
        for fault in self.faults[:50]:
            print(fault)
        if len(self.faults) > 50:
            print(f"... and {len(self.faults) - 50} more")
        if self.files == 0 or self.bores == 0 or self.grooves + self.marks == 0:
            self.faults.append("nothing")
            print("nothing was compared, so nothing is proved")
        verdict = f"{len(self.faults)} DISAGREE" if self.faults else "all agree with panels.json"
        print(f"{self.name}: {self.files} files, {self.bores} bores, {self.grooves} grooves, {self.cutouts} cutouts, {self.marks} marks compared, {verdict}")
        sys.exit(1 if self.faults else 0)


def folder_from(arguments, usage):
    """The output folder named on the command line."""
    if len(arguments) != 2:
        sys.exit(f"usage: {usage} OUTPUT-FOLDER")
    folder = Path(arguments[1])
    if not (folder / "panels.json").is_file():
        sys.exit(f"{folder}: no panels.json in this folder")
    return folder


def sheets_of(folder, kind, proof):
    """The drawings of one kind (`dxf` or `svg`) that panels.json lists. Missing and extra files are faults."""
    content = json.loads((folder / "panels.json").read_text("utf-8"))
    head = (content.get("format"), content.get("version"), content.get("units"))
    if head != ("storyrod panels", 1, "mm"):
        sys.exit(f"panels.json is of another kind: {head}")
    sheets = []
    for panel in content["panels"]:
        faces = {}
        for listed in panel["files"][kind]:
            ending = re.search(rf"-([ab])\.{kind}$", listed)
            if ending is None:
                proof.fault(listed, "the name does not end in -a or -b")
                continue
            face = ending.group(1).upper()
            if face in faces:
                proof.fault(listed, f"a second drawing of face {face}")
            faces[face] = listed
        if "A" not in faces:
            proof.fault(panel["id"], f"no {kind} of face A")
        for drilling in panel["drillings"]:
            if drilling["surface"] == "face B" and "B" not in faces:
                proof.fault(panel["id"], f"{drilling['id']} is on face B, which has no {kind}")
        for cutout in panel.get("cutouts", []):
            if cutout["face"] not in faces:
                proof.fault(panel["id"], f"{cutout['id']} is on face {cutout['face']}, which has no {kind}")
        sheets += [sheet_of(folder, panel, face, listed) for face, listed in faces.items()]
    listed = {sheet.path for sheet in sheets}
    for sheet in sheets:
        if not sheet.path.is_file():
            proof.fault(sheet.name, "listed in panels.json, but not there")
    for path in sorted((folder / kind).rglob(f"*.{kind}")):
        if path not in listed:
            proof.fault(path.relative_to(folder), "there, but not listed in panels.json")
    return [sheet for sheet in sheets if sheet.path.is_file()]


def sheet_of(folder, panel, face, listed):
    sheet = Sheet(folder / listed, listed, panel["length"], panel["width"], outline_of(panel, face))
    for drilling in panel["drillings"]:
        if drilling["surface"].startswith("edge "):
            if face == "A":
                sheet.edges.append(edge_of(drilling))
        elif drilling["surface"] == f"face {face}":
            put_bore(sheet, face, drilling)
    sheet.grooves = [groove_of(sheet, face, groove) for groove in panel["grooves"] if groove["face"] == face]
    sheet.cutouts = [cutout_of(sheet, face, cutout) for cutout in panel.get("cutouts", []) if cutout["face"] == face and not is_notch(panel, cutout)]
    return sheet


def outline_of(panel, face):
    """The corners of what is cut: lippings are taken off the finished panel, each from the edge of its name, and notches off its corners."""
    lip = {side: panel.get("lipping", {}).get(panel["edges"][side], 0.0) for side in ("x0", "x1", "y0", "y1")}
    left, right = (lip["x0"], lip["x1"]) if face == "A" else (lip["x1"], lip["x0"])
    box = (left, lip["y0"], panel["length"] - right, panel["width"] - lip["y1"])
    cut = panel.get("cut", {"length": panel["length"], "width": panel["width"]})
    if abs(box[2] - box[0] - cut["length"]) > 0.002 or abs(box[3] - box[1] - cut["width"]) > 0.002:
        sys.exit(f"{panel['id']}: cut size {cut} is not the finished size less the lippings")
    notches = [notch_box(panel, face, cutout) for cutout in panel.get("cutouts", []) if is_notch(panel, cutout)]
    return [point for x in (box[0], box[2]) for y in (box[1], box[3]) for point in corner_of(panel, x, y, notches)]


def is_notch(panel, cutout):
    """A cutout that takes a corner off its panel is part of the outline."""
    left, low, right, high = box_of([corner[:2] for corner in cutout["path"]])
    ends = min(left, panel["length"] - right), min(low, panel["width"] - high)
    return cutout["through"] and max(ends) <= TOLERANCE


def notch_box(panel, face, cutout):
    left, low, right, high = box_of([corner[:2] for corner in cutout["path"]])
    return (left, low, right, high) if face == "A" else (panel["length"] - right, low, panel["length"] - left, high)


def corner_of(panel, x, y, notches):
    """The corner itself, or the three in its place where a notch takes it off."""
    for left, low, right, high in notches:
        if left - TOLERANCE <= x <= right + TOLERANCE and low - TOLERANCE <= y <= high + TOLERANCE:
            u = right if x < panel["length"] / 2 else left
            v = high if y < panel["width"] / 2 else low
            return [(x, v), (u, v), (u, y)]
    return [(x, y)]


def put_bore(sheet, face, drilling):
    """A bore of this face: square, slanted, or over the edge of the panel, which makes it a mark."""
    x = drilling["x"] if face == "A" else sheet.length - drilling["x"]
    y = drilling["y"]
    if "lean" in drilling:
        way = drilling["axis"][0] if face == "A" else -drilling["axis"][0]
        sheet.leans.append(Lean(drilling["id"], (x, y), (way, drilling["axis"][1])))
        return
    depth = None if drilling["through"] else drilling["depth"]
    hole = Circle(x, y, drilling["diameter"], drilling["id"], depth, drilling["through"])
    sink = drilling.get("sink")
    radius = max(hole.diameter, sink["diameter"] if sink else 0) / 2
    if min(x, sheet.length - x, y, sheet.width - y) < radius - TOLERANCE:
        sheet.strays.append(Circle(x, y, hole.diameter, hole.what))
        if sink:
            sheet.strays.append(Circle(x, y, sink["diameter"], f"sink of {hole.what}"))
        return
    sheet.bores.append(hole)
    if sink is None:
        return
    if sink["shape"] == "counterbore":
        sheet.bores.append(Circle(x, y, sink["diameter"], f"counterbore of {hole.what}", sink["depth"]))
    elif sink["shape"] == "cone":
        sheet.sinks.append(Circle(x, y, sink["diameter"], f"countersink of {hole.what}"))
    else:
        sys.exit(f"{sheet.name}: {hole.what} has a sink of an unknown shape: {sink}")


def edge_of(drilling):
    """Edge bores are drawn on face A, where nothing is mirrored."""
    x, y, radius = drilling["x"], drilling["y"], drilling["diameter"] / 2
    along_x, along_y, _ = drilling["axis"]
    inner = (x + along_x * drilling["depth"], y + along_y * drilling["depth"])
    beside_x, beside_y = abs(along_y) * radius, abs(along_x) * radius
    box = (
        min(x, inner[0]) - beside_x,
        min(y, inner[1]) - beside_y,
        max(x, inner[0]) + beside_x,
        max(y, inner[1]) + beside_y,
    )
    return Edge(drilling["id"], box, inner)


def groove_of(sheet, face, groove):
    (left, low), (right, high) = groove["min"], groove["max"]
    if face == "B":
        left, right = sheet.length - right, sheet.length - left
    return Groove(groove["id"], groove["kind"], (left, low, right, high), min(right - left, high - low), groove["depth"])


def cutout_of(sheet, face, cutout):
    """The middle of an arc with bulge b over a chord c lies b*c/2 to the right of the chord's middle, the centre a radius back."""
    depth = f"{cutout['depth']:g}".replace(".", "P")
    corners = [tuple(corner) for corner in cutout["path"]]
    if face == "B":
        corners = [(sheet.length - x, y, -bulge) for x, y, bulge in corners]
    arcs = []
    for (x, y, bulge), (u, v, _) in zip(corners, corners[1:] + corners[:1]):
        if bulge == 0:
            continue
        chord = math.hypot(u - x, v - y)
        radius = chord * (1 + bulge * bulge) / (4 * abs(bulge))
        middle = ((x + u + bulge * (v - y)) / 2, (y + v - bulge * (u - x)) / 2)
        back = math.copysign(radius / chord, bulge)
        arcs.append((middle, (middle[0] - (v - y) * back, middle[1] + (u - x) * back), radius))
    layer = "CUTOUT" if cutout["through"] else f"POCKET-DEEP{depth}"
    return Cutout(cutout["id"], layer, [corner[:2] for corner in corners], arcs)


def is_cutout_layer(layer):
    return layer == "CUTOUT" or layer.startswith("POCKET-")


def is_bore_layer(layer):
    return layer.startswith("BORE-")


def is_groove_layer(layer):
    return GROOVE_LAYER.match(layer) is not None


def is_sink_layer(layer):
    return layer.startswith("COUNTERSINK-")


def named_figure(text):
    """`12P5` is 12.5."""
    return float(text.replace("P", "."))


def found_bore(layer, x, y, diameter, where, proof):
    """A circle on a BORE layer, its depth taken from the layer's name; None where the name says none."""
    name = BORE_LAYER.match(layer)
    if name is None:
        proof.fault(where, f"layer {layer} does not say diameter and depth")
        return None
    named, deep, through = name.groups()
    if abs(named_figure(named) - diameter) > NAME_TOLERANCE:
        proof.fault(where, f"a circle of diameter {diameter:.4f} is on layer {layer}")
    depth = None if deep is None else named_figure(deep)
    return Circle(x, y, diameter, layer, depth, through is not None)


def found_sink(layer, x, y, diameter, where, proof):
    """A circle on a COUNTERSINK layer."""
    name = SINK_LAYER.match(layer)
    if name is None or abs(named_figure(name.group(1)) - diameter) > NAME_TOLERANCE:
        proof.fault(where, f"a circle of diameter {diameter:.4f} is on layer {layer}")
    return Circle(x, y, diameter, layer)


def box_of(points):
    xs, ys = zip(*points)
    return min(xs), min(ys), max(xs), max(ys)
