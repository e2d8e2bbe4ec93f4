"""All full-size pages of a panel, taped and laid on it, compared with what panels.json says of its holes.

A hole in a face lies where it is bored. One in an edge lies on the paper that wraps over that edge: as far beyond the fold
as its axis is from the face. Pieces that are cut out and laid on a pencil mark, or in several places, are compared as they
are: some place of the panel must have all of their holes.
"""

import math
from collections import defaultdict
from dataclasses import dataclass, field

import pages as reading
from taping import ALLOWED, SHORTEST_EDGE, laid_on, level_of, shown, taped

# Pieces that are cut out are at least so large, mm.
SMALLEST_PIECE = 15.0


@dataclass
class Hole:
    at: tuple  # on the face as it is seen, mm
    diameter: float
    name: str
    flap: bool = False


@dataclass
class Measured:
    """What was found on the pages of a panel."""

    faults: list = field(default_factory=list)
    files: dict = field(default_factory=dict)  # pages by the name of their file
    circles: int = 0
    flaps: int = 0
    seams: int = 0
    pieces: int = 0
    pages: int = 0
    worst: float = 0.0


def measure(folder, panel):
    """Tapes all pages of a panel and compares every circle with its holes."""
    result = Measured()
    faces = defaultdict(list)
    for name in panel["files"]["pdf"]:
        result.files[name] = reading.pages_of(folder / name)
        for page in result.files[name]:
            result.pages += 1
            for part in pieces_of(page):
                try:
                    faces[part.face or page.face].append(part)
                except ValueError as trouble:
                    result.faults.append(f"{name}: {trouble}")
    seen = set()
    for face, parts in sorted(faces.items()):
        wanted = list(holes_of(panel, face))
        groups, faults = taped(parts)
        result.faults += [f"{panel['id']}, face {face}: {fault}" for fault in faults]
        for group in groups:
            seen |= compare(group, panel, face, wanted, result)
    needed = {hole.name for face in "AB" for hole in holes_of(panel, face)}
    result.faults += [f"{panel['id']}: {name} is on no page" for name in sorted(needed - seen)]
    return result


def pieces_of(page):
    """The page itself, or the pieces that are cut out of it: frames round something that is laid on a panel by holes or edges."""
    things = [centre for centre, _ in page.rims] + page.marks + [line[0] for line in page.edges if math.dist(*line) > SHORTEST_EDGE]
    # Pieces with nothing but a contour, on pencil lines, have nothing that is compared here.
    if not things:
        return []
    boxes = [box for box in page.boxes if min(box[2] - box[0], box[3] - box[1]) >= SMALLEST_PIECE and any(holds(box, at) for at in things)]
    outer = [box for box in boxes if not any(box != other and holds(other, box[:2]) and holds(other, box[2:]) for other in boxes)]
    if not outer:
        return [page]
    return [page.within(box, k + 1) for k, box in enumerate(sorted(outer))]


def holds(box, point):
    return all(box[k] - 0.01 <= point[k] <= box[k + 2] + 0.01 for k in (0, 1))


def holes_of(panel, face, shoulders=False):
    """
    Every circle that pages of a face may show: square holes and sinks in it, and square holes in the edges round it; with
    `shoulders` those, too, that begin at the shoulder of a rebate, over which cut-out pieces are folded.
    """
    length, width, thickness = panel["length"], panel["width"], panel["thickness"]
    side_named = {name: key for key, name in panel["edges"].items()}
    for hole in panel["drillings"]:
        if "lean" in hole:
            continue
        at, surface = (hole["x"], hole["y"]), hole["surface"]
        if surface.startswith("edge "):
            side = side_named[surface.removeprefix("edge ")]
            if not shoulders and not starts_at(hole, side, length, width):
                continue
            deep = -hole["z"] if face == "A" else thickness + hole["z"]
            beyond = {"x0": (-deep, 0), "x1": (deep, 0), "y0": (0, -deep), "y1": (0, deep)}[side]
            at = (at[0] + beyond[0], at[1] + beyond[1])
        elif surface != f"face {face}":
            continue
        at = at if face == "A" else (length - at[0], at[1])
        yield Hole(at, hole["diameter"], hole["id"], surface.startswith("edge "))
        if "sink" in hole:
            yield Hole(at, hole["sink"]["diameter"], f"sink of {hole['id']}", surface.startswith("edge "))


