"""Pages of a panel, printed at 600 dots to the inch, taped by their marks and measured: all of it in pixels."""

import math
from dataclasses import dataclass, field

import pages as reading
from panel_pages import holes_of, pieces_of
from raster import Raster
from rulers import INCH_BAR, MM_BAR, bars_on
from taping import laid_on, lettered, level_of, taped


@dataclass
class Errors:
    """The worst of each kind, mm, and how many there were."""

    worst: dict = field(default_factory=dict)
    count: dict = field(default_factory=dict)
    faults: list = field(default_factory=list)
    # How far apart two holes were at most.
    span: float = 0.0

    def note(self, kind, error, where, allowed):
        self.worst[kind] = max(self.worst.get(kind, 0.0), error)
        self.count[kind] = self.count.get(kind, 0) + 1
        if error > allowed:
            self.faults.append(f"{where}: {kind} {error:.3f} mm off")

    def add(self, other):
        for kind, error in other.worst.items():
            self.worst[kind] = max(self.worst.get(kind, 0.0), error)
            self.count[kind] = self.count.get(kind, 0) + other.count[kind]
        self.faults += other.faults
        self.span = max(self.span, other.span)


@dataclass
class Sheet:
    """One page with what was measured on it; holes as (place, hole of panels.json)."""

    marks: dict
    holes: list
    edges: list  # (axis, place, which: 0 low, 1 high)


class PanelGroup:
    """The pages of one face that are taped together, where poppler reads them to be; nothing is in pixels yet."""

    def __init__(self, pdf, panel, face, group):
        self.pdf, self.panel, self.face, self.group = pdf, panel, face, group
        self.origin = laid_on(group, panel, face)
        self.wanted = list(holes_of(panel, face))
        self.numbers = sorted(group.origins)

    def page(self, number):
        return self.group.pages[number]

    def known(self, number):
        """Circles of a page, with the hole that each is."""
        found = []
        for centre, diameter in self.page(number).rims:
            at = tuple(c + o - e for c, o, e in zip(centre, self.group.origins[number], self.origin))
            alike = [(math.dist(at, hole.at), k) for k, hole in enumerate(self.wanted) if abs(hole.diameter - diameter) < 0.1]
            error, k = min(alike, default=(math.inf, -1))
            if error < 0.5:
                found.append((centre, diameter / 2, self.wanted[k]))
        return found

    def seams(self):
        """Pairs of pages with common marks and a hole on each, those first that show edges of the panel across both axes, and of them those whose holes are furthest apart."""
        letters = {number: lettered(self.page(number))[0] for number in self.numbers}
        pairs = []
        for a in self.numbers:
            for b in self.numbers:
                if a < b and len(letters[a].keys() & letters[b].keys()) >= 2 and self.known(a) and self.known(b):
                    far = max(math.dist(p.at, q.at) for _, _, p in self.known(a) for _, _, q in self.known(b))
                    axes = {level_of(line) for number in (a, b) for line in self.page(number).edges}
                    pairs.append((-len(axes), -far, a, b))
        return [pair[2:] for pair in sorted(pairs)]


def groups_of(folder, panel, scales):
    """All groups of pages of a panel that lie on two of its edges, as a printer makes them."""
    found = []
    for name in panel["files"]["pdf"]:
        faces = {}
        for page in reading.pages_of(folder / name, scales):
            if len(parts := pieces_of(page)) == 1 and parts[0] is page:
                faces.setdefault(page.face, []).append(page)
        for face, parts in faces.items():
            groups, _ = taped(parts)
            found += [PanelGroup(folder / name, panel, face, group) for group in groups]
    return [group for group in found if None not in group.origin]


def measure(group, numbers, scales, allowed):
    """Prints some pages of a group and measures all that is on them."""
    errors, sheets = Errors(), {}
    for number in numbers:
        page = group.page(number)
        where = f"{group.pdf} {page.label}"
        sheets[number] = sheet_of(group, number, scales, where, errors, allowed)
    origins = taped_again(sheets, numbers, errors, group, allowed)
    placed = [
        (tuple(o + c for o, c in zip(origins[number], at)), hole, number)
        for number, sheet in sheets.items()
        if number in origins
        for at, hole in sheet.holes
    ]
    where = f"{group.pdf} face {group.face}"
    for k, (at, hole, number) in enumerate(placed):
        for other, another, page in placed[:k]:
            error = abs(math.dist(at, other) - math.dist(hole.at, another.at))
            kind = "two holes on one page" if page == number else "two holes over a seam"
            errors.note(kind, error, f"{where}, {hole.name} and {another.name}", allowed)
            errors.span = max(errors.span, math.dist(at, other))
    against_edges(group, sheets, origins, placed, errors, where, allowed)
    return errors


