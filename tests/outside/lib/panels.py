"""What panels.json says must be on each drawing, and a comparison of that with what a reader found.

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
    bores: list[Circle] = field(default_factory=list)
    sinks: list[Circle] = field(default_factory=list)
    grooves: list[Groove] = field(default_factory=list)
    edges: list[Edge] = field(default_factory=list)
    leans: list[Lean] = field(default_factory=list)
    strays: list[Circle] = field(default_factory=list)


@dataclass
class Found:
    """What a reader found, mm, y up. Paths are lists of points, each point once; lines are pairs of points."""

    bores: list = field(default_factory=list)
    sinks: list = field(default_factory=list)
    outline: tuple | None = None
    grooves: list = field(default_factory=list)  # (layer, box)
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
        print(f"{self.name}: {self.files} files, {self.bores} bores, {self.grooves} grooves, {self.marks} marks compared, {verdict}")
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
    sheet = Sheet(folder / listed, listed, panel["length"], panel["width"])
    for drilling in panel["drillings"]:
        if drilling["surface"].startswith("edge "):
            if face == "A":
                sheet.edges.append(edge_of(drilling))
        elif drilling["surface"] == f"face {face}":
            put_bore(sheet, face, drilling)
    sheet.grooves = [groove_of(sheet, face, groove) for groove in panel["grooves"] if groove["face"] == face]
    return sheet


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


def same_hole(wanted, found):
    if max(abs(wanted.x - found.x), abs(wanted.y - found.y), abs(wanted.diameter - found.diameter)) > TOLERANCE:
        return False
    if wanted.through != found.through or (wanted.depth is None) != (found.depth is None):
        return False
    return wanted.depth is None or abs(wanted.depth - found.depth) <= NAME_TOLERANCE


def shown(hole):
    depth = "through" if hole.through else "" if hole.depth is None else f"{hole.depth:g} deep"
    return f"{hole.what} at ({hole.x:.4f}, {hole.y:.4f}), diameter {hole.diameter:.4f} {depth}".rstrip()


def box_of(points):
    xs, ys = zip(*points)
    return min(xs), min(ys), max(xs), max(ys)


def near(a, b, tolerance=DERIVED_TOLERANCE):
    """True for equal points or boxes."""
    return max(abs(p - q) for p, q in zip(a, b, strict=True)) <= tolerance


def pair_off(wanted_all, found_all, same, name, proof):
    """Takes every wanted thing out of those found; what is missing or left over is a fault. How many there were."""
    left = list(found_all)
    for wanted in wanted_all:
        match = next((k for k, one in enumerate(left) if same(wanted, one)), None)
        if match is None:
            proof.fault(name, f"not in the file: {shown(wanted) if isinstance(wanted, Circle) else wanted}")
        else:
            del left[match]
    for extra in left:
        proof.fault(name, f"not in panels.json: {shown(extra) if isinstance(extra, Circle) else extra}")
    return len(wanted_all)


def same_groove(wanted, found):
    layer, box = found
    kind, width, depth = GROOVE_LAYER.match(layer).groups()
    return (
        kind == wanted.kind.upper()
        and abs(named_figure(width) - wanted.width) <= NAME_TOLERANCE
        and abs(named_figure(depth) - wanted.depth) <= NAME_TOLERANCE
        and near(wanted.box, box)
    )


def same_mark(wanted, points):
    """The hidden hole of an edge bore is a rectangle, a slanted bore has an arrow head the way it leans."""
    if isinstance(wanted, Edge):
        return len(points) == 4 and near(wanted.box, box_of(points))
    if len(points) != 3:
        return False
    dx, dy = (sum(p[k] for p in points) / 3 - wanted.at[k] for k in (0, 1))
    size = math.hypot(*wanted.way)
    beside = abs(dx * wanted.way[1] - dy * wanted.way[0]) / size
    return beside <= 2 * DERIVED_TOLERANCE and dx * wanted.way[0] + dy * wanted.way[1] > 0


def same_line(wanted, line):
    kind, at = wanted
    start, end = line
    if kind == "ends":
        return near(at, end) and min(abs(start[0] - end[0]), abs(start[1] - end[1])) <= TOLERANCE
    if kind == "leaves":
        point, way = at
        dx, dy = end[0] - start[0], end[1] - start[1]
        ahead = dx * way[0] + dy * way[1]
        beside = (point[0] - start[0]) * dy - (point[1] - start[1]) * dx
        return ahead > 0 and abs(beside) / math.hypot(dx, dy) <= 2 * DERIVED_TOLERANCE and not near(middle(line), point)
    level = 1 if kind == "flat" else 0
    return abs(start[level] - end[level]) <= TOLERANCE and near(at, middle(line))


def middle(line):
    return tuple((a + b) / 2 for a, b in zip(*line))


def wanted_lines(sheet):
    """A centre line for each edge bore, a cross for each slanted or stray one, an arrow's shaft for each slanted one."""
    crosses = {lean.at for lean in sheet.leans} | {(hole.x, hole.y) for hole in sheet.strays}
    return (
        [("ends", edge.inner) for edge in sheet.edges]
        + [(kind, at) for at in sorted(crosses) for kind in ("flat", "upright")]
        + [("leaves", (lean.at, lean.way)) for lean in sheet.leans]
    )


def compare(sheet, found, proof):
    """All that is made in the face is in the file as a cut or a mark, and nothing besides; the outline is the blank at (0, 0)."""
    proof.bores += pair_off(sheet.bores, [b for b in found.bores if b is not None], same_hole, sheet.name, proof)
    proof.bores += pair_off(sheet.sinks, found.sinks, same_hole, sheet.name, proof)
    proof.grooves += pair_off(sheet.grooves, found.grooves, same_groove, sheet.name, proof)
    proof.marks += pair_off(sheet.strays, found.mark_circles, same_hole, sheet.name, proof)
    proof.marks += pair_off(sheet.edges + sheet.leans, found.mark_paths, same_mark, sheet.name, proof)
    pair_off(wanted_lines(sheet), found.mark_lines, same_line, sheet.name, proof)
    want = (0.0, 0.0, sheet.length, sheet.width)
    if found.outline is None:
        proof.fault(sheet.name, "no outline")
    elif not near(found.outline, want, TOLERANCE):
        proof.fault(sheet.name, f"the outline's box is {found.outline}, the panel's {want}")
    proof.files += 1