def starts_at(hole, side, length, width):
    """Whether a hole in an edge begins at the edge itself and not at the shoulder of a rebate, where no whole page is folded to."""
    return abs({"x0": hole["x"], "x1": hole["x"] - length, "y0": hole["y"], "y1": hole["y"] - width}[side]) < 0.01


def compare(group, panel, face, wanted, result):
    """The names of the holes that a group of pages shows where they are."""
    loose = any(group.pages[number].piece for number in group.origins)
    origin = None if loose else laid_on(group, panel, face)
    result.faults += [f"{panel['id']}, face {face}: {fault}" for fault in group.faults]
    result.worst = max(result.worst, group.worst)
    result.seams += group.seams
    rims = [
        (tuple(o + c for o, c in zip(group.origins[number], centre)), diameter, group.pages[number])
        for number in group.origins
        for centre, diameter in group.pages[number].rims
    ]
    if loose:
        return compare_piece(group, rims, panel, face, list(holes_of(panel, face, shoulders=True)), result)
    if None in origin:
        label = group.pages[min(group.origins)].label
        result.faults.append(f"{panel['id']}, face {face}: {label} is not tied to two edges of the panel")
        return set()
    seen = set()
    for centre, diameter, page in rims:
        at = tuple(c - o for c, o in zip(centre, origin))
        found = match(at, diameter, wanted)
        if found is None:
            result.faults.append(f"{panel['id']}, face {face}, {page.label}: a circle of {diameter:.3f} at {shown(at)} is no such hole")
            continue
        result.worst = max(result.worst, found[1])
        result.circles += 1
        result.flaps += found[0].flap
        seen.add(found[0].name)
    return seen


def compare_piece(group, rims, panel, face, wanted, result):
    """
    A piece that is cut out, and those that are taped to it: the names of all holes where all of its circles fit, as it is or
    turned round by quarters. In one of these places, of the heavy lines along each axis one lies on an edge of the panel, unless
    there is none.
    """
    result.pieces += 1
    if not rims:
        return set()
    (first, size, page), *_ = rims
    folds = [
        [tuple(o + c for o, c in zip(group.origins[number], end)) for end in line]
        for number in group.origins
        for line in group.pages[number].edges
        if math.dist(*line) > SMALLEST_PIECE
    ]
    seen, laid = set(), False
    for cos, sin in ((1, 0), (0, 1), (-1, 0), (0, -1)):
        turned = lambda p: (cos * p[0] - sin * p[1], sin * p[0] + cos * p[1])
        for hole in wanted:
            shift = tuple(h - c for h, c in zip(hole.at, turned(first)))
            placed = lambda p: tuple(c + s for c, s in zip(turned(p), shift))
            if abs(hole.diameter - size) > ALLOWED:
                continue
            found = [match(placed(centre), diameter, wanted) for centre, diameter, _ in rims]
            if not all(found):
                continue
            seen |= {one.name for one, _ in found}
            result.worst = max(result.worst, max(error for _, error in found))
            flaps = {one.name for one, _ in found if one.flap}
            laid = laid or folded([[placed(end) for end in line] for line in folds], panel, face, flaps)
    where = f"{panel['id']}, face {face}, {page.label}"
    if not seen:
        result.faults.append(f"{where}: its circles fit nowhere on the panel")
    elif not laid:
        result.faults.append(f"{where}: where its circles fit, its heavy lines lie on no edge")
    result.circles += len(rims)
    return seen


def folded(folds, panel, face, flaps):
    """Whether of the heavy lines across each axis one is an edge of the panel, or where its holes on folded paper begin."""
    sizes = (panel["length"], panel["width"])
    begins = [(hole["x"] if face == "A" else sizes[0] - hole["x"], hole["y"]) for hole in panel["drillings"] if hole["id"] in flaps]
    places = [(level_of(line), line[0]) for line in folds if level_of(line) is not None]
    on_edge = {
        axis
        for axis, at in places
        if min(abs(at[axis] - place) for place in (0, sizes[axis], *(begin[axis] for begin in begins))) <= ALLOWED
    }
    return on_edge == {axis for axis, _ in places}


def match(at, diameter, wanted):
    """The hole of that size at a place, and how far it is off; nothing where there is none."""
    alike = [(math.dist(at, hole.at), k) for k, hole in enumerate(wanted) if abs(hole.diameter - diameter) <= ALLOWED]
    error, k = min(alike, default=(math.inf, -1))
    return (wanted[k], error) if error <= ALLOWED else None
