"""What panels.json says must be on each drawing, and a comparison of that with what a reader found.

x and y in panels.json are always as seen on face A: origin lower left, x right, y up, mm. A drawing of face B is what a
person sees who has turned the panel over about its vertical: x becomes length - x, y stays. This mirroring is done here
and not taken from the program.
"""

import json
import re
import sys
from dataclasses import dataclass, field
from pathlib import Path

# Outputs are rounded to 0.001 mm; the rest is float noise of the comparison itself.
TOLERANCE = 0.001 + 1e-6
# Figures in layer names are those of the bit, which may be named to a hundredth only.
NAME_TOLERANCE = 0.005 + 1e-6
MM_PER_INCH = 25.4

BORE_LAYER = re.compile(r"BORE-D(\d+(?:P\d+)?)-(?:DEEP(\d+(?:P\d+)?)|(THROUGH))$")
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
class Sheet:
    """One drawing: the face of a panel, and what must be on it."""

    path: Path
    name: str
    length: float
    width: float
    bores: list[Circle] = field(default_factory=list)
    sinks: list[Circle] = field(default_factory=list)


class Proof:
    """Collects disagreements, counts what was compared, and ends with a verdict."""

    def __init__(self, name):
        self.name = name
        self.faults = []
        self.files = 0
        self.bores = 0

    def fault(self, where, what):
        self.faults.append(f"{where}: {what}")

    def end(self):
        for fault in self.faults[:50]:
            print(fault)
        if len(self.faults) > 50:
            print(f"... and {len(self.faults) - 50} more")
        if self.files == 0 or self.bores == 0:
            self.faults.append("nothing")
            print("nothing was compared, so nothing is proved")
        verdict = f"{len(self.faults)} DISAGREE" if self.faults else "all agree with panels.json"
        print(f"{self.name}: {self.files} files, {self.bores} bores compared, {verdict}")
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
        # Edge bores and slanted ones are marks for work by hand.
        if drilling["surface"] != f"face {face}" or "lean" in drilling:
            continue
        x = drilling["x"] if face == "A" else panel["length"] - drilling["x"]
        y = drilling["y"]
        depth = None if drilling["through"] else drilling["depth"]
        hole = Circle(x, y, drilling["diameter"], drilling["id"], depth, drilling["through"])
        sheet.bores.append(hole)
        sink = drilling.get("sink")
        if sink is None:
            continue
        if sink["shape"] == "counterbore":
            sheet.bores.append(Circle(x, y, sink["diameter"], f"counterbore of {hole.what}", sink["depth"]))
        elif sink["shape"] == "cone":
            sheet.sinks.append(Circle(x, y, sink["diameter"], f"countersink of {hole.what}"))
        else:
            sys.exit(f"{listed}: {hole.what} has a sink of an unknown shape: {sink}")
    return sheet


def is_bore_layer(layer):
    return layer.startswith("BORE-")


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


def compare(sheet, bores, sinks, box, proof):
    """Every drilling of the face is in the file, and none besides; the outline is the blank at (0, 0)."""
    for wanted_all, found_all in ((sheet.bores, bores), (sheet.sinks, sinks)):
        left = [hole for hole in found_all if hole is not None]
        for wanted in wanted_all:
            match = next((hole for hole in left if same_hole(wanted, hole)), None)
            if match is None:
                proof.fault(sheet.name, f"not in the file: {shown(wanted)}")
            else:
                left.remove(match)
                proof.bores += 1
        for extra in left:
            proof.fault(sheet.name, f"not in panels.json: {shown(extra)}")
    want = (0.0, 0.0, sheet.length, sheet.width)
    if box is None:
        proof.fault(sheet.name, "no outline")
    elif max(abs(a - b) for a, b in zip(box, want)) > TOLERANCE:
        proof.fault(sheet.name, f"the outline's box is {box}, the panel's {want}")
    proof.files += 1