def sheet_of(group, number, scales, where, errors, allowed):
    """One page in pixels: its bars, marks, circles with their dots, and edges."""
    page = group.page(number)
    raster = Raster(group.pdf, page.number, page.height, scales(page.paper[0], page.paper[1]))
    for axis in (0, 1):
        bars = bars_on(page, raster, axis, (MM_BAR, INCH_BAR))
        if bars is None:
            errors.faults.append(f"{where}: no check bar of 100 mm and 4 in along {'xy'[axis]}")
            continue
        for length, measured in bars.items():
            errors.note("check bars", abs(measured - length), f"{where}, bar of {length} mm", allowed)
    marks = {}
    for letter, at in lettered(page)[0].items():
        found = raster.circle(at, reading.MARK_RADIUS)
        if found is None:
            errors.faults.append(f"{where}: mark {letter} is not in the picture")
        else:
            marks[letter] = found[0]
    holes = []
    for centre, radius, hole in group.known(number):
        found = raster.circle(centre, radius)
        if found is None:
            errors.faults.append(f"{where}: {hole.name} is not in the picture")
            continue
        errors.note("diameters", abs(2 * found[1] - hole.diameter), f"{where}, {hole.name}", allowed)
        dot = raster.dot(found[0])
        if dot is None:
            errors.faults.append(f"{where}: {hole.name} has no point at its centre")
        else:
            errors.note("dots in circles", math.dist(dot, found[0]), f"{where}, {hole.name}", allowed)
        holes.append((found[0], hole))
    return Sheet(marks, holes, list(edges_in(group, number, raster)))


def edges_in(group, number, raster):
    """Edges of the panel on a page, in pixels: across which axis, where, and whether the low one or the high one."""
    page, sizes = group.page(number), (group.panel["length"], group.panel["width"])
    for line in page.edges:
        for axis in (0, 1):
            if abs(line[0][axis] - line[1][axis]) > 0.001:
                continue
            at = line[0][axis] + group.group.origins[number][axis] - group.origin[axis]
            which = min((0, 1), key=lambda side: abs(at - side * sizes[axis]))
            found = raster.line_along(line, axis)
            if abs(at - which * sizes[axis]) < 0.5 and found is not None:
                yield axis, found, which


def taped_again(sheets, numbers, errors, group, allowed):
    """Origins of pages by their marks as they were measured."""
    origins = {numbers[0]: (0.0, 0.0)}
    todo = [numbers[0]]
    while todo:
        here = todo.pop(0)
        for there in numbers:
            shared = sheets[here].marks.keys() & sheets[there].marks.keys()
            if there == here or len(shared) < 2:
                continue
            shifts = [tuple(sheets[here].marks[m][k] - sheets[there].marks[m][k] for k in (0, 1)) for m in sorted(shared)]
            shift = tuple(sum(s[k] for s in shifts) / len(shifts) for k in (0, 1))
            if there not in origins:
                where = f"{group.pdf}, {group.page(here).label} and {group.page(there).label}"
                errors.note("marks on marks", max(math.dist(s, shift) for s in shifts), where, allowed)
                origins[there] = tuple(o + s for o, s in zip(origins[here], shift))
                todo.append(there)
    return origins


def against_edges(group, sheets, origins, placed, errors, where, allowed):
    """Every hole by its distances from the edges of the panel, and the edges from each other."""
    sizes = (group.panel["length"], group.panel["width"])
    for axis in (0, 1):
        edges = [
            (origins[number][axis] + at, which)
            for number, sheet in sheets.items()
            if number in origins
            for across, at, which in sheet.edges
            if across == axis
        ]
        for k, (at, which) in enumerate(edges):
            for other, another in edges[:k]:
                error = abs((at - other) - (which - another) * sizes[axis])
                errors.note("edges", error, f"{where}, across {'xy'[axis]}", allowed)
            for place, hole, _ in placed:
                error = abs((place[axis] - at) - (hole.at[axis] - which * sizes[axis]))
                errors.note("holes from edges", error, f"{where}, {hole.name}", allowed)
